//! Ways in for the fuzzers: what reads bytes that lie beside the database, with keys that belong to no practice.

use std::path::Path;

use age::{scrypt, x25519};
use ed25519_dalek::{Signer, SigningKey};

pub use crate::inbox::fuzzing::{InboxRead, read_inbox, seal_records};

use crate::chain::Position;
use crate::keys::{DataKey, Passphrase};
use crate::{DATABASE, Store, StoreError, head};

/// What the fuzzers' device signs with.
const DEVICE: [u8; 32] = [9; 32];
/// log2 of the dearest scrypt cost that the fuzzers pay.
const CHEAP: u8 = 4;

/// The head of a chain of `n` entries, signed by the fuzzers' device.
#[must_use]
pub fn write_head(n: u64) -> String {
    let (at, key) = (Position { n, ..Position::START }, SigningKey::from_bytes(&DEVICE));
    head::text(&at, &key.sign(&at.signed_text()).to_bytes())
}

/// How many entries a head tells of; none where the fuzzers' device has not signed it.
#[must_use]
pub fn read_head(text: &str) -> Option<u64> {
    head::parse(text, &[SigningKey::from_bytes(&DEVICE).verifying_key()]).map(|(_, at)| at.n)
}

/// Opens a key file by an identity.
///
/// # Errors
/// [`StoreError::WrongPassphrase`] or [`StoreError::DamagedKey`].
pub fn open_key_by_identity(sealed: &[u8], identity: &x25519::Identity) -> Result<(), StoreError> {
    DataKey::opened("key", sealed, identity).map(|_| ())
}

/// Opens a key file by a passphrase, unless that costs much.
///
/// # Errors
/// [`StoreError::WrongPassphrase`] or [`StoreError::DamagedKey`].
pub fn open_key_by_passphrase(sealed: &[u8], passphrase: Passphrase) -> Result<(), StoreError> {
    let mut identity = scrypt::Identity::new(passphrase);
    identity.set_max_work_factor(CHEAP);
    DataKey::opened("key", sealed, &identity).map(|_| ())
}

/// A store with this key, founded where there is none: for tests that make thousands of them, since no key file is made and
/// no passphrase stretched.
///
/// # Errors
/// [`StoreError`] as for [`Store::open`].
pub fn store_with_key(folder: &Path, key: &[u8; 32]) -> Result<Store, StoreError> {
    let key = DataKey::from_digits(&hex::encode(key))?;
    match folder.join(DATABASE).exists() {
        true => Store::with_key(folder, key),
        false => Store::found(folder, key),
    }
}
