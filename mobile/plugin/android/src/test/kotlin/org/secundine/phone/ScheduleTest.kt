package org.secundine.phone

import kotlin.test.assertEquals
import kotlin.test.assertNotNull
import kotlin.test.assertNull
import kotlin.test.assertTrue
import org.junit.Test

private const val GROUP = "00112233445566778899aabbccddeeff-7"
private const val OTHER = "00112233445566778899aabbccddeeff-9"
private const val MINUTE = 60_000L
private val NOW = Now(wallMs = 1_795_570_800_000, elapsedMs = 9_000_000, boot = 41)

private fun note(inMs: Long) = Coming(inMs, Level.NOTE)
private fun later(ms: Long, wall: Long = ms) = NOW.copy(wallMs = NOW.wallMs + wall, elapsedMs = NOW.elapsedMs + ms)
private fun set(group: String = GROUP, vararg coming: Coming) = Schedule.replace(emptyList(), group, coming.toList(), NOW).standing

class ScheduleTest {
    @Test
    fun `a list is set on both clocks, and what is past is not`() {
        val changes = Schedule.replace(emptyList(), GROUP, listOf(note(2 * MINUTE), Coming(MINUTE, Level.LIMIT), note(0), note(-5)), NOW)
        assertEquals(listOf(MINUTE, 2 * MINUTE), changes.set.map { it.inMs(NOW) })
        assertEquals(listOf(Level.LIMIT, Level.NOTE), changes.set.map { it.level })
        assertEquals(listOf(NOW.wallMs + MINUTE, NOW.wallMs + 2 * MINUTE), changes.set.map { it.wallMs })
        assertEquals(changes.set, changes.standing)
        assertTrue(changes.cancel.isEmpty())
    }

    @Test
    fun `the same list again touches nothing, though an answer lies a moment behind`() {
        val old = set(GROUP, note(10 * MINUTE), note(20 * MINUTE))
        val again = Schedule.replace(old, GROUP, listOf(note(5 * MINUTE + 999), note(15 * MINUTE - 999)), later(5 * MINUTE))
        assertEquals(Changes(emptyList(), emptyList(), old), again)
    }

    @Test
    fun `one that moved is cancelled and set anew under another name`() {
        val old = set(GROUP, note(10 * MINUTE))
        val moved = Schedule.replace(old, GROUP, listOf(note(10 * MINUTE + Schedule.SAME_MS)), NOW)
        assertEquals(old, moved.cancel)
        assertEquals(1, moved.set.size)
        assertTrue(moved.set.single().name != old.single().name)
        val graver = Schedule.replace(old, GROUP, listOf(Coming(10 * MINUTE, Level.LIMIT)), NOW)
        assertEquals(old, graver.cancel)
        assertEquals(Level.LIMIT, graver.set.single().level)
    }

    @Test
    fun `an empty list ends those of its birth and of no other`() {
        val both = set(GROUP, note(MINUTE)) + set(OTHER, note(2 * MINUTE))
        val ended = Schedule.replace(both, GROUP, emptyList(), NOW)
        assertEquals(listOf(GROUP), ended.cancel.map { it.group })
        assertEquals(listOf(OTHER), ended.standing.map { it.group })
        val all = Schedule.replace(both, null, listOf(note(MINUTE)), NOW)
        assertEquals(both, all.cancel)
        assertTrue(all.standing.isEmpty() && all.set.isEmpty())
    }

    @Test
    fun `a crowd is cut to the soonest`() {
        val crowd = (1..20).reversed().map { note(it * MINUTE) }
        val changes = Schedule.replace(emptyList(), GROUP, crowd, NOW)
        assertEquals((1..Schedule.MOST).map { it * MINUTE }, changes.set.map { it.inMs(NOW) })
    }

    @Test
    fun `a wall clock that is set changes no distance on the same run`() {
        val one = set(GROUP, note(10 * MINUTE)).single()
        assertEquals(6 * MINUTE, one.inMs(later(4 * MINUTE, wall = -3 * 60 * MINUTE)))
    }

    @Test
    fun `after a restart all are set anew by the wall clock, a late one at once, an old one not`() {
        val old = set(GROUP, note(10 * MINUTE), note(90 * MINUTE), note(200 * MINUTE))
        val after = Now(NOW.wallMs + 100 * MINUTE, elapsedMs = 5_000, boot = 42)
        val again = Schedule.again(old, after)
        assertEquals(listOf(5_000L, 5_000 + 100 * MINUTE), again.set.map { it.elapsedMs })
        assertTrue(again.standing.all { it.boot == 42 } && again.standing == again.set)
        // The names stay: the alarm of an update of the program is the same one.
        assertEquals(old.drop(1).map { it.name }, again.set.map { it.name })
        assertTrue(Schedule.again(old, after.copy(wallMs = NOW.wallMs + 10 * MINUTE + Schedule.LATE_MS)).set.none { it.name == old[0].name })
    }

    @Test
    fun `one that comes stands no more, and comes once`() {
        val old = set(GROUP, note(MINUTE), note(2 * MINUTE))
        val (come, standing) = assertNotNull(Schedule.come(old, old[0].name))
        assertEquals(old[0], come)
        assertEquals(old.drop(1), standing)
        assertNull(Schedule.come(standing, old[0].name))
    }
}
