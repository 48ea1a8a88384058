package org.secundine.phone

import android.app.Notification
import android.app.NotificationChannel
import android.app.NotificationManager
import android.app.PendingIntent
import android.content.Context

/** What is shown outside the page: a reminder that has come, and the running clock. Everybody who passes may read it. */
class Notices(private val context: Context) {
    private val manager = context.getSystemService(NotificationManager::class.java)

    /** What the system's settings call them, and how each level feels; what a person has changed there stays. */
    fun name(words: Words, patterns: Map<Level, LongArray>) {
        for (level in Level.entries) {
            val channel = NotificationChannel(Notes.channel(level), words.of(level), NotificationManager.IMPORTANCE_HIGH)
            channel.lockscreenVisibility = Notification.VISIBILITY_PUBLIC
            channel.enableVibration(true)
            patterns[level]?.let { channel.vibrationPattern = it }
            manager.createNotificationChannel(channel)
        }
        nameClock(words)
    }

    private fun nameClock(words: Words) {
        val channel = NotificationChannel(Notes.CLOCK_CHANNEL, words.clock, NotificationManager.IMPORTANCE_LOW)
        channel.lockscreenVisibility = Notification.VISIBILITY_PUBLIC
        manager.createNotificationChannel(channel)
    }

    fun remind(one: Armed, words: Words) {
        val built = build(Notes.channel(one.level), Notes.reminder(words))
            .setCategory(Notification.CATEGORY_REMINDER)
            .setWhen(one.wallMs)
            .setAutoCancel(true)
        manager.notify(one.name, REMINDER, built.build())
    }

    /** The system draws it by itself, without a service and with the program dead; it counts from this moment of the wall clock. */
    fun clock(sinceWallMs: Long, words: Words) {
        nameClock(words)
        val built = build(Notes.CLOCK_CHANNEL, Notes.clock())
            .setCategory(Notification.CATEGORY_STOPWATCH)
            .setWhen(sinceWallMs)
            .setUsesChronometer(true)
            .setOngoing(true)
            .setOnlyAlertOnce(true)
            .setTimeoutAfter(CLOCK_MOST_MS)
        manager.notify(CLOCK, built.build())
    }

    fun stopClock() = manager.cancel(CLOCK)

    private fun build(channel: String, note: Note): Notification.Builder = Notification.Builder(context, channel)
        .setSmallIcon(R.drawable.secundine_mark)
        .setContentTitle(note.title)
        .setContentText(note.text)
        .setShowWhen(true)
        .setVisibility(Notification.VISIBILITY_PUBLIC)
        .setContentIntent(open())

    private fun open(): PendingIntent? {
        val intent = context.packageManager.getLaunchIntentForPackage(context.packageName) ?: return null
        return PendingIntent.getActivity(context, 0, intent, PendingIntent.FLAG_IMMUTABLE)
    }

    private companion object {
        const val REMINDER = 1
        const val CLOCK = 2
        /** A clock that nobody stopped goes by itself. (ours) */
        const val CLOCK_MOST_MS = 12 * 60 * 60_000L
    }
}
