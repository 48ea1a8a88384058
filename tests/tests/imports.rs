//! Who may import whom, what the pure crate may use, and under which licence ours stands; that of others is held by `deny.toml`.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use cargo_metadata::{DependencyKind, Metadata, MetadataCommand, Package};

/// Every arrow between crates that may be.
const ALLOWED: &[(&str, &[&str])] = &[
    ("secundine-domain", &[]),
    ("secundine-record", &["secundine-domain"]),
    ("secundine-store", &["secundine-domain"]),
    ("secundine-sync", &["secundine-domain", "secundine-store"]),
    ("secundine-session", &["secundine-domain", "secundine-record", "secundine-store", "secundine-sync"]),
    ("secundine-cli", &["secundine-domain", "secundine-record", "secundine-session", "secundine-store"]),
    ("secundine-app", &["secundine-bindings", "secundine-phone", "secundine-session"]),
    ("secundine-bindings", &["secundine-session"]),
    ("secundine-phone", &["secundine-store"]),
    ("secundine-bridge", &["secundine-session"]),
    ("secundine-faults", &["secundine-domain", "secundine-store"]),
    ("secundine-tests", &["secundine-domain", "secundine-record", "secundine-session", "secundine-store"]),
];

/// What the pure crate may use from outside: values, words and their written forms. No clock, chance, file, network or task.
const PURE: &[&str] = &["chrono", "csv", "serde", "serde_json", "statrs", "thiserror", "toml", "ts-rs"];

/// What the record may use beside it: words, pages, and the forms that files have.
const WRITING: &[&str] = &["base64", "fluent-bundle", "krilla", "parley", "secundine-domain", "sha2", "unic-langid"];

fn metadata() -> Metadata {
    let manifest = concat!(env!("CARGO_MANIFEST_DIR"), "/../Cargo.toml");
    MetadataCommand::new().manifest_path(manifest).other_options(vec!["--locked".to_owned()]).exec().unwrap()
}

/// The names that a package depends on in one way.
fn uses(package: &Package, kinds: &[DependencyKind]) -> Vec<String> {
    package.dependencies.iter().filter(|known| kinds.contains(&known.kind)).map(|known| known.name.clone()).collect()
}

#[test]
fn no_crate_imports_another_that_it_may_not() {
    let metadata = metadata();
    let members = metadata.workspace_packages();
    for package in &members {
        let allowed = ALLOWED.iter().find(|(name, _)| *name == package.name.as_str());
        let (_, allowed) = allowed.unwrap_or_else(|| unreachable!("{} has no place in the map: add it here", package.name));
        for other in uses(package, &[DependencyKind::Normal, DependencyKind::Build, DependencyKind::Development]) {
            // Its tests may turn on a feature of the crate itself.
            let arrow = (other.starts_with("secundine-") && other != package.name.as_str()).then_some(other.as_str());
            assert!(arrow.is_none_or(|name| allowed.contains(&name)), "{} must not import {other}", package.name);
        }
    }
    let named: Vec<_> =
        ALLOWED.iter().filter(|(name, _)| !members.iter().any(|package| package.name.as_str() == *name)).collect();
    assert!(named.is_empty(), "no such crates: {named:?}");
}

#[test]
fn the_domain_uses_nothing_that_has_a_clock_a_file_or_chance() {
    let metadata = metadata();
    let domain = metadata.workspace_packages().into_iter().find(|package| package.name == "secundine-domain").unwrap();
    for name in uses(domain, &[DependencyKind::Normal, DependencyKind::Build]) {
        assert!(PURE.contains(&name.as_str()), "the domain must not use {name}");
    }
    // The distributions alone: its default features can draw from them as well.
    let distributions = domain.dependencies.iter().find(|other| other.name == "statrs").unwrap();
    assert!(!distributions.uses_default_features && distributions.features == ["std"], "{:?}", distributions.features);
}

#[test]
fn the_record_uses_nothing_that_has_a_clock_a_file_or_chance() {
    let metadata = metadata();
    let record = metadata.workspace_packages().into_iter().find(|package| package.name == "secundine-record").unwrap();
    for name in uses(record, &[DependencyKind::Normal]) {
        assert!(PURE.contains(&name.as_str()) || WRITING.contains(&name.as_str()), "the record must not use {name}");
    }
}

#[test]
fn ours_is_free_in_two_ways() {
    for package in metadata().workspace_packages() {
        assert_eq!(package.license.as_deref(), Some("MIT OR Apache-2.0"), "{}", package.name);
    }
}
