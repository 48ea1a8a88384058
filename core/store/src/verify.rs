//! Whether everything is still as it was written: each page, each entry of each device, and the end.

use std::collections::BTreeMap;
use std::fs;

use ed25519_dalek::VerifyingKey;
use rusqlite::{Connection, params};
use secundine_domain::entry::{BirthId, DeviceId, Entry};
use secundine_domain::file::FileId;
use sha2::{Digest, Sha256};

use crate::chain::{Position, Seal, device_of};
use crate::database::{BirthKey, DATABASE, LOG, PAGE, TABLES, birth_of};
use crate::erasure::Erased;
use crate::head::{self, Told};
use crate::{Store, StoreError, files};

/// What a check found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Verdict {
    /// How many entries were checked.
    pub entries: u64,
    /// How many devices wrote them.
    pub devices: u64,
    /// How many files they name that were checked.
    pub files: u64,
    /// What the end was compared with.
    pub head: HeadSeen,
    /// The first thing that does not fit.
    pub misfit: Option<Misfit>,
}

/// What the end of this device's chain was compared with. The ends of other devices' chains have nothing to be compared with,
/// unless this device was one of them before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeadSeen {
    /// No head is there, so that a cut at the end would not show.
    Nothing,
    /// The head cannot be read: the same holds.
    Unreadable,
    /// The head tells of this entry; one after it could be missing without showing.
    At(u64),
}

/// Something that does not fit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Misfit {
    /// The database file is damaged.
    Page {
        /// The first damaged page, counted from 1; none where the length is wrong or the damage lies in the log.
        page: Option<u64>,
    },
    /// The tables of the entries and devices, or the triggers that guard them, are not as this program makes them.
    Tables,
    /// An entry does not fit.
    Entry {
        /// The device that wrote it.
        device: DeviceId,
        /// Its number on that device.
        n: u64,
        /// Its birth, where the entry is here.
        birth: Option<BirthId>,
        /// How it does not fit.
        kind: MisfitKind,
    },
    /// A file that an entry names.
    File {
        /// Which.
        file: FileId,
        /// The birth of the entry.
        birth: Option<BirthId>,
        /// Whether it is not here; else it does not fit its name.
        missing: bool,
    },
}

/// How an entry does not fit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MisfitKind {
    /// It is not here, and later ones are.
    Missing,
    /// Its number stands twice.
    Twice,
    /// The device signed something else at this place.
    Changed,
    /// It does not follow from the one before it.
    Unlinked,
    /// It is not signed by its device.
    Unsigned,
    /// The public key of its device is not here, or is none.
    NoKey,
    /// The public key that is here is that of another device.
    OtherKey,
    /// It was written, and the database ends before it.
    CutOff,
    /// Another entry was written at this place before.
    Rewritten,
}

/// An entry's place: device, number, birth. Sorted, they lie in the order of the chains.
pub(crate) type Place = (DeviceId, u64, BirthKey);

impl Store {
    /// Checks everything from the file's pages to the last entry's signature, and names the first thing that does not fit.
    /// Changes no entry; folds the log into the file. Takes time: each entry's signature is checked.
    ///
    /// # Errors
    /// [`StoreError`] where the check itself could not be done: [`StoreError::ReadOnly`] for a damaged store that is only
    /// read. Damage is no error but a [`Misfit`].
    pub fn verify(&self) -> Result<Verdict, StoreError> {
        if self.is_read_only() {
            return Err(StoreError::ReadOnly);
        }
        let devices = self.devices()?;
        let told = head::read(&self.folder, &devices);
        let head = match told {
            Told::Unreadable => HeadSeen::Unreadable,
            Told::Position(device, at) if device == self.key.id() => HeadSeen::At(at.n),
            Told::Nothing | Told::Position(..) => HeadSeen::Nothing,
        };
        let mut heads = head::contradicted(&self.folder, &devices);
        if let Told::Position(device, at) = told {
            heads.push((device, at));
        }
        heads.sort_by_key(|(device, at)| (*device, at.n));
        let mut walk = Walk {
            connection: &self.connection,
            entries: 0,
            ends: BTreeMap::new(),
            erased: Erased::new(),
            files: BTreeMap::new(),
        };
        let misfit = match self.first_misfit(&mut walk, &heads) {
            Err(StoreError::Damaged(_)) => Some(Misfit::Page { page: None }),
            found => found?,
        };
        let count = |many: usize| many.try_into().unwrap_or(u64::MAX);
        let (devices, files) = (count(walk.ends.len()), count(walk.files.len()));
        Ok(Verdict { entries: walk.entries, devices, files, head, misfit })
    }

