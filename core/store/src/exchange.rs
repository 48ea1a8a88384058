//! What this store gives to the practice's other devices and takes from them: entries with what proves them.
//!
//! Of entries that came from elsewhere the last of each run has its signature checked when it is taken in; those before it
//! are bound to it by the chain. [`Store::verify`] checks each.

use std::collections::{BTreeMap, BTreeSet};

use ed25519_dalek::{Signature, VerifyingKey};
use rusqlite::{Connection, OptionalExtension, params};
use secundine_domain::entry::{BirthId, DeviceId, Entry, EntryId};
use sha2::{Digest, Sha256};

use crate::chain::{DeviceKey, Link, Position, Seal, device_of};
use crate::database::{BirthKey, birth_key, birth_of};
use crate::erasure::{Erased, remains};
use crate::notes::{Note, put, write_notes};
use crate::verify::Place;
use crate::{Misfit, MisfitKind, Store, StoreError};

/// How far each chain goes that came from elsewhere: its device, then number and link.
const CHAIN: &str = "chain";

/// An entry with what proves it: as it is on disk, in an archive, and on its way between devices.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Carried {
    /// The device that wrote it.
    pub device: DeviceId,
    /// Its number there.
    pub n: u64,
    /// The birth that it belongs to, device and number as they stand in the chain: 24 bytes.
    pub birth: [u8; 24],
    /// SHA-256 of its stored form, which the chain binds.
    pub digest: [u8; 32],
    /// Its stored form; none where its birth was erased.
    pub body: Option<Vec<u8>>,
    /// The link of the chain at it.
    pub link: [u8; 32],
    /// Its device's signature of number and link.
    pub seal: [u8; 64],
}

impl Carried {
    /// An entry of this stored form.
    pub(crate) fn whole(device: DeviceId, n: u64, birth: BirthKey, body: Vec<u8>, link: Link, seal: Seal) -> Self {
        let digest = Sha256::digest(&body).into();
        Self { device, n, birth, digest, body: Some(body), link, seal }
    }
}

/// What was taken in.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TakenIn {
    /// Entries that were not here before.
    pub added: u64,
    /// Entries that were here already.
    pub known: u64,
    /// The births that they belong to, the practice itself among them.
    pub births: Vec<BirthId>,
}

/// The link of a chain after one more entry: `before` is the link so far, `n` the number of the new one.
#[must_use]
pub fn link_after(before: &[u8; 32], birth: &[u8; 24], n: u64, digest: &[u8; 32]) -> [u8; 32] {
    Position { n: n.saturating_sub(1), link: *before }.then(birth, digest).link
}

/// A birth as it stands in the chain: its device, then its number.
#[must_use]
pub fn chained(birth: BirthId) -> [u8; 24] {
    birth_key(birth)
}

/// The device whose public key this is.
#[must_use]
pub fn device_with(public: &[u8; 32]) -> Option<DeviceId> {
    VerifyingKey::from_bytes(public).ok().map(|key| device_of(&key))
}

/// Whether the device with this public key has signed a text of this domain.
#[must_use]
pub fn is_signed(public: &[u8; 32], domain: &[u8], text: &[u8], seal: &[u8; 64]) -> bool {
    let Ok(key) = VerifyingKey::from_bytes(public) else { return false };
    key.verify_strict(&[domain, text].concat(), &Signature::from_bytes(seal)).is_ok()
}

impl Store {
    /// Signs a text as this device. `domain` says what for; none begins as another does.
    #[must_use]
    pub fn sign(&self, domain: &[u8], text: &[u8]) -> [u8; 64] {
        self.key.sign(&[domain, text].concat())
    }

    /// This device's public key.
    #[must_use]
    pub fn public(&self) -> [u8; 32] {
        self.key.public().to_bytes()
    }

    /// This device.
    #[must_use]
    pub fn device(&self) -> DeviceId {
        self.key.id()
    }

    /// Goes on as a new device: what was written so far stays as it was signed, and what comes is signed by a new key.
    ///
    /// # Errors
    /// [`StoreError::Full`] or [`StoreError::NotSaved`]: it is the device that it was.
    pub fn renew_device(&mut self) -> Result<(), StoreError> {
        self.writable()?;
        let key = DeviceKey::random()?;
        let transaction = self.connection.unchecked_transaction().map_err(|error| StoreError::writing(&error))?;
        let kept = key.replace(&transaction).and_then(|()| transaction.commit());
        kept.map_err(|error| StoreError::writing(&error)).map_err(|error| self.note(error))?;
        self.become_device(key);
        Ok(())
    }

    /// The public keys of the devices whose entries are here, and of this one.
    ///
    /// # Errors
    /// [`StoreError`] where the store cannot be read.
    pub fn publics(&self) -> Result<BTreeMap<DeviceId, [u8; 32]>, StoreError> {
        Ok(self.devices()?.iter().map(|key| (device_of(key), key.to_bytes())).collect())
    }

