//! A birth as a bundle of FHIR, and back: what holds for every set of entries. `PROPTEST_CASES` sets how many are tried.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

#[path = "../../domain/tests/common/mod.rs"]
mod common;

use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

use common::arbitrary::entries;
use common::{BIRTH, MINUTE, Phone, apgar, born, clamped, kinds, look, pad, placenta};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{FileFailurePersistence, TestRunner};
use secundine_domain::chart::{Chart, State, fold};
use secundine_domain::entry::Entry;
use secundine_domain::fact::{Fact, Loss, Practice};
use secundine_domain::time::{Boot, Stamp};
use secundine_record::Origin;
use secundine_record::fhir::{FhirError, Form, Handover, code_system, read, write};
use secundine_record::words::Words;
use serde_json::{Value, json};

fn lasting() -> ProptestConfig {
    ProptestConfig {
        failure_persistence: Some(Box::new(FileFailurePersistence::WithSource("regressions"))),
        ..ProptestConfig::default()
    }
}

fn bundle_in(entries: &[Entry], form: Form, language: &str) -> Vec<u8> {
    let chart = fold(BIRTH, entries);
    let practice =
        Practice { name: "Heron House".to_owned(), practitioner: "Ida".to_owned(), role: "midwife".to_owned(), protocol: None };
    let boot = Some(Boot { id: "a".to_owned(), since_ms: 9_000_000 });
    let written = Stamp { wall_ms: common::START + 60 * MINUTE, offset_min: 60, zone: None, boot };
    let words = Words::of(language);
    let origin = Origin { practice: &practice, version: "0f0f", written: &written, words };
    write(
        &Handover { birth: BIRTH, chart: &chart, entries, origin: &origin, record: Some(b"%PDF-"), photos: &BTreeMap::new() },
        form,
    )
    .unwrap()
}

fn bundle(entries: &[Entry], form: Form) -> Value {
    serde_json::from_slice(&bundle_in(entries, form, "en")).unwrap()
}

fn of_birth(entries: Vec<Entry>) -> Vec<Entry> {
    entries.into_iter().filter(|entry| entry.birth == BIRTH).collect()
}

fn resources(bundle: &Value) -> Vec<&Value> {
    bundle["entry"].as_array().unwrap().iter().map(|entry| &entry["resource"]).collect()
}

fn named<'a>(bundle: &'a Value, key: &str) -> Option<&'a Value> {
    let name = format!("{}.{key}", BIRTH.0);
    resources(bundle).into_iter().find(|resource| resource["identifier"][0]["value"] == name)
}

/// The resources of a line, those of its parts too.
fn of_line<'a>(bundle: &'a Value, line: &str) -> Vec<&'a Value> {
    let name = format!("{}.entry-{line}", BIRTH.0);
    let belongs = |value: &str| value.strip_prefix(&name).is_some_and(|rest| rest.is_empty() || rest.starts_with('-'));
    resources(bundle).into_iter().filter(|resource| resource["identifier"][0]["value"].as_str().is_some_and(belongs)).collect()
}

fn night() -> Phone {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(5 * MINUTE).mark(apgar(1));
    phone.mark(clamped(1));
    let pad_entry = phone.pass(16 * MINUTE).mark(pad(510, 95));
    phone.mark(placenta(&[1]));
    phone.pass(MINUTE).mark(look(84, 118));
    phone.correct(pad_entry, pad(310, 95));
    let slip = phone.mark(Fact::ConcernMarked);
    phone.retract(slip);
    phone
}

#[test]
fn a_short_night_reads_as_laid_out() {
    let text = String::from_utf8(bundle_in(&night().entries, Form::Transaction, "en")).unwrap();
    // A resource on each line, and of the files only that they are there.
    let lines = text.replace("{\"fullUrl\"", "\n{\"fullUrl\"");
    let lines = lines.lines().map(|line| match line.split_once("\"data\":\"") {
        Some((before, after)) => format!("{before}\"data\":\"(data){}", after.trim_start_matches(|letter| letter != '"')),
        None => line.to_owned(),
    });
    insta::assert_snapshot!(lines.collect::<Vec<_>>().join("\n"));
}

/// The codes of our own list that stand somewhere in it.
fn own_codes(value: &Value, found: &mut BTreeSet<String>) {
    match value {
        Value::Array(inside) => inside.iter().for_each(|one| own_codes(one, found)),
        Value::Object(inside) => {
            let ours = inside.get("system").and_then(Value::as_str).is_some_and(|system| system.ends_with("/third-stage"));
            found.extend(inside.get("code").and_then(Value::as_str).filter(|_| ours).map(str::to_owned));
            inside.values().for_each(|one| own_codes(one, found));
        }
        _ => {}
    }
}

