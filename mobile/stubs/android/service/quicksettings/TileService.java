// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.service.quicksettings;

import android.app.Service;

public class TileService extends Service {
    public TileService() {}

    public native void onStartListening();

    public native void onClick();

    public final native Tile getQsTile();
}
