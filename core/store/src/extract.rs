//! The entries of one birth as an archive of their own, and the reading of any archive outside of a store.
//!
//! A device's chain runs through all its births, so an extract has gaps. An entry after a gap carries the link of the one
//! before it: the signature covers its own link, and the link covers the one before it, the birth, the number and the text. So
//! each entry is proved by itself. That none of the birth was left out is proved only by a version that was printed elsewhere.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::File;
use std::io::{self, BufRead, Write};
use std::path::Path;

use ed25519_dalek::VerifyingKey;
use rusqlite::params;
use secundine_domain::entry::{BirthId, DeviceId};
use secundine_domain::time::Stamp;

use crate::archive::{Header, Reader, Writer};
use crate::backup::{self, KeyFiles};
use crate::chain::{Link, Position, device_of};
use crate::database::{birth_key, birth_of};
use crate::exchange::Carried;
use crate::keys::Passphrase;
use crate::store::stored;
use crate::walk::Walk;
use crate::{Misfit, MisfitKind, Store, StoreError, Stored, files};

/// What an archive holds, and whether it fits.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Extract {
    /// When it was made, as the device's clock said.
    pub made: Stamp,
    /// The birth, where it has one alone.
    pub birth: Option<BirthId>,
    /// How many devices wrote the entries.
    pub devices: u64,
    /// Files beside it that do not fit their names.
    pub damaged_files: u64,
    /// The entries by their births, in the order of device and number; without one that does not fit.
    pub births: BTreeMap<BirthId, Vec<Stored>>,
    /// The first entry that does not fit.
    pub misfit: Option<Misfit>,
}

impl Extract {
    /// How many entries fit.
    #[must_use]
    pub fn entries(&self) -> u64 {
        self.births.values().map(Vec::len).sum::<usize>().try_into().unwrap_or(u64::MAX)
    }

    /// Reads an archive and checks each entry with the key of its device. The archive is held against no store: whose the
    /// devices are, it cannot tell.
    ///
    /// # Errors
    /// [`StoreError::DamagedBackup`] for what is no archive, is cut off or does not fit its end; [`StoreError::Newer`] for a
    /// later form. An entry that its device did not sign is no error but a [`Misfit`].
    pub fn read(mut archive: impl BufRead) -> Result<Self, StoreError> {
        Self::of(&mut Reader::new(&mut archive)?)
    }

    /// The same of a backup, opened with its passphrase or its recovery identity as it was printed.
    ///
    /// # Errors
    /// [`StoreError::WrongPassphrase`], and as for [`Extract::read`].
    pub fn of_backup(path: &Path, secret: Passphrase) -> Result<Self, StoreError> {
        let open = || File::open(path).map_err(|error| StoreError::NotBackup(error.to_string()));
        let (_, key) = KeyFiles::read(open()?)?.open(secret)?;
        let mut damaged_files = 0;
        let file = |name, sealed: &[u8]| {
            damaged_files += u64::from(files::name(sealed) != name);
            Ok(())
        };
        let extract = backup::entries(open()?, &key, file, Self::of)?;
        Ok(Self { damaged_files, ..extract })
    }

    fn of(reader: &mut Reader<'_>) -> Result<Self, StoreError> {
        let (mut births, mut devices, mut misfit) = (BTreeMap::<_, Vec<Stored>>::new(), BTreeSet::new(), None);
        Walk::along(reader, |walk, entry, before| {
            devices.insert(entry.device);
            let birth = birth_of(&entry.birth);
            let kind = walk.step(&entry, || before).misfit;
            let read = match entry.body.as_deref().filter(|_| kind.is_none()) {
                Some(body) => stored(body).and_then(|stored| entry.reads().map(|()| stored)).map(Some)?,
                None => None,
            };
            // Where the one before is nowhere, it is that one that is missing.
            let n = if kind == Some(MisfitKind::Missing) { entry.n.saturating_sub(1) } else { entry.n };
            let found = kind.map(|kind| Misfit::Entry { device: entry.device, n, birth, kind });
            misfit = misfit.take().or(found);
            if let Some((birth, read)) = birth.zip(read) {
                births.entry(birth).or_default().push(read);
            }
            Ok(())
        })?;
        let devices = devices.len().try_into().unwrap_or(u64::MAX);
        Ok(Self { made: reader.header.made.clone(), birth: reader.header.birth, devices, damaged_files: 0, births, misfit })
    }
}

impl Store {
    /// Writes the entries of a birth as an archive.
    ///
    /// # Errors
    /// [`StoreError`] where the store cannot be read or `out` not written.
    pub fn extract<W: Write>(&self, birth: BirthId, out: W, made: &Stamp) -> Result<W, StoreError> {
        let kept = self.kept(birth)?;
        write(
            out,
            &Header::of_birth(birth, made, self.key.id(), kept.len().try_into().unwrap_or(u64::MAX)),
            &self.devices()?,
            kept,
        )
        .map_err(|error| StoreError::writing_file(&error))
    }

    /// The entries of a birth as they are on disk, each with the link before it where the entry before is of another birth.
    fn kept(&self, birth: BirthId) -> Result<Vec<(Carried, Option<Link>)>, StoreError> {
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let select = "SELECT device, n, body, link, signature FROM entry WHERE birth = ?1 ORDER BY device, n";
        let mut select = self.connection.prepare(select).map_err(reading)?;
        let birth = birth_key(birth);
        let rows = select.query_map(params![birth], |row| {
            let device = DeviceId(row.get(0)?);
            Ok(Carried::whole(device, row.get(1)?, birth, row.get(2)?, row.get(3)?, row.get(4)?))
        });
        let (mut kept, mut last) = (Vec::new(), None);
        for entry in rows.map_err(reading)? {
            let entry = entry.map_err(reading)?;
            let before = entry.n.saturating_sub(1);
            let gap = last.replace((entry.device, entry.n)) != Some((entry.device, before));
            let link = if gap { self.link_before(entry.device, before)? } else { None };
            kept.push((entry, link));
        }
        Ok(kept)
    }

    /// None before the first entry, whose link begins with nothing.
    fn link_before(&self, device: DeviceId, before: u64) -> Result<Option<Link>, StoreError> {
        if before == Position::START.n { Ok(None) } else { self.link_at(device, before) }
    }
}

/// Writes an archive with the devices that its entries are from.
fn write<W: Write>(out: W, header: &Header, devices: &[VerifyingKey], kept: Vec<(Carried, Option<Link>)>) -> io::Result<W> {
    let mut writer = Writer::new(out, header)?;
    for public in devices.iter().filter(|public| kept.iter().any(|(entry, _)| entry.device == device_of(public))) {
        writer.device(device_of(public), public.as_bytes())?;
    }
    kept.into_iter().try_for_each(|(entry, before)| writer.entry(entry, before))?;
    writer.end()
}

#[cfg(test)]
mod tests;
