//! Five phones over real stores: a folder, and a store that speaks S3 and heeds conditions; in the soak a cluster of Garage, of
//! which a node is killed and brought back. Every entry that a phone was told is given is on all of them in the end.
//!
//! `SECUNDINE_TURNS=300 make soak-garage` plays longer.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::print_stdout, clippy::panic, reason = "a test")]

mod buckets_servers;
mod cluster;
mod common;

use std::collections::BTreeSet;
use std::fs;
use std::time::{Duration, Instant};

use buckets_servers::{SECRET, s3, s3_over};
use cluster::Cluster;
use common::{Dice, Phone, START_MS, folder, practice};
use secundine_domain::entry::EntryId;
use secundine_sync::{Bucket, Place, SyncError, open};

const PHONES: usize = 5;

/// What befalls the store, by the turn.
type Fate<'a> = &'a mut dyn FnMut(usize);

/// Phones write and meet the store in turns that a seed gives; some are cut off from it for a while.
fn play(buckets: &[Box<dyn Bucket>], turns: usize, seed: u64, fate: Fate<'_>) {
    let mut dice = Dice::new(seed);
    let root = folder();
    let mut phones: Vec<Phone> = (0..PHONES).map(|n| Phone::new(root.path(), n, 0)).collect();
    practice(&mut phones, START_MS);
    let mut cut_off = [0; PHONES];
    let mut acknowledged: BTreeSet<EntryId> = BTreeSet::new();
    let (mut now_ms, mut failed) = (START_MS, 0);
    let begun = Instant::now();
    for turn in 0..turns {
        fate(turn);
        now_ms += 3_600_000;
        let n = dice.below(PHONES);
        if dice.one_in(6) {
            cut_off[n] = dice.below(10);
        }
        let phone = &mut phones[n];
        let birth = (!phone.births.is_empty() && !dice.one_in(3)).then(|| phone.births[dice.below(phone.births.len())]);
        phone.write(birth, &format!("turn {turn}"), now_ms);
        if cut_off[n] > 0 {
            cut_off[n] -= 1;
            continue;
        }
        let (report, done) = phone.round(&*buckets[dice.below(buckets.len())], now_ms);
        match done {
            Ok(()) => assert!(report.troubles.is_empty(), "turn {turn}: {:?}", report.troubles),
            Err(SyncError::Bucket(_)) => failed += 1,
            Err(other) => panic!("turn {turn}: {other:?}"),
        }
        if secundine_sync::waiting(phone.store()).unwrap() == 0 {
            acknowledged.extend(&phone.written);
        }
    }
    for k in 0..3 * PHONES {
        let phone = &mut phones[k % PHONES];
        let started = Instant::now();
        while let (_, Err(error)) = phone.round(&*buckets[0], now_ms) {
            assert!(started.elapsed() < Duration::from_secs(120), "{error:?}");
            std::thread::sleep(Duration::from_millis(500));
        }
    }
    let versions = phones[0].versions();
    let written: BTreeSet<EntryId> = phones.iter().flat_map(|phone| phone.written.iter().copied()).collect();
    assert!(acknowledged.is_subset(&written) && !acknowledged.is_empty());
    for phone in &mut phones {
        let there = phone.entries();
        assert!(there.is_superset(&acknowledged), "{} lacks what was acknowledged", phone.label);
        assert!(there.is_superset(&written), "{} lacks what was written", phone.label);
        assert_eq!(phone.versions(), versions, "{}", phone.label);
    }
    println!(
        "{turns} turns, {} entries, {} acknowledged before the end, {failed} rounds that failed, {:.0} s",
        written.len(),
        acknowledged.len(),
        begun.elapsed().as_secs_f64()
    );
}

fn turns(fewest: usize) -> usize {
    std::env::var("SECUNDINE_TURNS").ok().and_then(|many| many.parse().ok()).unwrap_or(fewest)
}

#[test]
fn five_phones_over_a_folder() {
    let place = folder();
    let bucket = open(&Place::Folder { path: place.path().to_owned() }).unwrap();
    play(&[bucket], turns(30), 1, &mut |_| ());
}

#[test]
fn five_phones_over_a_store_that_heeds_conditions() {
    let place = folder();
    fs::create_dir(place.path().join("practice")).unwrap();
    let bucket = s3(&s3_over(place.path()), "practice", SECRET);
    play(&[bucket], turns(30), 2, &mut |_| ());
}

#[test]
#[ignore = "Garage takes a quarter of an hour to build: `make soak-garage`"]
fn five_phones_over_a_cluster_of_which_a_node_is_killed_and_brought_back() {
    let mut cluster = Cluster::start();
    let buckets: Vec<Box<dyn Bucket>> = (1..=3).map(|node| cluster.node(node)).collect();
    let turns = turns(120);
    play(&buckets, turns, 3, &mut |turn| {
        if turn == turns / 4 {
            cluster.order("kill 2");
        }
        if turn == turns / 2 {
            cluster.order("start 2");
        }
        if turn == turns * 5 / 8 {
            cluster.order("kill 1");
            cluster.order("kill 3");
        }
        if turn == turns * 3 / 4 {
            cluster.order("start 1");
            cluster.order("start 3");
        }
    });
}
