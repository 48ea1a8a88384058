// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package org.secundine.phone;

public final class R {
    public static final class drawable {
        public static final int secundine_mark = Integer.parseInt("1");
    }

    public static final class string {
        public static final int secundine_tile = Integer.parseInt("1");
        public static final int secundine_tile_not_saved = Integer.parseInt("2");
    }
}
