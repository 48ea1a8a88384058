//! CBOR (RFC 8949) of what is sealed.

use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

use crate::SyncError;

/// Bytes of a fixed length, as a byte string.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Bytes<const N: usize>(#[serde(with = "serde_bytes")] pub [u8; N]);

/// Bytes of any length, as a byte string.
pub(crate) type Blob = serde_bytes::ByteBuf;

pub(crate) fn write(value: &impl Serialize) -> Result<Vec<u8>, SyncError> {
    let mut bytes = Vec::new();
    ciborium::into_writer(value, &mut bytes).map_err(|error| SyncError::Internal(error.to_string()))?;
    Ok(bytes)
}

/// What stands in bytes whose signature was checked, or that this device wrote.
pub(crate) fn read<T: DeserializeOwned>(bytes: &[u8]) -> Result<T, SyncError> {
    ciborium::from_reader(bytes).map_err(|_| SyncError::Unreadable)
}
