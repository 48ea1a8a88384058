// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.app;

public final class NotificationChannel {
    public NotificationChannel(String id, CharSequence name, int importance) {}

    public native void enableVibration(boolean vibration);

    public native void setVibrationPattern(long[] vibrationPattern);

    public native long[] getVibrationPattern();

    public native void setLockscreenVisibility(int lockscreenVisibility);

    public native int getLockscreenVisibility();
}
