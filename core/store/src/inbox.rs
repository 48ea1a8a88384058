//! The locked inbox: what is marked while the practice is locked lies on disk, unreadable until it is unlocked.
//!
//! Writing needs no key: the first record of a spell makes a file whose random seed is sealed to the inbox's recipient,
//! and a ratchet that only turns forward seals each record. What was sealed cannot be read again by the one who wrote it.

mod drain;
mod form;
#[cfg(feature = "fuzzing")]
pub(crate) mod fuzzing;
mod identity;
mod ratchet;

use std::fs::{self, File, OpenOptions};
use std::io::{self, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

use zeroize::Zeroizing;

pub(crate) use drain::Row;
pub use drain::{Batch, Drained, Turned};
pub(crate) use identity::{DrainedRow, carry_over, prepare};

use crate::keys::sync_folder;
use crate::{StoreError, reserve};
use form::{Header, Tail, UNUSED, framed_tail};
use ratchet::Ratchet;

/// Name of the plain recipient in the practice's folder.
pub const INBOX_RECIPIENT: &str = "inbox.recipient";
/// Name of the inbox in the practice's folder.
pub const INBOX: &str = "inbox";
/// What could not be drained whole is kept here, in the inbox's folder.
pub const DAMAGED: &str = "damaged";
/// Most bytes of one record, as it is given. With its overhead it makes at most 64 KiB on disk.
pub const RECORD_MAX: usize = 64 * 1024 - form::OVERHEAD;

/// Held by whoever writes or drains, so that no file is drained under a writer's hands.
const LOCK: &str = "lock";
const EXTENSION: &str = "inbox";
/// A file grows by so many bytes at a time: what is written over room that is there already costs the disk less than what makes
/// a file longer, and its length tells less.
const ROOM: usize = 16 * 1024;

/// How far a file of the inbox had come: names the file, its records and the last of them.
pub type InboxTail = Tail;

/// The writing end. Works without any key.
pub struct Inbox {
    practice: PathBuf,
    current: Option<Current>,
    /// The last acknowledged record of this writer, for the drain to find again.
    last: Option<Tail>,
}

/// The file that is written to, and the lock beside it, which stays open so that a record costs no more than it must.
struct Current {
    lock: File,
    written: Written,
    path: PathBuf,
    ratchet: Ratchet,
    tail: Tail,
}

/// A file with room for more.
struct Written {
    file: File,
    /// How far it is written.
    length: u64,
    /// How far it goes.
    room: u64,
}

/// What lies in the inbox, as far as can be told without a key.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Waiting {
    /// How many files.
    pub files: u32,
    /// Their bytes.
    pub bytes: u64,
}

impl Inbox {
    /// The inbox of the practice in this folder. Nothing is touched until the first record.
    #[must_use]
    pub fn new(practice: &Path) -> Self {
        Self { practice: practice.to_owned(), current: None, last: None }
    }

    /// What lies in the inbox of the practice in this folder.
    #[must_use]
    pub fn waiting(practice: &Path) -> Waiting {
        let files = files(&practice.join(INBOX)).unwrap_or_default();
        let bytes = files.iter().filter_map(|(_, path)| fs::metadata(path).ok()).map(|file| file.len()).sum();
        Waiting { files: u32::try_from(files.len()).unwrap_or(u32::MAX), bytes }
    }

    /// Puts a record on disk. When this returns, it survives a kill and a loss of power.
    ///
    /// # Errors
    /// [`StoreError::Full`] or [`StoreError::NotSaved`]: the record was not acknowledged. The file is not written to again,
    /// since what a failed sync left behind is unknown; the next record begins a new one. On a full disk that is tried at
    /// once, in the room of the reserve.
    pub fn append(&mut self, record: &[u8]) -> Result<(), StoreError> {
        match self.put(record) {
            Err(StoreError::Full) if reserve::give_up(&self.practice) => self.put(record),
            done => done,
        }
    }

    fn put(&mut self, record: &[u8]) -> Result<(), StoreError> {
        if record.is_empty() || record.len() > RECORD_MAX {
            return Err(StoreError::NotSaved("no record of this length".to_owned()));
        }
        let mut kept = self.current.take();
        if let Some(current) = kept.as_mut()
            && !current.go_on(record)?
        {
            kept = None;
        }
        let current = kept.map_or_else(|| begin(&self.practice, record), Ok)?;
        self.last = Some(current.tail);
        self.current = Some(current);
        Ok(())
    }

    /// How far this writer came; none before its first record.
    #[must_use]
    pub fn tail(&self) -> Option<InboxTail> {
        self.last
    }
}

