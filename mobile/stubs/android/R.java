// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android;

public final class R {
    public static final class string {
        public static final int cancel = 17039360;
    }
}
