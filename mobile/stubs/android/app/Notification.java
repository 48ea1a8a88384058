// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.app;

import android.content.Context;

public class Notification {
    public static final String CATEGORY_REMINDER = "reminder";
    public static final String CATEGORY_STOPWATCH = "stopwatch";
    public static final int VISIBILITY_PUBLIC = 1;

    public static class Builder {
        public Builder(Context context, String channelId) {}

        public native Builder setSmallIcon(int icon);

        public native Builder setContentTitle(CharSequence title);

        public native Builder setContentText(CharSequence text);

        public native Builder setShowWhen(boolean show);

        public native Builder setWhen(long when);

        public native Builder setVisibility(int visibility);

        public native Builder setContentIntent(PendingIntent intent);

        public native Builder setCategory(String category);

        public native Builder setAutoCancel(boolean autoCancel);

        public native Builder setUsesChronometer(boolean b);

        public native Builder setOngoing(boolean ongoing);

        public native Builder setOnlyAlertOnce(boolean onlyAlertOnce);

        public native Builder setTimeoutAfter(long durationMs);

        public native Notification build();
    }
}
