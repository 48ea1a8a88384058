// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package androidx.activity.result;

import android.content.Intent;

public final class ActivityResult {
    public ActivityResult(int resultCode, Intent data) {}

    public native int getResultCode();

    public native Intent getData();
}
