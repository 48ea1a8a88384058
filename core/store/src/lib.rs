//! Keys and the encrypted, append-only store of entries.
//!
//! A practice is a folder: the database, one age file for each way to its key, the head, which tells how far this device
//! had come, a folder of sealed files that entries name, and a reserve of room for when the disk is full.

mod archive;
mod attempts;
mod backup;
mod chain;
mod database;
mod erasure;
mod error;
mod exchange;
mod extract;
mod files;
#[cfg(feature = "fuzzing")]
#[doc(hidden)]
pub mod fuzzing;
mod head;
mod inbox;
mod keys;
mod kinds;
mod notes;
mod paper;
mod platform;
mod reserve;
mod restore;
mod runs;
mod salvage;
mod slots;
mod store;
mod verify;
mod vouch;
mod walk;
mod wipe;

pub use age::secrecy::ExposeSecret;
pub use attempts::{ATTEMPTS, Attempts};
pub use backup::{Backed, BackupBegun, INCOMING, Lend, check_archive, check_backup, unfinished as unfinished_backup};
pub use database::DATABASE;
pub use error::StoreError;
pub use exchange::{Carried, TakenIn, chained, device_with, is_signed, link_after};
pub use extract::Extract;
pub use files::{FILE_KEY, FILE_KEY_BYTES, FILE_MAX, FILES};
pub use head::HEAD;
pub use inbox::{Batch, DAMAGED, Drained, INBOX, INBOX_RECIPIENT, Inbox, InboxTail, RECORD_MAX, Turned, Waiting};
pub use keys::{
    DEVICE_KEY, PASSPHRASE_KEY, PASSPHRASE_LETTERS, Passphrase, RECOVERY_KEY, is_recovery_identity, recovery_identity,
};
pub use notes::{NamedValue, Note, Noted};
pub use paper::{PAPER_DIGITS, shown_on_paper};
pub use platform::{PlatformError, PlatformKeys};
pub use reserve::{RESERVE, RESERVE_BYTES, free_bytes, low_space};
pub use restore::Restored;
pub use runs::RUN;
pub use salvage::{Missing, Report, SALVAGE_REPORT, salvage_pages};
pub use slots::{DEVICE_NAME, Slot};
pub use store::{Birth, Store, Stored, version};
pub use verify::{HeadSeen, Misfit, MisfitKind, Verdict};
