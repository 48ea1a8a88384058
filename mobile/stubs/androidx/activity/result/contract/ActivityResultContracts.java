// A stub written by hand: what Secundine and Tauri call of this class, without any doing. mobile/stubs/README.md tells why.
package androidx.activity.result.contract;

import android.content.Intent;
import androidx.activity.result.ActivityResult;
import androidx.activity.result.IntentSenderRequest;
import java.util.Map;

public final class ActivityResultContracts {
    ActivityResultContracts() {}

    public static final class StartActivityForResult extends ActivityResultContract<Intent, ActivityResult> {
        public StartActivityForResult() {}
    }

    public static final class StartIntentSenderForResult extends ActivityResultContract<IntentSenderRequest, ActivityResult> {
        public StartIntentSenderForResult() {}
    }

    public static final class RequestMultiplePermissions extends ActivityResultContract<String[], Map<String, Boolean>> {
        public RequestMultiplePermissions() {}
    }
}
