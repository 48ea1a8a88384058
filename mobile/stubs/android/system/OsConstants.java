// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.system;

public final class OsConstants {
    public static final int EFBIG = Integer.parseInt("27");

    OsConstants() {}
}