    /// Entries that the chain of a device has after number `after`, in order, as long as their bodies have `most` bytes
    /// together (one at least).
    ///
    /// # Errors
    /// [`StoreError`] where the store cannot be read.
    pub fn carried(&self, device: DeviceId, after: u64, most: usize) -> Result<Vec<Carried>, StoreError> {
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        // Births hold their entries together, so the numbers of a device lie scattered; the places come first.
        let select = "SELECT n, length(body) FROM entry WHERE birth = ?1 AND device = ?2 AND n > ?3";
        let mut select = self.connection.prepare_cached(select).map_err(reading)?;
        let mut places: Vec<(u64, usize, BirthKey)> = Vec::new();
        for key in self.birth_keys().map_err(reading)? {
            let Ok(birth) = BirthKey::try_from(key.as_slice()) else { continue };
            let found = select.query_map(params![key, device.0, after], |row| Ok((row.get(0)?, row.get(1)?, birth)));
            places.extend(found.map_err(reading)?.collect::<Result<Vec<_>, _>>().map_err(reading)?);
        }
        let mut erased = self.all_erased()?;
        erased.retain(|(of, n), _| *of == device && *n > after);
        places.extend(erased.iter().map(|((_, n), entry)| (*n, 0, entry.birth)));
        places.sort_unstable();
        let (mut carried, mut bytes) = (Vec::new(), 0);
        for (n, length, birth) in places {
            bytes += length;
            if bytes > most && !carried.is_empty() {
                break;
            }
            carried.push(self.carried_at((device, n, birth), &mut erased)?);
        }
        Ok(carried)
    }

    /// The entry at this place; it is taken out of those that were erased, should it be one.
    pub(crate) fn carried_at(&self, (device, n, birth): Place, erased: &mut Erased) -> Result<Carried, StoreError> {
        if let Some(entry) = erased.remove(&(device, n)) {
            return Ok(entry);
        }
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let select = "SELECT body, link, signature FROM entry WHERE birth = ?1 AND device = ?2 AND n = ?3";
        let mut select = self.connection.prepare_cached(select).map_err(reading)?;
        let columns = |row: &rusqlite::Row| Ok(Carried::whole(device, n, birth, row.get(0)?, row.get(1)?, row.get(2)?));
        select.query_row(params![birth, device.0, n], columns).map_err(reading)
    }

    /// Puts entries of other devices beside those that are here, with the public keys of their devices, and notes, in one
    /// transaction. Each device's must follow one another, and what is here of it.
    ///
    /// # Errors
    /// [`StoreError::Misfit`] where an entry does not fit; [`StoreError::Full`] or [`StoreError::NotSaved`]. Nothing of it is
    /// on disk.
    pub fn take_in(&mut self, publics: &[[u8; 32]], carried: &[Carried], notes: &[Note]) -> Result<TakenIn, StoreError> {
        self.writable()?;
        self.make_exchange()?;
        let publics: BTreeMap<DeviceId, [u8; 32]> =
            publics.iter().filter_map(|public| Some((device_with(public)?, *public))).collect();
        let transaction = self.connection.unchecked_transaction().map_err(|error| StoreError::writing(&error))?;
        let mut taken = TakenIn::default();
        let mut births = BTreeSet::new();
        for run in carried.chunk_by(|one, next| one.device == next.device) {
            let Some(first) = run.first() else { continue };
            let public = match publics.get(&first.device) {
                Some(public) => *public,
                None => return Err(misfit(first, MisfitKind::NoKey)),
            };
            self.take_run(&transaction, &public, run, &mut taken)?;
            births.extend(run.iter().filter_map(|entry| birth_of(&entry.birth)));
        }
        let written = write_notes(&transaction, notes).and_then(|()| transaction.commit());
        written.map_err(|error| StoreError::writing(&error)).map_err(|error| self.note(error))?;
        taken.births = births.into_iter().collect();
        Ok(taken)
    }

