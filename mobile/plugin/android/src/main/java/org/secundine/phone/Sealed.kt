package org.secundine.phone

/** A secret as it lies on disk: its cipher's starting value, and what only the device's key store opens. */
data class Sealed(val iv: ByteArray, val text: ByteArray) {
    fun write(): ByteArray = byteArrayOf(VERSION, iv.size.toByte()) + iv + text

    override fun equals(other: Any?): Boolean = other is Sealed && iv.contentEquals(other.iv) && text.contentEquals(other.text)
    override fun hashCode(): Int = iv.contentHashCode() * 31 + text.contentHashCode()

    companion object {
        private const val VERSION: Byte = 1
        private val NAME = Regex("secundine-[0-9a-f]{32}")

        /** The names that the core makes are names of files too; nothing else is. */
        fun isName(name: String): Boolean = NAME.matches(name)

        fun read(bytes: ByteArray): Sealed? {
            val length = bytes.getOrNull(1)?.toInt() ?: return null
            if (bytes[0] != VERSION || length !in 12..16 || bytes.size <= 2 + length) return null
            return Sealed(bytes.copyOfRange(2, 2 + length), bytes.copyOfRange(2 + length, bytes.size))
        }
    }
}
