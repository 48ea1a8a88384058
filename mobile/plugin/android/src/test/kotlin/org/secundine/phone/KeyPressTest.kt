package org.secundine.phone

import kotlin.test.assertEquals
import org.junit.Test

private val SYSTEM = Taken(swallowed = false, told = null)
private val QUIET = Taken(swallowed = true, told = null)

class KeyPressTest {
    private val press = KeyPress().apply { wanted = true }

    private fun down(key: VolumeKey, at: Long, repeats: Int = 0) = press.take(key, true, repeats, at)
    private fun up(key: VolumeKey, at: Long) = press.take(key, false, 0, at)

    @Test
    fun `a press is told once however long it is held`() {
        assertEquals(Taken(true, VolumeKey.UP), down(VolumeKey.UP, 1_000))
        for (n in 1..50) assertEquals(QUIET, down(VolumeKey.UP, 1_500 + n * 50L, n))
        assertEquals(QUIET, up(VolumeKey.UP, 4_100))
        assertEquals(Taken(true, VolumeKey.UP), down(VolumeKey.UP, 5_000))
    }

    @Test
    fun `two keys pressed by one grip are one`() {
        assertEquals(VolumeKey.DOWN, down(VolumeKey.DOWN, 1_000).told)
        assertEquals(QUIET, down(VolumeKey.UP, 1_299))
        assertEquals(QUIET, up(VolumeKey.DOWN, 1_400))
        assertEquals(QUIET, up(VolumeKey.UP, 1_410))
        assertEquals(VolumeKey.UP, down(VolumeKey.UP, 1_599).told)
    }

    @Test
    fun `presses that shake count from the last`() {
        assertEquals(VolumeKey.UP, down(VolumeKey.UP, 0).told)
        for (at in listOf(200L, 400, 600)) assertEquals(null, down(VolumeKey.UP, at).told)
        assertEquals(VolumeKey.UP, down(VolumeKey.UP, 900).told)
    }

    @Test
    fun `while nobody asks the keys are the system's`() {
        press.wanted = false
        assertEquals(SYSTEM, down(VolumeKey.UP, 1_000))
        assertEquals(SYSTEM, down(VolumeKey.UP, 1_500, 1))
        assertEquals(SYSTEM, up(VolumeKey.UP, 1_600))
    }

    @Test
    fun `a screen that goes or comes in the middle of a press splits none`() {
        down(VolumeKey.UP, 1_000)
        press.wanted = false
        assertEquals(QUIET, down(VolumeKey.UP, 1_500, 1))
        assertEquals(QUIET, up(VolumeKey.UP, 1_600))
        assertEquals(SYSTEM, down(VolumeKey.DOWN, 2_000))
        press.wanted = true
        assertEquals(SYSTEM, down(VolumeKey.DOWN, 2_500, 1))
        assertEquals(SYSTEM, up(VolumeKey.DOWN, 2_600))
    }

    @Test
    fun `the names are those that the page listens for`() {
        assertEquals(listOf("AudioVolumeUp", "AudioVolumeDown"), VolumeKey.entries.map { it.page })
    }
}
