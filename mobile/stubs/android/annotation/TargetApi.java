// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.annotation;

public @interface TargetApi {
    int value();
}