fn listed_codes() -> Vec<(String, String)> {
    let system: Value = serde_json::from_slice(&code_system().unwrap()).unwrap();
    let text = |one: &Value| one.as_str().unwrap().to_owned();
    system["concept"].as_array().unwrap().iter().map(|one| (text(&one["code"]), text(&one["display"]))).collect()
}

/// Once a version is out, a code stays for ever.
#[test]
fn our_own_codes_are_these() {
    let listed = listed_codes();
    let once: BTreeSet<&String> = listed.iter().map(|(code, _)| code).collect();
    assert_eq!(once.len(), listed.len(), "each once");
    let lines: Vec<String> = listed.iter().map(|(code, display)| format!("{code} = {display}")).collect();
    insta::assert_snapshot!(lines.join("\n"));
}

#[test]
fn every_kind_of_fact_comes_out() {
    let mut runner = TestRunner::deterministic();
    let fact = common::arbitrary::fact();
    let mut missing: BTreeSet<String> = kinds().into_iter().collect();
    for _ in 0..4_000 {
        let drawn = fact.new_tree(&mut runner).unwrap().current();
        let kind = common::kind(&drawn);
        if !missing.remove(kind) {
            continue;
        }
        // An answer stands in what is told of its placenta.
        let in_whole = if let Fact::Examined { placenta, .. } = &drawn { Some(format!("placenta-{placenta}")) } else { None };
        let mut phone = Phone::first();
        let id = phone.mark(drawn);
        let told = bundle(&phone.entries, Form::Document);
        let found = in_whole.map_or(!of_line(&told, &id.to_string()).is_empty(), |whole| named(&told, &whole).is_some());
        assert!(found, "{kind} has no resource");
        if missing.is_empty() {
            return;
        }
    }
    unreachable!("not drawn: {missing:?}");
}

#[test]
fn the_same_birth_is_the_same_bundle() {
    let entries = night().entries;
    assert_eq!(bundle_in(&entries, Form::Document, "en"), bundle_in(&entries, Form::Document, "en"));
    let more = {
        let mut phone = night();
        phone.mark(look(90, 110));
        phone.entries
    };
    let ids = |entries: &[Entry]| -> BTreeSet<String> {
        resources(&bundle(entries, Form::Document)).iter().map(|one| one["id"].as_str().unwrap().to_owned()).collect()
    };
    assert!(ids(&more).is_superset(&ids(&entries)), "what was sent before keeps its name");
}

#[test]
fn what_is_no_bundle_of_ours_is_refused_by_what_it_is() {
    let good = bundle(&night().entries, Form::Document);
    let refused = |change: &dyn Fn(&mut Value)| {
        let mut other = good.clone();
        change(&mut other);
        read(&serde_json::to_vec(&other).unwrap()).unwrap_err()
    };
    let file = |bundle: &mut Value, data: &dyn Fn(String) -> String| {
        use base64::Engine;
        use base64::engine::general_purpose::STANDARD;
        for entry in bundle["entry"].as_array_mut().unwrap() {
            let resource = &mut entry["resource"];
            if resource["contentType"] == "application/x-ndjson" {
                let text = String::from_utf8(STANDARD.decode(resource["data"].as_str().unwrap()).unwrap()).unwrap();
                resource["data"] = json!(STANDARD.encode(data(text)));
            }
        }
    };
    assert!(matches!(read(b"{\n  x"), Err(FhirError::NoJson { line: 2, column: 3 })));
    assert!(matches!(read(b"[]"), Err(FhirError::NoBundle)));
    assert!(matches!(refused(&|one| one["type"] = json!("searchset")), FhirError::NoBundle));
    assert!(matches!(refused(&|one| one["entry"] = json!([])), FhirError::NoEntries));
    assert!(matches!(refused(&|one| file(one, &|text| text.trim_end().to_owned())), FhirError::NoEntries));
    assert!(matches!(refused(&|one| file(one, &|text| text.replacen("\"fact\"", "\"fict\"", 1))), FhirError::Entry(1)));
    assert!(matches!(refused(&|one| file(one, &|text| format!("{text}{text}"))), FhirError::Entry(11)));
    assert!(matches!(refused(&|one| file(one, &|text| text.replacen("\"v\":1", "\"v\":9", 1))), FhirError::Newer(9)));
    let cut = |text: String| text.split_inclusive('\n').skip(1).collect();
    assert!(matches!(refused(&|one| file(one, &cut)), FhirError::Disagrees));
    let fewer = |one: &mut Value| drop(one["entry"].as_array_mut().unwrap().pop());
    assert!(matches!(refused(&fewer), FhirError::Disagrees));
}

