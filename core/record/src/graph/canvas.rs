//! Shapes and words, gathered.

use secundine_domain::examination::PathStep;

use crate::page::{Align, Drawn, Label, Tone, circle};
use crate::words::Words;

/// What is drawn so far, in points.
pub(super) struct Canvas<'a> {
    pub shapes: Vec<Drawn>,
    pub labels: Vec<Label>,
    pub words: &'a Words,
}

/// Width of a digit, in points: all are alike.
const DIGIT: f32 = 4.4;

/// A point on it.
pub(super) type Point = (f32, f32);

/// A line as it is drawn.
#[derive(Clone, Copy)]
pub(super) struct Pen {
    pub weight: f32,
    pub ink: Tone,
    pub dash: Option<[f32; 2]>,
}

impl Pen {
    pub const HAIR: Self = Self { weight: 0.35, ink: Tone::Tint, dash: None };
    pub const GUIDE: Self = Self { weight: 0.4, ink: Tone::Soft, dash: Some([0.5, 2.5]) };
    pub const EDGE: Self = Self { weight: 0.6, ink: Tone::Soft, dash: None };
    pub const CURVE: Self = Self { weight: 1.1, ink: Tone::Ink, dash: None };
    pub const SECOND: Self = Self { weight: 0.8, ink: Tone::Ink, dash: Some([2.5, 1.8]) };
    pub const BAR: Self = Self { weight: 3.0, ink: Tone::Ink, dash: None };
}

impl<'a> Canvas<'a> {
    pub fn new(words: &'a Words) -> Self {
        Self { shapes: Vec::new(), labels: Vec::new(), words }
    }

    pub fn line(&mut self, points: &[Point], pen: Pen) {
        self.shapes.push(Drawn { steps: straight(points), weight: pen.weight, ink: pen.ink, dash: pen.dash, fill: None });
    }

    /// An area without an outline.
    pub fn area(&mut self, points: &[Point], fill: Tone) {
        let mut steps = straight(points);
        steps.push(PathStep::Close);
        self.shapes.push(Drawn { steps, weight: 0.0, ink: Tone::Ink, dash: None, fill: Some(fill) });
    }

    /// A round mark.
    pub fn dot(&mut self, (x, y): Point, radius: f32, fill: Tone) {
        let steps = circle((x.into(), y.into()), radius.into());
        self.shapes.push(Drawn { steps, weight: 0.8, ink: Tone::Ink, dash: None, fill: Some(fill) });
    }

    /// A number beside its mark, on a ground of its own that keeps lines out of it.
    pub fn value(&mut self, (x, y): Point, text: String, align: Align) {
        let width = text.chars().count() as f32 * DIGIT;
        let left = match align {
            Align::Left => x,
            Align::Centre => x - width / 2.0,
            Align::Right => x - width,
        };
        self.area(&[(left, y - 3.6), (left + width, y - 3.6), (left + width, y + 3.6), (left, y + 3.6)], Tone::Ground);
        self.label((x, y), text, align, false);
    }

    pub fn label(&mut self, (x, y): Point, text: String, align: Align, bold: bool) {
        self.labels.push(Label { x, y, text, align, bold });
    }
}

fn straight(points: &[Point]) -> Vec<PathStep> {
    let step = |(n, (x, y)): (usize, &Point)| {
        let (x, y) = (f64::from(*x), f64::from(*y));
        if n == 0 { PathStep::Move { x, y } } else { PathStep::Line { x, y } }
    };
    points.iter().enumerate().map(step).collect()
}
