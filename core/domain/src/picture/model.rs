//! A birth as a picture over one axis of time.

use crate::entry::EntryId;
use crate::message::Message;
use crate::protocol::Level;
use serde::Serialize;

/// A birth over one axis: milliseconds from the birth of the first baby; from the first entry before there is one.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ChartPicture {
    /// Whether 0 is a birth.
    pub from_birth: bool,
    /// What the clock on the wall said at 0: milliseconds since 1970 of the local day and time.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub zero_local_ms: i64,
    /// What is shown at first: the birth and the hours after it.
    pub course: Span,
    /// From the first entry to the last, or to now.
    pub whole: Span,
    /// Now, on the axis.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub now_ms: i64,
    /// From the birth of the last baby to the last placenta, or to now.
    pub third_stage: Option<Span>,
    /// Every entry, in rows by what it is about; a row without entries is left out.
    pub rows: Vec<PictureRow>,
    /// What was read or added up, one scale to a lane; a lane without readings is left out.
    pub lanes: Vec<PictureLane>,
}

/// A stretch of the axis.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Span {
    /// Its beginning, ms.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub from_ms: i64,
    /// Its end, ms.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub to_ms: i64,
}

/// Entries about one thing.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct PictureRow {
    /// What they are about.
    pub name: Message,
    /// In order of time.
    pub points: Vec<PicturePoint>,
}

/// One entry on the axis. What it says stands in the line of the same entry.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct PicturePoint {
    /// The entry, as first written.
    pub entry: EntryId,
    /// When, ms.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub at_ms: i64,
    /// Local time at which it happened.
    pub clock: String,
    /// Put right after it was first written.
    pub corrected: bool,
    /// Written so long after it happened that the protocol calls it late.
    pub late: bool,
    /// Taken out of the chart.
    pub retracted: bool,
}

/// Readings over one scale.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct PictureLane {
    /// What was read.
    pub name: Message,
    /// The lower end of the scale, in the unit of the readings.
    pub low: f64,
    /// The upper end.
    pub high: f64,
    /// Values at which the scale is numbered, least first.
    pub grid: Vec<f64>,
    /// What stands over it.
    pub series: Vec<PictureSeries>,
    /// The protocol's lines within the scale, least first.
    pub limits: Vec<PictureLimit>,
}

impl PictureLane {
    /// Whether a baby was read, and not the mother: its name tells which.
    #[must_use]
    pub fn is_of_baby(&self) -> bool {
        self.name.args.contains_key("baby")
    }

    /// Whether it holds a sum.
    #[must_use]
    pub fn is_sum(&self) -> bool {
        self.series.iter().any(|series| series.shape == Shape::Steps)
    }
}

/// Readings of one thing.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct PictureSeries {
    /// What.
    pub name: Message,
    /// How it is drawn.
    pub shape: Shape,
    /// In order of time.
    pub readings: Vec<PictureReading>,
}

/// How readings are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// Joined from one to the next.
    Line,
    /// A sum: it stands until the next amount.
    Steps,
    /// Each by itself.
    Apart,
}

/// One value.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct PictureReading {
    /// The entry, when, and what became of it.
    pub point: PicturePoint,
    /// In the unit of the lane.
    pub value: f64,
    /// With its unit, in words.
    pub said: Message,
}

/// A line of the protocol.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct PictureLimit {
    /// Where, in the unit of the lane.
    pub value: f64,
    /// How much passing it asks for attention.
    pub level: Level,
    /// Whether larger values pass it.
    pub upper: bool,
    /// The comparison.
    pub at: Message,
    /// The comparison, and what the protocol says there.
    pub said: Message,
}
