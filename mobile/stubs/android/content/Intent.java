// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.content;

import android.net.Uri;
import android.os.Parcelable;

public class Intent implements Parcelable {
    public static final String ACTION_BOOT_COMPLETED = "android.intent.action.BOOT_COMPLETED";
    public static final String ACTION_LOCKED_BOOT_COMPLETED = "android.intent.action.LOCKED_BOOT_COMPLETED";
    public static final String ACTION_MY_PACKAGE_REPLACED = "android.intent.action.MY_PACKAGE_REPLACED";
    public static final String ACTION_SEND = "android.intent.action.SEND";
    public static final String EXTRA_STREAM = "android.intent.extra.STREAM";
    public static final int FLAG_GRANT_READ_URI_PERMISSION = 1;
    public static final int FLAG_GRANT_WRITE_URI_PERMISSION = 2;

    public Intent(String action) {}

    public Intent(Context packageContext, Class<?> cls) {}

    public Intent(String action, Uri uri, Context packageContext, Class<?> cls) {}

    public native String getAction();

    public native Uri getData();

    public native Intent setType(String type);

    public native Intent putExtra(String name, Parcelable value);

    public native Intent addFlags(int flags);

    public native void setClipData(ClipData clip);

    public native ClipData getClipData();

    public static native Intent createChooser(Intent target, CharSequence title, IntentSender sender);
}
