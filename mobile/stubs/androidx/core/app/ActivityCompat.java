// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package androidx.core.app;

import android.app.Activity;
import android.content.Context;

public class ActivityCompat {
    ActivityCompat() {}

    public static native int checkSelfPermission(Context context, String permission);

    public static native boolean shouldShowRequestPermissionRationale(Activity activity, String permission);
}
