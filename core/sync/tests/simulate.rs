//! Practices of two to fifty phones over a bucket that drops, delays, doubles and reorders, with phones that die in the
//! middle and clocks a day apart: in the end all have the same charts, and nothing has vanished.
//!
//! `SECUNDINE_SEEDS=1000` tries more; `SECUNDINE_SEED=17` plays one again.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::print_stdout, clippy::panic, reason = "a test")]

mod common;

use std::collections::BTreeSet;

use common::{Dice, Mem, Phone, START_MS, Weather, folder, practice};
use secundine_sync::SyncError;

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
    let (mut phones, mut entries) = (0, 0);
    let seeds = seeds();
    for seed in &seeds {
        let (of_phones, of_entries) = play(*seed);
        phones += of_phones;
        entries += of_entries;
    }
    println!("{} seeds, {phones} phones, {entries} entries", seeds.len());
}

fn play(seed: u64) -> (usize, usize) {
    let mut dice = Dice::new(seed);
    let root = folder();
    let many = if seed.is_multiple_of(100) { 50 } else { 2 + dice.below(5) };
    let skew = |dice: &mut Dice| dice.below(2 * DAY_MS as usize) as i64 - DAY_MS;
    let mut phones: Vec<Phone> = (0..many).map(|n| Phone::new(root.path(), n, skew(&mut dice))).collect();
    let bucket = Mem::new(seed);
    bucket.state.lock().unwrap().delays = true;
    let mut now_ms = START_MS;
    practice(&mut phones, now_ms);
    for step in 0..20 + 8 * many {
        now_ms += dice.below(3 * 3_600_000) as i64;
        let phone = &mut phones[dice.below(many)];
        match dice.below(5) {
            0 | 1 => {
                let known = (!phone.births.is_empty() && !dice.one_in(3)).then(|| phone.births[dice.below(phone.births.len())]);
                for k in 0..=dice.below(4) {
                    let birth = if k == 0 { known } else { phone.births.last().copied() };
                    phone.write(birth, &format!("seed {seed}, step {step}, {k}"), now_ms);
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
    for last in 0..3 {
        for phone in &mut phones {
            let (report, done) = phone.round(&bucket, now_ms);
            done.unwrap_or_else(|error| panic!("seed {seed}: {error:?}"));
            assert!(last < 2 || report.troubles.is_empty(), "seed {seed}: {:?}", report.troubles);
        }
    }
    let written: BTreeSet<_> = phones.iter().flat_map(|phone| phone.written.iter().copied()).collect();
    let versions = phones[0].versions();
    for phone in &mut phones {
        assert!(phone.entries().is_superset(&written), "seed {seed}: entries vanished on {}", phone.label);
        assert_eq!(phone.versions(), versions, "seed {seed}: {}", phone.label);
        assert!(phone.store().verify().unwrap().misfit.is_none(), "seed {seed}: {}", phone.label);
    }
    (many, written.len())
}
