//! A practice destroyed: first every wrap of its key, then what the key would have opened.
//!
//! Without a wrap nothing can read the database: its key is random and stands nowhere else. So the wraps are written over,
//! synced and removed, and only then the other files are removed. Flash may still keep the old blocks of an overwritten file
//! until it needs the room; what is in them opens only with the passphrase or the identity.
//!
//! A file tells that it was begun, so that a wipe that was killed is finished by the next run: half of it would be a door
//! that nothing opens.

use std::fs::{self, File, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use crate::attempts::ATTEMPTS;
use crate::backup::INCOMING;
use crate::database::{DATABASE, LOG};
use crate::files::FILES;
use crate::head::{CONTRADICTED, HEAD};
use crate::inbox::{INBOX, INBOX_RECIPIENT};
use crate::keys::{DEVICE_KEY, PASSPHRASE_KEY, RECOVERY_KEY, sync_folder, unfinished};
use crate::reserve::RESERVE;
use crate::runs::RUN;
use crate::salvage::{UNFINISHED, is_set_aside};
use crate::slots::{DEVICE_NAME, forget_secret};
use crate::{PlatformKeys, Store, StoreError};

/// Name of the file that tells that a wipe was begun.
const BEGUN: &str = "wipe-begun";

/// What the name of a file begins with that lost its key before.
const WITHOUT_KEY: &str = "without-key-";

impl Store {
    /// Destroys the practice in this folder, which is closed, and the secret that this device's system keeps for it. Records
    /// that were written as PDF lie elsewhere and stay.
    ///
    /// # Errors
    /// [`StoreError::WipeUnfinished`] once it was begun: [`Store::finish_wipe`] goes on with it. Any other: it was not begun.
    pub fn wipe(folder: &Path, platform: Option<&dyn PlatformKeys>) -> Result<(), StoreError> {
        if !Self::exists(folder) {
            return Err(StoreError::NoPractice);
        }
        let path = folder.join(BEGUN);
        let begun = File::create(&path).and_then(|file| file.sync_all()).and_then(|()| sync_folder(folder));
        begun.map_err(|error| {
            // What is told not to be begun must not be gone on with at the next start.
            let _ = fs::remove_file(&path);
            StoreError::writing_file(&error)
        })?;
        destroy(folder, platform).map_err(|error| StoreError::WipeUnfinished(error.to_string()))
    }

    /// Finishes a wipe that was begun in this folder; does nothing where none was.
    ///
    /// # Errors
    /// [`StoreError::WipeUnfinished`] says what kept a file from being destroyed.
    pub fn finish_wipe(folder: &Path, platform: Option<&dyn PlatformKeys>) -> Result<(), StoreError> {
        match folder.join(BEGUN).exists() {
            true => destroy(folder, platform).map_err(|error| StoreError::WipeUnfinished(error.to_string())),
            false => Ok(()),
        }
    }
}

fn destroy(folder: &Path, platform: Option<&dyn PlatformKeys>) -> io::Result<()> {
    let wraps =
        [PASSPHRASE_KEY, RECOVERY_KEY, DEVICE_KEY].into_iter().flat_map(|name| [folder.join(name), unfinished(folder, name)]);
    let wraps: Vec<PathBuf> = wraps.filter(|path| path.exists()).collect();
    // All are written over before the first is removed, and one that resists does not save another.
    let over = each(&wraps, write_over);
    let gone = each(&wraps, |path| fs::remove_file(path));
    sync_folder(folder).and(over).and(gone)?;
    // Where no key store is at hand, the secret stays in it and opens nothing.
    let let_go = platform.map_or(Ok(()), |platform| forget_secret(folder, Some(platform)));
    for file in fs::read_dir(folder)? {
        let file = file?;
        let name = file.file_name();
        let needed = let_go.is_err() && name == DEVICE_NAME;
        if is_ours(&name.to_string_lossy()) && !needed {
            remove(&file.path())?;
        }
    }
    sync_folder(folder)?;
    let_go.map_err(io::Error::other)?;
    fs::remove_file(folder.join(BEGUN))?;
    sync_folder(folder)
}

/// Does it with each, and gives the first failure.
fn each(paths: &[PathBuf], act: impl Fn(&Path) -> io::Result<()>) -> io::Result<()> {
    let mut all = Ok(());
    for path in paths {
        all = all.and(act(path));
    }
    all
}

/// Random bytes in place of what was there, on disk.
pub(crate) fn write_over(path: &Path) -> io::Result<()> {
    let mut file = OpenOptions::new().write(true).open(path)?;
    let mut bytes = vec![0; usize::try_from(file.metadata()?.len()).unwrap_or(0)];
    getrandom::fill(&mut bytes).map_err(|error| io::Error::other(error.to_string()))?;
    file.write_all(&bytes)?;
    file.sync_all()
}

/// Whether a file of this name belongs to a practice; anything else in the folder is somebody else's.
fn is_ours(name: &str) -> bool {
    const NAMED: [&str; 12] = [
        DATABASE,
        LOG,
        "secundine.db-shm",
        "secundine.db-journal",
        HEAD,
        INBOX_RECIPIENT,
        ATTEMPTS,
        DEVICE_NAME,
        INCOMING,
        RESERVE,
        FILES,
        RUN,
    ];
    NAMED.contains(&name)
        || name == INBOX
        || name.starts_with(CONTRADICTED)
        || name.starts_with(WITHOUT_KEY)
        || name == UNFINISHED
        || is_set_aside(name)
        || name.strip_suffix(".unfinished").is_some_and(|name| [INBOX_RECIPIENT, DEVICE_NAME, RESERVE, RUN].contains(&name))
}

fn remove(path: &Path) -> io::Result<()> {
    match path.symlink_metadata()?.is_dir() {
        true => fs::remove_dir_all(path),
        false => fs::remove_file(path),
    }
}
