// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.text;

public class TextUtils {
    TextUtils() {}

    public static native String join(CharSequence delimiter, Object[] tokens);
}
