// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.content;

import android.content.pm.PackageManager;
import android.content.res.AssetManager;
import java.io.File;

public class ContextWrapper extends Context {
    public ContextWrapper(Context base) {}

    public native PackageManager getPackageManager();

    public native String getPackageName();

    public native AssetManager getAssets();

    public native Context getApplicationContext();

    public native ContentResolver getContentResolver();

    public native SharedPreferences getSharedPreferences(String name, int mode);

    public native File getDataDir();

    public native File getFilesDir();

    public native File getNoBackupFilesDir();

    public native Context createDeviceProtectedStorageContext();
}
