//! Epochs: the key under which the practice seals from a removal to the next, and its age file for all who belong to it.

use std::collections::BTreeMap;

use age::x25519;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use zeroize::Zeroizing;

use crate::SyncError;
use crate::cbor::{self, Bytes};
use crate::charter::Charter;
use crate::envelope::random;

/// Names the key of an epoch: the first 8 bytes of its hash.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct EpochId(#[serde(with = "serde_bytes")] pub [u8; 8]);

/// The key of an epoch.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Epoch {
    /// One more than that of the epoch before.
    pub counter: u32,
    pub key: Bytes<32>,
}

/// What lies in the age file of an epoch.
#[derive(Serialize, Deserialize)]
pub(crate) struct EpochFile {
    pub charter: Charter,
    pub epoch: Epoch,
    /// The epochs before it: who joins may read what was written before.
    pub earlier: Vec<Epoch>,
}

impl Epoch {
    pub(crate) fn random(counter: u32) -> Result<Self, SyncError> {
        Ok(Self { counter, key: Bytes(random()?) })
    }

    pub(crate) fn id(&self) -> EpochId {
        let digest: [u8; 32] = Sha256::new().chain_update(b"secundine epoch 1").chain_update(self.key.0).finalize().into();
        EpochId(std::array::from_fn(|k| digest.get(k).copied().unwrap_or_default()))
    }
}

impl Drop for Epoch {
    fn drop(&mut self) {
        zeroize::Zeroize::zeroize(&mut self.key.0);
    }
}

impl EpochFile {
    /// The age file that each of these recipients opens.
    pub(crate) fn seal(&self, recipients: &[String]) -> Result<Vec<u8>, SyncError> {
        let recipients: Vec<x25519::Recipient> =
            recipients.iter().map(|one| one.parse().map_err(|_| SyncError::WrongCode)).collect::<Result<_, _>>()?;
        let plain = Zeroizing::new(cbor::write(self)?);
        let all = recipients.iter().map(|one| one as &dyn age::Recipient);
        let sealed = age::Encryptor::with_recipients(all).map_err(|error| SyncError::Internal(error.to_string()))?;
        let mut out = Vec::new();
        let written = sealed.wrap_output(&mut out).and_then(|mut writer| {
            std::io::Write::write_all(&mut writer, &plain)?;
            writer.finish()
        });
        written.map_err(|error| SyncError::Internal(error.to_string()))?;
        Ok(out)
    }

    /// What an identity opens; none where it is not for it.
    pub(crate) fn open(sealed: &[u8], identity: &x25519::Identity) -> Option<Self> {
        let plain = age::decrypt(identity, sealed).ok().map(Zeroizing::new)?;
        cbor::read(&plain).ok()
    }

    /// Every epoch that it tells of.
    pub(crate) fn epochs(self) -> BTreeMap<EpochId, Epoch> {
        self.earlier.into_iter().chain([self.epoch]).map(|epoch| (epoch.id(), epoch)).collect()
    }
}
