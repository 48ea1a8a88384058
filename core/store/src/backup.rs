//! A backup: one ordinary tar file, so that in twenty-five years it takes only tools that anybody has.
//!
//! Its members, in this order: `README.txt`, which says how to open it by hand; the key files as they lie in the folder;
//! `entries.age`, an archive sealed to a passphrase that is the data key's 64 digits; and the sealed files that entries
//! name, as they lie in the folder. That passphrase is random, so it needs no stretching, and the work factor is the lowest
//! there is.

mod making;

use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Read};
use std::path::Path;

use age::{DecryptError, Decryptor};
use secundine_domain::entry::BirthId;
use secundine_domain::file::FileId;
use secundine_domain::time::Stamp;
use sha2::{Digest, Sha256};
use tar::{Archive, EntryType};

pub use self::making::{BackupBegun, Lend, unfinished};
use crate::archive::{Reader, damaged};
use crate::database::birth_key;
use crate::files::{self, FILES, SEALED_MAX};
use crate::keys::{DataKey, PASSPHRASE_KEY, Passphrase, RECOVERY_KEY, is_recovery_identity};
use crate::walk::Walk;
use crate::{Store, StoreError};

/// Name under which the parts of a backup are gathered in the practice's folder before it is restored.
pub const INCOMING: &str = "incoming.backup";

const README: &str = "README.txt";
const ENTRIES: &str = "entries.age";

/// Most bytes of a member that is read whole. Our own choice: a key file has some hundred.
const SMALL_MAX: u64 = 64 << 10;

/// Bytes of a tar file's block.
const BLOCK: usize = 512;

/// A backup that was made, and read back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Backed {
    /// Entries in it.
    pub entries: u64,
    /// Births in it.
    pub births: u64,
    /// Files in it.
    pub files: u64,
    /// Files that were left out, since they are not as they were written.
    pub damaged_files: u64,
    /// Its size.
    pub bytes: u64,
}

impl Store {
    /// Makes a backup at this path, where nothing is yet. It takes its name only after it was read back whole, with every
    /// entry's link and signature. What lies in the inbox is not in it.
    ///
    /// # Errors
    /// [`StoreError::Full`] or [`StoreError::NotSaved`] where it could not be written, [`StoreError::Damaged`] where the
    /// entries do not all fit: there is no backup then, and the store is as it was.
    pub fn back_up(&self, path: &Path, made: &Stamp) -> Result<Backed, StoreError> {
        let lend = &mut |work: &mut dyn FnMut(&Self)| {
            work(self);
            true
        };
        self.begin_backup(made)?.make(path, lend, &mut |_| {})
    }

    /// How many births are here, without the practice itself.
    pub(crate) fn births_here(&self) -> Result<u64, StoreError> {
        let keys = self.birth_keys().map_err(|error| StoreError::reading(&error))?;
        let practice = birth_key(BirthId::PRACTICE);
        Ok(keys.iter().filter(|key| key.as_slice() != practice).count().try_into().unwrap_or(u64::MAX))
    }
}

/// Reads a backup to its end and checks every entry with its own device's key, holding it against no store. `digits` are
/// the 64 digits of the data key. Gives how many entries and births it has.
///
/// # Errors
/// [`StoreError`] says what is wrong with it.
pub fn check_backup(backup: impl Read, digits: &str) -> Result<(u64, u64), StoreError> {
    check(backup, &DataKey::from_digits(digits)?).map(|(entries, births, _)| (entries, births))
}

/// How many entries, births and files a backup has, where all of them are as they were written.
fn check(backup: impl Read, key: &DataKey) -> Result<(u64, u64, u64), StoreError> {
    let mut files = 0;
    let whole = |name: FileId, sealed: &[u8]| {
        files += 1;
        if files::name(sealed) == name { Ok(()) } else { Err(damaged(format!("{FILES}/{name} does not fit its name"))) }
    };
    let (entries, births) = entries(backup, key, whole, check_entries)?;
    Ok((entries, births, files))
}

/// The same for the plain archive that lies sealed in a backup.
///
/// # Errors
/// [`StoreError`] says what is wrong with it.
pub fn check_archive(mut archive: impl BufRead) -> Result<(u64, u64), StoreError> {
    check_entries(&mut Reader::new(&mut archive)?)
}

fn check_entries(reader: &mut Reader<'_>) -> Result<(u64, u64), StoreError> {
    Walk::along(reader, |walk, entry, _| {
        let step = walk.step(&entry, || None);
        // What is missing was told of when it was found to be so; the rest is worth keeping all the more.
        match step.signed && step.misfit.is_none_or(|kind| kind == crate::MisfitKind::Missing) {
            true => entry.reads(),
            false => Err(damaged(format!("entry {} of {} does not fit", entry.n, entry.device))),
        }
    })?;
    Ok((reader.header.entries, reader.header.births))
}

