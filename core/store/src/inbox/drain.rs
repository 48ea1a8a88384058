//! Draining: what lies in the inbox is taken into the store, once, as soon as there is a key.

use std::collections::BTreeSet;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use rusqlite::{Connection, OptionalExtension, Transaction, params};
use secundine_domain::entry::Entry;
use zeroize::Zeroizing;

use super::form::{End, Header, NoHeader, Records, Tail, read};
use super::{DAMAGED, EXTENSION, INBOX, InboxTail, files, hold, identity, open_lock};
use crate::keys::sync_folder;
use crate::{Store, StoreError};

/// What was taken in, and what was found wrong.
#[derive(Debug, Default)]
pub struct Drained {
    /// Entries taken in.
    pub entries: u32,
    /// Files that lack an end which was written, or are gone whole.
    pub lost_tail: u32,
    /// Files with a piece of a record at their end, as a loss of power leaves it; set aside.
    pub torn: u32,
    /// Files, or their ends, that do not verify; set aside.
    pub damaged: u32,
    /// Files that stay where they are for the next time.
    pub waiting: u32,
    /// Why they stay.
    pub stopped: Option<StoreError>,
}

/// The records of one file.
pub struct Batch {
    /// In the order in which they were written.
    pub records: Vec<Zeroizing<Vec<u8>>>,
    /// What was carried over from the file before.
    pub carry: Option<Vec<u8>>,
}

/// What became of them.
#[derive(Debug, Default)]
pub struct Turned {
    /// The entries to take in.
    pub entries: Vec<Entry>,
    /// What is to be carried over to the next file.
    pub carry: Vec<u8>,
    /// How many records could not be understood: their file is set aside as damaged.
    pub unread: usize,
}

/// Names a file as drained; written together with its entries.
pub(crate) struct Row {
    tail: Tail,
    whole: bool,
    carry: Vec<u8>,
}

impl Row {
    pub(crate) fn insert(&self, transaction: &Transaction) -> rusqlite::Result<()> {
        let mut insert =
            transaction.prepare_cached("INSERT INTO drained (digest, count, tag, whole, carry) VALUES (?1, ?2, ?3, ?4, ?5)")?;
        insert.execute(params![self.tail.digest, self.tail.count, self.tail.tag, self.whole, self.carry]).map(|_| ())
    }

    fn find(connection: &Connection, digest: &[u8; 32]) -> Result<Option<Self>, StoreError> {
        let select = "SELECT count, tag, whole, carry FROM drained WHERE digest = ?1";
        let found = connection.query_row(select, params![digest], |row| {
            let tail = Tail { digest: *digest, count: row.get(0)?, tag: row.get(1)? };
            Ok(Self { tail, whole: row.get(2)?, carry: row.get(3)? })
        });
        found.optional().map_err(|error| StoreError::reading(&error))
    }
}

/// A file whose header was opened.
struct Opened {
    path: PathBuf,
    n: u64,
    before: Option<Tail>,
    held: Records,
}

impl Store {
    /// Takes in what lies in the inbox, file by file. `turn` makes entries of the records of one file. The entries and the name of the file are put on disk together, or not at all; only then
    /// the file is removed. A file that was not taken in whole is set aside, never removed.
    ///
    /// `expected` is how far a writer in this run of the program knows to have come.
    ///
    /// # Errors
    /// What kept the inbox from being looked at. What keeps a single file from being taken in is told in
    /// [`Drained::stopped`]; nothing is lost by it. [`StoreError::ReadOnly`] for a damaged store that is only read.
    pub fn drain(
        &mut self,
        expected: Option<&InboxTail>,
        mut turn: impl FnMut(&Self, Batch) -> Result<Turned, StoreError>,
    ) -> Result<Drained, StoreError> {
        self.writable()?;
        let folder = self.folder().join(INBOX);
        let mut report = Drained::default();
        let mut lost = BTreeSet::new();
        if folder.is_dir() {
            let writing = |error: io::Error| StoreError::writing_file(&error);
            let lock = open_lock(&folder).map_err(writing)?;
            let _held = hold(&lock).map_err(writing)?;
            let opened = self.open_all(&folder, &mut report)?;
            let all = opened.len();
            for (done, file) in opened.into_iter().enumerate() {
                if let Err(error) = self.drain_one(&folder, file, &mut report, &mut lost, &mut turn) {
                    report.waiting = u32::try_from(all - done).unwrap_or(u32::MAX);
                    report.stopped = Some(error);
                    break;
                }
            }
        }
        if report.stopped.is_none() {
            lost.extend(expected.map(|tail| self.cut(tail)).transpose()?.flatten());
        }
        report.lost_tail = u32::try_from(lost.len()).unwrap_or(u32::MAX);
        Ok(report)
    }

