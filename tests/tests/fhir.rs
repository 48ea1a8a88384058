//! A birth as a bundle of FHIR, held against the standard by programs of others. `SECUNDINE_BUNDLES` sets how many births are
//! drawn.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

#[path = "../../core/domain/tests/common/mod.rs"]
mod common;
mod fhir_check;
mod printed;

use std::fs;
use std::path::Path;

use common::arbitrary::entries;
use common::{BIRTH, MINUTE, Phone};
use fhir_check::{assert_accepted, bundle, faults, folder};
use printed::session;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use secundine_domain::chart::fold;
use secundine_domain::entry::{BirthId, Entry};
use secundine_domain::fact::{Client, Fact, Medicine};
use secundine_record::fhir::{Form, read};
use secundine_session::api::{Outgoing, RehearsalMode, Request, Response, ScenarioName};
use serde_json::{Value, json};

const SCENARIOS: [ScenarioName; 4] =
    [ScenarioName::QuietNight, ScenarioName::SlowPlacenta, ScenarioName::BriskBleeding, ScenarioName::Twins];

/// The file that a rehearsal of this scenario leaves, with its birth.
fn rehearsed(folder: &Path, scenario: ScenarioName) -> (BirthId, Vec<u8>) {
    let (mut session, clock) = session(folder);
    let begun = session.call(Request::Rehearse { scenario, speed: 1, mode: RehearsalMode::Watch }).unwrap();
    let Response::Rehearse(status) = begun else { unreachable!() };
    let birth = status.rehearsal.unwrap().birth.unwrap();
    clock.advance(3 * 3_600_000);
    let written = session.call(Request::WriteFile { birth, file: Outgoing::Fhir { photos: false }, language: None }).unwrap();
    let Response::WriteFile { path, pages, .. } = written else { unreachable!() };
    assert_eq!(pages, 0);
    assert!(path.ends_with(".json") && path.contains("rehearsal-fhir"), "{path}");
    (birth, fs::read(path).unwrap())
}

#[test]
fn every_rehearsal_is_accepted_in_each_language_and_reads_back() {
    let mut bundles = Vec::new();
    for (n, scenario) in SCENARIOS.into_iter().enumerate() {
        let folder = tempfile::tempdir().unwrap();
        let (birth, document) = rehearsed(folder.path(), scenario);
        let read = read(&document).unwrap();
        assert!(read.len() > 15 && read.iter().all(|entry| entry.birth == birth), "{}", read.len());
        let value: Value = serde_json::from_slice(&document).unwrap();
        let all = value["entry"].as_array().unwrap();
        assert!(all.iter().all(|one| one["resource"]["meta"]["tag"][0]["code"] == "HTEST"), "a rehearsal is told as one");
        let pdf = all.iter().find(|one| one["resource"]["contentType"] == "application/pdf").unwrap();
        assert!(pdf["resource"]["data"].as_str().unwrap().starts_with("JVBERi"), "the record is in it");
        bundles.push((format!("{n}-file"), document));
        for language in ["en", "es", "fr"] {
            bundles.push((format!("{n}-{language}-document"), bundle(birth, &read, Form::Document, language)));
            bundles.push((format!("{n}-{language}-transaction"), bundle(birth, &read, Form::Transaction, language)));
        }
    }
    assert_accepted(&bundles);
}

fn drawn(count: usize) -> Vec<Vec<Entry>> {
    // Another seed with each number, the same with each run.
    let seed = RngAlgorithm::ChaCha;
    let mut runner = TestRunner::new_with_rng(Config::default(), TestRng::from_seed(seed, &[7; 32]));
    let births = std::iter::repeat_with(move || entries().new_tree(&mut runner).unwrap().current());
    let births = births.map(|entries| entries.into_iter().filter(|entry| entry.birth == BIRTH).collect());
    births.filter(|entries: &Vec<Entry>| !entries.is_empty()).take(count).collect()
}

#[test]
fn any_birth_is_accepted() {
    let count = std::env::var("SECUNDINE_BUNDLES").map_or(30, |count| count.parse().unwrap());
    for (n, births) in drawn(count).chunks(250).enumerate() {
        let bundles: Vec<(String, Vec<u8>)> = births
            .iter()
            .enumerate()
            .map(|(m, entries)| {
                let form = if m % 2 == 0 { Form::Document } else { Form::Transaction };
                (format!("birth-{n}-{m}"), bundle(BIRTH, entries, form, ["en", "es", "fr"][m % 3]))
            })
            .collect();
        assert_accepted(&bundles);
    }
}

