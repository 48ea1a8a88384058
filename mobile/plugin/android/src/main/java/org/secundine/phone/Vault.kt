package org.secundine.phone

import android.annotation.TargetApi
import android.app.Activity
import android.content.Context
import android.hardware.biometrics.BiometricPrompt
import android.os.Build
import android.os.CancellationSignal
import android.security.keystore.KeyGenParameterSpec
import android.security.keystore.KeyPermanentlyInvalidatedException
import android.security.keystore.KeyProperties
import java.io.File
import java.io.IOException
import java.security.GeneralSecurityException
import java.security.KeyStore
import java.util.concurrent.Executors
import javax.crypto.Cipher
import javax.crypto.KeyGenerator
import javax.crypto.SecretKey
import javax.crypto.spec.GCMParameterSpec

/** How the key store answers: with the secret where one was asked for, or why not. */
sealed interface Answer {
    data class Done(val secret: String?) : Answer
    data class Not(val code: String, val message: String) : Answer
}

/**
 * Secrets under a key of Android's Keystore that only a finger or a face opens, and that a new finger ends. What it sealed
 * lies in the folder that no backup of the system takes.
 */
@TargetApi(Build.VERSION_CODES.P)
class Vault(private val context: Context) {
    private val folder = File(context.noBackupFilesDir, "keys")
    /** Not the main thread: the core waits for the answer, and whatever waits for the core there must not keep it away. */
    private val answers = Executors.newSingleThreadExecutor()
    private val store: KeyStore by lazy { KeyStore.getInstance(STORE).apply { load(null) } }

    fun keep(activity: Activity, name: String, secret: String, answer: (Answer) -> Unit) = guarded(name, answer) {
        forget(name)
        val cipher = Cipher.getInstance(CIPHER)
        cipher.init(Cipher.ENCRYPT_MODE, make(name))
        ask(activity, cipher, answer) { proven ->
            val sealed = Sealed(proven.iv, proven.doFinal(secret.toByteArray()))
            folder.mkdirs()
            File(folder, name).writeBytes(sealed.write())
            Answer.Done(null)
        }
    }

    fun fetch(activity: Activity, name: String, answer: (Answer) -> Unit) = guarded(name, answer) {
        val sealed = File(folder, name).takeIf { it.exists() }?.let { Sealed.read(it.readBytes()) }
        val key = store.getKey(name, null) as SecretKey?
        if (sealed == null || key == null) return@guarded answer(gone())
        val cipher = Cipher.getInstance(CIPHER)
        cipher.init(Cipher.DECRYPT_MODE, key, GCMParameterSpec(TAG_BITS, sealed.iv))
        ask(activity, cipher, answer) { proven -> Answer.Done(String(proven.doFinal(sealed.text))) }
    }

    fun remove(name: String, answer: (Answer) -> Unit) = guarded(name, answer) {
        val held = store.containsAlias(name) || File(folder, name).exists()
        forget(name)
        answer(if (held) Answer.Done(null) else gone())
    }

    private fun forget(name: String) {
        store.deleteEntry(name)
        File(folder, name).delete()
    }

    private fun make(name: String): SecretKey {
        val spec = KeyGenParameterSpec.Builder(name, KeyProperties.PURPOSE_ENCRYPT or KeyProperties.PURPOSE_DECRYPT)
            .setBlockModes(KeyProperties.BLOCK_MODE_GCM)
            .setEncryptionPaddings(KeyProperties.ENCRYPTION_PADDING_NONE)
            .setKeySize(256)
            .setUserAuthenticationRequired(true)
            .setInvalidatedByBiometricEnrollment(true)
        // For each use anew, and by a finger or a face: whoever knows the device's code alone does not open it.
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.R) spec.setUserAuthenticationParameters(0, KeyProperties.AUTH_BIOMETRIC_STRONG)
        return KeyGenerator.getInstance(KeyProperties.KEY_ALGORITHM_AES, STORE).run {
            init(spec.build())
            generateKey()
        }
    }

    /** The words are the system's own, but for the name of the program. */
    private fun ask(activity: Activity, cipher: Cipher, answer: (Answer) -> Unit, work: (Cipher) -> Answer) {
        val callback = object : BiometricPrompt.AuthenticationCallback() {
            override fun onAuthenticationSucceeded(result: BiometricPrompt.AuthenticationResult) = tried(answer) {
                answer(work(result.cryptoObject.cipher))
            }

            override fun onAuthenticationError(code: Int, words: CharSequence) {
                val refused = code in REFUSALS
                answer(Answer.Not(if (refused) "refused" else "failed", words.toString()))
            }
        }
        BiometricPrompt.Builder(activity)
            .setTitle("Secundine")
            .setNegativeButton(activity.getString(android.R.string.cancel), answers) { _, _ ->
                answer(Answer.Not("refused", ""))
            }
            .build()
            .authenticate(BiometricPrompt.CryptoObject(cipher), CancellationSignal(), answers, callback)
    }

    private fun guarded(name: String, answer: (Answer) -> Unit, work: () -> Unit) {
        when {
            Build.VERSION.SDK_INT < Build.VERSION_CODES.P -> answer(Answer.Not("cannot", "needs Android 9"))
            !Sealed.isName(name) -> answer(Answer.Not("failed", "no name of a secret"))
            else -> tried(answer, work)
        }
    }

    private fun tried(answer: (Answer) -> Unit, work: () -> Unit) = try {
        work()
    } catch (_: KeyPermanentlyInvalidatedException) {
        answer(gone())
    } catch (error: GeneralSecurityException) {
        answer(Answer.Not("failed", error.toString()))
    } catch (error: IOException) {
        answer(Answer.Not("failed", error.toString()))
    } catch (error: RuntimeException) {
        // So the Keystore says of its own failures, and that no finger is enrolled.
        answer(Answer.Not("failed", error.toString()))
    }

    private fun gone() = Answer.Not("not-there", "")

    private companion object {
        const val STORE = "AndroidKeyStore"
        const val CIPHER = "AES/GCM/NoPadding"
        const val TAG_BITS = 128
        /** Called off by her, by a button, or by too many tries. */
        val REFUSALS = setOf(
            BiometricPrompt.BIOMETRIC_ERROR_USER_CANCELED,
            BiometricPrompt.BIOMETRIC_ERROR_CANCELED,
            BiometricPrompt.BIOMETRIC_ERROR_LOCKOUT,
            BiometricPrompt.BIOMETRIC_ERROR_LOCKOUT_PERMANENT,
            BiometricPrompt.BIOMETRIC_ERROR_TIMEOUT,
        )
    }
}
