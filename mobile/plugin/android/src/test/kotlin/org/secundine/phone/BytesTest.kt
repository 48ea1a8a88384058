package org.secundine.phone

import kotlin.test.assertContentEquals
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNull
import kotlin.test.assertTrue
import org.junit.Test

class PatternTest {
    @Test
    fun `it begins with a time off`() {
        assertContentEquals(longArrayOf(0, 140, 460, 140), Pattern.timings(listOf(140, 460, 140)))
    }

    @Test
    fun `what cannot be felt, or is none, is nothing`() {
        for (bad in listOf(listOf(), listOf(0L, 500, 0), listOf(-1L), listOf(5_001L), List(21) { 1L })) assertNull(Pattern.timings(bad), "$bad")
        assertEquals(2, Pattern.timings(listOf(5_000))?.size)
    }
}

class HeldTest {
    private val held = Held()
    private fun write(offset: Long, vararg bytes: Byte) = held.write(offset, bytes, bytes.size)

    @Test
    fun `pieces in any order come out whole, and nothing stays`() {
        write(3, 4, 5)
        write(0, 1, 2, 3)
        val back = ByteArray(8)
        assertEquals(2, held.read(1, back, 2))
        assertContentEquals(byteArrayOf(2, 3), back.copyOf(2))
        assertEquals(1, held.read(4, back, 8))
        assertEquals(0, held.read(5, back, 8))
        assertContentEquals(byteArrayOf(1, 2, 3, 4, 5), held.take())
        assertEquals(0, held.size)
        assertEquals(0, held.read(0, back, 8))
    }

    @Test
    fun `it grows to its end and no further`() {
        val piece = ByteArray(1 shl 20) { 7 }
        for (n in 0 until 32L) assertEquals(piece.size, held.write(n shl 20, piece, piece.size))
        assertNull(write(Held.MOST, 1))
        assertNull(write(-1, 1))
        assertNull(held.write(0, piece, piece.size + 1))
        val whole = held.take()
        assertTrue(whole.size.toLong() == Held.MOST && whole.all { it == 7.toByte() })
    }
}

class SealedTest {
    private val sealed = Sealed(ByteArray(12) { it.toByte() }, ByteArray(90) { 9 })

    @Test
    fun `it comes back as it was`() {
        assertEquals(sealed, Sealed.read(sealed.write()))
    }

    @Test
    fun `what is no such file is none`() {
        val good = sealed.write()
        for (bad in listOf(ByteArray(0), byteArrayOf(1), good.copyOf(14), byteArrayOf(2) + good.drop(1), byteArrayOf(1, 90) + good.drop(2))) {
            assertNull(Sealed.read(bad), "${bad.size}")
        }
    }

    @Test
    fun `only the core's names are names of files`() {
        assertTrue(Sealed.isName("secundine-00112233445566778899aabbccddeeff"))
        for (bad in listOf("", "../secundine", "secundine-0011", "secundine-00112233445566778899AABBCCDDEEFF", "secundine-00112233445566778899aabbccddeeff/x")) {
            assertFalse(Sealed.isName(bad), bad)
        }
    }
}
