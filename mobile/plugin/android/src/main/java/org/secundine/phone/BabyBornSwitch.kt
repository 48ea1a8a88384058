package org.secundine.phone

import org.secundine.core.MarkException
import org.secundine.core.MarkWords
import org.secundine.core.SecundineInterface

/** What stands on the tile. None of it is a name: it shows on a locked phone. */
data class Face(
    /** Under the label: the time that is saved, or that it is NOT. */
    val subtitle: String,
    /** A mark stands that another touch takes back. */
    val on: Boolean,
    /** The same and more, for who listens. */
    val spoken: String,
    val feel: Feel,
)

/** What the hand feels. */
enum class Feel { NOTHING, SAVED, NOT_SAVED }

/**
 * A switch that marks the birth of a baby with one touch: what a touch does, and what is shown of it. Nothing of Android here,
 * so that it runs on any JVM.
 *
 * Times are milliseconds of the clock that runs through suspend.
 */
class BabyBornSwitch(private val core: SecundineInterface, private val language: String, private val words: MarkWords) {
    private var face = face("")
    private var markedMs: Long? = null
    private var touchedMs = Long.MIN_VALUE

    /** What is shown without a touch. */
    fun face(nowMs: Long): Face = face.copy(on = canTakeBack(nowMs), feel = Feel.NOTHING)

    /** A touch at this moment; [now] is read as the core is asked, since a touch may have waited. */
    @Synchronized
    fun touch(atMs: Long, now: () -> Long): Face {
        val again = markedMs != null && atMs - touchedMs < BOUNCE_MS
        if (!again) {
            touchedMs = atMs
            face = if (canTakeBack(atMs)) takeBack(atMs) else mark(atMs, now)
        }
        return face.copy(on = canTakeBack(atMs), feel = if (again) Feel.NOTHING else face.feel)
    }

    private fun canTakeBack(nowMs: Long) = markedMs?.let { nowMs - it in 0 until TAKE_BACK_MS } ?: false

    private fun mark(atMs: Long, now: () -> Long): Face {
        markedMs = null
        return try {
            val ago = (now() - atMs).coerceIn(0, MOST_AGO_MS)
            val marked = core.markBabyBorn(ago.toUInt(), language)
            markedMs = atMs
            face(marked.words, "${marked.words}. ${words.takeBack}", Feel.SAVED)
        } catch (error: MarkException.NotSaved) {
            notSaved(error.why)
        } catch (error: Exception) {
            // Whatever it is: nobody has said that it is on disk.
            notSaved("")
        }
    }

    private fun takeBack(atMs: Long): Face {
        try {
            core.takeBackMark(language)
        } catch (error: Exception) {
            // It stands, and what stands is shown.
            val why = (error as? MarkException.Stands)?.why.orEmpty()
            markedMs = atMs - TAKE_BACK_MS
            return face(face.subtitle, "${face.subtitle}. $why")
        }
        markedMs = null
        return face(words.takenBack, feel = Feel.SAVED)
    }

    private fun notSaved(why: String) = face(words.notSaved, "${words.notSaved}. $why", Feel.NOT_SAVED)

    private fun face(subtitle: String, spoken: String = subtitle, feel: Feel = Feel.NOTHING) =
        Face(subtitle, false, "${words.label}. $spoken", feel)

    companion object {
        /** A touch so soon after the one before is the same touch. (ours) */
        const val BOUNCE_MS = 3_000L

        /** So long another touch takes the mark back; after that it marks the next baby. (ours) */
        const val TAKE_BACK_MS = 60_000L

        /** A touch that waited longer than an hour was not one. (ours) */
        private const val MOST_AGO_MS = 3_600_000L
    }
}
