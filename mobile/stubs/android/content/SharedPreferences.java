// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.content;

public interface SharedPreferences {
    String getString(String key, String defValue);

    Editor edit();

    interface Editor {
        Editor putString(String key, String value);

        Editor remove(String key);

        void apply();

        boolean commit();
    }
}
