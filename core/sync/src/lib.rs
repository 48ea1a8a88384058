//! Sealed segments of a practice's record, shared through any object store.

mod bucket;

pub use bucket::{Bucket, BucketError, Listed, Place, Probed, Secret, open, probe};
