//! The head: how far the chain had come, told beside the database.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;

use common::chained::{Chained, Copy, at};
use common::entry;
use secundine_domain::entry::BirthId;
use secundine_domain::fact::Fact;
use secundine_store::{DATABASE, HEAD, HeadSeen, MisfitKind, Store};

/// Writes notes in the first birth.
fn write(store: &mut Store, count: usize) {
    let birth: BirthId = store.births().unwrap().first().unwrap().id;
    common::write(store, birth, count);
}

fn head(copy: &Copy) -> Vec<u8> {
    fs::read(copy.file(HEAD)).unwrap()
}

#[test]
fn after_each_entry_the_head_tells_of_it() {
    let chained = Chained::new(3, 40);
    let copy = chained.copy();
    let mut store = copy.open().unwrap();
    let length = head(&copy).len();
    for n in 4..=12_u64 {
        write(&mut store, 1);
        let text = String::from_utf8(head(&copy)).unwrap();
        assert_eq!(text.lines().nth(1).unwrap().parse::<u64>().unwrap(), n);
        assert_eq!(text.len(), length, "it is written over in place");
    }
    assert_eq!(store.verify().unwrap().head, HeadSeen::At(12));
}

#[test]
fn a_head_that_lags_or_is_gone_accuses_nobody() {
    let chained = Chained::new(3, 40);
    let copy = chained.copy();
    let before = head(&copy);
    let mut store = copy.open().unwrap();
    write(&mut store, 5);
    store.close().unwrap();
    fs::write(copy.file(HEAD), before).unwrap();
    let verdict = copy.verify().unwrap();
    assert_eq!((verdict.head, verdict.misfit), (HeadSeen::At(3), None));
    fs::remove_file(copy.file(HEAD)).unwrap();
    let verdict = copy.verify().unwrap();
    assert_eq!((verdict.head, verdict.misfit), (HeadSeen::Nothing, None));
    let mut store = copy.open().unwrap();
    write(&mut store, 1);
    assert_eq!(store.verify().unwrap().head, HeadSeen::At(9), "it is told again with the next entry");
}

#[test]
fn a_head_that_is_not_the_devices_own_counts_as_none() {
    let (chained, stranger) = (Chained::new(3, 40), Chained::new(5, 40));
    let copy = chained.copy();
    let true_head = head(&copy);
    let mut forged = Vec::new();
    for k in 0..true_head.len() {
        let mut text = true_head.clone();
        *text.get_mut(k).unwrap() ^= 1;
        forged.push(text);
    }
    forged.extend([Vec::new(), vec![0; 232], vec![0xff; 10], fs::read(stranger.founded.file(HEAD)).unwrap()]);
    let store = copy.open().unwrap();
    for text in forged {
        fs::write(copy.file(HEAD), &text).unwrap();
        let verdict = store.verify().unwrap();
        assert_eq!((verdict.head, verdict.misfit), (HeadSeen::Unreadable, None), "{}", String::from_utf8_lossy(&text));
    }
}

#[test]
fn a_database_that_was_put_back_is_told_even_after_it_was_written_to_again() {
    let chained = Chained::new(6, 40);
    let copy = chained.copy();
    let earlier = fs::read(copy.file(DATABASE)).unwrap();
    let mut store = copy.open().unwrap();
    write(&mut store, 3);
    store.close().unwrap();
    fs::write(copy.file(DATABASE), earlier).unwrap();
    let cut = Some((chained.own, 7, MisfitKind::CutOff));
    assert_eq!(at(&copy.verify().unwrap()), cut);
    let kept = copy.file("head-contradicted-1");
    assert!(!kept.exists(), "looking changes nothing");

    let mut store = copy.open().unwrap();
    // Not what stood there before.
    let (id, birth) = (store.next_id(), store.births().unwrap().first().unwrap().id);
    let fact = Fact::Noted { text: "written on the older copy".to_owned() };
    store.append(&entry(id, birth, 1_795_570_900_000, fact)).unwrap();
    assert!(kept.exists());
    let verdict = store.verify().unwrap();
    assert_eq!((at(&verdict), verdict.head), (Some((chained.own, 8, MisfitKind::CutOff)), HeadSeen::At(7)));
    write(&mut store, 5);
    assert_eq!(at(&store.verify().unwrap()), Some((chained.own, 9, MisfitKind::Rewritten)));
    store.close().unwrap();
    assert_eq!(at(&copy.verify().unwrap()), Some((chained.own, 9, MisfitKind::Rewritten)));
}

#[test]
fn a_head_that_cannot_be_written_stops_no_entry() {
    let chained = Chained::new(3, 40);
    let copy = chained.copy();
    fs::remove_file(copy.file(HEAD)).unwrap();
    fs::create_dir(copy.file(HEAD)).unwrap();
    let mut store = copy.open().unwrap();
    write(&mut store, 2);
    let verdict = store.verify().unwrap();
    assert_eq!((verdict.head, verdict.misfit), (HeadSeen::Unreadable, None));
    fs::remove_dir(copy.file(HEAD)).unwrap();
    write(&mut store, 1);
    assert_eq!(store.verify().unwrap().head, HeadSeen::At(6));
}
