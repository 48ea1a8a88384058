//! Sealed forms that were written once: the store, and a reader without the program, come to the same on each.
//!
//! `core/store/vectors` holds them; they never change. New ones are added by
//! `WRITE_VECTORS=1 cargo test -p secundine-store --test vectors -- --ignored`. Every secret in them is a test's.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::string_slice, reason = "a test may stop at the first surprise")]

#[path = "vectors/chain.rs"]
mod chain;
mod common;
#[path = "vectors/inbox.rs"]
mod inbox;
#[path = "vectors/keys.rs"]
mod keys;
#[path = "vectors/seal.rs"]
mod seal;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use common::Founded;
use common::inbox::{drain, notes};
use rusqlite::params;
use secundine_store::{
    ExposeSecret, HEAD, HeadSeen, INBOX, INBOX_RECIPIENT, Misfit, MisfitKind, PASSPHRASE_KEY, Passphrase, RECOVERY_KEY, Store,
    StoreError,
};
use serde_json::{Value, json};

const ABOUT: &str = "Every secret here is a test secret: it protects nothing.";

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("vectors")
}

fn read(name: &str) -> Value {
    serde_json::from_slice(&fs::read(folder().join(name)).unwrap()).unwrap()
}

fn text(value: &Value) -> &str {
    value.as_str().unwrap()
}

fn bytes(value: &Value) -> Vec<u8> {
    hex::decode(text(value)).unwrap()
}

#[test]
fn the_store_comes_to_what_each_inbox_vector_says() {
    let file = read("inbox.json");
    let identity: age::x25519::Identity = text(&file["identity"]).parse().unwrap();
    let template = Founded::new();
    template.raw().execute("UPDATE inbox SET identity = ?1", [text(&file["identity"])]).unwrap();
    fs::write(template.file(INBOX_RECIPIENT), format!("{}\n", identity.to_public())).unwrap();
    for vector in file["vectors"].as_array().unwrap() {
        let founded = copy(&template);
        fs::create_dir(founded.file(INBOX)).unwrap();
        for (name, file) in vector["files"].as_object().unwrap() {
            fs::write(founded.file(INBOX).join(name), bytes(file)).unwrap();
        }
        let mut store = founded.open();
        let drained = drain(&mut store, None);
        let class = match (drained.torn, drained.damaged) {
            (0, 0) => "whole",
            (_, 0) => "torn",
            _ => "damaged",
        };
        let came_to = json!({ "class": class, "records": notes(&store), "lost_tail": drained.lost_tail });
        assert_eq!(came_to, vector["expect"], "{}", vector["name"]);
        assert!(drained.stopped.is_none() && drained.waiting == 0);
    }
}

#[test]
fn the_store_comes_to_what_each_key_file_vector_says() {
    for vector in read("keys.json")["vectors"].as_array().unwrap() {
        let folder = tempfile::tempdir().unwrap();
        let name = if vector["file"] == "recovery" { RECOVERY_KEY } else { PASSPHRASE_KEY };
        fs::write(folder.path().join(name), bytes(&vector["hex"])).unwrap();
        let came_to = match Store::opens(folder.path(), Passphrase::from(text(&vector["secret"]).to_owned())) {
            Ok(()) => "opens",
            Err(StoreError::WrongPassphrase) => "wrong_passphrase",
            Err(StoreError::DamagedKey(_)) => "damaged_key",
            Err(other) => unreachable!("{}: {other:?}", vector["name"]),
        };
        assert_eq!(came_to, vector["expect"], "{}", vector["name"]);
    }
}

#[test]
fn the_store_comes_to_what_each_chain_vector_says() {
    let file = read("chain.json");
    let template = Founded::new();
    for vector in file["vectors"].as_array().unwrap() {
        let founded = copy(&template);
        lay_down(&founded, &file["own"], vector);
        let verdict = founded.open().verify().unwrap();
        let misfit = verdict.misfit.map(|misfit| match misfit {
            Misfit::Entry { device, n, kind, .. } => json!({ "kind": kind_of(kind), "device": hex::encode(device.0), "n": n }),
            other => unreachable!("{}: {other:?}", vector["name"]),
        });
        let head = match verdict.head {
            HeadSeen::Nothing => json!("nothing"),
            HeadSeen::Unreadable => json!("unreadable"),
            HeadSeen::At(n) => json!(n),
        };
        assert_eq!(json!({ "misfit": misfit, "head": head }), vector["expect"], "{}", vector["name"]);
    }
}

