// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.content;

public abstract class BroadcastReceiver {
    public BroadcastReceiver() {}

    public abstract void onReceive(Context context, Intent intent);
}
