//! A backup that is made while the store stays in use.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use common::backups::MADE;
use common::{Founded, numbers, stamp, two_births, write};
use secundine_store::{Store, StoreError};

#[test]
fn what_is_written_while_it_is_made_is_not_in_it() {
    let founded = Founded::new();
    let mut store = founded.open();
    let (one, _) = two_births(&mut store);
    let begun = store.begin_backup(&stamp(MADE)).unwrap();
    write(&mut store, one, 1);
    let (backup, mut far) = (founded.file("backup.tar"), Vec::new());
    let lend = &mut |work: &mut dyn FnMut(&Store)| {
        work(&store);
        true
    };
    let backed = begun.make(&backup, lend, &mut |thousandths| far.push(thousandths)).unwrap();
    assert_eq!((backed.entries, backed.births), (10, 2));
    assert!(far.is_sorted() && far.iter().all(|far| *far <= 1000) && far.last().is_some_and(|far| *far > 900), "{far:?}");
}

#[test]
fn a_birth_that_is_erased_while_it_is_made_is_not_in_it() {
    let founded = Founded::new();
    let mut store = founded.open();
    let (gone, kept) = two_births(&mut store);
    let before = numbers(&store, kept);
    let begun = store.begin_backup(&stamp(MADE)).unwrap();
    write(&mut store, kept, 1);
    store.erase(gone).unwrap();
    let (backup, mut far) = (founded.file("backup.tar"), Vec::new());
    let lend = &mut |work: &mut dyn FnMut(&Store)| {
        work(&store);
        true
    };
    let backed = begun.make(&backup, lend, &mut |thousandths| far.push(thousandths)).unwrap();
    store.close().unwrap();
    // The erased birth's places were told before: it is begun anew, and has what remains of it.
    assert_eq!((backed.entries, backed.births), (11, 1));
    assert!(far.iter().all(|far| *far <= 1000) && far.last().is_some_and(|far| *far > 900), "{far:?}");
    let (store, restored) = Store::restore(&founded.file("other"), &backup, founded.recovery.clone()).unwrap();
    assert_eq!((restored.births, restored.refused), (1, vec![]));
    assert_eq!((&numbers(&store, kept)[..before.len()], numbers(&store, gone)), (&before[..], vec![]));
}

#[test]
fn one_whose_store_was_closed_meanwhile_is_not_there() {
    let founded = Founded::new();
    let mut store = founded.open();
    two_births(&mut store);
    for open in 0..3 {
        let (backup, mut asked) = (founded.file("backup.tar"), 0);
        let lend = &mut |work: &mut dyn FnMut(&Store)| {
            asked += 1;
            let lent = asked <= open;
            if lent {
                work(&store);
            }
            lent
        };
        let made = store.begin_backup(&stamp(MADE)).unwrap().make(&backup, lend, &mut |_| {});
        assert!(made.is_err() || open == 2, "it asks once for the entries, and once more at its end");
        if let Err(error) = made {
            assert!(matches!(error, StoreError::Closed), "{error}");
            assert!(!backup.exists() && !founded.file("backup.tar.unfinished").exists());
        }
    }
}
