//! What is found at an item of the examination.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

/// What was found at an item of the examination.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "answer", rename_all = "snake_case")]
pub enum Answer {
    /// One of the item's choices.
    Choice {
        /// Id of the choice.
        option: String,
    },
    /// Those of the item's choices that hold, at least one.
    Choices {
        /// Ids of the choices.
        options: BTreeSet<String>,
    },
    /// A measure in the item's unit (mm, g, % or a count).
    Measure {
        /// The number.
        value: u32,
    },
    /// A cord, measured in pieces.
    Pieces {
        /// Their lengths, mm.
        lengths: Vec<u32>,
        /// Whether no piece is missing.
        all: bool,
    },
    /// Coils of a cord, counted along a stretch of it.
    Coils {
        /// Complete turns.
        coils: u32,
        /// Length of that stretch, mm.
        over: u32,
    },
    /// Points on the drawing, at least one.
    Places {
        /// Where.
        places: Vec<Place>,
    },
    /// Looked, and could not tell.
    CouldNotTell,
}

/// A point on the disc as it lies before the one who looks: the length across, the fetal side up, also where it was seen on the
/// maternal side and its picture is mirrored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Place {
    /// To the right of the middle, thousandths of half the length; from -3000 to 3000, the disc's edge being at 1000.
    pub x: i32,
    /// Below the middle, thousandths of half the breadth; as `x`.
    pub y: i32,
    /// Greatest width of what lies there, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub size: Option<u32>,
}
