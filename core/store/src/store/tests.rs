//! A store that is full, broken, or written to in one go.

use secundine_domain::fact::Fact;
use secundine_domain::time::{Occurred, Stamp};

use super::*;

fn note(id: EntryId, birth: BirthId, text: String) -> Entry {
    let recorded = Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot: None };
    let occurred = Occurred::Marked(recorded.clone());
    Entry { id, birth, author: "Ida".to_owned(), occurred, recorded, fact: Fact::Noted { text }, amends: None }
}

#[test]
fn a_full_store_says_so_and_writes_again_once_there_is_room() {
    let folder = tempfile::tempdir().unwrap();
    let mut store = Store::found(folder.path(), DataKey::random().unwrap()).unwrap();
    let birth = BirthId(store.next_id());
    store.append(&note(store.next_id(), birth, "first".to_owned())).unwrap();
    let pages: u32 = store.connection.query_row("PRAGMA page_count", [], |row| row.get(0)).unwrap();
    store.connection.pragma_update(None, "max_page_count", pages).unwrap();
    let large = note(store.next_id(), birth, "x".repeat(20_000));
    for _ in 0..2 {
        assert!(matches!(store.append(&large), Err(StoreError::Full)));
    }
    assert_eq!(store.next_id(), large.id, "an entry that is not on disk takes no number");
    assert_eq!(store.entries(birth).unwrap().len(), 1);
    store.connection.pragma_update(None, "max_page_count", 100_000).unwrap();
    store.append(&large).unwrap();
    assert_eq!(store.entries(birth).unwrap().last().unwrap().entry, large);
}

#[test]
fn entries_that_belong_together_are_there_together_or_not_at_all() {
    let folder = tempfile::tempdir().unwrap();
    let mut store = Store::found(folder.path(), DataKey::random().unwrap()).unwrap();
    let first = store.next_id();
    let birth = BirthId(first);
    let three = |from: EntryId, length: usize| {
        (0..3).map(|k| note(EntryId { n: from.n + k, ..from }, birth, "x".repeat(length))).collect::<Vec<_>>()
    };
    let stored = store.append_all(&three(first, 10)).unwrap();
    assert_eq!(stored, store.entries(birth).unwrap());
    assert_eq!(store.next_id().n, 4);
    let pages: u32 = store.connection.query_row("PRAGMA page_count", [], |row| row.get(0)).unwrap();
    // Room for the first of the three, not for all.
    store.connection.pragma_update(None, "max_page_count", pages + 3).unwrap();
    let large = three(store.next_id(), 8_000);
    assert!(matches!(store.append_all(&large), Err(StoreError::Full)));
    assert_eq!((store.entries(birth).unwrap().len(), store.next_id().n), (3, 4));
    store.append(&large[0]).unwrap();
    assert!(store.append_all(&[]).unwrap().is_empty());
    assert_eq!(store.entries(birth).unwrap().len(), 4);
}

#[test]
fn after_a_write_that_may_be_half_done_nothing_more_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let mut store = Store::found(folder.path(), DataKey::random().unwrap()).unwrap();
    let birth = BirthId(store.next_id());
    let first = note(store.next_id(), birth, "first".to_owned());
    store.append(&first).unwrap();
    // Something that the program does not know of has taken the next number.
    store.connection.execute("INSERT INTO entry SELECT birth, device, 2, body, link, signature FROM entry", []).unwrap();
    let next = note(store.next_id(), birth, "next".to_owned());
    assert!(matches!(store.append(&next), Err(StoreError::NotSaved(_))));
    assert!(matches!(store.append(&note(store.next_id(), birth, "next".to_owned())), Err(StoreError::NotSaved(_))));
    let there: Vec<Entry> = store.entries(birth).unwrap().into_iter().map(|stored| stored.entry).collect();
    assert_eq!(there, [first.clone(), first]);
}

#[test]
fn an_entry_out_of_turn_or_of_another_device_is_refused_and_the_next_is_taken() {
    let folder = tempfile::tempdir().unwrap();
    let mut store = Store::found(folder.path(), DataKey::random().unwrap()).unwrap();
    let next = store.next_id();
    let birth = BirthId(next);
    let other = EntryId { device: secundine_domain::entry::DeviceId([7; 16]), ..next };
    for wrong in [EntryId { n: 0, ..next }, EntryId { n: 2, ..next }, other] {
        assert!(matches!(store.append(&note(wrong, birth, "wrong".to_owned())), Err(StoreError::NotSaved(_))), "{wrong}");
    }
    let late = [note(next, birth, "first".to_owned()), note(EntryId { n: 3, ..next }, birth, "third".to_owned())];
    assert!(matches!(store.append_all(&late), Err(StoreError::NotSaved(_))));
    assert!(store.entries(birth).unwrap().is_empty());
    store.append(&late[0]).unwrap();
    assert_eq!(store.next_id().n, 2);
}
