// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.os;

public class BatteryManager {
    public static final int BATTERY_PROPERTY_CAPACITY = 4;

    BatteryManager() {}

    public native int getIntProperty(int id);
}
