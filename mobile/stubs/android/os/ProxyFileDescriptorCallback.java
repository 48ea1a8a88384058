// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.os;

import android.system.ErrnoException;

public abstract class ProxyFileDescriptorCallback {
    public ProxyFileDescriptorCallback() {}

    public native long onGetSize() throws ErrnoException;

    public native int onRead(long offset, int size, byte[] data) throws ErrnoException;

    public native int onWrite(long offset, int size, byte[] data) throws ErrnoException;

    public native void onFsync() throws ErrnoException;

    public abstract void onRelease();
}
