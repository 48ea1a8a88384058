//! A practice to try things on.

#![allow(dead_code, reason = "each test file uses its own part")]

#[cfg(target_os = "linux")]
pub mod again;
pub mod backups;
pub mod chained;
pub mod inbox;
pub mod vault;

use std::path::{Path, PathBuf};

use rusqlite::Connection;
use secundine_domain::entry::{BirthId, Entry, EntryId};
use secundine_domain::fact::Fact;
use secundine_domain::file::FileId;
use secundine_domain::time::{Occurred, Stamp};
use secundine_store::{DATABASE, ExposeSecret, FILE_KEY, Note, Passphrase, RECOVERY_KEY, Store};
use tempfile::TempDir;

pub const PASSPHRASE: &str = "seven quiet herons";

pub fn passphrase() -> Passphrase {
    Passphrase::from(PASSPHRASE.to_owned())
}

/// A practice that was founded, and is closed.
pub struct Founded {
    pub folder: TempDir,
    pub recovery: Passphrase,
}

impl Founded {
    pub fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let (store, recovery) = Store::create(folder.path(), passphrase()).unwrap();
        store.close().unwrap();
        Self { folder, recovery }
    }

    /// A practice with one birth of so many entries.
    pub fn with_birth(entries: usize) -> (Self, BirthId) {
        let founded = Self::new();
        let mut store = founded.open();
        let birth = BirthId(store.next_id());
        write(&mut store, birth, entries);
        store.close().unwrap();
        (founded, birth)
    }

    pub fn path(&self) -> &Path {
        self.folder.path()
    }

    pub fn file(&self, name: &str) -> PathBuf {
        self.path().join(name)
    }

    /// By the recovery identity, which is quick.
    pub fn open(&self) -> Store {
        Store::open_with_identity(self.path(), &self.recovery).unwrap()
    }

    pub fn data_key(&self) -> String {
        data_key(self.path(), self.recovery.expose_secret())
    }

    /// The database as SQLCipher sees it, past the store.
    pub fn raw(&self) -> Connection {
        raw(&self.file(DATABASE), &self.data_key())
    }
}

/// The key of the database, unwrapped by the age crate alone.
pub fn data_key(folder: &Path, identity: &str) -> String {
    let identity: age::x25519::Identity = identity.parse().unwrap();
    let sealed = std::fs::read(folder.join(RECOVERY_KEY)).unwrap();
    String::from_utf8(age::decrypt(&identity, &sealed).unwrap()).unwrap()
}

pub fn raw(database: &Path, key: &str) -> Connection {
    let connection = Connection::open(database).unwrap();
    connection.execute_batch(&format!("PRAGMA key = \"x'{key}'\"")).unwrap();
    connection
}

pub fn stamp(wall_ms: i64) -> Stamp {
    Stamp { wall_ms, offset_min: 60, zone: None, boot: None }
}

pub fn entry(id: EntryId, birth: BirthId, wall_ms: i64, fact: Fact) -> Entry {
    let recorded = stamp(wall_ms);
    let occurred = Occurred::Marked(recorded.clone());
    Entry { id, birth, author: "Ida Canaryname".to_owned(), occurred, recorded, fact, amends: None }
}

/// Writes notes, numbered from the next free number on.
pub fn write(store: &mut Store, birth: BirthId, count: usize) {
    for _ in 0..count {
        let id = store.next_id();
        let fact = Fact::Noted { text: format!("canarynote {}", id.n) };
        store.append(&entry(id, birth, 1_795_570_800_000 + i64::try_from(id.n).unwrap(), fact)).unwrap();
    }
}

/// Two births whose entries alternate: 1 to 3, 7 and 8 of the one, 4 to 6, 9 and 10 of the other.
pub fn two_births(store: &mut Store) -> (BirthId, BirthId) {
    let one = BirthId(store.next_id());
    write(store, one, 3);
    let other = BirthId(store.next_id());
    write(store, other, 3);
    write(store, one, 2);
    write(store, other, 2);
    (one, other)
}

/// The numbers of the entries of a birth, in order.
pub fn numbers(store: &Store, birth: BirthId) -> Vec<u64> {
    store.entries(birth).unwrap().iter().map(|stored| stored.entry.id.n).collect()
}

/// A file that was sealed on another device, as it comes through a practice's bucket: with its key.
pub fn from_elsewhere(store: &mut Store, plain: &[u8]) -> FileId {
    let elsewhere = Founded::new();
    let other = elsewhere.open();
    let file = other.keep_file(plain).unwrap();
    store.put_sealed_file(file, &other.sealed_file(file).unwrap()).unwrap();
    let key = other.file_key(file).unwrap().to_vec();
    store.note_down(&[Note::Put(FILE_KEY, file.0.to_vec(), key)]).unwrap();
    file
}
