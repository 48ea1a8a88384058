//! What a backup holds, put into a store: into a new one, or beside what is there already.
//!
//! Histories merge as a union: what is not here is put in with its own link and signature, once they fit, and nothing that
//! is here is changed. All of it is on disk, or nothing.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File};
use std::io;
use std::path::Path;

use rusqlite::{Connection, params};
use secundine_domain::entry::DeviceId;
use secundine_domain::file::FileId;
use secundine_domain::time::Stamp;

use crate::archive::{Reader, damaged};
use crate::backup::{self, KeyFiles};
use crate::chain::{DeviceKey, Link};
use crate::database::{BirthKey, DATABASE, LOG, birth_of, make_folder, set_aside_without_key};
use crate::erasure::{Erased, files_of, remains};
use crate::exchange::{Carried, forget_chains};
use crate::files::{self, FILES};
use crate::inbox::INBOX_RECIPIENT;
use crate::keys::{PASSPHRASE_KEY, Passphrase, RECOVERY_KEY, sync_folder, unfinished, write_named};
use crate::notes::note_new;
use crate::reserve::RESERVE;
use crate::verify::Place;
use crate::walk::Walk;
use crate::{Misfit, MisfitKind, Note, Store, StoreError};

/// Name of the file that tells that a practice is being put back: until it is gone, there is none in the folder.
pub(crate) const BEGUN: &str = "restore-begun";

/// What a backup brought.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Restored {
    /// When the backup was made.
    pub made: Stamp,
    /// Entries that were not here before.
    pub added: u64,
    /// Entries that were here already.
    pub known: u64,
    /// Entries of births that were erased here, and stay so.
    pub erased: u64,
    /// Births that were not here before.
    pub births: u64,
    /// What was not taken in; or, as [`MisfitKind::Missing`], what is neither in the backup nor here.
    pub refused: Vec<Misfit>,
    /// Whether this is a new device from now on, since the backup holds entries of it that were not here.
    pub renewed: bool,
    /// Files that were not here before, or not as they were written.
    pub files: u64,
    /// Files of the backup that are not as they were written, and were not put in.
    pub damaged_files: u64,
    /// Key files that were altered and are not put back.
    pub damaged_keys: Vec<&'static str>,
}

impl Store {
    /// Puts the practice of a backup into a folder that has none; `secret` is the backup's passphrase, or its recovery
    /// identity as it was printed. This is a new device of the practice. Killed at any point, it is there whole or not at
    /// all, and can be put back once more.
    ///
    /// # Errors
    /// [`StoreError`] says why not; there is no practice then.
    pub fn restore(folder: &Path, backup: &Path, secret: Passphrase) -> Result<(Self, Restored), StoreError> {
        if Self::exists(folder) {
            return Err(StoreError::AlreadyThere);
        }
        // Else the next start would go on with it, over the practice that was put back.
        Self::finish_wipe(folder, None)?;
        let keys = KeyFiles::read(open(backup)?)?;
        let (opened_by, key) = keys.open(secret)?;
        make_folder(folder)
            .and_then(|()| clear(folder))
            .and_then(|()| set_aside_without_key(folder))
            .and_then(|()| File::create(folder.join(BEGUN))?.sync_all())
            .and_then(|()| sync_folder(folder))
            .map_err(|error| StoreError::writing_file(&error))?;
        let put = Self::found(folder, key).and_then(|mut store| {
            let (mut restored, told) = store.merge(backup).map_err(|error| match error {
                StoreError::OtherPractice => damaged("the entries do not open with their key"),
                other => other,
            })?;
            let (whole, altered) = keys.sort(&told);
            if !whole.0.contains_key(opened_by) {
                return Err(damaged(format!("{opened_by} is another")));
            }
            restored.damaged_keys = altered;
            whole.put(folder).map_err(|error| StoreError::writing_file(&error))?;
            Ok((store, restored))
        });
        if put.is_err() {
            let _ = clear(folder);
        }
        put
    }

    /// Adds what a backup of this practice holds and is not here.
    ///
    /// # Errors
    /// [`StoreError::OtherPractice`] for a backup of another one; any other says why not. Nothing is changed then.
    pub fn add_backup(&mut self, backup: &Path) -> Result<Restored, StoreError> {
        self.merge(backup).map(|(restored, _)| restored)
    }

    /// Whether this passphrase, or recovery identity as it was printed, opens the practice in this folder or the backup.
    ///
    /// # Errors
    /// [`StoreError::WrongPassphrase`] where it opens neither, or why the backup could not be read.
    pub fn opens_backup(folder: &Path, backup: &Path, secret: Passphrase) -> Result<(), StoreError> {
        let keys = KeyFiles::read(open(backup)?)?;
        keys.open(secret.clone()).map(|_| ()).or_else(|_| Self::opens(folder, secret))
    }

    /// Whether a backup is one of this practice.
    ///
    /// # Errors
    /// [`StoreError::OtherPractice`] where it is not, or why it could not be read.
    pub fn is_backup_of(&self, backup: &Path) -> Result<(), StoreError> {
        backup::entries(open(backup)?, &self.data, |_, _| Ok(()), |_| Ok(()))
    }

