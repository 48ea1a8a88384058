//! A file is kept sealed, comes back as it was, and whatever became of it is told.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::path::{Path, PathBuf};

use common::{Founded, entry, from_elsewhere, passphrase, stamp};
use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Fact, Photo};
use secundine_domain::file::FileId;
use secundine_store::{DATABASE, FILE_MAX, FILES, Misfit, Store, StoreError};
use sha2::{Digest, Sha256};

const CANARY: &[u8] = b"canary of a picture, long enough to be found by itself";

/// Bytes that hold the canary every so often.
fn picture(seed: u8, bytes: usize) -> Vec<u8> {
    let mut all = Vec::with_capacity(bytes + CANARY.len());
    while all.len() < bytes {
        all.extend(CANARY);
        all.extend((0..200_u8).map(|n| n.wrapping_mul(seed)));
    }
    all.truncate(bytes);
    all
}

fn path(founded: &Founded, id: FileId) -> PathBuf {
    founded.file(FILES).join(id.to_string())
}

fn named(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> =
        fs::read_dir(folder.join(FILES)).unwrap().map(|file| file.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    names
}

/// A birth with a photograph of these two files.
fn photographed(store: &mut Store, file: FileId, small: FileId) -> BirthId {
    let birth = BirthId(store.next_id());
    let photo = Photo { placenta: 1, file, small, width: 4, height: 3, item: None, words: None, focal: None };
    store.append(&entry(store.next_id(), birth, 1_795_570_800_000, Fact::PhotoTaken(photo))).unwrap();
    birth
}

/// Changes one byte of a file.
fn damage(path: &Path) {
    let mut bytes = fs::read(path).unwrap();
    let middle = bytes.len() / 2;
    bytes[middle] ^= 1;
    fs::write(path, bytes).unwrap();
}

#[test]
fn a_file_comes_back_as_it_was_under_the_name_of_its_sealed_bytes() {
    let founded = Founded::new();
    let store = founded.open();
    let mut ids = Vec::new();
    // What a kill left half written is in nobody's way.
    fs::create_dir(founded.file(FILES)).unwrap();
    fs::write(founded.file(FILES).join("nameless.unfinished"), vec![7; 100_000]).unwrap();
    // Around the 64 KiB that age seals at once, two of them, and the megabyte that is written at once.
    for (seed, bytes) in [(3, 0), (5, 1), (7, 64 << 10), (9, 128 << 10), (11, 700_001), (13, (1 << 20) + (64 << 10) + 1)] {
        let plain = picture(seed, bytes);
        let id = store.keep_file(&plain).unwrap();
        assert_eq!(*store.open_file(id).unwrap(), plain, "{bytes}");
        let sealed = fs::read(path(&founded, id)).unwrap();
        assert_eq!(id.0, <[u8; 32]>::from(Sha256::digest(&sealed)));
        assert!(sealed.starts_with(b"age-encryption.org/v1"));
        ids.push(id.to_string());
    }
    ids.sort();
    assert_eq!(named(founded.path()), ids, "and nothing else lies there");
    store.close().unwrap();
    let id: FileId = ids[0].parse().unwrap();
    assert!(founded.open().open_file(id).is_ok(), "also after the practice was closed");
    // The same bytes twice are two files, so that nobody sees that they are the same.
    let store = founded.open();
    assert_ne!(store.keep_file(CANARY).unwrap(), store.keep_file(CANARY).unwrap());
}

#[test]
fn nothing_of_it_is_on_disk_in_plain() {
    let founded = Founded::new();
    let store = founded.open();
    let id = store.keep_file(&picture(3, 300_000)).unwrap();
    let holds = |path: &Path| fs::read(path).unwrap().windows(24).any(|window| CANARY.windows(24).any(|part| part == window));
    fs::write(founded.file("control"), CANARY).unwrap();
    assert!(holds(&founded.file("control")), "the search finds what is there");
    assert!(!holds(&path(&founded, id)));
    let beside = fs::read_dir(founded.path()).unwrap().map(|file| file.unwrap().path());
    for file in beside.filter(|file| file.is_file() && !file.ends_with("control") && !file.ends_with("reserve")) {
        assert!(!holds(&file), "{}", file.display());
    }
}

#[test]
fn what_is_damaged_absent_or_too_large_is_told() {
    let founded = Founded::new();
    let store = founded.open();
    let id = store.keep_file(&picture(3, 200_000)).unwrap();
    let whole = fs::read(path(&founded, id)).unwrap();
    let damaged = |store: &Store| matches!(store.open_file(id), Err(StoreError::DamagedFile(_)));
    damage(&path(&founded, id));
    assert!(damaged(&store));
    for cut in [0, 100, whole.len() - 1] {
        fs::write(path(&founded, id), &whole[..cut]).unwrap();
        assert!(damaged(&store), "{cut}");
    }
    // Another file of the practice under this name opens with the key, and is not the one that was named.
    let other = store.keep_file(b"other").unwrap();
    fs::copy(path(&founded, other), path(&founded, id)).unwrap();
    assert!(damaged(&store));
    fs::remove_file(path(&founded, id)).unwrap();
    assert!(matches!(store.open_file(id), Err(StoreError::NoFile)));
    // Damaged before it had a name: that fits, and the seal does not.
    for at in [whole.len() / 4, whole.len() / 4 * 3] {
        let mut sealed = whole.clone();
        sealed[at] ^= 1;
        let id = FileId(Sha256::digest(&sealed).into());
        store.put_sealed_file(id, &sealed).unwrap();
        assert!(matches!(store.open_file(id), Err(StoreError::DamagedFile(_))), "{at}");
    }
    // What the system cannot read may be whole.
    fs::create_dir(path(&founded, id)).unwrap();
    assert!(matches!(store.open_file(id), Err(StoreError::NotRead(_))));
    assert!(matches!(store.keep_file(&vec![0; FILE_MAX + 1]), Err(StoreError::TooLarge)));
    assert!(matches!(founded.open_elsewhere().open_file(other), Err(StoreError::NoFile)));
}

impl Founded {
    /// Another practice, into which the files of this one are of no use.
    fn open_elsewhere(&self) -> Store {
        Store::create(&self.file("elsewhere"), passphrase()).unwrap().0
    }
}

#[test]
fn a_disk_that_fills_up_in_the_middle_of_a_file_keeps_nothing_of_it_and_takes_a_smaller_one() {
    #[cfg(target_os = "linux")]
    {
        use common::again::{again, inside};
        const TEST: &str = "a_disk_that_fills_up_in_the_middle_of_a_file_keeps_nothing_of_it_and_takes_a_smaller_one";
        let Some(disk) = inside() else {
            let folder = tempfile::tempdir().unwrap();
            let mount = r#"mount -t tmpfs -o size=4m small "$0" && exec "$@""#;
            let around = ["unshare", "--user", "--map-root-user", "--mount", "sh", "-c", mount];
            return again(TEST, folder.path(), &[around.as_slice(), &[folder.path().to_str().unwrap()]].concat());
        };
        let (store, _) = Store::create(&disk.join("data"), passphrase()).unwrap();
        let large = picture(3, 6 << 20);
        assert!(matches!(store.keep_file(&large), Err(StoreError::Full)));
        assert!(named(&disk.join("data")).is_empty());
        let id = store.keep_file(&large[..1 << 20]).unwrap();
        assert_eq!(*store.open_file(id).unwrap(), large[..1 << 20]);
    }
}

#[test]
fn a_sync_that_fails_is_told_and_the_file_is_not_there() {
    #[cfg(target_os = "linux")]
    {
        use common::again::{again, inside, open};
        use secundine_store::ExposeSecret;
        const TEST: &str = "a_sync_that_fails_is_told_and_the_file_is_not_there";
        if let Some(folder) = inside() {
            let store = open(&folder);
            fs::write(folder.join("go"), "").unwrap();
            assert!(matches!(store.keep_file(CANARY), Err(StoreError::NotSaved(_))));
            return std::mem::forget(store);
        }
        let founded = Founded::new();
        fs::write(founded.file("identity"), founded.recovery.expose_secret()).unwrap();
        fs::create_dir(founded.file(FILES)).unwrap();
        let files = founded.file(FILES);
        // Only what is asked of this folder fails.
        let args = ["strace", "-f", "-qq", "-o", "/dev/null", "-P", files.to_str().unwrap()];
        let inject = ["-e", "trace=fsync,fdatasync", "-e", "inject=fsync,fdatasync:error=EIO"];
        again(TEST, founded.path(), &[args.as_slice(), &inject].concat());
        assert!(founded.file("go").exists());
        let store = founded.open();
        for name in named(founded.path()) {
            assert!(store.open_file(name.parse().unwrap()).is_ok(), "whole, and harmless: no entry names it");
        }
    }
}

#[test]
fn a_check_names_the_file_that_is_missing_or_does_not_fit() {
    let founded = Founded::new();
    let mut store = founded.open();
    let (file, small) = (store.keep_file(&picture(3, 9_000)).unwrap(), store.keep_file(&picture(5, 900)).unwrap());
    let orphan = store.keep_file(b"named by no entry").unwrap();
    let birth = photographed(&mut store, file, small);
    let verdict = store.verify().unwrap();
    assert_eq!((verdict.misfit, verdict.files), (None, 2));
    damage(&path(&founded, orphan));
    assert_eq!(store.verify().unwrap().misfit, None);
    for (of, missing) in [(file, false), (small, false), (file, true), (small, true)] {
        let kept = fs::read(path(&founded, of)).unwrap();
        match missing {
            true => fs::remove_file(path(&founded, of)).unwrap(),
            false => damage(&path(&founded, of)),
        }
        let told = store.verify().unwrap().misfit;
        assert_eq!(told, Some(Misfit::File { file: of, birth: Some(birth), missing }));
        fs::write(path(&founded, of), kept).unwrap();
    }
}

#[test]
fn a_backup_carries_the_files_and_restoring_one_is_a_union() {
    let founded = Founded::new();
    let mut store = founded.open();
    let (file, small) = (store.keep_file(&picture(3, 90_000)).unwrap(), store.keep_file(&picture(5, 900)).unwrap());
    let orphan = store.keep_file(b"named by no entry").unwrap();
    photographed(&mut store, file, small);
    let backup = founded.file("backup.tar");
    let backed = store.back_up(&backup, &stamp(1)).unwrap();
    assert_eq!((backed.files, backed.damaged_files), (3, 0));

    let folder = tempfile::tempdir().unwrap();
    let data = folder.path().join("data");
    let (restored, told) = Store::restore(&data, &backup, founded.recovery.clone()).unwrap();
    assert_eq!((told.files, told.damaged_files), (3, 0));
    assert_eq!(*restored.open_file(file).unwrap(), picture(3, 90_000));
    assert_eq!(restored.verify().unwrap().misfit, None);
    restored.close().unwrap();

    // Into the practice itself: what is missing or damaged comes back, the rest is as it was.
    fs::remove_file(path(&founded, file)).unwrap();
    damage(&path(&founded, small));
    let extra = store.keep_file(b"kept after the backup").unwrap();
    let told = store.add_backup(&backup).unwrap();
    assert_eq!((told.added, told.files, told.damaged_files), (0, 2, 0));
    assert_eq!(store.verify().unwrap().misfit, None);
    assert!([file, small, orphan, extra].iter().all(|id| store.open_file(*id).is_ok()));
}

#[test]
fn a_damaged_file_keeps_no_entry_out_of_a_backup_or_back() {
    let founded = Founded::new();
    let mut store = founded.open();
    let (file, small) = (store.keep_file(&picture(3, 90_000)).unwrap(), store.keep_file(&picture(5, 900)).unwrap());
    photographed(&mut store, file, small);
    let whole = founded.file("whole.tar");
    store.back_up(&whole, &stamp(1)).unwrap();
    damage(&path(&founded, file));
    let backup = founded.file("backup.tar");
    let backed = store.back_up(&backup, &stamp(2)).unwrap();
    assert_eq!((backed.entries, backed.files, backed.damaged_files), (1, 1, 1));

    // A file that was altered inside a backup is left out and told, and the entries come back.
    let mut members = common::backups::members(&fs::read(&whole).unwrap());
    let member = members.iter_mut().find(|(name, _)| *name == format!("{FILES}/{file}")).unwrap();
    member.1[700] ^= 1;
    let altered = founded.file("altered.tar");
    fs::write(&altered, common::backups::join(&members)).unwrap();
    let folder = tempfile::tempdir().unwrap();
    let data = folder.path().join("data");
    let (restored, told) = Store::restore(&data, &altered, founded.recovery.clone()).unwrap();
    assert_eq!((told.added, told.files, told.damaged_files), (1, 1, 1));
    assert!(matches!(restored.verify().unwrap().misfit, Some(Misfit::File { missing: true, .. })));

    // What stands before the entries, or is no file, does not belong there.
    for (name, at) in [(format!("{FILES}/{small}"), 1), (format!("{FILES}/x"), 9), (format!("{FILES}/../{small}"), 9)] {
        let mut members = common::backups::members(&fs::read(&whole).unwrap());
        members.insert(at.min(members.len()), (name.clone(), vec![1]));
        let odd = join(&members);
        fs::write(&altered, odd).unwrap();
        assert!(matches!(store.add_backup(&altered), Err(StoreError::DamagedBackup(_))), "{name}");
    }
}

#[test]
fn a_picture_of_another_phone_still_opens_after_a_restoring_and_after_a_salvage() {
    let founded = Founded::new();
    let mut store = founded.open();
    let (theirs, own) = (from_elsewhere(&mut store, &picture(3, 90_000)), store.keep_file(&picture(5, 900)).unwrap());
    let birth = photographed(&mut store, theirs, own);
    let backup = founded.file("backup.tar");
    store.back_up(&backup, &stamp(1)).unwrap();

    let folder = tempfile::tempdir().unwrap();
    let (restored, _) = Store::restore(&folder.path().join("data"), &backup, founded.recovery.clone()).unwrap();
    assert_eq!(*restored.open_file(theirs).unwrap(), picture(3, 90_000));
    assert_eq!(*restored.open_file(own).unwrap(), picture(5, 900));
    restored.close().unwrap();

    // Into the practice itself, where the key is known: nothing is put in its place.
    assert_eq!(store.add_backup(&backup).unwrap().added, 0);
    assert!(store.open_file(theirs).is_ok());
    store.close().unwrap();

    // The first page of the database is destroyed: read as it is, then built anew.
    let mut database = fs::read(founded.file(DATABASE)).unwrap();
    database[..4096].fill(0x77);
    fs::write(founded.file(DATABASE), database).unwrap();
    let (read, _) = Store::read_damaged(founded.path(), passphrase()).unwrap();
    assert_eq!(*read.open_file(theirs).unwrap(), picture(3, 90_000));
    read.close().unwrap();
    let (built, report, _) = Store::salvage(founded.path(), passphrase()).unwrap();
    assert_eq!((report.entries, built.entries(birth).unwrap().len()), (1, 1));
    assert_eq!(*built.open_file(theirs).unwrap(), picture(3, 90_000));
}

/// As [`common::backups::join`], with whatever names.
fn join(members: &[(String, Vec<u8>)]) -> Vec<u8> {
    let mut tar = tar::Builder::new(Vec::new());
    for (name, bytes) in members {
        let mut header = tar::Header::new_ustar();
        header.set_size(bytes.len() as u64);
        header.set_mode(0o600);
        let field = &mut header.as_ustar_mut().unwrap().name;
        field[..name.len()].copy_from_slice(name.as_bytes());
        header.set_cksum();
        tar.append(&header, bytes.as_slice()).unwrap();
    }
    tar.into_inner().unwrap()
}

#[test]
fn a_wipe_destroys_the_files_and_a_founding_sets_aside_those_without_a_key() {
    let founded = Founded::new();
    let store = founded.open();
    store.keep_file(CANARY).unwrap();
    store.close().unwrap();
    Store::wipe(founded.path(), None).unwrap();
    assert!(!founded.file(FILES).exists());

    let founded = Founded::new();
    let store = founded.open();
    let id = store.keep_file(CANARY).unwrap();
    store.close().unwrap();
    for key in [secundine_store::PASSPHRASE_KEY, secundine_store::RECOVERY_KEY] {
        fs::remove_file(founded.file(key)).unwrap();
    }
    let (store, _) = Store::create(founded.path(), passphrase()).unwrap();
    assert!(matches!(store.open_file(id), Err(StoreError::NoFile)));
    assert!(founded.file(&format!("without-key-1-{FILES}")).join(id.to_string()).exists());
}
