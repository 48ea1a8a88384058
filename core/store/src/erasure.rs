//! Births that were erased: what remains of their entries, so that the chains still prove the rest.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::params;
use secundine_domain::entry::{BirthId, DeviceId, Entry};
use secundine_domain::file::FileId;

use crate::database::{ENTRY_REMAINS, birth_key};
use crate::exchange::Carried;
use crate::files::{self, FILE_KEY};
use crate::notes::write_notes;
use crate::{Note, Store, StoreError};

/// Entries of births that were erased: device and number, then birth, digest, link and signature.
pub(crate) const ERASED: &str = "erased";

impl Store {
    /// Erases a birth: its entries, and the keys of the files that they name, are on disk no more; what remains of each is
    /// its number, its digest and its signature, so that the chains still prove the rest. Gives the files that no other
    /// birth names; they are removed.
    ///
    /// # Errors
    /// [`StoreError::Full`] or [`StoreError::NotSaved`]: nothing is erased. The practice itself cannot be.
    pub fn erase(&mut self, birth: BirthId) -> Result<Vec<FileId>, StoreError> {
        self.writable()?;
        if birth == BirthId::PRACTICE {
            return Err(StoreError::NotSaved("the practice stays".to_owned()));
        }
        self.make_exchange()?;
        let key = birth_key(birth);
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let writing = |error: rusqlite::Error| StoreError::writing(&error);
        let select = "SELECT device, n, body, link, signature FROM entry WHERE birth = ?1";
        let mut select = self.connection.prepare(select).map_err(reading)?;
        let columns = |row: &rusqlite::Row| {
            let device = DeviceId(row.get(0)?);
            Ok(Carried::whole(device, row.get(1)?, key, row.get(2)?, row.get(3)?, row.get(4)?))
        };
        let rows = select.query_map(params![key], columns).and_then(Iterator::collect::<Result<Vec<_>, _>>).map_err(reading)?;
        drop(select);
        let files: BTreeSet<FileId> = rows.iter().flat_map(files_of).collect();
        let transaction = self.connection.unchecked_transaction().map_err(writing)?;
        let put_all = || -> rusqlite::Result<()> {
            write_notes(&transaction, &rows.iter().map(remains).collect::<Vec<_>>())?;
            // The one way by which an entry leaves the table.
            transaction.execute_batch("DROP TRIGGER entry_remains")?;
            transaction.execute("DELETE FROM entry WHERE birth = ?1", params![key])?;
            transaction.execute_batch(ENTRY_REMAINS)?;
            files.iter().try_for_each(|file| {
                transaction.execute("DELETE FROM exchange WHERE kind = ?1 AND name = ?2", params![FILE_KEY, file.0]).map(|_| ())
            })
        };
        put_all().and_then(|()| transaction.commit()).map_err(writing).map_err(|error| self.note(error))?;
        // Freed pages are wiped; what lies in the log is folded in, so that nothing of it stays there.
        let folded = self.connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(()));
        folded.map_err(writing)?;
        for file in &files {
            files::remove(&self.folder, *file).map_err(|error| StoreError::writing_file(&error))?;
        }
        Ok(files.into_iter().collect())
    }

    /// An entry of a birth that was erased.
    pub(crate) fn erased_at(&self, device: DeviceId, n: u64) -> Result<Option<Carried>, StoreError> {
        let name = erased_name(device, n);
        Ok(self.noted(ERASED, &name)?.and_then(|value| read_erased(&name, &value)))
    }

    /// Every entry of a birth that was erased, by device and number.
    pub(crate) fn all_erased(&self) -> Result<Erased, StoreError> {
        let noted = self.all_noted(ERASED)?;
        let read = noted.iter().filter_map(|(name, value)| read_erased(name, value));
        Ok(read.map(|entry| ((entry.device, entry.n), entry)).collect())
    }
}

/// Entries of births that were erased, by device and number: their digests still prove the others.
pub(crate) type Erased = BTreeMap<(DeviceId, u64), Carried>;

/// The files that an entry names.
pub(crate) fn files_of(entry: &Carried) -> Vec<FileId> {
    let read = entry.body.as_deref().map(Entry::decode);
    read.and_then(Result::ok).map(|entry| entry.fact.files()).unwrap_or_default()
}

/// What remains of an entry whose birth is erased.
pub(crate) fn remains(entry: &Carried) -> Note {
    let Carried { device, n, birth, digest, link, seal, .. } = entry;
    Note::Put(ERASED, erased_name(*device, *n).to_vec(), [birth.as_slice(), digest, link, seal].concat())
}

fn erased_name(device: DeviceId, n: u64) -> [u8; 24] {
    let mut name = [0; 24];
    let (front, back) = name.split_at_mut(16);
    front.copy_from_slice(&device.0);
    back.copy_from_slice(&n.to_be_bytes());
    name
}

/// An entry by the name and the value under which it remains.
pub(crate) fn read_erased(name: &[u8], value: &[u8]) -> Option<Carried> {
    let (device, n) = name.split_first_chunk::<16>()?;
    let (birth, value) = value.split_first_chunk::<24>()?;
    let (digest, value) = value.split_first_chunk::<32>()?;
    let (link, seal) = value.split_first_chunk::<32>()?;
    let (device, n, seal) = (DeviceId(*device), u64::from_be_bytes(n.try_into().ok()?), seal.try_into().ok()?);
    Some(Carried { device, n, birth: *birth, digest: *digest, body: None, link: *link, seal })
}
