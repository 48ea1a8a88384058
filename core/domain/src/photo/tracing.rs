//! What is kept of a measure on a photograph: whole numbers, so that it comes to the same on every device.

use serde::{Deserialize, Serialize};

use super::estimate::{FocalFrom, Given, Measured, Value, measure};
use super::homography::Point;
use super::{Reference, Refusal};
use crate::message::Message;

/// The most points of an outline. Our own choice.
const OUTLINE_MAX: usize = 400;

/// A place on a photograph, tenths of a pixel from its upper left corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Pixel {
    /// To the right.
    pub x: i32,
    /// Down.
    pub y: i32,
}

impl Pixel {
    fn point(self) -> Point {
        (f64::from(self.x) / 10.0, f64::from(self.y) / 10.0)
    }
}

/// What was placed on a photograph by hand.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Tracing {
    /// The thing of known size.
    pub reference: Reference,
    /// Its corners, in order round each card or the frame.
    pub corners: Vec<Pixel>,
    /// The outline of the disc, in order.
    pub outline: Vec<Pixel>,
    /// Where the cord goes in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub insertion: Option<Pixel>,
    /// Thickness of the disc, mm.
    pub thickness: u32,
}

/// A size and how far it may be off to both sides.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Size {
    /// The size.
    pub value: u32,
    /// Two standard deviations, of the same unit.
    pub plus_minus: u32,
}

/// The distance from the insertion of the cord to the nearest edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ToEdge {
    /// Hundredths of a mm.
    pub distance: Size,
    /// Whether the insertion lies outside of the disc.
    pub outside: bool,
}

/// What was measured on a photograph. The thickness is taken off.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Sizes {
    /// Greatest distance between two points of the outline, hundredths of a mm.
    pub length: Size,
    /// Least distance between two parallel lines that hold the outline, hundredths of a mm.
    pub breadth: Size,
    /// Area, mm².
    pub area: Size,
    /// Where the insertion was placed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub insertion: Option<ToEdge>,
    /// How far the camera was held from plumb, tenths of a degree.
    pub tilt: u32,
    /// How high its lens was above the plane, mm.
    pub height: u32,
    /// Where the focal length came from.
    pub focal_from: FocalFrom,
}

impl Tracing {
    /// Measures on a photograph of so many pixels across and down, whose camera told of this focal length, pixels.
    ///
    /// # Errors
    /// [`Refusal`] says why nothing is measured.
    pub fn measure(&self, width: u32, height: u32, focal: Option<u32>) -> Result<Sizes, Refusal> {
        let points = |pixels: &[Pixel]| pixels.iter().map(|pixel| pixel.point()).collect::<Vec<_>>();
        let (corners, outline) = (points(&self.corners), points(&self.outline));
        if outline.len() > OUTLINE_MAX {
            return Err(Refusal::Impossible);
        }
        let measured = measure(&Given {
            reference: self.reference,
            corners: &corners,
            outline: &outline,
            insertion: self.insertion.map(Pixel::point),
            thickness: f64::from(self.thickness),
            size: (f64::from(width), f64::from(height)),
            focal: focal.filter(|focal| *focal > 0).map(f64::from),
        })?;
        Ok(Sizes::from(&measured))
    }
}

impl From<&Measured> for Sizes {
    fn from(measured: &Measured) -> Self {
        let hundredths =
            |Value { value, plus_minus }: Value| Size { value: whole(value * 100.0), plus_minus: whole(plus_minus * 100.0) };
        let area = measured.area;
        Self {
            length: hundredths(measured.length),
            breadth: hundredths(measured.breadth),
            area: Size { value: whole(area.value), plus_minus: whole(area.plus_minus) },
            insertion: measured.insertion.map(|(distance, outside)| ToEdge { distance: hundredths(distance), outside }),
            tilt: whole(measured.camera.tilt.to_degrees() * 10.0),
            height: whole(measured.camera.height),
            focal_from: measured.focal_from,
        }
    }
}

impl Sizes {
    /// Length, breadth, area and distance from the cord to the edge, each with its plus-minus, in words; mm and cm².
    #[must_use]
    pub fn parts(&self) -> Vec<Message> {
        // Hundredths of a mm, and mm², a hundred of which are a cm².
        let nearest = |hundredths: u32| hundredths.saturating_add(50) / 100;
        let part = |id: &str, size: Size| {
            Message::new(id).with("value", nearest(size.value)).with("off", nearest(size.plus_minus).max(1))
        };
        let to_edge = self
            .insertion
            .map(|edge| part(if edge.outside { "part-photo-outside" } else { "part-photo-insertion" }, edge.distance));
        let disc = [
            part("part-photo-length", self.length),
            part("part-photo-breadth", self.breadth),
            part("part-photo-area", self.area),
        ];
        disc.into_iter().chain(to_edge).collect()
    }
}

/// The nearest whole number; what cannot be one is at an end of the range.
fn whole(value: f64) -> u32 {
    value.round() as u32
}
