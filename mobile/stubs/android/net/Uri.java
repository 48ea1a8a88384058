// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.net;

import android.os.Parcelable;

public abstract class Uri implements Parcelable {
    Uri() {}

    public static native Uri parse(String uriString);

    public static native Uri fromParts(String scheme, String ssp, String fragment);

    public abstract String getSchemeSpecificPart();

    public abstract String getLastPathSegment();
}
