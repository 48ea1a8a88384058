// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.os;

public class Handler {
    public Handler(Looper looper) {}

    public final native boolean post(Runnable r);

    public final native boolean postDelayed(Runnable r, long delayMillis);
}
