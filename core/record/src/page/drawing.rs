//! Drawings: laid out, and painted.

use std::rc::Rc;

use krilla::color::{luma, rgb};
use krilla::geom::{Path, PathBuilder};
use krilla::paint::{Fill, LineCap, LineJoin, Paint, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::tagging::Tag;
use secundine_domain::examination::PathStep;

use super::flow::Flow;
use super::paint::SOFT;
use super::strip::{Mark, Strip};
use super::tags::Tags;
use super::text::Face;
use super::{Align, Drawing, Drawn, Label, Tone, WIDTH};

/// Light grey that a copier keeps apart from white.
const TINT: u8 = 222;

/// The drawing as one strip, in the middle of the text area.
pub(super) fn strip(drawing: &Drawing, flow: &mut Flow<'_>) -> Strip {
    // One that says nothing is an ornament.
    let node = (!drawing.alt.is_empty()).then(|| flow.tags.add(Tags::ROOT, Tag::Figure(Some(drawing.alt.clone()))));
    let left = (WIDTH - drawing.width) / 2.0;
    let mut marks = vec![Mark::Drawn { shapes: Rc::from(drawing.shapes.as_slice()), x: left, node }];
    for Label { x, y, text, align, bold } in &drawing.labels {
        let face = Face { bold: *bold, ..Face::CHART };
        let text = flow.setter.set_short(text, face, WIDTH, Align::Left, 1);
        let before = match align {
            Align::Left => 0.0,
            Align::Centre => text.width() / 2.0,
            Align::Right => text.width(),
        };
        if text.lines() > 0 {
            let (x, top) = (left + x - before, y - face.leading / 2.0);
            marks.push(Mark::Line { text, line: 0, x, top, node });
        }
    }
    // What is said of it stands with it.
    Strip { height: drawing.height, keep: true, marks, ..Strip::default() }
}

/// Paints shapes whose corner lies there, in points.
pub(super) fn draw(surface: &mut Surface<'_>, shapes: &[Drawn], (left, top): (f32, f32)) {
    for shape in shapes {
        let place = |x: f64, y: f64| (left + x as f32, top + y as f32);
        let Some(path) = path(&shape.steps, &place) else { continue };
        surface.set_fill(shape.fill.map(|tone| Fill { paint: paint(tone), ..Fill::default() }));
        let stroke = Stroke {
            paint: paint(shape.ink),
            width: shape.weight,
            line_cap: LineCap::Round,
            line_join: LineJoin::Round,
            dash: shape.dash.map(|dash| StrokeDash { array: dash.to_vec(), offset: 0.0 }),
            ..Stroke::default()
        };
        surface.set_stroke((shape.weight > 0.0).then_some(stroke));
        surface.draw_path(&path);
    }
    surface.set_fill(None);
    surface.set_stroke(None);
}

fn paint(tone: Tone) -> Paint {
    match tone {
        Tone::Ink => luma::Color::black().into(),
        Tone::Soft => luma::Color::new(SOFT).into(),
        Tone::Tint => luma::Color::new(TINT).into(),
        Tone::Ground => luma::Color::white().into(),
        Tone::Wine => rgb::Color::new(122, 46, 52).into(),
        Tone::Rose => rgb::Color::new(236, 205, 198).into(),
        Tone::Blush => rgb::Color::new(249, 237, 232).into(),
    }
}

fn path(steps: &[PathStep], place: &dyn Fn(f64, f64) -> (f32, f32)) -> Option<Path> {
    let mut path = PathBuilder::new();
    for step in steps {
        match *step {
            PathStep::Move { x, y } => {
                let (x, y) = place(x, y);
                path.move_to(x, y);
            }
            PathStep::Line { x, y } => {
                let (x, y) = place(x, y);
                path.line_to(x, y);
            }
            PathStep::Curve { x1, y1, x2, y2, x, y } => {
                let ((x1, y1), (x2, y2), (x, y)) = (place(x1, y1), place(x2, y2), place(x, y));
                path.cubic_to(x1, y1, x2, y2, x, y);
            }
            PathStep::Close => path.close(),
        }
    }
    path.finish()
}
