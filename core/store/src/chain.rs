//! The chain: each entry of a device is bound to the one before it, and signed by the device.
//!
//! `link(n) = SHA-256("secundine link 1" ‖ link(n-1) ‖ birth ‖ n ‖ SHA-256(body))`, with 32 zero bytes for `link(0)`, the
//! birth's key of 24 bytes and `n` as 8 bytes, greatest first. The device signs `"secundine entry 1" ‖ n ‖ link(n)` with
//! Ed25519. The numbers run through all births of a device, so that a birth cannot be taken out whole either.

use ed25519_dalek::{Signature, Signer, SigningKey, VerifyingKey};
use rusqlite::{Connection, OptionalExtension, params};
use secundine_domain::entry::{DeviceId, Entry};
use sha2::{Digest, Sha256};
use zeroize::Zeroizing;

use crate::StoreError;
use crate::database::{BirthKey, birth_key};

const LINK: &[u8; 16] = b"secundine link 1";
const ENTRY: &[u8; 17] = b"secundine entry 1";

/// A link: 32 bytes.
pub(crate) type Link = [u8; 32];
/// A signature: 64 bytes.
pub(crate) type Seal = [u8; 64];

/// How far a device's chain goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Position {
    /// Number of the last entry; 0 before the first.
    pub n: u64,
    /// Its link.
    pub link: Link,
}

impl Position {
    /// Before the first entry.
    pub(crate) const START: Self = Self { n: 0, link: [0; 32] };

    /// Where the chain is after one more entry.
    pub(crate) fn then(&self, birth: &BirthKey, digest: &[u8; 32]) -> Self {
        let n = self.n.saturating_add(1);
        let hash = Sha256::new().chain_update(LINK).chain_update(self.link).chain_update(birth);
        Self { n, link: hash.chain_update(n.to_be_bytes()).chain_update(digest).finalize().into() }
    }

    pub(crate) fn signed_text(&self) -> [u8; 57] {
        let mut text = [0; 57];
        let n = self.n.to_be_bytes();
        text.iter_mut().zip(ENTRY.iter().chain(&n).chain(&self.link)).for_each(|(to, from)| *to = *from);
        text
    }

    /// Whether the device of this key has signed that its chain was here.
    pub(crate) fn is_signed(&self, public: &VerifyingKey, seal: &Seal) -> bool {
        public.verify_strict(&self.signed_text(), &Signature::from_bytes(seal)).is_ok()
    }
}

/// The id of the device that has this public key: an id vouches for its key.
pub(crate) fn device_of(public: &VerifyingKey) -> DeviceId {
    let digest: [u8; 32] = Sha256::digest(public.as_bytes()).into();
    DeviceId(std::array::from_fn(|k| digest.get(k).copied().unwrap_or_default()))
}

/// The key with which this device signs; wiped when dropped.
pub(crate) struct DeviceKey(SigningKey);

impl DeviceKey {
    /// A new key.
    ///
    /// # Errors
    /// [`StoreError::NotSaved`] when the system gives no randomness.
    pub(crate) fn random() -> Result<Self, StoreError> {
        let mut seed = Zeroizing::new([0_u8; 32]);
        getrandom::fill(seed.as_mut_slice()).map_err(|error| StoreError::NotSaved(error.to_string()))?;
        Ok(Self(SigningKey::from_bytes(&seed)))
    }

    /// Keeps a new key in the database.
    pub(crate) fn keep(&self, connection: &Connection) -> rusqlite::Result<()> {
        let seed = Zeroizing::new(self.0.to_bytes());
        let keep = "INSERT INTO device (id, public, seed) VALUES (?1, ?2, ?3)";
        connection.execute(keep, params![self.id().0, self.public().to_bytes(), seed.as_slice()]).map(|_| ())
    }

    /// Keeps a new key in the place of this device's; nobody signs for that one any more.
    pub(crate) fn replace(&self, connection: &Connection) -> rusqlite::Result<()> {
        connection.execute("UPDATE device SET seed = NULL WHERE seed IS NOT NULL", [])?;
        self.keep(connection)
    }

    /// The key of this device: the only one whose seed is here.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] when there is none.
    pub(crate) fn own(connection: &Connection) -> Result<Self, StoreError> {
        let seed = "SELECT seed FROM device WHERE seed IS NOT NULL";
        let seed = connection.query_row(seed, [], |row| row.get(0).map(Zeroizing::<[u8; 32]>::new)).optional();
        let seed = seed.map_err(|error| StoreError::reading(&error))?;
        let seed = seed.ok_or_else(|| StoreError::Damaged("the device has no key".to_owned()))?;
        Ok(Self(SigningKey::from_bytes(&seed)))
    }

    pub(crate) fn public(&self) -> VerifyingKey {
        self.0.verifying_key()
    }

    pub(crate) fn id(&self) -> DeviceId {
        device_of(&self.public())
    }

    /// Signs a text, which begins with what it is for.
    pub(crate) fn sign(&self, text: &[u8]) -> Seal {
        self.0.sign(text).to_bytes()
    }

    /// This device's signature: its chain was here.
    pub(crate) fn seal(&self, at: &Position) -> Seal {
        self.sign(&at.signed_text())
    }

    /// Binds entries of this device to the chain, in their order.
    ///
    /// # Errors
    /// [`StoreError::NotSaved`] for an entry of another device, or one whose number is not the next.
    pub(crate) fn bind(&self, mut at: Position, entries: &[Entry]) -> Result<Vec<Bound>, StoreError> {
        let device = self.id();
        let mut bound = Vec::with_capacity(entries.len());
        for entry in entries {
            let body = entry.encode().map_err(|error| StoreError::NotSaved(error.to_string()))?;
            let (birth, digest) = (birth_key(entry.birth), Sha256::digest(&body).into());
            at = at.then(&birth, &digest);
            if (entry.id.device, entry.id.n) != (device, at.n) {
                return Err(StoreError::NotSaved(format!("the next entry is {} of this device, not {}", at.n, entry.id)));
            }
            let seal = self.seal(&at);
            bound.push(Bound { birth, body, digest, at, seal });
        }
        Ok(bound)
    }
}

/// An entry as it goes to disk.
pub(crate) struct Bound {
    pub birth: BirthKey,
    pub body: Vec<u8>,
    /// SHA-256 of the body.
    pub digest: [u8; 32],
    /// Its number and link.
    pub at: Position,
    /// The signature over both.
    pub seal: Seal,
}
