package org.secundine.phone

import android.Manifest
import android.app.Activity
import android.app.PendingIntent
import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import android.net.Uri
import android.os.Build
import android.os.Handler
import android.os.Looper
import android.os.VibrationEffect
import android.provider.MediaStore
import android.util.Base64
import android.view.WindowManager
import android.webkit.WebView
import androidx.activity.result.ActivityResult
import androidx.appcompat.app.AppCompatActivity
import androidx.lifecycle.Lifecycle
import app.tauri.PermissionState
import app.tauri.annotation.ActivityCallback
import app.tauri.annotation.Command
import app.tauri.annotation.Permission
import app.tauri.annotation.PermissionCallback
import app.tauri.annotation.TauriPlugin
import app.tauri.plugin.Invoke
import app.tauri.plugin.JSObject
import app.tauri.plugin.Plugin
import java.io.File

private const val NOTIFICATIONS = "notifications"

/** What only a phone can do, for the page; the last three for the core alone. Each command is called by Rust, on the main thread. */
@TauriPlugin(permissions = [Permission(strings = [Manifest.permission.POST_NOTIFICATIONS], alias = NOTIFICATIONS)])
class PhonePlugin(private val activity: Activity) : Plugin(activity) {
    private val main = Handler(Looper.getMainLooper())
    private val press = KeyPress()
    private val vault = Vault(activity.applicationContext)
    private val notices = Notices(activity.applicationContext)
    private val speech by lazy { Speech(activity.applicationContext) { tell(it) } }
    private var page: WebView? = null
    private var shown: Activity = activity
    private var camera: Photograph? = null
    private var given: Uri? = null

    override fun load(webView: WebView) {
        page = webView
        speech
        // The program may be in sight before the plugin is there.
        if (activity is AppCompatActivity && activity.lifecycle.currentState == Lifecycle.State.RESUMED) onResume(activity)
    }

    override fun onResume(activity: AppCompatActivity) {
        shown = activity
        Seen.now = true
        Keys.watch(activity, press) { run("new KeyboardEvent('keydown', { key: '${it.page}' })") }
    }

    override fun onPause(activity: AppCompatActivity) {
        Seen.now = false
    }

    /** Asked for before a birth, so that no question of the system comes in the middle of one. */
    @Command
    fun tell(invoke: Invoke) {
        val open = Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU && getPermissionState(NOTIFICATIONS) == PermissionState.PROMPT
        if (invoke.getArgs().getBoolean("ask") && open) requestPermissionForAlias(NOTIFICATIONS, invoke, "told")
        else told(invoke)
    }

    @PermissionCallback
    fun told(invoke: Invoke) = invoke.resolve(Told(activity.applicationContext).tell())

    @Command
    fun keepAwake(invoke: Invoke) {
        val flag = WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON
        if (invoke.getArgs().getBoolean("on")) shown.window.addFlags(flag) else shown.window.clearFlags(flag)
        invoke.resolve()
    }

    @Command
    fun buzz(invoke: Invoke) {
        val pattern = Pattern.timings(invoke.getArgs().longs("pattern"))
        if (pattern != null) vibrator(activity).vibrate(VibrationEffect.createWaveform(pattern, -1))
        invoke.resolve()
    }

    @Command
    fun voices(invoke: Invoke) {
        val here = speech.voice(invoke.getArgs().getString("language")) != null
        invoke.resolve(JSObject().put("available", here))
    }

    @Command
    fun speak(invoke: Invoke) {
        val args = invoke.getArgs()
        if (speech.speak(args.getString("text"), args.getString("language"))) invoke.resolve()
        else invoke.reject("no voice of this device speaks it", "cannot")
    }

    @Command
    fun hush(invoke: Invoke) {
        speech.hush()
        invoke.resolve()
    }

    @Command
    fun remind(invoke: Invoke) {
        val args = invoke.getArgs()
        val words = args.words()
        val group = args.getString("group", null)
        if (words == null || group?.let(Shelf::isGroup) == false) return invoke.reject("no reminder of ours", "failed")
        val patterns = args.getJSObject("patterns")
        notices.name(words, Level.entries.mapNotNull { level -> patterns?.longs(level.key)?.let(Pattern::timings)?.let { level to it } }.toMap())
        Alarms(activity.applicationContext).replace(group, args.coming(), words)
        invoke.resolve()
    }

    @Command
    fun clock(invoke: Invoke) {
        val args = invoke.getArgs()
        val words = args.words() ?: return invoke.reject("no words of ours", "failed")
        if (args.isNull("sinceMs")) notices.stopClock() else notices.clock(System.currentTimeMillis() - args.getLong("sinceMs"), words)
        invoke.resolve()
    }

