//! The database itself: nothing in it changes, one window holds it, and a newer one is left alone.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;

use common::chained::{Scribe, birth_key};
use common::{Founded, entry, numbers, write};
use rusqlite::params;
use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::Fact;
use secundine_store::{DATABASE, RECOVERY_KEY, Store, StoreError};

#[test]
fn past_the_program_too_an_entry_is_never_changed_removed_or_replaced() {
    let (founded, birth) = Founded::with_birth(2);
    let before = founded.open().entries(birth).unwrap();
    let attempts = [
        ("UPDATE entry SET body = x'00'", "an entry is never changed"),
        ("UPDATE entry SET n = 9 WHERE n = 1", "an entry is never changed"),
        ("DELETE FROM entry", "an entry is never removed"),
        ("DELETE FROM entry WHERE n = 1", "an entry is never removed"),
        ("INSERT OR REPLACE INTO entry SELECT birth, device, n, x'00', link, signature FROM entry", "an entry is never replaced"),
        (
            "REPLACE INTO entry SELECT birth, device, n, x'00', link, signature FROM entry WHERE n = 2",
            "an entry is never replaced",
        ),
        ("INSERT OR IGNORE INTO entry SELECT birth, device, n, x'00', link, signature FROM entry", "an entry is never replaced"),
        (
            "INSERT INTO entry SELECT * FROM entry WHERE true
          ON CONFLICT DO UPDATE SET body = x'00'",
            "an entry is never replaced",
        ),
        ("UPDATE device SET id = randomblob(16)", "a device keeps its id"),
        ("UPDATE device SET seed = randomblob(32)", "a device keeps its id"),
        ("DELETE FROM device", "a device keeps its id"),
    ];
    let raw = founded.raw();
    for (statement, refusal) in attempts {
        let error = raw.execute_batch(statement).unwrap_err();
        assert!(error.to_string().contains(refusal), "{statement}: {error}");
    }
    let good = ["randomblob(24)", "randomblob(16)", "7", "x'00'", "zeroblob(32)", "zeroblob(64)"];
    let insert =
        |values: &[&str]| raw.execute_batch(&format!("BEGIN; INSERT INTO entry VALUES ({}); ROLLBACK", values.join(", ")));
    insert(&good).unwrap();
    for column in 0..good.len() {
        for odd in ["randomblob(3)", "NULL", "'text'", "-1"] {
            let mut values = good;
            values[column] = odd;
            if (column, odd) != (3, "randomblob(3)") {
                assert!(insert(&values).is_err(), "{values:?}");
                raw.execute_batch("ROLLBACK").unwrap();
            }
        }
    }
    drop(raw);
    assert_eq!(founded.open().entries(birth).unwrap(), before);
}

#[test]
fn a_second_window_is_told_that_the_first_has_it() {
    let (founded, birth) = Founded::with_birth(1);
    let mut first = founded.open();
    let second = Store::open_with_identity(founded.path(), &founded.recovery);
    assert!(matches!(second, Err(StoreError::InUse)));
    write(&mut first, birth, 1);
    first.close().unwrap();
    assert_eq!(numbers(&founded.open(), birth), [1, 2]);
}

#[test]
fn a_newer_store_is_left_as_it_is() {
    let (founded, _) = Founded::with_birth(2);
    founded.raw().pragma_update(None, "user_version", 2).unwrap();
    let whole = fs::read(founded.file(DATABASE)).unwrap();
    let refused = Store::open_with_identity(founded.path(), &founded.recovery);
    assert!(matches!(refused, Err(StoreError::Newer(2))));
    assert!(fs::read(founded.file(DATABASE)).unwrap() == whole, "the database was written to");
    assert!(!founded.file(&format!("{DATABASE}-wal")).exists(), "a log was left behind");
}