    fn first_misfit(&self, walk: &mut Walk, heads: &[(DeviceId, Position)]) -> Result<Option<Misfit>, StoreError> {
        if let Some(misfit) = self.pages()? {
            return Ok(Some(misfit));
        }
        let (places, erased) = self.places()?;
        walk.erased = erased;
        if let Some(misfit) = walk.chains(places)? {
            return Ok(Some(misfit));
        }
        if let Some(misfit) = self.end(walk, heads)? {
            return Ok(Some(misfit));
        }
        if let Some(misfit) = tables(&self.connection)? {
            return Ok(Some(misfit));
        }
        self.files(&walk.files)
    }

    /// Every file that an entry names, against its name.
    fn files(&self, named: &BTreeMap<FileId, BirthKey>) -> Result<Option<Misfit>, StoreError> {
        for (&file, birth) in named {
            let missing = match files::fits(&self.folder, file) {
                Ok(_) => continue,
                Err(StoreError::NoFile) => true,
                Err(StoreError::DamagedFile(_)) => false,
                Err(other) => return Err(other),
            };
            return Ok(Some(Misfit::File { file, birth: birth_of(birth), missing }));
        }
        Ok(None)
    }

    /// Every page of the file against its own code, and the file's length. What lies in the log is folded in first: where a
    /// loss of power cut that short, pages of the file are torn that the log has whole, and folding mends them.
    fn pages(&self) -> Result<Option<Misfit>, StoreError> {
        let fold = self.connection.query_row("PRAGMA wal_checkpoint(PASSIVE)", [], |_| Ok(()));
        fold.map_err(|error| StoreError::reading(&error))?;
        // What is in memory is read from disk again.
        texts(&self.connection, "PRAGMA shrink_memory")?;
        if let Some(complaint) = texts(&self.connection, "PRAGMA cipher_integrity_check")?.first() {
            let page = complaint.rsplit(' ').next().and_then(|word| word.parse().ok());
            return Ok(Some(Misfit::Page { page: page.filter(|_| complaint.contains("verification failed")) }));
        }
        let pages: u64 =
            self.connection.query_row("PRAGMA page_count", [], |row| row.get(0)).map_err(|error| StoreError::reading(&error))?;
        let bytes = |name: &str| fs::metadata(self.folder.join(name)).map_or(0, |file| file.len());
        let wrong = bytes(LOG) == 0 && bytes(DATABASE) != pages.saturating_mul(PAGE);
        Ok(wrong.then_some(Misfit::Page { page: None }))
    }

    /// Where every entry stands, device by device, in the order of their numbers; among them those of births that were erased,
    /// of which this is all.
    pub(crate) fn places(&self) -> Result<(Vec<Place>, Erased), StoreError> {
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let mut select = self.connection.prepare("SELECT device, n, birth FROM entry").map_err(reading)?;
        let places = select.query_map([], |row| Ok((DeviceId(row.get(0)?), row.get(1)?, row.get(2)?))).map_err(reading)?;
        let mut places: Vec<Place> = places.collect::<Result<_, _>>().map_err(reading)?;
        let erased = self.all_erased()?;
        places.extend(erased.iter().map(|((device, n), entry)| (*device, *n, entry.birth)));
        places.sort_unstable();
        Ok((places, erased))
    }

    /// The ends of the chains of this device, and of those that it was before, against their heads.
    fn end(&self, walk: &Walk, heads: &[(DeviceId, Position)]) -> Result<Option<Misfit>, StoreError> {
        for &(device, at) in heads {
            let end = walk.ends.get(&device).copied().unwrap_or(Position::START);
            if at.n > end.n {
                return Ok(Some(Misfit::Entry { device, n: end.n + 1, birth: None, kind: MisfitKind::CutOff }));
            }
            if self.link_at(device, at.n)? != Some(at.link) {
                return Ok(Some(Misfit::Entry { device, n: at.n, birth: None, kind: MisfitKind::Rewritten }));
            }
        }
        Ok(None)
    }
}

/// A walk along every chain.
struct Walk<'a> {
    connection: &'a Connection,
    /// Entries checked so far.
    entries: u64,
    /// How far each device's chain goes.
    ends: BTreeMap<DeviceId, Position>,
    /// Entries of births that were erased: their digests still prove the others.
    erased: Erased,
    /// The files that the entries name.
    files: BTreeMap<FileId, BirthKey>,
}

