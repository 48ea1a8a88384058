//! The store built anew beside the damaged one, and put in its place.
//!
//! In this order: the new database and the report are made in a folder of a passing name and put on disk; that folder takes
//! its name `damaged-N`, in one step, and from then on the salvage is decided; the damaged files are moved into it; the new
//! database takes their place. Killed before the second step, the damaged store is as it was and the next salvage begins
//! anew. Killed after it, the next opening goes on, which needs no key: each move that was made is not made again, and the
//! new database is still in `damaged-N` until nothing of the old one is left beside it.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use rusqlite::{Connection, OpenFlags};

use super::Salvaged;
use crate::StoreError;
use crate::chain::DeviceKey;
use crate::database::{DATABASE, FORM, LOG, TABLES, connect};
use crate::head::{self, HEAD};
use crate::inbox;
use crate::keys::{DataKey, sync_folder};

/// Name of the report beside damaged files.
pub const SALVAGE_REPORT: &str = "report.txt";

/// The folder in which the new database is made.
pub(crate) const UNFINISHED: &str = "secundine.db.unfinished";

/// What the name of a folder of damaged files begins with.
const SET_ASIDE: &str = "damaged-";

/// The new database until it takes its place.
const NEW: &str = "salvaged.db";

/// Builds the new store and puts it in place; gives the folder of the damaged files.
pub(super) fn rebuild(folder: &Path, key: &DataKey, salvaged: &Salvaged) -> Result<PathBuf, StoreError> {
    let writing = |error: io::Error| StoreError::writing_file(&error);
    let unfinished = folder.join(UNFINISHED);
    begin(&unfinished).map_err(writing)?;
    build(&unfinished, key, salvaged)?;
    let ends = |(device, at): &(_, _)| salvaged.entries.iter().any(|kept| kept.is_at(*device, at));
    if !salvaged.heads.iter().all(ends) {
        head::keep_contradicted(folder).map_err(writing)?;
    }
    let set_aside = free_name(folder);
    let decided = || {
        fs::rename(unfinished.join(DATABASE), unfinished.join(NEW))?;
        let mut report = File::create(unfinished.join(SALVAGE_REPORT))?;
        report.write_all(salvaged.report.to_string().as_bytes())?;
        report.sync_all()?;
        File::open(unfinished.join(NEW))?.sync_all()?;
        sync_folder(&unfinished)?;
        fs::rename(&unfinished, &set_aside)?;
        sync_folder(folder)
    };
    decided().map_err(writing)?;
    finish(folder).map_err(writing)?;
    Ok(set_aside)
}

fn begin(unfinished: &Path) -> io::Result<()> {
    match fs::remove_dir_all(unfinished) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error),
        _ => {}
    }
    fs::create_dir(unfinished)
}

/// Makes the new database: what was salvaged, a new device, and what the inbox needs.
fn build(unfinished: &Path, key: &DataKey, salvaged: &Salvaged) -> Result<(), StoreError> {
    let writing = |error: rusqlite::Error| StoreError::writing(&error);
    let connection = connect(unfinished, key, OpenFlags::SQLITE_OPEN_CREATE)?;
    connection.execute_batch(&format!("BEGIN; {TABLES} PRAGMA user_version = {FORM}; COMMIT;")).map_err(writing)?;
    salvaged.fill(&connection).map_err(writing)?;
    DeviceKey::random()?.keep(&connection).map_err(writing)?;
    let identity = salvaged.identity.as_ref().map(|text| text.as_str());
    inbox::carry_over(&connection, identity, &salvaged.found.drained).map_err(writing)?;
    close(connection).map_err(writing)
}

/// Folds the log in; closing removes it.
fn close(connection: Connection) -> rusqlite::Result<()> {
    connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(()))?;
    connection.close().map_err(|(_, error)| error)
}

/// Goes on with a salvage that was decided; does nothing where none was.
pub(crate) fn finish(folder: &Path) -> io::Result<()> {
    let Ok(listing) = fs::read_dir(folder) else { return Ok(()) };
    let decided = listing.flatten().filter(|entry| is_set_aside(&entry.file_name().to_string_lossy()));
    for set_aside in decided.map(|entry| entry.path()).filter(|path| path.join(NEW).exists()) {
        for name in [DATABASE, LOG, "secundine.db-shm", "secundine.db-journal", HEAD] {
            if folder.join(name).exists() {
                fs::rename(folder.join(name), set_aside.join(name))?;
            }
        }
        sync_folder(&set_aside)?;
        sync_folder(folder)?;
        fs::rename(set_aside.join(NEW), folder.join(DATABASE))?;
        sync_folder(&set_aside)?;
        sync_folder(folder)?;
    }
    Ok(())
}

/// Whether a folder of this name holds damaged files.
pub(crate) fn is_set_aside(name: &str) -> bool {
    name.strip_prefix(SET_ASIDE).is_some_and(|n| !n.is_empty() && n.bytes().all(|byte| byte.is_ascii_digit()))
}

fn free_name(folder: &Path) -> PathBuf {
    let named = |n: u32| folder.join(format!("{SET_ASIDE}{n}"));
    named((1..).find(|n| !named(*n).exists()).unwrap_or(u32::MAX))
}