/// The key files of a backup, by their names.
pub(crate) struct KeyFiles(pub BTreeMap<&'static str, Vec<u8>>);

impl KeyFiles {
    /// Reads them; nothing of the entries is looked at.
    ///
    /// # Errors
    /// [`StoreError::NotBackup`] for what is no backup at all, [`StoreError::DamagedBackup`] where it breaks off.
    pub(crate) fn read(backup: impl Read) -> Result<Self, StoreError> {
        members(backup, |_, _| Ok(()), |files, _| Ok(files)).map(|(files, _)| files)
    }

    /// The data key, and the name of the file that it was in.
    ///
    /// # Errors
    /// [`StoreError::WrongPassphrase`], or [`StoreError::DamagedKey`] where the file is not there or is none.
    pub(crate) fn open(&self, secret: Passphrase) -> Result<(&'static str, DataKey), StoreError> {
        let name = if is_recovery_identity(&secret) { RECOVERY_KEY } else { PASSPHRASE_KEY };
        let sealed = self.0.get(name).ok_or_else(|| StoreError::DamagedKey(format!("{name}: not in the backup")))?;
        Ok((name, DataKey::unseal(name, sealed, secret)?))
    }

    /// The files of which this archive says that they lie beside it, as they are now; and the names of the others.
    pub(crate) fn sort(self, told: &BTreeMap<String, String>) -> (Self, Vec<&'static str>) {
        let (whole, other): (BTreeMap<_, _>, BTreeMap<_, _>) =
            self.0.into_iter().partition(|(name, bytes)| told.get(*name).is_some_and(|told| *told == digest(bytes)));
        (Self(whole), other.into_keys().collect())
    }
}

/// Opens the entries with this key and reads them, then each file with `file`; what `take` did holds only once this has
/// answered.
///
/// # Errors
/// [`StoreError::OtherPractice`] where the key does not open them, and as for [`KeyFiles::read`].
pub(crate) fn entries<T>(
    backup: impl Read,
    key: &DataKey,
    file: impl FnMut(FileId, &[u8]) -> Result<(), StoreError>,
    take: impl FnOnce(&mut Reader<'_>) -> Result<T, StoreError>,
) -> Result<T, StoreError> {
    let (taken, rest) = members(backup, file, |_, sealed| {
        let identity = key.whole_file_identity();
        let opened = Decryptor::new_buffered(sealed)
            .and_then(|sealed| sealed.decrypt(std::iter::once(identity as &dyn age::Identity)))
            .map_err(|error| match error {
                DecryptError::NoMatchingKeys | DecryptError::KeyDecryptionFailed | DecryptError::DecryptionFailed => {
                    StoreError::OtherPractice
                }
                // See the key files: the crate's own text for it may overflow.
                DecryptError::ExcessiveWork { required, .. } => damaged(format!("asks for a work factor of {required}")),
                other => damaged(other),
            })?;
        take(&mut Reader::new(&mut BufReader::new(opened))?)
    })?;
    match rest.len() >= BLOCK && rest.iter().all(|byte| *byte == 0) {
        true => Ok(taken),
        false => Err(damaged("the end of the file is not as it was written")),
    }
}

/// Goes through the members, and gives what stands after the last.
fn members<T>(
    backup: impl Read,
    mut file: impl FnMut(FileId, &[u8]) -> Result<(), StoreError>,
    work: impl FnOnce(KeyFiles, &mut dyn BufRead) -> Result<T, StoreError>,
) -> Result<(T, Vec<u8>), StoreError> {
    let mut archive = Archive::new(backup);
    let mut work = Some(work);
    let mut done = None;
    let mut files = BTreeMap::new();
    // Raw, so that no name or size is taken from anywhere but the member's own header.
    for (place, entry) in archive.entries().map_err(damaged)?.raw(true).enumerate() {
        let entry = entry.map_err(|error| if place == 0 { not_backup(error) } else { damaged(error) })?;
        let regular = entry.header().entry_type() == EntryType::Regular;
        let name = name_of(&entry).filter(|_| regular);
        let size = entry.size();
        if let Some(id) = file_of(&entry).filter(|_| regular && done.is_some() && size <= SEALED_MAX) {
            file(id, &whole(entry, size)?)?;
            continue;
        }
        match (name, place) {
            (Some(README), 0) => {}
            (_, 0) => return Err(not_backup("it begins otherwise")),
            (Some(name @ (PASSPHRASE_KEY | RECOVERY_KEY)), _) if done.is_none() && size <= SMALL_MAX => {
                if files.insert(name, whole(entry, size)?).is_some() {
                    return Err(damaged(format!("{name} is there twice")));
                }
            }
            (Some(ENTRIES), _) => {
                let work = work.take().ok_or_else(|| damaged("the entries are there twice"))?;
                done = Some(work(KeyFiles(std::mem::take(&mut files)), &mut BufReader::new(entry))?);
            }
            _ => return Err(damaged(format!("member {} does not belong there", place + 1))),
        }
    }
    let done = done.ok_or_else(|| match files.is_empty() && work.is_some() {
        true => not_backup("it has no entries"),
        false => damaged("it breaks off before the entries"),
    })?;
    let mut rest = Vec::new();
    archive.into_inner().take(SMALL_MAX).read_to_end(&mut rest).map_err(damaged)?;
    Ok((done, rest))
}

/// The name of a member, if it is one that a backup has.
fn name_of(entry: &tar::Entry<'_, impl Read>) -> Option<&'static str> {
    let name = entry.path_bytes();
    [README, PASSPHRASE_KEY, RECOVERY_KEY, ENTRIES].into_iter().find(|known| known.as_bytes() == &*name)
}

/// The file that a member is, if it is one that an entry may name.
fn file_of(entry: &tar::Entry<'_, impl Read>) -> Option<FileId> {
    let name = entry.path_bytes();
    std::str::from_utf8(&name).ok()?.strip_prefix(FILES)?.strip_prefix('/')?.parse().ok()
}

/// The bytes of a member.
fn whole(entry: impl Read, size: u64) -> Result<Vec<u8>, StoreError> {
    let mut bytes = Vec::new();
    entry.take(size).read_to_end(&mut bytes).map_err(damaged)?;
    match bytes.len() as u64 == size {
        true => Ok(bytes),
        false => Err(damaged("a member is not whole")),
    }
}

fn not_backup(why: impl ToString) -> StoreError {
    StoreError::NotBackup(why.to_string())
}

fn digest(bytes: &[u8]) -> String {
    hex::encode(Sha256::digest(bytes))
}
