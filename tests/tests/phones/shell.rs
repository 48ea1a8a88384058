//! What the scripts can be tried on here: two packages compared, and every script of the repository read by shellcheck.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use tempfile::TempDir;

use crate::bench::told;
use crate::files::root;

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
