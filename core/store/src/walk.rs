//! Along the chains of an archive: whether each entry is what its device has signed.

use std::collections::{BTreeMap, BTreeSet};

use ed25519_dalek::VerifyingKey;
use secundine_domain::entry::{BirthId, DeviceId, Entry, EntryId, StoredError};

use crate::archive::{Item, Reader, damaged};
use crate::chain::{Link, Position, device_of};
use crate::database::{BirthKey, birth_key, birth_of};
use crate::exchange::Carried;
use crate::files::FILE_KEY;
use crate::{MisfitKind, Note, StoreError};

/// Most places that the entry before may have been at. One that was altered leaves two: the one that it tells of, and the
/// one that is worked out.
const PLACES: usize = 4;

/// How far an archive was walked along.
#[derive(Default)]
pub(crate) struct Walk {
    keys: BTreeMap<DeviceId, VerifyingKey>,
    /// What opens files that were sealed on other devices.
    pub file_keys: Vec<Note>,
    /// The chain that is walked along.
    device: Option<DeviceId>,
    /// Where it may be.
    at: Vec<Position>,
    births: BTreeSet<BirthKey>,
}

/// What an entry proves.
pub(crate) struct Step {
    /// Whether its device has signed its link.
    pub signed: bool,
    /// How it does not fit; [`MisfitKind::Missing`] where the entry before it is nowhere.
    pub misfit: Option<MisfitKind>,
}

impl Walk {
    /// Walks to the end, hands each entry over with what an extract tells of the link before it, and gives what else was on
    /// the way.
    ///
    /// # Errors
    /// [`StoreError::DamagedBackup`] where the archive is cut off or altered, or what `take` answers.
    pub(crate) fn along(
        reader: &mut Reader<'_>,
        mut take: impl FnMut(&mut Self, Carried, Option<Link>) -> Result<(), StoreError>,
    ) -> Result<Self, StoreError> {
        let mut walk = Self::default();
        while let Some(item) = reader.next()? {
            match item {
                Item::Device(device, public) => {
                    let public = VerifyingKey::from_bytes(&public).map_err(damaged)?;
                    if device_of(&public) != device {
                        return Err(damaged("a device stands with the key of another"));
                    }
                    walk.keys.insert(device, public);
                }
                Item::File(file, key) => walk.file_keys.push(Note::Put(FILE_KEY, file.0.to_vec(), key.to_vec())),
                Item::Entry(entry, before) => {
                    walk.births.extend(entry.body.is_some().then_some(entry.birth));
                    take(&mut walk, entry, before)?;
                }
            }
        }
        walk.births.remove(&birth_key(BirthId::PRACTICE));
        match u64::try_from(walk.births.len()) == Ok(reader.header.births) {
            true => Ok(walk),
            false => Err(damaged("the births are not as many as it says")),
        }
    }

    /// The public key of a device.
    pub(crate) fn key(&self, device: DeviceId) -> Option<&VerifyingKey> {
        self.keys.get(&device)
    }

    /// Goes on to an entry that is known to be right.
    pub(crate) fn pass(&mut self, entry: &Carried) {
        self.device = Some(entry.device);
        self.at = vec![Position { n: entry.n, link: entry.link }];
    }

    /// Goes on to an entry, and says what it proves. `before` is the link of the entry before it where the archive has none.
    pub(crate) fn step(&mut self, entry: &Carried, before: impl FnOnce() -> Option<Link>) -> Step {
        let Some(key) = self.keys.get(&entry.device) else {
            return Step { signed: false, misfit: Some(MisfitKind::NoKey) };
        };
        let told = Position { n: entry.n, link: entry.link };
        let signed = told.is_signed(key, &entry.seal);
        let n = entry.n.saturating_sub(1);
        self.at.retain(|at| self.device == Some(entry.device) && at.n == n);
        if self.at.is_empty() {
            let link = if n == 0 { Some(Position::START.link) } else { before() };
            self.at.extend(link.map(|link| Position { n, link }));
        }
        let mut made: Vec<Position> = self.at.iter().map(|at| at.then(&entry.birth, &entry.digest)).collect();
        let misfit = match (made.contains(&told), signed) {
            (true, true) => None,
            (false, true) if made.is_empty() => Some(MisfitKind::Missing),
            (true, false) => Some(MisfitKind::Unsigned),
            (false, true) => Some(MisfitKind::Changed),
            (false, false) => Some(MisfitKind::Unlinked),
        };
        self.device = Some(entry.device);
        if signed {
            made.clear();
        }
        // What the entry says of itself comes first, so that it is never left out.
        self.at = std::iter::once(told).chain(made).take(PLACES).collect();
        Step { signed, misfit }
    }
}

impl Carried {
    /// Whether it reads as the entry that it is said to be, unless its birth was erased. Asked of an entry that its device
    /// has signed.
    ///
    /// # Errors
    /// [`StoreError::Newer`] for one of a later form, else [`StoreError::DamagedBackup`].
    pub(crate) fn reads(&self) -> Result<(), StoreError> {
        let Some(body) = &self.body else { return Ok(()) };
        let entry = Entry::decode(body).map_err(|error| match error {
            StoredError::Newer(form) => StoreError::Newer(form.into()),
            StoredError::Unreadable(_) => damaged(format!("entry {} cannot be read", self.n)),
        })?;
        match entry.id == (EntryId { device: self.device, n: self.n }) && Some(entry.birth) == birth_of(&self.birth) {
            true => Ok(()),
            false => Err(damaged(format!("entry {} is another", self.n))),
        }
    }
}
