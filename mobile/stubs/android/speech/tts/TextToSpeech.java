// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.speech.tts;

import android.content.Context;
import android.os.Bundle;
import java.util.Set;

public class TextToSpeech {
    public static final int SUCCESS = 0;
    public static final int QUEUE_ADD = 1;

    public TextToSpeech(Context context, OnInitListener listener) {}

    public native Set<Voice> getVoices();

    public native int setVoice(Voice voice);

    public native Voice getVoice();

    public native int speak(CharSequence text, int queueMode, Bundle params, String utteranceId);

    public native int stop();

    public native int setOnUtteranceProgressListener(UtteranceProgressListener listener);

    public interface OnInitListener {
        void onInit(int status);
    }

    public class Engine {
        public static final String KEY_FEATURE_NOT_INSTALLED = "notInstalled";
    }
}
