package org.secundine.phone

/** What the system shows, from the page's catalogue: the same for every birth, so that no name can be among it. */
data class Words(val reminder: String, val note: String, val caution: String, val limit: String, val clock: String) {
    /** What the system's settings call the reminders of a level. */
    fun of(level: Level): String = when (level) {
        Level.NOTE -> note
        Level.CAUTION -> caution
        Level.LIMIT -> limit
    }

    val all get() = listOf(reminder, note, caution, limit, clock)
}

/** What stands on the locked screen. */
data class Note(val title: String, val text: String)

/** The texts of notifications. The person who holds the phone may not be the one whose record it is. */
object Notes {
    private const val NAME = "Secundine"
    /** A text that is longer is not one of ours. */
    private const val LONGEST = 160

    const val CLOCK_CHANNEL = "clock"
    fun channel(level: Level): String = "reminder-${level.key}"

    /** That a time has come, and nothing of which. */
    fun reminder(words: Words): Note = Note(NAME, words.reminder)

    /** The name and the time, which the system draws by itself. */
    fun clock(): Note = Note(NAME, "")

    /** Whether all of it is one line that can be shown and kept. */
    fun fit(words: Words): Boolean = words.all.all { it.isNotBlank() && it.length <= LONGEST && it.none(Char::isISOControl) }
}
