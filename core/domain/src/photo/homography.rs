//! How a plane comes to lie in a picture: eight numbers, from points whose places on the plane are known.

use super::linear::Normal;

/// A place: mm on the plane, or pixels in the picture.
pub type Point = (f64, f64);

/// From the plane into the picture, or back: rows of a 3 by 3 matrix.
#[derive(Clone, Copy, Debug)]
pub struct Homography(pub [[f64; 3]; 3]);

impl Homography {
    /// The homography that takes the points `from` to the points `to` with the least squares of the linear form, all
    /// coordinates normalised first (Hartley 1997: middle at 0, mean distance √2). Four points settle it; none where they
    /// do not.
    #[must_use]
    pub fn fit(from: &[Point], to: &[Point]) -> Option<Self> {
        let (near, far) = (Frame::of(from)?, Frame::of(to)?);
        let mut normal = Normal::<8>::new();
        for (from, to) in from.iter().zip(to) {
            let ((x, y), (u, v)) = (near.inside(*from), far.inside(*to));
            normal.add(&[x, y, 1.0, 0.0, 0.0, 0.0, -u * x, -u * y], u);
            normal.add(&[0.0, 0.0, 0.0, x, y, 1.0, -v * x, -v * y], v);
        }
        let [a, b, c, d, e, f, g, h] = normal.solve()?;
        let inner = Self([[a, b, c], [d, e, f], [g, h, 1.0]]);
        Some(far.outwards().after(&inner).after(&near.inwards()))
    }

    /// Where a point comes to lie.
    #[must_use]
    pub fn apply(&self, (x, y): Point) -> Point {
        let [u, v, w] = self.0.map(|[a, b, c]| a * x + b * y + c);
        (u / w, v / w)
    }

    /// The way back.
    #[must_use]
    pub fn inverse(&self) -> Self {
        let [p, q, r] = self.0;
        // The adjugate; its scale does not matter.
        let ([a, d, g], [b, e, h], [c, f, i]) = (cross(q, r), cross(r, p), cross(p, q));
        Self([[a, b, c], [d, e, f], [g, h, i]])
    }

    /// This one after another.
    #[must_use]
    pub(super) fn after(&self, first: &Self) -> Self {
        let [p, q, r] = first.0;
        let sum = |[a, b, c]: [f64; 3]| {
            let mut row = [0.0; 3];
            for (((sum, p), q), r) in row.iter_mut().zip(p).zip(q).zip(r) {
                *sum = a * p + b * q + c * r;
            }
            row
        };
        Self(self.0.map(sum))
    }
}

pub(super) fn cross([a, b, c]: [f64; 3], [x, y, z]: [f64; 3]) -> [f64; 3] {
    [b * z - c * y, c * x - a * z, a * y - b * x]
}

/// The middle of some points and how far they lie from it.
struct Frame {
    middle: Point,
    scale: f64,
}

impl Frame {
    fn of(points: &[Point]) -> Option<Self> {
        let count = points.len() as f64;
        let sum = points.iter().fold((0.0, 0.0), |sum, point| (sum.0 + point.0, sum.1 + point.1));
        let middle = (sum.0 / count, sum.1 / count);
        let spread: f64 = points.iter().map(|point| (point.0 - middle.0).hypot(point.1 - middle.1)).sum::<f64>() / count;
        (spread.is_finite() && spread > 0.0).then(|| Self { middle, scale: std::f64::consts::SQRT_2 / spread })
    }

    fn inside(&self, (x, y): Point) -> Point {
        ((x - self.middle.0) * self.scale, (y - self.middle.1) * self.scale)
    }

    fn inwards(&self) -> Homography {
        let ((x, y), s) = (self.middle, self.scale);
        Homography([[s, 0.0, -x * s], [0.0, s, -y * s], [0.0, 0.0, 1.0]])
    }

    fn outwards(&self) -> Homography {
        let ((x, y), s) = (self.middle, 1.0 / self.scale);
        Homography([[s, 0.0, x], [0.0, s, y], [0.0, 0.0, 1.0]])
    }
}
