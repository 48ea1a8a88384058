// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.os;

import java.io.File;
import java.io.FileNotFoundException;

public class ParcelFileDescriptor {
    public static final int MODE_READ_ONLY = 268435456;
    public static final int MODE_READ_WRITE = 805306368;

    ParcelFileDescriptor() {}

    public static native ParcelFileDescriptor open(File file, int mode) throws FileNotFoundException;

    public static native int parseMode(String mode);
}
