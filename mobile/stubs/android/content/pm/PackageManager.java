// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.content.pm;

import android.content.Intent;

public abstract class PackageManager {
    public static final int GET_PERMISSIONS = 4096;
    public static final int PERMISSION_GRANTED = 0;

    public PackageManager() {}

    public abstract PackageInfo getPackageInfo(String packageName, int flags) throws NameNotFoundException;

    public native PackageInfo getPackageInfo(String packageName, PackageInfoFlags flags) throws NameNotFoundException;

    public abstract Intent getLaunchIntentForPackage(String packageName);

    public static final class PackageInfoFlags {
        PackageInfoFlags() {}

        public static native PackageInfoFlags of(long value);
    }

    public static class NameNotFoundException extends Exception {
        public NameNotFoundException() {}
    }
}
