//! Killed at any point at which a change of keys touches the disk, either the old or the new key opens.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::os::unix::process::ExitStatusExt;
use std::path::Path;

use common::again::{inside, once_more};
use common::vault::{VAULT, Vault};
use common::{Founded, passphrase};
use secundine_store::{DEVICE_NAME, ExposeSecret, Passphrase, Slot, Store, StoreError};

const CALLS: [(&str, u32); 3] = [("fsync,fdatasync", 2), ("?rename,?renameat,?renameat2", 1), ("write", 1)];
const REVOKE_CALLS: [(&str, u32); 3] = [("fsync,fdatasync", 7), ("?unlink,?unlinkat", 4), ("?rename,?renameat,?renameat2", 2)];
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
        Store::wipe(&folder, None).unwrap();
        return;
    }
    let (mut whole, mut finished) = (0, 0);
    every_kill(TEST, &WIPE_CALLS, |founded, place| {
        Store::finish_wipe(founded.path(), None).unwrap();
        if Store::exists(founded.path()) {
            assert!(Store::open_with_identity(founded.path(), &founded.recovery).is_ok(), "{place}");
            assert!(Store::open(founded.path(), passphrase()).is_ok(), "{place}");
            whole += 1;
        } else {
            assert_eq!(left(founded), Vec::<String>::new(), "{place}");
            finished += 1;
        }
    });
    assert!(whole >= 1 && finished >= 8, "{whole} {finished}");
}

#[test]
fn a_wipe_killed_anywhere_lets_go_of_the_device_s_secret_too() {
    const TEST: &str = "a_wipe_killed_anywhere_lets_go_of_the_device_s_secret_too";
    if let Some(folder) = inside() {
        Store::wipe(&folder, Some(&Vault::at(&folder))).unwrap();
        return;
    }
    let (mut whole, mut finished) = (0, 0);
    every_kill_of(&with_device(), TEST, &WIPE_CALLS, |founded, place| {
        let vault = Vault::at(founded.path());
        Store::finish_wipe(founded.path(), Some(&vault)).unwrap();
        if Store::exists(founded.path()) {
            assert!(Store::open_with_device(founded.path(), &vault).is_ok(), "{place}");
            whole += 1;
        } else {
            assert_eq!((left(founded), vault.names()), (Vec::new(), Vec::new()), "{place}");
            finished += 1;
        }
    });
    assert!(whole >= 1 && finished >= 8, "{whole} {finished}");
}

#[test]
fn a_device_s_key_that_is_added_and_killed_anywhere_opens_or_is_not_there() {
    const TEST: &str = "a_device_s_key_that_is_added_and_killed_anywhere_opens_or_is_not_there";
    if let Some(folder) = inside() {
        Store::add_device(&folder, identity(&folder), &Vault::at(&folder)).unwrap();
        return;
    }
    let template = Founded::new();
    keep_identity(&template);
    let (mut none, mut added) = (0, 0);
    every_kill_of(&template, TEST, &CALLS, |founded, place| {
        let vault = Vault::at(founded.path());
        Store::finish_revoking(founded.path(), Some(&vault)).unwrap();
        match Store::open_with_device(founded.path(), &vault) {
            Ok(_) => added += 1,
            Err(StoreError::NoSlot(Slot::Device)) => {
                assert_eq!(vault.names(), Vec::<String>::new(), "{place}: a secret that nobody finds");
                none += 1;
            }
            Err(other) => unreachable!("{place}: {other:?}"),
        }
        assert!(Store::open(founded.path(), passphrase()).is_ok(), "{place}");
        Store::add_device(founded.path(), founded.recovery.clone(), &vault).unwrap();
        assert!(Store::open_with_device(founded.path(), &vault).is_ok() && vault.names().len() == 1, "{place}");
    });
    assert!(none >= 4 && added >= 1, "{none} {added}");
}

#[test]
fn a_key_that_is_taken_out_and_killed_anywhere_opens_or_is_gone() {
    const TEST: &str = "a_key_that_is_taken_out_and_killed_anywhere_opens_or_is_gone";
    if let Some(folder) = inside() {
        let vault = Vault::at(&folder);
        for slot in [Slot::Device, Slot::Recovery] {
            Store::revoke(&folder, slot, passphrase(), Some(&vault)).unwrap();
        }
        return;
    }
    let (mut device, mut recovery, mut neither) = (0, 0, 0);
    every_kill_of(&with_device(), TEST, &REVOKE_CALLS, |founded, place| {
        let vault = Vault::at(founded.path());
        Store::finish_revoking(founded.path(), Some(&vault)).unwrap();
        let slots = Store::slots(founded.path());
        match Store::open_with_device(founded.path(), &vault) {
            Ok(_) => device += 1,
            Err(StoreError::NoSlot(Slot::Device)) => {
                assert_eq!(vault.names(), Vec::<String>::new(), "{place}");
                assert!(!founded.file(DEVICE_NAME).exists(), "{place}");
            }
            Err(other) => unreachable!("{place}: {other:?}"),
        }
        match Store::open_with_identity(founded.path(), &founded.recovery) {
            Ok(_) => recovery += 1,
            Err(StoreError::NoSlot(Slot::Recovery)) => neither += 1,
            Err(other) => unreachable!("{place}: {other:?}"),
        }
        assert!(slots.contains(&Slot::Passphrase), "{place}");
        assert!(!left(founded).iter().any(|name| name.ends_with(".unfinished")), "{place}: {:?}", left(founded));
    });
    assert!(device >= 1 && recovery > device && neither >= 3, "{device} {recovery} {neither}");
}

/// A practice with a key for this device.
fn with_device() -> Founded {
    let founded = Founded::new();
    Store::add_device(founded.path(), founded.recovery.clone(), &Vault::at(founded.path())).unwrap();
    founded
}

fn keep_identity(founded: &Founded) {
    fs::create_dir_all(founded.file(VAULT)).unwrap();
    fs::write(founded.file(VAULT).join("recovery.txt"), founded.recovery.expose_secret()).unwrap();
}

fn identity(folder: &Path) -> Passphrase {
    fs::read_to_string(folder.join(VAULT).join("recovery.txt")).unwrap().into()
}

/// The files of the practice that are left.
fn left(founded: &Founded) -> Vec<String> {
    let names = fs::read_dir(founded.path()).unwrap().map(|file| file.unwrap().file_name().into_string().unwrap());
    let mut left: Vec<String> = names.filter(|name| name != VAULT).collect();
    left.sort();
    left
}

/// Runs the inside in another process that is killed at each of the calls in turn, on a practice of its own, and looks.
fn every_kill(test: &str, points: &[(&str, u32)], look: impl FnMut(&Founded, &str)) {
    every_kill_of(&Founded::new(), test, points, look);
}

fn every_kill_of(template: &Founded, test: &str, points: &[(&str, u32)], mut look: impl FnMut(&Founded, &str)) {
    for &(calls, fewest) in points {
        let mut kills = 0;
        loop {
            let founded = copy(template);
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
    let _ = fs::create_dir(folder.path().join(VAULT));
    for within in ["", VAULT] {
        let Ok(files) = fs::read_dir(template.file(within)) else { continue };
        for file in files.map(|file| file.unwrap()).filter(|file| file.path().is_file()) {
            fs::copy(file.path(), folder.path().join(within).join(file.file_name())).unwrap();
        }
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
