//! Killed at any point at which a salvage touches the disk, the damaged store is there and can be salvaged, or the new one is.
//! A read that the system fails is told apart from damage.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::os::unix::process::ExitStatusExt;
use std::path::Path;

use common::again::{again, inside, once_more, open};
use common::{Founded, numbers};
use secundine_domain::entry::BirthId;
use secundine_store::{DATABASE, ExposeSecret, HEAD, RECOVERY_KEY, Store, StoreError};

const TEST: &str = "a_salvage_killed_anywhere_leaves_the_damaged_store_or_the_new_one";
const CALLS: [(&str, u32); 4] =
    [("fsync,fdatasync", 8), ("?rename,?renameat,?renameat2", 4), ("?mkdir,?mkdirat", 1), ("?unlink,?unlinkat", 1)];

#[test]
fn a_salvage_killed_anywhere_leaves_the_damaged_store_or_the_new_one() {
    if let Some(folder) = inside() {
        let recovery = fs::read_to_string(folder.join("identity")).unwrap();
        Store::salvage(&folder, recovery.into()).unwrap().0.close().unwrap();
        return;
    }
    let (founded, birth) = Founded::with_birth(30);
    fs::write(founded.file("identity"), founded.recovery.expose_secret()).unwrap();
    let mut bytes = fs::read(founded.file(DATABASE)).unwrap();
    bytes[..4096].fill(0);
    fs::write(founded.file(DATABASE), &bytes).unwrap();
    let (mut again, mut built) = (0, 0);
    for (calls, fewest) in CALLS {
        let mut kills = 0;
        loop {
            let folder = copy(&founded);
            if !killed(folder.path(), calls, kills + 1) {
                break;
            }
            kills += 1;
            let place = format!("{calls} {kills}");
            match salvaged(folder.path(), birth, &founded) {
                true => again += 1,
                false => built += 1,
            }
            let set_aside: Vec<_> = fs::read_dir(folder.path()).unwrap().map(|file| file.unwrap().file_name()).collect();
            let set_aside = set_aside.iter().filter(|name| name.to_string_lossy().starts_with("damaged-"));
            assert_eq!(set_aside.count(), 1, "{place}: the damaged files lie in one place");
            assert_eq!(fs::read(folder.path().join("damaged-1").join(DATABASE)).unwrap(), bytes, "{place}");
        }
        assert!(kills >= fewest, "a salvage makes only {kills} calls of {calls}");
    }
    assert!(again >= 5 && built >= 5, "{again} {built}");
}

/// Looks after a kill; tells whether the damaged store was still there.
fn salvaged(folder: &Path, birth: BirthId, founded: &Founded) -> bool {
    let all: Vec<u64> = (1..=30).collect();
    match Store::open_with_identity(folder, &founded.recovery) {
        Ok(store) => {
            assert_eq!(numbers(&store, birth), all);
            assert!(store.verify().unwrap().misfit.is_none());
            false
        }
        Err(StoreError::Damaged(_)) => {
            let (store, report, _) = Store::salvage(folder, founded.recovery.clone()).unwrap();
            assert_eq!((numbers(&store, birth), report.missing_count()), (all, 0));
            true
        }
        Err(other) => unreachable!("{other:?}"),
    }
}

fn copy(founded: &Founded) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    for name in [DATABASE, HEAD, RECOVERY_KEY, "identity", "inbox.recipient"] {
        fs::copy(founded.file(name), folder.path().join(name)).unwrap();
    }
    folder
}

fn killed(folder: &Path, calls: &str, n: u32) -> bool {
    let (trace, inject) = (format!("trace={calls}"), format!("inject={calls}:signal=SIGKILL:when={n}"));
    let output = once_more(TEST, folder, &["strace", "-f", "-qq", "-o", "/dev/null", "-e", &trace, "-e", &inject]);
    let by = output.status.signal();
    assert!(output.status.success() || by == Some(9), "{}", String::from_utf8_lossy(&output.stderr));
    by.is_some()
}

#[test]
fn a_read_that_the_system_fails_is_no_damage() {
    const TEST: &str = "a_read_that_the_system_fails_is_no_damage";
    if let Some(folder) = inside() {
        let recovery = fs::read_to_string(folder.join("identity")).unwrap();
        let refused = Store::open_with_identity(&folder, &recovery.into()).err();
        assert!(matches!(refused, Some(StoreError::NotRead(_))), "{refused:?}");
        return;
    }
    let (founded, birth) = Founded::with_birth(3);
    fs::write(founded.file("identity"), founded.recovery.expose_secret()).unwrap();
    let database = founded.file(DATABASE);
    let path = format!("--trace-path={}", database.display());
    for inject in ["inject=pread64:error=EIO", "inject=?open,openat:error=EACCES", "inject=fcntl:error=EIO"] {
        again(TEST, founded.path(), &["strace", "-f", "-qq", "-o", "/dev/null", &path, "-e", inject]);
    }
    assert_eq!(numbers(&open(founded.path()), birth), [1, 2, 3]);
}
