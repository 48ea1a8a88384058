//! The notices that the program shows: what it is made of, and under which licence each was given. Made from the crates and packages
//! that go into it; where that changed, `UPDATE_NOTICES=1 cargo test -p secundine-tests --test notices` writes them anew.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use cargo_metadata::{DependencyKind, Metadata, MetadataCommand, Package, PackageId, TargetKind};
use serde::Serialize;

const NOTICES: &str = "ui/src/notices.json";

/// C that is compiled in by a crate which only builds it.
const COMPILED_IN: &[&str] = &["openssl-src", "sqlcipher-src"];

/// What goes into the page: its dependencies, and the runtime of Svelte with what that uses.
const PAGE: &[&str] = &["@fluent/bundle", "@tauri-apps/api", "clsx", "esm-env", "svelte"];

/// What stands above the rest: what a person sees or relies on most.
const FIRST: &[&str] = &["Atkinson", "LOINC", "sqlcipher-src", "openssl-src"];

/// A licence with all that was given under these very words.
#[derive(Serialize)]
struct Notice {
    of: BTreeSet<String>,
    text: String,
}

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn metadata() -> Metadata {
    MetadataCommand::new().manifest_path(root().join("Cargo.toml")).other_options(vec!["--locked".to_owned()]).exec().unwrap()
}

/// The crates that are in what a phone or a desk runs; those that only build it are not.
fn inside(metadata: &Metadata) -> Vec<&Package> {
    let graph = metadata.resolve.as_ref().unwrap();
    let shipped = metadata
        .packages
        .iter()
        .filter(|package| ["secundine-app", "secundine-bindings", "secundine-cli"].contains(&package.name.as_str()));
    let mut open: Vec<&PackageId> = shipped.map(|package| &package.id).collect();
    let mut seen: BTreeSet<&PackageId> = BTreeSet::new();
    while let Some(id) = open.pop() {
        let macros = metadata.packages.iter().any(|package| {
            package.id == *id && package.targets.iter().any(|target| target.kind.contains(&TargetKind::ProcMacro))
        });
        if macros || !seen.insert(id) {
            continue;
        }
        let node = graph.nodes.iter().find(|node| node.id == *id).unwrap();
        let used = node.deps.iter().filter(|other| other.dep_kinds.iter().any(|kind| kind.kind == DependencyKind::Normal));
        open.extend(used.map(|other| &other.pkg));
    }
    let compiled = |package: &&Package| seen.contains(&package.id) || COMPILED_IN.contains(&package.name.as_str());
    metadata.packages.iter().filter(compiled).filter(|package| !package.name.starts_with("secundine-")).collect()
}

/// Files of licences in a folder and one below it, by name.
fn licence_files(folder: &Path) -> BTreeMap<String, String> {
    let below = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect::<Vec<_>>();
    let nested =
        below.iter().filter(|path| path.is_dir()).flat_map(|path| fs::read_dir(path).unwrap().map(|entry| entry.unwrap().path()));
    let all: Vec<PathBuf> = below.iter().cloned().chain(nested).collect();
    let named = |path: &Path| {
        let name = path.file_name().unwrap().to_string_lossy().to_uppercase();
        let code = [".RS", ".C", ".H", ".JS", ".TS", ".JSON", ".PL", ".IN"].iter().any(|end| name.ends_with(end));
        path.is_file()
            && !code
            && ["LICENSE", "LICENCE", "COPYING", "NOTICE", "UNLICENSE", "COPYRIGHT"].iter().any(|start| name.starts_with(start))
    };
    let text = |path: &PathBuf| Some((path.strip_prefix(folder).unwrap().display().to_string(), fs::read_to_string(path).ok()?));
    all.iter().filter(|path| named(path)).filter_map(text).collect()
}

