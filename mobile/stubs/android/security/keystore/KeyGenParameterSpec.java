// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.security.keystore;

import java.security.spec.AlgorithmParameterSpec;

public final class KeyGenParameterSpec implements AlgorithmParameterSpec {
    KeyGenParameterSpec() {}

    public static final class Builder {
        public Builder(String keystoreAlias, int purposes) {}

        public native Builder setBlockModes(String... blockModes);

        public native Builder setEncryptionPaddings(String... paddings);

        public native Builder setKeySize(int keySize);

        public native Builder setUserAuthenticationRequired(boolean required);

        public native Builder setUserAuthenticationParameters(int timeout, int type);

        public native Builder setInvalidatedByBiometricEnrollment(boolean invalidateKey);

        public native KeyGenParameterSpec build();
    }
}
