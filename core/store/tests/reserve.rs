//! Room is kept for a full disk: entries and marks go on in it, and it is made again once there is room.
//!
//! The full disk is a real one, mounted for this test alone, so each test runs itself once more inside.

#![cfg(target_os = "linux")]
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::print_stderr,
    reason = "a test may stop at the first surprise, and tells what it found"
)]

mod common;

use std::fs::{self, File};
use std::io::Write;
use std::path::{Path, PathBuf};

use common::again::{inside, once_more, open};
use common::inbox::{drain, notes};
use common::{entry, numbers, passphrase};
use secundine_domain::entry::BirthId;
use secundine_domain::fact::Fact;
use secundine_store::{ExposeSecret, Inbox, RESERVE, RESERVE_BYTES, Store, StoreError, low_space};

/// What the reserve has to hold.
const WANTED: usize = 2_000;

/// A disk of this many MiB around the test, which is given the folder; none where it is to go on inside.
fn on_a_disk_of(mebibytes: u32, test: &str) -> Option<PathBuf> {
    if let Some(disk) = inside() {
        return Some(disk);
    }
    let folder = tempfile::tempdir().unwrap();
    let mount = format!(r#"mount -t tmpfs -o size={mebibytes}m small "$0" && exec "$@""#);
    let around = ["unshare", "--user", "--map-root-user", "--mount", "sh", "-c", &mount, folder.path().to_str().unwrap()];
    let output = once_more(test, folder.path(), &around);
    let (said, told) = (String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr));
    assert!(output.status.success() && said.contains("1 passed"), "{said}\n{told}");
    eprintln!("{}", told.trim());
    None
}

/// A practice on the disk, with its identity beside it.
fn founded(disk: &Path) -> (PathBuf, Store) {
    let data = disk.join("data");
    let (store, recovery) = Store::create(&data, passphrase()).unwrap();
    fs::write(data.join("identity"), recovery.expose_secret()).unwrap();
    (data, store)
}

/// Fills the disk to its last byte.
fn fill_up(disk: &Path) -> PathBuf {
    let ballast = disk.join("ballast");
    let mut file = File::create(&ballast).unwrap();
    for size in [1 << 20, 4096, 1] {
        while file.write(&vec![7; size]).is_ok_and(|written| written > 0) {}
    }
    ballast
}

fn reserve(data: &Path) -> Option<u64> {
    fs::metadata(data.join(RESERVE)).ok().map(|file| file.len())
}

#[test]
fn the_reserve_is_random_and_takes_its_room_on_disk() {
    use std::os::unix::fs::MetadataExt;
    let founded = common::Founded::new();
    let file = fs::metadata(founded.file(RESERVE)).unwrap();
    assert_eq!(file.len(), RESERVE_BYTES);
    assert!(file.blocks() * 512 >= RESERVE_BYTES, "{} blocks", file.blocks());
    let mut seen = [false; 256];
    let bytes = fs::read(founded.file(RESERVE)).unwrap();
    bytes.iter().take(10_000).for_each(|byte| seen[usize::from(*byte)] = true);
    assert!(seen.iter().all(|seen| *seen));
    for damage in [0, 7] {
        File::options().write(true).open(founded.file(RESERVE)).unwrap().set_len(damage).unwrap();
        drop(founded.open());
        assert_eq!(reserve(founded.path()), Some(RESERVE_BYTES), "made again where it is not whole");
    }
}

#[test]
fn on_a_full_disk_two_thousand_entries_go_into_the_reserve() {
    let test = "on_a_full_disk_two_thousand_entries_go_into_the_reserve";
    let Some(disk) = on_a_disk_of(32, test) else { return };
    // With an empty log, and with one that is as long as it gets. An entry of more than 830 bytes takes a page of its own
    // beside its place, so only some are as long as that.
    for (letters, before) in [(&[365][..], 0), (&[485], 0), (&[85, 365, 485, 665], 0), (&[365], 1_200)] {
        full_disk(&disk, letters, before);
    }
}