#[test]
fn faulty_bundles_of_others_are_rejected() {
    let place = "an identifier is a place of the bundle";
    let good = vec![("good".to_owned(), fs::read(folder().join("good.json")).unwrap())];
    // That one calls its patients by their places, which we do not.
    assert!(faults(&good)["good"].iter().all(|fault| fault.contains(place)));
    let mut files: Vec<_> = fs::read_dir(folder().join("faulty")).unwrap().map(|file| file.unwrap().path()).collect();
    files.sort();
    let bundles = files.iter().map(|file| (file.file_stem().unwrap().to_string_lossy().into_owned(), fs::read(file).unwrap()));
    let bundles: Vec<_> = bundles.collect();
    let found = faults(&bundles);
    assert_eq!(found.len(), 12);
    for (name, faults) in found {
        assert!(faults.iter().any(|fault| !fault.contains(place)), "{name} is accepted");
    }
}

/// Resources of this type in a bundle.
fn of<'a>(bundle: &'a mut Value, kind: &str) -> &'a mut Value {
    let all = bundle["entry"].as_array_mut().unwrap();
    &mut all.iter_mut().find(|one| one["resource"]["resourceType"] == kind).unwrap()["resource"]
}

/// An observation that keeps to this profile.
fn profiled<'a>(bundle: &'a mut Value, profile: &str) -> &'a mut Value {
    let url = json!(format!("http://hl7.org/fhir/StructureDefinition/{profile}"));
    let all = bundle["entry"].as_array_mut().unwrap();
    &mut all.iter_mut().find(|one| one["resource"]["meta"]["profile"][0] == url).unwrap()["resource"]
}

fn pressure(bundle: &mut Value) -> &mut Value {
    profiled(bundle, "bp")
}

fn pulse(bundle: &mut Value) -> &mut Value {
    profiled(bundle, "heartrate")
}

