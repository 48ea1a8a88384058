//! A store that lies: whatever it withholds, cuts off, alters, swaps, replays or puts back is found and named, nothing false
//! is taken in, and once it tells the truth again all is as it should be.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::print_stdout, clippy::panic, reason = "a test")]

mod common;

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use common::{Mem, Phone, START_MS, folder, practice};
use secundine_domain::entry::EntryId;
use secundine_sync::{Report, Trouble};
use sha2::{Digest, Sha256};

type Objects = BTreeMap<String, Vec<u8>>;

/// How far the reader is when the store begins to lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Reader {
    Fresh,
    Behind,
    Whole,
}

struct World {
    root: tempfile::TempDir,
    truth: Objects,
    /// The bucket when the reader was behind.
    before: Objects,
    all: BTreeSet<EntryId>,
    first: String,
    second: String,
}

/// Two phones that write in turn, and three that only read: one that has just joined, one that read half-way, and one that
/// read to the end.
fn world() -> World {
    let root = folder();
    let mut phones: Vec<Phone> = (0..5).map(|n| Phone::new(root.path(), n, 0)).collect();
    let bucket = Mem::new(1);
    practice(&mut phones, START_MS);
    let objects = |bucket: &Mem| bucket.state.lock().unwrap().objects.clone();
    let mut before = Objects::new();
    for turn in 0..14 {
        let now_ms = START_MS + turn * 60_000;
        let phone = &mut phones[turn as usize % 2];
        let birth = (turn > 3).then(|| phone.births[0]);
        phone.write(birth, &format!("turn {turn}"), now_ms);
        phone.round(&bucket, now_ms).1.unwrap();
        if turn == 6 {
            phones[3].round(&bucket, now_ms).1.unwrap();
            before = objects(&bucket);
        }
    }
    // The next day it tells in a segment of its own what it has seen.
    for day in 0..2 {
        phones[4].round(&bucket, START_MS + 3_600_000 + day * 86_400_000).1.unwrap();
    }
    let all = phones[4].entries();
    let (first, second) = (phones[0].id().to_string(), phones[1].id().to_string());
    for (n, name) in [(2, "fresh"), (3, "behind"), (4, "whole")] {
        keep(&mut phones[n], root.path(), name);
    }
    World { root, truth: objects(&bucket), before, all, first, second }
}

/// Copies a phone as it is now, killed.
fn keep(phone: &mut Phone, root: &Path, name: &str) {
    phone.restart();
    let store = phone.store.take().unwrap();
    let folder = store.folder().to_owned();
    drop(store);
    copy(&folder, &root.join(name));
    phone.restart();
}

fn copy(from: &Path, to: &PathBuf) {
    std::fs::create_dir_all(to).unwrap();
    for file in std::fs::read_dir(from).unwrap().map(Result::unwrap) {
        if file.file_type().unwrap().is_file() {
            std::fs::copy(file.path(), to.join(file.file_name())).unwrap();
        }
    }
}

impl World {
    fn reader(&self, reader: Reader, case: usize) -> Phone {
        let (kept, n) = match reader {
            Reader::Fresh => ("fresh", 2),
            Reader::Behind => ("behind", 3),
            Reader::Whole => ("whole", 4),
        };
        let root = self.root.path().join(format!("case-{case}"));
        copy(&self.root.path().join(kept), &root.join(format!("phone-{n}")));
        Phone::new(&root, n, 0)
    }

    /// What the reader makes of these objects; afterwards the store tells the truth.
    fn read(&self, reader: Reader, case: usize, objects: Objects) -> Report {
        let mut phone = self.reader(reader, case);
        let bucket = Mem::new(1);
        bucket.state.lock().unwrap().objects = objects;
        let (report, done) = phone.round(&bucket, START_MS + 90_000_000);
        done.unwrap();
        let mine = phone.id();
        assert!(phone.entries().is_subset(&self.all), "something false was taken in");
        let given = std::mem::take(&mut bucket.state.lock().unwrap().objects);
        // What it gave itself stays; else it would say that this was taken away.
        let own = given.into_iter().filter(|(name, _)| name.contains(&mine.to_string()));
        bucket.state.lock().unwrap().objects = self.truth.clone().into_iter().chain(own).collect();
        let (after, done) = phone.round(&bucket, START_MS + 90_100_000);
        done.unwrap();
        assert_eq!(after.troubles, BTreeSet::new(), "once it tells the truth");
        assert_eq!(phone.entries(), self.all);
        std::fs::remove_dir_all(self.root.path().join(format!("case-{case}"))).unwrap();
        report
    }

    fn named(&self, part: &str) -> Vec<String> {
        self.truth.keys().filter(|name| name.contains(part)).cloned().collect()
    }
}

fn renamed(name: &str, bytes: &[u8]) -> String {
    let hash: String = Sha256::digest(bytes).iter().take(16).map(|byte| format!("{byte:02x}")).collect();
    format!("{}-{hash}", name.rsplit_once('-').unwrap().0)
}

