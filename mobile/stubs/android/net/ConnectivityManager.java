// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.net;

public class ConnectivityManager {
    ConnectivityManager() {}

    public native boolean isActiveNetworkMetered();
}
