//! The measures, and how far each may be off.
//!
//! Each plus-minus is two standard deviations: what the corners do, each coordinate by one pixel, by first differences
//! through the whole reckoning; and beside it the hand that draws the outline, the thickness, the rim of a domed disc, which
//! lies lower than its thickness, and the focal length. That it covers the truth is tried in `tests/photo_scenes.rs`.

use serde::{Deserialize, Serialize};

use super::cards::{self, card};
use super::homography::{Homography, Point};
use super::{Camera, HEIGHT_MIN, MISFIT_MAX, OUTLINE_MIN, Reference, Refusal, SIDE_MIN, TILT_MAX, camera, shape};

/// How far a corner is off that was placed by hand under the loupe, pixels. Source: notes on photographs; status: choice.
const CORNER: f64 = 1.0;
/// How far a point of the outline is off, mm: the edge itself is soft; status: choice.
const OUTLINE: f64 = 0.5;
/// How far a thickness is off, mm: a disc has not one; status: choice.
const THICKNESS: f64 = 2.0;
/// How far the rim of a domed disc may lie from its thickness, as a share of it; status: choice.
const DOME: f64 = 0.25;
/// How far a focal length is off that the camera told of in whole mm, as a share; status: choice.
const FOCAL_TOLD: f64 = 0.05;
/// The focal length where nothing tells it, as a share of the picture's diagonal: the main lens of most phones, 26 mm on
/// a film of 36 by 24 mm; and how far it may be off, as a share: 20 to 33 mm. Status of both: choice.
const FOCAL_USUAL: f64 = 0.60;
const FOCAL_USUAL_OFF: f64 = 0.14;
/// Standard deviations in a plus-minus.
const DEVIATIONS: f64 = 2.0;

/// What was placed on a photograph, in pixels from its upper left corner.
#[derive(Clone, Debug)]
pub struct Given<'a> {
    /// The thing of known size.
    pub reference: Reference,
    /// Its corners, in order round each card or the frame, from any of them on.
    pub corners: &'a [Point],
    /// The outline of the disc, in order.
    pub outline: &'a [Point],
    /// Where the cord goes in.
    pub insertion: Option<Point>,
    /// Thickness of the disc, mm.
    pub thickness: f64,
    /// Pixels across and down.
    pub size: Point,
    /// Focal length that the camera told of, pixels.
    pub focal: Option<f64>,
}

/// A value and how far it may be off to both sides.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Value {
    /// The value.
    pub value: f64,
    /// Two standard deviations.
    pub plus_minus: f64,
}

/// Where the focal length came from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum FocalFrom {
    /// From the slant of the plane.
    Plane,
    /// From what the camera wrote into the picture.
    Camera,
    /// The usual one of a phone.
    Usual,
}

/// What was measured. The thickness is taken off.
#[derive(Clone, Copy, Debug)]
pub struct Measured {
    /// Greatest distance between two points of the outline, mm.
    pub length: Value,
    /// Least distance between two parallel lines that hold the outline, mm.
    pub breadth: Value,
    /// Area, mm².
    pub area: Value,
    /// From the insertion of the cord to the nearest edge, mm, and whether it lies outside of the disc.
    pub insertion: Option<(Value, bool)>,
    /// Where the camera was.
    pub camera: Camera,
    /// Where the focal length came from.
    pub focal_from: FocalFrom,
    /// Root mean square distance of the corners from where the plane has them, pixels; 0 for four corners.
    pub misfit: f64,
}

