//! Why the store could not do what was asked.

use std::io;

use rusqlite::ErrorCode;
use thiserror::Error;

use crate::{Misfit, PlatformError, Slot};

/// Why the store could not do what was asked. Nothing that was written before is lost by any of these.
#[derive(Debug, Error)]
pub enum StoreError {
    /// A practice is here already.
    #[error("a practice is here already")]
    AlreadyThere,
    /// No practice is here.
    #[error("no practice is here")]
    NoPractice,
    /// Too short to protect anything.
    #[error("the passphrase is too short")]
    ShortPassphrase,
    /// A recovery identity was given for a new passphrase.
    #[error("a recovery identity is no passphrase")]
    IdentityAsPassphrase,
    /// The passphrase or identity does not open the key file.
    #[error("the passphrase does not fit")]
    WrongPassphrase,
    /// The key file is missing, or is no key file.
    #[error("the key file is damaged: {0}")]
    DamagedKey(String),
    /// The practice has no such way to its key.
    #[error("there is no such key: {0:?}")]
    NoSlot(Slot),
    /// The passphrase is never taken out.
    #[error("the passphrase stays")]
    PassphraseStays,
    /// The key store of this device's system does not give the key; the passphrase does.
    #[error("the device's key store: {0}")]
    Platform(#[from] PlatformError),
    /// The wrap for this device is destroyed, but its system did not let go of the secret that opened it.
    #[error("the device's key store did not let go of its secret")]
    SecretLeft,
    /// Both key files are missing, and the database is here.
    #[error("both key files are missing")]
    KeysMissing,
    /// The system could not read the files just now; whether they are damaged is not known.
    #[error("the store could not be read just now: {0}")]
    NotRead(String),
    /// The database cannot be read with its key.
    #[error("the store is damaged: {0}")]
    Damaged(String),
    /// Nothing of a damaged store could be read.
    #[error("nothing of the store could be read")]
    NothingRead,
    /// It was to be built anew, and everything in it fits.
    #[error("the store is not damaged")]
    NotDamaged,
    /// A damaged store that is only read.
    #[error("the store is damaged and is only read")]
    ReadOnly,
    /// Written by a later version of the program.
    #[error("the store has form {0}, which is newer than this program")]
    Newer(i64),
    /// It was closed meanwhile.
    #[error("the store was closed meanwhile")]
    Closed,
    /// Another process has it open.
    #[error("the store is open elsewhere")]
    InUse,
    /// This file is no backup.
    #[error("no backup: {0}")]
    NotBackup(String),
    /// The backup is not whole, or was altered.
    #[error("the backup is damaged: {0}")]
    DamagedBackup(String),
    /// The backup is of another practice.
    #[error("the backup is of another practice")]
    OtherPractice,
    /// A file that an entry names is not here.
    #[error("the file is not here")]
    NoFile,
    /// A file that an entry names is not as it was written.
    #[error("the file is damaged: {0}")]
    DamagedFile(String),
    /// A file has more bytes than are kept.
    #[error("the file is too large")]
    TooLarge,
    /// What came from another device does not fit what is here.
    #[error("it does not fit: {0:?}")]
    Misfit(Misfit),
    /// The wipe was begun and is not at its end.
    #[error("the wipe is not finished: {0}")]
    WipeUnfinished(String),
    /// The entry is NOT on disk: there is no room.
    #[error("not saved: the disk is full")]
    Full,
    /// The entry is NOT on disk.
    #[error("not saved: {0}")]
    NotSaved(String),
}

impl StoreError {
    /// What a failure while reading or opening means.
    pub(crate) fn reading(error: &rusqlite::Error) -> Self {
        match error.sqlite_error_code() {
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => Self::InUse,
            Some(ErrorCode::DiskFull) => Self::Full,
            // The system's own failures. A page whose code does not fit comes as any other.
            Some(ErrorCode::SystemIoFailure | ErrorCode::CannotOpen | ErrorCode::PermissionDenied) => {
                Self::NotRead(error.to_string())
            }
            _ => Self::Damaged(error.to_string()),
        }
    }

    /// What a failure while reading a file beside the database means.
    pub(crate) fn reading_file(error: &io::Error) -> Self {
        Self::NotRead(error.to_string())
    }

    /// What a failure while writing a file beside the database means.
    pub(crate) fn writing_file(error: &io::Error) -> Self {
        match error.kind() {
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => Self::Full,
            _ => Self::NotSaved(error.to_string()),
        }
    }

    /// What a failure while writing means.
    pub(crate) fn writing(error: &rusqlite::Error) -> Self {
        match error.sqlite_error_code() {
            Some(ErrorCode::DiskFull) => Self::Full,
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => Self::InUse,
            _ => Self::NotSaved(error.to_string()),
        }
    }
}
