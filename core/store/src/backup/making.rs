//! A backup is made while the store stays in use: the store is asked for by moments, so that no mark waits for it.

use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::{self, BufWriter, Read, Write};
use std::path::{Path, PathBuf};

use age::Encryptor;
use secundine_domain::file::FileId;
use secundine_domain::time::Stamp;
use tar::{Builder, EntryType};

use super::{Backed, ENTRIES, README, check, digest};
use crate::archive::{Header, Writer};
use crate::erasure::Erased;
use crate::files::{self, FILE_KEY, FILES};
use crate::keys::{DataKey, PASSPHRASE_KEY, RECOVERY_KEY, sync_folder};
use crate::notes::Noted;
use crate::verify::Place;
use crate::{Carried, Store, StoreError};

const README_TEXT: &str = include_str!("README.txt");

/// Entries that are read in one moment: some milliseconds. Our own choice.
const AT_ONCE: usize = 256;

/// What an entry weighs beside the bytes of files where it is told how far it is. Our own choice, near what it takes sealed.
const ENTRY_BYTES: u64 = 700;

/// Bytes after which it is looked whether the store is still open. Our own choice.
const LOOK_BYTES: u64 = 1 << 20;

/// Lends the store for a moment; gives no where it was closed meanwhile.
pub type Lend<'a> = &'a mut dyn FnMut(&mut dyn FnMut(&Store)) -> bool;

/// A backup that was begun. What is written into the store after that is not in it.
pub struct BackupBegun {
    data: DataKey,
    folder: PathBuf,
    keys: BTreeMap<&'static str, Vec<u8>>,
    header: Header,
    publics: Vec<[u8; 32]>,
    file_keys: Noted,
    places: Vec<Place>,
    erased: Erased,
    files: Vec<FileId>,
    /// A birth was erased before its entries were written: what was told of them no longer holds.
    outdated: bool,
}

impl Store {
    /// Begins a backup of all that is here now.
    ///
    /// # Errors
    /// [`StoreError::DamagedKey`] where a key file, and [`StoreError::NotRead`] or [`StoreError::Damaged`] where the store
    /// cannot be read.
    pub fn begin_backup(&self, made: &Stamp) -> Result<BackupBegun, StoreError> {
        let mut keys = BTreeMap::new();
        for name in [PASSPHRASE_KEY, RECOVERY_KEY] {
            match fs::read(self.folder.join(name)) {
                Ok(bytes) => drop(keys.insert(name, bytes)),
                Err(error) if error.kind() == io::ErrorKind::NotFound => {}
                Err(error) => return Err(StoreError::DamagedKey(format!("{name}: {error}"))),
            }
        }
        let (places, erased) = self.places()?;
        let beside = keys.iter().map(|(name, bytes)| ((*name).to_owned(), digest(bytes))).collect();
        let count = u64::try_from(places.len()).unwrap_or(u64::MAX);
        Ok(BackupBegun {
            data: self.data.clone(),
            folder: self.folder.clone(),
            keys,
            header: Header::new(made, self.key.id(), count, self.births_here()?, beside),
            publics: self.devices()?.iter().map(|public| *public.as_bytes()).collect(),
            file_keys: self.all_noted(FILE_KEY)?,
            places,
            erased,
            files: files::all(&self.folder).map_err(|error| StoreError::reading_file(&error))?,
            outdated: false,
        })
    }
}

