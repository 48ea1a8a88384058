package org.secundine.phone

/** The two keys that a thumb finds without looking; the page knows them by these names. */
enum class VolumeKey(val page: String) {
    UP("AudioVolumeUp"), DOWN("AudioVolumeDown")
}

/** What becomes of a key event: whether the system never sees it, and what the page is told, if anything. */
data class Taken(val swallowed: Boolean, val told: VolumeKey?)

/**
 * Makes one press of the many events of a key. While no screen asks for the keys they set the volume as ever; a key that went
 * down for the page comes up for the page, so that the system never sees half a press.
 */
class KeyPress {
    /** Whether a screen asks for the keys. */
    var wanted = false
    private val held = mutableSetOf<VolumeKey>()
    private var last = Long.MIN_VALUE

    /** `atMs` is of the clock of key events; `repeats` counts while a key is held. */
    fun take(key: VolumeKey, down: Boolean, repeats: Int, atMs: Long): Taken {
        if (!down) return Taken(held.remove(key), null)
        if (repeats > 0) return Taken(key in held, null)
        if (!wanted) return Taken(false, null)
        held.add(key)
        // A hand that grips the phone presses both: the page has the same rule.
        val near = last != Long.MIN_VALUE && atMs - last < APART_MS
        last = atMs
        return Taken(true, key.takeUnless { near })
    }

    private companion object {
        /** Two presses closer than this are one. (ours) */
        const val APART_MS = 300L
    }
}
