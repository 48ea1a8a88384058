//! What of the phone's program is not Rust, and how it builds there: each such crate has its row in native.toml.

use std::collections::{BTreeMap, BTreeSet};
use std::process::Command;

use cargo_metadata::{DependencyKind, Metadata, MetadataCommand, Package};
use serde::Deserialize;

use crate::files::root;

const SYSTEMS: [(&str, &str); 2] = [("android", "aarch64-linux-android"), ("apple", "aarch64-apple-ios")];

/// Crates that a build script calls to compile something else than Rust, or to find it on the machine.
const COMPILERS: &[&str] = &[
    "autotools",
    "bindgen",
    "cc",
    "cmake",
    "cxx-build",
    "meson",
    "nasm-rs",
    "openssl-src",
    "pkg-config",
    "swift-rs",
    "system-deps",
    "vcpkg",
];

#[derive(Deserialize)]
struct Table {
    #[serde(rename = "crate")]
    rows: Vec<Row>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    name: String,
    what: String,
    android: Option<String>,
    apple: Option<String>,
    #[serde(default)]
    ours: bool,
}

impl Row {
    fn on(&self, system: &str) -> Option<&str> {
        if system == "android" { self.android.as_deref() } else { self.apple.as_deref() }
    }
}

fn metadata() -> Metadata {
    let locked = vec!["--locked".to_owned()];
    MetadataCommand::new().manifest_path(root().join("Cargo.toml")).other_options(locked).exec().unwrap()
}

fn is_native(package: &Package) -> bool {
    let builds = package.dependencies.iter().filter(|known| known.kind == DependencyKind::Build);
    package.links.is_some() || builds.into_iter().any(|known| COMPILERS.contains(&known.name.as_str()))
}

/// The crates that are linked into the program for a target, as cargo chooses them and their features there.
fn linked(target: &str) -> BTreeSet<(String, String)> {
    let output = Command::new(env!("CARGO"))
        .args([
            "tree",
            "--locked",
            "--package",
            "secundine-app",
            "--edges",
            "normal",
            "--prefix",
            "none",
            "--format",
            "{p}",
            "--target",
            target,
        ])
        .current_dir(root())
        .output()
        .unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let tree = String::from_utf8(output.stdout).unwrap();
    let crate_of = |line: &str| {
        let mut words = line.split(' ');
        Some((words.next()?.to_owned(), words.next()?.trim_start_matches('v').to_owned()))
    };
    tree.lines().filter_map(crate_of).collect()
}

fn native(metadata: &Metadata, target: &str) -> BTreeSet<String> {
    let linked = linked(target);
    let found = metadata
        .packages
        .iter()
        .filter(|package| is_native(package) && linked.contains(&(package.name.to_string(), package.version.to_string())));
    found.map(|package| package.name.to_string()).collect()
}

fn table() -> BTreeMap<String, Row> {
    let table: Table = toml::from_str(include_str!("native.toml")).unwrap();
    table.rows.into_iter().map(|row| (row.name.clone(), row)).collect()
}

#[test]
fn each_crate_that_is_not_all_rust_is_known_with_how_it_builds_on_each_system() {
    let metadata = metadata();
    let table = table();
    // SQLCipher takes its cryptography from OpenSSL on Android, and from the system on Apple.
    assert!(table["openssl-sys"].android.is_some() && table["openssl-sys"].apple.is_none());
    for (system, target) in SYSTEMS {
        let found = native(&metadata, target);
        for name in &found {
            let row = table
                .get(name)
                .unwrap_or_else(|| panic!("{name}: for {target} it builds more than Rust; how, has to stand in native.toml"));
            let how = row.on(system).unwrap_or_else(|| panic!("{name}: native.toml says that {system} does not have it"));
            assert!(how.len() > 10 && !row.what.is_empty(), "{name}: {how}");
        }
        for row in table.values().filter(|row| row.on(system).is_some() && !row.ours) {
            assert!(found.contains(&row.name), "{}: not part of the program for {target} any more", row.name);
        }
    }
}
