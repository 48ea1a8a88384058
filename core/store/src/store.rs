//! One SQLCipher database, one writer, entries that are only ever added.

use std::path::{Path, PathBuf};

use ed25519_dalek::VerifyingKey;
use rusqlite::{Connection, OpenFlags, OptionalExtension, params};
use secundine_domain::entry::{BirthId, DeviceId, Entry, EntryId};
use sha2::{Digest, Sha256};

use crate::chain::{Bound, DeviceKey, Link, Position};
use crate::database::{
    DATABASE, FORM, TABLES, birth_key, birth_of, connect, make_folder, make_indexes, readable, set_aside_without_key,
};
use crate::exchange::Carried;
use crate::head::{self, HEAD, Head, Told};
use crate::keys::{DataKey, PASSPHRASE_KEY, Passphrase, RECOVERY_KEY, check_new};
use crate::{StoreError, inbox, reserve, restore, salvage};

/// The open store of one practice on this device.
pub struct Store {
    pub(crate) connection: Connection,
    /// The key of the database, which also seals backups.
    pub(crate) data: DataKey,
    pub(crate) key: DeviceKey,
    /// How far this device's chain goes on disk.
    last: Position,
    head: Head,
    pub(crate) folder: PathBuf,
    /// Set when a write failed in a way that leaves unknown what is on disk: nothing more is written until it is opened anew.
    broken: Option<String>,
    /// It is a damaged store, as far as it could be read.
    read_only: bool,
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
        let key = folder.join(PASSPHRASE_KEY).exists() || folder.join(RECOVERY_KEY).exists();
        key && !folder.join(restore::BEGUN).exists()
    }

    /// Whether a practice that was worked with lost both its key files: its database and head are here, and nothing opens
    /// them. A founding that was cut short leaves no head.
    #[must_use]
    pub fn keys_missing(folder: &Path) -> bool {
        !Self::exists(folder) && folder.join(DATABASE).exists() && folder.join(HEAD).exists()
    }

    /// Why there is nothing to open where no key file is.
    #[must_use]
    pub fn absent(folder: &Path) -> StoreError {
        if Self::keys_missing(folder) { StoreError::KeysMissing } else { StoreError::NoPractice }
    }

    /// Founds a practice: random key, empty database, both key files. Gives the store and the recovery identity.
    ///
    /// # Errors
    /// [`StoreError::AlreadyThere`], a passphrase that cannot be, or what kept the files from being written.
    pub fn create(folder: &Path, passphrase: Passphrase) -> Result<(Self, Passphrase), StoreError> {
        if Self::exists(folder) {
            return Err(StoreError::AlreadyThere);
        }
        check_new(&passphrase)?;
        // A wipe that is not at its end would destroy this practice too; without a key store nothing of another's resists.
        Self::finish_wipe(folder, None)?;
        make_folder(folder)
            .and_then(|()| restore::clear(folder))
            .and_then(|()| set_aside_without_key(folder))
            .map_err(|error| StoreError::writing_file(&error))?;
        let key = DataKey::random()?;
        let store = Self::found(folder, key)?;
        // The passphrase's key file comes last: until it is there, this folder holds no practice.
        let recovery = store.data.wrap(folder, passphrase)?;
        Ok((store, recovery))
    }

    /// Opens the practice with its passphrase.
    ///
    /// # Errors
    /// [`StoreError`] says why not; nothing is changed.
    pub fn open(folder: &Path, passphrase: Passphrase) -> Result<Self, StoreError> {
        if !Self::exists(folder) {
            return Err(Self::absent(folder));
        }
        Self::with_key(folder, DataKey::by_passphrase(folder, passphrase)?)
    }

    /// Opens the practice with the printed recovery identity.
    ///
    /// # Errors
    /// [`StoreError`] says why not; nothing is changed.
    pub fn open_with_identity(folder: &Path, identity: &Passphrase) -> Result<Self, StoreError> {
        if !Self::exists(folder) {
            return Err(Self::absent(folder));
        }
        Self::with_key(folder, DataKey::by_identity(folder, identity)?)
    }

    /// An empty store with this key. Without key files it is no practice yet.
    pub(crate) fn found(folder: &Path, data: DataKey) -> Result<Self, StoreError> {
        let connection = connect(folder, &data, OpenFlags::SQLITE_OPEN_CREATE)?;
        let tables = format!("BEGIN; {TABLES} PRAGMA user_version = {FORM}; COMMIT;");
        connection.execute_batch(&tables).map_err(|error| StoreError::writing(&error))?;
        let key = DeviceKey::random()?;
        key.keep(&connection).map_err(|error| StoreError::writing(&error))?;
        inbox::prepare(&connection, folder)?;
        reserve::make(folder);
        let (last, head) = (Position::START, Head::new(folder, false));
        Ok(Self { connection, data, key, last, head, folder: folder.to_owned(), broken: None, read_only: false })
    }

    /// A read that the system failed may look like damage: SQLCipher takes a salt that it could not read for another one. So
    /// damage has to show twice, the second time where the file can be read.
    pub(crate) fn with_key(folder: &Path, data: DataKey) -> Result<Self, StoreError> {
        salvage::finish(folder).map_err(|error| StoreError::writing_file(&error))?;
        match Self::with_key_once(folder, data.clone()) {
            Err(StoreError::Damaged(_)) => {
                readable(folder).map_err(|error| StoreError::reading_file(&error))?;
                Self::with_key_once(folder, data)
            }
            opened => opened,
        }
    }

    fn with_key_once(folder: &Path, data: DataKey) -> Result<Self, StoreError> {
        let connection = connect(folder, &data, OpenFlags::empty())?;
        // On a full disk the practice opens all the same; the inbox then stays as it was.
        let _ = inbox::prepare(&connection, folder);
        let _ = make_indexes(&connection);
        reserve::make(folder);
        if reserve::low_space(folder) {
            spare(&connection).map_err(|error| StoreError::reading(&error))?;
        }
        let key = DeviceKey::own(&connection)?;
        let (last, head) = (Position::START, Head::new(folder, false));
        let mut store = Self { connection, data, key, last, head, folder: folder.to_owned(), broken: None, read_only: false };
        store.last = store.find_last(store.key.id())?;
        if let Told::Position(device, at) = head::read(folder, &store.devices()?) {
            let own = device == store.key.id();
            let fits = own && (at == store.last || store.link_at(device, at.n)? == Some(at.link));
            store.head = Head::new(folder, !fits);
        }
        Ok(store)
    }

    /// A damaged store as far as it could be read: its entries lie in memory, and nothing of it is ever written.
    pub(crate) fn reading(folder: &Path, data: DataKey, connection: Connection) -> Result<Self, StoreError> {
        // It signs nothing.
        let key = DeviceKey::random()?;
        let (last, head) = (Position::START, Head::new(folder, false));
        Ok(Self { connection, data, key, last, head, folder: folder.to_owned(), broken: None, read_only: true })
    }

    /// Whether it is a damaged store that is only read.
    #[must_use]
    pub fn is_read_only(&self) -> bool {
        self.read_only
    }

    /// Whether it can be written, and it is known what is on disk.
    pub(crate) fn writable(&self) -> Result<(), StoreError> {
        match &self.broken {
            _ if self.read_only => Err(StoreError::ReadOnly),
            Some(reason) => Err(StoreError::NotSaved(reason.clone())),
            None => Ok(()),
        }
    }

    /// The folder of the practice.
    #[must_use]
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// The id that the next entry of this device takes.
    #[must_use]
    pub fn next_id(&self) -> EntryId {
        EntryId { device: self.key.id(), n: self.last.n + 1 }
    }

    /// How far this device's chain goes on disk.
    pub(crate) fn position(&self) -> Position {
        self.last
    }

    /// Puts an entry on disk, bound to the one before it and signed by this device. When this returns, the entry survives a
    /// kill and a loss of power.
    ///
    /// # Errors
    /// [`StoreError::Full`] or [`StoreError::NotSaved`]: the entry is NOT on disk. After a write that failed, nothing more
    /// is written until the store is opened anew, since what a failed sync left behind is unknown. An entry whose id is not
    /// [`Store::next_id`] is refused before anything is written. [`StoreError::ReadOnly`] for a damaged store that is only
    /// read.
    pub fn append(&mut self, entry: &Entry) -> Result<Stored, StoreError> {
        let stored = self.append_all(std::slice::from_ref(entry))?;
        stored.into_iter().next().ok_or_else(|| StoreError::NotSaved("no entry".to_owned()))
    }

    /// Puts entries that belong together on disk, all or none, for the price of one.
    ///
    /// # Errors
    /// As for [`Store::append`]: none of them is on disk.
    pub fn append_all(&mut self, entries: &[Entry]) -> Result<Vec<Stored>, StoreError> {
        self.append_beside(entries, None)
    }

    /// The same, with a row that names the file of the inbox that they came from.
    pub(crate) fn append_beside(&mut self, entries: &[Entry], row: Option<&inbox::Row>) -> Result<Vec<Stored>, StoreError> {
        self.writable()?;
        let bound = self.key.bind(self.last, entries)?;
        let mut written = self.insert(entries, &bound, row);
        if matches!(written, Err(StoreError::Full)) && reserve::give_up(&self.folder) {
            written = self.make_room().and_then(|()| self.insert(entries, &bound, row));
        }
        written.map_err(|error| self.note(error))?;
        if let Some(last) = bound.last() {
            self.last = last.at;
            self.head.tell(&last.at, &last.seal);
        }
        let stored = |(entry, bound): (&Entry, &Bound)| Stored { entry: entry.clone(), digest: bound.digest };
        Ok(entries.iter().zip(&bound).map(stored).collect())
    }

    fn insert(&mut self, entries: &[Entry], bound: &[Bound], row: Option<&inbox::Row>) -> Result<(), StoreError> {
        insert(&mut self.connection, entries, bound, row).map_err(|error| StoreError::writing(&error))
    }

    /// What it means that a write failed. Unless the disk is only full, nothing is written any more.
    pub(crate) fn note(&mut self, error: StoreError) -> StoreError {
        if let StoreError::NotSaved(reason) = &error {
            self.broken = Some(reason.clone());
        }
        error
    }

    /// Folds the log into the database and keeps it short from now on, so that the room of the reserve is for entries.
    fn make_room(&self) -> Result<(), StoreError> {
        let spared = spare(&self.connection);
        let folded = spared.and_then(|()| self.connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(())));
        match folded.map_err(|error| StoreError::writing(&error)) {
            // What is in the log stays there.
            Err(StoreError::Full) => Ok(()),
            folded => folded,
        }
    }

    /// Whether the disk is full, and entries are written in the room that was kept for them; or too full for a reserve.
    #[must_use]
    pub fn low_space(&self) -> bool {
        reserve::low_space(&self.folder)
    }

    /// Goes on as a new device, whose key is on disk already. The head of the old one is kept and looked at by every check.
    pub(crate) fn become_device(&mut self, key: DeviceKey) {
        let head = Head::new(&self.folder, self.folder.join(head::HEAD).exists());
        (self.key, self.last, self.head) = (key, Position::START, head);
    }

    /// The public keys of the devices that are known.
    pub(crate) fn devices(&self) -> Result<Vec<VerifyingKey>, StoreError> {
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let mut select = self.connection.prepare("SELECT public FROM device ORDER BY id").map_err(reading)?;
        let keys = select.query_map([], |row| row.get::<_, [u8; 32]>(0)).map_err(reading)?;
        let keys: Vec<[u8; 32]> = keys.collect::<Result<_, _>>().map_err(reading)?;
        Ok(keys.iter().filter_map(|key| VerifyingKey::from_bytes(key).ok()).collect())
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
        let joined = "SELECT body FROM entry WHERE birth = ?1 ORDER BY device, n LIMIT 1";
        let mut joined = self.connection.prepare_cached(joined).map_err(reading)?;
        let mut births = Vec::new();
        for key in self.birth_keys().map_err(reading)? {
            let Some(id) = birth_of(&key) else { continue };
            if id == BirthId::PRACTICE {
                continue;
            }
            let body: Option<Vec<u8>> =
                first.query_row(params![key, id.0.device.0, id.0.n], |row| row.get(0)).optional().map_err(reading)?;
            // A birth that was joined, and whose first entry is on another phone still.
            let body = match body {
                None => joined.query_row(params![key], |row| row.get(0)).optional().map_err(reading)?,
                known => known,
            };
            let registered_ms = body.map(|body| stored(&body)).transpose()?.map_or(0, |first| first.entry.recorded.wall_ms);
            births.push(Birth { id, registered_ms });
        }
        births.sort_by_key(|birth| std::cmp::Reverse((birth.registered_ms, birth.id)));
        Ok(births)
    }

    /// The distinct births, by hopping from one to the next in the tree instead of reading every entry.
    pub(crate) fn birth_keys(&self) -> rusqlite::Result<Vec<Vec<u8>>> {
        let mut hop = self.connection.prepare_cached(
            "WITH RECURSIVE hop(birth) AS (
                 SELECT min(birth) FROM entry
                 UNION ALL
                 SELECT (SELECT min(birth) FROM entry WHERE birth > hop.birth) FROM hop WHERE hop.birth IS NOT NULL
             ) SELECT birth FROM hop WHERE birth IS NOT NULL",
        )?;
        hop.query_map([], |row| row.get(0))?.collect()
    }

    /// The last entry of a device's chain that is here, be it of a birth that was erased. Each birth is looked at once.
    pub(crate) fn find_last(&self, device: DeviceId) -> Result<Position, StoreError> {
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let last = "SELECT n, link FROM entry WHERE birth = ?1 AND device = ?2 ORDER BY n DESC LIMIT 1";
        let mut last = self.connection.prepare(last).map_err(reading)?;
        let mut greatest = Position::START;
        for key in self.birth_keys().map_err(reading)? {
            let position = |row: &rusqlite::Row| Ok(Position { n: row.get(0)?, link: row.get(1)? });
            let found = last.query_row(params![key, device.0], position).optional().map_err(reading)?;
            greatest = found.filter(|found| found.n > greatest.n).unwrap_or(greatest);
        }
        let erased = self.all_erased()?.into_values().rfind(|entry| entry.device == device && entry.n > greatest.n);
        Ok(erased.map_or(greatest, |Carried { n, link, .. }| Position { n, link }))
    }

    /// The link of a device's entry of this number.
    pub(crate) fn link_at(&self, device: DeviceId, n: u64) -> Result<Option<Link>, StoreError> {
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let link = "SELECT link FROM entry WHERE birth = ?1 AND device = ?2 AND n = ?3";
        let mut link = self.connection.prepare(link).map_err(reading)?;
        for key in self.birth_keys().map_err(reading)? {
            let found = link.query_row(params![key, device.0, n], |row| row.get(0)).optional().map_err(reading)?;
            if found.is_some() {
                return Ok(found);
            }
        }
        Ok(self.erased_at(device, n)?.map(|erased| erased.link))
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

/// The log is begun again after so many frames instead of 1,000: its room is for entries.
fn spare(connection: &Connection) -> rusqlite::Result<()> {
    connection.query_row("PRAGMA wal_autocheckpoint = 32", [], |_| Ok(()))
}

/// Inserts entries in one transaction; one that fails is undone when it is dropped.
fn insert(connection: &mut Connection, entries: &[Entry], bound: &[Bound], row: Option<&inbox::Row>) -> rusqlite::Result<()> {
    let transaction = connection.transaction()?;
    let insert = "INSERT INTO entry (birth, device, n, body, link, signature) VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
    let mut insert = transaction.prepare_cached(insert)?;
    for (entry, bound) in entries.iter().zip(bound) {
        let Bound { birth, body, at, seal, .. } = bound;
        insert.execute(params![birth, entry.id.device.0, at.n, body, at.link, seal])?;
    }
    drop(insert);
    row.map_or(Ok(()), |row| row.insert(&transaction))?;
    transaction.commit()
}

pub(crate) fn stored(body: &[u8]) -> Result<Stored, StoreError> {
    use secundine_domain::entry::StoredError;
    let entry = Entry::decode(body).map_err(|error| match error {
        StoredError::Newer(form) => StoreError::Newer(i64::from(form)),
        unreadable @ StoredError::Unreadable(_) => StoreError::Damaged(unreadable.to_string()),
    })?;
    Ok(Stored { entry, digest: Sha256::digest(body).into() })
}

#[cfg(test)]
mod tests;
