// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.speech.tts;

import java.util.Locale;
import java.util.Set;

public class Voice {
    Voice() {}

    public native Locale getLocale();

    public native boolean isNetworkConnectionRequired();

    public native Set<String> getFeatures();
}
