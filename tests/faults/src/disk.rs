//! What a loss of power may leave on disk, at every moment of a trace.
//!
//! What was synced is there. Of what was written to a file since its last sync there may be nothing, the first so many
//! writes, the last of them torn where a sector of 512 bytes or a page of 4096 ends, or any of them in any order. Removing
//! and cutting a file count as writes. The head is never synced: it may be as it is, as it was, torn, or not there.

use std::collections::HashSet;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::Path;
use std::{fs, io};

use secundine_store::{DATABASE, HEAD};

use crate::Chance;
use crate::plan::{Event, Part};

/// Bytes of a sector, which is the least that a disk writes. A page ends where a sector does.
const SECTOR: u64 = 512;
/// How many orders by chance are tried at each moment.
const SHUFFLES: usize = 6;

/// What lies on disk after the power went.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub struct State {
    /// Database, log and journal; none where there is no such file.
    files: [Option<Vec<u8>>; 3],
    head: Option<Vec<u8>>,
    /// How many entries had been handed to the store.
    pub tried: usize,
    /// How many entries it had acknowledged.
    pub acknowledged: usize,
}

impl State {
    /// Puts the state into a folder that has the key files only.
    ///
    /// # Errors
    /// Where a file cannot be written.
    pub fn lay_out(&self, folder: &Path) -> io::Result<()> {
        let names = [DATABASE.to_owned(), format!("{DATABASE}-wal"), format!("{DATABASE}-journal"), HEAD.to_owned()];
        for (name, bytes) in names.iter().zip(self.files.iter().chain([&self.head])) {
            let path = folder.join(name);
            match bytes {
                Some(bytes) => fs::write(path, bytes)?,
                None if path.exists() => fs::remove_file(path)?,
                None => {}
            }
        }
        Ok(())
    }
}

/// One change of a file.
#[derive(Clone, Debug)]
enum Change {
    Write(u64, Vec<u8>),
    Truncate(u64),
    Delete,
}

impl Change {
    fn apply(&self, file: &mut Option<Vec<u8>>) {
        match self {
            Self::Write(at, bytes) => {
                let (file, at) = (file.get_or_insert_default(), usize::try_from(*at).unwrap());
                file.resize(file.len().max(at + bytes.len()), 0);
                file[at..at + bytes.len()].copy_from_slice(bytes);
            }
            Self::Truncate(length) => file.get_or_insert_default().resize(usize::try_from(*length).unwrap(), 0),
            Self::Delete => *file = None,
        }
    }

    /// Every way in which only the beginning of it reached the disk.
    fn torn(&self) -> Vec<Self> {
        let Self::Write(at, bytes) = self else { return Vec::new() };
        let cuts = (at / SECTOR + 1..).map(|sector| sector * SECTOR - at).map(|cut| usize::try_from(cut).unwrap());
        cuts.take_while(|cut| *cut < bytes.len()).map(|cut| Self::Write(*at, bytes[..cut].to_vec())).collect()
    }
}

/// A file as the disk has it for certain, and what may have reached it since.
#[derive(Clone, Debug, Default)]
struct File {
    synced: Option<Vec<u8>>,
    since: Vec<Change>,
}

impl File {
    fn with(&self, changes: &[Change]) -> Option<Vec<u8>> {
        let mut file = self.synced.clone();
        changes.iter().for_each(|change| change.apply(&mut file));
        file
    }

    /// What was removed of it, and all before, is on disk.
    fn stays_removed(&mut self) {
        if let Some(removed) = self.since.iter().rposition(|change| matches!(change, Change::Delete)) {
            self.synced = self.with(&self.since[..=removed]);
            self.since.drain(..=removed);
        }
    }

