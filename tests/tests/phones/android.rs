//! The Android project.

use std::collections::BTreeSet;

use roxmltree::{Document, Node};

use crate::files::{
    ACTIVITY, ANDROID, BUILD_TASK, CONFIG, EXTRACTION, FDROID, Files, GRADLE, IGNORED, OFFLINE, PLUGIN, Point, R8, RUST_PLUGIN,
    SHELL, SYNC, at,
};

const SCHEMA: &str = "http://schemas.android.com/apk/res/android";
const TOOLS: &str = "http://schemas.android.com/tools";

/// Every permission, and the one manifest where it stands with its reason.
const PERMISSIONS: &[(&str, &[&str])] = &[
    (ANDROID, &["MODIFY_AUDIO_SETTINGS", "RECORD_AUDIO"]),
    (SYNC, &["ACCESS_NETWORK_STATE", "INTERNET"]),
    // A reminder has to come at its minute, with the program gone, and after a start of the phone. The exact alarm that needs no
    // question (USE_EXACT_ALARM) is for programs that are timers, as this one is; Android 12 knows only the other one.
    (
        PLUGIN,
        &["POST_NOTIFICATIONS", "RECEIVE_BOOT_COMPLETED", "SCHEDULE_EXACT_ALARM", "USE_BIOMETRIC", "USE_EXACT_ALARM", "VIBRATE"],
    ),
];

/// What a program can lose to the network, or to who listens there: none of it in the flavour without.
const NETWORK: [&str; 5] =
    ["ACCESS_NETWORK_STATE", "ACCESS_WIFI_STATE", "CHANGE_NETWORK_STATE", "INTERNET", "NEARBY_WIFI_DEVICES"];

fn document(text: &str) -> Option<Document<'_>> {
    Document::parse(text).ok()
}

fn attribute<'a>(node: &Node<'a, '_>, name: &str) -> Option<&'a str> {
    node.attribute((SCHEMA, name))
}

fn is_taken_away(node: &Node<'_, '_>) -> bool {
    node.attribute((TOOLS, "node")) == Some("remove")
}

/// What the tag `application` says of itself.
fn application(files: &Files, name: &str, value: &str) -> Option<bool> {
    let document = document(files.text(ANDROID))?;
    let application = document.descendants().find(|node| node.has_tag_name("application"))?;
    Some(attribute(&application, name) == Some(value))
}

/// Names of the permissions of a manifest: those that it asks for, or those that it takes away.
fn permissions(text: &str, taken_away: bool) -> Option<Vec<String>> {
    let document = document(text)?;
    let mut names: Vec<String> = document
        .descendants()
        .filter(|node| node.tag_name().name().starts_with("uses-permission") && is_taken_away(node) == taken_away)
        .map(|node| attribute(&node, "name").map(|name| name.trim_start_matches("android.permission.").to_owned()))
        .collect::<Option<_>>()?;
    names.sort();
    Some(names)
}

/// Whether right before each permission stands why it is asked for. Two ways to the same alarm have one reason.
fn reasons(text: &str) -> Option<bool> {
    let document = document(text)?;
    let older = |node: &Node<'_, '_>| attribute(node, "name") == Some("android.permission.SCHEDULE_EXACT_ALARM");
    let told = |node: Node<'_, '_>| {
        node.prev_siblings().skip(1).find(|before| !before.is_text() && !older(before)).is_some_and(|before| before.is_comment())
    };
    Some(document.descendants().filter(|node| node.tag_name().name().starts_with("uses-permission")).all(told))
}

/// Components that another program can reach, with the permission that it needs for it. None where one does not say it.
fn reachable(text: &str) -> Option<BTreeSet<(String, Option<String>)>> {
    let document = document(text)?;
    let mut found = BTreeSet::new();
    for node in document.descendants().filter(|node| {
        ["activity", "activity-alias", "service", "receiver", "provider"].contains(&node.tag_name().name())
            && !is_taken_away(node)
    }) {
        if attribute(&node, "exported")? == "true" {
            found.insert((attribute(&node, "name")?.to_owned(), attribute(&node, "permission").map(str::to_owned)));
        }
    }
    Some(found)
}

/// Whether a part of the rules of Android 12 leaves out every kind of file, and takes in none.
fn leaves_all_out(files: &Files, part: &str) -> Option<bool> {
    let document = document(files.text(EXTRACTION))?;
    let part = document.descendants().find(|node| node.has_tag_name(part))?;
    let all = BTreeSet::from([
        "root",
        "file",
        "database",
        "sharedpref",
        "external",
        "device_root",
        "device_file",
        "device_database",
        "device_sharedpref",
    ]);
    // A path would leave the rest of its kind in.
    let out = part.children().filter(|node| node.has_tag_name("exclude") && node.attribute("path").is_none());
    let kinds: BTreeSet<_> = out.filter_map(|node| node.attribute("domain")).collect();
    Some(kinds == all && !part.children().any(|node| node.has_tag_name("include")))
}

