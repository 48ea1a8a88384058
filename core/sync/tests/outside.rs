//! What another program makes of it: Debian's `age` opens the file of an epoch by a phone's own identity and by the sheet,
//! and a picture, as it lies in the bucket, by the key of its practice on the phone that took it.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test")]

mod common;

use std::io::Write;
use std::process::{Command, Stdio};

use common::{Mem, Phone, START_MS, folder, practice};

/// What it makes of it; none where it does not open it.
fn age(arguments: &[&str], sealed: &[u8]) -> Option<Vec<u8>> {
    let begun = Command::new("age").args(arguments).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn();
    let mut child = begun.unwrap();
    child.stdin.take().unwrap().write_all(sealed).unwrap();
    let out = child.wait_with_output().unwrap();
    out.status.success().then_some(out.stdout)
}

#[test]
fn debians_age_opens_an_epoch_and_finds_its_key() {
    let root = folder();
    let mut phones: Vec<Phone> = (0..2).map(|n| Phone::new(root.path(), n, 0)).collect();
    let sheet = practice(&mut phones, START_MS);
    let bucket = Mem::new(1);
    for phone in &mut phones {
        phone.round(&bucket, START_MS).1.unwrap();
    }
    let me: ciborium::Value = ciborium::from_reader(phones[1].store().noted("me", &[]).unwrap().unwrap().as_slice()).unwrap();
    let kem =
        me.as_map().unwrap().iter().find(|(name, _)| name.as_text() == Some("kem")).unwrap().1.as_text().unwrap().to_owned();
    let key = phones[1].store().all_noted("epoch").unwrap()[0].1.clone();
    let key: ciborium::Value = ciborium::from_reader(key.as_slice()).unwrap();
    let key = key.as_map().unwrap().iter().find(|(name, _)| name.as_text() == Some("key")).unwrap().1.as_bytes().unwrap().clone();
    let state = bucket.state.lock().unwrap();
    // The first was sealed before the second phone came.
    let epochs: Vec<&Vec<u8>> =
        state.objects.iter().filter(|(name, _)| name.contains("/epoch/")).map(|(_, sealed)| sealed).collect();
    for identity in [kem, sheet] {
        let file = root.path().join("identity");
        std::fs::write(&file, identity).unwrap();
        let mut opened = epochs.iter().filter_map(|sealed| age(&["-d", "-i", file.to_str().unwrap()], sealed));
        assert!(opened.any(|plain| plain.windows(32).any(|part| part == key.as_slice())));
    }
}
