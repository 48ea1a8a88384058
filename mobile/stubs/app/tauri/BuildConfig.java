// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package app.tauri;

public final class BuildConfig {
    public static final boolean DEBUG = Boolean.parseBoolean("false");
}
