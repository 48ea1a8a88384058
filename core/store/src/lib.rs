//! Keys and the encrypted, append-only store of entries.
//!
//! A practice is a folder: the database, and one age file for each way to its key.

mod error;
mod keys;
mod store;

pub use age::secrecy::ExposeSecret;
pub use error::StoreError;
pub use keys::{Passphrase, PASSPHRASE_LETTERS, PASSPHRASE_KEY, RECOVERY_KEY};
pub use store::{Birth, DATABASE, Store, Stored, version};