    /// The union, in one transaction; and the digests of the files that lie beside the entries in the backup.
    fn merge(&mut self, backup: &Path) -> Result<(Restored, BTreeMap<String, String>), StoreError> {
        self.writable()?;
        let before = self.births_here()?;
        let transaction = self.connection.unchecked_transaction().map_err(|error| StoreError::writing(&error))?;
        let (mut union, mut file_keys) = (Union::new(self)?, Vec::new());
        let (mut files, mut damaged_files) = (0, 0);
        // The files come after the entries.
        let left_out = RefCell::new(BTreeSet::new());
        // A file that no entry names does no harm: they are on disk before the entries that name them.
        let put_in = |name: FileId, sealed: &[u8]| {
            match files::name(sealed) == name {
                _ if left_out.borrow().contains(&name) => {}
                true if files::fits(&self.folder, name).is_ok() => {}
                true => drop(files::put(&self.folder, sealed).map(|_| files += 1)?),
                false => damaged_files += 1,
            }
            Ok(())
        };
        let (made, told) = backup::entries(open(backup)?, &self.data, put_in, |reader| {
            file_keys = union.take_in(reader)?;
            left_out.replace(std::mem::take(&mut union.left_out));
            Ok((reader.header.made.clone(), reader.header.files.clone()))
        })?;
        let Union { added, known, erased_here: erased, refused, split, .. } = union;
        let key = match split {
            true => Some(DeviceKey::random()?),
            false => None,
        };
        let kept = key.as_ref().map_or(Ok(()), |key| key.replace(&transaction));
        kept.and_then(|()| forget_chains(&transaction))
            .and_then(|()| note_new(&transaction, &file_keys))
            .and_then(|()| transaction.commit())
            .map_err(|error| self.note(StoreError::writing(&error)))?;
        let renewed = key.is_some();
        if let Some(key) = key {
            self.become_device(key);
        }
        let births = self.births_here()?.saturating_sub(before);
        let damaged_keys = Vec::new();
        Ok((Restored { made, added, known, erased, births, refused, renewed, files, damaged_files, damaged_keys }, told))
    }
}

/// What is put together from a store and an archive.
struct Union<'a> {
    store: &'a Store,
    connection: &'a Connection,
    /// What is here, in order.
    here: Vec<Place>,
    /// What of it is erased.
    erased: Erased,
    added: u64,
    known: u64,
    /// Entries whose text the archive has, and which are erased here.
    erased_here: u64,
    /// The files that they name.
    left_out: BTreeSet<FileId>,
    refused: Vec<Misfit>,
    /// The device whose history in the archive is another than here, from some entry on.
    forked: Option<DeviceId>,
    /// This device wrote more than is here, or something else: it must not go on with its numbers.
    split: bool,
}

impl<'a> Union<'a> {
    fn new(store: &'a Store) -> Result<Self, StoreError> {
        let (here, erased) = store.places()?;
        Ok(Self {
            store,
            connection: &store.connection,
            here,
            erased,
            added: 0,
            known: 0,
            erased_here: 0,
            left_out: BTreeSet::new(),
            refused: Vec::new(),
            forked: None,
            split: false,
        })
    }

    /// Takes in the entries; gives the keys of files.
    fn take_in(&mut self, reader: &mut Reader<'_>) -> Result<Vec<Note>, StoreError> {
        let mut walk = Walk::along(reader, |walk, entry, _| match self.find(entry.device, entry.n) {
            Some(birth) if self.is_same(&entry, &birth)? => {
                walk.pass(&entry);
                self.know(&entry);
                Ok(())
            }
            Some(birth) => self.keep_ours(walk, &entry, &birth),
            None => self.take(walk, &entry),
        })?;
        walk.file_keys.retain(|key| !matches!(key, Note::Put(_, name, _) if self.left_out.iter().any(|file| file.0 == **name)));
        Ok(walk.file_keys)
    }

    /// The birth under which an entry of this id is here.
    fn find(&self, device: DeviceId, n: u64) -> Option<BirthKey> {
        let at = self.here.binary_search_by(|(d, m, _)| (*d, *m).cmp(&(device, n))).ok()?;
        self.here.get(at).map(|(_, _, birth)| *birth)
    }

    fn link_here(&self, device: DeviceId, n: u64) -> Option<Link> {
        if let Some(erased) = self.erased.get(&(device, n)) {
            return Some(erased.link);
        }
        let birth = self.find(device, n)?;
        let select = "SELECT link FROM entry WHERE birth = ?1 AND device = ?2 AND n = ?3";
        self.connection.prepare_cached(select).ok()?.query_row(params![birth, device.0, n], |row| row.get(0)).ok()
    }

