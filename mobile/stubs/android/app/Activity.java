// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.app;

import android.content.Intent;
import android.view.ContextThemeWrapper;
import android.view.Window;

public class Activity extends ContextThemeWrapper {
    public static final int RESULT_OK = -1;

    public Activity() {}

    public native Window getWindow();

    public native Intent getIntent();

    public native void finishAffinity();

    public native void onBackPressed();

    public final native void runOnUiThread(Runnable action);
}
