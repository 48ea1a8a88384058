// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package org.json;

public class JSONException extends Exception {
    public JSONException(String s) {
        super(s);
    }
}
