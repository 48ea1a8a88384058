// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.webkit;

import android.content.Context;
import android.view.View;

public class WebView extends View {
    public WebView(Context context) {
        super(context);
    }

    public native void evaluateJavascript(String script, ValueCallback<String> resultCallback);
}
