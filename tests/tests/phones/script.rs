//! mobile/build.sh, in a folder of its own with a path of its own: what it needs is there or not, as each test says, and
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
const TOOLS: &[(&str, &str)] = &[
    ("rustc", r#"case $* in --version) echo "rustc 1.95.0 (x)" ;; *) echo "$PLACE/std" ;; esac"#),
    ("node", "echo v22.1.0"),
    ("npm", ""),
    ("cargo", r#"case $* in "tauri --version") echo "tauri-cli 2.12.4" ;; "tauri android build"*) sh "$PLACE/made" ;; esac"#),
    ("unzip", r#"case $* in *unpacked*) mkdir -p unpacked ;; esac"#),
    ("javac", "echo javac 17.0.1"),
    ("jarsigner", ""),
    ("perl", ""),
    ("make", ""),
    ("git", "echo 1700000000"),
    ("bundletool", ""),
    ("apksigner", ""),
    ("zipalign", ""),
    ("aapt2", r#"cat "$PLACE/asked""#),
    ("xcodebuild", r#"case $* in -version) echo "Xcode 16.2" ;; esac"#),
    ("xcodegen", ""),
    ("security", "echo '  1) 0123 \"Somebody\"'"),
    ("codesign", "echo NSFileProtectionCompleteUnlessOpen"),
];

const KIT: &[&str] = &["platforms/android-36", "licenses", "build-tools/36.0.0", "ndk/28.2.13676358"];

struct Bench {
    place: TempDir,
    environment: Vec<(&'static str, String)>,
}

impl Bench {
    /// Everything that Android and iOS need.
    fn full() -> Self {
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

    fn at(&self, path: &str) -> PathBuf {
        self.place.path().join(path)
    }

    fn tool(&self, path: &str, says: &str) {
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
    fn builds(&self, flavour: &str) {
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

    fn mac() -> Self {
        let bench = Self::full();
        bench.tool("path/uname", "echo Darwin");
        bench
    }

    fn without(&self, path: &str) {
        let path = self.at(path);
        if path.is_dir() { fs::remove_dir_all(path).unwrap() } else { fs::remove_file(path).unwrap() }
    }

    fn run(&self, arguments: &[&str]) -> Output {
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
    fn calls(&self) -> Vec<String> {
        let calls = fs::read_to_string(self.at("calls")).unwrap_or_default();
        let place = self.place.path().display().to_string();
        let question =
            |line: &&str| ["version", "--print", "find-identity", "uname", "log -1"].iter().any(|word| line.contains(word));
        calls.lines().filter(|line| !question(line)).map(|line| line.replace(&place, "").trim().to_owned()).collect()
    }
}

fn told(output: &Output) -> String {
    format!("{}{}", String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr))
}

/// The names of what is said to be missing.
fn missing(output: &Output) -> Vec<String> {
    let text = String::from_utf8_lossy(&output.stderr).into_owned();
    text.lines().filter(|line| line.starts_with("  ") && !line.starts_with("   ")).map(|line| line.trim().to_owned()).collect()
}

#[test]
fn with_nothing_there_all_of_it_is_said_at_once() {
    let mut bench = Bench::full();
    bench.environment.clear();
    for (name, _) in TOOLS {
        let _ = fs::remove_file(bench.at("path").join(name));
    }
    let android = bench.run(&["android"]);
    assert_eq!(android.status.code(), Some(1));
    // Rust, Node, npm, Tauri, unzip; three targets; JDK, jarsigner, perl, make; folder, platform, NDK, three tools, licences;
    // bundletool; key and passphrase.
    assert_eq!(missing(&android).len(), 5 + 3 + 4 + 7 + 1 + 2, "{}", told(&android));
    let ios = bench.run(&["ios"]);
    assert_eq!(ios.status.code(), Some(1));
    assert_eq!(missing(&ios).len(), 5 + 6, "{}", told(&ios));
    assert!(bench.calls().is_empty());
}

#[test]
fn what_alone_is_missing_is_alone_said() {
    let each = [
        ("android", "path/node", "Node 20.19"),
        ("android", "path/npm", "npm"),
        ("android", "path/unzip", "unzip"),
        ("android", "path/javac", "a JDK of 17"),
        ("android", "path/jarsigner", "jarsigner"),
        ("android", "path/perl", "perl"),
        ("android", "path/make", "make"),
        ("android", "path/bundletool", "bundletool"),
        ("android", "kit/platforms/android-36", "the platform android-36"),
        ("android", "kit/ndk/28.2.13676358/source.properties", "the NDK 28.2"),
        ("android", "kit/build-tools/36.0.0/apksigner", "apksigner"),
        ("android", "kit/build-tools/36.0.0/zipalign", "zipalign"),
        ("android", "kit/build-tools/36.0.0/aapt2", "aapt2"),
        ("android", "kit/licenses", "the licences"),
        ("android", "keys.jks", "SECUNDINE_KEYSTORE,"),
        ("ios", "path/xcodebuild", "Xcode 16"),
        ("ios", "path/xcodegen", "xcodegen"),
        ("ios", "path/security", "an identity"),
    ];
    for (system, path, name) in each {
        let bench = Bench::mac();
        bench.without(path);
        let output = bench.run(&[system]);
        assert_eq!(output.status.code(), Some(1), "{path}: {}", told(&output));
        let missing = missing(&output);
        assert!(missing.len() == 1 && missing[0].starts_with(name), "{path}: {missing:?}");
        assert!(bench.calls().is_empty(), "{path}: {:?}", bench.calls());
    }
}

#[test]
fn what_is_too_old_is_as_good_as_missing() {
    let each = [
        ("path/node", "echo v20.18.3", "Node 20.19"),
        ("path/javac", "echo javac 11.0.2", "a JDK of 17"),
        ("path/rustc", r#"case $* in --version) echo "rustc 1.91.1 (x)" ;; *) echo "$PLACE/std" ;; esac"#, "Rust 1.92"),
        (
            "path/rustc",
            r#"case $* in --version) echo "rustc 2.0.0" ;; *armv7*) echo /nowhere ;; *) echo "$PLACE/std" ;; esac"#,
            "Rust for armv7",
        ),
        ("path/cargo", "echo tauri-cli 3.0.0", "cargo tauri 2.12"),
    ];
    for (path, says, name) in each {
        let bench = Bench::full();
        bench.tool(path, says);
        let output = bench.run(&["android", "--check"]);
        let missing = missing(&output);
        assert!(missing.len() == 1 && missing[0].starts_with(name), "{path}: {missing:?}");
    }
}

#[test]
fn a_check_builds_nothing() {
    for (bench, system) in [(Bench::full(), "android"), (Bench::mac(), "ios")] {
        let output = bench.run(&[system, "--check"]);
        assert!(output.status.success() && told(&output).contains("Everything needed is there"), "{}", told(&output));
        assert!(bench.calls().is_empty());
    }
}

/// The first words of each call, up to where folders and names begin.
fn heads(calls: &[String]) -> Vec<&str> {
    let heads = [
        "npm ci",
        "npm run build",
        "cargo tauri android build --ci --apk --aab --target aarch64 armv7 x86_64",
        "cargo tauri android build --ci --apk --target aarch64 armv7 x86_64",
        "flavour offline",
        "flavour sync",
        "aapt2 dump permissions",
        "zipalign -c -P 16 4",
        "bundletool validate",
        "apksigner sign",
        "apksigner verify",
        "jarsigner -keystore",
        "jarsigner -verify",
        "xcodegen generate",
        "cargo tauri ios build --ci --archive-only --target aarch64",
        "xcodebuild -exportArchive",
        "unzip -q Secundine.ipa",
        "codesign --verify --deep --strict",
        "codesign -d --entitlements",
    ];
    let head =
        |call: &String| heads.into_iter().find(|head| call.starts_with(head)).unwrap_or_else(|| panic!("{call}: not foreseen"));
    calls.iter().map(head).collect()
}

const ANDROID: [&str; 11] = [
    "npm ci",
    "npm run build",
    "cargo tauri android build --ci --apk --aab --target aarch64 armv7 x86_64",
    "flavour offline",
    "aapt2 dump permissions",
    "zipalign -c -P 16 4",
    "bundletool validate",
    "apksigner sign",
    "jarsigner -keystore",
    "apksigner verify",
    "jarsigner -verify",
];

#[test]
fn android_is_built_looked_at_signed_and_verified_in_this_order() {
    let bench = Bench::full();
    let output = bench.run(&["android"]);
    assert!(output.status.success(), "{}", told(&output));
    let calls = bench.calls();
    assert_eq!(heads(&calls), ANDROID);
    assert!(!calls.iter().any(|call| call.contains("sesame")), "the passphrase stands among what was called: {calls:?}");
    assert!(!told(&output).contains("sesame"));
    assert!(bench.at("tree/out/phones/android-offline/secundine-offline-unsigned.apk").exists());
    assert!(bench.at("tree/out/phones/android-offline/secundine-offline.aab").exists());
}

#[test]
fn unsigned_the_key_is_neither_asked_for_nor_used() {
    let mut bench = Bench::full();
    bench.environment.retain(|(name, _)| *name == "ANDROID_HOME");
    // Nor what only the bundle needs.
    bench.without("path/bundletool");
    bench.without("path/jarsigner");
    let output = bench.run(&["android", "--unsigned"]);
    assert!(output.status.success(), "{}", told(&output));
    let one = "cargo tauri android build --ci --apk --target aarch64 armv7 x86_64";
    assert_eq!(heads(&bench.calls()), ["npm ci", "npm run build", one, ANDROID[3], ANDROID[4], ANDROID[5]]);
}

#[test]
fn a_package_that_asks_for_the_network_against_its_flavour_is_never_signed() {
    let bench = Bench::full();
    fs::write(bench.at("asked"), "uses-permission: name='android.permission.INTERNET'\n").unwrap();
    let output = bench.run(&["android"]);
    assert!(!output.status.success() && told(&output).contains("asks for the network"), "{}", told(&output));
    assert_eq!(heads(&bench.calls()), ANDROID[..5]);

    bench.builds("sync");
    let output = bench.run(&["android", "--flavour", "sync"]);
    assert!(output.status.success(), "{}", told(&output));
    assert!(bench.calls().contains(&"flavour sync".to_owned()));

    fs::write(bench.at("asked"), "").unwrap();
    let output = bench.run(&["android", "--flavour", "sync"]);
    assert!(!output.status.success() && told(&output).contains("does not ask for the network"), "{}", told(&output));
}

#[test]
fn the_key_may_be_named_by_a_file_beside_the_script() {
    let mut bench = Bench::full();
    let lines: String = bench.environment.iter().map(|(name, value)| format!("{name}={value}\n")).collect();
    fs::write(bench.at("tree/mobile/signing.properties"), lines).unwrap();
    bench.environment.retain(|(name, _)| *name == "ANDROID_HOME");
    assert!(bench.run(&["android", "--check"]).status.success());
}

#[test]
fn ios_is_built_signed_and_verified_in_this_order() {
    let mut bench = Bench::mac();
    bench.environment.push(("SECUNDINE_EXPORT_METHOD", "release-testing".to_owned()));
    let output = bench.run(&["ios"]);
    assert!(output.status.success(), "{}", told(&output));
    let wanted = [
        "npm ci",
        "npm run build",
        "xcodegen generate",
        "cargo tauri ios build --ci --archive-only --target aarch64",
        "xcodebuild -exportArchive",
        "unzip -q Secundine.ipa",
        "codesign --verify --deep --strict",
        "codesign -d --entitlements",
    ];
    assert_eq!(heads(&bench.calls()), wanted);
    let options = fs::read_to_string(bench.at("tree/out/phones/ios/ExportOptions.plist")).unwrap();
    assert!(options.contains("<string>release-testing</string>"));

    bench.tool("path/codesign", "echo nothing");
    assert!(told(&bench.run(&["ios"])).contains("does not protect the files"));
}

#[test]
fn what_cannot_be_asked_for_is_refused() {
    let bench = Bench::mac();
    for wrong in [
        &["ios", "--flavour", "sync"][..],
        &["android", "--flavour", "online"],
        &["windows"],
        &[],
        &["android", "--loud"],
        &["compare", "one"],
    ] {
        let output = bench.run(wrong);
        assert!(!output.status.success() && !told(&output).is_empty(), "{wrong:?}");
        assert!(bench.calls().is_empty());
    }
}

/// A package with these entries.
fn package(folder: &Path, name: &str, entries: &[(&str, &str)]) -> PathBuf {
    let inside = folder.join(format!("{name}-inside"));
    for (entry, text) in entries {
        let path = inside.join(entry);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    }
    let path = folder.join(name);
    let tops: Vec<_> = fs::read_dir(&inside).unwrap().map(|entry| entry.unwrap().path()).collect();
    assert!(Command::new("python3").args(["-m", "zipfile", "-c"]).arg(&path).args(tops).status().unwrap().success());
    path
}

#[test]
fn two_packages_are_the_same_where_only_their_signatures_differ() {
    let folder = TempDir::new().unwrap();
    let first = package(
        folder.path(),
        "first.apk",
        &[("classes.dex", "a"), ("lib/x.so", "b"), ("META-INF/CERT.RSA", "mine"), ("META-INF/list", "c")],
    );
    let again = package(
        folder.path(),
        "again.apk",
        &[("classes.dex", "a"), ("lib/x.so", "b"), ("META-INF/CERT.RSA", "hers"), ("META-INF/list", "c")],
    );
    let other =
        package(folder.path(), "other.apk", &[("classes.dex", "a"), ("lib/x.so", "B"), ("META-INF/list", "c"), ("more", "")]);
    let compare = |one: &Path, two: &Path| {
        Command::new("bash").arg(root().join("mobile/build.sh")).arg("compare").args([one, two]).output().unwrap()
    };
    let same = compare(&first, &again);
    assert!(same.status.success() && told(&same).contains("3 files"), "{}", told(&same));
    let differ = compare(&first, &other);
    assert_eq!(differ.status.code(), Some(1));
    let text = told(&differ);
    assert!(
        text.contains("< ./lib/x.so") && text.contains("> ./lib/x.so") && text.contains("> ./more") && !text.contains("classes"),
        "{text}"
    );
}

/// Scripts of ours; what others wrote, and what is made, lies elsewhere or has these names.
fn scripts(folder: &Path, found: &mut Vec<PathBuf>) {
    const NOT_OURS: &[&str] = &["target", "node_modules", "venv", "dist", "out", ".git", "corpus", "gradlew"];
    for entry in fs::read_dir(folder).unwrap().map(Result::unwrap) {
        let path = entry.path();
        if NOT_OURS.contains(&entry.file_name().to_str().unwrap_or_default()) {
            continue;
        }
        if entry.file_type().unwrap().is_dir() {
            scripts(&path, found);
        } else if entry.file_type().unwrap().is_file() {
            let mut first = [0; 64];
            let length = fs::File::open(&path).and_then(|mut file| std::io::Read::read(&mut file, &mut first)).unwrap();
            let line = first[..length].split(|byte| *byte == b'\n').next().unwrap_or_default();
            if line.starts_with(b"#!") && line.ends_with(b"sh") {
                found.push(path);
            }
        }
    }
}

#[test]
fn every_script_of_the_shell_passes_shellcheck() {
    let mut found = Vec::new();
    scripts(&root(), &mut found);
    assert!(found.iter().any(|path| path.ends_with("mobile/build.sh")) && found.len() >= 3, "{found:?}");
    let checked = Command::new("shellcheck").args(&found).output().expect("shellcheck is missing: apt-get install shellcheck");
    assert!(checked.status.success(), "{}", String::from_utf8_lossy(&checked.stdout));
    // And it can say no.
    let folder = TempDir::new().unwrap();
    let wrong = folder.path().join("wrong.sh");
    fs::write(&wrong, "#!/bin/sh\nrm -rf $1/$2\n").unwrap();
    assert!(!Command::new("shellcheck").arg(&wrong).output().unwrap().status.success());
}
