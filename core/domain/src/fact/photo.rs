//! A photograph of the placenta.

use serde::{Deserialize, Serialize};

use super::BabyNo;
use crate::file::FileId;
use crate::photo::{Sizes, Tracing};

/// A photograph of the placenta: upright, without anything that the camera had written into it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Photo {
    /// The placenta, named by its first baby.
    pub placenta: BabyNo,
    /// The picture, JPEG.
    pub file: FileId,
    /// The same picture, small, JPEG.
    pub small: FileId,
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
    /// The item of the examination that it shows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub item: Option<String>,
    /// What the author says of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub words: Option<String>,
    /// Focal length of the lens that the camera told of, in pixels of this picture.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub focal: Option<u32>,
}

/// A measure on a photograph: an aid for the record. It takes the place of no measure that was typed.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct PhotoMeasure {
    /// The placenta, named by its first baby.
    pub placenta: BabyNo,
    /// The photograph.
    pub file: FileId,
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
    /// Focal length of the lens that the camera told of, pixels.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub focal: Option<u32>,
    /// What was placed on it.
    pub tracing: Tracing,
    /// What that came to.
    pub sizes: Sizes,
    /// Which way of reckoning it was.
    pub formula: u32,
}
