//! Any chart, written and read back. `PROPTEST_CASES` sets how many are tried.

#[path = "../../../domain/tests/common/mod.rs"]
mod common;

use std::collections::BTreeMap;

use common::{BIRTH, arbitrary};
use proptest::prelude::*;
use secundine_domain::chart::fold;
use secundine_domain::entry::{Entry, EntryId};
use secundine_domain::fact::Fact;
use secundine_domain::time::Stamp;

use super::*;
use crate::chain::{Bound, DeviceKey};

const MADE: Stamp = Stamp { wall_ms: common::START, offset_min: 60, zone: None, boot: None };

/// The entries as their devices would have written them: with the ids that their keys vouch for, and with entries of another
/// birth at the numbers between.
fn as_written(entries: &[Entry], keys: &BTreeMap<DeviceId, DeviceKey>) -> Vec<Entry> {
    let named = |id: EntryId| EntryId { device: keys.get(&id.device).map_or(id.device, DeviceKey::id), ..id };
    let renamed = |entry: &Entry| {
        let mut entry = Entry { id: named(entry.id), birth: BirthId(named(entry.birth.0)), ..entry.clone() };
        entry.amends.iter_mut().for_each(|amends| amends.entry = named(amends.entry));
        // What is not known is written as it came: a second reading finds it as it is.
        Entry::decode(&entry.encode().unwrap()).unwrap()
    };
    let mut written: BTreeMap<EntryId, Entry> = entries.iter().map(renamed).map(|entry| (entry.id, entry)).collect();
    for key in keys.values() {
        let last = written.keys().filter(|id| id.device == key.id()).map(|id| id.n).max().unwrap_or(0);
        for id in (1..last).map(|n| EntryId { device: key.id(), n }) {
            written.entry(id).or_insert_with(|| Entry {
                id,
                birth: BirthId::PRACTICE,
                author: String::new(),
                occurred: secundine_domain::time::Occurred::Marked(MADE),
                recorded: MADE,
                fact: Fact::ConcernMarked,
                amends: None,
            });
        }
    }
    written.into_values().collect()
}

/// The extract of a birth from all that the devices wrote, as a store makes it.
fn extract(birth: BirthId, entries: &[Entry], keys: &BTreeMap<DeviceId, DeviceKey>) -> Vec<u8> {
    let mut kept = Vec::new();
    for (device, own) in keys.values().map(|key| (key.id(), key)) {
        let of_device: Vec<Entry> = entries.iter().filter(|entry| entry.id.device == device).cloned().collect();
        let mut before = None;
        for Bound { birth: of, body, at, seal, .. } in own.bind(Position::START, &of_device).unwrap() {
            let gap = kept.last().is_none_or(|(last, _): &(Carried, _)| (last.device, last.n + 1) != (device, at.n));
            if of == birth_key(birth) {
                let before = before.filter(|_| gap);
                kept.push((Carried::whole(device, at.n, of, body, at.link, seal), before));
            }
            before = Some(at.link);
        }
    }
    kept.sort_by_key(|(entry, _)| (entry.device, entry.n));
    let devices: Vec<_> = keys.values().map(DeviceKey::public).collect();
    write(Vec::new(), &Header::of_birth(birth, &MADE, DeviceId([1; 16]), kept.len() as u64), &devices, kept).unwrap()
}

fn keys() -> BTreeMap<DeviceId, DeviceKey> {
    [1, 2, 3].map(|device| (DeviceId([device; 16]), DeviceKey::random().unwrap())).into()
}

proptest! {
    #[test]
    fn a_chart_written_and_read_is_the_same_chart(entries in arbitrary::entries()) {
        let keys = keys();
        let written = as_written(&entries, &keys);
        let birth = BirthId(EntryId { device: keys[&BIRTH.0.device].id(), n: BIRTH.0.n });
        let ours: Vec<&Entry> = written.iter().filter(|entry| entry.birth == birth).collect();
        prop_assume!(!ours.is_empty());
        let file = extract(birth, &written, &keys);
        let read = Extract::read(file.as_slice()).unwrap();
        prop_assert_eq!(&read.misfit, &None);
        let back: Vec<&Entry> = read.births.values().flatten().map(|stored| &stored.entry).collect();
        prop_assert_eq!(&back, &ours);
        prop_assert_eq!(fold(birth, back), fold(birth, ours));
    }
}