/// Measures.
///
/// # Errors
/// [`Refusal`] says why nothing is measured.
pub fn measure(given: &Given) -> Result<Measured, Refusal> {
    let Given { outline, insertion, thickness, .. } = *given;
    if outline.len() < OUTLINE_MIN {
        return Err(Refusal::FewPoints);
    }
    if shape::crosses_itself(outline) {
        return Err(Refusal::OutlineCrossed);
    }
    let corners = ordered(given)?;
    let (plane, misfit) = plane(given, &corners).ok_or(Refusal::Misfit)?;
    if misfit > MISFIT_MAX {
        return Err(Refusal::Misfit);
    }
    let shaken = shaken(given, &corners).ok_or(Refusal::Misfit)?;
    let lens = Lens::of(given, &plane, &shaken);
    let camera = lens.camera(&plane);
    if camera.tilt.to_degrees() > TILT_MAX {
        return Err(Refusal::Tilted);
    }
    if camera.height < HEIGHT_MIN {
        return Err(Refusal::Near);
    }
    let sizes = Sizes::of(given, &plane, camera.height, true);
    let Sizes([length, breadth, area, distance]) = sizes;
    let [of_length, of_breadth, of_area, of_distance] = variances(given, &plane, &lens, &shaken, &sizes);
    let value = |value: f64, variance: f64| Value { value, plus_minus: DEVIATIONS * variance.sqrt() };
    let outside = |point| !shape::holds(outline, point);
    let measured = Measured {
        length: value(length, of_length),
        breadth: value(breadth, of_breadth),
        area: value(area, of_area),
        insertion: insertion.map(|point| (value(distance, of_distance), outside(point))),
        camera,
        focal_from: lens.from,
        misfit,
    };
    let sound = [length, breadth, area, distance, of_length, of_breadth, of_area, of_distance].iter().all(|n| n.is_finite());
    if sound && (0.0..camera.height).contains(&thickness) { Ok(measured) } else { Err(Refusal::Impossible) }
}

/// The corners from a long side on, round each thing in one sense.
fn ordered(given: &Given) -> Result<Vec<Point>, Refusal> {
    let Given { reference, corners, .. } = given;
    if corners.len() != reference.corners() {
        return Err(Refusal::Corners);
    }
    let mut ordered = Vec::with_capacity(corners.len());
    for thing in corners.as_chunks::<4>().0 {
        let [a, mut b, c, mut d] = *thing;
        let turns = [[a, b, c], [b, c, d], [c, d, a], [d, a, b]].map(|triangle| shape::signed_area(&triangle) > 0.0);
        match turns {
            [true, true, true, true] => {}
            [false, false, false, false] => std::mem::swap(&mut b, &mut d),
            _ => return Err(Refusal::Crossed),
        }
        let side = |p: Point, q: Point| (p.0 - q.0).hypot(p.1 - q.1);
        let (one, other) = ((side(a, b) + side(c, d)) / 2.0, (side(b, c) + side(d, a)) / 2.0);
        if f64::max(one, other) < SIDE_MIN {
            return Err(Refusal::Small);
        }
        ordered.extend(if one >= other { [a, b, c, d] } else { [b, c, d, a] });
    }
    Ok(ordered)
}

/// The plane's homography into the picture, whose coordinates are counted from its middle; and the misfit of the corners.
fn plane(given: &Given, corners: &[Point]) -> Option<(Homography, f64)> {
    let corners: Vec<Point> = corners.iter().map(|corner| given.centred(*corner)).collect();
    match given.reference {
        Reference::OneCard => Some((Homography::fit(&card(), &corners)?, 0.0)),
        Reference::TwoCards => cards::fit(corners.as_slice().try_into().ok()?),
        Reference::Frame { side } => {
            let side = f64::from(side);
            Some((Homography::fit(&[(0.0, 0.0), (side, 0.0), (side, side), (0.0, side)], &corners)?, 0.0))
        }
    }
}

impl Given<'_> {
    fn centred(&self, (x, y): Point) -> Point {
        (x - self.size.0 / 2.0, y - self.size.1 / 2.0)
    }
}

/// The planes that come of moving each coordinate of each corner by half a pixel to both sides.
fn shaken(given: &Given, corners: &[Point]) -> Option<Vec<(Homography, Homography)>> {
    let mut corners = corners.to_vec();
    let mut planes = Vec::with_capacity(corners.len() * 2);
    for n in 0..corners.len() {
        for (x, y) in [(0.5, 0.0), (0.0, 0.5)] {
            let mut moved = |by: f64| {
                let corner = corners.get_mut(n)?;
                let before = *corner;
                *corner = (before.0 + x * by, before.1 + y * by);
                let (plane, _) = plane(given, &corners)?;
                *corners.get_mut(n)? = before;
                Some(plane)
            };
            planes.push((moved(-1.0)?, moved(1.0)?));
        }
    }
    Some(planes)
}

/// What is known of the lens.
struct Lens {
    from: FocalFrom,
    /// Pixels; where it comes from the plane, it comes from each plane anew.
    focal: f64,
    /// One standard deviation, as a share.
    off: f64,
}

