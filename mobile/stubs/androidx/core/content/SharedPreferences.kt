// A stub written by hand: what Tauri calls of this file, without any doing. mobile/stubs/README.md tells why.
package androidx.core.content

import android.content.SharedPreferences

@Suppress("UNUSED_PARAMETER")
inline fun SharedPreferences.edit(commit: Boolean = false, action: SharedPreferences.Editor.() -> Unit) = action(edit())
