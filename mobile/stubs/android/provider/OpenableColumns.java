// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.provider;

public interface OpenableColumns {
    String DISPLAY_NAME = "_display_name";
    String SIZE = "_size";
}
