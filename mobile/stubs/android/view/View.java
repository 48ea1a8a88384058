// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.view;

import android.content.Context;

public class View {
    public View(Context context) {}
}
