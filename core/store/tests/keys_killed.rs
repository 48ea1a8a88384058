//! Killed at any point at which a change of keys touches the disk, either the old or the new key opens.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::os::unix::process::ExitStatusExt;
use std::path::Path;

use common::again::{inside, once_more};
use common::{Founded, passphrase};
use secundine_store::{Passphrase, Store, StoreError};

const CALLS: [(&str, u32); 3] = [("fsync,fdatasync", 2), ("?rename,?renameat,?renameat2", 1), ("write", 1)];
const WIPE_CALLS: [(&str, u32); 3] = [("fsync,fdatasync", 7), ("?unlink,?unlinkat", 5), ("write", 2)];

fn new() -> Passphrase {
    Passphrase::from("nine loud geese".to_owned())
}

#[test]
fn a_change_of_passphrase_killed_anywhere_leaves_one_that_opens() {
    const TEST: &str = "a_change_of_passphrase_killed_anywhere_leaves_one_that_opens";
    if let Some(folder) = inside() {
        Store::change_passphrase(&folder, passphrase(), new()).unwrap();
        return;
    }
    let (mut old, mut changed) = (0, 0);
    every_kill(TEST, &CALLS, |founded, place| {
        match Store::open(founded.path(), passphrase()) {
            Ok(_) => old += 1,
            Err(StoreError::WrongPassphrase) => {
                assert!(Store::open(founded.path(), new()).is_ok(), "{place}");
                changed += 1;
            }
            Err(other) => unreachable!("{place}: {other:?}"),
        }
        assert!(Store::open_with_identity(founded.path(), &founded.recovery).is_ok(), "{place}");
        // What was left unfinished is not in the way.
        let further = Passphrase::from("four still swans".to_owned());
        assert!(Store::change_passphrase(founded.path(), founded.recovery.clone(), further).is_ok(), "{place}");
    });
    assert!(old >= 2 && changed >= 1, "{old} {changed}");
}

#[test]
fn a_new_recovery_sheet_killed_anywhere_harms_neither_the_passphrase_nor_a_further_try() {
    const TEST: &str = "a_new_recovery_sheet_killed_anywhere_harms_neither_the_passphrase_nor_a_further_try";
    if let Some(folder) = inside() {
        Store::renew_recovery(&folder, passphrase()).unwrap();
        return;
    }
    let (mut old, mut changed) = (0, 0);
    every_kill(TEST, &CALLS, |founded, place| {
        match Store::open_with_identity(founded.path(), &founded.recovery) {
            Ok(_) => old += 1,
            // The new one was never shown; the passphrase makes another.
            Err(StoreError::WrongPassphrase) => changed += 1,
            Err(other) => unreachable!("{place}: {other:?}"),
        }
        let recovery = Store::renew_recovery(founded.path(), passphrase()).unwrap();
        assert!(Store::open_with_identity(founded.path(), &recovery).is_ok(), "{place}");
    });
    assert!(old >= 2 && changed >= 1, "{old} {changed}");
}

#[test]
fn a_wipe_killed_anywhere_is_not_begun_or_is_finished_by_the_next_run() {
    const TEST: &str = "a_wipe_killed_anywhere_is_not_begun_or_is_finished_by_the_next_run";
    if let Some(folder) = inside() {
        Store::wipe(&folder).unwrap();
        return;
    }
    let (mut whole, mut finished) = (0, 0);
    every_kill(TEST, &WIPE_CALLS, |founded, place| {
        Store::finish_wipe(founded.path()).unwrap();
        if Store::exists(founded.path()) {
            assert!(Store::open_with_identity(founded.path(), &founded.recovery).is_ok(), "{place}");
            assert!(Store::open(founded.path(), passphrase()).is_ok(), "{place}");
            whole += 1;
        } else {
            assert_eq!(fs::read_dir(founded.path()).unwrap().count(), 0, "{place}");
            finished += 1;
        }
    });
    assert!(whole >= 1 && finished >= 8, "{whole} {finished}");
}

/// Runs the inside in another process that is killed at each of the calls in turn, on a practice of its own, and looks.
fn every_kill(test: &str, points: &[(&str, u32)], mut look: impl FnMut(&Founded, &str)) {
    let template = Founded::new();
    for &(calls, fewest) in points {
        let mut kills = 0;
        loop {
            let founded = copy(&template);
            if !killed(test, founded.path(), calls, kills + 1) {
                break;
            }
            kills += 1;
            look(&founded, &format!("{calls} {kills}"));
        }
        assert!(kills >= fewest, "only {kills} calls of {calls}");
    }
}

fn copy(template: &Founded) -> Founded {
    let folder = tempfile::tempdir().unwrap();
    for file in fs::read_dir(template.path()).unwrap().map(|file| file.unwrap()) {
        fs::copy(file.path(), folder.path().join(file.file_name())).unwrap();
    }
    Founded { folder, recovery: template.recovery.clone() }
}

fn killed(test: &str, folder: &Path, calls: &str, n: u32) -> bool {
    let (trace, inject) = (format!("trace={calls}"), format!("inject={calls}:signal=SIGKILL:when={n}"));
    let output = once_more(test, folder, &["strace", "-f", "-qq", "-o", "/dev/null", "-e", &trace, "-e", &inject]);
    let by = output.status.signal();
    assert!(output.status.success() || by == Some(9), "{}", String::from_utf8_lossy(&output.stderr));
    by.is_some()
}
