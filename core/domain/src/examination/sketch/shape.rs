//! What a drawing is made of: plain shapes, each with what it shows.

use serde::{Deserialize, Serialize};

use crate::message::Message;

/// Both sides of one placenta.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Sketch {
    /// The side that the baby lay on.
    pub fetal: Side,
    /// The side that lay on the uterus, as it lies once it is turned over: left and right are changed.
    pub maternal: Side,
    /// Half the length of the disc, mm. The middle lies at 0, 0.
    pub half_length: f64,
    /// Half its breadth, mm.
    pub half_breadth: f64,
    /// Whether length and breadth were measured; then a bar of 5 cm stands below each side.
    pub measured: bool,
    /// What is drawn by guess, what is missing, what is only hinted.
    pub notes: Vec<Message>,
}

/// One side, as it lies before the one who looks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Side {
    /// What part of the plane it takes up.
    pub view: ViewBox,
    /// Its shapes; each lies over those before it.
    pub traces: Vec<Trace>,
    /// What was recorded of it, for who does not see the drawing.
    pub words: Vec<Message>,
}

/// A part of the plane, mm; `x` to the right and `y` down from the middle of the disc.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ViewBox {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

/// One shape.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Trace {
    /// What it shows.
    pub what: What,
    /// Its outline.
    pub steps: Vec<PathStep>,
    /// Width of its line, mm; 0 for no line.
    pub weight: f64,
    /// Whether the line is dashed, since its size or place is not measured.
    pub dashed: bool,
    /// How it is filled.
    pub fill: Fill,
}

/// A step of an outline, to a point in mm.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "to", rename_all = "kebab-case")]
#[allow(missing_docs, reason = "the coordinates of points")]
pub enum PathStep {
    /// Begins there.
    Move { x: f64, y: f64 },
    /// Straight.
    Line { x: f64, y: f64 },
    /// By a cubic curve with two handles.
    Curve { x1: f64, y1: f64, x2: f64, y2: f64, x: f64, y: f64 },
    /// Back to where it began.
    Close,
}

/// What a shape shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum What {
    /// The membranes, hinted.
    Membranes,
    /// Where they tore.
    Tear,
    /// The edge of the disc.
    Outline,
    /// A lobe apart from the disc.
    ExtraLobe,
    /// A vessel under the fetal side, hinted.
    Vessel,
    /// A vessel that runs bare in the membranes.
    BareVessel,
    /// A vessel that ends torn.
    TornVessel,
    /// A ring inside the edge.
    Rim,
    /// A mark on the fetal side.
    Lump,
    /// The cord, drawn short.
    Cord,
    /// A clamp on it: as many as the number of its baby.
    Clamp,
    /// Where it goes in.
    Insertion,
    /// Furrows between lobes, hinted.
    Furrow,
    /// A gap.
    Gap,
    /// A clot that sticks.
    Clot,
    /// A firm area.
    FirmArea,
    /// The bar of 5 cm.
    Scale,
}

/// How a shape is filled.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Fill {
    /// Not.
    None,
    /// As the ground: hides what lies below.
    Ground,
    /// A light tint.
    Tint,
    /// As dark as a line.
    Solid,
}

impl Trace {
    pub(super) fn new(what: What, steps: Vec<PathStep>, weight: f64) -> Self {
        Self { what, steps, weight, dashed: false, fill: Fill::None }
    }

    pub(super) fn filled(self, fill: Fill) -> Self {
        Self { fill, ..self }
    }

    pub(super) fn dashed(self, dashed: bool) -> Self {
        Self { dashed, ..self }
    }

    pub(super) fn mirrored(self) -> Self {
        Self { steps: self.steps.into_iter().map(|step| step.each(|x, y| (-x, y))).collect(), ..self }
    }
}

impl PathStep {
    /// With each of its points, handles too, put elsewhere.
    #[must_use]
    pub fn each(self, mut place: impl FnMut(f64, f64) -> (f64, f64)) -> Self {
        match self {
            Self::Move { x, y } => {
                let (x, y) = place(x, y);
                Self::Move { x, y }
            }
            Self::Line { x, y } => {
                let (x, y) = place(x, y);
                Self::Line { x, y }
            }
            Self::Curve { x1, y1, x2, y2, x, y } => {
                let ((x1, y1), (x2, y2), (x, y)) = (place(x1, y1), place(x2, y2), place(x, y));
                Self::Curve { x1, y1, x2, y2, x, y }
            }
            Self::Close => Self::Close,
        }
    }

    /// Where it ends.
    #[must_use]
    pub fn end(self) -> Option<(f64, f64)> {
        match self {
            Self::Move { x, y } | Self::Line { x, y } | Self::Curve { x, y, .. } => Some((x, y)),
            Self::Close => None,
        }
    }
}
