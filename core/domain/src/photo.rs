//! What the disc of a placenta measures on a photograph that has a thing of known size beside it.
//!
//! The corners of one or two cards, or of a printed frame, tell how the plane that they lie on comes into the picture
//! (`homography`, `cards`). The outline of the disc, brought back onto that plane, gives length, breadth and area. The edge
//! that is seen lies above the plane, nearer to the camera, and so looks too large: with `h` for the height of the edge and
//! `H` for that of the lens, by `H / (H − h)`, whatever the tilt. `H` follows from the plane and the lens's focal length
//! (`camera`). Each result has a plus-minus of two standard deviations (`estimate`).
//!
//! It takes a pinhole camera whose picture was not cropped: what a lens bends is not put right.

use serde::{Deserialize, Serialize};

use crate::message::Message;

mod camera;
mod cards;
mod estimate;
mod homography;
mod linear;
mod shape;
mod tracing;

pub use camera::Camera;
pub use cards::{CARD, card, two_cards};
pub use estimate::{FocalFrom, Given, Measured, Value, measure};
pub use homography::{Homography, Point};
pub use shape::{calipers, crosses_itself, curve, distance, signed_area};
pub use tracing::{Pixel, Size, Sizes, ToEdge, Tracing};

/// Which way of reckoning this is: kept beside each result.
pub const FORMULA: u32 = 1;

/// The greatest tilt, degrees. Source: notes on photographs, our own simulation; status: choice.
pub const TILT_MAX: f64 = 25.0;
/// The least height of the lens, mm. Nearer, the thickness of the disc counts for too much; status: choice.
pub const HEIGHT_MIN: f64 = 400.0;
/// The least length of a card's long side in the picture, pixels; status: choice.
pub const SIDE_MIN: f64 = 250.0;
/// The fewest points of an outline; status: choice.
pub const OUTLINE_MIN: usize = 24;
/// The greatest distance of the corners from where the plane would have them, root mean square, pixels; status: choice.
pub const MISFIT_MAX: f64 = 1.5;

/// The thing of known size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "reference", rename_all = "snake_case")]
pub enum Reference {
    /// A card of the size ID-1 beside the disc: a rough measure.
    OneCard,
    /// Two such cards, best one on each side.
    TwoCards,
    /// A printed square round the disc.
    Frame {
        /// Its side, mm.
        side: u32,
    },
}

impl Reference {
    /// How many corners it has.
    #[must_use]
    pub fn corners(self) -> usize {
        if self == Self::TwoCards { 8 } else { 4 }
    }
}

/// Why nothing is measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Refusal {
    /// There are more corners, or fewer, than the thing has.
    Corners,
    /// The corners of a thing do not go round it.
    Crossed,
    /// A side of the thing is too short in the picture.
    Small,
    /// The corners do not fit a plane.
    Misfit,
    /// The camera was held too slant.
    Tilted,
    /// The camera was too near.
    Near,
    /// The outline has too few points.
    FewPoints,
    /// The outline crosses itself.
    OutlineCrossed,
    /// The numbers do not go together.
    Impossible,
}

impl Refusal {
    /// Why, and what another picture needs.
    #[must_use]
    pub fn words(self) -> Message {
        match self {
            Self::Corners => Message::new("photo-refused-corners"),
            Self::Crossed => Message::new("photo-refused-crossed"),
            Self::Small => Message::new("photo-refused-small").with("pixels", SIDE_MIN),
            Self::Misfit => Message::new("photo-refused-misfit"),
            Self::Tilted => Message::new("photo-refused-tilted").with("degrees", TILT_MAX),
            Self::Near => Message::new("photo-refused-near").with("cm", HEIGHT_MIN / 10.0),
            Self::FewPoints => Message::new("photo-refused-few").with("points", OUTLINE_MIN as f64),
            Self::OutlineCrossed => Message::new("photo-refused-outline"),
            Self::Impossible => Message::new("photo-refused-impossible"),
        }
    }
}
