//! The outlines of notices.

use std::f64::consts::TAU;

use secundine_domain::examination::PathStep;

use super::model::{Drawn, Shape, Tone};

/// The outline in a square with its upper left corner at (`x`, `y`), in points.
pub(crate) fn outline(shape: Shape, (x, y): (f64, f64), size: f64, weight: f32) -> Drawn {
    let (radius, middle) = (size / 2.0, (x + size / 2.0, y + size / 2.0));
    let steps = match shape {
        Shape::Octagon => polygon(8, TAU / 16.0, radius * 1.04, middle),
        // The centre of a triangle is below the middle of its height.
        Shape::Triangle => polygon(3, -TAU / 4.0, radius * 1.2, (middle.0, middle.1 + radius * 0.25)),
        Shape::Circle => circle(middle, radius),
    };
    Drawn { steps, weight, ink: Tone::Ink, dash: None, fill: None }
}

fn polygon(sides: u8, turn: f64, radius: f64, (x, y): (f64, f64)) -> Vec<PathStep> {
    let corner = |side: u8| {
        let (sin, cos) = (turn + TAU * f64::from(side) / f64::from(sides)).sin_cos();
        let (x, y) = (x + radius * cos, y + radius * sin);
        if side == 0 { PathStep::Move { x, y } } else { PathStep::Line { x, y } }
    };
    (0..sides).map(corner).chain([PathStep::Close]).collect()
}

/// A circle, by four curves.
pub(crate) fn circle((x, y): (f64, f64), r: f64) -> Vec<PathStep> {
    // The handle length that makes four cubic curves a circle.
    let h = r * 0.552_285;
    let curve = |x1, y1, x2, y2, x, y| PathStep::Curve { x1, y1, x2, y2, x, y };
    vec![
        PathStep::Move { x: x + r, y },
        curve(x + r, y + h, x + h, y + r, x, y + r),
        curve(x - h, y + r, x - r, y + h, x - r, y),
        curve(x - r, y - h, x - h, y - r, x, y - r),
        curve(x + h, y - r, x + r, y - h, x + r, y),
        PathStep::Close,
    ]
}
