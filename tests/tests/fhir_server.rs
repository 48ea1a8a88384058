//! A birth is sent to a FHIR server on loopback: it is kept whole, a retry doubles nothing, a correction takes the place of what it
//! puts right.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

#[path = "../../core/domain/tests/common/mod.rs"]
mod common;
mod fhir_check;

use std::collections::BTreeMap;
use std::process::Command;

use common::{BIRTH, MINUTE, Phone, apgar, born, chose, clamped, cut, look, membranes, oxytocin, pad, placenta, seen};
use fhir_check::{bundle, folder, python};
use secundine_domain::chart::fold;
use secundine_domain::fact::Fact;
use secundine_record::fhir::{Form, read};
use serde_json::{Value, json};

/// What a server holds after each of these transactions.
fn sent(transactions: &[Vec<u8>]) -> Vec<Value> {
    let place = tempfile::tempdir().unwrap();
    let mut command = Command::new(python());
    command.arg(folder().join("server.py")).current_dir(place.path());
    for (n, bytes) in transactions.iter().enumerate() {
        let path = place.path().join(format!("{n}.json"));
        std::fs::write(&path, bytes).unwrap();
        command.arg(path);
    }
    let output = command.output().unwrap_or_else(|error| panic!("{command:?}: {error}: `make tools-test` sets it up"));
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    serde_json::from_slice(&output.stdout).unwrap()
}

fn resources(holding: &Value) -> &Vec<Value> {
    holding["resources"].as_array().unwrap()
}

/// How many of each type.
fn counts<'a>(resources: impl Iterator<Item = &'a Value>) -> BTreeMap<String, usize> {
    resources.fold(BTreeMap::new(), |mut counts, one| {
        *counts.entry(one["resourceType"].as_str().unwrap().to_owned()).or_default() += 1;
        counts
    })
}

fn identifier(resource: &Value) -> Option<&str> {
    resource.pointer("/identifier/0/value").or_else(|| resource.pointer("/identifier/value"))?.as_str()
}

/// What a resource says, less what a server gives to it: its id, its meta and where things stand.
fn said(resource: &Value) -> Value {
    match resource {
        Value::Object(inside) => inside
            .iter()
            .filter(|(key, _)| !["id", "meta", "reference"].contains(&key.as_str()))
            .map(|(key, value)| (key.clone(), said(value)))
            .collect(),
        Value::Array(inside) => inside.iter().map(said).collect(),
        other => other.clone(),
    }
}

fn night() -> Phone {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(5 * MINUTE).mark(apgar(1));
    phone.mark(clamped(1));
    phone.mark(cut(1));
    phone.pass(10 * MINUTE).mark(Fact::MedicineGiven(oxytocin()));
    phone.mark(placenta(&[1]));
    phone.mark(membranes(&[1]));
    phone.mark(seen(300));
    phone.mark(look(96, 104));
    phone.mark(chose("lobes", "meet"));
    phone
}

#[test]
fn a_server_keeps_it_whole_and_a_retry_doubles_nothing() {
    let mut phone = night();
    let pad_entry = phone.pass(MINUTE).mark(pad(510, 95));
    let before = phone.entries.clone();
    phone.pass(MINUTE).correct(pad_entry, pad(310, 95));
    phone.mark(chose("vessels", "three"));
    let first = bundle(BIRTH, &before, Form::Transaction, "en");
    let more = bundle(BIRTH, &phone.entries, Form::Transaction, "en");
    let [once, twice, put_right] = sent(&[first.clone(), first.clone(), more]).try_into().unwrap();

    let told: Value = serde_json::from_slice(&first).unwrap();
    let told: Vec<&Value> = told["entry"].as_array().unwrap().iter().map(|one| &one["resource"]).collect();
    for holding in [&once, &twice, &put_right] {
        assert_eq!(holding["status"], 200, "{}", holding["answer"]);
    }
    assert!(once["entries"].as_array().unwrap().iter().all(|status| status == "201 Created"), "{}", once["entries"]);
    assert!(twice["entries"].as_array().unwrap().iter().all(|status| status == "200 OK"), "{}", twice["entries"]);
    assert_eq!(counts(resources(&once).iter()), counts(told.iter().copied()));
    assert_eq!(counts(resources(&twice).iter()), counts(resources(&once).iter()), "a retry doubles nothing");

    // What it gives back says what was sent.
    let kept: BTreeMap<&str, &Value> = resources(&twice).iter().filter_map(|one| Some((identifier(one)?, one))).collect();
    let named: Vec<&Value> = told.iter().copied().filter(|one| identifier(one).is_some()).collect();
    assert!(named.len() > 15, "{}", named.len());
    for sent in named {
        assert_eq!(said(kept[identifier(sent).unwrap()]), said(sent));
    }
    let given_back = |holding: &Value| {
        let entry: Vec<Value> = resources(holding).iter().map(|one| json!({ "resource": one })).collect();
        let bundle = json!({ "resourceType": "Bundle", "type": "document", "entry": entry });
        read(&serde_json::to_vec(&bundle).unwrap()).unwrap()
    };
    assert_eq!(fold(BIRTH, &given_back(&once)), fold(BIRTH, &before));

    // The correction stands in the place of the first reading, and nothing else is new but who wrote what.
    assert_eq!(fold(BIRTH, &given_back(&put_right)), phone.chart());
    let loss = format!("{}.entry-{pad_entry}", BIRTH.0);
    let losses: Vec<&Value> = resources(&put_right).iter().filter(|one| identifier(one) == Some(&loss)).collect();
    assert_eq!(losses.len(), 1);
    assert_eq!((&losses[0]["status"], &losses[0]["valueQuantity"]["value"]), (&json!("amended"), &json!(215)));
    let mut expected = counts(resources(&once).iter());
    *expected.get_mut("Provenance").unwrap() += 2;
    assert_eq!(counts(resources(&put_right).iter()), expected);
}
