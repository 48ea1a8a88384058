// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.provider;

import android.content.ContentResolver;

public final class Settings {
    Settings() {}

    public static final class Global {
        public static final String BOOT_COUNT = "boot_count";

        Global() {}

        public static native int getInt(ContentResolver cr, String name, int def);
    }
}
