//! A folder of its own for mobile/build.sh, with a path of its own: what it needs is there or not, as each test says, and
//! whatever it calls writes down that it was called.

use std::fs;
use std::os::unix::fs::{PermissionsExt, symlink};
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use tempfile::TempDir;

use crate::files::root;

/// What every system has. The rest of the path is made of tools that only say that they were called.
const PLAIN: &[&str] = &[
    "bash", "cat", "chmod", "cp", "cut", "diff", "dirname", "find", "grep", "mkdir", "mktemp", "rm", "sed", "sort", "tr",
    "uname", "wc", "xargs",
];

/// Each tool, and what it says; `$*` is what it was asked.
pub const TOOLS: &[(&str, &str)] = &[
    ("rustc", r#"case $* in --version) echo "rustc 1.95.0 (x)" ;; *) echo "$PLACE/std" ;; esac"#),
    ("node", "echo v22.1.0"),
    ("npm", ""),
    ("cargo", r#"case $* in "tauri --version") echo "tauri-cli 2.12.4" ;; "tauri android build"*) bash "$PLACE/made" ;; esac"#),
    ("unzip", r#"case $* in *unpacked*) mkdir -p unpacked ;; esac"#),
    ("javac", "echo javac 17.0.1"),
    ("jarsigner", ""),
    ("perl", ""),
    ("make", ""),
    ("git", "echo 1700000000"),
    ("bundletool", ""),
    ("apksigner", ""),
    ("zipalign", ""),
    ("aapt2", r#"case $* in *xmltree*) cat "$PLACE/said" ;; *) cat "$PLACE/asked" ;; esac"#),
    ("xcodebuild", r#"case $* in -version) echo "Xcode 16.2" ;; esac"#),
    ("xcodegen", ""),
    ("security", "echo '  1) 0123 \"Somebody\"'"),
    ("codesign", "echo NSFileProtectionCompleteUnlessOpen"),
];

const KIT: &[&str] = &["platforms/android-36", "licenses", "build-tools/36.0.0", "ndk/28.2.13676358"];

pub struct Bench {
    place: TempDir,
    pub environment: Vec<(&'static str, String)>,
}

impl Bench {
    /// Everything that Android and iOS need.
    pub fn full() -> Self {
        let place = TempDir::new().unwrap();
        let at = |path: &str| place.path().join(path);
        for folder in ["path", "std", "tree/mobile", "tree/ui", "tree/src-tauri/gen/apple", "home"] {
            fs::create_dir_all(at(folder)).unwrap();
        }
        for name in ["mobile/build.sh", "src-tauri/gen/apple/ExportOptions.plist"] {
            fs::copy(root().join(name), at("tree").join(name)).unwrap();
        }
        for folder in KIT {
            fs::create_dir_all(at("kit").join(folder)).unwrap();
        }
        fs::write(at("kit/ndk/28.2.13676358/source.properties"), "").unwrap();
        fs::write(at("keys.jks"), "").unwrap();
        fs::write(at("asked"), "uses-permission: name='android.permission.VIBRATE'\n").unwrap();
        fs::write(at("said"), "  A: http://schemas.android.com/apk/res/android:allowBackup(0x01010280)=false\n").unwrap();
        for name in PLAIN {
            let real = ["/usr/bin", "/bin"].map(|folder| Path::new(folder).join(name)).into_iter().find(|path| path.exists());
            symlink(real.unwrap_or_else(|| panic!("{name} is not here")), at("path").join(name)).unwrap();
        }
        let bench = Self {
            environment: vec![
                ("ANDROID_HOME", at("kit").display().to_string()),
                ("SECUNDINE_KEYSTORE", at("keys.jks").display().to_string()),
                ("SECUNDINE_KEYSTORE_PASS", "open sesame".to_owned()),
                ("APPLE_DEVELOPMENT_TEAM", "ABCDE12345".to_owned()),
            ],
            place,
        };
        for (name, says) in TOOLS {
            let folder = if ["apksigner", "zipalign", "aapt2"].contains(name) { "kit/build-tools/36.0.0" } else { "path" };
            bench.tool(&format!("{folder}/{name}"), says);
        }
        bench.builds("offline");
        bench
    }

    pub fn at(&self, path: &str) -> PathBuf {
        self.place.path().join(path)
    }

    pub fn tool(&self, path: &str, says: &str) {
        let name = path.rsplit('/').next().unwrap();
        let path = self.at(path);
        let _ = fs::remove_file(&path);
        fs::write(
            &path,
            format!("#!/bin/sh\nPLACE='{0}'\necho \"{name} $*\" >>\"$PLACE/calls\"\n{says}\n", self.place.path().display()),
        )
        .unwrap();
        fs::set_permissions(&path, fs::Permissions::from_mode(0o755)).unwrap();
    }

    /// What `cargo tauri android build` leaves behind.
    pub fn builds(&self, flavour: &str) {
        let camel = if flavour == "sync" { "Sync" } else { "Offline" };
        let outputs = "gen/android/app/build/outputs";
        fs::write(
            self.at("made"),
            format!(
                "mkdir -p {outputs}/apk/universal{camel}/release {outputs}/bundle/universal{camel}Release\n\
                 echo apk >{outputs}/apk/universal{camel}/release/app-universal-{flavour}-release-unsigned.apk\n\
                 echo aab >{outputs}/bundle/universal{camel}Release/app-universal-{flavour}-release.aab\n\
                 echo \"flavour $SECUNDINE_FLAVOUR\" >>\"$PLACE/calls\"\n"
            ),
        )
        .unwrap();
        // The fake's own shell does not hand its folder on.
        let cargo = TOOLS.iter().find(|(name, _)| *name == "cargo").unwrap().1;
        self.tool("path/cargo", &format!("export PLACE\n{cargo}"));
    }

    pub fn mac() -> Self {
        let bench = Self::full();
        bench.tool("path/uname", "echo Darwin");
        bench
    }

    pub fn without(&self, path: &str) {
        let path = self.at(path);
        if path.is_dir() { fs::remove_dir_all(path).unwrap() } else { fs::remove_file(path).unwrap() }
    }

    pub fn run(&self, arguments: &[&str]) -> Output {
        let _ = fs::remove_file(self.at("calls"));
        Command::new(self.at("path/bash"))
            .arg(self.at("tree/mobile/build.sh"))
            .args(arguments)
            .env_clear()
            .env("PATH", self.at("path"))
            .env("HOME", self.at("home"))
            .envs(self.environment.iter().cloned())
            .output()
            .unwrap()
    }

    /// The calls that were not questions.
    pub fn calls(&self) -> Vec<String> {
        let calls = fs::read_to_string(self.at("calls")).unwrap_or_default();
        let place = self.place.path().display().to_string();
        let question = |line: &&str| {
            ["version", "--print target-libdir", "find-identity", "uname", "log -1"].iter().any(|word| line.contains(word))
        };
        calls.lines().filter(|line| !question(line)).map(|line| line.replace(&place, "").trim().to_owned()).collect()
    }
}

pub fn told(output: &Output) -> String {
    format!("{}{}", String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr))
}

/// The names of what is said to be missing.
pub fn missing(output: &Output) -> Vec<String> {
    let text = String::from_utf8_lossy(&output.stderr).into_owned();
    text.lines().filter(|line| line.starts_with("  ") && !line.starts_with("   ")).map(|line| line.trim().to_owned()).collect()
}
