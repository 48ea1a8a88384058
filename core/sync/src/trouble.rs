//! What is not as it should be with the objects of a practice. Each is shown until it is so no more; nothing is taken from
//! an object that any of these is said of.

use secundine_domain::entry::DeviceId;
use serde::{Deserialize, Serialize};

/// What is not as it should be.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Trouble {
    /// A segment is not there though a later one is, or somebody has seen it.
    Withheld {
        /// Whose.
        device: DeviceId,
        /// The first that is missing.
        seq: u64,
    },
    /// A segment that was there before is there no more: the store was put back, or objects were removed.
    RolledBack {
        /// Whose.
        device: DeviceId,
        /// The last that was seen.
        seq: u64,
    },
    /// The bytes do not fit their name: cut off or altered.
    Altered {
        /// The name in the bucket.
        name: String,
    },
    /// An object lies under the name of another, or of another practice.
    Swapped {
        /// The name in the bucket.
        name: String,
    },
    /// It is not signed by the device under whose name it lies.
    Unsigned {
        /// The name in the bucket.
        name: String,
    },
    /// A device has signed two segments of one number: it was copied, or its secrets were.
    Forked {
        /// Which.
        device: DeviceId,
        /// The number.
        seq: u64,
    },
    /// It is signed, and no key of this phone opens it.
    NoKey {
        /// The name in the bucket.
        name: String,
    },
    /// It is signed, and what it holds is none of our forms: a later version of the program may have written it.
    Unreadable {
        /// The name in the bucket.
        name: String,
    },
    /// Its entries do not follow from those that are here.
    Misfit {
        /// Whose.
        device: DeviceId,
        /// The number of the entry.
        n: u64,
    },
    /// The key of a birth is not there.
    NoBirthKey {
        /// Whose entries.
        device: DeviceId,
        /// The segment that waits for it.
        seq: u64,
    },
    /// A device that was removed has written since; a lead may take it in.
    Held {
        /// Which.
        device: DeviceId,
        /// The first segment that waits.
        seq: u64,
        /// How many segments wait.
        segments: u64,
    },
}

/// How an object was found to be none.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) enum Bad {
    Altered,
    Swapped,
    Unsigned,
    NoKey,
    Unreadable,
}

impl Bad {
    pub(crate) fn named(self, name: &str) -> Trouble {
        let name = name.to_owned();
        match self {
            Self::Altered => Trouble::Altered { name },
            Self::Swapped => Trouble::Swapped { name },
            Self::Unsigned => Trouble::Unsigned { name },
            Self::NoKey => Trouble::NoKey { name },
            Self::Unreadable => Trouble::Unreadable { name },
        }
    }
}
