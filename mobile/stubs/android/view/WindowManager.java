// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.view;

public interface WindowManager {
    class LayoutParams {
        public static final int FLAG_KEEP_SCREEN_ON = 128;

        public LayoutParams() {}
    }
}
