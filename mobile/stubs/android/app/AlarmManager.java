// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.app;

public class AlarmManager {
    public static final String ACTION_SCHEDULE_EXACT_ALARM_PERMISSION_STATE_CHANGED =
            "android.app.action.SCHEDULE_EXACT_ALARM_PERMISSION_STATE_CHANGED";
    public static final int ELAPSED_REALTIME_WAKEUP = 2;

    AlarmManager() {}

    public native boolean canScheduleExactAlarms();

    public native void setExactAndAllowWhileIdle(int type, long triggerAtMillis, PendingIntent operation);

    public native void setAndAllowWhileIdle(int type, long triggerAtMillis, PendingIntent operation);

    public native void cancel(PendingIntent operation);
}
