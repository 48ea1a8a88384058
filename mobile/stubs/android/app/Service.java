// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.app;

import android.content.ContextWrapper;

public abstract class Service extends ContextWrapper {
    public Service() {
        super(null);
    }
}