    @Command
    fun volumeKeys(invoke: Invoke) {
        press.wanted = invoke.getArgs().getBoolean("on")
        invoke.resolve()
    }

    /** Rust has seen to it that this file may leave. */
    @Command
    fun share(invoke: Invoke) {
        val file = File(invoke.getArgs().getString("path"))
        val uri = Passage.offer(activity, file)
        given?.let(Passage::close)
        given = uri
        val send = Intent(Intent.ACTION_SEND)
            .setType(Passage.kind(file.name))
            .putExtra(Intent.EXTRA_STREAM, uri)
            .addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION)
        send.clipData = android.content.ClipData.newRawUri("", uri)
        Chosen.one = false
        val chosen = PendingIntent.getBroadcast(
            activity, 0, Intent(activity, Chosen::class.java), PendingIntent.FLAG_UPDATE_CURRENT or PendingIntent.FLAG_MUTABLE,
        )
        startActivityForResult(invoke, Intent.createChooser(send, null, chosen.intentSender), "shared")
    }

    /** The chooser tells nothing by its end; whether another program was chosen comes by itself, and may come a moment later. */
    @ActivityCallback
    fun shared(invoke: Invoke, @Suppress("UNUSED_PARAMETER") result: ActivityResult) {
        main.postDelayed({ invoke.resolve(JSObject().put("given", Chosen.one)) }, LATE_MS)
    }

    @Command
    fun photograph(invoke: Invoke) {
        camera?.end()
        val taking = Photograph(activity.applicationContext)
        camera = taking
        val take = Intent(MediaStore.ACTION_IMAGE_CAPTURE)
            .putExtra(MediaStore.EXTRA_OUTPUT, taking.uri)
            .addFlags(Intent.FLAG_GRANT_WRITE_URI_PERMISSION or Intent.FLAG_GRANT_READ_URI_PERMISSION)
        try {
            startActivityForResult(invoke, take, "photographed")
        } catch (_: android.content.ActivityNotFoundException) {
            taking.end()
            invoke.reject("no camera program", "cannot")
        }
    }

    @ActivityCallback
    fun photographed(invoke: Invoke, result: ActivityResult) {
        val taking = camera ?: return invoke.reject("no photograph was asked for", "failed")
        camera = null
        if (result.resultCode != Activity.RESULT_OK) {
            taking.end()
            return invoke.resolve(JSObject())
        }
        taking.whole(main) { bytes ->
            if (bytes.isEmpty()) invoke.reject("the camera wrote nothing", "failed")
            else invoke.resolve(JSObject().put("base64", Base64.encodeToString(bytes, Base64.NO_WRAP)))
            bytes.fill(0)
        }
    }

    @Command
    fun keepSecret(invoke: Invoke) {
        val args = invoke.getArgs()
        vault.keep(shown, args.getString("name"), args.getString("secret")) { answer(invoke, it) }
    }

    @Command
    fun fetchSecret(invoke: Invoke) = vault.fetch(shown, invoke.getArgs().getString("name")) { answer(invoke, it) }

    @Command
    fun removeSecret(invoke: Invoke) = vault.remove(invoke.getArgs().getString("name")) { answer(invoke, it) }

    private fun answer(invoke: Invoke, answer: Answer) = when (answer) {
        is Answer.Done -> invoke.resolve(JSObject().put("secret", answer.secret))
        is Answer.Not -> invoke.reject(answer.message, answer.code)
    }

    /** What the voice tells of itself, as an event of the page beside those that the page itself tells. */
    private fun tell(call: String) = run("new CustomEvent('secundine-speech', { detail: { call: '$call' } })")

    private fun run(event: String) {
        main.post { page?.evaluateJavascript("window.dispatchEvent($event)", null) }
    }

    private companion object {
        const val LATE_MS = 700L
    }
}

/** Told by the system that a program was chosen to be given the file. */
class Chosen : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        one = true
    }

    companion object {
        @Volatile
        var one = false
    }
}

/** One photograph that is being taken. */
class Photograph(context: Context) {
    private val incoming = Incoming()
    val uri: Uri = Passage.take(context, incoming)

    fun end() {
        Passage.close(uri)
        incoming.held.take().fill(0)
    }

    /** The camera's program ends before the last of its bytes has come: they are waited for. */
    fun whole(main: Handler, tries: Int = TRIES, done: (ByteArray) -> Unit) {
        if (!incoming.ended && tries > 0) {
            main.postDelayed({ whole(main, tries - 1, done) }, WAIT_MS)
            return
        }
        Passage.close(uri)
        val bytes = incoming.held.take()
        done(if (incoming.ended) bytes else ByteArray(0))
    }

    private companion object {
        const val TRIES = 50
        const val WAIT_MS = 100L
    }
}
