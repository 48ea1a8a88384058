// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package androidx.lifecycle;

public abstract class Lifecycle {
    public Lifecycle() {}

    public abstract State getCurrentState();

    public enum State {
        DESTROYED,
        INITIALIZED,
        CREATED,
        STARTED,
        RESUMED
    }
}
