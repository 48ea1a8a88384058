//! One SQLCipher database, one writer, entries that are only ever added.

use std::path::{Path, PathBuf};

use rusqlite::{Connection, OpenFlags, OptionalExtension, params};
use secundine_domain::entry::{BirthId, DeviceId, Entry, EntryId};
use sha2::{Digest, Sha256};

use crate::StoreError;
use crate::database::{FORM, TABLES, connect, make_folder, set_aside_without_key};
use crate::keys::{DataKey, PASSPHRASE_KEY, PASSPHRASE_LETTERS, Passphrase, RECOVERY_KEY};

/// The open store of one practice on this device.
pub struct Store {
    connection: Connection,
    device: DeviceId,
    last_n: u64,
    folder: PathBuf,
    /// Set when a write failed in a way that leaves unknown what is on disk: nothing more is written until it is opened anew.
    broken: Option<String>,
}

/// An entry with the SHA-256 of its stored bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stored {
    /// The entry.
    pub entry: Entry,
    /// SHA-256 of the bytes on disk.
    pub digest: [u8; 32],
}

/// A birth in the store.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Birth {
    /// Which.
    pub id: BirthId,
    /// When its first entry was written, UTC milliseconds.
    pub registered_ms: i64,
}

/// SHA-256 over the digests of the entries in the order of their ids, hexadecimal: names one state of a record.
#[must_use]
pub fn version(entries: &[Stored]) -> String {
    let mut ordered: Vec<&Stored> = entries.iter().collect();
    ordered.sort_by_key(|stored| stored.entry.id);
    let mut hash = Sha256::new();
    ordered.iter().for_each(|stored| hash.update(stored.digest));
    hex::encode(hash.finalize())
}

impl Store {
    /// Whether a practice is in this folder.
    #[must_use]
    pub fn exists(folder: &Path) -> bool {
        folder.join(PASSPHRASE_KEY).exists() || folder.join(RECOVERY_KEY).exists()
    }

    /// Founds a practice: random key, empty database, both key files. Gives the store and the recovery identity.
    ///
    /// # Errors
    /// [`StoreError::AlreadyThere`], [`StoreError::ShortPassphrase`], or what kept the files from being written.
    pub fn create(folder: &Path, passphrase: Passphrase) -> Result<(Self, Passphrase), StoreError> {
        use age::secrecy::ExposeSecret;
        if Self::exists(folder) {
            return Err(StoreError::AlreadyThere);
        }
        if passphrase.expose_secret().chars().count() < PASSPHRASE_LETTERS {
            return Err(StoreError::ShortPassphrase);
        }
        make_folder(folder).and_then(|()| set_aside_without_key(folder)).map_err(|error| StoreError::writing_file(&error))?;
        let key = DataKey::random()?;
        let store = Self::found(folder, &key)?;
        // The passphrase's key file comes last: until it is there, this folder holds no practice.
        let recovery = key.wrap(folder, passphrase)?;
        Ok((store, recovery))
    }

    /// Opens the practice with its passphrase.
    ///
    /// # Errors
    /// [`StoreError`] says why not; nothing is changed.
    pub fn open(folder: &Path, passphrase: Passphrase) -> Result<Self, StoreError> {
        if !Self::exists(folder) {
            return Err(StoreError::NoPractice);
        }
        Self::with_key(folder, &DataKey::by_passphrase(folder, passphrase)?)
    }

    /// Opens the practice with the printed recovery identity.
    ///
    /// # Errors
    /// [`StoreError`] says why not; nothing is changed.
    pub fn open_with_identity(folder: &Path, identity: &Passphrase) -> Result<Self, StoreError> {
        if !Self::exists(folder) {
            return Err(StoreError::NoPractice);
        }
        Self::with_key(folder, &DataKey::by_identity(folder, identity)?)
    }

