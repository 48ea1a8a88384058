//! Killed at any point at which a restore touches the disk, the practice is there whole or not at all, and can be restored.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::os::unix::process::ExitStatusExt;
use std::path::Path;

use common::again::{inside, once_more};
use common::backups::MADE;
use common::{Founded, numbers, passphrase, stamp, write};
use secundine_domain::entry::BirthId;
use secundine_store::{ExposeSecret, PASSPHRASE_KEY, Passphrase, RECOVERY_KEY, Store};

const CALLS: [&str; 4] = ["fsync,fdatasync", "?rename,?renameat,?renameat2", "?unlink,?unlinkat", "write,pwrite64"];

fn identity(folder: &Path) -> Passphrase {
    fs::read_to_string(folder.join("identity")).unwrap().into()
}

#[test]
fn a_restore_killed_anywhere_leaves_all_or_nothing_and_can_be_made_again() {
    const TEST: &str = "a_restore_killed_anywhere_leaves_all_or_nothing_and_can_be_made_again";
    if let Some(folder) = inside() {
        Store::restore(&folder.join("data"), &folder.join("backup.tar"), identity(&folder)).unwrap().0.close().unwrap();
        return;
    }
    let (founded, birth) = Founded::with_birth(5);
    let backup = founded.back_up("backup.tar");
    let (mut whole, mut nothing) = (0, 0);
    for (calls, fewest) in CALLS.iter().zip([10, 3, 1, 20]) {
        let mut kills = 0;
        loop {
            let folder = world(&founded, &backup);
            if !killed(TEST, folder.path(), calls, kills + 1) {
                break;
            }
            kills += 1;
            let (place, data) = (format!("{calls} {kills}"), folder.path().join("data"));
            let store = if Store::exists(&data) {
                whole += 1;
                Store::open_with_identity(&data, &founded.recovery).unwrap()
            } else {
                nothing += 1;
                let tried = Store::restore(&data, &folder.path().join("backup.tar"), founded.recovery.clone());
                tried.unwrap_or_else(|error| unreachable!("{place}: {error:?}")).0
            };
            assert_eq!(numbers(&store, birth), [1, 2, 3, 4, 5], "{place}");
            assert_eq!(store.verify().unwrap().misfit, None, "{place}");
            for name in [PASSPHRASE_KEY, RECOVERY_KEY] {
                assert_eq!(fs::read(data.join(name)).unwrap(), fs::read(founded.file(name)).unwrap(), "{place}: {name}");
            }
            drop(store);
            let aside = |name: String| name.starts_with("without-key-") || name.ends_with(".unfinished");
            assert!(
                !fs::read_dir(&data).unwrap().any(|file| aside(file.unwrap().file_name().into_string().unwrap())),
                "{place}: nothing is left lying about"
            );
        }
        assert!(kills >= fewest, "only {kills} calls of {calls}");
    }
    assert!(whole > 0 && nothing > 10, "{whole} {nothing}");
}

#[test]
fn after_a_restore_that_was_killed_another_practice_can_be_founded() {
    const TEST: &str = "after_a_restore_that_was_killed_another_practice_can_be_founded";
    if let Some(folder) = inside() {
        let _ = Store::restore(&folder.join("data"), &folder.join("backup.tar"), identity(&folder));
        return;
    }
    let (founded, _) = Founded::with_birth(2);
    let backup = founded.back_up("backup.tar");
    let folder = world(&founded, &backup);
    // The reserve, the inbox and one key file have their names; the second key file is about to get its own.
    assert!(killed(TEST, folder.path(), "?rename,?renameat,?renameat2", 4));
    let data = folder.path().join("data");
    assert!(!Store::exists(&data) && data.join(RECOVERY_KEY).exists());
    let (store, recovery) = Store::create(&data, passphrase()).unwrap();
    assert!(store.births().unwrap().is_empty());
    drop(store);
    assert!(Store::open_with_identity(&data, &recovery).is_ok() && Store::open(&data, passphrase()).is_ok());
}

#[test]
fn a_backup_added_to_a_practice_and_killed_anywhere_comes_in_whole_or_not_at_all() {
    const TEST: &str = "a_backup_added_to_a_practice_and_killed_anywhere_comes_in_whole_or_not_at_all";
    if let Some(folder) = inside() {
        let mut store = Store::open_with_identity(&folder.join("data"), &identity(&folder)).unwrap();
        store.add_backup(&folder.join("backup.tar")).unwrap();
        return;
    }
    let (founded, birth) = Founded::with_birth(3);
    let old = founded.file("old");
    fs::create_dir(&old).unwrap();
    for file in fs::read_dir(founded.path()).unwrap().map(|file| file.unwrap()).filter(|file| file.path().is_file()) {
        fs::copy(file.path(), old.join(file.file_name())).unwrap();
    }
    let mut store = founded.open();
    let other = BirthId(store.next_id());
    write(&mut store, birth, 2);
    write(&mut store, other, 2);
    store.close().unwrap();
    let backup = founded.file("backup.tar");
    founded.open().back_up(&backup, &stamp(MADE)).unwrap();
    let (mut before, mut after) = (0, 0);
    for calls in ["fsync,fdatasync", "write,pwrite64"] {
        let mut kills = 0;
        loop {
            let folder = world(&founded, &backup);
            fs::create_dir(folder.path().join("data")).unwrap();
            for file in fs::read_dir(&old).unwrap().map(|file| file.unwrap()) {
                fs::copy(file.path(), folder.path().join("data").join(file.file_name())).unwrap();
            }
            if !killed(TEST, folder.path(), calls, kills + 1) {
                break;
            }
            kills += 1;
            let mut store = Store::open_with_identity(&folder.path().join("data"), &founded.recovery).unwrap();
            match numbers(&store, birth).len() {
                3 => {
                    before += 1;
                    assert_eq!(store.next_id().n, 4);
                }
                5 => {
                    after += 1;
                    assert_eq!(store.next_id().n, 1, "all in one: it is a new device as well");
                }
                n => unreachable!("{calls} {kills}: {n} entries"),
            }
            assert_eq!(store.verify().unwrap().misfit, None, "{calls} {kills}");
            store.add_backup(&folder.path().join("backup.tar")).unwrap();
            assert_eq!(numbers(&store, birth).len() + numbers(&store, other).len(), 7, "{calls} {kills}");
        }
        assert!(kills >= 2, "only {kills} calls of {calls}");
    }
    assert!(before > 0 && after > 0, "{before} {after}");
}

/// A folder with the backup, and the identity that opens it.
fn world(founded: &Founded, backup: &Path) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    fs::copy(backup, folder.path().join("backup.tar")).unwrap();
    fs::write(folder.path().join("identity"), founded.recovery.expose_secret()).unwrap();
    folder
}

fn killed(test: &str, folder: &Path, calls: &str, n: u32) -> bool {
    let (trace, inject) = (format!("trace={calls}"), format!("inject={calls}:signal=SIGKILL:when={n}"));
    let output = once_more(test, folder, &["strace", "-f", "-qq", "-o", "/dev/null", "-e", &trace, "-e", &inject]);
    let by = output.status.signal();
    assert!(output.status.success() || by == Some(9), "{}", String::from_utf8_lossy(&output.stderr));
    by.is_some()
}
