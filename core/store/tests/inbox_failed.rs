//! A write into the inbox that failed is told and not tried again on that file; the next record begins another.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;

use common::again::{again, inside, open};
use common::inbox::{Practice, drain, notes};
use secundine_store::{INBOX, Inbox, StoreError};

#[test]
fn a_failed_sync_is_told_and_the_next_record_begins_a_new_file() {
    const TEST: &str = "a_failed_sync_is_told_and_the_next_record_begins_a_new_file";
    if let Some(folder) = inside() {
        let mut inbox = Inbox::new(&folder);
        inbox.append(b"one").unwrap();
        assert!(matches!(inbox.append(b"refused"), Err(StoreError::NotSaved(_))));
        inbox.append(b"two").unwrap();
        inbox.append(b"three").unwrap();
        return;
    }
    let practice = Practice::new();
    let calls = practice.path().join("calls");
    let inject = ["-e", "trace=fdatasync", "-e", "inject=fdatasync:error=EIO:when=1"];
    again(TEST, practice.path(), &[&["strace", "-f", "-qq", "-o", calls.to_str().unwrap()], inject.as_slice()].concat());
    let calls = fs::read_to_string(calls).unwrap();
    assert_eq!((calls.matches("EIO").count(), calls.matches("fdatasync").count()), (1, 2), "{calls}");
    assert_eq!(practice.files(), ["1.inbox", "2.inbox"]);
    let mut store = practice.open();
    let drained = drain(&mut store, None);
    assert_eq!((drained.lost_tail, drained.torn, drained.damaged), (0, 0, 0));
    assert_eq!(notes(&store), ["one", "two", "three"]);
}

#[test]
fn a_first_write_that_failed_leaves_nothing_and_is_told() {
    const TEST: &str = "a_first_write_that_failed_leaves_nothing_and_is_told";
    if let Some(folder) = inside() {
        let mut inbox = Inbox::new(&folder);
        assert!(matches!(inbox.append(b"refused"), Err(StoreError::NotSaved(_))));
        assert!(inbox.tail().is_none());
        return inbox.append(b"one").unwrap();
    }
    // The first sync is of the practice's folder, for the inbox's name; then come the file, and its own name.
    for n in 1..=3 {
        let inject = format!("inject=fsync:error=EIO:when={n}");
        let practice = Practice::new();
        again(TEST, practice.path(), &["strace", "-f", "-qq", "-o", "/dev/null", "-e", "trace=fsync", "-e", &inject]);
        assert_eq!(practice.files(), ["1.inbox"], "{inject}");
        let mut store = practice.open();
        assert_eq!(drain(&mut store, None).entries, 1, "{inject}");
        assert_eq!(notes(&store), ["one"], "{inject}");
    }
}

#[test]
fn a_full_disk_is_told_as_such_and_keeps_what_was_acknowledged() {
    const TEST: &str = "a_full_disk_is_told_as_such_and_keeps_what_was_acknowledged";
    if let Some(folder) = inside() {
        let mut inbox = Inbox::new(&folder);
        let mut acknowledged = 0;
        let refused = loop {
            match inbox.append(&[b'x'; 30_000]) {
                Ok(()) => acknowledged += 1,
                Err(error) => break error,
            }
            assert!(acknowledged < 100, "the disk does not fill up");
        };
        assert!(matches!(refused, StoreError::Full), "{refused}");
        assert!(acknowledged > 5, "{acknowledged}");
        // A small one still fits, into a new file.
        inbox.append(b"small").unwrap();
        let mut store = open(&folder);
        let drained = drain(&mut store, inbox.tail().as_ref());
        assert_eq!((drained.lost_tail, drained.torn, drained.damaged), (0, 0, 0));
        let notes = notes(&store);
        assert_eq!((notes.len(), notes.last().map(String::as_str)), (acknowledged + 1, Some("small")));
        return;
    }
    let practice = Practice::new();
    fs::create_dir(practice.path().join(INBOX)).unwrap();
    fs::write(practice.path().join("identity"), practice.identity()).unwrap();
    let mount = r#"mount -t tmpfs -o size=400k small "$0/inbox" && exec "$@""#;
    let around = ["unshare", "--user", "--map-root-user", "--mount", "sh", "-c", mount, practice.path().to_str().unwrap()];
    again(TEST, practice.path(), &around);
}