    fn found(folder: &Path, key: &DataKey) -> Result<Self, StoreError> {
        let connection = connect(folder, key, OpenFlags::SQLITE_OPEN_CREATE)?;
        let mut id = [0_u8; 16];
        getrandom::fill(&mut id).map_err(|error| StoreError::NotSaved(error.to_string()))?;
        let tables = format!("BEGIN; {TABLES} PRAGMA user_version = {FORM}; COMMIT;");
        connection.execute_batch(&tables).map_err(|error| StoreError::writing(&error))?;
        connection.execute("INSERT INTO device (id) VALUES (?1)", params![id]).map_err(|error| StoreError::writing(&error))?;
        Ok(Self { connection, device: DeviceId(id), last_n: 0, folder: folder.to_owned(), broken: None })
    }

    fn with_key(folder: &Path, key: &DataKey) -> Result<Self, StoreError> {
        let connection = connect(folder, key, OpenFlags::empty())?;
        let device: Option<[u8; 16]> = connection
            .query_row("SELECT id FROM device", [], |row| row.get(0))
            .optional()
            .map_err(|error| StoreError::reading(&error))?;
        let device = DeviceId(device.ok_or_else(|| StoreError::Damaged("the device has no id".to_owned()))?);
        let mut store = Self { connection, device, last_n: 0, folder: folder.to_owned(), broken: None };
        store.last_n = store.find_last_n().map_err(|error| StoreError::reading(&error))?;
        Ok(store)
    }

    /// The folder of the practice.
    #[must_use]
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// The id that the next entry of this device takes.
    #[must_use]
    pub fn next_id(&self) -> EntryId {
        EntryId { device: self.device, n: self.last_n + 1 }
    }

    /// Puts an entry on disk. When this returns, the entry survives a kill and a loss of power.
    ///
    /// # Errors
    /// [`StoreError::Full`] or [`StoreError::NotSaved`]: the entry is NOT on disk. After the latter nothing more is
    /// written until the store is opened anew, since what a failed sync left behind is unknown.
    pub fn append(&mut self, entry: &Entry) -> Result<Stored, StoreError> {
        let stored = self.append_all(std::slice::from_ref(entry))?;
        stored.into_iter().next().ok_or_else(|| StoreError::NotSaved("no entry".to_owned()))
    }

    /// Puts entries that belong together on disk, all or none, for the price of one.
    ///
    /// # Errors
    /// As for [`Store::append`]: none of them is on disk.
    pub fn append_all(&mut self, entries: &[Entry]) -> Result<Vec<Stored>, StoreError> {
        if let Some(reason) = &self.broken {
            return Err(StoreError::NotSaved(reason.clone()));
        }
        let bodies: Vec<Vec<u8>> = entries
            .iter()
            .map(Entry::encode)
            .collect::<Result<_, _>>()
            .map_err(|error| StoreError::NotSaved(error.to_string()))?;
        insert(&mut self.connection, entries, &bodies).map_err(|error| {
            let meaning = StoreError::writing(&error);
            if let StoreError::NotSaved(reason) = &meaning {
                self.broken = Some(reason.clone());
            }
            meaning
        })?;
        let own = entries.iter().filter(|entry| entry.id.device == self.device).map(|entry| entry.id.n);
        self.last_n = own.fold(self.last_n, u64::max);
        Ok(entries
            .iter()
            .zip(&bodies)
            .map(|(entry, body)| Stored { entry: entry.clone(), digest: Sha256::digest(body).into() })
            .collect())
    }

    /// Every entry of a birth, in the order of device and number.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] where the store cannot be read, [`StoreError::Newer`] where an entry is of a later form.
    pub fn entries(&self, birth: BirthId) -> Result<Vec<Stored>, StoreError> {
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let mut select =
            self.connection.prepare_cached("SELECT body FROM entry WHERE birth = ?1 ORDER BY device, n").map_err(reading)?;
        let bodies = select.query_map(params![birth_key(birth)], |row| row.get::<_, Vec<u8>>(0)).map_err(reading)?;
        bodies.map(|body| stored(&body.map_err(reading)?)).collect()
    }

