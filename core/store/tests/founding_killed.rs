//! Killed at any point at which founding touches the disk, a practice is there and opens, or is not there and can be founded.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use std::os::unix::process::ExitStatusExt;
use std::path::Path;

use common::again::{inside, once_more};
use common::passphrase;
use secundine_store::Store;

const TEST: &str = "a_founding_killed_anywhere_is_never_a_dead_end";

#[test]
fn a_founding_killed_anywhere_is_never_a_dead_end() {
    if let Some(folder) = inside() {
        Store::create(&folder.join("data"), passphrase()).unwrap().0.close().unwrap();
        return;
    }
    let (mut opened, mut begun_again) = (0, 0);
    for (calls, fewest) in [("fsync,fdatasync", 6), ("?rename,?renameat,?renameat2", 2)] {
        let mut kills = 0;
        loop {
            let folder = tempfile::tempdir().unwrap();
            if !killed(folder.path(), calls, kills + 1) {
                break;
            }
            kills += 1;
            let data = folder.path().join("data");
            if Store::exists(&data) {
                assert!(Store::open(&data, passphrase()).is_ok(), "{calls} {kills}");
                opened += 1;
            } else {
                let (_, recovery) = Store::create(&data, passphrase()).unwrap();
                assert!(Store::open_with_identity(&data, &recovery).is_ok(), "{calls} {kills}");
                begun_again += 1;
            }
        }
        assert!(kills >= fewest, "founding makes only {kills} calls of {calls}");
    }
    assert!(opened > 0 && begun_again > 0, "{opened} {begun_again}");
}

/// Founds in another process that is killed as it makes the nth of these calls; tells whether it got so far.
fn killed(folder: &Path, calls: &str, n: u32) -> bool {
    let (trace, inject) = (format!("trace={calls}"), format!("inject={calls}:signal=SIGKILL:when={n}"));
    let output = once_more(TEST, folder, &["strace", "-f", "-qq", "-o", "/dev/null", "-e", &trace, "-e", &inject]);
    let by = output.status.signal();
    assert!(output.status.success() || by == Some(9), "{}", String::from_utf8_lossy(&output.stderr));
    by.is_some()
}
