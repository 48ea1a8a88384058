//! A damaged practice read without changing it, and built anew.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use common::inbox::{Practice, drain, notes};
use common::{Founded, numbers, passphrase, write};
use secundine_domain::entry::BirthId;
use secundine_domain::time::Run;
use secundine_store::{DATABASE, HEAD, MisfitKind, Missing, PASSPHRASE_KEY, RECOVERY_KEY, SALVAGE_REPORT, Store, StoreError};

const PAGE: usize = 4096;

/// Every file below a folder with its bytes.
fn files(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let mut found = BTreeMap::new();
    for path in fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        match path.is_dir() {
            true => found.extend(files(&path)),
            false => drop(found.insert(path.clone(), fs::read(path).unwrap())),
        }
    }
    found
}

/// A practice of so many entries whose first page is destroyed.
fn headless(entries: usize) -> (Founded, BirthId) {
    let (founded, birth) = Founded::with_birth(entries);
    harm(&founded, 0..PAGE);
    (founded, birth)
}

fn harm(founded: &Founded, bytes: std::ops::Range<usize>) {
    let mut database = fs::read(founded.file(DATABASE)).unwrap();
    database[bytes].fill(0x77);
    fs::write(founded.file(DATABASE), database).unwrap();
}

#[test]
fn a_damaged_store_is_read_and_every_byte_of_its_folder_stays() {
    let (founded, birth) = headless(30);
    let before = files(founded.path());
    assert!(matches!(Store::open_with_identity(founded.path(), &founded.recovery), Err(StoreError::Damaged(_))));
    for secret in [founded.recovery.clone(), passphrase()] {
        let (mut store, report) = Store::read_damaged(founded.path(), secret).unwrap();
        assert_eq!((report.entries, report.missing_count(), report.unprovable), (30, 0, 0));
        assert_eq!(numbers(&store, birth), (1..=30).collect::<Vec<u64>>());
        assert_eq!(store.births().unwrap().len(), 1);
        assert!(store.is_read_only());
        let entry = common::entry(store.next_id(), birth, 0, secundine_domain::fact::Fact::CordCut { baby: 1 });
        assert!(matches!(store.append(&entry), Err(StoreError::ReadOnly)));
        assert!(matches!(store.append_all(&[]), Err(StoreError::ReadOnly)));
        let run = Run { boot: "a".to_owned(), since_ms: 1, wall_ms: 1 };
        assert!(matches!(store.beat(&run), Err(StoreError::ReadOnly)));
        assert!(matches!(store.drain(None, common::inbox::turn), Err(StoreError::ReadOnly)));
        assert!(matches!(store.verify(), Err(StoreError::ReadOnly)));
        store.close().unwrap();
        assert!(files(founded.path()) == before, "the folder was changed");
    }
    let wrong = Store::read_damaged(founded.path(), "seven loud herons".to_owned().into());
    assert!(matches!(wrong, Err(StoreError::WrongPassphrase)));
}

#[test]
fn a_log_that_was_not_folded_in_is_read_and_stays_as_well() {
    let founded = Founded::new();
    let mut store = founded.open();
    let birth = BirthId(store.next_id());
    write(&mut store, birth, 10);
    let copy = Founded { folder: tempfile::tempdir().unwrap(), recovery: founded.recovery.clone() };
    for name in [DATABASE, "secundine.db-wal", HEAD, RECOVERY_KEY] {
        fs::copy(founded.file(name), copy.file(name)).unwrap();
    }
    let whole = files(copy.path());
    for harmed in [false, true] {
        if harmed {
            harm(&copy, 0..PAGE);
        }
        let before = files(copy.path());
        assert_eq!(before == whole, !harmed);
        let (store, report) = Store::read_damaged(copy.path(), copy.recovery.clone()).unwrap();
        assert_eq!((numbers(&store, birth).len(), report.entries), (10, 10));
        store.close().unwrap();
        assert!(files(copy.path()) == before, "the folder was changed");
    }
}