    /// The births, latest registered first.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] where the store cannot be read.
    pub fn births(&self) -> Result<Vec<Birth>, StoreError> {
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let mut first = self
            .connection
            .prepare_cached("SELECT body FROM entry WHERE birth = ?1 AND device = ?2 AND n = ?3")
            .map_err(reading)?;
        let mut births = Vec::new();
        for key in self.birth_keys().map_err(reading)? {
            let Some(id) = birth_of(&key) else { continue };
            if id == BirthId::PRACTICE {
                continue;
            }
            let body: Option<Vec<u8>> =
                first.query_row(params![key, id.0.device.0, id.0.n], |row| row.get(0)).optional().map_err(reading)?;
            let registered_ms = body.map(|body| stored(&body)).transpose()?.map_or(0, |first| first.entry.recorded.wall_ms);
            births.push(Birth { id, registered_ms });
        }
        births.sort_by_key(|birth| std::cmp::Reverse((birth.registered_ms, birth.id)));
        Ok(births)
    }

    /// The distinct births, by hopping from one to the next in the tree instead of reading every entry.
    fn birth_keys(&self) -> rusqlite::Result<Vec<Vec<u8>>> {
        let mut hop = self.connection.prepare_cached(
            "WITH RECURSIVE hop(birth) AS (
                 SELECT min(birth) FROM entry
                 UNION ALL
                 SELECT (SELECT min(birth) FROM entry WHERE birth > hop.birth) FROM hop WHERE hop.birth IS NOT NULL
             ) SELECT birth FROM hop WHERE birth IS NOT NULL",
        )?;
        hop.query_map([], |row| row.get(0))?.collect()
    }

    fn find_last_n(&self) -> rusqlite::Result<u64> {
        let mut last = self.connection.prepare("SELECT max(n) FROM entry WHERE birth = ?1 AND device = ?2")?;
        let mut greatest = 0;
        for key in self.birth_keys()? {
            let n: Option<u64> = last.query_row(params![key, self.device.0], |row| row.get(0))?;
            greatest = greatest.max(n.unwrap_or(0));
        }
        Ok(greatest)
    }

    /// Folds the write-ahead log into the database and lets go of the key.
    ///
    /// # Errors
    /// None of the entries is at stake; [`StoreError`] says what kept the files from being tidied.
    pub fn close(self) -> Result<(), StoreError> {
        let tidy = self.connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(()));
        tidy.map_err(|error| StoreError::writing(&error))?;
        self.connection.close().map_err(|(_, error)| StoreError::writing(&error))
    }
}

/// Inserts entries in one transaction; one that fails is undone when it is dropped.
fn insert(connection: &mut Connection, entries: &[Entry], bodies: &[Vec<u8>]) -> rusqlite::Result<()> {
    let transaction = connection.transaction()?;
    let mut insert = transaction.prepare_cached("INSERT INTO entry (birth, device, n, body) VALUES (?1, ?2, ?3, ?4)")?;
    for (entry, body) in entries.iter().zip(bodies) {
        insert.execute(params![birth_key(entry.birth), entry.id.device.0, entry.id.n, body])?;
    }
    drop(insert);
    transaction.commit()
}

fn stored(body: &[u8]) -> Result<Stored, StoreError> {
    use secundine_domain::entry::StoredError;
    let entry = Entry::decode(body).map_err(|error| match error {
        StoredError::Newer(form) => StoreError::Newer(i64::from(form)),
        unreadable @ StoredError::Unreadable(_) => StoreError::Damaged(unreadable.to_string()),
    })?;
    Ok(Stored { entry, digest: Sha256::digest(body).into() })
}

/// A birth's key in the table: its device, then its number, so that births of one device lie in their order.
fn birth_key(birth: BirthId) -> [u8; 24] {
    let mut key = [0; 24];
    let (device, n) = key.split_at_mut(16);
    device.copy_from_slice(&birth.0.device.0);
    n.copy_from_slice(&birth.0.n.to_be_bytes());
    key
}

fn birth_of(key: &[u8]) -> Option<BirthId> {
    let (device, n) = key.split_at_checked(16)?;
    let (device, n) = (device.try_into().ok()?, n.try_into().ok()?);
    Some(BirthId(EntryId { device: DeviceId(device), n: u64::from_be_bytes(n) }))
}

#[cfg(test)]
mod tests;
