//! The outlines of notices.

use std::f32::consts::TAU;

use krilla::geom::{Path, PathBuilder};

use super::model::Shape;

/// The outline in a square with its top left corner at (`x`, `y`), in points.
pub(super) fn outline(shape: Shape, x: f32, y: f32, size: f32) -> Option<Path> {
    let (radius, centre_x, centre_y) = (size / 2.0, x + size / 2.0, y + size / 2.0);
    match shape {
        Shape::Octagon => polygon(8, TAU / 16.0, radius * 1.04, centre_x, centre_y),
        // The centre of a triangle is below the middle of its height.
        Shape::Triangle => polygon(3, -TAU / 4.0, radius * 1.2, centre_x, centre_y + radius * 0.25),
        Shape::Circle => circle(radius, centre_x, centre_y),
    }
}

fn polygon(sides: u8, turn: f32, radius: f32, x: f32, y: f32) -> Option<Path> {
    let mut path = PathBuilder::new();
    for side in 0..sides {
        let (sin, cos) = (turn + TAU * f32::from(side) / f32::from(sides)).sin_cos();
        let (x, y) = (x + radius * cos, y + radius * sin);
        if side == 0 { path.move_to(x, y) } else { path.line_to(x, y) }
    }
    path.close();
    path.finish()
}

fn circle(r: f32, x: f32, y: f32) -> Option<Path> {
    // The handle length that makes four cubic curves a circle.
    let h = r * 0.552_285;
    let mut path = PathBuilder::new();
    path.move_to(x + r, y);
    path.cubic_to(x + r, y + h, x + h, y + r, x, y + r);
    path.cubic_to(x - h, y + r, x - r, y + h, x - r, y);
    path.cubic_to(x - r, y - h, x - h, y - r, x, y - r);
    path.cubic_to(x + h, y - r, x + r, y - h, x + r, y);
    path.close();
    path.finish()
}