    /// Everything that may be left of it.
    fn left(&self, chance: &mut Chance) -> Vec<Option<Vec<u8>>> {
        let mut left: Vec<_> = (0..=self.since.len()).map(|kept| self.with(&self.since[..kept])).collect();
        let Some((last, before)) = self.since.split_last() else { return left };
        for torn in last.torn() {
            left.push(self.with(std::slice::from_ref(&torn)));
            left.push(self.with(&[before, &[torn]].concat()));
        }
        for _ in 0..SHUFFLES {
            left.push(self.with(&shuffled(&self.since, chance)));
        }
        left
    }
}

/// Some of the changes, in another order, and one of them torn.
fn shuffled(changes: &[Change], chance: &mut Chance) -> Vec<Change> {
    let mut some = changes.to_vec();
    for k in (1..some.len()).rev() {
        some.swap(k, chance.below(k + 1));
    }
    some.truncate(1 + chance.below(some.len()));
    let (one, torn) = (chance.below(some.len()), chance.below(8));
    if let Some(torn) = some[one].torn().get(torn) {
        some[one] = torn.clone();
    }
    some
}

/// What a trace may leave, moment by moment. States that were given before are not given again.
pub struct Power {
    files: [File; 3],
    heads: Vec<Vec<u8>>,
    seed: u64,
    known: HashSet<u64>,
    tried: usize,
    acknowledged: Option<usize>,
    last: usize,
}

impl Power {
    /// The power may go from the moment on at which a trace first acknowledges.
    #[must_use]
    pub fn new(seed: u64) -> Self {
        let (files, heads, known) = Default::default();
        Self { files, heads, seed, known, tried: 0, acknowledged: None, last: 0 }
    }

    /// Every new state that a loss of power right after the n-th event may leave, each with its number at this moment.
    pub fn after(&mut self, n: usize, event: &Event) -> Vec<(usize, State)> {
        match event {
            Event::Write(part, at, bytes) => self.change(*part, Change::Write(*at, bytes.clone())),
            Event::Truncate(part, length) => self.change(*part, Change::Truncate(*length)),
            Event::Delete(part) => self.change(*part, Change::Delete),
            Event::Sync(part) => {
                self.last = *part as usize;
                let file = &mut self.files[self.last];
                file.synced = file.with(&file.since);
                file.since.clear();
            }
            Event::Folder => self.files.iter_mut().for_each(File::stays_removed),
            Event::Tried(tried) => self.tried = *tried,
            Event::Acknowledged(acknowledged, head) => {
                self.acknowledged = Some(*acknowledged);
                self.heads.push(head.clone());
            }
        }
        let Some(acknowledged) = self.acknowledged else { return Vec::new() };
        let mut chance = Chance(self.seed.rotate_left(32) ^ n as u64);
        let mut states = Vec::new();
        for others in [false, true] {
            for left in self.files[self.last].left(&mut chance) {
                let file = |k: usize| self.files[k].with(if others { &self.files[k].since } else { &[] });
                let mut files = [file(0), file(1), file(2)];
                files[self.last] = left;
                let head = self.head(&mut chance);
                states.push(State { files, head, tried: self.tried, acknowledged });
            }
        }
        states.into_iter().enumerate().filter(|(_, state)| self.known.insert(hash(state))).collect()
    }

    fn change(&mut self, part: Part, change: Change) {
        self.last = part as usize;
        self.files[self.last].since.push(change);
    }

    fn head(&self, chance: &mut Chance) -> Option<Vec<u8>> {
        let (last, earlier) = (self.heads.last()?, &self.heads[chance.below(self.heads.len())]);
        match chance.below(5) {
            0 => None,
            1 => Some(last[..chance.below(last.len() + 1)].to_vec()),
            2 => Some(earlier.clone()),
            _ => Some(last.clone()),
        }
        .filter(|head| !head.is_empty())
    }
}

/// Whatever the head was, the same files after the same number of entries are the same state.
fn hash(state: &State) -> u64 {
    let mut hash = DefaultHasher::new();
    (&state.files, state.tried, state.acknowledged).hash(&mut hash);
    hash.finish()
}