    /// Entries of one device that follow one another.
    fn take_run(
        &self,
        connection: &Connection,
        public: &[u8; 32],
        run: &[Carried],
        taken: &mut TakenIn,
    ) -> Result<(), StoreError> {
        let Some((first, last)) = run.first().zip(run.last()) else { return Ok(()) };
        let device = first.device;
        if device == self.key.id() {
            // What this device wrote is here, or it is not this device any more.
            return Err(misfit(first, MisfitKind::Rewritten));
        }
        let here = self.chain_end(device)?;
        let mut at = match first.n.checked_sub(1) {
            Some(before) if before == here.n => here,
            Some(0) => Position::START,
            Some(before) if before < here.n => {
                Position { n: before, link: self.link_at(device, before)?.ok_or_else(|| misfit(first, MisfitKind::Missing))? }
            }
            _ => return Err(misfit(first, MisfitKind::Missing)),
        };
        let key = VerifyingKey::from_bytes(public).map_err(|_| misfit(first, MisfitKind::NoKey))?;
        let writing = |error: rusqlite::Error| StoreError::writing(&error);
        let device_row = "INSERT OR IGNORE INTO device (id, public) VALUES (?1, ?2)";
        connection.prepare_cached(device_row).and_then(|mut row| row.execute(params![device.0, public])).map_err(writing)?;
        let insert = "INSERT INTO entry (birth, device, n, body, link, signature) VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
        let mut insert = connection.prepare_cached(insert).map_err(writing)?;
        for entry in run {
            at = at.then(&entry.birth, &entry.digest);
            if (at.n, at.link) != (entry.n, entry.link) {
                return Err(misfit(entry, MisfitKind::Unlinked));
            }
            if entry.n <= here.n {
                if self.link_here(device, entry.n, &entry.birth)? != Some(entry.link) {
                    return Err(misfit(entry, MisfitKind::Rewritten));
                }
                taken.known += 1;
                continue;
            }
            let Carried { birth, n, digest, body, link, seal, .. } = entry;
            let Some(body) = body else {
                write_notes(connection, &[remains(entry)]).map_err(writing)?;
                taken.added += 1;
                continue;
            };
            if Sha256::digest(body).as_slice() != digest {
                return Err(misfit(entry, MisfitKind::Changed));
            }
            if Entry::decode(body).is_ok_and(|read| read.id != EntryId { device, n: *n } || Some(read.birth) != birth_of(birth)) {
                return Err(misfit(entry, MisfitKind::Changed));
            }
            insert.execute(params![birth, device.0, n, body, link, seal]).map_err(writing)?;
            taken.added += 1;
        }
        if !at.is_signed(&key, &last.seal) {
            return Err(misfit(last, MisfitKind::Unsigned));
        }
        if at.n > here.n {
            put(connection, CHAIN, &device.0, &[at.n.to_be_bytes().as_slice(), &at.link].concat()).map_err(writing)?;
        }
        Ok(())
    }

    /// How far the chain of another device goes here: number and link of its last entry.
    ///
    /// # Errors
    /// [`StoreError`] where the store cannot be read.
    pub fn chain_of(&self, device: DeviceId) -> Result<(u64, [u8; 32]), StoreError> {
        let Position { n, link } = match device == self.key.id() {
            true => self.position(),
            false => self.chain_end(device)?,
        };
        Ok((n, link))
    }

    /// The link of a device's chain at this number; 32 zero bytes at 0.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] where it is not here, or the store cannot be read.
    pub fn link_of(&self, device: DeviceId, n: u64) -> Result<[u8; 32], StoreError> {
        match n {
            0 => Ok(Position::START.link),
            n => self.link_at(device, n)?.ok_or_else(|| StoreError::Damaged("an entry is gone".to_owned())),
        }
    }

    /// The link of an entry of this birth, kept or erased.
    fn link_here(&self, device: DeviceId, n: u64, birth: &BirthKey) -> Result<Option<[u8; 32]>, StoreError> {
        let select = "SELECT link FROM entry WHERE birth = ?1 AND device = ?2 AND n = ?3";
        let mut select = self.connection.prepare_cached(select).map_err(|error| StoreError::reading(&error))?;
        let found = select.query_row(params![birth, device.0, n], |row| row.get(0)).optional();
        match found.map_err(|error| StoreError::reading(&error))? {
            Some(link) => Ok(Some(link)),
            None => Ok(self.erased_at(device, n)?.map(|erased| erased.link)),
        }
    }

    fn chain_end(&self, device: DeviceId) -> Result<Position, StoreError> {
        if let Some(value) = self.noted(CHAIN, &device.0)? {
            let parts = value.split_at_checked(8).and_then(|(n, link)| Some((n.try_into().ok()?, link.try_into().ok()?)));
            if let Some((n, link)) = parts {
                return Ok(Position { n: u64::from_be_bytes(n), link });
            }
        }
        // It came by a backup, or there is nothing of it.
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let mut known = self.connection.prepare_cached("SELECT 1 FROM device WHERE id = ?1").map_err(reading)?;
        match known.exists(params![device.0]).map_err(reading)? {
            true => self.find_last(device),
            false => Ok(Position::START),
        }
    }
}

fn misfit(entry: &Carried, kind: MisfitKind) -> StoreError {
    StoreError::Misfit(Misfit::Entry { device: entry.device, n: entry.n, birth: birth_of(&entry.birth), kind })
}

/// Entries of other devices were put in by another way: how far their chains go is looked for anew.
pub(crate) fn forget_chains(connection: &Connection) -> rusqlite::Result<()> {
    match connection.table_exists(None, "exchange")? {
        true => connection.execute("DELETE FROM exchange WHERE kind = ?1", params![CHAIN]).map(|_| ()),
        false => Ok(()),
    }
}
