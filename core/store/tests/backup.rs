//! A backup holds everything, and what it holds comes back without a loss or a change.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::path::Path;

use common::backups::{ENTRIES, MADE, altered, back_up, join, line, members, rows, unseal};
use common::chained::Chained;
use common::{Founded, PASSPHRASE, passphrase, stamp, write};
use secundine_domain::entry::BirthId;
use secundine_store::{
    DATABASE, HEAD, HeadSeen, Misfit, MisfitKind, PASSPHRASE_KEY, Passphrase, RECOVERY_KEY, Restored, Store, StoreError,
};
use tempfile::TempDir;

fn restored(backup: &Path, founded: &Founded) -> (TempDir, Store, Restored) {
    let folder = tempfile::tempdir().unwrap();
    let (store, restored) = Store::restore(&folder.path().join("data"), backup, founded.recovery.clone()).unwrap();
    (folder, store, restored)
}

/// The same practice in a folder of its own, as a copied folder is.
fn copy(founded: &Founded) -> Founded {
    let folder = tempfile::tempdir().unwrap();
    for file in fs::read_dir(founded.path()).unwrap().map(|file| file.unwrap()) {
        if file.path().is_file() {
            fs::copy(file.path(), folder.path().join(file.file_name())).unwrap();
        }
    }
    Founded { folder, recovery: founded.recovery.clone() }
}

fn fits(store: &Store) -> HeadSeen {
    let verdict = store.verify().unwrap();
    assert_eq!(verdict.misfit, None);
    verdict.head
}

fn refused(restored: &Restored) -> Vec<(u64, MisfitKind)> {
    let misfits = restored.refused.iter().map(|misfit| match misfit {
        Misfit::Entry { n, kind, .. } => (*n, *kind),
        other => unreachable!("{other:?}"),
    });
    misfits.collect()
}

#[test]
fn every_entry_comes_back_with_its_own_link_and_signature_by_either_key() {
    let chained = Chained::new(30, 40);
    let founded = &chained.founded;
    let backup = founded.file("backup.tar");
    let backed = founded.open().back_up(&backup, &stamp(MADE)).unwrap();
    assert_eq!((backed.entries, backed.births, backed.bytes), (34, 3, fs::metadata(&backup).unwrap().len()));
    let before = founded.rows();
    assert_eq!(before.len(), 34);
    for secret in [passphrase(), founded.recovery.clone()] {
        let folder = tempfile::tempdir().unwrap();
        let data = folder.path().join("data");
        let (mut store, restored) = Store::restore(&data, &backup, secret).unwrap();
        assert_eq!((restored.added, restored.known, restored.births), (34, 0, 3));
        assert!(restored.refused.is_empty() && restored.damaged_keys.is_empty() && !restored.renewed);
        assert_eq!(restored.made, stamp(MADE));
        assert_eq!(fits(&store), HeadSeen::Nothing);
        let next = store.next_id();
        assert!(next.n == 1 && next.device != chained.own && next.device != chained.other, "a new device");
        let birth = BirthId(next);
        write(&mut store, birth, 2);
        assert_eq!(fits(&store), HeadSeen::At(2));
        store.close().unwrap();
        assert!(before.iter().all(|row| rows(&data, &founded.data_key()).contains(row)));
        for name in [PASSPHRASE_KEY, RECOVERY_KEY] {
            assert_eq!(fs::read(data.join(name)).unwrap(), fs::read(founded.file(name)).unwrap(), "{name}");
        }
        let store = Store::open(&data, passphrase()).unwrap();
        assert_eq!(fits(&store), HeadSeen::At(2));
        assert_eq!(store.next_id().n, 3);
    }
}