impl BackupBegun {
    /// Makes it at this path, where nothing is yet, and reads it back whole before it takes its name; `told` hears how far it
    /// is, in thousandths. Where a birth is erased meanwhile it is begun anew.
    ///
    /// # Errors
    /// [`StoreError::Closed`] where the store was closed meanwhile, and as for [`Store::back_up`]: there is no backup then.
    pub fn make(mut self, path: &Path, lend: Lend<'_>, told: &mut dyn FnMut(u32)) -> Result<Backed, StoreError> {
        if path.exists() {
            return Err(StoreError::NotSaved("a file of this name is there already".to_owned()));
        }
        let unfinished = unfinished(path);
        let mut made = self.make_unfinished(&unfinished, lend, told);
        while made.is_err() && self.outdated {
            let stamp = self.header.made.clone();
            made = moment(lend, |store| store.begin_backup(&stamp)).and_then(|begun| {
                self = begun?;
                self.make_unfinished(&unfinished, lend, told)
            });
        }
        let done = made.and_then(|backed| {
            fs::rename(&unfinished, path).map_err(|error| StoreError::writing_file(&error))?;
            Ok(backed)
        });
        if done.is_err() {
            let _ = fs::remove_file(&unfinished);
        }
        let backed = done?;
        let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
        sync_folder(folder).map_err(|error| StoreError::writing_file(&error))?;
        Ok(backed)
    }

    fn make_unfinished(&mut self, path: &Path, lend: Lend<'_>, told: &mut dyn FnMut(u32)) -> Result<Backed, StoreError> {
        let bytes = |id: &FileId| fs::metadata(self.folder.join(FILES).join(id.to_string())).map_or(0, |file| file.len());
        // All of it is written, and read back.
        let all = 2 * (self.header.entries.saturating_mul(ENTRY_BYTES) + self.files.iter().map(bytes).sum::<u64>());
        let mut work = Work { lend, told, done: 0, all, looked: 0 };
        let damaged_files = self.write(path, &mut work)?;
        let file = File::open(path).map_err(|error| StoreError::writing_file(&error))?;
        let bytes = file.metadata().map_err(|error| StoreError::writing_file(&error))?.len();
        let read = check(Watched { file, work: &mut work }, &self.data);
        work.is_open()?;
        let (entries, births, files) = read.map_err(|error| match error {
            StoreError::DamagedBackup(why) => StoreError::Damaged(why),
            other => other,
        })?;
        Ok(Backed { entries, births, files, damaged_files, bytes })
    }

    /// Writes it and gives how many files were left out.
    fn write(&mut self, path: &Path, work: &mut Work<'_>) -> Result<u64, StoreError> {
        let writing = |error: io::Error| StoreError::writing_file(&error);
        let mut tar = Builder::new(BufWriter::new(File::create(path).map_err(writing)?));
        let seconds = u64::try_from(self.header.made.wall_ms / 1000).unwrap_or(0);
        let keys = self.keys.iter().map(|(name, bytes)| (*name, bytes.as_slice()));
        for (name, bytes) in [(README, README_TEXT.as_bytes())].into_iter().chain(keys) {
            let mut header = member(seconds);
            header.set_size(bytes.len() as u64);
            tar.append_data(&mut header, name, bytes).map_err(writing)?;
        }
        let mut header = member(seconds);
        let mut entries = tar.append_writer(&mut header, ENTRIES).map_err(writing)?;
        let data = self.data.clone();
        let recipient = data.whole_file_recipient();
        let sealed = Encryptor::with_recipients(std::iter::once(recipient as &dyn age::Recipient))
            .map_err(|error| StoreError::NotSaved(error.to_string()))?;
        let sealed = sealed.wrap_output(&mut entries).map_err(writing)?;
        self.write_archive(sealed, work)?.finish().map_err(writing)?;
        entries.finish().map_err(writing)?;
        let damaged_files = self.write_files(&mut tar, seconds, work)?;
        let file = tar.into_inner().and_then(|out| out.into_inner().map_err(io::IntoInnerError::into_error)).map_err(writing)?;
        file.sync_all().map_err(writing)?;
        Ok(damaged_files)
    }

