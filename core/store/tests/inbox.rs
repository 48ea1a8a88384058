//! What is written into the inbox without a key is in the store once, in order, as soon as there is one.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;

use common::inbox::{Practice, drain, notes, written};
use secundine_store::{INBOX, INBOX_RECIPIENT, Inbox, RECORD_MAX, Store, StoreError};

#[test]
fn records_of_several_files_come_in_once_in_their_order() {
    let practice = Practice::new();
    practice.write(&["one", "two", "three"]);
    practice.write(&["four"]);
    practice.write(&["five", "six"]);
    assert_eq!(practice.files(), ["1.inbox", "2.inbox", "3.inbox"]);
    let mut store = practice.open();
    let drained = drain(&mut store, None);
    assert_eq!((drained.entries, drained.lost_tail, drained.torn, drained.damaged, drained.waiting), (6, 0, 0, 0, 0));
    assert_eq!(notes(&store), ["one", "two", "three", "four", "five", "six"]);
    assert!(practice.files().is_empty() && practice.damaged().is_empty());
    let again = drain(&mut store, None);
    assert_eq!((again.entries, again.lost_tail), (0, 0));
    assert_eq!(notes(&store).len(), 6);
}

#[test]
fn a_file_is_taken_in_order_whatever_it_is_called() {
    let practice = Practice::new();
    for text in ["one", "two", "three"] {
        practice.write(&[text]);
    }
    fs::rename(practice.inbox("1.inbox"), practice.inbox("9.inbox")).unwrap();
    fs::rename(practice.inbox("3.inbox"), practice.inbox("1.inbox")).unwrap();
    let mut store = practice.open();
    assert_eq!((drain(&mut store, None).lost_tail, notes(&store)), (0, vec!["one".into(), "two".into(), "three".into()]));
}

#[test]
fn a_file_that_comes_back_is_not_taken_in_again() {
    let practice = Practice::new();
    practice.write(&["one", "two"]);
    let kept = fs::read(practice.inbox("1.inbox")).unwrap();
    let mut store = practice.open();
    drain(&mut store, None);
    store.close().unwrap();
    for name in ["1.inbox", "7.inbox"] {
        fs::write(practice.inbox(name), &kept).unwrap();
    }
    // The beginning alone, and more than was there: neither adds anything, and what is more is kept.
    let kept = written(&kept);
    fs::write(practice.inbox("8.inbox"), [kept, &kept[kept.len() - 23..]].concat()).unwrap();
    let mut store = practice.open();
    assert_eq!(drain(&mut store, None).entries, 0);
    assert_eq!(notes(&store), ["one", "two"]);
    assert!(practice.files().is_empty());
    assert_eq!(practice.damaged().len(), 1);
}

#[test]
fn what_is_carried_over_follows_the_files() {
    let practice = Practice::new();
    practice.write(&["one"]);
    practice.write(&["two"]);
    let mut store = practice.open();
    let mut carried = Vec::new();
    let mut turn = |store: &Store, batch: secundine_store::Batch| {
        carried.push(batch.carry.clone());
        let mut turned = common::inbox::turn(store, batch)?;
        turned.carry = format!("after {}", carried.len()).into_bytes();
        Ok(turned)
    };
    store.drain(None, &mut turn).unwrap();
    practice.write(&["three"]);
    store.drain(None, &mut turn).unwrap();
    // The third began in an empty folder: it follows nothing.
    assert_eq!(carried, [None, Some(b"after 1".to_vec()), None]);
}

#[test]
fn a_record_costs_twenty_bytes_and_shows_nothing() {
    let practice = Practice::new();
    let mut inbox = Inbox::new(practice.path());
    inbox.append(b"canary canary canary").unwrap();
    let first = fs::read(practice.inbox("1.inbox")).unwrap();
    inbox.append(b"canary canary canary").unwrap();
    let bytes = fs::read(practice.inbox("1.inbox")).unwrap();
    assert_eq!(written(&bytes).len() - written(&first).len(), 20 + 20);
    assert_eq!(bytes.len(), first.len(), "it stands where there was room for it");
    assert!(!bytes.windows(6).any(|window| window == b"canary"));
    assert_eq!(Inbox::waiting(practice.path()).files, 1);
    assert_eq!(Inbox::waiting(practice.path()).bytes, bytes.len() as u64);
}

