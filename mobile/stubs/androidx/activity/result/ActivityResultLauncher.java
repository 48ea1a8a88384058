// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package androidx.activity.result;

public abstract class ActivityResultLauncher<I> {
    public ActivityResultLauncher() {}

    public native void launch(I input);
}