    /// Writes every entry as an archive, and what opens the files that other devices sealed.
    fn write_archive<W: Write>(&mut self, out: W, work: &mut Work<'_>) -> Result<W, StoreError> {
        let writing = |error: io::Error| StoreError::writing_file(&error);
        let mut writer = Writer::new(out, &self.header).map_err(writing)?;
        for public in &self.publics {
            if let Some(device) = crate::device_with(public) {
                writer.device(device, public).map_err(writing)?;
            }
        }
        for (name, key) in &self.file_keys {
            let Ok(name) = name.as_slice().try_into() else { continue };
            writer.file(FileId(name), key).map_err(writing)?;
        }
        let Self { places, erased, outdated, .. } = self;
        for places in places.chunks(AT_ONCE) {
            for entry in moment(work.lend, |store| carried(store, places, erased, outdated))?? {
                writer.entry(entry, None).map_err(writing)?;
            }
            work.did(ENTRY_BYTES * places.len() as u64)?;
        }
        writer.end().map_err(writing)
    }

    /// Writes the files that are as they were written, and gives how many are not. One that is there no more was erased.
    fn write_files(&self, tar: &mut Builder<impl Write>, seconds: u64, work: &mut Work<'_>) -> Result<u64, StoreError> {
        let mut damaged = 0;
        for &id in &self.files {
            let sealed = match files::fits(&self.folder, id) {
                Ok(sealed) => sealed,
                Err(StoreError::NoFile) => continue,
                Err(StoreError::DamagedFile(_)) => {
                    damaged += 1;
                    continue;
                }
                Err(other) => return Err(other),
            };
            let mut header = member(seconds);
            header.set_size(sealed.len() as u64);
            let written = tar.append_data(&mut header, format!("{FILES}/{id}"), sealed.as_slice());
            written.map_err(|error| StoreError::writing_file(&error))?;
            work.did(sealed.len() as u64)?;
        }
        Ok(damaged)
    }
}

/// The passing name of a backup that is to lie at this path.
#[must_use]
pub fn unfinished(path: &Path) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(".unfinished");
    PathBuf::from(name)
}

/// The entries of these places. Where one is not there, its birth may have been erased since the places were told.
fn carried(store: &Store, places: &[Place], erased: &mut Erased, outdated: &mut bool) -> Result<Vec<Carried>, StoreError> {
    let one = |&place: &Place| {
        store.carried_at(place, erased).inspect_err(|_| {
            *outdated = store.all_erased().is_ok_and(|erased| erased.contains_key(&(place.0, place.1)));
        })
    };
    places.iter().map(one).collect()
}

/// Asks the store something, for a moment.
fn moment<T>(lend: Lend<'_>, mut ask: impl FnMut(&Store) -> T) -> Result<T, StoreError> {
    let mut answer = None;
    lend(&mut |store| answer = Some(ask(store)));
    answer.ok_or(StoreError::Closed)
}

/// What is asked of the store, and how far it is.
struct Work<'a> {
    lend: Lend<'a>,
    told: &'a mut dyn FnMut(u32),
    done: u64,
    all: u64,
    /// What was done when it was looked last whether the store is open.
    looked: u64,
}

impl Work<'_> {
    fn is_open(&mut self) -> Result<(), StoreError> {
        moment(self.lend, |_| ())
    }

    fn did(&mut self, bytes: u64) -> Result<(), StoreError> {
        self.done += bytes;
        (self.told)(u32::try_from(self.done.saturating_mul(1000) / self.all.max(1)).unwrap_or(u32::MAX).min(1000));
        if self.done - self.looked < LOOK_BYTES {
            return Ok(());
        }
        self.looked = self.done;
        self.is_open()
    }
}

/// A backup that is read back, for as long as its store is open.
struct Watched<'a, 'b> {
    file: File,
    work: &'a mut Work<'b>,
}

impl Read for Watched<'_, '_> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let read = self.file.read(into)?;
        self.work.did(read as u64).map_err(io::Error::other)?;
        Ok(read)
    }
}

/// A member's header, with nothing of the system or the person in it.
fn member(seconds: u64) -> tar::Header {
    let mut header = tar::Header::new_ustar();
    header.set_entry_type(EntryType::Regular);
    header.set_mode(0o600);
    header.set_mtime(seconds);
    header
}