/// What the entries say of a line stands in its resources: its state, its moment, its number.
fn agrees(chart: &Chart, bundle: &Value) -> Result<(), TestCaseError> {
    for line in &chart.lines {
        let shown = line.shown();
        for resource in of_line(bundle, &line.first.id.to_string()) {
            let kind = resource["resourceType"].as_str().unwrap();
            let status = resource["status"].as_str();
            let wanted = match (line.state(), kind) {
                (_, "AllergyIntolerance") => None,
                (State::Retracted, _) => Some("entered-in-error"),
                (State::Corrected, "Observation") => Some("amended"),
                (State::Stands, "Observation") => Some("final"),
                _ => Some("completed"),
            };
            prop_assert_eq!(status, wanted);
            let at = ["effectiveDateTime", "performedDateTime", "recordedDate"].iter().find_map(|at| resource[at].as_str());
            let recorded = kind == "AllergyIntolerance";
            let wanted = if recorded { shown.recorded.rfc3339() } else { shown.occurred.rfc3339() };
            prop_assert_eq!(at, Some(wanted.as_str()));
            if let Fact::ApgarScored(apgar) = &shown.fact {
                prop_assert_eq!(&resource["valueInteger"], &json!(apgar.total()));
            }
            if let Fact::BloodLoss(Loss::Weighed { gross, dry, .. }) = &shown.fact {
                prop_assert_eq!(&resource["component"][0]["valueQuantity"]["value"], &json!(gross.get()));
                prop_assert_eq!(&resource["component"][1]["valueQuantity"]["value"], &json!(dry.get()));
            }
        }
    }
    for (no, baby) in &chart.babies {
        let told = named(bundle, &format!("baby-{no}")).unwrap();
        let moment = told["_birthDate"]["extension"][0]["valueDateTime"].as_str();
        prop_assert_eq!(moment.map(str::to_owned), baby.born.as_ref().map(|born| born.at.rfc3339()));
    }
    for (placenta, examined) in &chart.examinations {
        let told = named(bundle, &format!("placenta-{placenta}")).unwrap();
        let answered = told["component"].as_array().map_or(0, |parts| {
            parts.iter().filter(|part| part["dataAbsentReason"]["coding"][0]["code"] != "not-performed").count()
        });
        prop_assert!(answered >= examined.given.len(), "{} of {}", answered, examined.given.len());
    }
    Ok(())
}

/// Nothing stands for what is not there, whatever the entries are, and everything can be found.
fn well_formed(value: &Value, places: &BTreeSet<&str>) -> Result<(), TestCaseError> {
    match value {
        Value::Null => prop_assert!(false, "null"),
        Value::Array(inside) => {
            prop_assert!(!inside.is_empty(), "an empty list");
            inside.iter().try_for_each(|one| well_formed(one, places))?;
        }
        Value::Object(inside) => {
            prop_assert!(!inside.is_empty(), "an empty element");
            if let Some(reference) = inside.get("reference").and_then(Value::as_str) {
                prop_assert!(places.contains(reference), "{} is nowhere", reference);
            }
            inside.values().try_for_each(|one| well_formed(one, places))?;
        }
        Value::String(text) => {
            prop_assert!(!text.trim().is_empty(), "an empty text");
            let stray = text.chars().find(|letter| letter.is_control() && !matches!(letter, '\n' | '\t' | '\r'));
            prop_assert_eq!(stray, None);
        }
        Value::Bool(_) | Value::Number(_) => {}
    }
    Ok(())
}

proptest! {
    #![proptest_config(lasting())]

    #[test]
    fn what_is_written_is_read_back(entries in entries(), document in any::<bool>()) {
        let entries = of_birth(entries);
        let form = if document { Form::Document } else { Form::Transaction };
        let read = read(&bundle_in(&entries, form, "fr")).unwrap();
        let kept: BTreeMap<_, _> = entries.iter().map(|entry| (entry.id, entry)).collect();
        prop_assert!(read.iter().eq(kept.into_values()));
        prop_assert_eq!(fold(BIRTH, &read), fold(BIRTH, &entries));
    }

    #[test]
    fn the_resources_say_what_the_entries_say(entries in entries()) {
        let entries = of_birth(entries);
        let told = bundle(&entries, Form::Document);
        agrees(&fold(BIRTH, &entries), &told)?;
        let places: Vec<&str> = told["entry"].as_array().unwrap().iter().map(|one| one["fullUrl"].as_str().unwrap()).collect();
        let once: BTreeSet<&str> = places.iter().copied().collect();
        prop_assert_eq!(once.len(), places.len());
        well_formed(&told, &once)?;
        let mut codes = BTreeSet::new();
        own_codes(&told, &mut codes);
        static LISTED: LazyLock<BTreeSet<String>> = LazyLock::new(|| listed_codes().into_iter().map(|(code, _)| code).collect());
        prop_assert!(codes.is_subset(&LISTED), "{:?}", codes.difference(&LISTED));
        let written = resources(&told).iter().filter(|one| one["resourceType"] == "Provenance").count();
        prop_assert_eq!(written, entries.len());
    }
}
