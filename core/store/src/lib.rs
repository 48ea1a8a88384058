//! Keys and the encrypted, append-only store of entries.
//!
//! A practice is a folder: the database, and one age file for each way to its key.

mod database;
mod error;
mod keys;
mod store;

pub use age::secrecy::ExposeSecret;
pub use database::DATABASE;
pub use error::StoreError;
pub use keys::{PASSPHRASE_KEY, PASSPHRASE_LETTERS, Passphrase, RECOVERY_KEY, is_recovery_identity};
pub use store::{Birth, Store, Stored, version};