#[test]
fn the_file_has_these_members_and_no_secret_or_word_of_the_practice_in_plain() {
    let (founded, _) = Founded::with_birth(3);
    let backup = fs::read(founded.back_up("backup.tar")).unwrap();
    let members = members(&backup);
    let names: Vec<&str> = members.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(names, ["README.txt", PASSPHRASE_KEY, RECOVERY_KEY, ENTRIES]);
    let raw = founded.raw();
    let seed: [u8; 32] = raw.query_row("SELECT seed FROM device WHERE seed IS NOT NULL", [], |row| row.get(0)).unwrap();
    let text = unseal(&members[3].1, &founded.data_key());
    assert!(text.contains("canarynote 3") && text.lines().count() == 6);
    assert!(!text.contains(&hex::encode(seed)), "the device's seed stays on the device");
    for canary in ["Canaryname", "canarynote", PASSPHRASE, &founded.data_key(), "wall_ms"] {
        assert!(!backup.windows(canary.len()).any(|window| window == canary.as_bytes()), "{canary}");
    }
}

#[test]
fn a_backup_is_not_written_over_another_file_and_leaves_nothing_unfinished() {
    let (founded, _) = Founded::with_birth(2);
    let path = founded.back_up("backup.tar");
    let before = fs::read(&path).unwrap();
    assert!(matches!(founded.open().back_up(&path, &stamp(MADE)), Err(StoreError::NotSaved(_))));
    assert_eq!(fs::read(&path).unwrap(), before);
    let nowhere = founded.file("not here").join("backup.tar");
    assert!(matches!(founded.open().back_up(&nowhere, &stamp(MADE)), Err(StoreError::NotSaved(_))));
    let unfinished = |file: &fs::DirEntry| file.file_name().to_string_lossy().ends_with(".unfinished");
    assert!(!fs::read_dir(founded.path()).unwrap().any(|file| unfinished(&file.unwrap())));
}

#[test]
fn a_store_whose_entries_do_not_fit_makes_no_backup() {
    let chained = Chained::new(6, 10);
    for change in
        ["UPDATE entry SET body = CAST('{}' AS BLOB) WHERE n = 3", "UPDATE entry SET signature = zeroblob(64) WHERE n = 2"]
    {
        let copy = chained.copy();
        copy.tamper(|raw| raw.execute_batch(change).unwrap());
        let path = copy.file("backup.tar");
        assert!(matches!(copy.open().unwrap().back_up(&path, &stamp(MADE)), Err(StoreError::Damaged(_))), "{change}");
        assert!(!path.exists());
    }
}

#[test]
fn an_older_backup_over_a_newer_store_changes_nothing() {
    let (founded, birth) = Founded::with_birth(3);
    let backup = founded.back_up("backup.tar");
    let mut store = founded.open();
    write(&mut store, birth, 4);
    let next = store.next_id();
    let restored = store.add_backup(&backup).unwrap();
    assert_eq!((restored.added, restored.known, restored.births, restored.renewed), (0, 3, 0, false));
    assert!(restored.refused.is_empty());
    assert_eq!(store.next_id(), next);
    assert_eq!(fits(&store), HeadSeen::At(7));
    write(&mut store, birth, 1);
    assert_eq!(fits(&store), HeadSeen::At(8));
}

