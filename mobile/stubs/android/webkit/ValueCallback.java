// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.webkit;

public interface ValueCallback<T> {
    void onReceiveValue(T value);
}
