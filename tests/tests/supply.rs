//! Versions are pinned: what is built is what was looked at. Which crates and licences may go in is held by cargo-deny (`deny.toml`).

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn read(path: &str) -> String {
    fs::read_to_string(root().join(path)).unwrap_or_else(|_| unreachable!("{path} is missing: write it, and let git keep it"))
}

/// The files of this name in `ui` and in the folders of `tests`.
fn kept(name: &str) -> Vec<String> {
    let tests = fs::read_dir(root().join("tests"))
        .unwrap()
        .map(|entry| format!("tests/{}", entry.unwrap().file_name().to_string_lossy()));
    let folders = tests.chain(["ui".to_owned()]);
    folders.map(|folder| format!("{folder}/{name}")).filter(|path| root().join(path).exists()).collect()
}

#[test]
fn each_folder_of_packages_has_its_lock_with_hashes() {
    let manifests = kept("package.json");
    assert!(manifests.len() >= 3, "{manifests:?}");
    for manifest in manifests {
        let lock = manifest.replace("package.json", "package-lock.json");
        let lock: serde_json::Value = serde_json::from_str(&read(&lock)).unwrap();
        for (name, known) in lock.get("packages").and_then(serde_json::Value::as_object).unwrap() {
            let hashed = known.get("integrity").is_some() || known.get("link").is_some() || known.get("inBundle").is_some();
            assert!(
                name.is_empty() || hashed,
                "{manifest}: {name} has no hash in the lock: make the lock anew with npm install --package-lock-only"
            );
        }
    }
    for manifest in ["Cargo.lock", "tests/fuzz/Cargo.lock"] {
        assert!(read(manifest).contains("checksum = "), "{manifest}");
    }
    for list in kept("requirements.txt") {
        for line in read(&list).lines().filter(|line| !line.trim().is_empty() && !line.starts_with('#') && !line.starts_with(' '))
        {
            assert!(line.contains("=="), "{list}: {line}: say which version, with ==");
        }
    }
}

#[test]
fn the_gate_builds_what_is_locked() {
    let makefile = read("Makefile");
    for line in makefile.lines().map(str::trim) {
        let built =
            ["cargo test --workspace", "cargo build --workspace", "cargo install"].iter().any(|start| line.contains(start));
        assert!(!built || line.contains("--locked"), "Makefile: {line}: add --locked");
        assert!(!line.contains("npm install") && !line.contains("npm i "), "Makefile: {line}: npm ci takes what is locked");
    }
    assert!(makefile.contains("npm ci") && makefile.contains("--locked --workspace"), "the gate is not read rightly");
}
