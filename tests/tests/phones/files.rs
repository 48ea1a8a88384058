//! The files of the two projects as text, and how one is read.

use std::collections::BTreeMap;
use std::path::PathBuf;

use saphyr::{LoadableYamlNode, Yaml};

pub const CONFIG: &str = "src-tauri/tauri.conf.json";
pub const GUIDE: &str = "fastlane-free-build.md";
pub const FDROID: &str = "mobile/fdroid/org.secundine.app.yml";
pub const INBOX: &str = "core/store/src/inbox.rs";
pub const RUNS: &str = "core/store/src/runs.rs";
pub const SHELL: &str = "src-tauri/src/lib.rs";
pub const IGNORED: &str = ".gitignore";

pub const ANDROID: &str = "src-tauri/gen/android/app/src/main/AndroidManifest.xml";
pub const OFFLINE: &str = "src-tauri/gen/android/app/src/offline/AndroidManifest.xml";
pub const SYNC: &str = "src-tauri/gen/android/app/src/sync/AndroidManifest.xml";
pub const EXTRACTION: &str = "src-tauri/gen/android/app/src/main/res/xml/data_extraction_rules.xml";
pub const ACTIVITY: &str = "src-tauri/gen/android/app/src/main/java/org/secundine/app/MainActivity.kt";
pub const GRADLE: &str = "src-tauri/gen/android/app/build.gradle.kts";
pub const RUST_PLUGIN: &str = "src-tauri/gen/android/buildSrc/src/main/java/org/secundine/app/kotlin/RustPlugin.kt";
pub const BUILD_TASK: &str = "src-tauri/gen/android/buildSrc/src/main/java/org/secundine/app/kotlin/BuildTask.kt";
pub const R8: &str = "src-tauri/gen/android/app/proguard-rules.pro";

pub const PROJECT: &str = "src-tauri/gen/apple/project.yml";
pub const PRIVACY: &str = "src-tauri/gen/apple/PrivacyInfo.xcprivacy";
pub const EXPORT: &str = "src-tauri/gen/apple/ExportOptions.plist";
pub const MAIN: &str = "src-tauri/gen/apple/Sources/secundine-app/main.mm";
pub const BEFORE: &str = "src-tauri/gen/apple/Sources/secundine-app/BeforePage.swift";
pub const COVER: &str = "src-tauri/gen/apple/Sources/secundine-app/PrivacyCover.swift";
pub const KEPT: &str = "src-tauri/gen/apple/Sources/secundine-app/KeptFiles.swift";
pub const USAGE: [(&str, &str); 3] = [
    ("src-tauri/gen/apple/Sources/secundine-app/en.lproj/InfoPlist.strings", "core/messages/en.ftl"),
    ("src-tauri/gen/apple/Sources/secundine-app/es.lproj/InfoPlist.strings", "core/messages/es.ftl"),
    ("src-tauri/gen/apple/Sources/secundine-app/fr.lproj/InfoPlist.strings", "core/messages/fr.ftl"),
];

/// What the plugin brings to Android, which Gradle merges with the rest. It stands beside the projects, not in them.
pub const PLUGIN: &str = "mobile/plugin/android/src/main/AndroidManifest.xml";

const ALL: &[&str] = &[
    CONFIG,
    GUIDE,
    FDROID,
    INBOX,
    RUNS,
    SHELL,
    IGNORED,
    ANDROID,
    OFFLINE,
    SYNC,
    EXTRACTION,
    ACTIVITY,
    GRADLE,
    RUST_PLUGIN,
    BUILD_TASK,
    R8,
    PROJECT,
    PRIVACY,
    EXPORT,
    MAIN,
    BEFORE,
    COVER,
    KEPT,
    PLUGIN,
];

/// One thing that has to hold, and ways to break it: in this file, this text becomes that.
pub struct Point {
    pub name: &'static str,
    /// None where something could not be read at all.
    pub holds: fn(&Files) -> Option<bool>,
    pub breaks: &'static [(&'static str, &'static str, &'static str)],
}

#[derive(Clone)]
pub struct Files(BTreeMap<&'static str, String>);

/// The folder of the repository.
pub fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).parent().unwrap().to_owned()
}

impl Files {
    pub fn read() -> Self {
        let usage = USAGE.iter().flat_map(|(strings, words)| [*strings, *words]);
        let text = |path: &'static str| {
            (path, std::fs::read_to_string(root().join(path)).unwrap_or_else(|error| panic!("{path}: {error}")))
        };
        Self(ALL.iter().copied().chain(usage).map(text).collect())
    }

    /// The same with one text in one file changed, at every place where it stands.
    pub fn with(&self, path: &str, from: &str, to: &str) -> Self {
        let mut files = self.clone();
        let text = files.0.get_mut(path).unwrap_or_else(|| panic!("{path} is not read"));
        assert!(text.contains(from), "`{from}` does not stand in {path}");
        *text = text.replace(from, to);
        files
    }

    pub fn text(&self, path: &str) -> &str {
        &self.0[path]
    }

    /// The same without what only people read: `//` and `#` lines.
    pub fn code(&self, path: &str) -> String {
        let comment = |line: &&str| {
            let line = line.trim_start();
            line.starts_with("//") || line.starts_with('#') || line.starts_with('*') || line.starts_with("/*")
        };
        self.text(path).lines().filter(|line| !comment(line)).collect::<Vec<_>>().join("\n")
    }

    pub fn config(&self) -> Option<serde_json::Value> {
        serde_json::from_str(self.text(CONFIG)).ok()
    }

    pub fn plist(&self, path: &str) -> Option<plist::Dictionary> {
        plist::from_bytes::<plist::Value>(self.text(path).as_bytes()).ok()?.into_dictionary()
    }

    pub fn yaml(&self, path: &str) -> Option<Yaml<'_>> {
        Yaml::load_from_str(self.text(path)).ok()?.into_iter().next()
    }

    pub fn project(&self) -> Option<Yaml<'_>> {
        self.yaml(PROJECT)
    }

    /// A message of a catalogue, where it is of one line.
    pub fn message(&self, catalogue: &str, id: &str) -> Option<&str> {
        self.text(catalogue).lines().find_map(|line| line.strip_prefix(id)?.strip_prefix(" = "))
    }
}

/// What stands in a tree under these keys.
pub fn at<'tree, 'text>(tree: &'tree Yaml<'text>, keys: &[&str]) -> Option<&'tree Yaml<'text>> {
    keys.iter().try_fold(tree, |tree, key| tree.as_mapping_get(key))
}
