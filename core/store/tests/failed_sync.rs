//! A sync that fails is never tried again: the kernel may have dropped what was to be written, and say yes the next time.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;

use common::again::{again, fill, inside, note, open};
use common::{numbers, passphrase};
use secundine_domain::entry::BirthId;
use secundine_store::{ExposeSecret, Store, StoreError};

#[test]
fn a_failed_sync_is_told_and_not_tried_again() {
    let Some(folder) = inside() else {
        let folder = tempfile::tempdir().unwrap();
        let path = |name: &str| folder.path().join(name);
        let (store, recovery) = Store::create(folder.path(), passphrase()).unwrap();
        let birth = BirthId(store.next_id());
        fs::write(path("identity"), recovery.expose_secret()).unwrap();
        store.close().unwrap();
        let (calls, trace) = (path("calls"), ["-e", "trace=fsync,fdatasync", "-e", "inject=fsync,fdatasync:error=EIO:when=20+"]);
        let strace = [&["strace", "-f", "-qq", "-o", calls.to_str().unwrap()], trace.as_slice()].concat();
        again("a_failed_sync_is_told_and_not_tried_again", folder.path(), &strace);
        let calls = fs::read_to_string(&calls).unwrap();
        assert_eq!(calls.matches("EIO").count(), 1, "{calls}");

        let acknowledged = fs::read_to_string(path("acknowledged")).unwrap();
        let acknowledged: Vec<u64> = acknowledged.lines().map(|line| line.parse().unwrap()).collect();
        let mut store = open(folder.path());
        let found = numbers(&store, birth);
        // The refused one may be on disk after all; it was not acknowledged, so either is right.
        assert!(found.starts_with(&acknowledged) && found.len() <= acknowledged.len() + 1, "{found:?}");
        return assert!(store.append(&note(store.next_id(), birth)).is_ok());
    };
    let mut store = open(&folder);
    let birth = BirthId(store.next_id());
    let (acknowledged, error) = fill(&mut store, birth);
    assert!(matches!(error, StoreError::NotSaved(_)), "{error}");
    assert!(acknowledged.len() > 5, "{}", acknowledged.len());
    for _ in 0..3 {
        assert!(matches!(store.append(&note(store.next_id(), birth)), Err(StoreError::NotSaved(_))));
    }
    let list: Vec<String> = acknowledged.iter().map(u64::to_string).collect();
    fs::write(folder.join("acknowledged"), list.join("\n")).unwrap();
    // Killed here: nothing is tidied.
    std::mem::forget(store);
}
