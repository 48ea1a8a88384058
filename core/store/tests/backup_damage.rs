//! A backup that was damaged says so and changes nothing, or gives exactly what was in it.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;

use common::backups::{ENTRIES, altered, join, members, unseal};
use common::{Founded, numbers, write};
use secundine_domain::entry::BirthId;
use secundine_store::{PASSPHRASE_KEY, RECOVERY_KEY, Store, StoreError, check_archive, check_backup};

/// A practice of one entry, and a backup of it with two more.
struct Older {
    founded: Founded,
    birth: BirthId,
    backup: Vec<u8>,
    key: String,
}

impl Older {
    fn new() -> Self {
        let (founded, birth) = Founded::with_birth(1);
        let newer = tempfile::tempdir().unwrap();
        for file in fs::read_dir(founded.path()).unwrap().map(|file| file.unwrap()) {
            fs::copy(file.path(), newer.path().join(file.file_name())).unwrap();
        }
        let mut store = Store::open_with_identity(newer.path(), &founded.recovery).unwrap();
        write(&mut store, birth, 2);
        let backup = fs::read(common::backups::back_up(&store, &newer.path().join("backup.tar"))).unwrap();
        let key = founded.data_key();
        Self { founded, birth, backup, key }
    }

    fn file(&self, bytes: &[u8]) -> std::path::PathBuf {
        let path = self.founded.file("tried.tar");
        fs::write(&path, bytes).unwrap();
        path
    }

    /// It is refused by a folder without a practice and by one that has it, and both stay as they are.
    fn is_refused(&self, store: &mut Store, bytes: &[u8], what: &str) -> StoreError {
        let path = self.file(bytes);
        let folder = tempfile::tempdir().unwrap();
        let error = Store::restore(&folder.path().join("data"), &path, self.founded.recovery.clone()).err();
        let left = fs::read_dir(folder.path().join("data")).map_or(0, Iterator::count);
        assert!(!Store::exists(&folder.path().join("data")) && left == 0, "{what}");
        let merged = store.add_backup(&path).unwrap_err();
        let told = |error: &StoreError| {
            matches!(error, StoreError::NotBackup(_) | StoreError::DamagedBackup(_) | StoreError::DamagedKey(_))
        };
        assert!(told(&merged), "{what}: {merged:?}");
        assert_eq!(numbers(store, self.birth), [1], "{what}");
        let error = error.unwrap_or_else(|| unreachable!("{what} was restored"));
        assert!(told(&error), "{what}: {error:?}");
        error
    }
}

#[test]
fn a_flipped_bit_gives_an_error_or_the_very_same_entries() {
    let older = Older::new();
    let sealed = |backup: &[u8]| members(backup).pop().unwrap().1;
    let whole = unseal(&sealed(&older.backup), &older.key);
    assert_eq!(check_backup(older.backup.as_slice(), &older.key).unwrap(), (3, 1));
    let (mut errors, mut same) = (0, 0);
    for bit in (0..older.backup.len() * 8).step_by(61) {
        let mut flipped = older.backup.clone();
        flipped[bit / 8] ^= 1 << (bit % 8);
        let read = catch_unwind(AssertUnwindSafe(|| check_backup(flipped.as_slice(), &older.key)));
        if read.unwrap_or_else(|_| unreachable!("bit {bit}")).is_err() {
            errors += 1;
        } else {
            same += 1;
            assert_eq!(unseal(&sealed(&flipped), &older.key), whole, "bit {bit}");
        }
    }
    assert!(errors > 300 && same > 50, "{errors} {same}");
}

#[test]
fn a_flipped_bit_never_changes_a_store_that_is_there() {
    let older = Older::new();
    let mut store = older.founded.open();
    let before = store.entries(older.birth).unwrap();
    let mut errors = 0;
    for bit in (0..older.backup.len() * 8).step_by(401) {
        let mut flipped = older.backup.clone();
        flipped[bit / 8] ^= 1 << (bit % 8);
        if check_backup(flipped.as_slice(), &older.key).is_ok() {
            continue;
        }
        errors += 1;
        let path = older.file(&flipped);
        assert!(store.add_backup(&path).is_err(), "bit {bit}");
        assert_eq!(store.entries(older.birth).unwrap(), before, "bit {bit}");
    }
    assert!(errors > 30, "{errors}");
    assert_eq!(store.verify().unwrap().misfit, None);
    assert_eq!(store.add_backup(&older.file(&older.backup)).unwrap().added, 2, "and the whole one still comes in");
}

#[test]
fn one_that_was_cut_off_at_any_block_is_refused() {
    let older = Older::new();
    let mut store = older.founded.open();
    let blocks = older.backup.len() / 512;
    assert!(blocks > 12 && older.backup.len().is_multiple_of(512));
    for block in 0..blocks {
        for length in [block * 512, block * 512 + 7] {
            older.is_refused(&mut store, &older.backup[..length], &format!("{length} bytes"));
        }
    }
}

