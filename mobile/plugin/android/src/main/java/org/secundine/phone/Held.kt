package org.secundine.phone

/** A file in memory alone, which another program writes and nobody reads back from a disk. */
class Held {
    private var bytes = ByteArray(0)
    var size = 0
        private set

    /** How many were taken; none once it would grow too large. */
    @Synchronized
    fun write(offset: Long, data: ByteArray, count: Int): Int? {
        val end = offset + count
        if (offset < 0 || count < 0 || count > data.size || end > MOST) return null
        if (end > bytes.size) {
            val grown = bytes.copyOf(minOf(maxOf(end, bytes.size * 2L), MOST).toInt())
            bytes.fill(0)
            bytes = grown
        }
        data.copyInto(bytes, offset.toInt(), 0, count)
        size = maxOf(size, end.toInt())
        return count
    }

    /** How many there were; some cameras read back what they wrote. */
    @Synchronized
    fun read(offset: Long, data: ByteArray, count: Int): Int {
        if (offset < 0 || offset >= size) return 0
        val many = minOf(count, size - offset.toInt(), data.size)
        bytes.copyInto(data, 0, offset.toInt(), offset.toInt() + many)
        return many
    }

    /** All of it; none is left here. */
    @Synchronized
    fun take(): ByteArray {
        val whole = bytes.copyOf(size)
        bytes.fill(0)
        bytes = ByteArray(0)
        size = 0
        return whole
    }

    companion object {
        /** Bytes; the core takes no larger file. (ours) */
        const val MOST = 32L * 1024 * 1024
    }
}
