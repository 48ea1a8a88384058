package org.secundine.phone

/** How much a time reminder asks for attention. */
enum class Level {
    NOTE, CAUTION, LIMIT;

    /** As the page and the file call it. */
    val key = name.lowercase()

    companion object {
        fun of(key: String): Level? = entries.find { it.key == key }
    }
}

/** The clocks of the device: wall, ms; since boot through sleep, ms; and how many times it has booted. */
data class Now(val wallMs: Long, val elapsedMs: Long, val boot: Int)

/** A time that is to come, as the page tells it. */
data class Coming(val inMs: Long, val level: Level)

/** A time that is set on the device. No word of it says whose, or what: a group is a name that means nothing outside the core. */
data class Armed(val group: String, val level: Level, val wallMs: Long, val elapsedMs: Long, val boot: Int) {
    /** What the system knows it by; the time too, so that one that moved is another. */
    val name: String get() = "$group/$wallMs/${level.key}"

    /** By the clock that runs through sleep; after a restart of the device the wall clock is all there is. */
    fun inMs(now: Now): Long = if (boot == now.boot) elapsedMs - now.elapsedMs else wallMs - now.wallMs
}

/** What has to be done to the system's alarms, and what stands then. */
data class Changes(val cancel: List<Armed>, val set: List<Armed>, val standing: List<Armed>)

/** Which alarms are set and which are cancelled. It keeps no clock and asks no system. */
object Schedule {
    /** The core arms three of a birth; more than so many of one group are a mistake. (ours) */
    const val MOST = 8
    /** A time that moved by less is the same: an answer of the core may lie a moment behind. (ours) */
    const val SAME_MS = 1_000L
    /** A time that came while the device was off is told when it is on again, if it is no older. (ours) */
    const val LATE_MS = 60 * 60_000L

    /** The whole list of a group is replaced; what stays as it was is not touched. Without a group, that of all. */
    fun replace(old: List<Armed>, group: String?, coming: List<Coming>, now: Now): Changes {
        val (ours, others) = old.partition { group == null || it.group == group }
        val wanted = if (group == null) emptyList() else coming.filter { it.inMs > 0 }.sortedBy { it.inMs }.take(MOST)
        val left = ours.toMutableList()
        val kept = mutableListOf<Armed>()
        val set = mutableListOf<Armed>()
        for (one in wanted) {
            val same = left.find { it.level == one.level && it.boot == now.boot && kotlin.math.abs(it.inMs(now) - one.inMs) < SAME_MS }
            if (same != null) {
                left.remove(same)
                kept.add(same)
            } else {
                set.add(Armed(group!!, one.level, now.wallMs + one.inMs, now.elapsedMs + one.inMs, now.boot))
            }
        }
        return Changes(left, set.distinctBy { it.name }, others + kept + set.distinctBy { it.name })
    }

    /** One has come: it stands no more. None where it was not set, so that a late call of the system tells nothing twice. */
    fun come(old: List<Armed>, name: String): Pair<Armed, List<Armed>>? {
        val one = old.find { it.name == name } ?: return null
        return one to old - one
    }

    /** The system has forgotten its alarms, as after a restart: all are set anew, counted on this run's clock. */
    fun again(old: List<Armed>, now: Now): Changes {
        val standing = old.filter { it.inMs(now) > -LATE_MS }.map {
            it.copy(elapsedMs = now.elapsedMs + maxOf(it.inMs(now), 0), boot = now.boot)
        }
        return Changes(emptyList(), standing, standing)
    }
}
