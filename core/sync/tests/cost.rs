//! What a round costs: with what is new, not with what is there; and a new phone reads snapshots, not every segment.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::print_stdout, reason = "a test")]

mod common;

use std::collections::BTreeMap;

use common::{Mem, Phone, START_MS, folder, practice, welcome};
use secundine_domain::entry::BirthId;
use secundine_sync::Role;

/// Calls and bytes of one round.
fn cost(phone: &mut Phone, bucket: &Mem, now_ms: i64) -> (usize, usize) {
    let before = {
        let state = bucket.state.lock().unwrap();
        (state.calls, state.bytes)
    };
    phone.round(bucket, now_ms).1.unwrap();
    let state = bucket.state.lock().unwrap();
    (state.calls - before.0, state.bytes - before.1)
}

#[test]
fn a_daily_round_costs_with_what_is_new() {
    let root = folder();
    let mut phones: Vec<Phone> = (0..3).map(|n| Phone::new(root.path(), n, 0)).collect();
    practice(&mut phones, START_MS);
    let bucket = Mem::new(1);
    let mut costs = BTreeMap::new();
    let mut now_ms = START_MS;
    let mut days = 0;
    for upto in [2, 12, 72] {
        while days < upto {
            days += 1;
            now_ms += 86_400_000;
            for phone in &mut phones[..2] {
                let birth = BirthId(phone.write(None, "birth", now_ms));
                for _ in 0..3 {
                    phone.write(Some(birth), "note", now_ms);
                }
                phone.round(&bucket, now_ms).1.unwrap();
            }
            if days < upto {
                phones[2].round(&bucket, now_ms).1.unwrap();
            }
        }
        costs.insert(upto, cost(&mut phones[2], &bucket, now_ms));
    }
    println!("days of two phones: (calls, bytes) of a third's next round: {costs:?}");
    // It gives a segment of its own, too, so a snapshot may go with it; nothing else depends on how much there is.
    let (first, last) = (costs[&2], costs[&72]);
    assert!(last.0 <= first.0 + 4, "{costs:?}");
    // What a keyring part holds is fetched anew with each birth: 256 keys of 56 bytes at most, from each phone.
    assert!(last.1 <= first.1 + 2 * (256 * 90 + 4096), "{costs:?}");
}

#[test]
fn a_new_phone_reads_snapshots() {
    let root = folder();
    let mut phones: Vec<Phone> = (0..2).map(|n| Phone::new(root.path(), n, 0)).collect();
    practice(&mut phones, START_MS);
    let bucket = Mem::new(1);
    let mut now_ms = START_MS;
    let birth = BirthId(phones[0].write(None, "birth", now_ms));
    for n in 0..150 {
        now_ms += 60_000;
        phones[0].write(Some(birth), &format!("note {n}"), now_ms);
        phones[0].round(&bucket, now_ms).1.unwrap();
    }
    let segments = bucket.state.lock().unwrap().objects.keys().filter(|name| name.contains("/device/")).count();
    let mut new = Phone::new(root.path(), 2, 0);
    welcome(&mut phones[0], &mut new, Role::Member, now_ms);
    phones[0].round(&bucket, now_ms).1.unwrap();
    let before = bucket.state.lock().unwrap().gets;
    new.round(&bucket, now_ms).1.unwrap();
    let gets = bucket.state.lock().unwrap().gets - before;
    assert_eq!(new.versions(), phones[0].versions());
    println!("{segments} segments, {gets} objects fetched");
    assert!(gets < segments / 2, "{gets} of {segments}");
    // A snapshot that cannot be used is no loss: it reads the segments.
    for (name, bytes) in &mut bucket.state.lock().unwrap().objects {
        if name.contains("/snapshot/") {
            let middle = bytes.len() / 2;
            bytes[middle] ^= 1;
        }
    }
    let mut other = Phone::new(root.path(), 3, 0);
    welcome(&mut phones[0], &mut other, Role::Member, now_ms);
    phones[0].round(&bucket, now_ms).1.unwrap();
    let (report, done) = other.round(&bucket, now_ms);
    done.unwrap();
    assert!(!report.troubles.is_empty());
    assert_eq!(other.versions(), phones[0].versions());
    assert_eq!(other.store().verify().unwrap().misfit, None);
}
