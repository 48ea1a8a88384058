// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.speech.tts;

public abstract class UtteranceProgressListener {
    public UtteranceProgressListener() {}

    public abstract void onStart(String utteranceId);

    public abstract void onDone(String utteranceId);

    @Deprecated
    public abstract void onError(String utteranceId);
}
