// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.media;

public class AudioManager {
    public static final int STREAM_MUSIC = 3;

    AudioManager() {}

    public native int getStreamVolume(int streamType);

    public native int getStreamMaxVolume(int streamType);
}
