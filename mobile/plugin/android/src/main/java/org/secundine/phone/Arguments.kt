package org.secundine.phone

import app.tauri.plugin.JSObject

/** Whole numbers of a list; what is none is left out. */
fun JSObject.longs(key: String): List<Long> {
    val list = optJSONArray(key) ?: return emptyList()
    return (0 until list.length()).mapNotNull { (list.opt(it) as? Number)?.toLong() }
}

fun JSObject.coming(): List<Coming> {
    val list = optJSONArray("coming") ?: return emptyList()
    return (0 until list.length()).mapNotNull { n ->
        val one = list.optJSONObject(n)
        val level = one?.let { Level.of(it.optString("level")) }
        level?.let { Coming(one.optLong("inMs"), it) }
    }
}

/** None where they could not be shown as they are. */
fun JSObject.words(): Words? {
    val told = getJSObject("words") ?: return null
    fun of(key: String): String = told.getString(key)
    return Words(of("reminder"), of("note"), of("caution"), of("limit"), of("clock")).takeIf(Notes::fit)
}