#[test]
fn a_newer_store_that_was_killed_keeps_its_log() {
    let (founded, _) = Founded::with_birth(2);
    let log = format!("{DATABASE}-wal");
    let copy = tempfile::tempdir().unwrap();
    let raw = founded.raw();
    raw.pragma_update(None, "user_version", 2).unwrap();
    // Copied while it is open, these files are what a kill leaves behind.
    for name in [DATABASE, &log, RECOVERY_KEY] {
        fs::copy(founded.file(name), copy.path().join(name)).unwrap();
    }
    drop(raw);
    let files = || [DATABASE, &log].map(|name| fs::read(copy.path().join(name)).unwrap());
    let before = files();
    assert!(!before[1].is_empty(), "the log holds the new form");
    let refused = Store::open_with_identity(copy.path(), &founded.recovery);
    assert!(matches!(refused, Err(StoreError::Newer(2))));
    assert!(files() == before, "database or log was written to");
}

#[test]
fn a_missing_or_harmed_database_is_said_to_be_damaged_and_kept() {
    let (founded, _) = Founded::with_birth(40);
    let whole = fs::read(founded.file(DATABASE)).unwrap();
    let mut harmed = whole.clone();
    harmed[5000] ^= 1;
    for bytes in [&whole[..100], &harmed, &[7; 8192]] {
        fs::write(founded.file(DATABASE), bytes).unwrap();
        let refused = Store::open_with_identity(founded.path(), &founded.recovery);
        assert!(matches!(refused, Err(StoreError::Damaged(_))), "{} bytes", bytes.len());
        assert!(fs::read(founded.file(DATABASE)).unwrap() == bytes, "the damage is kept as it is");
    }
    fs::remove_file(founded.file(DATABASE)).unwrap();
    let refused = Store::open_with_identity(founded.path(), &founded.recovery);
    assert!(matches!(refused, Err(StoreError::Damaged(_))));
    assert!(!founded.file(DATABASE).exists(), "no empty database takes its place");
}

#[test]
fn births_of_several_devices_are_all_found_latest_first() {
    let founded = Founded::new();
    let mut others = [Scribe::new([1; 32]), Scribe::new([2; 32])];
    others.sort_by_key(Scribe::device);
    let [low, high] = [others[0].device(), others[1].device()];
    let note = |id, birth, at| entry(id, birth, at, Fact::Noted { text: "x".repeat(100) });
    // Registered at these times; the number of entries differs, so that hopping over them is put to the test.
    let raw = founded.raw();
    for (other, n, at, count) in [(0, 1, 500, 30), (0, 31, 100, 2), (1, 1, 500, 5)] {
        let birth = BirthId(EntryId { device: others[other].device(), n });
        for k in 0..count {
            let entry = note(others[other].next(), birth, at + k);
            others[other].write(&raw, &entry);
        }
    }
    raw.close().unwrap();
    let mut store = founded.open();
    let own = store.next_id().device;
    for (n, at, count) in [(1, 300, 1), (2, 200, 60)] {
        for k in 0..count {
            store.append(&note(store.next_id(), BirthId(EntryId { device: own, n }), at + k)).unwrap();
        }
    }
    let practice = entry(store.next_id(), BirthId::PRACTICE, 900, Fact::Noted { text: "about the practice".to_owned() });
    store.append(&practice).unwrap();
    let found: Vec<_> =
        store.births().unwrap().iter().map(|birth| (birth.id.0.device, birth.id.0.n, birth.registered_ms)).collect();
    // At the same time the greater id comes first.
    assert_eq!(found, [(high, 1, 500), (low, 1, 500), (own, 1, 300), (own, 2, 200), (low, 31, 100)]);
    assert_eq!(store.next_id().n, 63, "entries of other devices do not count");
    store.close().unwrap();
    let store = founded.open();
    assert_eq!((store.next_id().n, store.births().unwrap().len()), (63, 5));
    assert_eq!(store.entries(BirthId(EntryId { device: low, n: 1 })).unwrap().len(), 30);
    assert_eq!(store.entries(BirthId(EntryId { device: low, n: 2 })).unwrap().len(), 0, "n:2 belongs to another birth");
}

#[test]
fn an_entry_of_a_later_form_is_refused_by_name() {
    let (founded, birth) = Founded::with_birth(1);
    let body = br#"{"v":2}"#;
    let insert = "INSERT INTO entry VALUES (?1, ?2, 2, ?3, zeroblob(32), zeroblob(64))";
    founded.raw().execute(insert, params![birth_key(birth), birth.0.device.0, body]).unwrap();
    assert!(matches!(founded.open().entries(birth), Err(StoreError::Newer(2))));
}
