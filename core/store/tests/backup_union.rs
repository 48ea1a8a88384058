//! A backup that is restored merges as a union, whatever the histories, in any order, as often as one likes.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use common::backups::back_up;
use common::{Founded, write};
use proptest::prelude::*;
use secundine_domain::entry::{BirthId, EntryId};
use secundine_store::{Passphrase, Store};
use tempfile::TempDir;

/// How many devices the practice has.
const DEVICES: usize = 3;

/// What happens to the devices.
#[derive(Clone, Debug)]
enum Step {
    /// One writes so many entries, into a birth of its own or of the last one that wrote.
    Write { device: usize, count: usize, own: bool },
    /// One gets the backup of another.
    Bring { from: usize, to: usize },
}

fn step() -> impl Strategy<Value = Step> {
    prop_oneof![
        (0..DEVICES, 1..4_usize, any::<bool>()).prop_map(|(device, count, own)| Step::Write { device, count, own }),
        (0..DEVICES, 0..DEVICES).prop_map(|(from, to)| Step::Bring { from, to }),
    ]
}

/// What a store has: the digest of each entry.
type Content = BTreeMap<EntryId, (BirthId, [u8; 32])>;

fn content(store: &Store) -> Content {
    let births = store.births().unwrap().into_iter().map(|birth| birth.id).chain([BirthId::PRACTICE]);
    let entries = births.flat_map(|birth| store.entries(birth).unwrap());
    entries.map(|stored| (stored.entry.id, (stored.entry.birth, stored.digest))).collect()
}

fn union(one: &Content, other: &Content) -> Content {
    one.iter().chain(other).map(|(id, held)| (*id, *held)).collect()
}

struct World {
    folder: TempDir,
    stores: Vec<Store>,
    backups: usize,
    recovery: Passphrase,
}

impl World {
    /// Each device was restored from one backup of the first practice.
    fn new(founded: &Founded, first: &Path) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let restored = |n: usize| Store::restore(&folder.path().join(n.to_string()), first, founded.recovery.clone());
        let stores = (0..DEVICES).map(|n| restored(n).unwrap().0).collect();
        Self { folder, stores, backups: 0, recovery: founded.recovery.clone() }
    }

    fn back_up(&mut self, device: usize) -> PathBuf {
        self.backups += 1;
        back_up(&self.stores[device], &self.folder.path().join(format!("{}.tar", self.backups)))
    }

    fn restore(&mut self, backup: &Path) -> Store {
        self.backups += 1;
        Store::restore(&self.folder.path().join(format!("r{}", self.backups)), backup, self.recovery.clone()).unwrap().0
    }
}

fn add(store: &mut Store, backup: &Path) -> u64 {
    let restored = store.add_backup(backup).unwrap();
    assert!(restored.refused.is_empty() && !restored.renewed, "{restored:?}");
    assert_eq!(store.verify().unwrap().misfit, None);
    restored.added
}

fn play(steps: &[Step], founded: &Founded, first: &Path) {
    let mut world = World::new(founded, first);
    let mut latest = None;
    for step in steps {
        match *step {
            Step::Write { device, count, own } => {
                let store = &mut world.stores[device];
                let birth = latest.filter(|_| !own).unwrap_or(BirthId(store.next_id()));
                write(store, birth, count);
                latest = Some(birth);
            }
            Step::Bring { from, to } if from != to => {
                let backup = world.back_up(from);
                let expected = union(&content(&world.stores[from]), &content(&world.stores[to]));
                add(&mut world.stores[to], &backup);
                assert_eq!(content(&world.stores[to]), expected);
            }
            Step::Bring { .. } => {}
        }
    }
    // All three backups into new stores, in both orders, and each once more.
    let backups: Vec<PathBuf> = (0..DEVICES).map(|device| world.back_up(device)).collect();
    let all = world.stores.iter().map(content).fold(Content::new(), |all, one| union(&all, &one));
    for order in [[0, 1, 2], [2, 1, 0]] {
        let mut store = world.restore(&backups[order[0]]);
        assert_eq!(content(&store), content(&world.stores[order[0]]));
        for device in &order[1..] {
            add(&mut store, &backups[*device]);
        }
        assert_eq!(content(&store), all);
        let again: u64 = order.iter().map(|device| add(&mut store, &backups[*device])).sum();
        assert_eq!((again, content(&store)), (0, all.clone()));
    }
}

#[test]
fn backups_merge_as_a_union_in_any_order_and_once_is_enough() {
    let (founded, _) = Founded::with_birth(2);
    let first = founded.back_up("first.tar");
    let config = ProptestConfig { cases: 12, failure_persistence: None, max_shrink_iters: 200, ..ProptestConfig::default() };
    let law = |steps: Vec<Step>| {
        play(&steps, &founded, &first);
        Ok(())
    };
    proptest::test_runner::TestRunner::new(config).run(&prop::collection::vec(step(), 1..10), law).unwrap();
}
