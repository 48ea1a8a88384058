package org.secundine.phone

import android.os.Build
import android.os.Handler
import android.os.Looper
import android.os.SystemClock
import android.os.VibrationEffect
import android.service.quicksettings.Tile
import android.service.quicksettings.TileService
import java.io.File
import java.util.Locale
import java.util.concurrent.Executors
import org.secundine.core.Secundine
import org.secundine.core.markWords

/**
 * A tile among the quick settings that marks the birth of a baby: pull down, one touch, on a locked phone too, without
 * unlocking it and without the page. What it shows there is "Baby born" and a time, never a name: whoever holds the phone
 * can read it, and can mark.
 *
 * It runs in the process of the program and asks the one session there, beside the main thread: the session may be waiting for
 * that one, as where the system asks for a finger. What the tile says and the hand feels comes once the mark is on disk, or it
 * says that it is NOT. Compiled against stubs; it has never run on a phone.
 */
class BabyBornTile : TileService() {
    override fun onStartListening() {
        super.onStartListening()
        draw(false) { it.face(SystemClock.elapsedRealtime()) }
    }

    override fun onClick() {
        val touchedMs = SystemClock.elapsedRealtime()
        super.onClick()
        draw(true) { it.touch(touchedMs, SystemClock::elapsedRealtime) }
    }

    private fun draw(touched: Boolean, ask: (BabyBornSwitch) -> Face) = beside.execute {
        val face = try {
            ask(switch(File(dataDir, PRACTICE)))
        } catch (_: Throwable) {
            // The core's library could not be loaded, so that its words are not at hand either.
            val notSaved = getString(R.string.secundine_tile_not_saved)
            Face(notSaved, false, notSaved, Feel.NOT_SAVED)
        }
        if (touched) feel(face.feel)
        main.post { show(face) }
    }

    private fun show(face: Face) {
        val tile = qsTile ?: return
        val label = getString(R.string.secundine_tile)
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.Q) {
            tile.label = label
            tile.subtitle = face.subtitle
        } else {
            // Android 8 and 9 have one line.
            tile.label = face.subtitle.ifEmpty { label }
        }
        tile.contentDescription = face.spoken
        tile.state = if (face.on) Tile.STATE_ACTIVE else Tile.STATE_INACTIVE
        tile.updateTile()
    }

    private fun feel(feel: Feel) {
        val timings = when (feel) {
            Feel.NOTHING -> return
            Feel.SAVED -> longArrayOf(0, 80)
            Feel.NOT_SAVED -> longArrayOf(0, 500, 200, 500, 200, 500)
        }
        vibrator(this).vibrate(VibrationEffect.createWaveform(timings, -1))
    }

    private companion object {
        val main = Handler(Looper.getMainLooper())

        /** One touch after the other. */
        val beside = Executors.newSingleThreadExecutor()

        /** Where the shell keeps the practice, in the program's own folder: src-tauri/src/lib.rs. */
        const val PRACTICE = "practice"

        /** Outlives the tile, which the system makes anew each time: what was marked can be taken back. */
        var known: BabyBornSwitch? = null

        @Synchronized
        fun switch(practice: File): BabyBornSwitch = known ?: run {
            val language = Locale.getDefault().toLanguageTag()
            BabyBornSwitch(Secundine.beside(practice.path), language, markWords(language)).also { known = it }
        }
    }
}
