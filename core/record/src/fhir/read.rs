//! Our own bundle, read back.

use std::collections::{BTreeMap, BTreeSet};

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use secundine_domain::entry::{Entry, EntryId, StoredError};
use serde_json::Value;

use super::FhirError;
use super::codes::IDENTIFIERS;
use super::files::ENTRIES;

/// The entries of a birth, in the order of their ids, from a bundle that was written here.
///
/// They are taken as they were kept. That each of them has its provenance in the bundle, and each provenance its entry, shows
/// that nothing was added or left out by halves; what the other resources say is not read.
///
/// # Errors
/// [`FhirError`] says what it is instead; nothing of the bundle's text is in it.
pub fn read(bytes: &[u8]) -> Result<Vec<Entry>, FhirError> {
    let bundle: Value =
        serde_json::from_slice(bytes).map_err(|error| FhirError::NoJson { line: error.line(), column: error.column() })?;
    if text(&bundle, "/resourceType") != Some("Bundle") || !matches!(text(&bundle, "/type"), Some("document" | "transaction")) {
        return Err(FhirError::NoBundle);
    }
    let places = bundle.get("entry").and_then(Value::as_array).ok_or(FhirError::NoBundle)?;
    let resources: Vec<&Value> = places.iter().filter_map(|place| place.get("resource")).collect();
    let entries = decoded(&lines(&resources)?)?;
    let told: BTreeSet<EntryId> = entries.iter().map(|entry| entry.id).collect();
    if told == provenances(&resources) { Ok(entries) } else { Err(FhirError::Disagrees) }
}

/// What the practice is called in a bundle that was written here; none where it is not said.
#[must_use]
pub fn read_practice(bytes: &[u8]) -> Option<String> {
    let bundle: Value = serde_json::from_slice(bytes).ok()?;
    let resources: Vec<&Value> = bundle.get("entry")?.as_array()?.iter().filter_map(|place| place.get("resource")).collect();
    let organizations = of(&resources, "Organization");
    let [practice] = organizations.as_slice() else { return None };
    text(practice, "/name").map(str::to_owned)
}

fn text<'a>(value: &'a Value, at: &str) -> Option<&'a str> {
    value.pointer(at)?.as_str()
}

fn of<'a>(resources: &[&'a Value], kind: &str) -> Vec<&'a Value> {
    resources.iter().filter(|resource| text(resource, "/resourceType") == Some(kind)).copied().collect()
}

/// The file of entries: there is one, and no more.
fn lines(resources: &[&Value]) -> Result<Vec<u8>, FhirError> {
    let files = of(resources, "Binary").into_iter().filter(|file| text(file, "/contentType") == Some(ENTRIES));
    let files: Vec<&Value> = files.collect();
    let [file] = files.as_slice() else { return Err(FhirError::NoEntries) };
    let data = text(file, "/data").unwrap_or_default();
    STANDARD.decode(data).map_err(|_| FhirError::NoEntries)
}

fn decoded(lines: &[u8]) -> Result<Vec<Entry>, FhirError> {
    let mut found: BTreeMap<EntryId, Entry> = BTreeMap::new();
    if lines.is_empty() {
        return Ok(Vec::new());
    }
    let lines = lines.strip_suffix(b"\n").ok_or(FhirError::NoEntries)?;
    for (n, line) in lines.split(|byte| *byte == b'\n').enumerate() {
        let entry = Entry::decode(line).map_err(|error| match error {
            StoredError::Newer(form) => FhirError::Newer(form),
            StoredError::Unreadable(_) => FhirError::Entry(n + 1),
        })?;
        let other_birth = found.values().next().is_some_and(|first| first.birth != entry.birth);
        if other_birth || found.insert(entry.id, entry).is_some() {
            return Err(FhirError::Entry(n + 1));
        }
    }
    Ok(found.into_values().collect())
}

/// The entries that the provenances speak of.
fn provenances(resources: &[&Value]) -> BTreeSet<EntryId> {
    let ours = |what: &Value| {
        let known = text(what, "/identifier/system") == Some(IDENTIFIERS);
        text(what, "/identifier/value").filter(|_| known)?.parse().ok()
    };
    let entities = of(resources, "Provenance").into_iter().filter_map(|one| one.get("entity")?.as_array()).flatten();
    let sources = entities.filter(|entity| text(entity, "/role") == Some("source"));
    sources.filter_map(|entity| ours(entity.get("what")?)).collect()
}
