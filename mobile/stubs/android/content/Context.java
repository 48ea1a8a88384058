// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.content;

import android.content.pm.PackageManager;
import android.content.res.AssetManager;
import java.io.File;

public abstract class Context {
    public static final int MODE_PRIVATE = 0;

    public Context() {}

    public abstract PackageManager getPackageManager();

    public abstract String getPackageName();

    public abstract AssetManager getAssets();

    public abstract Context getApplicationContext();

    public abstract ContentResolver getContentResolver();

    public abstract SharedPreferences getSharedPreferences(String name, int mode);

    public abstract File getDataDir();

    public abstract File getFilesDir();

    public abstract File getNoBackupFilesDir();

    public abstract Context createDeviceProtectedStorageContext();

    public final native <T> T getSystemService(Class<T> serviceClass);

    public final native String getString(int resId);
}
