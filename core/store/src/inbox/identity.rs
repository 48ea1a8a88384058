//! The inbox's two keys: a recipient in plain beside the database, its identity inside.

use std::fs;
use std::path::Path;

use age::secrecy::ExposeSecret;
use age::x25519;
use rusqlite::{Connection, OptionalExtension, params};
use zeroize::Zeroizing;

use super::INBOX_RECIPIENT;
use crate::StoreError;
use crate::keys::write_named;

/// What the inbox keeps in the database. Made where it is missing, so that an older practice has an inbox too.
const TABLES: &str = "
CREATE TABLE IF NOT EXISTS inbox (identity TEXT NOT NULL) STRICT;
CREATE TABLE IF NOT EXISTS drained (
    digest BLOB NOT NULL PRIMARY KEY CHECK (length(digest) = 32),
    count  INTEGER NOT NULL,
    tag    BLOB NOT NULL CHECK (length(tag) = 16),
    whole  INTEGER NOT NULL,
    carry  BLOB NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TRIGGER IF NOT EXISTS drained_stays BEFORE UPDATE ON drained BEGIN SELECT RAISE(ABORT, 'drained once'); END;
CREATE TRIGGER IF NOT EXISTS drained_remains BEFORE DELETE ON drained BEGIN SELECT RAISE(ABORT, 'drained once'); END;
";

/// Sees to it that the database has an identity and the folder its recipient.
pub(crate) fn prepare(connection: &Connection, folder: &Path) -> Result<(), StoreError> {
    let writing = |error: rusqlite::Error| StoreError::writing(&error);
    let transaction = connection.unchecked_transaction().map_err(writing)?;
    transaction.execute_batch(TABLES).map_err(writing)?;
    let identity = match identity(&transaction)? {
        Some(identity) => identity,
        None => {
            let made = x25519::Identity::generate();
            let text = made.to_string();
            transaction.execute("INSERT INTO inbox (identity) VALUES (?1)", params![text.expose_secret()]).map_err(writing)?;
            made
        }
    };
    transaction.commit().map_err(writing)?;
    let wanted = identity.to_public().to_string();
    if fs::read_to_string(folder.join(INBOX_RECIPIENT)).is_ok_and(|found| found.trim() == wanted) {
        return Ok(());
    }
    write_named(folder, INBOX_RECIPIENT, format!("{wanted}\n").as_bytes()).map_err(|error| StoreError::writing_file(&error))
}

/// A row of the drained files, as it stands in the database.
pub(crate) struct DrainedRow {
    pub digest: [u8; 32],
    pub count: i64,
    pub tag: [u8; 16],
    pub whole: i64,
    pub carry: Vec<u8>,
}

/// Carries the identity and the drained files over into a database that has neither. Without an identity the next opening
/// makes one.
pub(crate) fn carry_over(connection: &Connection, identity: Option<&str>, drained: &[DrainedRow]) -> rusqlite::Result<()> {
    connection.execute_batch(TABLES)?;
    if let Some(identity) = identity {
        connection.execute("INSERT INTO inbox (identity) VALUES (?1)", params![identity])?;
    }
    let insert = "INSERT OR IGNORE INTO drained (digest, count, tag, whole, carry) VALUES (?1, ?2, ?3, ?4, ?5)";
    for row in drained {
        connection.execute(insert, params![row.digest, row.count, row.tag, row.whole, row.carry])?;
    }
    Ok(())
}

/// The identity, from the open database.
pub(super) fn identity(connection: &Connection) -> Result<Option<x25519::Identity>, StoreError> {
    let text: Option<String> = connection
        .query_row("SELECT identity FROM inbox", [], |row| row.get(0))
        .optional()
        .map_err(|error| StoreError::reading(&error))?;
    let Some(text) = text.map(Zeroizing::new) else { return Ok(None) };
    text.parse().map(Some).map_err(|error: &str| StoreError::Damaged(error.to_owned()))
}

/// The recipient, from beside the database.
pub(super) fn recipient(folder: &Path) -> Result<x25519::Recipient, StoreError> {
    let no_inbox = |error: &dyn std::fmt::Display| StoreError::NotSaved(format!("{INBOX_RECIPIENT}: {error}"));
    let text = fs::read_to_string(folder.join(INBOX_RECIPIENT)).map_err(|error| no_inbox(&error))?;
    text.trim().parse().map_err(|error: &str| no_inbox(&error))
}
