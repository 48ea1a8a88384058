// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.view;

public class KeyEvent {
    public static final int ACTION_DOWN = 0;
    public static final int KEYCODE_VOLUME_UP = 24;
    public static final int KEYCODE_VOLUME_DOWN = 25;

    KeyEvent() {}

    public final native int getAction();

    public final native int getKeyCode();

    public final native int getRepeatCount();

    public final native long getEventTime();
}