/// The words under which it was given: of several licences to choose from, that of the MIT, which names its authors.
fn words(licence: &str, folder: &Path) -> Vec<String> {
    let mut files = licence_files(folder);
    let choice = (licence.contains(" OR ") || licence.contains('/')) && !licence.contains(" AND ");
    if choice && files.keys().any(|name| name.to_uppercase().contains("MIT")) {
        files.retain(|name, _| {
            !["APACHE", "UNLICENSE", "LGPL", "GPL", "ZLIB", "BSL"].iter().any(|other| name.to_uppercase().contains(other))
        });
    }
    if files.is_empty() {
        let known = [("MIT", "LICENSE-MIT", "Permission is hereby granted"), ("Apache-2.0", "LICENSE-APACHE", "Apache License")];
        let ours = known.iter().find(|(name, ..)| licence.contains(name));
        let body = ours.map_or_else(String::new, |(_, file, from)| {
            let text = fs::read_to_string(root().join(file)).unwrap();
            format!("\n\n{from}{}", text.split_once(from).unwrap().1)
        });
        return vec![format!("{licence}. It came without a text of its own.{body}")];
    }
    files.into_values().collect()
}

/// All notices, in order of what they are of.
fn notices() -> Vec<Notice> {
    let mut by_text: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    let mut add = |of: String, text: &str| {
        by_text.entry(text.replace('\r', "").trim().to_owned()).or_default().insert(of);
    };
    let metadata = metadata();
    for package in inside(&metadata) {
        let licence = package.license.as_deref().unwrap_or_default();
        for text in words(licence, package.manifest_path.parent().unwrap().as_std_path()) {
            add(format!("{} {}", package.name, package.version), &text);
        }
    }
    let lock: serde_json::Value =
        serde_json::from_str(&fs::read_to_string(root().join("ui/package-lock.json")).unwrap()).unwrap();
    for name in PAGE {
        let known = lock.pointer(&format!("/packages/{}", format!("node_modules/{name}").replace('/', "~1"))).unwrap();
        let told = |field: &str| known.get(field).and_then(serde_json::Value::as_str).unwrap();
        for text in words(told("license"), &root().join("ui/node_modules").join(name)) {
            add(format!("{name} {}", told("version")), &text);
        }
    }
    let fonts = fs::read_to_string(root().join("core/record/fonts/OFL.txt")).unwrap();
    add("Atkinson Hyperlegible Next".to_owned(), &fonts);
    let readme = fs::read_to_string(root().join("README.md")).unwrap();
    let (_, loinc) = readme.split_once("by LOINC: ").unwrap();
    add("LOINC".to_owned(), &loinc.replace('\n', " "));
    let mut all: Vec<Notice> = by_text.into_iter().map(|(text, of)| Notice { of, text }).collect();
    let place =
        |notice: &Notice| FIRST.iter().position(|name| notice.of.iter().any(|of| of.starts_with(name))).unwrap_or(FIRST.len());
    all.sort_by_cached_key(|notice| (place(notice), notice.of.clone()));
    all
}

#[test]
fn the_program_shows_the_notices_of_what_is_in_it() {
    let made = format!("{}\n", serde_json::to_string_pretty(&notices()).unwrap());
    let path = root().join(NOTICES);
    if std::env::var_os("UPDATE_NOTICES").is_some() {
        fs::write(&path, &made).unwrap();
    }
    let kept = fs::read_to_string(&path).unwrap_or_default();
    assert!(
        made == kept,
        "{NOTICES} is not of what the program is made of now. Type UPDATE_NOTICES=1 cargo test -p secundine-tests --test notices, and read what changed"
    );
    for known in ["SQLCipher", "OpenSSL", "SIL OPEN FONT LICENSE", "Regenstrief", "Svelte", "tauri"] {
        assert!(made.to_lowercase().contains(&known.to_lowercase()), "{known} is not among the notices");
    }
    let manifest: serde_json::Value = serde_json::from_str(&fs::read_to_string(root().join("ui/package.json")).unwrap()).unwrap();
    let used = manifest.get("dependencies").and_then(serde_json::Value::as_object).unwrap();
    assert!(used.keys().all(|name| PAGE.contains(&name.as_str())), "what the page uses is to stand in PAGE: {used:?}");
}
