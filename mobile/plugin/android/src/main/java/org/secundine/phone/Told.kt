package org.secundine.phone

import android.app.NotificationManager
import android.content.Context
import android.media.AudioManager
import android.net.ConnectivityManager
import android.os.BatteryManager
import android.os.Build
import android.os.Vibrator
import android.os.VibratorManager
import app.tauri.plugin.JSObject

/** What the device tells of itself; what it cannot tell is left out. Free space is asked by the core. */
class Told(private val context: Context) {
    fun tell(): JSObject {
        val told = JSObject()
        told.put("notifications", context.getSystemService(NotificationManager::class.java).areNotificationsEnabled())
        told.put("exact_reminders", Alarms(context).exact())
        volume()?.let { told.put("volume", it) }
        battery()?.let { told.put("battery", it) }
        told.put("awake", true)
        told.put("vibration", vibrator(context).hasVibrator())
        metered()?.let { told.put("metered", it) }
        return told
    }

    /** Percent of what the page's sounds go through. */
    private fun volume(): Int? {
        val audio = context.getSystemService(AudioManager::class.java)
        val most = audio.getStreamMaxVolume(AudioManager.STREAM_MUSIC)
        return if (most > 0) audio.getStreamVolume(AudioManager.STREAM_MUSIC) * 100 / most else null
    }

    private fun battery(): Int? {
        val percent = context.getSystemService(BatteryManager::class.java).getIntProperty(BatteryManager.BATTERY_PROPERTY_CAPACITY)
        return percent.takeIf { it in 0..100 }
    }

    /** Only where the program may know of the network at all; without sync it may not. */
    private fun metered(): Boolean? = try {
        context.getSystemService(ConnectivityManager::class.java).isActiveNetworkMetered
    } catch (_: SecurityException) {
        null
    }
}

/** The device's motor. */
fun vibrator(context: Context): Vibrator =
    if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.S) context.getSystemService(VibratorManager::class.java).defaultVibrator
    else context.getSystemService(Vibrator::class.java)