impl Lens {
    /// Whichever is known best: from the plane, told by the camera, or the usual one.
    fn of(given: &Given, plane: &Homography, shaken: &[(Homography, Homography)]) -> Self {
        let usual = Self { from: FocalFrom::Usual, focal: FOCAL_USUAL * given.size.0.hypot(given.size.1), off: FOCAL_USUAL_OFF };
        let told = given.focal.map(|focal| Self { from: FocalFrom::Camera, focal, off: FOCAL_TOLD });
        let found = camera::focal(plane).and_then(|focal| {
            let share = |(low, high): &(_, _)| Some((camera::focal(high)? / camera::focal(low)?).ln());
            let variance = shaken.iter().map(share).try_fold(0.0, |sum, share| Some(sum + share?.powi(2)))?;
            Some(Self { from: FocalFrom::Plane, focal, off: variance.sqrt() * CORNER })
        });
        let known = [Some(usual), told, found].into_iter().flatten();
        known.min_by(|one, other| one.off.total_cmp(&other.off)).unwrap_or(Self { from: FocalFrom::Usual, focal: 1.0, off: 1.0 })
    }

    fn camera(&self, plane: &Homography) -> Camera {
        let found = Some(self.from).filter(|from| *from == FocalFrom::Plane).and_then(|_| camera::focal(plane));
        Camera::of(plane, found.unwrap_or(self.focal))
    }
}

/// Length, breadth, area and distance from the insertion to the edge, the thickness taken off; mm and mm².
struct Sizes([f64; 4]);

impl Sizes {
    /// Of the outline as a smooth curve, or as the points that were placed, which is quicker.
    fn of(given: &Given, plane: &Homography, height: f64, smooth: bool) -> Self {
        let back = plane.inverse();
        let on_plane = |point: &Point| back.apply(given.centred(*point));
        let placed: Vec<Point> = given.outline.iter().map(on_plane).collect();
        let outline = if smooth { shape::curve(&placed) } else { placed };
        let smaller = 1.0 - given.thickness / height;
        let (length, breadth) = shape::calipers(&outline);
        let distance = given.insertion.map_or(0.0, |point| shape::distance(&outline, on_plane(&point)));
        let area = shape::signed_area(&outline).abs();
        Self([length * smaller, breadth * smaller, area * smaller * smaller, distance * smaller])
    }
}

/// The squares of the standard deviations, in the order of [`Sizes`].
fn variances(given: &Given, plane: &Homography, lens: &Lens, shaken: &[(Homography, Homography)], sizes: &Sizes) -> [f64; 4] {
    let mut sums = [0.0; 4];
    for (low, high) in shaken {
        let of = |plane| Sizes::of(given, plane, lens.camera(plane).height, false).0;
        for ((sum, low), high) in sums.iter_mut().zip(of(low)).zip(of(high)) {
            *sum += ((high - low) * CORNER).powi(2);
        }
    }
    let above = lens.camera(plane).height - given.thickness;
    let thickness = (THICKNESS.powi(2) + (DOME * given.thickness).powi(2)) / above.powi(2);
    let focal = if lens.from == FocalFrom::Plane { 0.0 } else { (lens.off * given.thickness / above).powi(2) };
    let [length, breadth, area, distance] = sizes.0;
    let drawn = [2.0 * OUTLINE.powi(2), 2.0 * OUTLINE.powi(2), drawn_area(given, plane), 2.0 * OUTLINE.powi(2)];
    for ((sum, size), drawn) in sums.iter_mut().zip([length, breadth, 2.0 * area, distance]).zip(drawn) {
        *sum += size.powi(2) * (thickness + focal) + drawn;
    }
    sums
}

/// What the hand does to the area: a point moves it by half the way between its neighbours.
fn drawn_area(given: &Given, plane: &Homography) -> f64 {
    let back = plane.inverse();
    let placed: Vec<Point> = given.outline.iter().map(|point| back.apply(given.centred(*point))).collect();
    let across = placed.iter().zip(placed.iter().cycle().skip(2)).map(|(a, b)| (a.0 - b.0).powi(2) + (a.1 - b.1).powi(2));
    across.sum::<f64>() / 4.0 * OUTLINE.powi(2)
}
