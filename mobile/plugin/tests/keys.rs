//! The key store of a phone as the core uses it, over a fake of what Kotlin and Swift answer: one more way in, never the only
//! one.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::collections::HashMap;
use std::sync::{Arc, Mutex};

use secundine_phone::{Code, Failure, Native, PhoneKeys};
use secundine_store::{Passphrase, PlatformError, PlatformKeys, Slot, Store, StoreError};
use serde_json::{Value, json};
use tempfile::TempDir;

/// A phone's side, which answers as `PhonePlugin.kt` and `PhonePlugin.swift` do.
#[derive(Clone, Default)]
struct Phone {
    held: Arc<Mutex<HashMap<String, String>>>,
    refuses: Arc<Mutex<Option<Failure>>>,
    asked: Arc<Mutex<Vec<String>>>,
}

impl Phone {
    fn refuse(&self, code: Option<&str>) {
        *self.refuses.lock().unwrap() = Some(Failure::told(code, Some("in words".to_owned())));
    }

    fn names(&self) -> Vec<String> {
        self.held.lock().unwrap().keys().cloned().collect()
    }
}

impl Native for Phone {
    fn run(&self, command: &str, payload: Value) -> Result<Value, Failure> {
        self.asked.lock().unwrap().push(command.to_owned());
        if let Some(failure) = self.refuses.lock().unwrap().clone() {
            return Err(failure);
        }
        let text = |key: &str| payload.get(key).and_then(Value::as_str).map(str::to_owned).unwrap();
        let gone = || Failure::told(Some("not-there"), None);
        let mut held = self.held.lock().unwrap();
        match command {
            "keepSecret" => {
                held.insert(text("name"), text("secret"));
                Ok(json!({ "secret": null }))
            }
            "fetchSecret" => held.get(&text("name")).map(|secret| json!({ "secret": secret })).ok_or_else(gone),
            "removeSecret" => held.remove(&text("name")).map(|_| json!({})).ok_or_else(gone),
            other => unreachable!("{other}"),
        }
    }
}

const PASSPHRASE: &str = "seven quiet herons";

fn passphrase() -> Passphrase {
    Passphrase::from(PASSPHRASE.to_owned())
}

/// A practice with its recovery identity, and a phone that opens it.
fn practice() -> (TempDir, Passphrase, Phone, PhoneKeys<Phone>) {
    let folder = tempfile::tempdir().unwrap();
    let (store, recovery) = Store::create(folder.path(), passphrase()).unwrap();
    store.close().unwrap();
    let phone = Phone::default();
    let keys = PhoneKeys::new(phone.clone());
    Store::add_device(folder.path(), recovery.clone(), &keys).unwrap();
    (folder, recovery, phone, keys)
}

#[test]
fn the_phone_opens_the_practice_by_a_secret_that_is_not_the_passphrase() {
    let (folder, _, phone, keys) = practice();
    Store::open_with_device(folder.path(), &keys).unwrap().close().unwrap();
    let held = phone.held.lock().unwrap().clone();
    assert!(held.values().all(|secret| secret.starts_with("AGE-SECRET-KEY-1") && secret != PASSPHRASE), "one secret of its own");
    // The names that Kotlin takes for names of files.
    assert!(phone.names().iter().all(|name| name.strip_prefix("secundine-").is_some_and(|hex| hex.len() == 32)));
}

#[test]
fn it_is_never_the_only_way_in() {
    let (folder, _, _, keys) = practice();
    let all = [Slot::Passphrase, Slot::Recovery, Slot::Device];
    assert_eq!(Store::slots(folder.path()), all);
    let taken = Store::revoke(folder.path(), Slot::Passphrase, passphrase(), Some(&keys));
    assert!(matches!(taken, Err(StoreError::PassphraseStays)));
    Store::revoke(folder.path(), Slot::Recovery, passphrase(), Some(&keys)).unwrap();
    assert_eq!(Store::slots(folder.path()), [Slot::Passphrase, Slot::Device]);
    Store::opens(folder.path(), passphrase()).unwrap();
}

#[test]
fn a_restored_phone_or_a_new_finger_leaves_the_passphrase() {
    let (folder, recovery, phone, keys) = practice();
    phone.held.lock().unwrap().clear();
    let gone = Store::open_with_device(folder.path(), &keys).err().unwrap();
    assert!(matches!(gone, StoreError::Platform(PlatformError::NotThere)), "{gone:?}");
    Store::opens(folder.path(), passphrase()).unwrap();
    // It is added anew in the place of the one that is lost.
    Store::add_device(folder.path(), recovery, &keys).unwrap();
    Store::opens_with_device(folder.path(), &keys).unwrap();
    assert_eq!(phone.names().len(), 1);
}

#[test]
fn what_the_phone_says_is_told_apart() {
    let (folder, _, phone, keys) = practice();
    for (code, told) in [
        (Some("refused"), PlatformError::Refused),
        (Some("not-there"), PlatformError::NotThere),
        (Some("failed"), PlatformError::Failed("in words".to_owned())),
        (Some("cannot"), PlatformError::Failed("in words".to_owned())),
        (Some("another"), PlatformError::Failed("in words".to_owned())),
        (None, PlatformError::Failed("in words".to_owned())),
    ] {
        phone.refuse(code);
        assert_eq!(keys.fetch("secundine-0").map(|_| ()), Err(told), "{code:?}");
        assert!(Store::open_with_device(folder.path(), &keys).is_err(), "{code:?}");
    }
    assert_eq!(Failure::cannot("share").code, Code::Cannot);
}

#[test]
fn an_answer_without_a_secret_opens_nothing() {
    struct Odd(Value);
    impl Native for Odd {
        fn run(&self, _: &str, _: Value) -> Result<Value, Failure> {
            Ok(self.0.clone())
        }
    }
    let long = "A".repeat(101);
    for odd in [
        json!(null),
        json!({}),
        json!({ "secret": null }),
        json!({ "secret": "" }),
        json!({ "secret": 7 }),
        json!({ "secret": long }),
    ] {
        assert!(matches!(PhoneKeys::new(Odd(odd.clone())).fetch("x"), Err(PlatformError::Failed(_))), "{odd}");
    }
}

#[test]
fn a_way_that_is_taken_out_is_gone_from_the_phone_too() {
    let (folder, _, phone, keys) = practice();
    Store::revoke(folder.path(), Slot::Device, passphrase(), Some(&keys)).unwrap();
    assert!(phone.names().is_empty());
    assert_eq!(phone.asked.lock().unwrap().last().map(String::as_str), Some("removeSecret"));
}
