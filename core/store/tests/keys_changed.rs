//! Another passphrase, another recovery sheet: the new one opens, the old one no longer, and the entries stay.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;

use common::{Founded, numbers, passphrase};
use secundine_store::{ExposeSecret, PASSPHRASE_KEY, Passphrase, RECOVERY_KEY, Store, StoreError};

const NEW: &str = "nine loud geese";

fn new() -> Passphrase {
    Passphrase::from(NEW.to_owned())
}

fn keys(founded: &Founded) -> [Vec<u8>; 2] {
    [PASSPHRASE_KEY, RECOVERY_KEY].map(|name| fs::read(founded.file(name)).unwrap())
}

#[test]
fn the_new_passphrase_opens_what_the_old_one_did() {
    let (founded, birth) = Founded::with_birth(2);
    let key = founded.data_key();
    // Also while it is open.
    let open = founded.open();
    Store::change_passphrase(founded.path(), passphrase(), new()).unwrap();
    open.close().unwrap();
    assert!(matches!(Store::open(founded.path(), passphrase()), Err(StoreError::WrongPassphrase)));
    assert_eq!(numbers(&Store::open(founded.path(), new()).unwrap(), birth), [1, 2]);
    assert_eq!(founded.data_key(), key, "the recovery sheet still fits, and the key of the database is the same");
}

#[test]
fn a_passphrase_that_was_forgotten_is_replaced_by_the_recovery_sheet() {
    let (founded, birth) = Founded::with_birth(1);
    for harmed in [Some("no key file"), None] {
        match harmed {
            Some(text) => fs::write(founded.file(PASSPHRASE_KEY), text).unwrap(),
            None => fs::remove_file(founded.file(PASSPHRASE_KEY)).unwrap(),
        }
        Store::change_passphrase(founded.path(), founded.recovery.clone(), new()).unwrap();
        assert_eq!(numbers(&Store::open(founded.path(), new()).unwrap(), birth), [1]);
    }
}

#[test]
fn the_new_sheet_opens_and_the_old_one_opens_only_a_copy_of_the_old_file() {
    let (founded, birth) = Founded::with_birth(2);
    let copy = fs::read(founded.file(RECOVERY_KEY)).unwrap();
    let recovery = Store::renew_recovery(founded.path(), passphrase()).unwrap();
    assert_ne!(recovery.expose_secret(), founded.recovery.expose_secret());
    let by = |identity| Store::open_with_identity(founded.path(), identity);
    assert_eq!(numbers(&by(&recovery).unwrap(), birth), [1, 2]);
    assert!(matches!(by(&founded.recovery), Err(StoreError::WrongPassphrase)));
    assert_eq!(numbers(&Store::open(founded.path(), passphrase()).unwrap(), birth), [1, 2]);
    fs::write(founded.file(RECOVERY_KEY), copy).unwrap();
    assert_eq!(numbers(&by(&founded.recovery).unwrap(), birth), [1, 2], "as decision 0009 says");
}

#[test]
fn what_is_refused_changes_nothing() {
    let founded = Founded::new();
    let before = keys(&founded);
    let text = |text: &str| Passphrase::from(text.to_owned());
    let change = |old, new| Store::change_passphrase(founded.path(), old, new);
    assert!(matches!(change(text("seven quiet heron"), new()), Err(StoreError::WrongPassphrase)));
    assert!(matches!(change(Founded::new().recovery, new()), Err(StoreError::WrongPassphrase)));
    assert!(matches!(change(passphrase(), text("žluťouč")), Err(StoreError::ShortPassphrase)));
    assert!(matches!(change(passphrase(), founded.recovery.clone()), Err(StoreError::IdentityAsPassphrase)));
    let renewed = Store::renew_recovery(founded.path(), text("seven quiet heron"));
    assert!(matches!(renewed, Err(StoreError::WrongPassphrase)));
    assert_eq!(keys(&founded), before);
    let nowhere = founded.path().join("nowhere");
    assert!(matches!(Store::change_passphrase(&nowhere, passphrase(), new()), Err(StoreError::NoPractice)));
    assert!(matches!(Store::renew_recovery(&nowhere, passphrase()), Err(StoreError::NoPractice)));
    assert!(!nowhere.exists());
}

#[test]
fn a_practice_is_not_founded_with_a_recovery_identity_for_a_passphrase() {
    let (founded, folder) = (Founded::new(), tempfile::tempdir().unwrap());
    let refused = Store::create(folder.path(), founded.recovery.clone());
    assert!(matches!(refused, Err(StoreError::IdentityAsPassphrase)));
    assert!(!Store::exists(folder.path()));
}
