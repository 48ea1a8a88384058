package org.secundine.phone

import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNull
import kotlin.test.assertTrue
import org.junit.Test

private val WORDS = Words("A time reminder has come.", "Soft", "Plain", "Strong", "Running clock")
private val ONE = Armed("00ff-7", Level.CAUTION, 1_795_570_800_000, 9_000_000, 41)

class ShelfTest {
    @Test
    fun `what is kept comes back`() {
        val shelf = Shelf(listOf(ONE, ONE.copy(level = Level.LIMIT, boot = 42)), WORDS)
        assertEquals(shelf, Shelf.read(shelf.write()))
        assertEquals(Shelf(emptyList(), null), Shelf.read(Shelf(emptyList(), null).write()))
    }

    @Test
    fun `the file has times, levels and the shared words, and nothing else`() {
        assertEquals(
            "secundine reminders 1\nwords\tA time reminder has come.\tSoft\tPlain\tStrong\tRunning clock\n00ff-7\tcaution\t1795570800000\t9000000\t41\n",
            Shelf(listOf(ONE), WORDS).write(),
        )
    }

    @Test
    fun `a line that cannot be read costs itself alone`() {
        val good = Shelf(listOf(ONE), WORDS).write()
        for (bad in listOf("Maria Example\tnote\t1\t2\t3", "00ff-7\tgrave\t1\t2\t3", "00ff-7\tnote\tx\t2\t3", "00ff-7\tnote\t1", "")) {
            assertEquals(Shelf(listOf(ONE), WORDS), Shelf.read(good + bad), bad)
        }
        for (none in listOf("", "another file\n", good.drop(3))) assertEquals(Shelf(emptyList(), null), Shelf.read(none))
    }

    @Test
    fun `a name of a person is no group`() {
        assertTrue(Shelf.isGroup("00112233445566778899aabbccddeeff-12"))
        for (name in listOf("Maria Example", "María", "a\tb", "", "a".repeat(81), "a/b")) assertFalse(Shelf.isGroup(name), name)
    }

    @Test
    fun `words that are none of ours are not shown`() {
        for (bad in listOf("", "  ", "two\nlines", "a\tb", "x".repeat(161))) assertFalse(Notes.fit(WORDS.copy(reminder = bad)), bad)
        assertNull(Shelf.read(Shelf(emptyList(), WORDS.copy(clock = "x".repeat(161))).write()).words)
    }
}

class NotesTest {
    /** A reminder has no field for a word: whatever is armed, the same is shown. */
    @Test
    fun `a notification says that a time has come, and not of whom or what`() {
        assertEquals(Note("Secundine", WORDS.reminder), Notes.reminder(WORDS))
        assertEquals(setOf("group", "level", "wallMs", "elapsedMs", "boot"), Armed::class.java.declaredFields.map { it.name }.toSet())
        assertEquals(setOf("inMs", "level"), Coming::class.java.declaredFields.map { it.name }.toSet())
    }

    @Test
    fun `the clock has the name of the program and the time alone`() {
        assertEquals(Note("Secundine", ""), Notes.clock())
    }

    @Test
    fun `each level has a channel and a name of its own`() {
        assertEquals(listOf("reminder-note", "reminder-caution", "reminder-limit"), Level.entries.map(Notes::channel))
        assertEquals(listOf("Soft", "Plain", "Strong"), Level.entries.map(WORDS::of))
        assertEquals(4, (Level.entries.map(Notes::channel) + Notes.CLOCK_CHANNEL).toSet().size)
    }
}
