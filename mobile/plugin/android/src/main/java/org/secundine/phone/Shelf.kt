package org.secundine.phone

/** What is kept of the reminders while the program is dead: times, levels and the words that every reminder shares. */
data class Shelf(val armed: List<Armed>, val words: Words?) {
    /** One line each, its parts between tabs. */
    fun write(): String = buildString {
        appendLine(TITLE)
        words?.let { appendLine((listOf("words") + it.all).joinToString("\t")) }
        for (one in armed) appendLine(listOf(one.group, one.level.key, one.wallMs, one.elapsedMs, one.boot).joinToString("\t"))
    }

    companion object {
        private const val TITLE = "secundine reminders 1"
        private val GROUP = Regex("[A-Za-z0-9-]{1,80}")

        /** A group is a name that the core made; anything else, as a name of a person, is refused. */
        fun isGroup(text: String): Boolean = GROUP.matches(text)

        /** What cannot be read is left out: a reminder that is lost is told by the page when it opens. */
        fun read(text: String): Shelf {
            val lines = text.lines()
            if (lines.first() != TITLE) return Shelf(emptyList(), null)
            val parts = lines.drop(1).map { it.split('\t') }
            val words = parts.find { it.size == 6 && it[0] == "words" }?.let { Words(it[1], it[2], it[3], it[4], it[5]) }
            return Shelf(parts.mapNotNull(::armed), words?.takeIf(Notes::fit))
        }

        private fun armed(parts: List<String>): Armed? {
            if (parts.size != 5 || !isGroup(parts[0])) return null
            val level = Level.of(parts[1]) ?: return null
            val wall = parts[2].toLongOrNull() ?: return null
            val elapsed = parts[3].toLongOrNull() ?: return null
            return parts[4].toIntOrNull()?.let { Armed(parts[0], level, wall, elapsed, it) }
        }
    }
}