#[test]
fn a_store_that_was_rolled_back_gets_all_back_and_goes_on_as_a_new_device() {
    let (founded, birth) = Founded::with_birth(3);
    let old = copy(&founded);
    let mut store = founded.open();
    write(&mut store, birth, 4);
    store.close().unwrap();
    let backup = founded.back_up("backup.tar");
    for head_of in [&old, &founded] {
        let back = copy(&old);
        fs::copy(head_of.file(HEAD), back.file(HEAD)).unwrap();
        let mut store = back.open();
        let before = store.next_id();
        let restored = store.add_backup(&backup).unwrap();
        assert_eq!((restored.added, restored.known, restored.renewed), (4, 3, true));
        assert_eq!(fits(&store), HeadSeen::Nothing, "the old device's head fits, the new one has none");
        let next = store.next_id();
        assert!(next.device != before.device && next.n == 1);
        drop(store);
        // Killed right after: it opens as the new device.
        let mut store = back.open();
        assert_eq!((store.next_id(), fits(&store)), (next, HeadSeen::Nothing));
        write(&mut store, birth, 2);
        assert_eq!(fits(&store), HeadSeen::At(2));
        assert_eq!(store.add_backup(&backup).unwrap().added, 0);
        store.close().unwrap();
        assert!(founded.rows().iter().all(|row| back.rows().contains(row)));
        assert_eq!(back.rows().len(), 9);
        let seeds: u64 =
            back.raw().query_row("SELECT count(*) FROM device WHERE seed IS NOT NULL", [], |row| row.get(0)).unwrap();
        assert_eq!(seeds, 1, "the old seed is dropped");
        // What the old device's head tells is still looked at.
        let (raw, triggers) = (
            back.raw(),
            "DROP TRIGGER entry_remains; DELETE FROM entry WHERE n = 7;
            CREATE TRIGGER entry_remains BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'an entry is never removed'); END;",
        );
        raw.execute_batch(triggers).unwrap();
        raw.close().unwrap();
        if fs::read_to_string(head_of.file(HEAD)).unwrap().contains("00007") {
            let cut = back.open().verify().unwrap().misfit;
            assert!(matches!(cut, Some(Misfit::Entry { n: 7, kind: MisfitKind::CutOff, .. })), "{cut:?}");
        }
        // And the two merge back into the other one.
        let other = copy(&founded);
        let from_back = back_up(&back.open(), &back.file("back.tar"));
        let restored = other.open().add_backup(&from_back).unwrap();
        assert_eq!((restored.added, restored.renewed), (2, false));
    }
}

#[test]
fn a_devices_key_never_changes_and_its_seed_is_only_ever_dropped() {
    let (founded, _) = Founded::with_birth(1);
    let raw = founded.raw();
    for change in [
        "UPDATE device SET id = randomblob(16)",
        "UPDATE device SET public = randomblob(32)",
        "UPDATE device SET seed = randomblob(32)",
        "UPDATE device SET public = randomblob(32), seed = NULL",
        "DELETE FROM device",
        "INSERT OR REPLACE INTO device SELECT id, randomblob(32), NULL FROM device",
    ] {
        raw.execute_batch("PRAGMA recursive_triggers = ON").unwrap();
        assert!(raw.execute_batch(change).is_err(), "{change}");
    }
    raw.execute_batch("UPDATE device SET seed = NULL").unwrap();
    assert!(raw.execute_batch("UPDATE device SET seed = randomblob(32)").is_err(), "and never comes back");
}

#[test]
fn of_two_histories_of_one_device_the_one_here_stays_and_the_other_is_told_by_number() {
    let (founded, birth) = Founded::with_birth(3);
    let other = copy(&founded);
    for (practice, count) in [(&founded, 4), (&other, 2)] {
        let mut store = practice.open();
        let first = store.next_id();
        write(&mut store, if count == 4 { birth } else { BirthId(first) }, count);
        store.close().unwrap();
    }
    let backup = founded.back_up("backup.tar");
    let before = other.rows();
    let mut store = other.open();
    let restored = store.add_backup(&backup).unwrap();
    let all = [4, 5, 6, 7].map(|n| (n, MisfitKind::Rewritten));
    assert_eq!((restored.added, restored.known, refused(&restored)), (0, 3, all.to_vec()));
    assert!(restored.renewed && store.next_id().n == 1, "both must not take the same numbers any further");
    assert_eq!(fits(&store), HeadSeen::Nothing);
    store.close().unwrap();
    assert_eq!(other.rows(), before);
}

