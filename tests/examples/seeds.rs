//! Writes the seeds that the fuzzers' corpora begin with: what the program itself would have written.

#![allow(clippy::unwrap_used, reason = "what cannot be written stops it")]
#![allow(clippy::indexing_slicing, clippy::string_slice, reason = "what cannot be written stops it")]

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use age::{scrypt, x25519};
use secundine_domain::chart::fold;
use secundine_domain::entry::{BirthId, DeviceId, Entry, EntryId};
use secundine_domain::fact::Practice;
use secundine_domain::time::Stamp;
use secundine_record::Origin;
use secundine_record::fhir::{Form, Handover, write};
use secundine_record::words::Words;
use secundine_session::api::{At, Request};
use secundine_session::fuzzing::{code_of, sync};
use secundine_store::{DATABASE, ExposeSecret, INBOX, INBOX_RECIPIENT, Inbox, Passphrase, RECOVERY_KEY, Store, fuzzing};
use secundine_tests::fuzz::{HEADS, IDENTITY, PASSPHRASE};
use serde_json::json;

fn main() {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR"));
    let seeds = [
        ("stored_facts", stored_facts()),
        ("inbox", inbox()),
        ("mark", marks()),
        ("protocol", domain("protocols")),
        ("head", HEADS.map(|n| fuzzing::write_head(n).into_bytes()).to_vec()),
        ("key_file", key_files()),
        ("backup", archives()),
        ("salvage", pages()),
        ("request", requests()),
        ("bundle", bundles()),
        ("code", codes()),
        ("envelope", envelopes()),
    ];
    for (name, seeds) in seeds {
        let corpus = tests.join("fuzz/corpus").join(name);
        fs::create_dir_all(&corpus).unwrap();
        for (n, seed) in seeds.iter().enumerate() {
            fs::write(corpus.join(format!("seed-{n}")), seed).unwrap();
        }
    }
}

/// The files of a folder of the domain, in order of their names.
fn domain(folder: &str) -> Vec<Vec<u8>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/domain").join(folder);
    let mut paths: Vec<PathBuf> = fs::read_dir(folder).unwrap().map(|file| file.unwrap().path()).collect();
    paths.sort();
    paths.iter().map(|path| fs::read(path).unwrap()).collect()
}

fn identity() -> x25519::Identity {
    IDENTITY.parse().unwrap()
}

/// A small practice: its folder, a backup of it, and the digits of its key.
fn practice() -> (tempfile::TempDir, PathBuf, String) {
    let folder = tempfile::tempdir().unwrap();
    let (mut store, recovery) = Store::create(folder.path(), Passphrase::from(PASSPHRASE.to_owned())).unwrap();
    let birth = BirthId(store.next_id());
    for line in domain("fixtures/v1") {
        // Those of a later form are told as such, and stand in no archive.
        if let Ok(entry) = Entry::decode(&line) {
            let entry = Entry { id: store.next_id(), birth, amends: None, ..entry };
            let _ = store.append(&entry);
        }
    }
    let backup = folder.path().join("backup.tar");
    let made = Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot: None };
    store.back_up(&backup, &made).unwrap();
    store.close().unwrap();
    let recovery: x25519::Identity = recovery.expose_secret().parse().unwrap();
    let digits = age::decrypt(&recovery, &fs::read(folder.path().join(RECOVERY_KEY)).unwrap()).unwrap();
    (folder, backup, String::from_utf8(digits).unwrap())
}

/// A code of each kind.
fn codes() -> Vec<Vec<u8>> {
    let birth = format!("{}-1", "5f".repeat(16));
    let shown = json!({"b": birth, "l": "blue door", "w": 1_795_570_800_000_i64, "n": "7f3a", "t": [[null, 4, 0, [], 90_000]]});
    let answer = json!({"b": birth, "d": "6a".repeat(16), "n": "7f3a", "w": 0, "r": 20, "s": 1_500});
    let public = [7_u8; 32];
    let card = json!({"public": public, "kem": identity().to_public().to_string(), "label": "Mari"});
    let all = [
        ("BIRTH", shown.to_string()),
        ("ANSWER", answer.to_string()),
        ("CARD", card.to_string()),
        ("WELCOME", "sealed".to_owned()),
    ];
    all.iter().map(|(name, payload)| code_of(name, payload.as_bytes()).unwrap().into_bytes()).collect()
}

