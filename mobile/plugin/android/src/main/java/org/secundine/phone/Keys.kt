package org.secundine.phone

import android.app.Activity
import android.view.KeyEvent
import android.view.KeyboardShortcutGroup
import android.view.Menu
import android.view.Window

/** Stands before a window and takes the volume keys while a screen asks for them; everything else goes on to whoever stood there. */
class Keys private constructor(private val before: Window.Callback, private val press: KeyPress, private val told: (VolumeKey) -> Unit) :
    Window.Callback by before {
    override fun dispatchKeyEvent(event: KeyEvent): Boolean {
        val key = KEYS[event.keyCode] ?: return before.dispatchKeyEvent(event)
        val taken = press.take(key, event.action == KeyEvent.ACTION_DOWN, event.repeatCount, event.eventTime)
        taken.told?.let(told)
        return taken.swallowed || before.dispatchKeyEvent(event)
    }

    // Kotlin hands on no methods that have a body of their own.
    override fun onProvideKeyboardShortcuts(data: List<KeyboardShortcutGroup>?, menu: Menu?, deviceId: Int) =
        before.onProvideKeyboardShortcuts(data, menu, deviceId)

    override fun onPointerCaptureChanged(hasCapture: Boolean) = before.onPointerCaptureChanged(hasCapture)

    companion object {
        private val KEYS = mapOf(KeyEvent.KEYCODE_VOLUME_UP to VolumeKey.UP, KeyEvent.KEYCODE_VOLUME_DOWN to VolumeKey.DOWN)

        /** Once for each window. */
        fun watch(activity: Activity, press: KeyPress, told: (VolumeKey) -> Unit) {
            val before = activity.window.callback
            if (before !is Keys) activity.window.callback = Keys(before, press, told)
        }
    }
}
