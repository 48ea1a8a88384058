//! The chain of a device as its published form says, worked out past the store; and stores that somebody has been at.

use std::fs;
use std::path::{Path, PathBuf};

use ed25519_dalek::{Signer, SigningKey};
use rusqlite::{Connection, params};
use secundine_domain::entry::{BirthId, DeviceId, Entry, EntryId};
use secundine_domain::fact::Fact;
use secundine_store::{DATABASE, HEAD, Misfit, MisfitKind, Passphrase, RECOVERY_KEY, Store, StoreError, Verdict};
use sha2::{Digest, Sha256};
use tempfile::TempDir;

use super::{Founded, entry, raw};

/// A device that writes past the store.
pub struct Scribe {
    pub key: SigningKey,
    pub n: u64,
    pub link: [u8; 32],
}

impl Scribe {
    pub fn new(seed: [u8; 32]) -> Self {
        Self { key: SigningKey::from_bytes(&seed), n: 0, link: [0; 32] }
    }

    pub fn device(&self) -> DeviceId {
        let hash = Sha256::digest(self.key.verifying_key().as_bytes());
        DeviceId(*hash.first_chunk().unwrap())
    }

    pub fn next(&self) -> EntryId {
        EntryId { device: self.device(), n: self.n + 1 }
    }

    /// Makes its public key known.
    pub fn introduce(&self, raw: &Connection) {
        let public = self.key.verifying_key().to_bytes();
        raw.execute("INSERT INTO device (id, public) VALUES (?1, ?2)", params![self.device().0, public]).unwrap();
    }

    /// Link and signature of the next entry.
    pub fn seal(&mut self, birth: &[u8], body: &[u8]) -> ([u8; 32], [u8; 64]) {
        self.n += 1;
        let n = self.n.to_be_bytes();
        let linked = [b"secundine link 1".as_slice(), &self.link, birth, &n, &Sha256::digest(body)].concat();
        self.link = Sha256::digest(linked).into();
        (self.link, self.key.sign(&[b"secundine entry 1".as_slice(), &n, &self.link].concat()).to_bytes())
    }

    /// Writes its next entry.
    pub fn write(&mut self, raw: &Connection, entry: &Entry) {
        let (birth, body) = (birth_key(entry.birth), entry.encode().unwrap());
        let (link, seal) = self.seal(&birth, &body);
        let insert = "INSERT INTO entry (birth, device, n, body, link, signature) VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
        raw.execute(insert, params![birth, self.device().0, self.n, body, link, seal]).unwrap();
    }
}

pub fn birth_key(birth: BirthId) -> Vec<u8> {
    [birth.0.device.0.as_slice(), &birth.0.n.to_be_bytes()].concat()
}

/// A closed store: several births whose entries alternate, and entries of another device. Notes have so many letters.
pub struct Chained {
    pub founded: Founded,
    pub own: DeviceId,
    pub other: DeviceId,
    pub entries: u64,
}

/// Entries of the other device.
pub const OTHERS: u64 = 4;

impl Chained {
    pub fn new(entries: u64, letters: usize) -> Self {
        let founded = Founded::new();
        let mut store = founded.open();
        let first = store.next_id();
        for k in 0..entries {
            let birth = BirthId(EntryId { n: 1 + k % 3, ..first });
            let text = format!("{k} {}", "x".repeat(letters));
            store.append(&entry(store.next_id(), birth, 1_795_570_800_000, Fact::Noted { text })).unwrap();
        }
        store.close().unwrap();
        let (raw, mut scribe) = (founded.raw(), Scribe::new([9; 32]));
        scribe.introduce(&raw);
        for _ in 0..OTHERS {
            let fact = Fact::Noted { text: "of another device".to_owned() };
            scribe.write(&raw, &entry(scribe.next(), BirthId(first), 1_795_570_800_000, fact));
        }
        raw.close().unwrap();
        Self { founded, own: first.device, other: scribe.device(), entries }
    }

    /// A copy of the folder's files, to be tampered with.
    pub fn copy(&self) -> Copy<'_> {
        let folder = tempfile::tempdir().unwrap();
        for name in [DATABASE, HEAD, RECOVERY_KEY, &format!("{DATABASE}-wal")] {
            if self.founded.file(name).exists() {
                fs::copy(self.founded.file(name), folder.path().join(name)).unwrap();
            }
        }
        Copy { folder, recovery: &self.founded.recovery, key: self.founded.data_key() }
    }

    /// What a check says once somebody who has the key has been at the tables, and has put the triggers back.
    pub fn after(&self, tamper: impl FnOnce(&Connection)) -> Verdict {
        let copy = self.copy();
        copy.tamper(tamper);
        copy.verify().unwrap()
    }
}

/// A copy of a store's folder.
pub struct Copy<'a> {
    folder: TempDir,
    recovery: &'a Passphrase,
    key: String,
}

impl Copy<'_> {
    pub fn file(&self, name: &str) -> PathBuf {
        self.path().join(name)
    }

    pub fn path(&self) -> &Path {
        self.folder.path()
    }

    pub fn open(&self) -> Result<Store, StoreError> {
        Store::open_with_identity(self.path(), self.recovery)
    }

    pub fn verify(&self) -> Result<Verdict, StoreError> {
        self.open()?.verify()
    }

    /// Whether opening fails or the check names something.
    pub fn is_found_out(&self) -> bool {
        self.verify().map_or(true, |verdict| verdict.misfit.is_some())
    }

    pub fn tamper(&self, tamper: impl FnOnce(&Connection)) {
        let raw = raw(&self.file(DATABASE), &self.key);
        past_triggers(&raw, tamper);
        raw.close().unwrap();
    }
}

/// Does what the triggers forbid, and puts them back.
pub fn past_triggers(raw: &Connection, tamper: impl FnOnce(&Connection)) {
    let triggers: rusqlite::Result<Vec<(String, String)>> = raw
        .prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
        .and_then(|mut select| select.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?.collect());
    let triggers = triggers.unwrap();
    for (name, _) in &triggers {
        raw.execute(&format!("DROP TRIGGER {name}"), []).unwrap();
    }
    tamper(raw);
    for (_, sql) in &triggers {
        raw.execute(sql, []).unwrap();
    }
}

/// The place and kind of a misfit at an entry.
pub fn at(verdict: &Verdict) -> Option<(DeviceId, u64, MisfitKind)> {
    match verdict.misfit {
        Some(Misfit::Entry { device, n, kind, .. }) => Some((device, n, kind)),
        _ => None,
    }
}
