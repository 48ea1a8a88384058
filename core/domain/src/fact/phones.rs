//! Several phones at one birth: what one of them told another, and how their clocks stand to each other.

use serde::{Deserialize, Serialize};

use super::{Care, Fact};
use crate::entry::{DeviceId, EntryId};

/// A phone goes on with a birth that another one knows, whose entries may come much later. What the other told meanwhile stands
/// here; each thing only until its own entry has come.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Joined {
    /// The phone that told.
    pub from: DeviceId,
    /// What tells this birth from others.
    pub label: String,
    /// Id of the published protocol whose limits the other phone watches.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub protocol: Option<String>,
    /// How the third stage is cared for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub care: Option<Care>,
    /// The moments of the birth that were marked there, earliest first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "types", ts(as = "Option<Vec<Told>>", optional))]
    pub told: Vec<Told>,
}

/// A moment of the birth that stands on another phone.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Told {
    /// Its entry there.
    pub entry: EntryId,
    /// What: a fact for which [`Fact::is_mark`] holds; any other is passed over.
    #[cfg_attr(feature = "types", ts(as = "Fact"))]
    pub fact: Box<Fact>,
    /// Milliseconds from it to the moment of joining, as the other phone's clock ran.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub ago_ms: i64,
}

/// Two phones' wall clocks, compared at the moment of the entry.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Compared {
    /// The other phone.
    pub other: DeviceId,
    /// Its wall clock less the one of the phone that writes, milliseconds: positive where the other is ahead.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub ahead_ms: i64,
    /// The true difference lies within so many milliseconds of that, either way.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub error_ms: i64,
}
