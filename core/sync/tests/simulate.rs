//! Practices of two to fifty phones over a bucket that drops, delays, doubles and reorders, with phones that die in the
//! middle, join later, ask that a birth be erased, and with clocks a day apart: in the end all have the same charts, and nothing
//! has vanished but the births that two asked to erase.
//!
//! `SECUNDINE_SEEDS=1000` tries more; `SECUNDINE_SEED=17` plays one again.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::print_stdout, clippy::panic, reason = "a test")]

mod common;

use std::collections::{BTreeMap, BTreeSet};

use common::{Dice, Mem, Phone, START_MS, Weather, folder, practice, welcome};
use secundine_domain::entry::{BirthId, EntryId};
use secundine_sync::{Role, SyncError, ask_erasure};

const DAY_MS: i64 = 86_400_000;

fn seeds() -> Vec<u64> {
    if let Ok(seed) = std::env::var("SECUNDINE_SEED") {
        return vec![seed.parse().unwrap()];
    }
    let many: u64 = std::env::var("SECUNDINE_SEEDS").ok().and_then(|many| many.parse().ok()).unwrap_or(8);
    (1..=many).collect()
}

#[test]
fn all_come_to_the_same_charts_and_nothing_vanishes() {
    let (mut phones, mut entries, mut erased) = (0, 0, 0);
    let seeds = seeds();
    for seed in &seeds {
        let (of_phones, of_entries, of_erased) = play(*seed);
        phones += of_phones;
        entries += of_entries;
        erased += of_erased;
    }
    println!("{} seeds, {phones} phones, {entries} entries, {erased} births erased", seeds.len());
}

fn play(seed: u64) -> (usize, usize, usize) {
    let mut dice = Dice::new(seed);
    let root = folder();
    let many = if seed.is_multiple_of(100) { 50 } else { 2 + dice.below(5) };
    let skew = |dice: &mut Dice| dice.below(2 * DAY_MS as usize) as i64 - DAY_MS;
    let mut phones: Vec<Phone> = (0..many).map(|n| Phone::new(root.path(), n, skew(&mut dice))).collect();
    let bucket = Mem::new(seed);
    bucket.state.lock().unwrap().delays = true;
    let mut now_ms = START_MS;
    practice(&mut phones, now_ms);
    let mut written: BTreeMap<EntryId, BirthId> = BTreeMap::new();
    let mut asked: BTreeMap<BirthId, BTreeSet<usize>> = BTreeMap::new();
    for step in 0..20 + 8 * many {
        now_ms += dice.below(3 * 3_600_000) as i64;
        if dice.one_in(25) {
            let mut new = Phone::new(root.path(), phones.len(), skew(&mut dice));
            welcome(&mut phones[0], &mut new, Role::Member, now_ms);
            phones.push(new);
        }
        let at = dice.below(phones.len());
        let phone = &mut phones[at];
        match dice.below(8) {
            5.. if !phone.births.is_empty() => {
                // One that somebody has asked for already, so that two often ask for the same.
                let wanted =
                    phone.births.iter().find(|birth| asked.get(birth).is_some_and(|by| by.len() == 1 && !by.contains(&at)));
                let birth = *wanted.unwrap_or(&phone.births[dice.below(phone.births.len())]);
                match ask_erasure(phone.store(), birth, now_ms) {
                    Ok(_) => drop(asked.entry(birth).or_default().insert(at)),
                    // It has joined, and nothing has told it so yet.
                    Err(error) => assert!(matches!(error, SyncError::NotMember), "seed {seed}: {error:?}"),
                }
            }
            0 | 1 => {
                let known = (!phone.births.is_empty() && !dice.one_in(3)).then(|| phone.births[dice.below(phone.births.len())]);
                for k in 0..=dice.below(4) {
                    let birth = if k == 0 { known } else { phone.births.last().copied() };
                    let id = phone.write(birth, &format!("seed {seed}, step {step}, {k}"), now_ms);
                    written.insert(id, birth.unwrap_or(BirthId(id)));
                }
            }
            2 => {
                let weather = Weather { dies_after: Some(dice.below(12)), ..Weather::default() };
                bucket.set(weather);
                let (_, done) = phone.round(&bucket, now_ms);
                assert!(matches!(done, Ok(()) | Err(SyncError::Bucket(_))), "seed {seed}: {done:?}");
                phone.restart();
            }
            _ => {
                bucket.set(Weather { lost: 8, unanswered: 8, dies_after: None });
                let (_, done) = phone.round(&bucket, now_ms);
                assert!(matches!(done, Ok(()) | Err(SyncError::Bucket(_))), "seed {seed}: {done:?}");
            }
        }
    }
    bucket.set(Weather::default());
    bucket.state.lock().unwrap().delays = false;
    bucket.state.lock().unwrap().hidden.clear();
    for pass in 0..5 {
        for phone in &mut phones {
            let (report, done) = phone.round(&bucket, now_ms);
            done.unwrap_or_else(|error| panic!("seed {seed}: {error:?}"));
            assert!(pass < 4 || report.troubles.is_empty(), "seed {seed}: {:?}", report.troubles);
        }
        // Not every two met in that weather; now two ask, while some have read what the others have not.
        let known = phones[1].births.clone();
        if pass == 0 && !known.is_empty() {
            let birth = known[dice.below(known.len())];
            for at in [0, 1 + dice.below(phones.len() - 1)] {
                ask_erasure(phones[at].store(), birth, now_ms).unwrap();
                asked.entry(birth).or_default().insert(at);
            }
        }
    }
    let erased: BTreeSet<BirthId> = asked.into_iter().filter(|(_, by)| by.len() > 1).map(|(birth, _)| birth).collect();
    let kept: BTreeSet<EntryId> = written.iter().filter(|(_, birth)| !erased.contains(birth)).map(|(id, _)| *id).collect();
    let versions = phones[0].versions();
    for phone in &mut phones {
        assert!(phone.entries().is_superset(&kept), "seed {seed}: entries vanished on {}", phone.label);
        assert_eq!(phone.versions(), versions, "seed {seed}: {}", phone.label);
        for birth in &erased {
            assert!(phone.store().entries(*birth).unwrap().is_empty(), "seed {seed}: {birth:?} is still on {}", phone.label);
        }
        let misfit = phone.store().verify().unwrap().misfit;
        assert!(misfit.is_none(), "seed {seed}: {}: {misfit:?}", phone.label);
    }
    (phones.len(), written.len(), erased.len())
}
