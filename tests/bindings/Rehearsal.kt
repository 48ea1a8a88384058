// The generated Kotlin side on a JVM against the real library: a whole birth through the one call, and the typed calls of
// native code. Run with -Duniffi.component.secundine_bindings.libraryOverride=…/libsecundine_bindings.so
package org.secundine.rehearsal

import com.fasterxml.jackson.databind.JsonNode
import com.fasterxml.jackson.databind.ObjectMapper
import java.io.File
import java.nio.file.Files
import kotlin.math.abs
import kotlin.test.assertContentEquals
import kotlin.test.assertEquals
import kotlin.test.assertFailsWith
import kotlin.test.assertNull
import kotlin.test.assertTrue
import org.secundine.core.CallException
import org.secundine.core.MarkException
import org.secundine.core.NotTold
import org.secundine.core.Secundine
import org.secundine.core.markWords

private const val PASSPHRASE = "lamp kettle bicycle"
private val json = ObjectMapper()

private fun Secundine.ask(request: String, values: String = ""): JsonNode {
    val answer = json.readTree(call("""{"request":"$request"${if (values.isEmpty()) "" else ",$values"}}"""))
    assertEquals(request, answer["response"].asText())
    return answer
}

private fun Secundine.refused(request: String, values: String = ""): String {
    val error = assertFailsWith<CallException.Refused> { ask(request, values) }
    return json.readTree(error.error)["code"].asText()
}

private fun Secundine.record(birth: String, kind: String, data: String) =
    ask("record", """"birth":"$birth","fact":{"kind":"$kind","data":$data},"at":{"at":"now","ago_ms":0}""")

fun main() {
    val folder = Files.createTempDirectory("secundine").toFile()
    try {
        rehearse(folder)
    } finally {
        folder.deleteRecursively()
    }
    println("rehearsed")
}

private fun rehearse(folder: File) {
    val practice = File(folder, "practice").path
    val page = Secundine(practice, File(folder, "records").path)
    assertEquals("locked", page.refused("births", """"skip":0,"take":9"""))
    assertFailsWith<MarkException.NotSaved> { page.markBabyBorn(0u, "en") }
    page.ask(
        "create_practice",
        """"practice":{"name":"Prüfung","practitioner":"Åsa Ngũgĩ","role":"midwife","protocol":"who"},"passphrase":"$PASSPHRASE"""",
    )
    Secundine.beside(practice).use { tile ->
        val birth = aBirth(page, tile, folder)
        whileLocked(page, tile, birth)
        notSaved(page, tile, File(practice))
    }
}

/** From the first tap to the printed record; what native code is told meanwhile. */
private fun aBirth(page: Secundine, tile: Secundine, folder: File): String {
    assertNull(tile.running())
    assertEquals(emptyList(), tile.reminders("en"))
    val birth = page.ask("baby_born_now", """"ago_ms":40""")["birth"].asText()
    val now = System.currentTimeMillis()
    val running = checkNotNull(tile.running())
    assertTrue(running.elapsedMs in 0..60_000 && abs(now - running.elapsedMs - running.since.utcMs) < 5_000, "$running")
    val uptimeMs = File("/proc/uptime").readText().substringBefore(' ').toDouble() * 1000
    assertTrue(abs(uptimeMs - running.elapsedMs - checkNotNull(running.since.runningMs)) < 5_000, "$running, $uptimeMs")
    val reminders = tile.reminders("es")
    assertEquals(3, reminders.size)
    assertTrue(reminders.all { it.at.utcMs > now && it.id.startsWith("$birth/") && !it.words.contains("Åsa") }, "$reminders")

    page.record(birth, "placenta_born", """{"babies":[1]}""")
    page.record(birth, "membranes_born", """{"babies":[1]}""")
    page.record(birth, "examined", """{"placenta":1,"item":"lobes","answer":{"answer":"choice","option":"meet"}}""")
    assertNull(tile.running())
    page.ask("sign", """"birth":"$birth","signer":null""")
    val view = page.ask("birth", """"birth":"$birth"""")
    assertEquals("signed", view["phase"].asText())
    assertEquals("Åsa Ngũgĩ", view["timeline"][0]["author"].asText())
    val written = File(page.ask("write_file", """"birth":"$birth","file":{"kind":"record"}""")["path"].asText())
    assertTrue(written.startsWith(File(folder, "records")))
    assertContentEquals("%PDF-".toByteArray(), written.readBytes().copyOf(5))
    return birth
}

private fun whileLocked(page: Secundine, tile: Secundine, birth: String) {
    page.ask("lock")
    assertFailsWith<NotTold.Locked> { tile.reminders("en") }
    val before = System.currentTimeMillis()
    val marked = tile.markBabyBorn(2_000u, "fr")
    assertTrue(marked.waits && marked.words == "${marked.clock} enregistré", "$marked")
    assertTrue(abs(before - 2_000 - marked.at.utcMs) < 5_000, "$marked")
    assertEquals(1, page.ask("status")["locked"]["marks"].size(), "the page shows the mark of the tile")
    assertTrue(checkNotNull(tile.running()).elapsedMs in 2_000..60_000)
    tile.takeBackMark("en")
    assertFailsWith<MarkException.Stands> { tile.takeBackMark("en") }
    val again = tile.markBabyBorn(0u, "en")
    assertEquals("wrong_passphrase", page.refused("unlock", """"passphrase":"not this one""""))
    page.ask("unlock", """"passphrase":"$PASSPHRASE"""")
    val births = page.ask("births", """"skip":0,"take":9""")["births"].map { it["birth"].asText() }
    val charts = births.filter { it != birth }.map { page.ask("birth", """"birth":"$it"""") }
    assertEquals(1, charts.count { chart -> chart["babies"].any { it["born"]["clock"]?.asText() == again.clock } }, "$charts")
}

private fun notSaved(page: Secundine, tile: Secundine, practice: File) {
    assertEquals("NOT SAVED", markWords("en").notSaved)
    page.ask("lock")
    val inbox = File(practice, "inbox")
    inbox.deleteRecursively()
    inbox.writeText("in the way")
    val error = assertFailsWith<MarkException.NotSaved> { tile.markBabyBorn(0u, "en") }
    assertTrue(error.why.isNotBlank())
    inbox.delete()
    assertTrue(tile.markBabyBorn(0u, "en").waits)
}
