//! Killed at any point at which the disk is touched, the inbox loses nothing that was acknowledged and doubles nothing.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::os::unix::process::ExitStatusExt;
use std::path::Path;

use common::again::{inside, once_more, open};
use common::inbox::{Practice, drain, notes};
use secundine_store::{INBOX, Inbox};

const CALLS: [&str; 7] = ["fsync", "fdatasync", "?rename", "?unlink", "?unlinkat", "write", "pwrite64"];
const TEXTS: [&str; 5] = ["one", "two", "three", "four", "five"];

#[test]
fn a_writer_killed_anywhere_loses_nothing_that_was_acknowledged() {
    const TEST: &str = "a_writer_killed_anywhere_loses_nothing_that_was_acknowledged";
    if let Some(folder) = inside() {
        let mut inbox = Inbox::new(&folder);
        for (done, text) in (1..).zip(TEXTS) {
            inbox.append(text.as_bytes()).unwrap();
            fs::create_dir(folder.join(format!("acknowledged-{done}"))).unwrap();
        }
        return;
    }
    let (mut kills, mut between) = (0, 0);
    for calls in CALLS {
        for n in 1.. {
            let practice = Practice::new();
            let killed = killed(TEST, practice.path(), calls, n);
            let acknowledged = (1..=5).filter(|n| practice.path().join(format!("acknowledged-{n}")).exists()).count();
            // Another run of the program goes on, without a key.
            practice.write(&["after"]);
            let mut store = practice.open();
            let drained = drain(&mut store, None);
            let mut found = notes(&store);
            assert_eq!(found.pop().as_deref(), Some("after"), "{calls} {n}");
            assert!(TEXTS.iter().map(ToString::to_string).collect::<Vec<_>>().starts_with(&found), "{calls} {n}: {found:?}");
            assert!((acknowledged..=acknowledged + 1).contains(&found.len()), "{calls} {n}: {acknowledged} {found:?}");
            assert_eq!((drained.lost_tail, drained.damaged), (0, 0), "{calls} {n}");
            assert!(practice.files().is_empty(), "{calls} {n}");
            if !killed {
                break;
            }
            kills += 1;
            between += u32::from((1..5).contains(&acknowledged));
        }
    }
    assert!(kills >= 12 && between >= 8, "{kills} kills, {between} between two records");
}

#[test]
fn a_drain_killed_anywhere_loses_nothing_and_doubles_nothing() {
    const TEST: &str = "a_drain_killed_anywhere_loses_nothing_and_doubles_nothing";
    if let Some(folder) = inside() {
        drain(&mut open(&folder), None);
        return;
    }
    let practice = Practice::new();
    practice.write(&["one", "two", "three"]);
    practice.write(&["four"]);
    practice.write(&["five"]);
    // The last has a torn end, so that it is set aside and not removed.
    let path = practice.inbox("3.inbox");
    let torn = [fs::read(&path).unwrap().as_slice(), &[0, 0, 0, 9, 1, 2]].concat();
    fs::write(&path, torn).unwrap();
    let (mut kills, mut halfway) = (0, 0);
    for calls in CALLS {
        for n in 1.. {
            let folder = tempfile::tempdir().unwrap();
            copy(practice.path(), folder.path());
            fs::write(folder.path().join("identity"), practice.identity()).unwrap();
            let killed = killed(TEST, folder.path(), calls, n);
            let mut store = open(folder.path());
            let before = notes(&store).len();
            let drained = drain(&mut store, None);
            assert_eq!(notes(&store), TEXTS, "{calls} {n}");
            assert_eq!(before + usize::try_from(drained.entries).unwrap(), TEXTS.len(), "{calls} {n}");
            assert_eq!((drained.lost_tail, drained.damaged), (0, 0), "{calls} {n}");
            assert!(Inbox::waiting(folder.path()).files == 0 && folder.path().join(INBOX).join("damaged/1.inbox").exists());
            if !killed {
                break;
            }
            kills += 1;
            halfway += u32::from((1..TEXTS.len()).contains(&before));
        }
    }
    assert!(kills >= 10 && halfway >= 3, "{kills} kills, {halfway} between two files");
}

/// Runs the inside in another process that is killed as it makes the nth of these calls; tells whether it got so far.
fn killed(test: &str, folder: &Path, calls: &str, n: u32) -> bool {
    let (trace, inject) = (format!("trace={calls}"), format!("inject={calls}:signal=SIGKILL:when={n}"));
    // Among the writes are those of the test itself: killed there nothing is at stake, and nothing may be lost either.
    let args = ["strace", "-f", "-qq", "-o", "/dev/null", "-e", &trace, "-e", &inject];
    let output = once_more(test, folder, &args);
    let by = output.status.signal();
    assert!(output.status.success() || by == Some(9), "{}", String::from_utf8_lossy(&output.stderr));
    by.is_some()
}

fn copy(from: &Path, to: &Path) {
    for entry in fs::read_dir(from).unwrap().map(|entry| entry.unwrap()) {
        let (path, target) = (entry.path(), to.join(entry.file_name()));
        if path.is_dir() {
            fs::create_dir(&target).unwrap();
            copy(&path, &target);
        } else {
            fs::copy(&path, &target).unwrap();
        }
    }
}
