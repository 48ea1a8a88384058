//! The Xcode project, as xcodegen reads it.

use std::collections::BTreeSet;

use saphyr::Yaml;

use crate::files::{
    BEFORE, CONFIG, COVER, EXPORT, Files, GUIDE, INBOX, KEPT, MAIN, PRIVACY, PROJECT, Point, RUNS, SHELL, USAGE, at, root,
};

const APP: &str = "secundine-app_iOS";
const CLOCK: &str = "SecundineClock";

/// Each text of the Info.plist that says what something is asked for, and its message.
const ASKED: [(&str, &str); 3] = [
    ("NSCameraUsageDescription", "ios-camera"),
    ("NSMicrophoneUsageDescription", "ios-microphone"),
    ("NSFaceIDUsageDescription", "ios-face"),
];

/// Calls that a store wants declared, with the reason of its list.
const CALLS: [(&str, &[&str]); 3] = [
    ("NSPrivacyAccessedAPICategorySystemBootTime", &["35F9.1"]),
    ("NSPrivacyAccessedAPICategoryFileTimestamp", &["C617.1"]),
    ("NSPrivacyAccessedAPICategoryDiskSpace", &["E174.1", "85F4.1"]),
];

fn info<'tree, 'text>(project: &'tree Yaml<'text>, target: &str, key: &str) -> Option<&'tree Yaml<'text>> {
    at(project, &["targets", target, "info", "properties", key])
}

fn setting<'tree>(project: &'tree Yaml<'_>, target: &str, key: &str) -> Option<&'tree str> {
    at(project, &["targets", target, "settings", "base", key])?.as_str()
}

fn keys(tree: &Yaml<'_>) -> Option<BTreeSet<String>> {
    tree.as_mapping()?.keys().map(|key| key.as_str().map(str::to_owned)).collect()
}

/// The paths that a target takes its sources from.
fn sources(project: &Yaml<'_>, target: &str) -> Option<Vec<String>> {
    let list = at(project, &["targets", target, "sources"])?.as_vec()?;
    list.iter().map(|one| at(one, &["path"])?.as_str().map(str::to_owned)).collect()
}

fn is_false(tree: Option<&Yaml<'_>>) -> bool {
    tree.and_then(Yaml::as_bool) == Some(false)
}

fn list<'a>(dictionary: &'a plist::Dictionary, key: &str) -> Option<&'a Vec<plist::Value>> {
    dictionary.get(key)?.as_array()
}

/// The text of a Rust constant.
fn constant<'a>(rust: &'a str, name: &str) -> Option<&'a str> {
    let after = rust.split_once(&format!("const {name}: &str = \""))?.1;
    after.split('"').next()
}

