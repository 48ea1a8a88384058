// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.app;

public class NotificationManager {
    public static final int IMPORTANCE_LOW = 2;
    public static final int IMPORTANCE_HIGH = 4;

    NotificationManager() {}

    public native boolean areNotificationsEnabled();

    public native void createNotificationChannel(NotificationChannel channel);

    public native void notify(int id, Notification notification);

    public native void notify(String tag, int id, Notification notification);

    public native void cancel(int id);
}
