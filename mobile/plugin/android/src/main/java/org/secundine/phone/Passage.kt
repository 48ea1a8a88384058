package org.secundine.phone

import android.content.ContentProvider
import android.content.ContentValues
import android.content.Context
import android.database.Cursor
import android.database.MatrixCursor
import android.net.Uri
import android.os.Handler
import android.os.HandlerThread
import android.os.ParcelFileDescriptor
import android.os.ProxyFileDescriptorCallback
import android.os.storage.StorageManager
import android.provider.OpenableColumns
import android.system.ErrnoException
import android.system.OsConstants
import java.io.File
import java.io.FileNotFoundException
import java.util.UUID
import java.util.concurrent.ConcurrentHashMap

/**
 * What passes between this program and another: a photograph that a camera writes, which goes into memory and never onto a
 * disk, and a file that is given away. Nothing else can be opened, and nothing by a name that was not just handed out.
 */
class Passage : ContentProvider() {
    override fun onCreate(): Boolean {
        // Before anything else of this process, so that the core finds it.
        context?.let(Boot::tell)
        return true
    }

    override fun openFile(uri: Uri, mode: String): ParcelFileDescriptor = when (val open = OPEN[uri.lastPathSegment]) {
        is File -> {
            if (mode != "r") throw FileNotFoundException("read only")
            ParcelFileDescriptor.open(open, ParcelFileDescriptor.MODE_READ_ONLY)
        }
        is Incoming -> {
            val storage = context!!.getSystemService(StorageManager::class.java)
            // It takes how a file is opened and nothing more; what is written anew begins anew.
            val way = ParcelFileDescriptor.parseMode(mode) and ParcelFileDescriptor.MODE_READ_WRITE
            if (mode == "w" || 't' in mode) open.held.take().fill(0)
            storage.openProxyFileDescriptor(way, open.opened(), handler)
        }
        else -> throw FileNotFoundException()
    }

    override fun query(uri: Uri, columns: Array<String>?, where: String?, values: Array<String>?, order: String?): Cursor? {
        val file = OPEN[uri.lastPathSegment] as? File ?: return null
        val cursor = MatrixCursor(arrayOf(OpenableColumns.DISPLAY_NAME, OpenableColumns.SIZE))
        cursor.addRow(arrayOf<Any>(file.name, file.length()))
        return cursor
    }

    override fun getType(uri: Uri): String? = (OPEN[uri.lastPathSegment] as? File)?.let { kind(it.name) } ?: "image/jpeg"

    override fun insert(uri: Uri, values: ContentValues?): Uri? = null
    override fun delete(uri: Uri, where: String?, values: Array<String>?): Int = 0
    override fun update(uri: Uri, values: ContentValues?, where: String?, arguments: Array<String>?): Int = 0

    companion object {
        private val OPEN = ConcurrentHashMap<String, Any>()
        private val handler by lazy { Handler(HandlerThread("passage").apply { start() }.looper) }

        fun offer(context: Context, file: File): Uri = name(context, file)
        fun take(context: Context, incoming: Incoming): Uri = name(context, incoming)

        fun close(uri: Uri) {
            OPEN.remove(uri.lastPathSegment)
        }

        private fun name(context: Context, what: Any): Uri {
            val name = UUID.randomUUID().toString()
            OPEN[name] = what
            return Uri.parse("content://${context.packageName}.passage/$name")
        }

        /** What kind of file a name says that it is. */
        fun kind(name: String): String = when (name.substringAfterLast('.', "")) {
            "pdf" -> "application/pdf"
            "csv" -> "text/csv"
            "ics" -> "text/calendar"
            "json" -> "application/json"
            else -> "application/octet-stream"
        }
    }
}

/** A photograph on its way into memory. Cameras write it in pieces; some read back what they wrote, and open it more than once. */
class Incoming {
    val held = Held()
    private var ever = false
    private var open = 0

    /** Whether it was opened, and is no more. */
    val ended: Boolean @Synchronized get() = ever && open == 0

    @Synchronized
    fun opened(): ProxyFileDescriptorCallback {
        ever = true
        open += 1
        return Opened()
    }

    @Synchronized
    private fun closed() {
        open -= 1
    }

    private inner class Opened : ProxyFileDescriptorCallback() {
        override fun onGetSize(): Long = held.size.toLong()
        override fun onRead(offset: Long, size: Int, data: ByteArray): Int = held.read(offset, data, size)
        override fun onWrite(offset: Long, size: Int, data: ByteArray): Int =
            held.write(offset, data, size) ?: throw ErrnoException("write", OsConstants.EFBIG)
        override fun onFsync() = Unit
        override fun onRelease() = closed()
    }
}
