//! mobile/build.sh: what it says is missing, and what it calls in which order.

use std::fs;

use crate::bench::{Bench, TOOLS, missing, told};

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
        "aapt2 dump xmltree",
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

const ANDROID: [&str; 12] = [
    "npm ci",
    "npm run build",
    "cargo tauri android build --ci --apk --aab --target aarch64 armv7 x86_64",
    "flavour offline",
    "aapt2 dump permissions",
    "aapt2 dump xmltree",
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
    assert_eq!(heads(&bench.calls()), ["npm ci", "npm run build", one, ANDROID[3], ANDROID[4], ANDROID[5], ANDROID[6]]);
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
fn a_package_that_can_be_backed_up_or_looked_into_is_never_signed() {
    let bench = Bench::full();
    let line = |name: &str| format!("A: http://schemas.android.com/apk/res/android:{name}\n");
    for said in [
        String::new(),
        line("allowBackup(0x01010280)=true"),
        line("allowBackup(0x01010280)=false") + &line("debuggable(0x0101000f)=true"),
    ] {
        fs::write(bench.at("said"), &said).unwrap();
        let output = bench.run(&["android"]);
        assert!(!output.status.success() && told(&output).contains("lets itself be"), "{said}: {}", told(&output));
        assert_eq!(heads(&bench.calls()), ANDROID[..6]);
    }
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
