//! The place that the phones of a practice share: names with bytes, and nothing else.
//!
//! Nothing is asked of it but that what was put under a name can be listed and fetched. It is trusted with nothing: what it
//! holds is sealed and signed, and a bucket that withholds, alters or rolls back is found out (`round`).

mod folder;
mod place;
mod probe;
mod s3;
mod store;
mod webdav;
mod why;
mod wire;

use std::ops::Range;

use thiserror::Error;

pub use place::{Place, Secret, open};
pub use probe::{Probed, probe};
pub use wire::no_answer;

/// A name in the bucket and how many bytes lie under it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Listed {
    /// Parts of letters, digits and hyphens, with `/` between them.
    pub name: String,
    /// Size in bytes.
    pub bytes: u64,
}

/// Why a bucket did not do what was asked. Nothing on the phone is lost by any of these.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum BucketError {
    /// Nothing lies under this name.
    #[error("nothing is there under this name")]
    Absent,
    /// No connection, or nobody answers at this address.
    #[error("no connection")]
    NoConnection,
    /// Somebody answers who cannot prove to be the one at this address.
    #[error("the certificate is not trusted")]
    NotTrusted,
    /// The key is not known there, or may not do this: the status that was answered.
    #[error("refused: {0}")]
    Refused(u16),
    /// There is no such bucket, or no such folder.
    #[error("there is no such bucket")]
    NoBucket,
    /// No room is left, or the quota is reached.
    #[error("the bucket is full")]
    Full,
    /// It answers, and asks to be left alone for a while, or too few of its machines are up.
    #[error("the store is busy: {0}")]
    Busy(u16),
    /// The answer did not come in time, or broke off.
    #[error("the answer did not come in time")]
    Slow,
    /// More bytes lie there than could be meant.
    #[error("too many bytes")]
    TooLarge,
    /// The clock of this device and that of the store differ by more than a quarter of an hour, so that no signature holds.
    #[error("the clocks differ")]
    Clock,
    /// This is no address that can be used, or one that would go over an open line in the clear.
    #[error("the address cannot be used")]
    Address,
    /// Anything else.
    #[error("{0}")]
    Broken(String),
}

/// A bucket of an object store, or a folder. All names of a practice begin with the same part.
pub trait Bucket: Send + Sync {
    /// What begins with `prefix` and comes after `after`, in the order of the bytes of the names.
    ///
    /// # Errors
    /// [`BucketError`]; nothing under the prefix is an empty list.
    fn list(&self, prefix: &str, after: Option<&str>) -> Result<Vec<Listed>, BucketError>;

    /// The bytes under a name, `most` at most.
    ///
    /// # Errors
    /// [`BucketError`]
    fn get(&self, name: &str, most: u64) -> Result<Vec<u8>, BucketError>;

    /// Some of the bytes under a name; fewer where it ends before.
    ///
    /// # Errors
    /// [`BucketError`]
    fn get_range(&self, name: &str, range: Range<u64>) -> Result<Vec<u8>, BucketError>;

    /// Puts bytes under a name. When this returns, the bucket has answered that it keeps them.
    ///
    /// # Errors
    /// [`BucketError`]: they may be there all the same, whole; putting the same bytes once more does no harm.
    fn put(&self, name: &str, bytes: &[u8]) -> Result<(), BucketError>;

    /// The same, with the wish that nothing be there yet. Many stores take the wish and do not heed it, so nothing but the
    /// probe asks for it. Gives whether it was put.
    ///
    /// # Errors
    /// [`BucketError`]
    fn put_new(&self, name: &str, bytes: &[u8]) -> Result<bool, BucketError>;

    /// Removes what is there; nothing there is no error.
    ///
    /// # Errors
    /// [`BucketError`]
    fn remove(&self, name: &str) -> Result<(), BucketError>;

    /// Fetches several in their order and hands each over, until `take` answers no. A bucket with a slow line fetches some
    /// ahead: the more, the less each may have.
    fn get_each(&self, names: &[String], most: u64, take: &mut dyn FnMut(usize, Result<Vec<u8>, BucketError>) -> bool) {
        for (k, name) in names.iter().enumerate() {
            if !take(k, self.get(name, most)) {
                return;
            }
        }
    }
}
