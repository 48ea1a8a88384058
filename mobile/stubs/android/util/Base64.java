// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.util;

public class Base64 {
    public static final int NO_WRAP = 2;

    Base64() {}

    public static native String encodeToString(byte[] input, int flags);
}