/// One device, its own birth with an entry of the practice between.
fn small() -> (Vec<u8>, BirthId) {
    let key = DeviceKey::random().unwrap();
    let birth = BirthId(EntryId { device: key.id(), n: 2 });
    let entry = |n, birth, fact| Entry {
        id: EntryId { device: key.id(), n },
        birth,
        author: "Ida".to_owned(),
        occurred: secundine_domain::time::Occurred::Marked(MADE),
        recorded: MADE,
        fact,
        amends: None,
    };
    let note = |text: &str| Fact::Noted { text: text.to_owned() };
    let entries = [
        entry(1, BirthId::PRACTICE, note("ours")),
        entry(2, birth, Fact::BirthRegistered { label: "Rosa".to_owned(), rehearsal: false }),
        entry(3, birth, note("calm")),
        entry(4, BirthId::PRACTICE, note("ours too")),
        entry(5, birth, note("warm")),
    ];
    (extract(birth, &entries, &[(key.id(), key)].into()), birth)
}

/// With another end, as somebody makes it who has altered a line.
fn ended(lines: &[String]) -> Vec<u8> {
    use sha2::{Digest, Sha256};
    let text: String = lines.iter().map(|line| format!("{line}\n")).collect();
    format!("{text}{{\"end\":\"{}\"}}\n", hex::encode(Sha256::digest(&text))).into_bytes()
}

fn altered(change: impl Fn(&mut Vec<String>)) -> Result<Extract, StoreError> {
    let mut lines: Vec<String> = String::from_utf8(small().0).unwrap().lines().map(str::to_owned).collect();
    lines.pop();
    change(&mut lines);
    Extract::read(ended(&lines).as_slice())
}

#[test]
fn an_extract_has_one_birth_and_proves_each_entry_over_its_gaps() {
    let (file, birth) = small();
    let text = String::from_utf8(file.clone()).unwrap();
    assert!(!text.contains("ours") && text.matches("\"before\"").count() == 2, "{text}");
    let read = Extract::read(file.as_slice()).unwrap();
    assert_eq!((read.birth, read.entries(), read.devices, read.misfit), (Some(birth), 3, 1, None));
}

#[test]
fn what_was_altered_in_an_extract_is_named() {
    let kind = |read: Extract| match read.misfit {
        Some(Misfit::Entry { n, kind, .. }) => (n, kind),
        other => unreachable!("{other:?}"),
    };
    let words = altered(|lines| lines[3] = lines[3].replace("calm", "loud")).unwrap();
    assert_eq!(words.entries(), 2, "it is not among those that fit");
    assert_eq!(kind(words), (3, MisfitKind::Changed));
    let without = altered(|lines| {
        let at = lines[4].find(",\"before\"").unwrap();
        lines[4].replace_range(at..at + 76, "");
    });
    assert_eq!(kind(without.unwrap()), (4, MisfitKind::Missing), "without the link before it nothing is proved");
    let zeros = altered(|lines| {
        let at = lines[4].find("\"before\"").unwrap() + 10;
        lines[4].replace_range(at..at + 64, &"0".repeat(64));
    });
    assert_eq!(kind(zeros.unwrap()), (5, MisfitKind::Changed));
    let shorter = altered(|lines| drop(lines.remove(4)));
    assert!(matches!(shorter, Err(StoreError::DamagedBackup(_))), "the header counts them");
    let other = altered(|lines| lines[0] = lines[0].replace("-2\"", "-3\""));
    assert!(matches!(other, Err(StoreError::DamagedBackup(_))), "the entries are of the birth that the header names");
    let cut = small().0;
    assert!(matches!(Extract::read(&cut[..cut.len() - 1]), Err(StoreError::DamagedBackup(_))));
}
