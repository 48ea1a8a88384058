//! A table in which sync remembers what it knows: values under a kind and a name.

use rusqlite::{Connection, OptionalExtension, params};

use crate::{Store, StoreError};

/// Made when a practice first shares, so that a store that never does stays as it was.
const TABLE: &str = "CREATE TABLE IF NOT EXISTS exchange (
    kind  TEXT NOT NULL,
    name  BLOB NOT NULL,
    value BLOB NOT NULL,
    PRIMARY KEY (kind, name)
) STRICT, WITHOUT ROWID;";

/// Something that sync remembers, or forgets.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Note {
    /// Remembers this value under a kind and a name.
    Put(&'static str, Vec<u8>, Vec<u8>),
    /// Forgets it.
    Forget(&'static str, Vec<u8>),
}

/// A name and its value.
pub type NamedValue = (Vec<u8>, Vec<u8>);

/// Names and values, in the order of the names.
pub type Noted = Vec<NamedValue>;

impl Store {
    /// What is remembered under this kind and name.
    ///
    /// # Errors
    /// [`StoreError`] where the store cannot be read.
    pub fn noted(&self, kind: &str, name: &[u8]) -> Result<Option<Vec<u8>>, StoreError> {
        if !self.has_exchange()? {
            return Ok(None);
        }
        let select = "SELECT value FROM exchange WHERE kind = ?1 AND name = ?2";
        let mut select = self.connection.prepare_cached(select).map_err(|error| StoreError::reading(&error))?;
        select.query_row(params![kind, name], |row| row.get(0)).optional().map_err(|error| StoreError::reading(&error))
    }

    /// Everything of a kind, in the order of the names.
    ///
    /// # Errors
    /// [`StoreError`] where the store cannot be read.
    pub fn all_noted(&self, kind: &str) -> Result<Noted, StoreError> {
        if !self.has_exchange()? {
            return Ok(Vec::new());
        }
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let select = "SELECT name, value FROM exchange WHERE kind = ?1 ORDER BY name";
        let mut select = self.connection.prepare_cached(select).map_err(reading)?;
        let found = select.query_map(params![kind], |row| Ok((row.get(0)?, row.get(1)?))).map_err(reading)?;
        found.collect::<Result<_, _>>().map_err(reading)
    }

    /// The first of a kind, in the order of the names.
    ///
    /// # Errors
    /// [`StoreError`] where the store cannot be read.
    pub fn first_noted(&self, kind: &str) -> Result<Option<NamedValue>, StoreError> {
        if !self.has_exchange()? {
            return Ok(None);
        }
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let select = "SELECT name, value FROM exchange WHERE kind = ?1 ORDER BY name LIMIT 1";
        let mut select = self.connection.prepare_cached(select).map_err(reading)?;
        select.query_row(params![kind], |row| Ok((row.get(0)?, row.get(1)?))).optional().map_err(reading)
    }

    /// Remembers and forgets, all or nothing.
    ///
    /// # Errors
    /// [`StoreError::Full`] or [`StoreError::NotSaved`]: nothing of it is on disk.
    pub fn note_down(&mut self, notes: &[Note]) -> Result<(), StoreError> {
        self.take_in(&[], &[], notes).map(|_| ())
    }

    pub(crate) fn has_exchange(&self) -> Result<bool, StoreError> {
        self.connection.table_exists(None, "exchange").map_err(|error| StoreError::reading(&error))
    }

    pub(crate) fn make_exchange(&self) -> Result<(), StoreError> {
        match self.has_exchange()? {
            true => Ok(()),
            false => self.connection.execute_batch(TABLE).map_err(|error| StoreError::writing(&error)),
        }
    }
}

pub(crate) fn put(connection: &Connection, kind: &str, name: &[u8], value: &[u8]) -> rusqlite::Result<()> {
    let put = "INSERT INTO exchange (kind, name, value) VALUES (?1, ?2, ?3)
               ON CONFLICT (kind, name) DO UPDATE SET value = excluded.value";
    connection.prepare_cached(put)?.execute(params![kind, name, value]).map(|_| ())
}

/// Remembers what is not known yet; a store that has nothing to remember stays as it was.
pub(crate) fn note_new<'a>(connection: &Connection, notes: impl IntoIterator<Item = &'a Note>) -> rusqlite::Result<()> {
    let mut notes = notes.into_iter().peekable();
    if notes.peek().is_none() {
        return Ok(());
    }
    connection.execute_batch(TABLE)?;
    let new = "INSERT OR IGNORE INTO exchange (kind, name, value) VALUES (?1, ?2, ?3)";
    let mut new = connection.prepare_cached(new)?;
    for note in notes {
        if let Note::Put(kind, name, value) = note {
            new.execute(params![kind, name, value])?;
        }
    }
    Ok(())
}

pub(crate) fn write_notes(connection: &Connection, notes: &[Note]) -> rusqlite::Result<()> {
    for note in notes {
        match note {
            Note::Put(kind, name, value) => put(connection, kind, name, value)?,
            Note::Forget(kind, name) => {
                let forget = "DELETE FROM exchange WHERE kind = ?1 AND name = ?2";
                connection.prepare_cached(forget)?.execute(params![kind, name])?;
            }
        }
    }
    Ok(())
}
