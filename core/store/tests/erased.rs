//! After a birth was erased the rest goes on, and nothing that is put in beside it brings the birth back.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::path::PathBuf;

use common::{Founded, entry, from_elsewhere, numbers, stamp, two_births};
use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Fact, Photo};
use secundine_domain::file::FileId;
use secundine_store::{DATABASE, FILES, Store, StoreError, check_backup};

const MADE: i64 = 1_795_570_800_000;

/// Two births, the entries 11 and 12 being pictures of the one, and a backup of that. Then the one with the pictures is erased.
struct Erased {
    founded: Founded,
    store: Option<Store>,
    gone: BirthId,
    kept: BirthId,
    pictures: [FileId; 2],
    before: PathBuf,
}

impl Erased {
    fn new() -> Self {
        let founded = Founded::new();
        let mut store = founded.open();
        let (gone, kept) = two_births(&mut store);
        // One of this phone and one of another.
        let pictures = [store.keep_file(b"a picture").unwrap(), from_elsewhere(&mut store, b"another")];
        for file in pictures {
            let photo = Photo { placenta: 1, file, small: file, width: 4, height: 3, item: None, words: None, focal: None };
            store.append(&entry(store.next_id(), gone, MADE, Fact::PhotoTaken(photo))).unwrap();
        }
        let before = founded.file("before.backup");
        store.back_up(&before, &stamp(MADE)).unwrap();
        store.erase(gone).unwrap();
        Self { founded, store: Some(store), gone, kept, pictures, before }
    }

    fn store(&mut self) -> &mut Store {
        self.store.as_mut().unwrap()
    }

    fn after(&mut self) -> PathBuf {
        let after = self.founded.file("after.backup");
        let backed = self.store().back_up(&after, &stamp(MADE + 1)).unwrap();
        assert_eq!((backed.births, backed.files), (1, 0));
        after
    }

    /// The birth is nowhere, the other one whole, and everything fits.
    fn holds(&self, store: &Store) {
        assert_eq!(numbers(store, self.kept), [4, 5, 6, 9, 10]);
        assert_eq!(numbers(store, self.gone), [0; 0]);
        assert_eq!(store.births().unwrap().len(), 1);
        assert_eq!(store.verify().unwrap().misfit, None);
        for file in self.pictures {
            assert!(!store.has_file(file), "{file}");
            assert!(matches!(store.file_key(file), Err(StoreError::NoFile)));
        }
    }
}

#[test]
fn a_backup_from_after_it_is_restored_with_nothing_missing() {
    let mut erased = Erased::new();
    let (after, digits) = (erased.after(), erased.founded.data_key());
    assert_eq!(check_backup(fs::File::open(&after).unwrap(), &digits).unwrap(), (12, 1));
    let other = erased.founded.file("other");
    let (store, restored) = Store::restore(&other, &after, erased.founded.recovery.clone()).unwrap();
    assert_eq!((restored.added, restored.known, restored.erased, restored.births), (5, 0, 0, 1));
    assert_eq!((restored.refused, restored.files), (vec![], 0));
    erased.holds(&store);
    store.close().unwrap();
    // It knows how far the first phone's chain goes, though its last entries are erased.
    let store = Store::open_with_identity(&other, &erased.founded.recovery).unwrap();
    let first = erased.store().device();
    assert_eq!(store.chain_of(first).unwrap(), erased.store().chain_of(first).unwrap());
}

#[test]
fn a_backup_erases_nothing_where_the_erasure_is_not_known_yet() {
    let mut erased = Erased::new();
    let (after, folder) = (erased.after(), erased.founded.file("unaware"));
    let (mut store, _) = Store::restore(&folder, &erased.before, erased.founded.recovery.clone()).unwrap();
    let restored = store.add_backup(&after).unwrap();
    assert_eq!((restored.added, restored.known, restored.erased, restored.refused.len()), (0, 12, 0, 0));
    assert_eq!(numbers(&store, erased.gone), [1, 2, 3, 7, 8, 11, 12]);
    assert_eq!(store.verify().unwrap().misfit, None);
    assert_eq!(fs::read_dir(folder.join(FILES)).unwrap().count(), 2);
}

#[test]
fn a_backup_from_before_it_does_not_bring_it_back() {
    let mut erased = Erased::new();
    let before = erased.before.clone();
    let restored = erased.store().add_backup(&before).unwrap();
    assert_eq!((restored.added, restored.known, restored.erased, restored.births), (0, 5, 7, 0));
    assert_eq!((restored.refused.len(), restored.files, restored.renewed), (0, 0, false));
    erased.holds(erased.store.as_ref().unwrap());
    // Nor into what was restored from a backup of after it.
    let (after, other) = (erased.after(), erased.founded.file("other"));
    let (mut store, _) = Store::restore(&other, &after, erased.founded.recovery.clone()).unwrap();
    assert_eq!(store.add_backup(&before).unwrap().erased, 7);
    erased.holds(&store);
}

#[test]
fn a_salvage_tells_nothing_of_it_as_missing() {
    let mut erased = Erased::new();
    erased.store.take().unwrap().close().unwrap();
    let database = erased.founded.file(DATABASE);
    let mut pages = fs::read(&database).unwrap();
    pages[..4096].fill(0x77);
    fs::write(database, pages).unwrap();
    let (folder, secret) = (erased.founded.path(), erased.founded.recovery.clone());
    let (store, report) = Store::read_damaged(folder, secret.clone()).unwrap();
    assert_eq!((report.entries, report.births, report.missing_count(), report.unprovable), (5, 1, 0, 0));
    store.close().unwrap();
    let (store, report, _) = Store::salvage(folder, secret).unwrap();
    assert_eq!((report.entries, report.births_touched, report.missing_count(), report.contradicting), (5, 0, 0, 0));
    erased.holds(&store);
}
