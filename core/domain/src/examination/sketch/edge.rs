//! The edge of the disc as a curve, and smooth lines through points. All lengths in mm, right and down from the middle.

use std::f64::consts::TAU;
use std::ops::{Add, Mul, Sub};

use super::PathStep;

/// A point, or the way from one to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Point {
    pub x: f64,
    pub y: f64,
}

impl Point {
    pub const MIDDLE: Self = Self { x: 0.0, y: 0.0 };

    pub fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    pub fn length(self) -> f64 {
        self.x.hypot(self.y)
    }

    /// In the same direction, 1 mm long; to the right where there is no direction.
    pub fn unit(self) -> Self {
        let length = self.length();
        if length > 1e-9 { self * (1.0 / length) } else { Self::new(1.0, 0.0) }
    }

    /// Turned by a right angle.
    pub fn across(self) -> Self {
        Self::new(-self.y, self.x)
    }

    pub fn to(self, other: Self) -> f64 {
        (other - self).length()
    }
}

impl Add for Point {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y)
    }
}

impl Sub for Point {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y)
    }
}

impl Mul<f64> for Point {
    type Output = Self;
    fn mul(self, by: f64) -> Self {
        Self::new(self.x * by, self.y * by)
    }
}

/// The edge of a disc: an ellipse, or two like lobes side by side. A place on it is told by an angle `t`, 0 to the right.
#[derive(Clone, Copy, Debug)]
pub(super) struct Edge {
    pub half_length: f64,
    pub half_breadth: f64,
    /// Of two lobes: where their waist leaves them highest. Dividing by it makes them as broad as the disc is.
    fullest: Option<f64>,
}

/// How deep and how wide the waist of two lobes is, as shares of half the breadth and half the length: our own choice.
const WAIST: (f64, f64) = (0.5, 0.4);
/// Points at which the nearest one is looked for before it is found exactly.
const SAMPLES: u32 = 360;

fn rounded(along: f64) -> f64 {
    (1.0 - along * along).max(0.0).sqrt()
}

fn waisted(along: f64) -> f64 {
    let (deep, wide) = WAIST;
    rounded(along) * (1.0 - deep * (-(along / wide).powi(2)).exp())
}

impl Edge {
    pub fn new(half_length: f64, half_breadth: f64, two_lobes: bool) -> Self {
        let highest = || (0..=200).map(|n| waisted(f64::from(n) / 200.0)).fold(0.0, f64::max);
        Self { half_length, half_breadth, fullest: two_lobes.then(highest) }
    }

    pub fn smaller_half(&self) -> f64 {
        self.half_length.min(self.half_breadth)
    }

    pub fn at(&self, t: f64) -> Point {
        let (sin, cos) = t.sin_cos();
        Point::new(self.half_length * cos, self.half_breadth * sin.signum() * self.height(cos))
    }

    /// Height of the edge above the length, as a share of half the breadth, at a share of half the length.
    fn height(&self, along: f64) -> f64 {
        self.fullest.map_or_else(|| rounded(along), |fullest| waisted(along) / fullest)
    }

    /// Square to the edge, outwards, 1 mm long.
    pub fn outward(&self, t: f64) -> Point {
        let along = self.at(t + 1e-4) - self.at(t - 1e-4);
        (along.across() * -1.0).unit()
    }

    pub fn contains(&self, point: Point) -> bool {
        let along = point.x / self.half_length;
        along.abs() < 1.0 && point.y.abs() < self.half_breadth * self.height(along)
    }

    /// The place on the edge that is nearest to a point.
    pub fn nearest(&self, point: Point) -> f64 {
        let step = TAU / f64::from(SAMPLES);
        let far = |t: f64| self.at(t).to(point);
        let first = (0..SAMPLES).map(|n| f64::from(n) * step).min_by(|one, other| far(*one).total_cmp(&far(*other)));
        let near = first.unwrap_or(0.0);
        let (mut low, mut high) = (near - step, near + step);
        for _ in 0..40 {
            let third = (high - low) / 3.0;
            if far(low + third) < far(high - third) { high -= third } else { low += third }
        }
        f64::midpoint(low, high)
    }

    /// Distance of a point from the edge, mm.
    pub fn away(&self, point: Point) -> f64 {
        self.at(self.nearest(point)).to(point)
    }

    /// The point inside that lies so far from the edge, counted from this place on it; the innermost there where it is too far.
    pub fn inwards(&self, t: f64, distance: f64) -> Point {
        let (from, inward) = (self.at(t), self.outward(t) * -1.0);
        let (mut low, mut high) = (0.0, distance.min(self.smaller_half()));
        for _ in 0..40 {
            let middle = f64::midpoint(low, high);
            // Past the middle of the disc another place on the edge is the nearest, and the way no longer grows.
            if self.away(from + inward * middle) >= middle - 1e-6 { low = middle } else { high = middle }
        }
        from + inward * low
    }

    /// Points round the edge, each so far outside it, from one angle on over a share of the way round.
    pub fn ring(&self, from: f64, share: f64, points: u32, outside: impl Fn(f64) -> f64) -> Vec<Point> {
        let angle = |n: u32| from + TAU * share * f64::from(n) / f64::from(points);
        (0..=points).map(|n| self.at(angle(n)) + self.outward(angle(n)) * outside(angle(n))).collect()
    }
}

/// Half a turn at most, whichever way round.
pub(super) fn between(one: f64, other: f64) -> f64 {
    let turn = (one - other).rem_euclid(TAU);
    turn.min(TAU - turn)
}

/// A smooth line through the points.
pub(super) fn smooth(points: &[Point], closed: bool) -> Vec<PathStep> {
    let count = points.len();
    let point = |n: usize, by: isize| -> Point {
        let at = n.checked_add_signed(by);
        let inside = at.filter(|at| *at < count);
        let found = match (closed, at) {
            (true, _) => points.get((n + count).saturating_add_signed(by) % count.max(1)),
            (false, _) => inside.and_then(|at| points.get(at)).or_else(|| points.get(n.min(count.saturating_sub(1)))),
        };
        found.copied().unwrap_or(Point::MIDDLE)
    };
    let Some(first) = points.first() else { return Vec::new() };
    let mut steps = vec![PathStep::Move { x: first.x, y: first.y }];
    let segments = if closed { count } else { count.saturating_sub(1) };
    for n in 0..segments {
        let (before, from, to, after) = (point(n, -1), point(n, 0), point(n, 1), point(n + 1, 1));
        let (one, two) = (from + (to - before) * (1.0 / 6.0), to - (after - from) * (1.0 / 6.0));
        steps.push(PathStep::Curve { x1: one.x, y1: one.y, x2: two.x, y2: two.y, x: to.x, y: to.y });
    }
    if closed {
        steps.push(PathStep::Close);
    }
    steps
}

/// Straight from point to point.
pub(super) fn straight(points: &[Point], closed: bool) -> Vec<PathStep> {
    let step = |(n, point): (usize, &Point)| match n {
        0 => PathStep::Move { x: point.x, y: point.y },
        _ => PathStep::Line { x: point.x, y: point.y },
    };
    let close = closed.then_some(PathStep::Close);
    points.iter().enumerate().map(step).chain(close).collect()
}

/// A round spot.
pub(super) fn round(middle: Point, radius: f64) -> Vec<PathStep> {
    let edge = Edge::new(radius, radius, false);
    let mut points = edge.ring(0.0, 1.0, 12, |_| 0.0);
    points.pop();
    smooth(&points.into_iter().map(|point| middle + point).collect::<Vec<_>>(), true)
}