#[test]
fn what_was_altered_is_refused_and_the_rest_taken() {
    let chained = Chained::new(8, 10);
    let (founded, key, own) = (&chained.founded, chained.founded.data_key(), chained.own.to_string());
    let backup = fs::read(founded.back_up("backup.tar")).unwrap();
    let before = founded.rows();
    type Change<'a> = (&'a str, &'a str, MisfitKind);
    let other_text = before.iter().find(|row| row.1 == 7).map(|row| String::from_utf8(row.3.clone()).unwrap()).unwrap();
    let (zeros, digest) = ("00".repeat(64), "ab".repeat(32));
    let changes: [Change; 4] = [
        ("body", &other_text, MisfitKind::Changed),
        ("body", "no entry at all", MisfitKind::Changed),
        ("signature", &zeros, MisfitKind::Unsigned),
        ("link", &digest, MisfitKind::Unlinked),
    ];
    for (field, value, kind) in changes {
        let forged = altered(&backup, &key, |lines| line(lines, &own, 4)[field] = value.into());
        let path = founded.file("forged.tar");
        fs::write(&path, forged).unwrap();
        let (folder, store, told) = restored(&path, founded);
        assert_eq!((told.added, refused(&told)), (11, vec![(4, kind)]), "{field}");
        store.close().unwrap();
        let rows = rows(&folder.path().join("data"), &key);
        assert!(rows.len() == 11 && rows.iter().all(|row| before.contains(row)), "{field}");
        // Over a store that has the true one, nothing is changed.
        let mut store = founded.open();
        let told = store.add_backup(&path).unwrap();
        assert_eq!((told.added, told.known, told.renewed), (0, 11, false), "{field}");
        assert_eq!(refused(&told), [(4, kind)], "{field}");
        fits(&store);
        drop(store);
        assert_eq!(founded.rows(), before);
        // The true one comes in later.
        let mut store = Store::open_with_identity(&folder.path().join("data"), &founded.recovery).unwrap();
        assert_eq!(store.add_backup(&founded.file("backup.tar")).unwrap().added, 1);
        fits(&store);
    }
}

