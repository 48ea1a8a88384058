//! Who comes, who goes, and what they can read.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "a test")]

mod common;

use common::{Mem, Phone, START_MS, folder, practice, welcome};
use secundine_domain::entry::BirthId;
use secundine_store::StoreError;
use secundine_sync::{
    Alone, Card, Role, SyncError, Trouble, accept, admit, ask_erasure, fetch_file, join, recover, remove, roster, set_role,
};

fn three() -> (tempfile::TempDir, Vec<Phone>, Mem, String) {
    let root = folder();
    let mut phones: Vec<Phone> = (0..3).map(|n| Phone::new(root.path(), n, 0)).collect();
    let sheet = practice(&mut phones, START_MS);
    (root, phones, Mem::new(1), sheet)
}

fn settle(phones: &mut [Phone], bucket: &Mem, now_ms: i64) {
    for _ in 0..3 {
        for phone in phones.iter_mut() {
            phone.round(bucket, now_ms).1.unwrap();
        }
    }
}

#[test]
fn a_removed_phone_learns_that_it_was_and_opens_nothing_written_after() {
    let (_root, mut phones, bucket, _) = three();
    phones[0].write(None, "before", START_MS);
    settle(&mut phones, &bucket, START_MS);
    let gone = phones[2].id();
    remove(phones[0].store(), gone, START_MS + 1).unwrap();
    phones[0].write(None, "after", START_MS + 2);
    settle(&mut phones[..2], &bucket, START_MS + 3);
    let (report, done) = phones[2].round(&bucket, START_MS + 4);
    done.unwrap();
    assert!(report.removed);
    assert_eq!(phones[2].versions().len(), 1, "what it could read before, it still can");
    assert_eq!(phones[1].versions().len(), 2);
    // Even one that pays no heed has no key: every epoch's file since is closed to it, and so is what is sealed under it.
    let me: ciborium::Value = ciborium::from_reader(phones[2].store().noted("me", &[]).unwrap().unwrap().as_slice()).unwrap();
    let kem = me.as_map().unwrap().iter().find(|(name, _)| name.as_text() == Some("kem")).unwrap().1.as_text().unwrap();
    let kem: age::x25519::Identity = kem.parse().unwrap();
    let state = bucket.state.lock().unwrap();
    let first = state.objects.iter().filter(|(name, bytes)| name.contains("/epoch/000001-") && age::decrypt(&kem, bytes).is_ok());
    assert!(first.count() > 0, "it has the key of before");
    let epochs: Vec<_> = state.objects.iter().filter(|(name, _)| name.contains("/epoch/000002-")).collect();
    assert_eq!(epochs.len(), 1);
    assert!(age::decrypt(&kem, epochs[0].1).is_err());
}

#[test]
fn what_a_removed_phone_wrote_since_waits_for_a_lead_to_take_it_in() {
    let (_root, mut phones, bucket, _) = three();
    settle(&mut phones, &bucket, START_MS);
    let gone = phones[2].id();
    // Offline at a birth, while the others remove it. It learns of that only after it has given.
    phones[2].write(None, "charted offline", START_MS + 1);
    remove(phones[0].store(), gone, START_MS + 1).unwrap();
    phones[2].round(&bucket, START_MS + 2).1.unwrap();
    phones[0].round(&bucket, START_MS + 3).1.unwrap();
    let (report, done) = phones[1].round(&bucket, START_MS + 4);
    done.unwrap();
    let held = report.troubles.iter().find_map(|trouble| match trouble {
        Trouble::Held { device, seq, .. } if *device == gone => Some(*seq),
        _ => None,
    });
    assert!(phones[1].versions().is_empty(), "{:?}", report.troubles);
    let seq = held.unwrap();
    assert!(matches!(accept(phones[1].store(), gone, seq, START_MS + 5), Err(SyncError::NotLead)));
    accept(phones[0].store(), gone, seq, START_MS + 5).unwrap();
    settle(&mut phones[..2], &bucket, START_MS + 6);
    assert_eq!(phones[0].versions().len(), 1);
    assert_eq!(phones[0].versions(), phones[1].versions());
}