/// What lies in a bucket once two phones share, unsealed, and one of each sealed for the fuzzer.
fn envelopes() -> Vec<Vec<u8>> {
    let bodies = sync::bodies();
    let objects = bodies.iter().enumerate().map(|(n, body)| sync::object(n % 4, body).unwrap());
    objects.chain(bodies.iter().cloned()).collect()
}

/// A short birth as a document of FHIR, and as a transaction.
fn bundles() -> Vec<Vec<u8>> {
    let stored = domain("fixtures/v1").into_iter().filter_map(|line| Entry::decode(&line).ok()).take(3);
    let birth = BirthId(EntryId { device: DeviceId([7; 16]), n: 1 });
    let entries = (1..).zip(stored).map(|(n, entry)| Entry { id: EntryId { n, ..birth.0 }, birth, amends: None, ..entry });
    let entries: Vec<Entry> = entries.collect();
    let practice = Practice { name: "Heron House".to_owned(), practitioner: String::new(), role: String::new(), protocol: None };
    let origin = Origin { practice: &practice, version: "0f", written: &entries[0].recorded, words: Words::english() };
    let chart = fold(birth, &entries);
    let handover = Handover { birth, chart: &chart, entries: &entries, origin: &origin, record: None, photos: &BTreeMap::new() };
    [Form::Document, Form::Transaction].map(|form| write(&handover, form).unwrap()).to_vec()
}

/// The archive of a small practice, and the tar in which it lies sealed, without its entries.
fn archives() -> Vec<Vec<u8>> {
    let (_folder, backup, digits) = practice();
    let tar = fs::read(&backup).unwrap();
    let entries = Command::new("tar").arg("-xOf").arg(&backup).arg("entries.age").output().unwrap().stdout;
    let identity = scrypt::Identity::new(Passphrase::from(digits));
    vec![age::decrypt(&identity, &entries).unwrap(), tar[..4096].to_vec()]
}

/// The pages of a small practice's database, decrypted.
fn pages() -> Vec<Vec<u8>> {
    let (folder, _, digits) = practice();
    let plain = folder.path().join("plain");
    let reader = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/store/tests/outside/plain.py");
    let read = Command::new("python3").arg(reader).arg(folder.path().join(DATABASE)).arg(digits).arg(&plain).status();
    assert!(read.unwrap().success());
    vec![fs::read(plain).unwrap()]
}

/// Each fixture by itself, and all in one chart.
fn stored_facts() -> Vec<Vec<u8>> {
    let mut seeds = domain("fixtures/v1");
    seeds.push(seeds.iter().map(|line| line.trim_ascii()).collect::<Vec<_>>().join(&b'\n'));
    seeds
}

/// Two files of one inbox, one cut short, and records without a header.
fn inbox() -> Vec<Vec<u8>> {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join(INBOX_RECIPIENT), identity().to_public().to_string()).unwrap();
    for records in [["one", "two"], ["three", "four"]] {
        let mut inbox = Inbox::new(folder.path());
        records.iter().for_each(|record| inbox.append(record.as_bytes()).unwrap());
    }
    let file = |name| fs::read(folder.path().join(INBOX).join(name)).unwrap();
    let mut cut = file("1.inbox");
    cut.truncate(cut.len() - 5);
    vec![file("1.inbox"), file("2.inbox"), cut, fuzzing::seal_records(&[b"one", b"two"]).unwrap()]
}

