// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.app;

import android.content.Context;
import android.content.Intent;
import android.content.IntentSender;

public final class PendingIntent {
    public static final int FLAG_UPDATE_CURRENT = 134217728;
    public static final int FLAG_IMMUTABLE = 67108864;
    public static final int FLAG_MUTABLE = 33554432;

    PendingIntent() {}

    public static native PendingIntent getBroadcast(Context context, int requestCode, Intent intent, int flags);

    public static native PendingIntent getActivity(Context context, int requestCode, Intent intent, int flags);

    public native IntentSender getIntentSender();
}
