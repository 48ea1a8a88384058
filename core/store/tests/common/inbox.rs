//! A practice whose inbox is written, and drained into notes.

use std::fs;
use std::path::{Path, PathBuf};

use rusqlite::Connection;
use secundine_domain::entry::{BirthId, Entry, EntryId};
use secundine_domain::fact::Fact;
use secundine_store::{Batch, DAMAGED, Drained, INBOX, Inbox, InboxTail, Store, StoreError, Turned};

use super::{Founded, entry};

/// Every note stands at one birth, whose id needs no store.
pub fn birth(store: &Store) -> BirthId {
    BirthId(EntryId { n: 1, ..store.next_id() })
}

pub struct Practice(Founded);

impl Practice {
    pub fn new() -> Self {
        Self(Founded::new())
    }

    pub fn path(&self) -> &Path {
        self.0.path()
    }

    pub fn open(&self) -> Store {
        self.0.open()
    }

    pub fn raw(&self) -> Connection {
        self.0.raw()
    }

    pub fn identity(&self) -> String {
        use secundine_store::ExposeSecret;
        self.0.recovery.expose_secret().to_owned()
    }

    /// One run of the program that marks these.
    pub fn write(&self, texts: &[&str]) -> Option<InboxTail> {
        let mut inbox = Inbox::new(self.path());
        texts.iter().for_each(|text| inbox.append(text.as_bytes()).unwrap());
        inbox.tail()
    }

    pub fn inbox(&self, name: &str) -> PathBuf {
        self.path().join(INBOX).join(name)
    }

    pub fn files(&self) -> Vec<String> {
        names(&self.path().join(INBOX))
    }

    pub fn damaged(&self) -> Vec<String> {
        names(&self.path().join(INBOX).join(DAMAGED))
    }
}

fn names(folder: &Path) -> Vec<String> {
    let Ok(listing) = fs::read_dir(folder) else { return Vec::new() };
    let names = listing.map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let mut names: Vec<String> = names.filter(|name| name.ends_with(".inbox")).collect();
    names.sort();
    names
}

/// What was written of a file, without the room for more behind it.
#[allow(clippy::indexing_slicing, reason = "a test may stop at the first surprise")]
pub fn written(file: &[u8]) -> &[u8] {
    let mut end = 20 + usize::from(u16::from_be_bytes([file[18], file[19]]));
    while let Some(length) = file.get(end..end + 4).filter(|length| *length != [0xff; 4]) {
        end += 4 + u32::from_be_bytes(length.try_into().unwrap()) as usize + 16;
    }
    &file[..end]
}

/// Each record becomes a note.
pub fn turn(store: &Store, batch: Batch) -> Result<Turned, StoreError> {
    let next = store.next_id();
    let note = |(n, record): (u64, &[u8])| -> Entry {
        let text = String::from_utf8(record.to_vec()).unwrap();
        entry(EntryId { n, ..next }, birth(store), 1_795_570_800_000, Fact::Noted { text })
    };
    let records = batch.records.iter().map(|record| record.as_slice());
    Ok(Turned { entries: (next.n..).zip(records).map(note).collect(), ..Turned::default() })
}

pub fn drain(store: &mut Store, expected: Option<&InboxTail>) -> Drained {
    store.drain(expected, turn).unwrap()
}

/// The notes, in the order in which they were written.
pub fn notes(store: &Store) -> Vec<String> {
    let entries = store.entries(birth(store)).unwrap();
    let text = |fact: Fact| match fact {
        Fact::Noted { text } => text,
        other => unreachable!("{other:?}"),
    };
    entries.into_iter().map(|stored| text(stored.entry.fact)).collect()
}