#[test]
fn what_is_no_backup_is_refused() {
    let older = Older::new();
    let mut store = older.founded.open();
    let whole = members(&older.backup);
    let other = |name: &str, at: usize| {
        let mut members = whole.clone();
        members[at].0 = name.to_owned();
        join(&members)
    };
    let not_tar: [(&str, Vec<u8>); 6] = [
        ("empty", Vec::new()),
        ("one byte", vec![0]),
        ("text", b"This is no backup. ".repeat(100)),
        ("a gzip file", [b"\x1f\x8b\x08".as_slice(), &[7; 2_000]].concat()),
        ("zeros", vec![0; 4_096]),
        ("another tar file", other("letter.txt", 0)),
    ];
    for (what, bytes) in not_tar {
        let error = older.is_refused(&mut store, &bytes, what);
        assert!(matches!(error, StoreError::NotBackup(_)), "{what}: {error:?}");
    }
    let mut twice = whole.clone();
    twice.push(whole[3].clone());
    let mut keys_after = whole.clone();
    keys_after.swap(2, 3);
    let mut second_key = whole.clone();
    second_key.insert(2, whole[1].clone());
    let tampered: [(&str, Vec<u8>); 8] = [
        ("an unknown member", other("further.txt", 3)),
        ("a member twice", join(&twice)),
        ("a key file twice", join(&second_key)),
        ("a key file after the entries", join(&keys_after)),
        ("something after the end", [older.backup.as_slice(), b"more"].concat()),
        ("an end of one block", older.backup[..older.backup.len() - 512].to_vec()),
        ("an empty member", {
            let mut members = whole.clone();
            members[3].1.clear();
            join(&members)
        }),
        ("no magic in the entries", {
            let mut members = whole.clone();
            members[3].1[0] = b'A';
            join(&members)
        }),
    ];
    for (what, bytes) in tampered {
        older.is_refused(&mut store, &bytes, what);
    }
}

/// The header of the member of this name, changed.
fn with_header(backup: &[u8], name: &str, change: impl FnOnce(&mut tar::Header)) -> Vec<u8> {
    let mut bytes = backup.to_vec();
    let at = (0..bytes.len()).step_by(512).find(|at| bytes[*at..].starts_with(name.as_bytes())).unwrap();
    let mut header = tar::Header::from_byte_slice(&bytes[at..at + 512]).clone();
    change(&mut header);
    header.set_cksum();
    bytes[at..at + 512].copy_from_slice(header.as_bytes());
    bytes
}

#[test]
fn names_that_lead_out_of_the_folder_links_and_huge_members_are_refused() {
    let older = Older::new();
    let mut store = older.founded.open();
    let outside = |name: &'static str| {
        move |header: &mut tar::Header| {
            let field = &mut header.as_old_mut().name;
            field.fill(0);
            field[..name.len()].copy_from_slice(name.as_bytes());
        }
    };
    for member in [PASSPHRASE_KEY, RECOVERY_KEY, ENTRIES] {
        for name in ["../key.passphrase.age", "/tmp/key.passphrase.age", "./entries.age", "data/entries.age"] {
            let bytes = with_header(&older.backup, member, outside(name));
            older.is_refused(&mut store, &bytes, &format!("{member} as {name}"));
        }
        for kind in [tar::EntryType::Symlink, tar::EntryType::Link, tar::EntryType::GNULongName, tar::EntryType::XHeader] {
            let bytes = with_header(&older.backup, member, |header| header.set_entry_type(kind));
            older.is_refused(&mut store, &bytes, &format!("{member} as {kind:?}"));
        }
        for size in [0, 1 << 33, u64::MAX / 2, u64::MAX - 700, u64::MAX] {
            let bytes = with_header(&older.backup, member, |header| header.set_size(size));
            older.is_refused(&mut store, &bytes, &format!("{member} with {size} bytes"));
        }
    }
    let path = Path::new("/tmp/key.passphrase.age");
    assert!(!path.exists());
}

#[test]
fn an_archive_that_was_altered_is_refused_in_plain_as_well() {
    let older = Older::new();
    let text = unseal(&members(&older.backup)[3].1, &older.key);
    assert_eq!(check_archive(text.as_bytes()).unwrap(), (3, 1));
    let lines: Vec<&str> = text.lines().collect();
    let without = |skipped: usize| {
        let kept = lines.iter().enumerate().filter(|(at, _)| *at != skipped).map(|(_, line)| format!("{line}\n"));
        kept.collect::<String>()
    };
    for skipped in 0..lines.len() {
        assert!(check_archive(without(skipped).as_bytes()).is_err(), "without line {skipped}");
    }
    for cut in 0..text.len() {
        assert!(check_archive(&text.as_bytes()[..cut]).is_err(), "{cut} bytes");
    }
    assert!(check_archive(format!("{text}\n").as_bytes()).is_err());
    for count in ["entries", "births"] {
        let miscounted = altered(&older.backup, &older.key, |lines| lines[0][count] = 9.into());
        assert!(matches!(check_backup(miscounted.as_slice(), &older.key), Err(StoreError::DamagedBackup(_))), "{count}");
    }
    let swapped = altered(&older.backup, &older.key, |lines| {
        let last = lines.len() - 1;
        lines.swap(last, last - 1);
    });
    assert!(matches!(check_backup(swapped.as_slice(), &older.key), Err(StoreError::DamagedBackup(_))));
}

#[test]
fn a_wrong_key_or_none_opens_nothing() {
    let older = Older::new();
    assert!(matches!(check_backup(older.backup.as_slice(), &"ab".repeat(32)), Err(StoreError::OtherPractice)));
    assert!(matches!(check_backup(older.backup.as_slice(), PASSPHRASE_KEY), Err(StoreError::DamagedKey(_))));
}