#[test]
fn a_record_has_its_greatest_length() {
    let practice = Practice::new();
    let mut inbox = Inbox::new(practice.path());
    for impossible in [0, RECORD_MAX + 1] {
        assert!(matches!(inbox.append(&vec![b'x'; impossible]), Err(StoreError::NotSaved(_))), "{impossible}");
    }
    assert!(practice.files().is_empty());
    inbox.append(&vec![b'x'; RECORD_MAX]).unwrap();
    let mut store = practice.open();
    assert_eq!((drain(&mut store, None).entries, notes(&store)[0].len()), (1, RECORD_MAX));
}

#[test]
fn a_writer_whose_file_was_drained_begins_another() {
    let practice = Practice::new();
    let mut inbox = Inbox::new(practice.path());
    inbox.append(b"one").unwrap();
    let mut store = practice.open();
    drain(&mut store, None);
    inbox.append(b"two").unwrap();
    assert_eq!(drain(&mut store, inbox.tail().as_ref()).lost_tail, 0);
    assert_eq!(notes(&store), ["one", "two"]);
}

#[test]
fn a_practice_without_an_inbox_gets_one_when_it_is_opened() {
    let practice = Practice::new();
    let recipient = fs::read_to_string(practice.path().join(INBOX_RECIPIENT)).unwrap();
    assert!(recipient.starts_with("age1"), "{recipient}");
    for other in [None, Some("age1qqqq"), Some("")] {
        fs::remove_file(practice.path().join(INBOX_RECIPIENT)).unwrap();
        if let Some(other) = other {
            fs::write(practice.path().join(INBOX_RECIPIENT), other).unwrap();
        }
        let refused = Inbox::new(practice.path()).append(b"one");
        assert!(matches!(refused, Err(StoreError::NotSaved(_))), "{refused:?}");
        practice.open().close().unwrap();
        assert_eq!(fs::read_to_string(practice.path().join(INBOX_RECIPIENT)).unwrap(), recipient);
    }
    // One made before there were inboxes.
    practice.raw().execute_batch("DROP TABLE inbox; DROP TABLE drained").unwrap();
    practice.open().close().unwrap();
    assert_ne!(fs::read_to_string(practice.path().join(INBOX_RECIPIENT)).unwrap(), recipient);
    practice.write(&["one"]);
    let mut store = practice.open();
    assert_eq!(drain(&mut store, None).entries, 1);
}

#[test]
fn what_another_practice_sealed_is_set_aside() {
    let (practice, other) = (Practice::new(), Practice::new());
    other.write(&["theirs"]);
    practice.write(&["ours"]);
    fs::copy(other.inbox("1.inbox"), practice.inbox("2.inbox")).unwrap();
    let mut store = practice.open();
    let drained = drain(&mut store, None);
    assert_eq!((drained.entries, drained.damaged, notes(&store)), (1, 1, vec!["ours".to_owned()]));
    assert_eq!(practice.damaged(), ["1.inbox"]);
}

#[test]
fn what_cannot_be_taken_in_now_waits() {
    let practice = Practice::new();
    practice.write(&["one"]);
    practice.write(&["two"]);
    let mut store = practice.open();
    let mut asked = 0;
    let drained = store
        .drain(None, |store, batch| {
            asked += 1;
            if asked == 2 { Err(StoreError::Newer(2)) } else { common::inbox::turn(store, batch) }
        })
        .unwrap();
    assert_eq!((drained.entries, drained.waiting, practice.files()), (1, 1, vec!["2.inbox".to_owned()]));
    assert!(matches!(drained.stopped, Some(StoreError::Newer(2))));
    assert_eq!(drain(&mut store, None).entries, 1);
    assert_eq!(notes(&store), ["one", "two"]);
    assert!(!practice.path().join(INBOX).join("damaged").exists());
}