#[test]
fn a_removed_phone_comes_back_as_a_new_device_and_brings_what_it_wrote_since() {
    let (_root, mut phones, bucket, _) = three();
    phones[2].write(None, "before", START_MS);
    settle(&mut phones, &bucket, START_MS);
    let gone = phones[2].id();
    assert!(matches!(Card::of(phones[2].store(), "Midwife 2"), Err(SyncError::SharesAlready)));
    remove(phones[0].store(), gone, START_MS + 1).unwrap();
    settle(&mut phones, &bucket, START_MS + 2);
    phones[2].write(None, "since", START_MS + 3);
    let (first, rest) = phones.split_at_mut(2);
    welcome(&mut first[0], &mut rest[0], Role::Member, START_MS + 4);
    assert_ne!(phones[2].id(), gone);
    phones[2].write(None, "after", START_MS + 5);
    settle(&mut phones, &bucket, START_MS + 6);
    for phone in &mut phones {
        assert_eq!(phone.versions().len(), 3, "{}", phone.label);
        assert_eq!(phone.store().verify().unwrap().misfit, None, "{}", phone.label);
        phone.restart();
    }
    let (report, done) = phones[1].round(&bucket, START_MS + 7);
    done.unwrap();
    assert!(report.troubles.is_empty(), "{:?}", report.troubles);
}

#[test]
fn only_a_lead_lets_in_and_the_last_lead_stays() {
    let (root, mut phones, bucket, _) = three();
    settle(&mut phones, &bucket, START_MS);
    let mut other = Phone::new(root.path(), 7, 0);
    let card = Card::of(other.store(), "Other").unwrap();
    assert!(matches!(admit(phones[1].store(), &card, Role::Member, START_MS), Err(SyncError::NotLead)));
    let (first, second) = (phones[0].id(), phones[1].id());
    assert!(matches!(remove(phones[0].store(), first, START_MS), Err(SyncError::LastLead)));
    assert!(matches!(set_role(phones[0].store(), first, Role::Member, START_MS), Err(SyncError::LastLead)));
    set_role(phones[0].store(), second, Role::Lead, START_MS).unwrap();
    settle(&mut phones, &bucket, START_MS + 1);
    let sealed = admit(phones[1].store(), &card, Role::Student, START_MS + 2).unwrap();
    // A photograph of the welcome is of no use to another phone.
    let mut thief = Phone::new(root.path(), 8, 0);
    Card::of(thief.store(), "Thief").unwrap();
    assert!(matches!(join(thief.store(), &sealed), Err(SyncError::WrongCode)));
    join(other.store(), &sealed).unwrap();
    phones[1].round(&bucket, START_MS + 3).1.unwrap();
    other.round(&bucket, START_MS + 4).1.unwrap();
    let roster = roster(other.store.as_ref().unwrap()).unwrap();
    assert_eq!(roster.member(other.id()).unwrap().role, Role::Student);
    assert_eq!(roster.present().count(), 4);
    let thieves = Card::of(thief.store(), "Other").unwrap();
    assert_ne!(thieves.check(&sealed), card.check(&sealed), "the words that both say");
}

#[test]
fn two_leads_who_act_without_seeing_each_other_come_to_one_roster() {
    let (root, mut phones, bucket, _) = three();
    let (second, third) = (phones[1].id(), phones[2].id());
    set_role(phones[0].store(), second, Role::Lead, START_MS).unwrap();
    settle(&mut phones, &bucket, START_MS + 1);
    let mut others: Vec<Phone> = (3..5).map(|n| Phone::new(root.path(), n, 0)).collect();
    // One lets somebody in and removes the third; the other lets another in. Nobody is online.
    let (first, rest) = phones.split_at_mut(1);
    welcome(&mut first[0], &mut others[0], Role::Member, START_MS + 2);
    remove(first[0].store(), third, START_MS + 3).unwrap();
    welcome(&mut rest[0], &mut others[1], Role::Member, START_MS + 2);
    others[1].write(None, "by the second's guest", START_MS + 4);
    let mut all: Vec<Phone> = phones.drain(..2).chain(others).collect();
    settle(&mut all, &bucket, START_MS + 5);
    let rosters: Vec<_> = all.iter().map(|phone| roster(phone.store.as_ref().unwrap()).unwrap()).collect();
    assert!(rosters.windows(2).all(|two| two[0] == two[1]));
    assert_eq!(rosters[0].present().count(), 4);
    for phone in &mut all {
        let (report, done) = phone.round(&bucket, START_MS + 6);
        done.unwrap();
        assert!(report.troubles.is_empty(), "{}: {:?}", phone.label, report.troubles);
        assert_eq!(phone.versions().len(), 1, "{}", phone.label);
    }
}

