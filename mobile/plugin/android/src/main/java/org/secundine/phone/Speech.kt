package org.secundine.phone

import android.content.Context
import android.speech.tts.TextToSpeech
import android.speech.tts.UtteranceProgressListener
import android.speech.tts.Voice
import java.util.Locale

/** Speaks with voices of this device alone: one that lies elsewhere would be sent what is read. */
class Speech(context: Context, private val told: (String) -> Unit) {
    private var ready = false
    private var spoken = 0
    private val engine: TextToSpeech = TextToSpeech(context) { status ->
        ready = status == TextToSpeech.SUCCESS
        told("ready")
    }

    init {
        engine.setOnUtteranceProgressListener(object : UtteranceProgressListener() {
            override fun onStart(id: String?) = Unit
            override fun onDone(id: String?) = told("ended")

            @Deprecated("the system still calls it")
            override fun onError(id: String?) = told("ended")
        })
    }

    /** A voice for a BCP 47 tag; none before the engine is up. */
    fun voice(language: String): Voice? {
        val wanted = Locale.forLanguageTag(language)
        val here = voices().filter { one ->
            one.locale.language == wanted.language && !one.isNetworkConnectionRequired && one.features?.contains(TextToSpeech.Engine.KEY_FEATURE_NOT_INSTALLED) != true
        }
        return here.find { it.locale.country == wanted.country } ?: here.firstOrNull()
    }

    fun speak(text: String, language: String): Boolean {
        engine.voice = voice(language) ?: return false
        return engine.speak(text, TextToSpeech.QUEUE_ADD, null, "${spoken++}") == TextToSpeech.SUCCESS
    }

    fun hush() {
        if (ready) engine.stop()
    }

    /** Some engines have none to tell, and say so with null. */
    @Suppress("USELESS_ELVIS")
    private fun voices(): Set<Voice> = if (ready) engine.voices ?: emptySet() else emptySet()
}
