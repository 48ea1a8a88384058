//! Photographs of a placenta, and what is measured on one.

use secundine_domain::entry::EntryId;
use secundine_domain::fact::{Answer, Photo};
use secundine_domain::message::Message;
use serde::Serialize;

/// A photograph of a placenta that stands in the chart.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct PhotoView {
    /// The entry as first written.
    pub entry: EntryId,
    /// The photograph.
    pub photo: Photo,
    /// What it shows, in words.
    pub title: Message,
    /// Local date on which it was taken, `2026-11-25`.
    pub date: String,
    /// Local time at which it was taken.
    pub clock: String,
    /// What was measured on it, latest last.
    pub measures: Vec<MeasureView>,
}

/// A measure on a photograph that stands in the chart.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct MeasureView {
    /// The entry as first written.
    pub entry: EntryId,
    /// What came of it.
    pub measured: MeasuredView,
    /// What of it can be taken over into the examination.
    pub offers: Vec<OfferView>,
}

/// What was measured on a photograph, in words.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct MeasuredView {
    /// Each size with its plus-minus.
    pub sizes: Vec<Message>,
    /// Where the camera was, and how that is known.
    pub camera: Vec<Message>,
}

/// A measure that can be taken over into the examination.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct OfferView {
    /// The item.
    pub item: String,
    /// What is asked there.
    pub question: Message,
    /// The answer as it would stand there.
    pub answer: Answer,
    /// The same in words.
    pub said: Message,
    /// The entry of the answer that stands there now, as first written.
    pub entry: Option<EntryId>,
    /// Whether it stands there already.
    pub taken: bool,
}
