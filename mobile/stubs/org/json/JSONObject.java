// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package org.json;

import java.util.Iterator;

public class JSONObject {
    public JSONObject() {}

    public JSONObject(String json) throws JSONException {}

    public JSONObject(JSONObject copyFrom, String[] names) throws JSONException {}

    public native JSONObject put(String name, boolean value) throws JSONException;

    public native JSONObject put(String name, double value) throws JSONException;

    public native JSONObject put(String name, int value) throws JSONException;

    public native JSONObject put(String name, long value) throws JSONException;

    public native JSONObject put(String name, Object value) throws JSONException;

    public native boolean isNull(String name);

    public native Object get(String name) throws JSONException;

    public native boolean getBoolean(String name) throws JSONException;

    public native int getInt(String name) throws JSONException;

    public native long getLong(String name) throws JSONException;

    public native String getString(String name) throws JSONException;

    public native long optLong(String name);

    public native String optString(String name);

    public native JSONArray optJSONArray(String name);

    public native JSONObject optJSONObject(String name);

    public native Iterator<String> keys();
}