#[test]
fn the_practice_comes_back_from_the_sheet_alone() {
    let (root, mut phones, bucket, sheet) = three();
    phones[0].write(None, "first", START_MS);
    phones[1].write(None, "second", START_MS);
    settle(&mut phones, &bucket, START_MS);
    let versions = phones[0].versions();
    drop(phones);
    let mut new = Phone::new(root.path(), 9, 0);
    let wrong = age::x25519::Identity::generate().to_string();
    let wrong = secundine_store::ExposeSecret::expose_secret(&wrong).to_owned();
    let refused = recover(&Alone::new(new.store()), &bucket, &wrong, "New", Vec::new(), START_MS);
    assert!(matches!(refused, Err(SyncError::NothingToRecover)));
    recover(&Alone::new(new.store()), &bucket, &sheet.to_lowercase(), "New", Vec::new(), START_MS + 1).unwrap();
    for k in 0..2 {
        new.round(&bucket, START_MS + 2 + k).1.unwrap();
    }
    assert_eq!(new.versions(), versions);
    // It is a lead: it can let others in again.
    let mut other = Phone::new(root.path(), 10, 0);
    welcome(&mut new, &mut other, Role::Member, START_MS + 5);
    let mut both = [new, other];
    settle(&mut both, &bucket, START_MS + 6);
    assert_eq!(both[1].versions(), versions);
}

#[test]
fn a_birth_that_two_want_erased_is_gone_everywhere_and_the_chains_still_hold() {
    let (root, mut phones, bucket, _) = three();
    let canary = "Canary of the birth that is erased";
    let first = phones[0].write(None, "erased", START_MS);
    let birth = BirthId(first);
    phones[0].write(Some(birth), canary, START_MS);
    phones[0].write(None, "kept", START_MS);
    settle(&mut phones, &bucket, START_MS);
    phones[1].write(Some(birth), canary, START_MS);
    settle(&mut phones, &bucket, START_MS + 1);
    ask_erasure(phones[0].store(), birth, START_MS + 2).unwrap();
    settle(&mut phones, &bucket, START_MS + 3);
    assert_eq!(phones[2].versions().len(), 2, "one alone erases nothing");
    // Nothing else is written with it: a segment of its own tells that there is an act.
    ask_erasure(phones[1].store(), birth, START_MS + 4).unwrap();
    settle(&mut phones, &bucket, START_MS + 5);
    for phone in &mut phones {
        assert_eq!(phone.versions().len(), 1, "{}", phone.label);
        assert!(phone.store().entries(birth).unwrap().is_empty());
        assert_eq!(phone.store().verify().unwrap().misfit, None, "{}", phone.label);
        phone.restart();
        phone.write(None, "goes on", START_MS + 6);
    }
    // Who joins now reads the same segments, and has no key to that birth.
    let mut new = Phone::new(root.path(), 11, 0);
    welcome(&mut phones[0], &mut new, Role::Member, START_MS + 7);
    // One of the two who asked is no lead: that she did is known only once her segments are read, after the lead's.
    phones[0].round(&bucket, START_MS + 8).1.unwrap();
    let (report, done) = new.round(&bucket, START_MS + 8);
    done.unwrap();
    assert!(report.troubles.is_empty(), "{:?}", report.troubles);
    phones.push(new);
    settle(&mut phones, &bucket, START_MS + 8);
    assert_eq!(phones[3].versions(), phones[0].versions());
    assert!(phones[3].store().entries(birth).unwrap().is_empty());
    assert_eq!(phones[3].store().verify().unwrap().misfit, None);
}

