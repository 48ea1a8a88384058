//! A practice's tables changed past the program.

use std::fs;
use std::path::Path;

use rusqlite::Connection;
use secundine_store::{DATABASE, RECOVERY_KEY};

/// Changes the locked practice in this folder with the recovery identity as it was printed.
pub fn tamper(data: &Path, recovery: &str, statement: &str) {
    let identity: age::x25519::Identity = recovery.parse().unwrap();
    let key = age::decrypt(&identity, &fs::read(data.join(RECOVERY_KEY)).unwrap()).unwrap();
    let raw = Connection::open(data.join(DATABASE)).unwrap();
    raw.execute_batch(&format!("PRAGMA key = \"x'{}'\"", String::from_utf8(key).unwrap())).unwrap();
    let trigger = "SELECT sql FROM sqlite_schema WHERE name = 'entry_stays'";
    let trigger: String = raw.query_row(trigger, [], |row| row.get(0)).unwrap();
    raw.execute_batch(&format!("DROP TRIGGER entry_stays; {statement}; {trigger};")).unwrap();
    raw.close().unwrap();
}
