//! A disk that fills up, or refuses: what was acknowledged stays, and what is not on disk is never acknowledged.
//!
//! The full disk is a real one of two megabytes, mounted for this test alone, so the test runs itself once more inside.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;

use common::again::{again, fill, inside, note, open};
use common::{data_key, passphrase, raw};
use secundine_domain::entry::BirthId;
use secundine_store::{DATABASE, ExposeSecret, Store, StoreError};

#[test]
fn a_full_disk_loses_nothing_and_takes_more_once_there_is_room() {
    let Some(disk) = inside() else {
        let folder = tempfile::tempdir().unwrap();
        let mount = r#"mount -t tmpfs -o size=2m small "$0" && exec "$@""#;
        let disk = folder.path().to_str().unwrap();
        // A mount and user namespace of its own: no rights are needed, and the disk is gone when the test ends.
        let around = ["unshare", "--user", "--map-root-user", "--mount", "sh", "-c", mount, disk];
        return again("a_full_disk_loses_nothing_and_takes_more_once_there_is_room", folder.path(), &around);
    };
    let ballast = disk.join("ballast");
    fs::write(&ballast, vec![0; 500_000]).unwrap();
    let data = disk.join("data");
    let (mut store, recovery) = Store::create(&data, passphrase()).unwrap();
    let birth = BirthId(store.next_id());
    let (mut acknowledged, error) = fill(&mut store, birth);
    assert!(matches!(error, StoreError::Full), "{error}");
    assert!(acknowledged.len() > 50, "{}", acknowledged.len());
    let numbers = |store: &Store| common::numbers(store, birth);
    assert_eq!(numbers(&store), acknowledged, "what is not on disk is not shown");

    fs::remove_file(&ballast).unwrap();
    let (more, error) = fill(&mut store, birth);
    assert!(!more.is_empty() && matches!(error, StoreError::Full), "{error}");
    acknowledged.extend(more);
    assert_eq!(acknowledged, (1..=acknowledged.len() as u64).collect::<Vec<_>>(), "no number is lost to a refusal");

    // The disk is full to the last byte now; it still opens and shows everything.
    drop(store);
    let store = Store::open_with_identity(&data, &recovery).unwrap();
    assert_eq!(numbers(&store), acknowledged);
    drop(store);
    assert!(matches!(Store::create(&disk.join("other"), passphrase()), Err(StoreError::Full | StoreError::NotSaved(_))));
    assert!(!Store::exists(&disk.join("other")), "half a practice is none");
    // Looked at elsewhere: without the store's exclusive lock, SQLite needs room beside the database.
    let copy = tempfile::tempdir().unwrap();
    for name in [DATABASE.to_owned(), format!("{DATABASE}-wal")] {
        fs::copy(data.join(&name), copy.path().join(&name)).unwrap();
    }
    let raw = raw(&copy.path().join(DATABASE), &data_key(&data, recovery.expose_secret()));
    let checked: String = raw.query_row("PRAGMA integrity_check", [], |row| row.get(0)).unwrap();
    assert_eq!(checked, "ok");
}

#[test]
fn after_a_refused_write_nothing_more_is_written_until_it_is_opened_anew() {
    let folder = inside().unwrap_or_else(|| tempfile::tempdir().unwrap().keep());
    if inside().is_none() {
        let birth = {
            let (store, recovery) = Store::create(&folder, passphrase()).unwrap();
            fs::write(folder.join("identity"), recovery.expose_secret()).unwrap();
            BirthId(store.next_id())
        };
        // No file may grow past 300 kB. The signal that comes with it is ignored, so that the write fails instead.
        let limit = r#"trap "" XFSZ; exec prlimit --fsize=300000 "$@""#;
        again("after_a_refused_write_nothing_more_is_written_until_it_is_opened_anew", &folder, &["sh", "-c", limit, "sh"]);
        let acknowledged: Vec<u64> =
            fs::read_to_string(folder.join("acknowledged")).unwrap().lines().map(|line| line.parse().unwrap()).collect();
        let mut store = open(&folder);
        assert_eq!(common::numbers(&store, birth), acknowledged);
        store.append(&note(store.next_id(), birth)).unwrap();
        store.close().unwrap();
        assert_eq!(common::numbers(&open(&folder), birth).len(), acknowledged.len() + 1);
        return fs::remove_dir_all(&folder).unwrap();
    }
    let mut store = open(&folder);
    let birth = BirthId(store.next_id());
    let (acknowledged, error) = fill(&mut store, birth);
    assert!(matches!(error, StoreError::NotSaved(_)), "{error}");
    assert!(acknowledged.len() > 10, "{}", acknowledged.len());
    let again = store.append(&note(store.next_id(), birth));
    assert!(matches!(again, Err(StoreError::NotSaved(_))));
    assert_eq!(common::numbers(&store, birth), acknowledged, "what was written before can still be read");
    let list: Vec<String> = acknowledged.iter().map(u64::to_string).collect();
    fs::write(folder.join("acknowledged"), list.join("\n")).unwrap();
}