impl Current {
    /// False where the file is gone: another window may have unlocked and drained it since.
    fn go_on(&mut self, record: &[u8]) -> Result<bool, StoreError> {
        let _held = hold(&self.lock).map_err(|error| StoreError::writing_file(&error))?;
        if !self.path.exists() {
            return Ok(false);
        }
        let sealed = self.ratchet.seal(record)?;
        self.written.go_on(&sealed).map_err(|error| StoreError::writing_file(&error))?;
        self.tail = Tail { count: self.ratchet.count(), tag: self.ratchet.tag(), ..self.tail };
        Ok(true)
    }
}

impl Written {
    /// Begins a file under a name that is free: the bytes and the name are on disk, or it is gone again.
    fn begin(path: &Path, folder: &Path, bytes: &[u8]) -> io::Result<Self> {
        let file = OpenOptions::new().write(true).create_new(true).open(path)?;
        let mut begun = Self { file, length: 0, room: 0 };
        let written = begun.put(bytes).and_then(|()| begun.file.sync_all()).and_then(|()| sync_folder(folder));
        if let Err(error) = written {
            // It holds nothing that was acknowledged.
            let _ = fs::remove_file(path);
            return Err(error);
        }
        Ok(begun)
    }

    fn go_on(&mut self, bytes: &[u8]) -> io::Result<()> {
        let acknowledged = self.length;
        self.put(bytes).and_then(|()| self.file.sync_data()).inspect_err(|_| {
            // Best left as it was acknowledged. That this too may fail changes nothing: the draining end finds out.
            let _ = self.file.set_len(acknowledged);
        })
    }

    /// Writes behind what was written, and makes room behind that where there is none, if the disk has it.
    fn put(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.file.seek(SeekFrom::Start(self.length))?;
        self.file.write_all(bytes)?;
        self.length += bytes.len() as u64;
        if self.length > self.room {
            self.room = self.length;
            match self.file.write_all(&[UNUSED; ROOM]) {
                Ok(()) => self.room += ROOM as u64,
                Err(_) => self.file.set_len(self.length)?,
            }
        }
        Ok(())
    }
}

/// Begins a file with its first record: both are on disk, under their name, or nothing was acknowledged.
fn begin(practice: &Path, record: &[u8]) -> Result<Current, StoreError> {
    let writing = |error: io::Error| StoreError::writing_file(&error);
    let folder = &practice.join(INBOX);
    make_inbox(practice, folder).map_err(writing)?;
    let lock = open_lock(folder).map_err(writing)?;
    let held = hold(&lock).map_err(writing)?;
    let recipient = identity::recipient(practice)?;
    let known = files(folder).map_err(writing)?;
    let n = known.last().map_or(1, |(n, _)| n.saturating_add(1));
    let before = known.iter().rev().find_map(|(_, path)| framed_tail(&fs::read(path).ok()?));
    let mut seed = Zeroizing::new([0_u8; 32]);
    getrandom::fill(seed.as_mut_slice()).map_err(|error| StoreError::NotSaved(error.to_string()))?;
    let header = Header { n, before, seed }.seal(&recipient)?;
    let mut ratchet = header.ratchet;
    let mut bytes = header.bytes;
    bytes.extend(ratchet.seal(record)?);
    let path = folder.join(format!("{n}.{EXTENSION}"));
    let written = Written::begin(&path, folder, &bytes).map_err(writing)?;
    let tail = Tail { digest: header.digest, count: ratchet.count(), tag: ratchet.tag() };
    drop(held);
    Ok(Current { lock, written, path, ratchet, tail })
}

fn make_inbox(practice: &Path, folder: &Path) -> io::Result<()> {
    if folder.is_dir() {
        return Ok(());
    }
    fs::create_dir(folder)?;
    sync_folder(practice)
}

fn open_lock(folder: &Path) -> io::Result<File> {
    OpenOptions::new().create(true).write(true).truncate(false).open(folder.join(LOCK))
}

/// The lock while it is held. Let go of when dropped.
struct Held<'lock>(&'lock File);

impl Drop for Held<'_> {
    fn drop(&mut self) {
        // What cannot be let go of here is when the file is closed.
        let _ = self.0.unlock();
    }
}

/// Waits until nobody else writes or drains.
fn hold(lock: &File) -> io::Result<Held<'_>> {
    match lock.lock() {
        // Where the file system knows no locks there is one program at a time.
        Err(error) if error.kind() != io::ErrorKind::Unsupported => Err(error),
        _ => Ok(Held(lock)),
    }
}

/// The files of the inbox with their numbers, in order.
fn files(folder: &Path) -> io::Result<Vec<(u64, PathBuf)>> {
    let listing = match fs::read_dir(folder) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
        listing => listing?,
    };
    let mut found = Vec::new();
    for entry in listing {
        let path = entry?.path();
        let number = path.file_stem().and_then(|stem| stem.to_str()).and_then(|stem| stem.parse().ok());
        if let Some(n) = number.filter(|_| path.extension().is_some_and(|extension| extension == EXTENSION)) {
            found.push((n, path));
        }
    }
    found.sort();
    Ok(found)
}
