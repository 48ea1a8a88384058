package org.secundine.app

import android.os.Build
import android.os.Bundle
import android.view.WindowManager
import androidx.activity.enableEdgeToEdge

class MainActivity : TauriActivity() {
  override fun onCreate(savedInstanceState: Bundle?) {
    // Before anything is drawn: no screenshot, no recording, no second screen, an empty card among the recent programs.
    window.setFlags(WindowManager.LayoutParams.FLAG_SECURE, WindowManager.LayoutParams.FLAG_SECURE)
    // Some launchers draw that card without asking the window; Android 13 and newer are told apart from it.
    if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU) setRecentsScreenshotEnabled(false)
    enableEdgeToEdge()
    super.onCreate(savedInstanceState)
  }
}