fn with_number(name: &str, n: u64) -> String {
    let (front, last) = name.rsplit_once('/').unwrap();
    let (_, hash) = last.split_once('-').unwrap();
    format!("{front}/{n:012}-{hash}")
}

/// Every lie about one object, with what it is called.
fn lies(world: &World, name: &str) -> Vec<(&'static str, Objects)> {
    let bytes = world.truth[name].clone();
    let with = |bytes: Vec<u8>| {
        let mut objects = world.truth.clone();
        objects.insert(name.to_owned(), bytes);
        objects
    };
    let instead = |other: String, bytes: Vec<u8>| {
        let mut objects = world.truth.clone();
        objects.remove(name);
        objects.insert(other, bytes);
        objects
    };
    let mut withheld = world.truth.clone();
    withheld.remove(name);
    let mut flipped = bytes.clone();
    let middle = flipped.len() / 2;
    flipped[middle] ^= 4;
    let mut forged = bytes.clone();
    let last = forged.len() - 5;
    forged[last] ^= 4;
    let other = world.truth.iter().find(|(one, of)| *one != name && **of != bytes && one.contains("/device/")).unwrap().1.clone();
    let mut lies = vec![
        ("withheld", withheld),
        ("cut off", with(bytes[..bytes.len() / 2].to_vec())),
        ("emptied", with(Vec::new())),
        ("altered", with(flipped.clone())),
        ("altered, under the name of what it is now", instead(renamed(name, &flipped), flipped)),
        ("signed by nobody", instead(renamed(name, &forged), forged)),
        ("swapped", with(other.clone())),
    ];
    if !name.contains("/keys/") {
        lies.push(("another's, under its name", instead(renamed(name, &other), other)));
    }
    lies
}

#[test]
fn every_lie_is_found_and_named() {
    let world = world();
    let mut case = 0;
    let mut check = |what: &str, reader: Reader, objects: Objects, fits: &dyn Fn(&Trouble) -> bool| {
        case += 1;
        let report = world.read(reader, case, objects);
        assert!(report.troubles.iter().any(fits), "{what}, {reader:?}: {:?}", report.troubles);
    };
    let any = |_: &Trouble| true;
    let segments = world.named("/device/");
    for name in segments.iter().filter(|name| name.contains(&world.first) || name.contains(&world.second)) {
        for (what, objects) in lies(&world, name) {
            check(&format!("{what}: {name}"), Reader::Fresh, objects.clone(), &any);
            if !world.before.contains_key(name) {
                check(&format!("{what}: {name}"), Reader::Behind, objects, &any);
            }
        }
    }
    for name in world.named("/roster/").iter().chain(&world.named("/keys/")) {
        for (what, objects) in lies(&world, name) {
            check(&format!("{what}: {name}"), Reader::Fresh, objects, &any);
        }
    }
    // Each file of the one epoch has its key, so all of them are lied about.
    let no_key = |trouble: &Trouble| matches!(trouble, Trouble::NoKey { .. });
    for (what, lie) in [("withheld", None), ("emptied", Some(0)), ("cut off", Some(2)), ("altered", Some(1))] {
        let mut objects = world.truth.clone();
        objects.retain(|name, bytes| match lie {
            _ if !name.contains("/epoch/") => true,
            None => false,
            Some(part) => {
                let last = bytes.len() / 2;
                bytes[last] ^= 4;
                bytes.truncate(if part == 1 { bytes.len() } else { last * part / 2 });
                true
            }
        });
        check(&format!("epoch {what}"), Reader::Fresh, objects, &no_key);
    }
    // Put back to what it was, for one who has seen more.
    let back = |trouble: &Trouble| matches!(trouble, Trouble::RolledBack { .. });
    check("put back", Reader::Whole, world.before.clone(), &back);
    check("all gone", Reader::Whole, Objects::new(), &back);
    for device in [&world.first, &world.second] {
        let mut objects = world.truth.clone();
        objects.retain(|name, _| !name.contains(&format!("/device/{device}/")));
        check("a phone's segments gone", Reader::Whole, objects, &back);
    }
    // An old segment as if it were the next one.
    let swapped = |trouble: &Trouble| matches!(trouble, Trouble::Swapped { .. });
    let of_first = world.named(&format!("/device/{}/", world.first));
    for (k, name) in of_first.iter().enumerate() {
        let mut objects = world.truth.clone();
        objects.insert(with_number(name, of_first.len() as u64 + 1), world.truth[name].clone());
        for reader in [Reader::Fresh, Reader::Behind, Reader::Whole] {
            check(&format!("replayed {k}"), reader, objects.clone(), &swapped);
        }
    }
    // A segment of one device as that of another.
    for (k, name) in of_first.iter().enumerate() {
        let mut objects = world.truth.clone();
        let other = name.replace(&world.first, &world.second);
        objects.insert(with_number(&other, 8), world.truth[name].clone());
        check(&format!("moved {k}"), Reader::Whole, objects, &swapped);
    }
    println!("{case} lies");
    assert!(case >= 200, "{case}");
}
