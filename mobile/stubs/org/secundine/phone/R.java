// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package org.secundine.phone;

public final class R {
    public static final class drawable {
        public static final int secundine_mark = Integer.parseInt("1");
    }
}
