// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.os;

public final class Looper {
    Looper() {}

    public static native Looper getMainLooper();
}