    /// Every file whose header opens, in the order in which they were begun whatever they are called now. The others are
    /// set aside.
    fn open_all(&self, folder: &Path, report: &mut Drained) -> Result<Vec<Opened>, StoreError> {
        let files = files(folder).map_err(|error| StoreError::writing_file(&error))?;
        let Some(identity) = identity::identity(&self.connection)? else {
            return Err(StoreError::Damaged("the inbox has no identity".to_owned()));
        };
        let mut opened = Vec::new();
        for (_, path) in files {
            let bytes = fs::read(&path).map_err(|error| StoreError::writing_file(&error))?;
            match Header::open(&bytes, &identity) {
                Ok((header, digest, rest)) => {
                    let held = read(&header, digest, rest);
                    opened.push(Opened { path, n: header.n, before: header.before, held });
                }
                Err(why) => {
                    match why {
                        NoHeader::Torn => report.torn += 1,
                        NoHeader::Damaged => report.damaged += 1,
                    }
                    set_aside(folder, &path).map_err(|error| StoreError::writing_file(&error))?;
                }
            }
        }
        opened.sort_by(|one, other| (one.n, &one.path).cmp(&(other.n, &other.path)));
        Ok(opened)
    }

    fn drain_one(
        &mut self,
        folder: &Path,
        file: Opened,
        report: &mut Drained,
        lost: &mut BTreeSet<[u8; 32]>,
        turn: &mut impl FnMut(&Self, Batch) -> Result<Turned, StoreError>,
    ) -> Result<(), StoreError> {
        let Opened { path, before, held, .. } = file;
        let Records { records, tail, end } = held;
        if let Some(row) = Row::find(&self.connection, &tail.digest)? {
            // Killed after the commit, or a copy: all of it is in the store already.
            return tidy(folder, &path, row.whole && end == End::Whole && tail == row.tail);
        }
        let carry = match &before {
            Some(before) => {
                lost.extend(self.cut(before)?);
                Row::find(&self.connection, &before.digest)?.map(|row| row.carry)
            }
            None => None,
        };
        let Turned { entries, carry, unread } = turn(self, Batch { records, carry })?;
        let end = if unread > 0 { End::Damaged } else { end };
        self.append_beside(&entries, Some(&Row { tail, whole: end == End::Whole, carry }))?;
        report.entries = report.entries.saturating_add(u32::try_from(entries.len()).unwrap_or(u32::MAX));
        match end {
            End::Whole => {}
            End::Torn => report.torn += 1,
            End::Damaged => report.damaged += 1,
        }
        tidy(folder, &path, end == End::Whole)
    }

    /// The file that a later one, or the writer itself, knows to have gone further than what was taken in.
    fn cut(&self, known: &Tail) -> Result<Option<[u8; 32]>, StoreError> {
        let short = match Row::find(&self.connection, &known.digest)? {
            None => true,
            // Its end was told of as it was drained.
            Some(row) if !row.whole => false,
            Some(row) => row.tail.count < known.count || (row.tail.count == known.count && row.tail.tag != known.tag),
        };
        Ok(short.then_some(known.digest))
    }
}

/// Removes a file that is in the store whole, or sets it aside.
fn tidy(folder: &Path, path: &Path, whole: bool) -> Result<(), StoreError> {
    let done = if whole { fs::remove_file(path).and_then(|()| sync_folder(folder)) } else { set_aside(folder, path) };
    done.map_err(|error| StoreError::writing_file(&error))
}

/// Moves a file to where damaged ones are kept, under a name that is free there.
fn set_aside(folder: &Path, path: &Path) -> io::Result<()> {
    let damaged = folder.join(DAMAGED);
    fs::create_dir_all(&damaged)?;
    let free = (1_u32..).map(|n| damaged.join(format!("{n}.{EXTENSION}"))).find(|name| !name.exists());
    fs::rename(path, free.unwrap_or_else(|| damaged.join("last")))?;
    sync_folder(&damaged)?;
    sync_folder(folder)
}
