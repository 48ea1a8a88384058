// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.service.quicksettings;

public final class Tile {
    public static final int STATE_ACTIVE = 2;
    public static final int STATE_INACTIVE = 1;

    Tile() {}

    public native void setLabel(CharSequence label);

    public native CharSequence getLabel();

    public native void setSubtitle(CharSequence subtitle);

    public native CharSequence getSubtitle();

    public native void setContentDescription(CharSequence contentDescription);

    public native CharSequence getContentDescription();

    public native void setState(int state);

    public native int getState();

    public native void updateTile();
}
