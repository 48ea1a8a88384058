// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package app.tauri;

import android.content.Context;
import android.content.res.AssetManager;
import android.net.Uri;

public class FsUtils {
    public static native String readAsset(AssetManager assetManager, String fileName);

    public static native String getFileUrlForUri(Context context, Uri uri);
}
