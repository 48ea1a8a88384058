// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package android.os;

public class Build {
    public static class VERSION {
        public static final int SDK_INT = Integer.parseInt("36");
    }

    public static class VERSION_CODES {
        public static final int P = 28;
        public static final int Q = 29;
        public static final int R = 30;
        public static final int S = 31;
        public static final int TIRAMISU = 33;
    }
}
