//! What a check of the whole practice found.

use secundine_domain::entry::BirthId;
use secundine_domain::message::Message;
use serde::Serialize;

/// What a check of the whole practice found.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct VerifyView {
    /// Whether everything is as it was written.
    pub ok: bool,
    /// Entries checked; where something does not fit, those before it.
    pub entries: u32,
    /// Devices that wrote them.
    pub devices: u32,
    /// That all fits, or the first thing that does not.
    pub message: Message,
    /// What the end of this device's entries was compared with.
    pub head: Message,
    /// The birth of the entry that does not fit, where it is known.
    pub birth: Option<BirthId>,
    /// What tells that birth from others, where it can still be read.
    pub label: Option<String>,
}