fn full_disk(disk: &Path, letters: &[usize], before: usize) {
    let (data, mut store) = founded(disk);
    assert_eq!(reserve(&data), Some(RESERVE_BYTES));
    let birth = BirthId(store.next_id());
    let note = |store: &Store| {
        let id = store.next_id();
        let text = "q".repeat(letters[usize::try_from(id.n).unwrap() % letters.len()]);
        entry(id, birth, 1_795_570_800_000, Fact::Noted { text })
    };
    let mut acknowledged: Vec<u64> = (0..before).map(|_| store.append(&note(&store)).unwrap().entry.id.n).collect();
    assert!(!store.low_space());
    let ballast = fill_up(disk);
    // Room in the log may take some before the first warning.
    while !store.low_space() {
        acknowledged.push(store.append(&note(&store)).unwrap().entry.id.n);
    }
    assert_eq!(reserve(&data), None, "it is given up");
    let warned = acknowledged.len();
    let refused = loop {
        match store.append(&note(&store)) {
            Ok(stored) => acknowledged.push(stored.entry.id.n),
            Err(error) => break error,
        }
    };
    let (more, body) = (acknowledged.len() - warned, mean_body(&store, birth));
    eprintln!("bodies of {body} bytes in the mean, {before} before: {more} more after the warning");
    assert!(matches!(refused, StoreError::Full), "{refused}");
    assert!(more >= WANTED, "{more} entries of {body} bytes");
    assert_eq!(numbers(&store, birth), acknowledged);
    drop(store);
    let mut store = open(&data);
    assert!(store.low_space() && reserve(&data).is_none(), "it is not made where there is no room");
    assert_eq!(numbers(&store, birth), acknowledged);
    assert!(store.append(&note(&store)).is_err());
    fs::remove_file(ballast).unwrap();
    store.append(&note(&store)).unwrap();
    let verdict = store.verify().unwrap();
    assert_eq!((verdict.misfit, verdict.entries), (None, acknowledged.len() as u64 + 1));
    store.close().unwrap();
    let store = open(&data);
    assert_eq!((reserve(&data), store.low_space()), (Some(RESERVE_BYTES), false), "made again");
    drop(store);
    fs::remove_dir_all(&data).unwrap();
}

fn mean_body(store: &Store, birth: BirthId) -> usize {
    let entries = store.entries(birth).unwrap();
    entries.iter().map(|stored| stored.entry.encode().unwrap().len()).sum::<usize>() / entries.len()
}

#[test]
fn on_a_full_disk_marks_go_into_the_reserve_too() {
    let Some(disk) = on_a_disk_of(32, "on_a_full_disk_marks_go_into_the_reserve_too") else { return };
    let (data, store) = founded(&disk);
    store.close().unwrap();
    let mut inbox = Inbox::new(&data);
    inbox.append(b"before").unwrap();
    let ballast = fill_up(&disk);
    let mut kept = vec!["before".to_owned()];
    let refused = loop {
        let mark = format!("{:0>1024}", kept.len());
        match inbox.append(mark.as_bytes()) {
            Ok(()) => kept.push(mark),
            Err(error) => break error,
        }
    };
    eprintln!("{} marks", kept.len());
    assert!(matches!(refused, StoreError::Full), "{refused}");
    assert!(kept.len() >= WANTED, "{}", kept.len());
    assert!(low_space(&data) && reserve(&data).is_none());
    fs::remove_file(ballast).unwrap();
    let mut store = open(&data);
    let drained = drain(&mut store, inbox.tail().as_ref());
    assert_eq!((drained.lost_tail, drained.torn, drained.damaged), (0, 0, 0));
    assert_eq!(notes(&store), kept);
    assert_eq!(reserve(&data), Some(RESERVE_BYTES));
}
