package org.secundine.phone

/** The page's vibrations: milliseconds on, off, on, and so on. */
object Pattern {
    /** Longer ones, or longer in all, are a mistake. (ours) */
    private const val LONGEST_MS = 5_000L
    private const val MOST = 20

    /** As Android counts: it begins with a time off. None where there is nothing to be felt. */
    fun timings(pattern: List<Long>): LongArray? {
        val sound = pattern.isNotEmpty() && pattern.size <= MOST && pattern.all { it >= 0 } && pattern.sum() <= LONGEST_MS
        if (!sound || pattern.filterIndexed { n, _ -> n % 2 == 0 }.all { it == 0L }) return null
        return longArrayOf(0) + pattern
    }
}