type Fault = (&'static str, fn(&mut Value));

#[rustfmt::skip]
const FAULTS: [Fault; 24] = [
    ("no-composition", |one| drop(one["entry"].as_array_mut().unwrap().remove(0))),
    ("no-timestamp", |one| drop(one.as_object_mut().unwrap().remove("timestamp"))),
    ("no-identifier", |one| drop(one.as_object_mut().unwrap().remove("identifier"))),
    ("request-in-a-document", |one| one["entry"][0]["request"] = json!({"method": "PUT", "url": "Composition/1"})),
    ("two-in-one-place", |one| one["entry"][1]["fullUrl"] = one["entry"][2]["fullUrl"].clone()),
    ("lost-reference", |one| of(one, "Observation")["subject"]["reference"] = json!("urn:uuid:00000000-0000-4000-8000-000000000000")),
    ("identifier-is-a-place", |one| { let place = one["entry"][1]["fullUrl"].clone(); of(one, "Patient")["identifier"][0]["value"] = place; }),
    ("no-author", |one| drop(of(one, "Composition").as_object_mut().unwrap().remove("author"))),
    ("composition-status", |one| of(one, "Composition")["status"] = json!("signed")),
    ("attester-mode", |one| of(one, "Composition")["attester"] = json!([{"mode": "witness"}])),
    ("empty-section", |one| of(one, "Composition")["section"][0] = json!({"title": "Mother"})),
    ("no-class", |one| drop(of(one, "Encounter").as_object_mut().unwrap().remove("class"))),
    ("period-backwards", |one| of(one, "Encounter")["period"]["end"] = json!("1999-01-01T00:00:00Z")),
    ("procedure-status", |one| of(one, "Procedure")["status"] = json!("amended")),
    ("medicine-without-time", |one| drop(of(one, "MedicationAdministration").as_object_mut().unwrap().remove("effectiveDateTime"))),
    ("dosage-in-words-only", |one| of(one, "MedicationAdministration")["dosage"] = json!({"text": "some"})),
    ("provenance-without-target", |one| drop(of(one, "Provenance").as_object_mut().unwrap().remove("target"))),
    ("recorded-without-zone", |one| of(one, "Provenance")["recorded"] = json!("2026-11-25T03:40:00")),
    ("entity-role", |one| of(one, "Provenance")["entity"][0]["role"] = json!("origin")),
    ("open-narrative", |one| of(one, "Composition")["text"]["div"] = json!("<div xmlns=\"http://www.w3.org/1999/xhtml\"><p>x</div>")),
    ("one-pressure", |one| drop(pressure(one)["component"].as_array_mut().unwrap().pop())),
    ("pulse-in-another-unit", |one| pulse(one)["valueQuantity"]["code"] = json!("mm[Hg]")),
    ("null", |one| of(one, "RelatedPerson")["patient"] = Value::Null),
    ("strange-relation", |one| of(one, "RelatedPerson")["relationship"][0]["coding"][0]["code"] = json!("NMOTH")),
];

#[test]
fn faulty_bundles_of_our_own_are_rejected() {
    let folder = tempfile::tempdir().unwrap();
    let (_, good) = rehearsed(folder.path(), ScenarioName::BriskBleeding);
    let good: Value = serde_json::from_slice(&good).unwrap();
    let bundles: Vec<(String, Vec<u8>)> = FAULTS
        .iter()
        .map(|(name, change)| {
            let mut faulty = good.clone();
            change(&mut faulty);
            assert_ne!(faulty, good, "{name} changes nothing");
            ((*name).to_owned(), serde_json::to_vec(&faulty).unwrap())
        })
        .collect();
    let accepted: Vec<String> =
        faults(&bundles).into_iter().filter(|(_, faults)| faults.is_empty()).map(|(name, _)| name).collect();
    assert!(accepted.is_empty(), "{accepted:?}");
}

/// Texts that somebody has broken a program with.
fn odd_texts() -> Vec<(&'static str, String)> {
    let long = "wörd ".repeat(2_000);
    vec![
        ("rtl", "שלום \u{202e}drawkcab\u{202c} مرحبا".to_owned()),
        ("combining", format!("e\u{301}{} o\u{308}", "\u{334}".repeat(50))),
        ("emoji", "👩🏽‍🍼🏳️‍🌈👨‍👩‍👧‍👦".to_owned()),
        ("long", long.trim().to_owned()),
        ("control", "a\u{0}b\u{7}c\u{1b}[31md\u{7f}e\u{85}f".to_owned()),
        ("noncharacter", "a\u{fffe}b\u{ffff}c\u{fdd0}d\u{10ffff}e".to_owned()),
        ("script", "</p></div></script><script>alert(1)</script><!-- ]]> &amp; &lt;".to_owned()),
        ("formula", "=cmd|' /C calc'!A0".to_owned()),
        ("quotes", "\"'`\\\\ \\u0000 ${x} {{y}} %s".to_owned()),
        ("lines", "one\r\ntwo\tthree\n\u{2028}four\u{2029}".to_owned()),
        ("wide", "\u{1f1e6}𝒳𠜎 ﷽ \u{feff}x\u{200b}".to_owned()),
    ]
}

/// The same text with a sign in place of each character that can stand in no file.
fn shown(text: &str) -> String {
    let stray = |letter: char| {
        let no_character = u32::from(letter) & 0xfffe == 0xfffe || ('\u{fdd0}'..='\u{fdef}').contains(&letter);
        letter.is_control() && !"\n\r\t".contains(letter) || no_character
    };
    text.trim().chars().map(|letter| if stray(letter) { '\u{fffd}' } else { letter }).collect()
}

#[test]
fn whatever_is_written_comes_out_whole_or_shows_what_it_lacks() {
    let mut bundles = Vec::new();
    for (name, text) in odd_texts() {
        let mut phone = Phone::first();
        phone.mark(Fact::BabyBorn { baby: 1 });
        phone.mark(Fact::ClientRecorded(Client { name: text.clone(), allergies: Some(text.clone()), ..Client::default() }));
        phone.pass(MINUTE).mark(Fact::Noted { text: text.clone() });
        let medicine = Medicine { name: text.clone(), dose: text.clone(), route: text.clone(), ..Medicine::default() };
        phone.mark(Fact::MedicineGiven(medicine));
        let bytes = bundle(BIRTH, &phone.entries, Form::Document, "en");
        assert_eq!(fold(BIRTH, &read(&bytes).unwrap()), fold(BIRTH, &phone.entries), "{name}");
        let told: Value = serde_json::from_slice(&bytes).unwrap();
        let all = told["entry"].as_array().unwrap();
        let found = |at: &str| all.iter().any(|one| one["resource"].pointer(at) == Some(&json!(shown(&text))));
        for at in ["/name/0/text", "/code/text", "/valueString", "/medicationCodeableConcept/text"] {
            assert!(found(at), "{name} is not whole at {at}");
        }
        bundles.push((name.to_owned(), bytes));
    }
    assert_accepted(&bundles);
}