impl Walk<'_> {
    fn chains(&mut self, places: Vec<Place>) -> Result<Option<Misfit>, StoreError> {
        let mut key = None;
        for place @ (device, n, birth) in places {
            let misfit = |kind| Ok(Some(Misfit::Entry { device, n, birth: birth_of(&birth), kind }));
            let before = self.ends.get(&device).copied().unwrap_or_else(|| {
                key = None;
                Position::START
            });
            if n > before.n + 1 {
                return Ok(Some(Misfit::Entry { device, n: before.n + 1, birth: None, kind: MisfitKind::Missing }));
            }
            if n <= before.n {
                return misfit(MisfitKind::Twice);
            }
            let public = match key {
                Some(public) => public,
                None => match self.public(device)? {
                    Ok(public) => *key.insert(public),
                    Err(kind) => return misfit(kind),
                },
            };
            match self.entry(place, &before, &public)? {
                Ok(after) => self.ends.insert(device, after),
                Err(kind) => return misfit(kind),
            };
            self.entries += 1;
        }
        Ok(None)
    }

    /// The public key of a device, if it is the one that its id vouches for.
    fn public(&self, device: DeviceId) -> Result<Result<VerifyingKey, MisfitKind>, StoreError> {
        let mut select = self
            .connection
            .prepare_cached("SELECT public FROM device WHERE id = ?1")
            .map_err(|error| StoreError::reading(&error))?;
        let bytes: [u8; 32] = match select.query_row(params![device.0], |row| row.get(0)) {
            Err(rusqlite::Error::QueryReturnedNoRows) => return Ok(Err(MisfitKind::NoKey)),
            found => found.map_err(|error| StoreError::reading(&error))?,
        };
        Ok(match VerifyingKey::from_bytes(&bytes) {
            Ok(public) if device_of(&public) == device => Ok(public),
            Ok(_) => Err(MisfitKind::OtherKey),
            Err(_) => Err(MisfitKind::NoKey),
        })
    }

    /// Where the chain is after this entry, if it fits.
    fn entry(
        &mut self,
        (device, n, birth): Place,
        before: &Position,
        public: &VerifyingKey,
    ) -> Result<Result<Position, MisfitKind>, StoreError> {
        if let Some(erased) = self.erased.get(&(device, n)) {
            let at = Position { n, link: erased.link };
            let fits = before.then(&birth, &erased.digest) == at && at.is_signed(public, &erased.seal);
            return Ok(if fits { Ok(at) } else { Err(MisfitKind::Changed) });
        }
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let select = "SELECT body, link, signature FROM entry WHERE birth = ?1 AND device = ?2 AND n = ?3";
        let mut select = self.connection.prepare_cached(select).map_err(reading)?;
        let columns = |row: &rusqlite::Row| Ok((row.get(0)?, row.get(1)?, row.get(2)?));
        let (body, link, seal): (Vec<u8>, _, Seal) = select.query_row(params![birth, device.0, n], columns).map_err(reading)?;
        // An entry of a later form may name files that are not known of here.
        let named = Entry::decode(&body).map(|entry| entry.fact.files()).unwrap_or_default();
        self.files.extend(named.into_iter().map(|file| (file, birth)));
        let made = before.then(&birth, &Sha256::digest(&body).into());
        let stored = Position { n, link };
        Ok(match (made == stored, stored.is_signed(public, &seal)) {
            (true, true) => Ok(made),
            (true, false) => Err(MisfitKind::Unsigned),
            (false, true) => Err(MisfitKind::Changed),
            (false, false) => Err(MisfitKind::Unlinked),
        })
    }
}

/// Whether the tables of entries and devices and their triggers are as this program makes them, and all trees are sound. An
/// index that is not there only slows things down: a store of before there were any gets them once there is room.
fn tables(connection: &Connection) -> Result<Option<Misfit>, StoreError> {
    let reading = |error: rusqlite::Error| StoreError::reading(&error);
    let made = Connection::open_in_memory().map_err(reading)?;
    made.execute_batch(TABLES).map_err(reading)?;
    let schema = "SELECT type || ' ' || name || ' ' || coalesce(sql, '') FROM sqlite_schema
                  WHERE tbl_name IN ('entry', 'device') ORDER BY 1";
    let (here, mut made) = (texts(connection, schema)?, texts(&made, schema)?);
    made.retain(|line| !line.starts_with("index ") || here.contains(line));
    let sound = here == made && texts(connection, "PRAGMA quick_check(1)")? == ["ok"];
    Ok((!sound).then_some(Misfit::Tables))
}

fn texts(connection: &Connection, ask: &str) -> Result<Vec<String>, StoreError> {
    let reading = |error: rusqlite::Error| StoreError::reading(&error);
    let mut ask = connection.prepare(ask).map_err(reading)?;
    ask.query_map([], |row| row.get(0)).and_then(Iterator::collect).map_err(reading)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::database::in_memory;

    #[test]
    fn an_index_that_is_not_there_yet_is_no_damage_and_another_one_is() {
        let told = |change: &str| {
            let connection = in_memory().unwrap();
            connection.execute_batch(change).unwrap();
            tables(&connection).unwrap()
        };
        assert_eq!(told(""), None);
        assert_eq!(told("DROP INDEX entry_same_birth"), None);
        assert_eq!(told("DROP INDEX entry_same_birth; DROP INDEX entry_voice_noted"), None);
        assert_eq!(told("DROP TRIGGER entry_stays"), Some(Misfit::Tables));
        assert_eq!(told("CREATE INDEX entry_odd ON entry (body)"), Some(Misfit::Tables));
        let other = "DROP INDEX entry_same_birth; CREATE INDEX entry_same_birth ON entry (body)";
        assert_eq!(told(other), Some(Misfit::Tables));
    }
}