#[test]
fn built_anew_it_goes_on_with_another_device_and_keeps_the_damaged_files() {
    let (founded, birth) = headless(30);
    let before = files(founded.path());
    let (mut store, report, set_aside) = Store::salvage(founded.path(), founded.recovery.clone()).unwrap();
    assert_eq!(report.missing_count(), 0);
    assert_eq!(set_aside, founded.file("damaged-1"));
    for name in [DATABASE, HEAD] {
        assert_eq!(fs::read(set_aside.join(name)).unwrap(), before[&founded.file(name)], "{name}");
    }
    for name in [PASSPHRASE_KEY, RECOVERY_KEY] {
        assert_eq!(fs::read(founded.file(name)).unwrap(), before[&founded.file(name)], "{name}");
    }
    assert!(!founded.file("secundine.db.unfinished").exists());
    let old = birth.0.device;
    assert!(store.next_id().device != old && store.next_id().n == 1);
    let verdict = store.verify().unwrap();
    assert_eq!((verdict.entries, verdict.misfit), (30, None));
    write(&mut store, birth, 3);
    assert_eq!(numbers(&store, birth).len(), 33);
    store.close().unwrap();
    let verdict = founded.open().verify().unwrap();
    assert_eq!((verdict.entries, verdict.devices, verdict.misfit), (33, 2, None));
    let told = fs::read_to_string(set_aside.join(SALVAGE_REPORT)).unwrap();
    assert!(told.contains("entries read: 30\n") && told.contains("entries missing: 0\n"), "{told}");
    assert!(!told.contains("canary") && !told.contains("Canary"), "{told}");
    assert!(matches!(Store::salvage(founded.path(), founded.recovery.clone()), Err(StoreError::NotDamaged)));
    assert!(!founded.file("damaged-2").exists());
    assert_eq!(numbers(&founded.open(), birth).len(), 33);
}

#[test]
fn what_is_lost_is_told_as_missing_for_ever() {
    let (founded, birth) = Founded::with_birth(60);
    // The last page holds the last entries but those of the inner page.
    let pages = fs::metadata(founded.file(DATABASE)).unwrap().len() as usize / PAGE;
    let mut gaps = 0;
    let whole = fs::read(founded.file(DATABASE)).unwrap();
    for page in 1..pages {
        let copy = Founded { folder: tempfile::tempdir().unwrap(), recovery: founded.recovery.clone() };
        for name in [DATABASE, HEAD, PASSPHRASE_KEY, RECOVERY_KEY] {
            fs::copy(founded.file(name), copy.file(name)).unwrap();
        }
        let mut bytes = whole.clone();
        bytes[page * PAGE..(page + 1) * PAGE].fill(0);
        fs::write(copy.file(DATABASE), bytes).unwrap();
        let (mut store, report, _) = Store::salvage(copy.path(), copy.recovery.clone()).unwrap();
        let Some(Missing { device, first, last }) = report.missing.first().copied() else { continue };
        gaps += 1;
        write(&mut store, birth, 2);
        store.close().unwrap();
        let verdict = copy.open().verify().unwrap();
        let kind = if last == 60 { MisfitKind::CutOff } else { MisfitKind::Missing };
        assert_eq!(common::chained::at(&verdict), Some((device, first, kind)), "page {page}: {report:?}");
        assert_eq!(numbers(&copy.open(), birth).len(), 60 - report.missing_count() as usize + 2);
    }
    assert!(gaps >= 3, "{gaps}");
}

#[test]
fn a_second_damage_is_salvaged_like_the_first() {
    let (founded, birth) = headless(20);
    let (mut store, ..) = Store::salvage(founded.path(), founded.recovery.clone()).unwrap();
    write(&mut store, birth, 20);
    store.close().unwrap();
    harm(&founded, 0..PAGE);
    let (store, report, set_aside) = Store::salvage(founded.path(), founded.recovery.clone()).unwrap();
    assert_eq!((report.entries, report.missing_count(), set_aside), (40, 0, founded.file("damaged-2")));
    assert_eq!(numbers(&store, birth).len(), 40);
    let verdict = store.verify().unwrap();
    assert_eq!((verdict.devices, verdict.misfit), (2, None));
}

#[test]
fn a_healthy_store_is_not_built_anew() {
    let (founded, birth) = Founded::with_birth(5);
    assert!(matches!(Store::salvage(founded.path(), passphrase()), Err(StoreError::NotDamaged)));
    assert_eq!(numbers(&founded.open(), birth), [1, 2, 3, 4, 5]);
    assert!(!founded.file("damaged-1").exists());
}

#[test]
fn a_store_that_is_open_in_another_window_is_neither_read_nor_built_anew() {
    let founded = Founded::new();
    let _open = founded.open();
    assert!(matches!(Store::read_damaged(founded.path(), founded.recovery.clone()), Err(StoreError::InUse)));
    assert!(matches!(Store::salvage(founded.path(), founded.recovery.clone()), Err(StoreError::InUse)));
}

