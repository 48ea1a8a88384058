// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package org.json;

import java.util.Collection;

public class JSONArray {
    public JSONArray() {}

    public JSONArray(Collection<?> copyFrom) {}

    public JSONArray(String json) throws JSONException {}

    public JSONArray(Object array) throws JSONException {}

    public native int length();

    public native Object get(int index) throws JSONException;

    public native Object opt(int index);

    public native JSONObject optJSONObject(int index);
}