pub const POINTS: &[Point] = &[
    Point {
        name: "iOS: a closed file is out of reach while the phone is locked",
        holds: |files| {
            let project = files.project()?;
            let class = |target| {
                at(&project, &["targets", target, "entitlements", "properties", "com.apple.developer.default-data-protection"])?
                    .as_str()
            };
            Some([APP, CLOCK].iter().all(|target| class(target) == Some("NSFileProtectionCompleteUnlessOpen")))
        },
        breaks: &[
            (PROJECT, "NSFileProtectionCompleteUnlessOpen", "NSFileProtectionNone"),
            (PROJECT, "    entitlements:\n      path: SecundineClock", "    entitled:\n      path: SecundineClock"),
        ],
    },
    Point {
        name: "iOS: no entitlement but those that are used: no cloud, no groups, no network extension",
        holds: |files| {
            let project = files.project()?;
            let has = |target| keys(at(&project, &["targets", target, "entitlements", "properties"])?);
            let data = "com.apple.developer.default-data-protection".to_owned();
            let urgent = "com.apple.developer.usernotifications.time-sensitive".to_owned();
            Some(has(APP)? == BTreeSet::from([data.clone(), urgent]) && has(CLOCK)? == BTreeSet::from([data]))
        },
        breaks: &[(
            PROJECT,
            "        com.apple.developer.usernotifications.time-sensitive: true",
            "        com.apple.developer.usernotifications.time-sensitive: true\n        com.apple.developer.icloud-services: [CloudDocuments]",
        )],
    },
    Point {
        name: "iOS: no other program and no cable reaches the papers",
        holds: |files| {
            let project = files.project()?;
            Some(
                ["UIFileSharingEnabled", "LSSupportsOpeningDocumentsInPlace"]
                    .iter()
                    .all(|key| is_false(info(&project, APP, key))),
            )
        },
        breaks: &[
            (PROJECT, "UIFileSharingEnabled: false", "UIFileSharingEnabled: true"),
            (PROJECT, "LSSupportsOpeningDocumentsInPlace: false", "LSSupportsOpeningDocumentsInPlace: true"),
        ],
    },
    Point {
        name: "iOS: no line in the clear",
        holds: |files| {
            let project = files.project()?;
            let lines = info(&project, APP, "NSAppTransportSecurity")?;
            let open = ["NSAllowsArbitraryLoads", "NSAllowsArbitraryLoadsInWebContent", "NSAllowsLocalNetworking"];
            Some(keys(lines)? == open.map(str::to_owned).into() && open.iter().all(|key| is_false(at(lines, &[key]))))
        },
        breaks: &[
            (PROJECT, "NSAllowsArbitraryLoads: false", "NSAllowsArbitraryLoads: true"),
            (PROJECT, "NSAllowsLocalNetworking: false", "NSExceptionDomains: {}"),
        ],
    },
    Point {
        name: "iOS: what is asked for is said in each language, in the words of the catalogue, and nothing else is asked for",
        holds: |files| {
            let project = files.project()?;
            let properties = at(&project, &["targets", APP, "info", "properties"])?;
            let asked: BTreeSet<_> = keys(properties)?.into_iter().filter(|key| key.ends_with("UsageDescription")).collect();
            let mut same = asked == ASKED.iter().map(|(key, _)| (*key).to_owned()).collect();
            for (key, message) in ASKED {
                same &= at(properties, &[key])?.as_str()? == files.message("core/messages/en.ftl", message)?;
                for (strings, words) in USAGE {
                    let line = format!("\"{key}\" = \"{}\";", files.message(words, message)?);
                    same &= files.text(strings).lines().any(|one| one == line);
                }
            }
            Some(same)
        },
        breaks: &[
            (PROJECT, "NSCameraUsageDescription: \"A photograph", "NSCameraUsageDescription: \"One photograph"),
            (
                PROJECT,
                "NSSupportsLiveActivities: true",
                "NSSupportsLiveActivities: true\n        NSContactsUsageDescription: \"Why not.\"",
            ),
            ("src-tauri/gen/apple/Sources/secundine-app/fr.lproj/InfoPlist.strings", "Une note", "Une autre note"),
            ("core/messages/es.ftl", "ios-face = Una", "ios-face = Otra"),
        ],
    },
    Point {
        name: "iOS: nobody is tracked, nothing is collected, and each call that has to be declared is, with its reason",
        holds: |files| {
            let privacy = files.plist(PRIVACY)?;
            let quiet = privacy.get("NSPrivacyTracking")?.as_boolean() == Some(false)
                && list(&privacy, "NSPrivacyTrackingDomains")?.is_empty()
                && list(&privacy, "NSPrivacyCollectedDataTypes")?.is_empty();
            let mut declared = Vec::new();
            for call in list(&privacy, "NSPrivacyAccessedAPITypes")? {
                let call = call.as_dictionary()?;
                let reasons: Option<Vec<_>> =
                    list(call, "NSPrivacyAccessedAPITypeReasons")?.iter().map(plist::Value::as_string).collect();
                declared.push((call.get("NSPrivacyAccessedAPIType")?.as_string()?, reasons?));
            }
            let project = files.project()?;
            let taken = |target| Some(sources(&project, target)?.iter().any(|path| path == "PrivacyInfo.xcprivacy"));
            Some(quiet && declared == CALLS.map(|(call, reasons)| (call, reasons.to_vec())) && taken(APP)? && taken(CLOCK)?)
        },
        breaks: &[
            (PRIVACY, "<key>NSPrivacyTracking</key>\n\t<false/>", "<key>NSPrivacyTracking</key>\n\t<true/>"),
            (
                PRIVACY,
                "<key>NSPrivacyCollectedDataTypes</key>\n\t<array/>",
                "<key>NSPrivacyCollectedDataTypes</key>\n\t<array><string>Health</string></array>",
            ),
            (PRIVACY, "<string>35F9.1</string>", ""),
            (PRIVACY, "C617.1", "DDA9.1"),
            (PRIVACY, "NSPrivacyAccessedAPICategoryDiskSpace", "NSPrivacyAccessedAPICategoryUserDefaults"),
            (PROJECT, "PrivacyInfo.xcprivacy", "Privacy.xcprivacy"),
        ],
    },
    Point {
        name: "iOS: what a store asks of encryption is answered, and the guide says why",
        holds: |files| {
            let project = files.project()?;
            Some(
                is_false(info(&project, APP, "ITSAppUsesNonExemptEncryption"))
                    && files.text(GUIDE).contains("ITSAppUsesNonExemptEncryption"),
            )
        },
        breaks: &[
            (PROJECT, "ITSAppUsesNonExemptEncryption: false", ""),
            (GUIDE, "ITSAppUsesNonExemptEncryption", "the encryption key"),
        ],
    },
    Point {
        name: "iOS: the clock on the lock screen is a part of its own, with the program's version and under its name",
        holds: |files| {
            let project = files.project()?;
            let config = files.config()?;
            let version = config.pointer("/version")?.as_str()?;
            let identifier = config.pointer("/identifier")?.as_str()?;
            let same = |target| {
                ["CFBundleShortVersionString", "CFBundleVersion"]
                    .iter()
                    .all(|key| info(&project, target, key).and_then(Yaml::as_str) == Some(version))
            };
            let point = at(info(&project, CLOCK, "NSExtension")?, &["NSExtensionPointIdentifier"])?.as_str()?;
            let parts = at(&project, &["targets", APP, "dependencies"])?.as_vec()?;
            let embedded = parts.iter().any(|part| at(part, &["target"]).and_then(Yaml::as_str) == Some(CLOCK));
            let kind = at(&project, &["targets", CLOCK, "type"])?.as_str()?;
            let safe = at(&project, &["targets", CLOCK, "settings", "base", "APPLICATION_EXTENSION_API_ONLY"])?.as_bool();
            Some(
                same(APP)
                    && same(CLOCK)
                    && embedded
                    && kind == "app-extension"
                    && point == "com.apple.widgetkit-extension"
                    && safe == Some(true)
                    && info(&project, APP, "NSSupportsLiveActivities")?.as_bool() == Some(true)
                    && setting(&project, APP, "PRODUCT_BUNDLE_IDENTIFIER")? == identifier
                    && setting(&project, CLOCK, "PRODUCT_BUNDLE_IDENTIFIER")? == format!("{identifier}.clock")
                    && sources(&project, CLOCK)?.iter().any(|path| path == "../../../mobile/plugin/ios/Clock"),
            )
        },
        breaks: &[
            (CONFIG, "\"version\": \"0.1.0\"", "\"version\": \"0.2.0\""),
            (PROJECT, "NSSupportsLiveActivities: true", "NSSupportsLiveActivities: false"),
            (PROJECT, "      - target: SecundineClock\n", ""),
            (PROJECT, "org.secundine.app.clock", "org.secundine.clock"),
            (PROJECT, "com.apple.widgetkit-extension", "com.apple.intents-service"),
            (PROJECT, "APPLICATION_EXTENSION_API_ONLY: true", "APPLICATION_EXTENSION_API_ONLY: false"),
        ],
    },
    Point {
        name: "iOS: the shortcut and the core's bindings are part of the program itself",
        holds: |files| {
            let project = files.project()?;
            let sources = sources(&project, APP)?;
            let own = "../../../mobile";
            let wanted = ["plugin/ios/Sources/BabyBornIntent.swift", "plugin/ios/Words", "bindings/swift"];
            let flags = setting(&project, APP, "OTHER_SWIFT_FLAGS")?;
            Some(
                wanted.iter().all(|one| sources.iter().any(|path| *path == format!("{own}/{one}")))
                    && flags.ends_with("/mobile/bindings/swift/SecundineCoreFFI.modulemap"),
            )
        },
        breaks: &[
            (PROJECT, "      - path: ../../../mobile/plugin/ios/Sources/BabyBornIntent.swift\n", ""),
            (PROJECT, "      - path: ../../../mobile/plugin/ios/Words\n", ""),
            (PROJECT, "/SecundineCoreFFI.modulemap", "/module.modulemap"),
        ],
    },
    Point {
        name: "iOS: the oldest system is one, wherever it is said",
        holds: |files| {
            let project = files.project()?;
            let oldest = files.config()?.pointer("/bundle/iOS/minimumSystemVersion")?.as_str()?.to_owned();
            Some(oldest == "16.4" && at(&project, &["options", "deploymentTarget", "iOS"])?.as_str()? == oldest)
        },
        breaks: &[(PROJECT, "iOS: \"16.4\"", "iOS: \"15.0\""), (CONFIG, "16.4", "17.0")],
    },
    Point {
        name: "iOS: nothing runs behind her back",
        holds: |files| {
            let project = files.project()?;
            Some(info(&project, APP, "UIBackgroundModes").is_none())
        },
        breaks: &[(PROJECT, "UIFileSharingEnabled: false", "UIFileSharingEnabled: false\n        UIBackgroundModes: [audio]")],
    },
    Point {
        name: "iOS: a cover lies over the page from before there is one",
        holds: |files| {
            let main = files.code(MAIN);
            let before = main.split_once("int main(")?.1.split_once("ffi::start_app();")?.0;
            let called = before.contains("secundine_before_page();");
            let here = files.code(BEFORE);
            let cover = files.code(COVER);
            let inactive =
                cover.split_once("UIApplication.willResignActiveNotification")?.1.split_once("didBecomeActiveNotification")?.0;
            Some(
                called
                    && here.contains("@_cdecl(\"secundine_before_page\")")
                    && here.contains("PrivacyCover.shared.watch()")
                    && inactive.contains("self.cover()")
                    && cover.contains("windowLevel = .alert + 1"),
            )
        },
        breaks: &[
            (MAIN, "\tsecundine_before_page();\n", ""),
            (BEFORE, "PrivacyCover.shared.watch()", "// PrivacyCover.shared.watch()"),
            (COVER, "willResignActiveNotification", "didEnterBackgroundNotification"),
            (COVER, "      self.cover()\n", ""),
        ],
    },
    Point {
        name: "iOS: nothing goes into a backup, and the inbox can be opened from the lock screen",
        holds: |files| {
            let kept = files.code(KEPT);
            let inbox = files.text(INBOX);
            let named = [constant(inbox, "INBOX_RECIPIENT")?, constant(inbox, "INBOX")?, constant(files.text(RUNS), "RUN")?];
            let there = files.code(SHELL).contains("data: app.path().app_data_dir()?.join(\"practice\")");
            Some(
                kept.contains("values.isExcludedFromBackup = true")
                    && kept.contains("for folder in [support, documents]")
                    && kept.contains(&format!("atAnyTime = {named:?}"))
                    && kept.contains("appendingPathComponent(\"practice\")")
                    && there
                    && kept.contains("FileProtectionType.completeUntilFirstUserAuthentication")
                    && files.code(BEFORE).contains("KeptFiles.guardAll()"),
            )
        },
        breaks: &[
            (KEPT, "isExcludedFromBackup = true", "isExcludedFromBackup = false"),
            (KEPT, "[support, documents]", "[documents]"),
            (BEFORE, "KeptFiles.guardAll()", ""),
            (INBOX, "const INBOX: &str = \"inbox\"", "const INBOX: &str = \"marks\""),
            (RUNS, "const RUN: &str = \"run\"", "const RUN: &str = \"boot\""),
            (SHELL, "join(\"practice\")", "join(\"store\")"),
        ],
    },
    Point {
        name: "iOS: an export sends no symbols and renumbers nothing",
        holds: |files| {
            let export = files.plist(EXPORT)?;
            let off = |key| export.get(key).and_then(plist::Value::as_boolean) == Some(false);
            Some(
                off("uploadSymbols")
                    && off("manageAppVersionAndBuildNumber")
                    && export.get("method")?.as_string() == Some("app-store-connect"),
            )
        },
        breaks: &[
            (EXPORT, "<key>uploadSymbols</key>\n\t<false/>", "<key>uploadSymbols</key>\n\t<true/>"),
            (EXPORT, "<string>app-store-connect</string>", "<string>debugging</string>"),
        ],
    },
];

#[test]
fn everything_that_the_xcode_project_names_is_there() {
    let files = Files::read();
    let project = files.project().unwrap();
    let folder = root().join(PROJECT).parent().unwrap().to_owned();
    for target in [APP, CLOCK] {
        for source in at(&project, &["targets", target, "sources"]).unwrap().as_vec().unwrap() {
            let path = at(source, &["path"]).unwrap().as_str().unwrap();
            let made = at(source, &["optional"]).and_then(Yaml::as_bool) == Some(true);
            assert!(made || folder.join(path).exists(), "{target}: {path}");
        }
    }
    assert!(root().join("mobile/bindings/swift/SecundineCoreFFI.modulemap").exists());
}
