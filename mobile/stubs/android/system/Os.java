// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.system;

public final class Os {
    Os() {}

    public static native void setenv(String name, String value, boolean overwrite) throws ErrnoException;
}
