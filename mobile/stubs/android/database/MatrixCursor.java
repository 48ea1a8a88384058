// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.database;

public class MatrixCursor implements Cursor {
    public MatrixCursor(String[] columnNames) {}

    public native void addRow(Object[] columnValues);
}
