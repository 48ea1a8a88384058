//! A practice is founded once, opened by either key, and numbered on without a gap.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;

use common::{Founded, PASSPHRASE, numbers, passphrase, write};
use secundine_domain::entry::{BirthId, EntryId};
use secundine_store::{
    DATABASE, ExposeSecret, HEAD, PASSPHRASE_KEY, PASSPHRASE_LETTERS, Passphrase, RECOVERY_KEY, Store, StoreError, version,
};

#[test]
fn what_was_written_is_there_after_each_way_of_opening() {
    let (founded, birth) = Founded::with_birth(3);
    let before = founded.open().entries(birth).unwrap();
    let store = Store::open(founded.path(), passphrase()).unwrap();
    assert_eq!(store.entries(birth).unwrap(), before);
    assert_eq!(numbers(&store, birth), [1, 2, 3]);
    assert_eq!(store.folder(), founded.path());
    assert_eq!(version(&before), version(&store.entries(birth).unwrap()));
    store.close().unwrap();
    assert!(!founded.file(&format!("{DATABASE}-wal")).exists(), "a closed store is one file");
}

#[test]
fn numbering_goes_on_after_reopening_closed_or_not() {
    let (founded, birth) = Founded::with_birth(2);
    let mut store = founded.open();
    assert_eq!(store.next_id().n, 3);
    write(&mut store, birth, 2);
    drop(store);
    let mut store = founded.open();
    let other = BirthId(store.next_id());
    assert_eq!(other.0.n, 5);
    write(&mut store, other, 1);
    store.close().unwrap();
    let store = founded.open();
    assert_eq!(store.next_id(), EntryId { n: 6, ..other.0 });
    assert_eq!((numbers(&store, birth), numbers(&store, other)), (vec![1, 2, 3, 4], vec![5]));
}

#[test]
fn an_identity_is_taken_as_it_was_printed() {
    let founded = Founded::new();
    let printed = format!("  {}\n", founded.recovery.expose_secret());
    assert!(Store::open_with_identity(founded.path(), &Passphrase::from(printed)).is_ok());
    for wrong in
        ["", "AGE-SECRET-KEY-1", PASSPHRASE, "AGE-SECRET-KEY-1QQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQQ"]
    {
        let refused = Store::open_with_identity(founded.path(), &Passphrase::from(wrong.to_owned()));
        assert!(matches!(refused, Err(StoreError::WrongPassphrase)), "{wrong}");
    }
    let other = Founded::new();
    let refused = Store::open_with_identity(founded.path(), &other.recovery);
    assert!(matches!(refused, Err(StoreError::WrongPassphrase)));
}

#[test]
fn a_wrong_passphrase_opens_nothing_and_changes_nothing() {
    let founded = Founded::new();
    let before = files(&founded);
    for wrong in ["seven quiet heron", "Seven quiet herons", ""] {
        let refused = Store::open(founded.path(), Passphrase::from(wrong.to_owned()));
        assert!(matches!(refused, Err(StoreError::WrongPassphrase)), "{wrong}");
    }
    assert_eq!(files(&founded), before);
}

#[test]
fn a_passphrase_has_its_fewest_letters_counted_as_letters() {
    let folder = tempfile::tempdir().unwrap();
    let data = folder.path().join("data");
    for short in ["", "abcdefg", "žluťouč"] {
        let refused = Store::create(&data, Passphrase::from(short.to_owned()));
        assert!(matches!(refused, Err(StoreError::ShortPassphrase)), "{short}");
        assert!(!data.exists(), "nothing is begun");
    }
    assert_eq!("žluťoučk".chars().count(), PASSPHRASE_LETTERS);
    Store::create(&data, Passphrase::from("žluťoučk".to_owned())).unwrap();
}

#[test]
fn a_practice_is_not_founded_over_another() {
    let founded = Founded::new();
    let before = files(&founded);
    assert!(matches!(Store::create(founded.path(), passphrase()), Err(StoreError::AlreadyThere)));
    fs::remove_file(founded.file(PASSPHRASE_KEY)).unwrap();
    assert!(matches!(Store::create(founded.path(), passphrase()), Err(StoreError::AlreadyThere)), "the recovery file counts");
    assert_eq!(files(&founded).get(DATABASE), before.get(DATABASE));
}

#[test]
fn an_empty_folder_and_no_folder_hold_no_practice() {
    let folder = tempfile::tempdir().unwrap();
    for path in [folder.path().to_owned(), folder.path().join("not here")] {
        assert!(!Store::exists(&path));
        assert!(matches!(Store::open(&path, passphrase()), Err(StoreError::NoPractice)));
        assert!(matches!(Store::open_with_identity(&path, &passphrase()), Err(StoreError::NoPractice)));
    }
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn a_database_without_keys_is_set_aside_each_time_and_never_removed() {
    let folder = tempfile::tempdir().unwrap();
    let path = |name: &str| folder.path().join(name);
    for (n, left) in [(1, "one"), (2, "two")] {
        let _ = [PASSPHRASE_KEY, RECOVERY_KEY].map(|key| fs::remove_file(path(key)));
        fs::write(path(DATABASE), format!("{left} database")).unwrap();
        fs::write(path(&format!("{DATABASE}-wal")), format!("{left} log")).unwrap();
        fs::write(path(HEAD), format!("{left} head")).unwrap();
        let (store, _) = Store::create(folder.path(), passphrase()).unwrap();
        store.close().unwrap();
        assert_eq!(fs::read_to_string(path(&format!("without-key-{n}-{DATABASE}"))).unwrap(), format!("{left} database"));
        assert_eq!(fs::read_to_string(path(&format!("without-key-{n}-{DATABASE}-wal"))).unwrap(), format!("{left} log"));
        assert_eq!(fs::read_to_string(path(&format!("without-key-{n}-{HEAD}"))).unwrap(), format!("{left} head"));
        assert!(!path(HEAD).exists(), "a head tells of the first entry and not before");
    }
    assert_eq!(fs::read_to_string(path(&format!("without-key-1-{DATABASE}"))).unwrap(), "one database");
}

fn files(founded: &Founded) -> std::collections::BTreeMap<String, Vec<u8>> {
    let listed = fs::read_dir(founded.path()).unwrap().map(|entry| entry.unwrap());
    listed.map(|entry| (entry.file_name().into_string().unwrap(), fs::read(entry.path()).unwrap())).collect()
}