    /// Whether it is the entry that is here, of which the one or the other may be erased.
    fn is_same(&self, entry: &Carried, birth: &BirthKey) -> Result<bool, StoreError> {
        if let Some(ours) = self.erased.get(&(entry.device, entry.n)) {
            return Ok(*ours == Carried { body: None, ..entry.clone() });
        }
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let select = "SELECT (?4 IS NULL OR body = ?4) AND link = ?5 AND signature = ?6
                      FROM entry WHERE birth = ?1 AND device = ?2 AND n = ?3";
        let mut select = self.connection.prepare_cached(select).map_err(reading)?;
        let Carried { device, n, body, link, seal, .. } = entry;
        let same = select.query_row(params![birth, device.0, n, body, link, seal], |row| row.get(0));
        Ok(*birth == entry.birth && same.map_err(reading)?)
    }

    /// It is here already; what is erased stays so.
    fn know(&mut self, entry: &Carried) {
        match entry.body.is_some() && self.erased.contains_key(&(entry.device, entry.n)) {
            true => {
                self.erased_here += 1;
                self.left_out.extend(files_of(entry));
            }
            false => self.known += 1,
        }
    }

    /// Another entry of this id is here: it stays.
    fn keep_ours(&mut self, walk: &mut Walk, entry: &Carried, birth: &BirthKey) -> Result<(), StoreError> {
        let step = walk.step(entry, || self.link_here(entry.device, entry.n.saturating_sub(1)));
        let other = step.signed && self.link_here(entry.device, entry.n) != Some(entry.link);
        if other {
            self.fork(entry.device);
        }
        let kind = step.misfit.filter(|_| !other).unwrap_or(MisfitKind::Rewritten);
        self.refuse(entry, Some(birth), kind);
        Ok(())
    }

    /// No entry of this id is here: it is put in if it fits.
    fn take(&mut self, walk: &mut Walk, entry: &Carried) -> Result<(), StoreError> {
        let before = entry.n.saturating_sub(1);
        let step = walk.step(entry, || self.link_here(entry.device, before));
        match step.misfit {
            _ if step.signed && self.forked == Some(entry.device) => {
                self.refuse(entry, None, MisfitKind::Rewritten);
                return Ok(());
            }
            None => {}
            Some(MisfitKind::Missing) => {
                let (device, n) = (entry.device, before);
                self.refused.push(Misfit::Entry { device, n, birth: None, kind: MisfitKind::Missing });
            }
            Some(kind) => {
                self.refuse(entry, None, kind);
                return Ok(());
            }
        }
        entry.reads()?;
        self.insert(walk, entry).map_err(|error| StoreError::writing(&error))?;
        self.split |= entry.device == self.store.key.id() && entry.n >= self.store.next_id().n;
        self.added += u64::from(entry.body.is_some());
        Ok(())
    }

    fn insert(&self, walk: &Walk, entry: &Carried) -> rusqlite::Result<()> {
        let Carried { device, n, birth, body, link, seal, .. } = entry;
        if let Some(public) = walk.key(*device) {
            let known = "INSERT OR IGNORE INTO device (id, public) VALUES (?1, ?2)";
            self.connection.prepare_cached(known)?.execute(params![device.0, public.as_bytes()])?;
        }
        let Some(body) = body else { return note_new(self.connection, &[remains(entry)]) };
        let insert = "INSERT INTO entry (birth, device, n, body, link, signature) VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
        self.connection.prepare_cached(insert)?.execute(params![birth, device.0, n, body, link, seal]).map(|_| ())
    }

    fn fork(&mut self, device: DeviceId) {
        self.forked = Some(device);
        self.split |= device == self.store.key.id();
    }

    fn refuse(&mut self, entry: &Carried, birth: Option<&BirthKey>, kind: MisfitKind) {
        let birth = birth.and_then(|birth| birth_of(birth));
        self.refused.push(Misfit::Entry { device: entry.device, n: entry.n, birth, kind });
    }
}

impl KeyFiles {
    /// Gives the files their names, the passphrase's last; then the practice stands.
    fn put(&self, folder: &Path) -> io::Result<()> {
        for name in [RECOVERY_KEY, PASSPHRASE_KEY] {
            self.0.get(name).map_or(Ok(()), |bytes| write_named(folder, name, bytes))?;
        }
        fs::remove_file(folder.join(BEGUN))?;
        sync_folder(folder)
    }
}

/// Removes what was left of a practice that was being put back. It is whole in its backup.
pub(crate) fn clear(folder: &Path) -> io::Result<()> {
    if !folder.join(BEGUN).exists() {
        return Ok(());
    }
    let keys = [PASSPHRASE_KEY, RECOVERY_KEY];
    let files = [DATABASE, LOG, "secundine.db-shm", "secundine.db-journal", INBOX_RECIPIENT, RESERVE];
    let named = keys.iter().chain(&files).map(|name| folder.join(name));
    let passing = keys.iter().chain(&[INBOX_RECIPIENT, RESERVE]).map(|name| unfinished(folder, name));
    for path in named.chain(passing).filter(|path| path.exists()) {
        fs::remove_file(path)?;
    }
    if folder.join(FILES).exists() {
        fs::remove_dir_all(folder.join(FILES))?;
    }
    sync_folder(folder)?;
    fs::remove_file(folder.join(BEGUN))?;
    sync_folder(folder)
}

fn open(backup: &Path) -> Result<File, StoreError> {
    File::open(backup).map_err(|error| StoreError::NotBackup(error.to_string()))
}
