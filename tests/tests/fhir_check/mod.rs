//! Programs of others that know FHIR, and bundles to give them.

#![allow(dead_code, reason = "each test file uses its own part")]

use std::collections::BTreeMap;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use secundine_domain::chart::{Chart, fold};
use secundine_domain::entry::{BirthId, Entry};
use secundine_domain::fact::Practice;
use secundine_domain::file::FileId;
use secundine_domain::time::Stamp;
use secundine_record::Origin;
use secundine_record::fhir::{Form, Handover, write};
use secundine_record::words::Words;
use serde_json::Value;

/// What is set up for these tests: `make tools-test` does it.
pub fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("fhir")
}

pub fn python() -> PathBuf {
    folder().join("venv/bin/python")
}

/// A bundle of these entries, written an hour after the last of them.
pub fn bundle(birth: BirthId, entries: &[Entry], form: Form, language: &str) -> Vec<u8> {
    let chart = fold(birth, entries);
    let practice = Practice {
        name: "Heron House".to_owned(),
        practitioner: "Ida Lindqvist".to_owned(),
        role: "midwife".to_owned(),
        protocol: None,
    };
    let last = entries.iter().map(|entry| entry.recorded.wall_ms).max().unwrap_or_default();
    let written = Stamp { wall_ms: last.saturating_add(3_600_000), offset_min: 60, zone: None, boot: None };
    let origin = Origin { practice: &practice, version: "0f0f", written: &written, words: Words::of(language) };
    write(&Handover { birth, chart: &chart, entries, origin: &origin, record: Some(b"%PDF-1.7"), photos: &photos(&chart) }, form)
        .unwrap()
}

/// A picture for every second photograph.
fn photos(chart: &Chart) -> BTreeMap<FileId, Vec<u8>> {
    chart.photos.iter().step_by(2).map(|photo| (photo.what.file, vec![0xff, 0xd8, 0xff, 0xd9])).collect()
}

/// Who checks, and how each is started. Helios takes part where `SECUNDINE_HFS` names it.
fn checkers() -> Vec<(&'static str, PathBuf, &'static str)> {
    let mut checkers = vec![("medplum", "node".into(), "check.mjs"), ("fhirkit", python(), "check.py")];
    if std::env::var_os("SECUNDINE_HFS").is_some() {
        checkers.push(("helios", python(), "helios.py"));
    }
    checkers
}

/// What the checkers find wrong with each bundle, by its name; nothing where they find nothing.
pub fn faults(bundles: &[(String, Vec<u8>)]) -> BTreeMap<String, Vec<String>> {
    let folder_of_files = tempfile::tempdir().unwrap();
    let path = |name: &str| folder_of_files.path().join(format!("{name}.json"));
    for (name, bytes) in bundles {
        std::fs::write(path(name), bytes).unwrap();
    }
    let list: String = bundles.iter().map(|(name, _)| format!("{}\n", path(name).display())).collect();
    let mut found: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for (checker, program, script) in checkers() {
        let told = told(Command::new(program).arg(folder().join(script)), &list);
        assert_eq!(told.lines().count(), bundles.len(), "{checker} looked at each: {told}");
        for line in told.lines() {
            let one: Value = serde_json::from_str(line).unwrap();
            let name = Path::new(one["file"].as_str().unwrap()).file_stem().unwrap().to_string_lossy().into_owned();
            let faults = one["faults"].as_array().unwrap().iter().map(|fault| format!("{checker}: {fault}"));
            found.entry(name).or_default().extend(faults);
        }
    }
    found
}

fn told(command: &mut Command, list: &str) -> String {
    let started = command.stdin(Stdio::piped()).stdout(Stdio::piped()).spawn();
    let mut child = started.unwrap_or_else(|error| unreachable!("{command:?}: {error}: `make tools-test` sets it up"));
    child.stdin.take().unwrap().write_all(list.as_bytes()).unwrap();
    let output = child.wait_with_output().unwrap();
    assert!(output.status.success(), "{command:?}: `make tools-test` sets it up");
    String::from_utf8(output.stdout).unwrap()
}

/// Fails with what was found, where something was.
pub fn assert_accepted(bundles: &[(String, Vec<u8>)]) {
    let wrong: Vec<String> = faults(bundles)
        .into_iter()
        .filter(|(_, faults)| !faults.is_empty())
        .map(|(name, faults)| format!("{name}:\n  {}", faults.join("\n  ")))
        .collect();
    assert!(
        wrong.is_empty(),
        "{} of {} bundles:\n{}",
        wrong.len(),
        bundles.len(),
        wrong.iter().take(5).cloned().collect::<Vec<_>>().join("\n")
    );
}
