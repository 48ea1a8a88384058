//! The drawing of a placenta, and the papers that go with it.

use secundine_domain::entry::EntryId;
use secundine_domain::examination::Sketch;
use secundine_domain::fact::{BabyNo, Place};
use secundine_domain::message::Message;
use serde::Serialize;

/// The drawing of one placenta, and what can be set on it.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct SketchView {
    /// The placenta, named by its first baby.
    pub placenta: BabyNo,
    /// Both sides.
    pub sketch: Sketch,
    /// What can be set on it now, in the practice's order.
    pub items: Vec<PlaceItem>,
}

/// Something that is answered by points on the drawing.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct PlaceItem {
    /// Stable id.
    pub item: String,
    /// Whose cord, where one disc fed several babies.
    pub cord: Option<BabyNo>,
    /// What is set.
    pub question: Message,
    /// How.
    pub how: Message,
    /// Whether it lies on the maternal side, whose picture is mirrored.
    pub maternal: bool,
    /// Most points that it takes.
    pub max: u32,
    /// Widths of a point that are offered at one touch, mm; none where no width is asked.
    pub sizes: Vec<u32>,
    /// The points in force.
    pub places: Vec<Place>,
    /// The entry of the answer in force, to amend it.
    pub entry: Option<EntryId>,
}
