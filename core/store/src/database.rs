//! The database file: its tables, how it is opened, and what is done with one that has lost its keys.

use std::fs::{self, File};
use std::io::{self, Read};
use std::path::Path;
use std::sync::Once;
use std::time::Duration;

use rusqlite::config::DbConfig;
use rusqlite::{Connection, OpenFlags};
use secundine_domain::entry::{BirthId, DeviceId, EntryId};

use crate::StoreError;
use crate::files::FILES;
use crate::head::HEAD;
use crate::keys::{DEVICE_KEY, DataKey, sync_folder};
use crate::slots::DEVICE_NAME;

/// Name of the database in the practice's folder.
pub const DATABASE: &str = "secundine.db";

/// Name of the log beside it, which is not folded into it yet.
pub(crate) const LOG: &str = "secundine.db-wal";

/// Bytes of a page, as SQLCipher 4 makes it.
pub(crate) const PAGE: u64 = 4096;

/// How long to wait for another window that is just closing.
const PATIENCE: Duration = Duration::from_secs(1);

/// Version of the tables that this program writes.
pub(crate) const FORM: i64 = 1;

// One b-tree, clustered by birth: an entry dirties one page, so a mark costs one WAL frame and one fsync. The device that
// has a seed is this one; a store that turns into a new device drops the old seed. The indexes hold the few entries of two kinds
// that are looked for in all births; no other entry touches them.
pub(crate) const TABLES: &str = "
CREATE TABLE entry (
    birth  BLOB NOT NULL CHECK (length(birth) = 24),
    device BLOB NOT NULL CHECK (length(device) = 16),
    n      INTEGER NOT NULL CHECK (n > 0),
    body   BLOB NOT NULL,
    link   BLOB NOT NULL CHECK (length(link) = 32),
    signature BLOB NOT NULL CHECK (length(signature) = 64),
    PRIMARY KEY (birth, device, n)
) STRICT, WITHOUT ROWID;
CREATE TABLE run (boot TEXT NOT NULL PRIMARY KEY, since_ms INTEGER NOT NULL, wall_ms INTEGER NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE device (
    id     BLOB NOT NULL PRIMARY KEY CHECK (length(id) = 16),
    public BLOB NOT NULL CHECK (length(public) = 32),
    seed   BLOB CHECK (length(seed) = 32)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER entry_stays BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'an entry is never changed'); END;
CREATE TRIGGER entry_remains BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'an entry is never removed'); END;
CREATE TRIGGER entry_once BEFORE INSERT ON entry
    WHEN EXISTS (SELECT 1 FROM entry WHERE birth = NEW.birth AND device = NEW.device AND n = NEW.n)
    BEGIN SELECT RAISE(ABORT, 'an entry is never replaced'); END;
CREATE TRIGGER device_stays BEFORE UPDATE ON device
    WHEN NEW.id IS NOT OLD.id OR NEW.public IS NOT OLD.public OR NEW.seed IS NOT NULL
    BEGIN SELECT RAISE(ABORT, 'a device keeps its id and key; its seed can only be dropped'); END;
CREATE TRIGGER device_remains BEFORE DELETE ON device BEGIN SELECT RAISE(ABORT, 'a device keeps its id'); END;
CREATE INDEX entry_same_birth ON entry (birth) WHERE instr(body, CAST('{\"kind\":\"same_birth\",' AS BLOB)) > 0;
CREATE INDEX entry_voice_noted ON entry (birth) WHERE instr(body, CAST('{\"kind\":\"voice_noted\",' AS BLOB)) > 0;
";

/// Makes the indexes in a store of before there were any.
pub(crate) fn make_indexes(connection: &Connection) -> rusqlite::Result<()> {
    let made = TABLES.lines().filter(|line| line.starts_with("CREATE INDEX"));
    made.map(|line| line.replacen("INDEX", "INDEX IF NOT EXISTS", 1)).try_for_each(|line| connection.execute_batch(&line))
}

/// The trigger that an erasure puts back: word for word as among the tables, since a check compares them.
pub(crate) const ENTRY_REMAINS: &str =
    "CREATE TRIGGER entry_remains BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'an entry is never removed'); END;";

