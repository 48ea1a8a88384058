package org.secundine.phone

import android.app.AlarmManager
import android.app.PendingIntent
import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import android.net.Uri
import android.os.Build
import android.os.SystemClock
import android.provider.Settings
import java.io.File
import java.io.IOException

/**
 * The time reminders that come with the program dead. What is kept of them lies where the device can read it before it is
 * unlocked after a restart: it has times and levels, and no name or word of a birth.
 */
class Alarms(context: Context) {
    private val context = context.createDeviceProtectedStorageContext()
    private val manager = context.getSystemService(AlarmManager::class.java)
    private val file = File(this.context.filesDir, "reminders")

    /** Whether the system wakes for them at their exact time. */
    fun exact(): Boolean = Build.VERSION.SDK_INT < Build.VERSION_CODES.S || manager.canScheduleExactAlarms()

    fun replace(group: String?, coming: List<Coming>, words: Words) = locked {
        change(Schedule.replace(read().armed, group, coming, now()), words)
    }

    /** The system has forgotten them, or may be asked for more than before. */
    fun again() = locked {
        val shelf = read()
        change(Schedule.again(shelf.armed, now()), shelf.words)
    }

    /** One has come. While the page is in sight it tells of it itself. */
    fun come(name: String) = locked {
        val shelf = read()
        val (one, standing) = Schedule.come(shelf.armed, name) ?: return@locked
        write(Shelf(standing, shelf.words))
        if (!Seen.now) shelf.words?.let { Notices(context).remind(one, it) }
    }

    private fun change(changes: Changes, words: Words?) {
        // The file first: an alarm that is set and not kept would come after a restart no more, one that is kept and not set does.
        write(Shelf(changes.standing, words))
        changes.cancel.forEach { manager.cancel(pending(it)) }
        changes.set.forEach(::set)
    }

    private fun set(one: Armed) {
        val kind = AlarmManager.ELAPSED_REALTIME_WAKEUP
        if (exact()) manager.setExactAndAllowWhileIdle(kind, one.elapsedMs, pending(one))
        else manager.setAndAllowWhileIdle(kind, one.elapsedMs, pending(one))
    }

    private fun pending(one: Armed): PendingIntent {
        val intent = Intent(COME, Uri.fromParts(SCHEME, one.name, null), context, AlarmReceiver::class.java)
        return PendingIntent.getBroadcast(context, 0, intent, PendingIntent.FLAG_UPDATE_CURRENT or PendingIntent.FLAG_IMMUTABLE)
    }

    private fun read(): Shelf = try {
        Shelf.read(file.readText())
    } catch (_: IOException) {
        Shelf(emptyList(), null)
    }

    /** Under another name first, so that a kill leaves the old list or the new one. */
    private fun write(shelf: Shelf) {
        val unfinished = File(file.path + ".unfinished")
        unfinished.writeText(shelf.write())
        unfinished.renameTo(file)
    }

    private fun now() = Now(System.currentTimeMillis(), SystemClock.elapsedRealtime(), Boot.count(context))

    private fun <T> locked(work: () -> T): T = synchronized(LOCK, work)

    companion object {
        const val COME = "org.secundine.phone.COME"
        private const val SCHEME = "secundine"
        private val LOCK = Any()
    }
}

/** Whether the page is in sight. False in a process that was begun for a reminder. */
object Seen {
    @Volatile
    var now = false
}

/** How often the device has booted: with it the core tells one run of its clock from another. */
object Boot {
    /** The core reads it from the process, whoever began it. */
    private const val VARIABLE = "SECUNDINE_BOOT"

    fun count(context: Context): Int = Settings.Global.getInt(context.contentResolver, Settings.Global.BOOT_COUNT, 0)

    fun tell(context: Context) {
        val count = count(context)
        if (count > 0) android.system.Os.setenv(VARIABLE, count.toString(), true)
    }
}

/** Woken by the system for a reminder, and after what makes it forget them. */
class AlarmReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        when (intent.action) {
            Alarms.COME -> intent.data?.schemeSpecificPart?.let(Alarms(context)::come)
            Intent.ACTION_LOCKED_BOOT_COMPLETED,
            Intent.ACTION_BOOT_COMPLETED,
            Intent.ACTION_MY_PACKAGE_REPLACED,
            AlarmManager.ACTION_SCHEDULE_EXACT_ALARM_PERMISSION_STATE_CHANGED,
            -> Alarms(context).again()
        }
    }
}
