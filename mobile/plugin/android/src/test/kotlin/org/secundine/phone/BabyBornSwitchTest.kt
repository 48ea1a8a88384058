package org.secundine.phone

import kotlin.test.assertEquals
import kotlin.test.assertTrue
import org.junit.Test
import org.secundine.core.MarkException
import org.secundine.core.MarkWords
import org.secundine.core.Marked
import org.secundine.core.Moment
import org.secundine.core.Reminder
import org.secundine.core.Running
import org.secundine.core.SecundineInterface

/** Keeps what it is asked for, or fails as it is told to. */
private class Core : SecundineInterface {
    val agos = mutableListOf<Long>()
    var takenBack = 0
    var failure: Exception? = null

    override fun markBabyBorn(agoMs: UInt, language: String): Marked {
        failure?.let { throw it }
        agos += agoMs.toLong()
        return Marked(Moment(0, null), "03:12:40", true, "03:12:40 saved")
    }

    override fun takeBackMark(language: String) {
        failure?.let { throw it }
        takenBack++
    }

    override fun call(request: String) = throw NotImplementedError()
    override fun reminders(language: String): List<Reminder> = throw NotImplementedError()
    override fun running(): Running? = throw NotImplementedError()
}

class BabyBornSwitchTest {
    private val core = Core()
    private val words = MarkWords("Baby born", "Touch again to take it back", "Taken back", "NOT SAVED")
    private val switch = BabyBornSwitch(core, "en", words)
    private var delayMs = 0L

    private fun touch(atMs: Long) = switch.touch(atMs) { atMs + delayMs }

    @Test
    fun `one touch marks the moment of the touch and shows it`() {
        delayMs = 420
        assertEquals("", switch.face(900).subtitle)
        val face = touch(1_000)
        assertEquals(listOf(420L), core.agos)
        assertEquals(Face("03:12:40 saved", true, "Baby born. 03:12:40 saved. Touch again to take it back", Feel.SAVED), face)
        assertEquals(face.copy(feel = Feel.NOTHING), switch.face(20_000), "looking at it is no touch")
        assertEquals(false, switch.face(61_000).on)
    }

    @Test
    fun `touches that shake are one`() {
        for (at in listOf(0L, 150, 900, 2_999)) touch(at)
        assertEquals(Pair(1, 0), Pair(core.agos.size, core.takenBack))
    }

    @Test
    fun `a touch soon after takes it back and a later one is the next baby`() {
        touch(0)
        assertEquals("Taken back", touch(10_000).subtitle)
        assertEquals(false, switch.face(10_001).on)
        touch(11_000)
        assertEquals(Pair(2, 1), Pair(core.agos.size, core.takenBack), "taken back by mistake: the next touch marks")
        touch(11_000 + BabyBornSwitch.TAKE_BACK_MS)
        assertEquals(Pair(3, 1), Pair(core.agos.size, core.takenBack))
    }

    @Test
    fun `what is not on disk is told loudly and the next touch tries at once`() {
        for (failure in listOf(MarkException.NotSaved("The device is full."), IllegalStateException("of any kind"))) {
            core.failure = failure
            val face = touch(0)
            assertEquals(Triple("NOT SAVED", false, Feel.NOT_SAVED), Triple(face.subtitle, face.on, face.feel))
            assertTrue(face.spoken.startsWith("Baby born. NOT SAVED."))
            assertEquals("NOT SAVED", switch.face(500_000).subtitle, "until something is saved")
        }
        core.failure = null
        assertEquals("03:12:40 saved", touch(300).subtitle)
    }

    @Test
    fun `what cannot be taken back still stands and shows`() {
        touch(0)
        core.failure = MarkException.Stands("This entry is not in the chart.")
        val face = touch(5_000)
        assertEquals(Pair("03:12:40 saved", false), Pair(face.subtitle, face.on))
        assertEquals("Baby born. 03:12:40 saved. This entry is not in the chart.", face.spoken)
    }

    @Test
    fun `a clock that goes back or a touch that waited for ever makes no odd time`() {
        delayMs = -50
        touch(0)
        delayMs = Long.MAX_VALUE / 2
        touch(100_000)
        assertEquals(listOf(0L, 3_600_000L), core.agos)
    }
}
