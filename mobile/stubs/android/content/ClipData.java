// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.content;

import android.net.Uri;

public class ClipData {
    ClipData() {}

    public static native ClipData newRawUri(CharSequence label, Uri uri);
}
