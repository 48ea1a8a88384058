// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.hardware.biometrics;

import android.content.Context;
import android.content.DialogInterface;
import android.os.CancellationSignal;
import java.util.concurrent.Executor;
import javax.crypto.Cipher;

public class BiometricPrompt {
    public static final int BIOMETRIC_ERROR_TIMEOUT = 3;
    public static final int BIOMETRIC_ERROR_CANCELED = 5;
    public static final int BIOMETRIC_ERROR_LOCKOUT = 7;
    public static final int BIOMETRIC_ERROR_LOCKOUT_PERMANENT = 9;
    public static final int BIOMETRIC_ERROR_USER_CANCELED = 10;

    BiometricPrompt() {}

    public native void authenticate(CryptoObject crypto, CancellationSignal cancel, Executor executor, AuthenticationCallback callback);

    public static class Builder {
        public Builder(Context context) {}

        public native Builder setTitle(CharSequence title);

        public native Builder setNegativeButton(CharSequence text, Executor executor, DialogInterface.OnClickListener listener);

        public native BiometricPrompt build();
    }

    public static final class CryptoObject {
        public CryptoObject(Cipher cipher) {}

        public native Cipher getCipher();
    }

    public static class AuthenticationResult {
        AuthenticationResult() {}

        public native CryptoObject getCryptoObject();
    }

    public abstract static class AuthenticationCallback {
        public AuthenticationCallback() {}

        public native void onAuthenticationSucceeded(AuthenticationResult result);

        public native void onAuthenticationError(int errorCode, CharSequence errString);
    }
}
