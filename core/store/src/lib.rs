//! Keys and the encrypted, append-only store of entries.
//!
//! A practice is a folder: the database, one age file for each way to its key, and the head, which tells how far this
//! device had come.

mod attempts;
mod chain;
mod database;
mod error;
#[cfg(feature = "fuzzing")]
#[doc(hidden)]
pub mod fuzzing;
mod head;
mod inbox;
mod keys;
mod runs;
mod store;
mod verify;
mod wipe;

pub use age::secrecy::ExposeSecret;
pub use attempts::{ATTEMPTS, Attempts};
pub use database::DATABASE;
pub use error::StoreError;
pub use head::HEAD;
pub use inbox::{Batch, DAMAGED, Drained, INBOX, INBOX_RECIPIENT, Inbox, InboxTail, RECORD_MAX, Turned, Waiting};
pub use keys::{PASSPHRASE_KEY, PASSPHRASE_LETTERS, Passphrase, RECOVERY_KEY, is_recovery_identity};
pub use store::{Birth, Store, Stored, version};
pub use verify::{HeadSeen, Misfit, MisfitKind, Verdict};