#[test]
fn a_copied_phone_is_found_out() {
    let (root, mut phones, bucket, _) = three();
    settle(&mut phones, &bucket, START_MS);
    phones[1].restart();
    let folder = phones[1].store().folder().to_owned();
    drop(phones[1].store.take());
    let copy = root.path().join("copy").join("phone-1");
    std::fs::create_dir_all(&copy).unwrap();
    for file in std::fs::read_dir(&folder).unwrap().map(Result::unwrap).filter(|file| file.path().is_file()) {
        std::fs::copy(file.path(), copy.join(file.file_name())).unwrap();
    }
    phones[1].restart();
    let mut twin = Phone::new(&root.path().join("copy"), 1, 0);
    assert_eq!(twin.id(), phones[1].id());
    phones[1].write(None, "the one", START_MS + 1);
    phones[1].round(&bucket, START_MS + 2).1.unwrap();
    twin.write(None, "the other", START_MS + 1);
    let (report, _) = twin.round(&bucket, START_MS + 3);
    assert!(report.troubles.iter().any(|one| matches!(one, Trouble::Forked { .. })), "{:?}", report.troubles);
    let (report, _) = phones[0].round(&bucket, START_MS + 4);
    assert!(report.troubles.iter().any(|one| matches!(one, Trouble::Forked { .. })), "{:?}", report.troubles);
}

#[test]
fn pictures_come_when_they_are_asked_for_and_open_with_the_key_that_came() {
    use secundine_domain::fact::Fact;
    let (_root, mut phones, bucket, _) = three();
    let picture: Vec<u8> = (0..2_500_000_u32).map(|n| (n % 251) as u8).collect();
    let file = phones[0].store().keep_file(&picture).unwrap();
    let birth = BirthId(phones[0].write(None, "with a picture", START_MS));
    let fact: Fact =
        serde_json::from_value(serde_json::json!({"kind": "voice_noted", "data": voice(&file.to_string())})).unwrap();
    let store = phones[0].store();
    let (id, mut entry) = (store.next_id(), store.entries(birth).unwrap()[0].entry.clone());
    (entry.id, entry.fact) = (id, fact);
    store.append(&entry).unwrap();
    settle(&mut phones, &bucket, START_MS);
    assert!(matches!(phones[1].store().open_file(file), Err(StoreError::NoFile)), "not before it is asked for");
    let mut parts = 0;
    let stopped = fetch_file(&Alone::new(phones[1].store()), &bucket, file, &mut |_| {
        parts += 1;
        parts < 2
    });
    assert!(matches!(stopped, Err(SyncError::Paused)));
    let before = bucket.state.lock().unwrap().bytes;
    fetch_file(&Alone::new(phones[1].store()), &bucket, file, &mut |_| true).unwrap();
    assert_eq!(phones[1].store().open_file(file).unwrap().as_slice(), picture.as_slice());
    assert!(bucket.state.lock().unwrap().bytes > before);
    // What was altered on the way is thrown away.
    for (name, bytes) in &mut bucket.state.lock().unwrap().objects {
        if name.contains("/file/") {
            bytes[1_000] ^= 1;
        }
    }
    let altered = fetch_file(&Alone::new(phones[2].store()), &bucket, file, &mut |_| true);
    assert!(matches!(altered, Err(SyncError::Store(StoreError::DamagedFile(_)))), "{altered:?}");
    assert!(matches!(phones[2].store().open_file(file), Err(StoreError::NoFile)));
}

fn voice(file: &str) -> serde_json::Value {
    let fixtures = concat!(env!("CARGO_MANIFEST_DIR"), "/../domain/fixtures/v1/voice_noted.json");
    let text = std::fs::read_to_string(fixtures).unwrap();
    let mut stored: serde_json::Value = serde_json::from_str(&text).unwrap();
    let mut data = stored["fact"]["data"].take();
    data["file"] = serde_json::Value::String(file.to_owned());
    data
}

#[test]
fn nothing_readable_lies_in_the_bucket() {
    let (_root, mut phones, bucket, _) = three();
    let canaries: Vec<String> = (0..50).map(|n| format!("canary-{n}-of-this-practice")).collect();
    let birth = BirthId(phones[0].write(None, &canaries[0], START_MS));
    for canary in &canaries {
        phones[0].write(Some(birth), canary, START_MS);
    }
    settle(&mut phones, &bucket, START_MS);
    let state = bucket.state.lock().unwrap();
    assert!(state.objects.len() > 5);
    for (name, bytes) in &state.objects {
        for word in canaries.iter().map(String::as_str).chain(["Midwife", "birth", "Noted", "fact"]) {
            assert!(!name.contains(word), "{word} in {name}");
            let found = bytes.windows(word.len()).any(|part| part == word.as_bytes());
            // Four letters may come by chance.
            assert!(!found || word.len() < 6, "{word} in {name}");
        }
    }
}
