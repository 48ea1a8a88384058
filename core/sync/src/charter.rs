//! What a practice is, for its devices: who founded it, and the secrets that all of them have.

use age::secrecy::ExposeSecret;
use age::x25519;
use ed25519_dalek::SigningKey;
use hkdf::Hkdf;
use secundine_domain::entry::DeviceId;
use secundine_store::device_with;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use zeroize::Zeroizing;

use crate::SyncError;
use crate::cbor::Bytes;

/// The public root of a practice. Its id is a hash of it, so whoever has the id can check the rest.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Charter {
    /// Public key of the device that founded it.
    pub founder: Bytes<32>,
    /// Public key for which the recovery sheet signs.
    pub recovery: Bytes<32>,
    /// age recipient of the recovery sheet.
    pub recipient: String,
    /// Makes the id of each practice another.
    pub salt: Bytes<16>,
}

/// The secret that every device has and no store sees: 32 bytes. It comes from the recovery sheet and is handed over in
/// person only, so that whoever copied the bucket and later breaks X25519 has nothing.
#[derive(Clone, Serialize, Deserialize)]
pub(crate) struct SharedSecret(pub(crate) Bytes<32>);

impl std::fmt::Debug for SharedSecret {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str("SharedSecret(…)")
    }
}

impl Drop for SharedSecret {
    fn drop(&mut self) {
        zeroize::Zeroize::zeroize(&mut self.0.0);
    }
}

impl Charter {
    /// The practice's id: 16 bytes.
    #[must_use]
    pub fn practice(&self) -> [u8; 16] {
        let hash = Sha256::new().chain_update(b"secundine practice 1").chain_update(self.founder.0);
        let hash = hash.chain_update(self.recovery.0).chain_update(self.salt.0).chain_update(self.recipient.as_bytes());
        let digest: [u8; 32] = hash.finalize().into();
        std::array::from_fn(|k| digest.get(k).copied().unwrap_or_default())
    }

    /// The device that founded it.
    pub(crate) fn founder_id(&self) -> Option<DeviceId> {
        device_with(&self.founder.0)
    }

    /// The recovery sheet, seen as a device.
    pub(crate) fn recovery_id(&self) -> Option<DeviceId> {
        device_with(&self.recovery.0)
    }
}

/// What a recovery sheet holds, worked out from its one identity.
pub(crate) struct Sheet {
    pub identity: x25519::Identity,
    pub signer: SigningKey,
    pub secret: SharedSecret,
}

impl Sheet {
    pub(crate) fn new(identity: x25519::Identity) -> Result<Self, SyncError> {
        let text = identity.to_string();
        let hkdf = Hkdf::<Sha256>::new(None, text.expose_secret().as_bytes());
        let derive = |info: &[u8]| {
            let mut out = Zeroizing::new([0; 32]);
            hkdf.expand(info, out.as_mut_slice()).map_err(|error| SyncError::Internal(error.to_string()))?;
            Ok::<_, SyncError>(out)
        };
        let signer = SigningKey::from_bytes(&*derive(b"secundine sheet signs 1")?);
        let secret = SharedSecret(Bytes(*derive(b"secundine shared secret 1")?));
        Ok(Self { identity, signer, secret })
    }

    /// Reads it as it was printed.
    pub(crate) fn read(text: &str) -> Result<Self, SyncError> {
        let text: Zeroizing<String> =
            Zeroizing::new(text.chars().filter(|c| !c.is_whitespace()).collect::<String>().to_uppercase());
        Self::new(text.parse().map_err(|_| SyncError::WrongCode)?)
    }
}
