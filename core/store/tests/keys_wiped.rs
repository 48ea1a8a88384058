//! After a wipe nothing opens, and neither a wrap nor a key is found, even by who kept the old files open.

#![cfg(unix)]
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::path::{Path, PathBuf};

use common::inbox::Practice;
use common::{Founded, data_key, passphrase, raw};
use secundine_store::{ATTEMPTS, DATABASE, ExposeSecret, HEAD, PASSPHRASE_KEY, RECOVERY_KEY, Store, StoreError};

/// Every file under a folder with what is in it.
fn files(folder: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let mut found = Vec::new();
    for path in fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        if path.is_dir() {
            found.extend(files(&path));
        } else {
            found.push((path.clone(), fs::read(&path).unwrap()));
        }
    }
    found.sort();
    found
}

fn holds(bytes: &[u8], part: &[u8]) -> bool {
    bytes.windows(part.len()).any(|window| window == part)
}

#[test]
fn after_a_wipe_nothing_opens_and_no_key_is_left() {
    let (founded, _) = Founded::with_birth(3);
    let key = founded.data_key();
    // A further name for each file, outside: it sees what is written over, and keeps what is only unlinked.
    let witness = tempfile::tempdir().unwrap();
    let unfinished = format!("{PASSPHRASE_KEY}.unfinished");
    fs::copy(founded.file(PASSPHRASE_KEY), founded.file(&unfinished)).unwrap();
    let wraps = [PASSPHRASE_KEY, RECOVERY_KEY, &unfinished];
    let before: Vec<Vec<u8>> = wraps.iter().map(|name| fs::read(founded.file(name)).unwrap()).collect();
    for name in wraps.iter().chain(&[DATABASE]) {
        fs::hard_link(founded.file(name), witness.path().join(name)).unwrap();
    }
    assert_eq!(data_key(witness.path(), founded.recovery.expose_secret()), key, "the witness has the key until then");
    assert!(
        raw(&witness.path().join(DATABASE), &key)
            .query_row("SELECT count(*) FROM entry", [], |row| row.get(0))
            .is_ok_and(|n: u32| n == 3)
    );

    Store::wipe(founded.path(), None).unwrap();

    assert!(!Store::exists(founded.path()));
    assert!(matches!(Store::open(founded.path(), passphrase()), Err(StoreError::NoPractice)));
    assert!(matches!(Store::open_with_identity(founded.path(), &founded.recovery), Err(StoreError::NoPractice)));
    assert_eq!(files(founded.path()), []);
    // Put back by their further names, the wraps open nothing: they were written over, not only unlinked.
    for name in wraps.iter().chain(&[DATABASE]) {
        fs::copy(witness.path().join(name), founded.file(name)).unwrap();
    }
    assert!(matches!(Store::open(founded.path(), passphrase()), Err(StoreError::DamagedKey(_))));
    assert!(matches!(Store::open_with_identity(founded.path(), &founded.recovery), Err(StoreError::DamagedKey(_))));
    for (path, bytes) in files(witness.path()) {
        assert!(!holds(&bytes, key.as_bytes()) && !holds(&bytes, &hex::decode(&key).unwrap()), "{}", path.display());
        for wrap in &before {
            // Any 32 bytes in a row: header, salt, wrapped key or sealed key.
            assert!(wrap.chunks_exact(32).all(|chunk| !holds(&bytes, chunk)), "{}", path.display());
        }
    }
    assert!(holds(&before.concat(), b"age-encryption.org/v1"), "the search finds what is there");
}

#[test]
fn everything_of_the_practice_goes_and_nothing_else() {
    let practice = Practice::new();
    practice.write(&["waiting"]);
    for name in [
        ATTEMPTS,
        HEAD,
        "reserve.unfinished",
        "head-contradicted-1",
        "without-key-1-secundine.db",
        "inbox.recipient.unfinished",
        "notes.txt",
    ] {
        fs::write(practice.path().join(name), "x").unwrap();
    }
    fs::create_dir(practice.path().join("pictures")).unwrap();
    Store::wipe(practice.path(), None).unwrap();
    let mut left: Vec<_> = fs::read_dir(practice.path()).unwrap().map(|file| file.unwrap().file_name()).collect();
    left.sort();
    assert_eq!(left, ["notes.txt", "pictures"]);
    // The folder takes another practice.
    let (store, _) = Store::create(practice.path(), passphrase()).unwrap();
    assert!(store.births().unwrap().is_empty());
}

#[test]
fn what_resists_saves_no_wrap_and_is_gone_on_with() {
    let founded = Founded::new();
    // No file that could be written over or unlinked.
    let resists = founded.file(&format!("{PASSPHRASE_KEY}.unfinished"));
    fs::create_dir(&resists).unwrap();
    assert!(matches!(Store::wipe(founded.path(), None), Err(StoreError::WipeUnfinished(_))));
    assert!(!founded.file(PASSPHRASE_KEY).exists() && !founded.file(RECOVERY_KEY).exists());
    assert!(matches!(Store::finish_wipe(founded.path(), None), Err(StoreError::WipeUnfinished(_))));
    fs::remove_dir(resists).unwrap();
    Store::finish_wipe(founded.path(), None).unwrap();
    assert_eq!(files(founded.path()), []);
}

#[test]
fn a_wipe_that_cannot_be_begun_leaves_all_as_it_was() {
    let founded = Founded::new();
    let before = files(founded.path());
    let begun = founded.file("wipe-begun");
    // A link to nowhere: the file cannot be made.
    std::os::unix::fs::symlink(founded.file("nowhere/at all"), &begun).unwrap();
    assert!(matches!(Store::wipe(founded.path(), None), Err(StoreError::NotSaved(_))));
    Store::finish_wipe(founded.path(), None).unwrap();
    let _ = fs::remove_file(begun);
    assert_eq!(files(founded.path()), before);
    assert!(Store::open(founded.path(), passphrase()).is_ok());
}

#[test]
fn without_a_practice_nothing_is_wiped() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join(DATABASE), "of another").unwrap();
    assert!(matches!(Store::wipe(folder.path(), None), Err(StoreError::NoPractice)));
    Store::finish_wipe(folder.path(), None).unwrap();
    assert_eq!(files(folder.path()).len(), 1);
    let founded = Founded::new();
    Store::finish_wipe(founded.path(), None).unwrap();
    assert!(Store::open(founded.path(), passphrase()).is_ok());
}