/// A mark, one of a known birth, and one that is taken back.
fn marks() -> Vec<Vec<u8>> {
    let now =
        r#"{"wall_ms":1795574400000,"offset_min":60,"zone":"Europe/Amsterdam","boot":{"id":"0f9b6a1e","since_ms":5000000}}"#;
    let occurred = now.replacen('{', r#"{"how":"marked","#, 1);
    let mark = |birth: &str, fact: &str, undoes: &str| {
        format!(r#"{{"v":1,"birth":{birth},"fact":{fact},"occurred":{occurred},"recorded":{now},"undoes":{undoes}}}"#)
    };
    let (birth, born) = (r#""01010101010101010101010101010101-2""#, r#"{"kind":"baby_born","data":{"baby":1}}"#);
    let undone = format!(r#"{{"fact":{born},"recorded":{now}}}"#);
    let marks = [
        mark("null", born, "null"),
        mark(birth, r#"{"kind":"placenta_born","data":{"babies":[1,2]}}"#, "null"),
        mark(birth, r#"{"kind":"retracted"}"#, &undone),
    ];
    marks.map(String::into_bytes).to_vec()
}

/// Opened by the identity and by the passphrase, each with a key and with something else; one that costs too much.
fn key_files() -> Vec<Vec<u8>> {
    let sealed = |cost, plain: &[u8]| {
        let mut recipient = scrypt::Recipient::new(Passphrase::from(PASSPHRASE.to_owned()));
        recipient.set_work_factor(cost);
        age::encrypt(&recipient, plain).unwrap()
    };
    let key = [b'a'; 64];
    let own = |plain: &[u8]| age::encrypt(&identity().to_public(), plain).unwrap();
    vec![own(&key), own(b"not a key"), sealed(2, &key), sealed(2, b"not a key"), sealed(8, &key)]
}

/// A request for every fixture's fact, and one of each other shape.
fn requests() -> Vec<Vec<u8>> {
    let entries = domain("fixtures/v1").into_iter().filter_map(|bytes| Entry::decode(&bytes).ok());
    let records = entries.map(|entry| Request::Record { birth: entry.birth, fact: entry.fact, at: At::Now { ago_ms: 40 } });
    let mut seeds: Vec<Vec<u8>> = records.map(|request| serde_json::to_vec(&request).unwrap()).collect();
    let id = r#""01010101010101010101010101010101-2""#;
    let practice = r#"{"name":"P","practitioner":"A","role":"midwife","protocol":"who"}"#;
    let typed = r#"{"at":"typed","date":"2026-11-25","clock":"03:12","precision":"estimated"}"#;
    let others = [
        r#"{"request":"status"}"#.to_owned(),
        format!(r#"{{"request":"create_practice","practice":{practice},"passphrase":"seven quiet herons"}}"#),
        r#"{"request":"locked_mark","mark":{"kind":"baby_born"},"ago_ms":0}"#.to_owned(),
        r#"{"request":"births","skip":0,"take":20}"#.to_owned(),
        r#"{"request":"backup_part","offset":0,"base64":"YQ=="}"#.to_owned(),
        format!(r#"{{"request":"amend","birth":{id},"entry":{id},"fact":null,"at":{typed},"reason":"a slip"}}"#),
        format!(r#"{{"request":"elsewhere","what":{{"request":"retract","birth":{id},"entry":{id},"reason":"a slip"}}}}"#),
        format!(r#"{{"request":"sign","birth":{id},"signer":{{"name":"B","role":"midwife"}}}}"#),
        r#"{"request":"change_own_protocol","change":{"title":"Ours","fields":{"saturation.limit.under.1":{"state":"off"}}}}"#
            .to_owned(),
        r#"{"request":"import_own_protocol","text":"id = \"own\""}"#.to_owned(),
        r#"{"request":"rehearse","speed":8,"mode":"drill"}"#.to_owned(),
    ];
    seeds.extend(others.map(String::into_bytes));
    seeds
}