#[test]
fn what_waits_in_the_inbox_is_taken_in_after_a_salvage_and_nothing_twice() {
    let practice = Practice::new();
    practice.write(&["one", "two"]);
    let drained = fs::read(practice.inbox("1.inbox")).unwrap();
    drain(&mut practice.open(), None);
    practice.write(&["three"]);
    let database = practice.path().join(DATABASE);
    let mut bytes = fs::read(&database).unwrap();
    bytes[16..PAGE].fill(0);
    fs::write(&database, bytes).unwrap();
    // A copy of a file that was drained before comes back.
    fs::write(practice.inbox("9.inbox"), drained).unwrap();
    let (mut store, report, _) = Store::salvage(practice.path(), practice.identity().into()).unwrap();
    assert!(!report.inbox_lost);
    let taken = drain(&mut store, None);
    assert_eq!((taken.entries, taken.damaged), (1, 0));
    assert_eq!(notes(&store), ["three"]);
}

#[test]
fn a_lost_key_of_the_inbox_is_told_and_what_waits_is_kept() {
    let practice = Practice::new();
    practice.write(&["one"]);
    practice.raw().execute("UPDATE inbox SET identity = 'none'", []).unwrap();
    let (mut store, report, _) = Store::salvage(practice.path(), practice.identity().into()).unwrap();
    assert!(report.inbox_lost);
    assert_eq!(drain(&mut store, None).damaged, 1);
    assert_eq!(practice.damaged().len(), 1);
    practice.write(&["two"]);
    assert_eq!(drain(&mut store, None).entries, 1, "the next is sealed to the new key");
}

#[test]
fn a_log_beside_an_emptied_database_is_not_thrown_away() {
    let founded = Founded::new();
    let mut store = founded.open();
    let birth = BirthId(store.next_id());
    write(&mut store, birth, 10);
    let copy = Founded { folder: tempfile::tempdir().unwrap(), recovery: founded.recovery.clone() };
    for name in ["secundine.db-wal", HEAD, RECOVERY_KEY] {
        fs::copy(founded.file(name), copy.file(name)).unwrap();
    }
    fs::write(copy.file(DATABASE), b"").unwrap();
    let log = fs::read(copy.file("secundine.db-wal")).unwrap();
    assert!(log.len() > 10 * PAGE);
    assert!(matches!(Store::open_with_identity(copy.path(), &copy.recovery), Err(StoreError::Damaged(_))));
    assert!(fs::read(copy.file("secundine.db-wal")).unwrap() == log);
    let (store, report, _) = Store::salvage(copy.path(), copy.recovery.clone()).unwrap();
    assert_eq!(numbers(&store, birth), (1..=10).collect::<Vec<u64>>(), "{report:?}");
}

#[test]
fn without_both_key_files_the_practice_is_told_from_one_that_never_was() {
    let (founded, _) = Founded::with_birth(2);
    for name in [PASSPHRASE_KEY, RECOVERY_KEY] {
        fs::remove_file(founded.file(name)).unwrap();
    }
    assert!(Store::keys_missing(founded.path()) && !Store::exists(founded.path()));
    for refused in [
        Store::open(founded.path(), passphrase()).err(),
        Store::read_damaged(founded.path(), passphrase()).err(),
        Store::opens(founded.path(), passphrase()).err(),
    ] {
        assert!(matches!(refused, Some(StoreError::KeysMissing)), "{refused:?}");
    }
    let empty = tempfile::tempdir().unwrap();
    assert!(!Store::keys_missing(empty.path()));
    // Founded anew all the same, it is kept under a name of its own.
    drop(Store::create(founded.path(), passphrase()).unwrap());
    assert!(founded.file("without-key-1-secundine.db").exists() && !Store::keys_missing(founded.path()));
}

#[test]
fn of_a_database_that_is_garbage_or_gone_an_empty_one_is_built_and_a_backup_brings_all_back() {
    for gone in [false, true] {
        let (founded, birth) = Founded::with_birth(12);
        let backup = common::backups::back_up(&founded.open(), &founded.file("backup.tar"));
        match gone {
            true => fs::remove_file(founded.file(DATABASE)).unwrap(),
            false => fs::write(founded.file(DATABASE), [0x5a; 40_000]).unwrap(),
        }
        assert!(matches!(Store::open(founded.path(), passphrase()), Err(StoreError::Damaged(_))), "{gone}");
        let read = Store::read_damaged(founded.path(), founded.recovery.clone());
        assert!(matches!(read, Err(StoreError::NothingRead)), "{gone}");
        let (mut store, report, set_aside) = Store::salvage(founded.path(), founded.recovery.clone()).unwrap();
        assert_eq!((report.entries, report.births), (0, 0), "{gone}");
        assert_eq!(set_aside.join(DATABASE).exists(), !gone);
        store.add_backup(&backup).unwrap();
        assert_eq!(numbers(&store, birth).len(), 12);
        assert_eq!(store.verify().unwrap().misfit, None);
        store.close().unwrap();
        assert_eq!(numbers(&Store::open(founded.path(), passphrase()).unwrap(), birth).len(), 12);
    }
}
