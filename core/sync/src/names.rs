//! What objects are called in the bucket. A store sees these names, sizes and times, and nothing else.

use secundine_domain::entry::DeviceId;
use secundine_domain::file::FileId;

/// SHA-256 of an object.
pub(crate) type Hash = [u8; 32];

/// The part of a practice.
pub(crate) fn practice(practice: &[u8; 16]) -> String {
    format!("practice/{}", hex::encode(practice))
}

/// Names within a practice.
pub(crate) struct Names(String);

impl Names {
    pub(crate) fn new(id: &[u8; 16]) -> Self {
        Self(practice(id))
    }

    pub(crate) fn segments(&self, device: DeviceId) -> String {
        format!("{}/device/{device}/", self.0)
    }

    pub(crate) fn segment(&self, device: DeviceId, seq: u64, hash: &Hash) -> String {
        format!("{}{seq:012}-{}", self.segments(device), short(hash))
    }

    /// Sorts before every segment of this number, and after those before.
    pub(crate) fn before_segment(&self, device: DeviceId, seq: u64) -> String {
        format!("{}{seq:012}", self.segments(device))
    }

    pub(crate) fn snapshots(&self, device: DeviceId) -> String {
        format!("{}/snapshot/{device}/", self.0)
    }

    pub(crate) fn snapshot(&self, device: DeviceId, seq: u64, part: u32, hash: &Hash) -> String {
        format!("{}{seq:012}-{part:04}-{}", self.snapshots(device), short(hash))
    }

    pub(crate) fn rosters(&self, device: DeviceId) -> String {
        format!("{}/roster/{device}/", self.0)
    }

    pub(crate) fn roster(&self, device: DeviceId, seq: u64, hash: &Hash) -> String {
        format!("{}{seq:012}-{}", self.rosters(device), short(hash))
    }

    pub(crate) fn before_roster(&self, device: DeviceId, seq: u64) -> String {
        format!("{}{seq:012}", self.rosters(device))
    }

    pub(crate) fn keyrings(&self, device: DeviceId) -> String {
        format!("{}/keys/{device}/", self.0)
    }

    pub(crate) fn keyring(&self, device: DeviceId, part: u32, seq: u64, hash: &Hash) -> String {
        format!("{}{part:06}-{seq:08}-{}", self.keyrings(device), short(hash))
    }

    pub(crate) fn epochs(&self) -> String {
        format!("{}/epoch/", self.0)
    }

    pub(crate) fn epoch(&self, counter: u32, hash: &Hash) -> String {
        format!("{}{counter:06}-{}", self.epochs(), short(hash))
    }

    pub(crate) fn file(&self, file: FileId) -> String {
        format!("{}/file/{file}", self.0)
    }
}

/// The first 16 bytes of a hash: what a name carries of it.
pub(crate) fn short(hash: &Hash) -> String {
    hash.iter().take(16).map(|byte| format!("{byte:02x}")).collect()
}

/// The last part of a name, and its pieces between hyphens.
pub(crate) fn pieces(name: &str) -> Vec<&str> {
    name.rsplit('/').next().unwrap_or_default().split('-').collect()
}
