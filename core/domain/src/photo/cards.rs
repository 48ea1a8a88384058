//! Two cards on one plane, laid by hand: how they lie to each other is not known, so it is found along with the plane.
//!
//! Each card is a rectangle of known size. The first one sets the axes of the plane; the second lies somewhere in them,
//! turned by some angle. That makes eleven unknown numbers, the eight of the homography and the second card's place and
//! turn, for sixteen coordinates in the picture. They are found by Gauss-Newton steps on the distances in the picture, from
//! the first card's own homography and the place that it gives the second. What the unknown place costs is tried in
//! `tests/photo_scenes.rs`.

use super::homography::{Homography, Point};
use super::linear::Normal;

/// Length and breadth of a card of the size ID-1, mm (ISO/IEC 7810).
pub const CARD: Point = (85.60, 53.98);

/// Steps after which it has settled, or will not.
const STEPS: usize = 30;
/// Lengths on the plane are reckoned in this many mm, and in the picture in this many pixels, so that all unknown numbers
/// are of a size.
const MM: f64 = 100.0;
const PIXELS: f64 = 1000.0;

/// The corners of a card, from the first one along its length; mm.
#[must_use]
pub fn card() -> [Point; 4] {
    let (length, breadth) = CARD;
    [(0.0, 0.0), (length, 0.0), (length, breadth), (0.0, breadth)]
}

/// The plane of two cards whose corners lie at these places of the picture, in the order of [`card`]; and how far they lie
/// from where it has them, root mean square, pixels.
pub(super) fn fit(corners: &[Point; 8]) -> Option<(Homography, f64)> {
    let (first, second) = corners.split_first_chunk::<4>()?;
    let start = Homography::fit(&card(), first)?;
    let back = start.inverse();
    let mut unknown = Unknown::start(&start, Place::of(second.iter().map(|corner| back.apply(*corner)))?);
    let mut error = unknown.error(corners);
    let mut damping = 0.0;
    for _ in 0..STEPS {
        let next = unknown.step(corners, damping)?;
        let after = next.error(corners);
        if after <= error {
            let settled = error - after <= 1e-12 * error;
            (unknown, error, damping) = (next, after, damping / 10.0);
            if settled {
                break;
            }
        } else {
            damping = f64::max(damping * 10.0, 1e-6);
        }
    }
    Some((unknown.homography(), (error / 8.0).sqrt() * PIXELS))
}

/// The plane of two cards laid by hand, from the corners of both, each from one end of a long side on.
#[must_use]
pub fn two_cards(corners: &[Point; 8]) -> Option<Homography> {
    fit(corners).map(|(plane, _)| plane)
}

/// Where the second card lies on the plane, in units of [`MM`], and how far it is turned.
#[derive(Clone, Copy)]
struct Place {
    x: f64,
    y: f64,
    turn: f64,
}

impl Place {
    /// The place that fits these corners best, mm (Umeyama's closed form in the plane, without scale).
    fn of(corners: impl Iterator<Item = Point>) -> Option<Self> {
        let corners: [Point; 4] = corners.collect::<Vec<_>>().try_into().ok()?;
        let middle = |points: &[Point; 4]| points.iter().fold((0.0, 0.0), |sum, (x, y)| (sum.0 + x / 4.0, sum.1 + y / 4.0));
        let (from, to) = (middle(&card()), middle(&corners));
        let (mut along, mut across) = (0.0, 0.0);
        for (one, other) in card().iter().zip(&corners) {
            let (a, b, c, d) = (one.0 - from.0, one.1 - from.1, other.0 - to.0, other.1 - to.1);
            along += a * c + b * d;
            across += a * d - b * c;
        }
        let (sin, cos) = across.atan2(along).sin_cos();
        let (x, y) = (to.0 - cos * from.0 + sin * from.1, to.1 - sin * from.0 - cos * from.1);
        Some(Self { x: x / MM, y: y / MM, turn: across.atan2(along) })
    }
}

#[derive(Clone, Copy)]
struct Unknown {
    h: [f64; 8],
    place: Place,
}

impl Unknown {
    fn start(plane: &Homography, place: Place) -> Self {
        let [[a, b, c], [d, e, f], [g, h, i]] = plane.0;
        let (mm, pixels) = (MM / i, 1.0 / (i * PIXELS));
        let h = [a * pixels * MM, b * pixels * MM, c * pixels, d * pixels * MM, e * pixels * MM, f * pixels, g * mm, h * mm];
        Self { h, place }
    }

    fn homography(&self) -> Homography {
        let [a, b, c, d, e, f, g, h] = self.h;
        let pixels = PIXELS / MM;
        Homography([[a * pixels, b * pixels, c * PIXELS], [d * pixels, e * pixels, f * PIXELS], [g / MM, h / MM, 1.0]])
    }

    /// For each corner its place on the plane, and how that moves as the second card is turned; none for the first card.
    fn corners(&self) -> impl Iterator<Item = (Point, Option<Point>)> {
        let Place { x, y, turn } = self.place;
        let (sin, cos) = turn.sin_cos();
        let small = card().map(|(a, b)| (a / MM, b / MM));
        let first = small.map(|corner| (corner, None));
        let second =
            small.map(|(a, b)| ((x + cos * a - sin * b, y + sin * a + cos * b), Some((-sin * a - cos * b, cos * a - sin * b))));
        first.into_iter().chain(second)
    }

    /// Sum of the squared distances in the picture.
    fn error(&self, seen: &[Point; 8]) -> f64 {
        let distance = |((place, _), seen): ((Point, _), &Point)| {
            let (u, v, _) = self.apply(place);
            (u - seen.0 / PIXELS).powi(2) + (v - seen.1 / PIXELS).powi(2)
        };
        self.corners().zip(seen).map(distance).sum()
    }

    fn apply(&self, (x, y): Point) -> (f64, f64, f64) {
        let [a, b, c, d, e, f, g, h] = self.h;
        let w = g * x + h * y + 1.0;
        ((a * x + b * y + c) / w, (d * x + e * y + f) / w, w)
    }

    /// One step, shortened by some damping (Levenberg).
    fn step(&self, seen: &[Point; 8], damping: f64) -> Option<Self> {
        let [a, b, _, d, e, _, g, h] = self.h;
        let mut normal = Normal::<11>::new();
        for (((x, y), turn), seen) in self.corners().zip(seen) {
            let (u, v, w) = self.apply((x, y));
            let (ux, uy, vx, vy) = ((a - u * g) / w, (b - u * h) / w, (d - v * g) / w, (e - v * h) / w);
            let ([px, py, pt], [qx, qy, qt]) = match turn {
                Some((tx, ty)) => ([ux, uy, ux * tx + uy * ty], [vx, vy, vx * tx + vy * ty]),
                None => ([0.0; 3], [0.0; 3]),
            };
            let (x, y, one) = (x / w, y / w, 1.0 / w);
            normal.add(&[x, y, one, 0.0, 0.0, 0.0, -u * x, -u * y, px, py, pt], seen.0 / PIXELS - u);
            normal.add(&[0.0, 0.0, 0.0, x, y, one, -v * x, -v * y, qx, qy, qt], seen.1 / PIXELS - v);
        }
        if damping > 0.0 {
            normal.damp(damping);
        }
        let [a, b, c, d, e, f, g, h, x, y, turn] = normal.solve()?;
        let mut next = *self;
        next.h.iter_mut().zip([a, b, c, d, e, f, g, h]).for_each(|(value, step)| *value += step);
        next.place = Place { x: self.place.x + x, y: self.place.y + y, turn: self.place.turn + turn };
        Some(next)
    }
}