/// Opens the database with its key, alone and durably. Refuses one of a later form without changing it.
pub(crate) fn connect(folder: &Path, key: &DataKey, extra: OpenFlags) -> Result<Connection, StoreError> {
    begin_once();
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX | extra;
    let reading = |error: rusqlite::Error| StoreError::reading(&error);
    let log_kept = fs::metadata(folder.join(LOG)).is_ok_and(|log| log.len() > 0);
    if !extra.contains(OpenFlags::SQLITE_OPEN_CREATE) {
        there(folder)?;
    }
    let connection = Connection::open_with_flags(folder.join(DATABASE), flags).map_err(reading)?;
    connection.busy_timeout(PATIENCE).map_err(reading)?;
    // Pages and texts are wiped as they are freed: after the lock nothing of them is in memory.
    connection.execute_batch("PRAGMA cipher_memory_security = ON").map_err(reading)?;
    // What is wrong is told by the result; SQLCipher would also write it to standard error.
    connection.execute_batch("PRAGMA cipher_log_level = NONE").map_err(reading)?;
    connection.execute_batch(&key.pragma()).map_err(reading)?;
    // Closing a database that turns out to be newer must not fold its log into it.
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, log_kept).map_err(reading)?;
    connection.execute_batch("PRAGMA locking_mode = EXCLUSIVE; PRAGMA temp_store = MEMORY;").map_err(reading)?;
    let form: i64 = connection.query_row("PRAGMA user_version", [], |row| row.get(0)).map_err(reading)?;
    if form > FORM {
        return Err(StoreError::Newer(form));
    }
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, false).map_err(reading)?;
    connection
        .execute_batch(
            "PRAGMA synchronous = EXTRA; PRAGMA journal_mode = WAL; PRAGMA fullfsync = ON; PRAGMA checkpoint_fullfsync = ON;
             PRAGMA foreign_keys = ON; PRAGMA trusted_schema = OFF; PRAGMA recursive_triggers = ON; PRAGMA secure_delete = ON;",
        )
        .map_err(reading)?;
    Ok(connection)
}

/// Whether the start of the database can be read from disk at all.
pub(crate) fn readable(folder: &Path) -> io::Result<()> {
    match File::open(folder.join(DATABASE)).and_then(|file| file.take(PAGE).read_to_end(&mut Vec::new())) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error),
        _ => Ok(()),
    }
}

/// Whether the database has anything in it. SQLite would take the log beside an empty one for a leftover, and remove it.
fn there(folder: &Path) -> Result<(), StoreError> {
    match fs::metadata(folder.join(DATABASE)) {
        Ok(file) if file.len() > 0 => Ok(()),
        Ok(_) => Err(StoreError::Damaged("the database is empty".to_owned())),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Err(StoreError::Damaged(error.to_string())),
        Err(error) => Err(StoreError::reading_file(&error)),
    }
}

/// Whether another window has the database open. Changes nothing.
pub(crate) fn in_use(folder: &Path) -> bool {
    if there(folder).is_err() {
        return false;
    }
    begin_once();
    let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    // Whoever reads has to get a lock before anything is looked at. Without the key it comes to nothing else.
    let asked = Connection::open_with_flags(folder.join(DATABASE), flags).and_then(|connection| {
        connection.busy_timeout(PATIENCE)?;
        connection.execute_batch("PRAGMA cipher_log_level = NONE; PRAGMA locking_mode = EXCLUSIVE;")?;
        connection.query_row("PRAGMA user_version", [], |_| Ok(()))
    });
    asked.is_err_and(|error| matches!(StoreError::reading(&error), StoreError::InUse))
}

/// A database in memory, whose pages are wiped as they are freed.
pub(crate) fn in_memory() -> rusqlite::Result<Connection> {
    begin_once();
    let connection = Connection::open_in_memory()?;
    connection.execute_batch("PRAGMA cipher_memory_security = ON; PRAGMA temp_store = MEMORY; PRAGMA secure_delete = ON;")?;
    connection.execute_batch(TABLES)?;
    Ok(connection)
}

