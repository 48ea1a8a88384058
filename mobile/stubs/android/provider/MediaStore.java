// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.provider;

public final class MediaStore {
    public static final String ACTION_IMAGE_CAPTURE = "android.media.action.IMAGE_CAPTURE";
    public static final String EXTRA_OUTPUT = "output";

    MediaStore() {}
}