#[test]
fn an_entry_that_is_nowhere_is_told_and_a_device_without_key_brings_nothing() {
    let chained = Chained::new(8, 10);
    let (founded, key) = (&chained.founded, chained.founded.data_key());
    let (own, other) = (chained.own.to_string(), chained.other.to_string());
    let backup = fs::read(founded.back_up("backup.tar")).unwrap();
    let path = founded.file("forged.tar");
    let gone = altered(&backup, &key, |lines| {
        lines.retain(|line| line.get("n") != Some(&5.into()));
        lines[0]["entries"] = 11.into();
    });
    fs::write(&path, gone).unwrap();
    let (_folder, store, told) = restored(&path, founded);
    assert_eq!((told.added, refused(&told)), (11, vec![(5, MisfitKind::Missing)]));
    assert!(matches!(store.verify().unwrap().misfit, Some(Misfit::Entry { n: 5, kind: MisfitKind::Missing, .. })));

    let unknown = altered(&backup, &key, |lines| {
        lines.retain(|line| line.get("public").is_none() || line["device"] != other.as_str());
    });
    fs::write(&path, unknown).unwrap();
    let (_folder, store, told) = restored(&path, founded);
    assert_eq!((told.added, refused(&told)), (8, [1, 2, 3, 4].map(|n| (n, MisfitKind::NoKey)).to_vec()));
    fits(&store);

    let swapped = altered(&backup, &key, |lines| {
        let public = lines.iter().find(|line| line["device"] == other.as_str()).unwrap()["public"].clone();
        let line = lines.iter_mut().find(|line| line["device"] == own.as_str() && line.get("public").is_some()).unwrap();
        line["public"] = public;
    });
    fs::write(&path, swapped).unwrap();
    let folder = tempfile::tempdir().unwrap();
    assert!(matches!(Store::restore(folder.path(), &path, founded.recovery.clone()), Err(StoreError::DamagedBackup(_))));
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn a_backup_of_a_later_form_is_refused_by_its_number() {
    let (founded, _) = Founded::with_birth(2);
    let backup = fs::read(founded.back_up("backup.tar")).unwrap();
    let path = founded.file("later.tar");
    let later = altered(&backup, &founded.data_key(), |lines| {
        lines[0]["form"] = 2.into();
        lines[0]["further"] = "unknown".into();
    });
    fs::write(&path, later).unwrap();
    assert!(matches!(founded.open().add_backup(&path), Err(StoreError::Newer(2))));
}

#[test]
fn a_backup_of_another_practice_is_refused() {
    let ((founded, _), (other, _)) = (Founded::with_birth(2), Founded::with_birth(3));
    let backup = other.back_up("backup.tar");
    let before = founded.rows();
    let mut store = founded.open();
    assert!(matches!(store.add_backup(&backup), Err(StoreError::OtherPractice)));
    assert!(matches!(store.is_backup_of(&backup), Err(StoreError::OtherPractice)));
    store.is_backup_of(&founded_backup(&store, &founded)).unwrap();
    store.close().unwrap();
    assert_eq!(founded.rows(), before);
}

fn founded_backup(store: &Store, founded: &Founded) -> std::path::PathBuf {
    back_up(store, &founded.file("own.tar"))
}

#[test]
fn what_cannot_be_opened_or_would_stand_over_another_practice_is_not_restored() {
    let (founded, _) = Founded::with_birth(2);
    let backup = founded.back_up("backup.tar");
    let again = Store::restore(founded.path(), &backup, passphrase());
    assert!(matches!(again, Err(StoreError::AlreadyThere)));
    let folder = tempfile::tempdir().unwrap();
    for wrong in ["seven quiet heron", "AGE-SECRET-KEY-1"] {
        let refused = Store::restore(folder.path(), &backup, Passphrase::from(wrong.to_owned()));
        assert!(matches!(refused, Err(StoreError::WrongPassphrase)), "{wrong}");
    }
    let nothing = Store::restore(folder.path(), &founded.file("nothing.tar"), passphrase());
    assert!(matches!(nothing, Err(StoreError::NotBackup(_))));
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn a_damaged_key_file_is_no_obstacle_to_the_other_one_and_is_told() {
    let (founded, _) = Founded::with_birth(2);
    let backup = fs::read(founded.back_up("backup.tar")).unwrap();
    let mut broken = members(&backup);
    broken[1].1[40] ^= 1;
    let path = founded.file("broken.tar");
    fs::write(&path, join(&broken)).unwrap();
    let folder = tempfile::tempdir().unwrap();
    let by_passphrase = Store::restore(folder.path(), &path, passphrase());
    assert!(matches!(by_passphrase, Err(StoreError::WrongPassphrase | StoreError::DamagedKey(_))), "{:?}", by_passphrase.err());
    let (store, told) = Store::restore(folder.path(), &path, founded.recovery.clone()).unwrap();
    assert_eq!((told.added, told.damaged_keys), (2, vec![PASSPHRASE_KEY]));
    store.close().unwrap();
    assert!(!folder.path().join(PASSPHRASE_KEY).exists());
    Store::change_passphrase(folder.path(), founded.recovery.clone(), passphrase()).unwrap();
    Store::open(folder.path(), passphrase()).unwrap();

    broken.remove(2);
    fs::write(&path, join(&broken)).unwrap();
    let folder = tempfile::tempdir().unwrap();
    let without = Store::restore(folder.path(), &path, founded.recovery.clone());
    assert!(matches!(without, Err(StoreError::DamagedKey(_))));
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn a_wipe_that_was_not_finished_never_goes_on_over_what_was_restored() {
    let (founded, _) = Founded::with_birth(2);
    let backup = founded.back_up("backup.tar");
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("wipe-begun"), "").unwrap();
    Store::restore(folder.path(), &backup, founded.recovery.clone()).unwrap().0.close().unwrap();
    Store::finish_wipe(folder.path(), None).unwrap();
    assert!(Store::open_with_identity(folder.path(), &founded.recovery).is_ok());
}

#[test]
fn a_database_without_keys_is_kept_when_a_practice_is_restored_beside_it() {
    let (founded, _) = Founded::with_birth(2);
    let backup = founded.back_up("backup.tar");
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join(DATABASE), "an old database").unwrap();
    Store::restore(folder.path(), &backup, founded.recovery.clone()).unwrap();
    assert_eq!(fs::read_to_string(folder.path().join(format!("without-key-1-{DATABASE}"))).unwrap(), "an old database");
}
