//! Room that is kept for when the disk is full: a file of random bytes, which is given up for the entries that come then.
//!
//! Random and synced, so that no file system keeps it as a hole or as less than it is.

use std::fs;
use std::path::Path;

use crate::StoreError;
use crate::keys::{sync_folder, unfinished, write_named};

/// Name of the reserve in the practice's folder.
pub const RESERVE: &str = "reserve";

/// Bytes of the reserve: 4 MiB, room for 2,000 entries of ordinary size and the log that they are written through.
pub const RESERVE_BYTES: u64 = 4 * 1024 * 1024;

/// Bytes that have to be free before a reserve is made, so that making it does not fill the disk.
const PLENTY: u64 = 4 * RESERVE_BYTES;

/// Makes the reserve where it is missing and there is plenty of room. That it cannot be made is no error: nothing is worse
/// than before.
pub(crate) fn make(folder: &Path) {
    if stands(folder) || !plenty(folder) {
        return;
    }
    if fill(folder).is_err() {
        let _ = fs::remove_file(unfinished(folder, RESERVE));
    }
}

fn fill(folder: &Path) -> Result<(), StoreError> {
    let mut bytes = vec![0; usize::try_from(RESERVE_BYTES).unwrap_or_default()];
    getrandom::fill(&mut bytes).map_err(|error| StoreError::NotSaved(error.to_string()))?;
    write_named(folder, RESERVE, &bytes).map_err(|error| StoreError::writing_file(&error))
}

/// Gives the reserve up; tells whether there was one and its room is free now.
pub(crate) fn give_up(folder: &Path) -> bool {
    fs::remove_file(folder.join(RESERVE)).and_then(|()| sync_folder(folder)).is_ok()
}

/// Whether the practice in this folder is short of room: its reserve is given up, or could not be made, and there is none
/// to make it again.
#[must_use]
pub fn low_space(folder: &Path) -> bool {
    !stands(folder) && !plenty(folder)
}

fn stands(folder: &Path) -> bool {
    fs::metadata(folder.join(RESERVE)).is_ok_and(|file| file.len() == RESERVE_BYTES)
}

/// Bytes that are free on the disk of this folder; none where the system does not tell.
#[must_use]
pub fn free_bytes(folder: &Path) -> Option<u64> {
    fs4::available_space(folder).ok()
}

/// Where the system does not tell, there is said to be room: a write that fails tells more.
fn plenty(folder: &Path) -> bool {
    fs4::available_space(folder).map_or(true, |bytes| bytes >= PLENTY)
}
