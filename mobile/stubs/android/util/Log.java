// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.util;

public final class Log {
    Log() {}

    public static native int v(String tag, String msg);

    public static native int d(String tag, String msg);

    public static native int i(String tag, String msg);

    public static native int w(String tag, String msg);

    public static native int e(String tag, String msg, Throwable tr);
}
