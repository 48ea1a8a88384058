//! Sealed segments of a practice's record, shared through any object store.
//!
//! Each device appends objects under names of its own and writes nowhere else, so nothing conflicts and nothing rests on
//! what a store promises. Every object is sealed under the key of an epoch, signed by its device, numbered, names the one
//! before and is named by its own hash (`envelope`). The roster, itself such objects, says whose objects count. A reader
//! takes the union (`round`); what the entries mean is the fold's.

mod access;
mod bucket;
mod cbor;
mod charter;
mod envelope;
mod epoch;
mod error;
mod files;
#[cfg(feature = "fuzzing")]
pub mod fuzzing;
mod keyring;
mod member;
mod names;
mod notes;
mod roster;
mod round;
mod segment;
mod trouble;

pub use access::{Access, Alone};
pub use bucket::{Bucket, BucketError, Listed, Place, Probed, Secret, no_answer, open, probe};
pub use charter::Charter;
pub use error::SyncError;
pub use files::{fetch_file, waiting_files};
pub use member::{
    Card, accept, admit, ask_erasure, current, found, join, may_join, others, recover, remove, roster, set_place, set_role,
    waiting,
};
pub use notes::{Me, Peer, is_shared, last_good, me, note_good, peers};
pub use roster::{Member, Removed, Role, Roster};
pub use round::{Progress, Report, Wishes, round};
pub use trouble::Trouble;