fn kind_of(kind: MisfitKind) -> &'static str {
    match kind {
        MisfitKind::Missing => "missing",
        MisfitKind::Twice => "twice",
        MisfitKind::Changed => "changed",
        MisfitKind::Unlinked => "unlinked",
        MisfitKind::Unsigned => "unsigned",
        MisfitKind::NoKey => "no_key",
        MisfitKind::OtherKey => "other_key",
        MisfitKind::CutOff => "cut_off",
        MisfitKind::Rewritten => "rewritten",
    }
}

/// Puts a vector's devices, entries and head where the store has its own.
fn lay_down(founded: &Founded, own: &Value, vector: &Value) {
    common::chained::past_triggers(&founded.raw(), |raw| {
        raw.execute("DELETE FROM device", []).unwrap();
        let keep = "INSERT INTO device (id, public, seed) VALUES (?1, ?2, ?3)";
        raw.execute(keep, params![bytes(&own["id"]), bytes(&own["public"]), bytes(&own["seed"])]).unwrap();
        for device in vector["devices"].as_array().unwrap() {
            raw.execute(keep, params![bytes(&device["id"]), bytes(&device["public"]), None::<Vec<u8>>]).unwrap();
        }
        for entry in vector["entries"].as_array().unwrap() {
            let insert = "INSERT INTO entry (birth, device, n, body, link, signature) VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
            let [birth, device, body, link, signature] =
                ["birth", "device", "body", "link", "signature"].map(|part| bytes(&entry[part]));
            raw.execute(insert, params![birth, device, entry["n"].as_u64().unwrap(), body, link, signature]).unwrap();
        }
    });
    if let Some(head) = vector["head"].as_str() {
        fs::write(founded.file(HEAD), head).unwrap();
    }
}

fn copy(template: &Founded) -> Founded {
    let folder = tempfile::tempdir().unwrap();
    for file in fs::read_dir(template.path()).unwrap().map(|file| file.unwrap()) {
        fs::copy(file.path(), folder.path().join(file.file_name())).unwrap();
    }
    Founded { folder, recovery: template.recovery.clone() }
}

#[test]
fn a_reader_without_the_program_comes_to_the_same_on_every_vector() {
    let script = format!("{}/tests/outside/vectors.py", env!("CARGO_MANIFEST_DIR"));
    let output = Command::new("python3").arg(script).arg(folder()).output().unwrap();
    let said = String::from_utf8_lossy(&output.stdout);
    assert!(output.status.success(), "{said}{}", String::from_utf8_lossy(&output.stderr));
    let count = |name: &str| read(name)["vectors"].as_array().unwrap().len();
    let counts = ["chain.json", "inbox.json", "keys.json"].map(count);
    assert_eq!(said.trim_end(), format!("{} vectors agree", counts.iter().sum::<usize>()));
    assert!(counts.iter().sum::<usize>() >= 60);
}

#[test]
#[ignore = "adds vectors"]
fn the_vectors_are_written() {
    assert!(std::env::var_os("WRITE_VECTORS").is_some(), "WRITE_VECTORS=1 adds those that have a new name");
    let identity: age::x25519::Identity = text(&read("inbox.json")["identity"]).parse().unwrap();
    let own = common::chained::Scribe::new(chain::OWN);
    let own = json!({
        "id": hex::encode(own.device().0), "public": hex::encode(own.key.verifying_key().to_bytes()), "seed": hex::encode(chain::OWN),
    });
    let secret = identity.to_string();
    let files = [
        ("inbox.json", json!({ "about": ABOUT, "identity": secret.expose_secret(), "vectors": inbox::all(&identity) })),
        ("keys.json", json!({ "about": ABOUT, "vectors": keys::all(&identity) })),
        ("chain.json", json!({ "about": ABOUT, "own": own, "vectors": chain::all() })),
    ];
    for (name, mut file) in files {
        let mut vectors = read(name)["vectors"].as_array().unwrap().clone();
        let new = file["vectors"].as_array().unwrap().iter();
        let new: Vec<Value> = new.filter(|new| vectors.iter().all(|kept| kept["name"] != new["name"])).cloned().collect();
        vectors.extend(new);
        file["vectors"] = vectors.into();
        fs::write(folder().join(name), serde_json::to_string_pretty(&file).unwrap() + "\n").unwrap();
    }
}