/// Makes the folder of a practice, so that it is still there after a loss of power.
pub(crate) fn make_folder(folder: &Path) -> io::Result<()> {
    fs::create_dir_all(folder)?;
    folder.parent().filter(|parent| !parent.as_os_str().is_empty()).map_or(Ok(()), sync_folder)
}

/// A database without key files cannot be read here; it is set aside with its log, its head, its files and what this device
/// may have of its key, under a name of its own, not removed, in case a key file turns up in a backup.
pub(crate) fn set_aside_without_key(folder: &Path) -> io::Result<()> {
    crate::salvage::finish(folder)?;
    let files = [DATABASE, LOG, HEAD, DEVICE_KEY, DEVICE_NAME, FILES];
    let named = |n: u32, file: &str| folder.join(format!("without-key-{n}-{file}"));
    let free = (1..).find(|n| !files.iter().any(|file| named(*n, file).exists())).unwrap_or(u32::MAX);
    for file in files {
        let from = folder.join(file);
        if from.exists() {
            fs::rename(&from, named(free, file))?;
        }
    }
    Ok(())
}

/// A birth's key in the table: its device, then its number, so that births of one device lie in their order.
pub(crate) type BirthKey = [u8; 24];

pub(crate) fn birth_key(birth: BirthId) -> BirthKey {
    let mut key = [0; 24];
    let (device, n) = key.split_at_mut(16);
    device.copy_from_slice(&birth.0.device.0);
    n.copy_from_slice(&birth.0.n.to_be_bytes());
    key
}

pub(crate) fn birth_of(key: &[u8]) -> Option<BirthId> {
    let (device, n) = key.split_at_checked(16)?;
    let (device, n) = (device.try_into().ok()?, n.try_into().ok()?);
    Some(BirthId(EntryId { device: DeviceId(device), n: u64::from_be_bytes(n) }))
}

/// SQLite calls itself ready a moment before SQLCipher is: of two threads that open their first database together, one
/// would find no cipher. So the first opening of the process is made alone.
fn begin_once() {
    static BEGUN: Once = Once::new();
    BEGUN.call_once(|| drop(Connection::open_in_memory()));
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(connection: &Connection, pragma: &str) -> String {
        connection
            .query_row(&format!("PRAGMA {pragma}"), [], |row| row.get::<_, rusqlite::types::Value>(0))
            .map(|value| match value {
                rusqlite::types::Value::Integer(number) => number.to_string(),
                rusqlite::types::Value::Text(text) => text,
                other => format!("{other:?}"),
            })
            .unwrap()
    }

    #[test]
    fn what_was_asked_of_the_database_is_in_force() {
        let folder = tempfile::tempdir().unwrap();
        let connection = connect(folder.path(), &DataKey::random().unwrap(), OpenFlags::SQLITE_OPEN_CREATE).unwrap();
        connection.execute_batch(TABLES).unwrap();
        let wanted = [
            ("journal_mode", "wal"),
            ("locking_mode", "exclusive"),
            ("synchronous", "3"),
            ("fullfsync", "1"),
            ("checkpoint_fullfsync", "1"),
            ("foreign_keys", "1"),
            ("trusted_schema", "0"),
            ("recursive_triggers", "1"),
            ("secure_delete", "1"),
            ("temp_store", "2"),
            ("page_size", "4096"),
            ("cipher_use_hmac", "1"),
            ("cipher_memory_security", "1"),
            ("cipher_hmac_algorithm", "HMAC_SHA512"),
            ("cipher_plaintext_header_size", "0"),
        ];
        for (pragma, value) in wanted {
            assert_eq!(text(&connection, pragma), value, "{pragma}");
        }
        assert!(text(&connection, "cipher_version").starts_with("4."), "{}", text(&connection, "cipher_version"));
        connection.execute_batch("PRAGMA wal_checkpoint(TRUNCATE)").unwrap();
        let complaints: Vec<String> = connection
            .prepare("PRAGMA cipher_integrity_check")
            .and_then(|mut check| check.query_map([], |row| row.get(0))?.collect())
            .unwrap();
        assert_eq!(complaints, Vec::<String>::new());
    }
}
