//! The handover as the page shows it.

use secundine_domain::assess::Threshold;
use secundine_domain::message::Message;
use secundine_domain::protocol::Level;
use serde::Serialize;

use super::{ClockView, QrView};

/// A birth handed over, in SBAR order.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct HandoverView {
    /// The parts, in the order in which they are read out.
    pub parts: Vec<HandoverPart>,
    /// Whether who people are, and what they wrote, is left out, since the names are hidden.
    pub people_hidden: bool,
}

/// One of the four parts.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct HandoverPart {
    /// Its heading.
    pub title: Message,
    /// What it tells.
    pub groups: Vec<HandoverGroup>,
}

/// What is told under one name.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct HandoverGroup {
    /// The name.
    pub label: Message,
    /// Each thing that is told.
    pub lines: Vec<HandoverLine>,
}

/// One thing that is told.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct HandoverLine {
    /// What.
    pub said: Message,
    /// Local time of it, where it was one moment.
    pub when: Option<Message>,
    /// How long ago that was, where it matters; it runs.
    pub age: Option<ClockView>,
    /// How much a finding of the protocol asks for attention there.
    pub level: Option<Level>,
    /// The threshold that was passed.
    pub threshold: Option<Threshold>,
}

/// The handover as a code that any telephone reads. It is not encrypted.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct HandoverCode {
    /// The code.
    pub code: QrView,
    /// What it says: at most 600 bytes of UTF-8.
    pub text: String,
    /// What did not go into it, as it would stand there.
    pub left_out: Vec<String>,
}