/// What stands between a text and the end of its block in braces.
fn block<'a>(code: &'a str, begin: &str) -> Option<&'a str> {
    let inside = &code[code.find(begin)? + begin.len()..];
    let mut depth = 1_i32;
    let end = inside.char_indices().find(|(_, sign)| {
        depth += i32::from(*sign == '{') - i32::from(*sign == '}');
        depth == 0
    });
    Some(&inside[..end?.0])
}

pub const POINTS: &[Point] = &[
    Point {
        name: "Android: nothing goes into a backup",
        holds: |files| Some(application(files, "allowBackup", "false")? && application(files, "fullBackupContent", "false")?),
        breaks: &[
            (ANDROID, "android:allowBackup=\"false\"", "android:allowBackup=\"true\""),
            (ANDROID, "android:allowBackup=\"false\"", ""),
            (ANDROID, "android:fullBackupContent=\"false\"", ""),
        ],
    },
    Point {
        name: "Android: nothing goes to a cloud or to a new phone",
        holds: |files| {
            let named = application(files, "dataExtractionRules", "@xml/data_extraction_rules")?;
            Some(named && leaves_all_out(files, "cloud-backup")? && leaves_all_out(files, "device-transfer")?)
        },
        breaks: &[
            (ANDROID, "android:dataExtractionRules=\"@xml/data_extraction_rules\"", ""),
            (EXTRACTION, "<exclude domain=\"database\" />", ""),
            (EXTRACTION, "<exclude domain=\"root\" />", "<exclude domain=\"root\" path=\"cache\" />"),
            (EXTRACTION, "<cloud-backup>", "<cloud-backup><include domain=\"file\" path=\".\" />"),
            (EXTRACTION, "device-transfer", "device-move"),
        ],
    },
    Point {
        name: "Android: no line in the clear",
        holds: |files| application(files, "usesCleartextTraffic", "false"),
        breaks: &[(ANDROID, "android:usesCleartextTraffic=\"false\"", "android:usesCleartextTraffic=\"true\"")],
    },
    Point {
        name: "Android: the manifest does not say that the program may be looked into",
        holds: |files| {
            let document = document(files.text(ANDROID))?;
            let flagged = |name| document.descendants().any(|node| attribute(&node, name).is_some());
            Some(!flagged("debuggable") && !flagged("testOnly") && !flagged("profileable"))
        },
        breaks: &[(ANDROID, "android:allowBackup=\"false\"", "android:allowBackup=\"false\" android:debuggable=\"true\"")],
    },
    Point {
        name: "Android: others can reach the launcher's activity, and the system its tile; nothing else",
        holds: |files| {
            let tile =
                ("org.secundine.phone.BabyBornTile".to_owned(), Some("android.permission.BIND_QUICK_SETTINGS_TILE".to_owned()));
            let launcher = (".MainActivity".to_owned(), None);
            Some(
                reachable(files.text(ANDROID))? == BTreeSet::from([launcher])
                    && reachable(files.text(PLUGIN))? == BTreeSet::from([tile]),
            )
        },
        breaks: &[
            (ANDROID, "android:exported=\"false\"", "android:exported=\"true\""),
            (ANDROID, "android:exported=\"false\"", ""),
            (
                ANDROID,
                "android:name=\"androidx.profileinstaller.ProfileInstallReceiver\"\n            tools:node=\"remove\"",
                "android:name=\"androidx.profileinstaller.ProfileInstallReceiver\" android:exported=\"true\"",
            ),
            (PLUGIN, "android.permission.BIND_QUICK_SETTINGS_TILE", "android.permission.VIBRATE"),
        ],
    },
    Point {
        name: "Android: each permission is known, and stands in one manifest alone, with its reason",
        holds: |files| {
            let stands = |(path, known): &(&str, &[&str])| {
                Some(permissions(files.text(path), false)? == *known && reasons(files.text(path))?)
            };
            Some(PERMISSIONS.iter().map(stands).collect::<Option<Vec<_>>>()?.into_iter().all(|stands| stands))
        },
        breaks: &[
            (ANDROID, "<uses-feature", "<uses-permission android:name=\"android.permission.READ_CONTACTS\" /><uses-feature"),
            (ANDROID, "<!-- A spoken note, sealed as it is taken. Asked for when she first wants one. -->", ""),
            (SYNC, "<!-- Tells whether the connection is paid by volume, so that large files wait. -->", ""),
            (SYNC, "android.permission.INTERNET", "android.permission.CAMERA"),
            (PLUGIN, "android.permission.VIBRATE", "android.permission.RECORD_AUDIO"),
        ],
    },
    Point {
        name: "Android: the exact alarm that she could refuse is asked for only where there is no other",
        holds: |files| {
            let document = document(files.text(PLUGIN))?;
            let alarm =
                document.descendants().find(|node| attribute(node, "name") == Some("android.permission.SCHEDULE_EXACT_ALARM"))?;
            Some(attribute(&alarm, "maxSdkVersion") == Some("32"))
        },
        breaks: &[(PLUGIN, "android:maxSdkVersion=\"32\"", "")],
    },
    Point {
        name: "Android: without the network in one flavour, whatever a library asks for",
        holds: |files| {
            let none = permissions(files.text(ANDROID), false)?.iter().all(|name| !NETWORK.contains(&name.as_str()));
            Some(
                none && permissions(files.text(OFFLINE), true)? == NETWORK && permissions(files.text(OFFLINE), false)?.is_empty(),
            )
        },
        breaks: &[
            (OFFLINE, "android.permission.INTERNET\" tools:node=\"remove\"", "android.permission.INTERNET\""),
            (OFFLINE, "<uses-permission android:name=\"android.permission.ACCESS_NETWORK_STATE\" tools:node=\"remove\" />", ""),
            (ANDROID, "android.permission.RECORD_AUDIO", "android.permission.INTERNET"),
        ],
    },
    Point {
        name: "Android: who names no flavour gets the one without the network",
        holds: |files| {
            let plugin = files.code(RUST_PLUGIN);
            let named = plugin.contains(r#"environmentVariable("SECUNDINE_FLAVOUR").getOrElse("offline")"#);
            let flavours = block(&files.code(GRADLE), "productFlavors {")?
                == "\n        create(\"offline\") { dimension = \"network\" }\n        create(\"sync\") { dimension = \"network\" }\n    ";
            Some(named && flavours && plugin.contains(r#"listOf("offline", "sync")"#))
        },
        breaks: &[
            (RUST_PLUGIN, "getOrElse(\"offline\")", "getOrElse(\"sync\")"),
            (GRADLE, "create(\"offline\")", "create(\"plain\")"),
        ],
    },
    Point {
        name: "Android: no screenshot, from before anything is drawn; an empty card among the recent programs",
        holds: |files| {
            let code = files.code(ACTIVITY);
            let create = block(&code, "override fun onCreate(savedInstanceState: Bundle?) {")?;
            let secure = "window.setFlags(WindowManager.LayoutParams.FLAG_SECURE, WindowManager.LayoutParams.FLAG_SECURE)";
            let before = create.split_once("super.onCreate(")?.0;
            let told = before.contains(secure) && before.contains("setRecentsScreenshotEnabled(false)");
            Some(told && !code.contains("clearFlags"))
        },
        breaks: &[
            (ACTIVITY, "window.setFlags(", "// window.setFlags("),
            (ACTIVITY, "FLAG_SECURE)", "FLAG_FULLSCREEN)"),
            (ACTIVITY, "enableEdgeToEdge()", "window.clearFlags(8192)"),
            (ACTIVITY, "setRecentsScreenshotEnabled(false)", "setRecentsScreenshotEnabled(true)"),
            (ACTIVITY, "    // Before anything is drawn", "    super.onCreate(savedInstanceState)\n    // Before"),
        ],
    },
    Point {
        name: "Android: a release is minified and cannot be looked into, and Gradle never sees the key",
        holds: |files| {
            let gradle = files.code(GRADLE);
            let release = block(&gradle, "getByName(\"release\") {")?;
            let small = block(release, "optimization {")?.contains("enable = true");
            let key = ["signingConfig", "storePassword", "keyPassword", "storeFile", "keyAlias"]
                .iter()
                .any(|word| gradle.contains(word));
            Some(small && release.contains("isDebuggable = false") && !key)
        },
        breaks: &[
            (GRADLE, "isDebuggable = false", "isDebuggable = true"),
            (GRADLE, "enable = true", "enable = false"),
            (
                GRADLE,
                "isDebuggable = false",
                "isDebuggable = false\n            signingConfig = signingConfigs.getByName(\"release\")",
            ),
        ],
    },
    Point {
        name: "Android: nothing in a package differs from build to build",
        holds: |files| {
            let gradle = files.code(GRADLE);
            let list = block(&gradle, "dependenciesInfo {")?;
            Some(
                list.contains("includeInApk = false")
                    && list.contains("includeInBundle = false")
                    && gradle.contains("vcsInfo.include = false"),
            )
        },
        breaks: &[
            (GRADLE, "includeInApk = false", "includeInApk = true"),
            (GRADLE, "includeInBundle = false", ""),
            (GRADLE, "vcsInfo.include = false", "vcsInfo.include = true"),
        ],
    },
    Point {
        name: "Android: the oldest system is one, wherever it is said, and the newest is the one that was checked",
        holds: |files| {
            let gradle = files.code(GRADLE);
            let oldest = files.config()?.pointer("/bundle/android/minSdkVersion")?.as_u64()?;
            Some(oldest == 26 && gradle.contains(&format!("minSdk = {oldest}\n")) && gradle.contains("targetSdk = 36\n"))
        },
        breaks: &[
            (GRADLE, "minSdk = 26", "minSdk = 24"),
            (CONFIG, "\"minSdkVersion\": 26", "\"minSdkVersion\": 24"),
            (GRADLE, "targetSdk = 36", "targetSdk = 33"),
        ],
    },
    Point {
        name: "Android: R8 keeps what is found by name",
        holds: |files| {
            let rules = files.code(R8);
            let kept = ["org.secundine.phone.**", "org.secundine.core.**", "com.sun.jna.**"];
            Some(kept.iter().all(|kept| rules.lines().any(|line| line == format!("-keep class {kept} {{ *; }}"))))
        },
        breaks: &[
            (R8, "-keep class org.secundine.phone.** { *; }", "# -keep class org.secundine.phone.** { *; }"),
            (R8, "-keep class org.secundine.core.** { *; }", ""),
            (R8, "-keep class com.sun.jna.** { *; }", ""),
        ],
    },
    Point {
        name: "one name of the program everywhere",
        holds: |files| {
            let name = files.config()?.pointer("/identifier")?.as_str()?.to_owned();
            let gradle = files.code(GRADLE);
            let here =
                gradle.contains(&format!("applicationId = \"{name}\"")) && gradle.contains(&format!("namespace = \"{name}\""));
            Some(here && files.code(ACTIVITY).starts_with(&format!("package {name}\n")) && name == "org.secundine.app")
        },
        breaks: &[
            (CONFIG, "org.secundine.app", "org.secundine.other"),
            (GRADLE, "applicationId = \"org.secundine.app\"", "applicationId = \"org.secundine.sync\""),
        ],
    },
    Point {
        name: "F-Droid builds this version, in the flavour without the network, and signs it itself",
        holds: |files| {
            let metadata = files.yaml(FDROID)?;
            let version = files.config()?.pointer("/version")?.as_str()?.to_owned();
            let parts: Vec<i64> = version.split('.').map(str::parse).collect::<Result<_, _>>().ok()?;
            // As Tauri counts.
            let code = parts.iter().try_fold(0, |code, part| (*part < 1000).then_some(code * 1000 + part))?;
            let build = at(&metadata, &["Builds"])?.as_vec()?.last()?;
            let call = at(build, &["build"])?.as_str()?;
            Some(
                at(build, &["versionName"])?.as_str()? == version
                    && at(build, &["versionCode"])?.as_integer()? == code
                    && at(&metadata, &["CurrentVersionCode"])?.as_integer()? == code
                    && call.ends_with("mobile/build.sh android --flavour offline --unsigned"),
            )
        },
        breaks: &[
            (CONFIG, "\"version\": \"0.1.0\"", "\"version\": \"0.1.1\""),
            (FDROID, "--flavour offline", "--flavour sync"),
            (FDROID, "CurrentVersionCode: 1000", "CurrentVersionCode: 1001"),
        ],
    },
    Point {
        name: "Android: papers stay in the program's own folder",
        holds: |files| Some(files.code(SHELL).contains("let records = if cfg!(target_os = \"android\") { own } else {")),
        breaks: &[(SHELL, "if cfg!(target_os = \"android\") { own }", "if cfg!(target_os = \"ios\") { own }")],
    },
    Point {
        name: "Android: Gradle calls Tauri as the script does",
        holds: |files| Some(files.code(BUILD_TASK).contains("executable(\"cargo\")")),
        breaks: &[(BUILD_TASK, "executable(\"cargo\")", "executable(\"node\")")],
    },
    Point {
        name: "no key is ever committed",
        holds: |files| {
            let lines: BTreeSet<_> = files.text(IGNORED).lines().collect();
            Some(
                ["/mobile/signing.properties", "*.jks", "*.keystore", "*.p12", "*.mobileprovision"]
                    .iter()
                    .all(|one| lines.contains(one)),
            )
        },
        breaks: &[(IGNORED, "*.jks\n", ""), (IGNORED, "/mobile/signing.properties\n", "")],
    },
];
