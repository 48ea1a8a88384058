//! Drawings: laid out side by side, and painted.

use std::rc::Rc;

use krilla::color::luma;
use krilla::geom::{Path, PathBuilder};
use krilla::paint::{Fill as Paint, LineCap, LineJoin, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::tagging::Tag;
use secundine_domain::examination::{Fill, PathStep, Side, Trace, What};

use super::flow::Flow;
use super::paint::SOFT;
use super::strip::{Mark, Strip};
use super::tags::Tags;
use super::text::Face;
use super::{Align, Picture, WIDTH};

/// Widest drawing (80 mm) and tallest, in points.
const WIDEST: f32 = 226.8;
const TALLEST: f32 = 205.0;
const GUTTER: f32 = 18.0;
/// Light grey that a copier keeps apart from white.
const TINT: u8 = 222;
/// Dash and space between, in mm of the drawing.
const DASH: [f32; 2] = [4.0, 3.5];

/// A strip for every two drawings, each with its line below.
pub(super) fn strips(pictures: &[Picture], flow: &mut Flow<'_>) -> Vec<Strip> {
    pictures.chunks(2).map(|pair| strip(pair, flow)).collect()
}

fn strip(pair: &[Picture], flow: &mut Flow<'_>) -> Strip {
    // What is said of it stands with it.
    let mut strip = Strip { keep: true, ..Strip::default() };
    let column = (WIDTH - GUTTER) / 2.0;
    let mut x = 0.0;
    for Picture { side, caption, alt } in pair {
        let (width, height) = (side.view.width.max(1.0) as f32, side.view.height.max(1.0) as f32);
        let scale = (WIDEST / width).min(TALLEST / height);
        let node = flow.tags.add(Tags::ROOT, Tag::Figure(Some(alt.clone())));
        strip.marks.push(Mark::Picture { side: Rc::new(side.clone()), x, scale, node: Some(node) });
        let below = flow.tags.add(Tags::ROOT, Tag::P);
        let text = flow.setter.set_short(caption, Face::FOOTER, column, Align::Left, 2);
        let mut top = height * scale + 3.0;
        for line in 0..text.lines() {
            strip.marks.push(Mark::Line { text: Rc::clone(&text), line, x, top, node: Some(below) });
            top += Face::FOOTER.leading;
        }
        strip.height = strip.height.max(top);
        x += column + GUTTER;
    }
    strip
}

/// Paints one side with its upper left corner there, in points, so many points for each of its mm.
pub(super) fn draw(surface: &mut Surface<'_>, (side, left, top, scale): (&Side, f32, f32, f32)) {
    for trace in &side.traces {
        let place = |x: f64, y: f64| (left + (x - side.view.x) as f32 * scale, top + (y - side.view.y) as f32 * scale);
        let Some(path) = path(trace, &place) else { continue };
        let ink = luma::Color::new(if is_soft(trace.what) { SOFT } else { 0 });
        let tone = match trace.fill {
            Fill::None => None,
            Fill::Ground => Some(luma::Color::white()),
            Fill::Tint => Some(luma::Color::new(TINT)),
            Fill::Solid => Some(ink),
        };
        surface.set_fill(tone.map(|tone| Paint { paint: tone.into(), ..Paint::default() }));
        let dash = || StrokeDash { array: DASH.map(|mm| mm * scale).to_vec(), offset: 0.0 };
        let stroke = Stroke {
            paint: ink.into(),
            width: trace.weight as f32 * scale,
            line_cap: LineCap::Round,
            line_join: LineJoin::Round,
            dash: trace.dashed.then(dash),
            ..Stroke::default()
        };
        surface.set_stroke((trace.weight > 0.0).then_some(stroke));
        surface.draw_path(&path);
    }
    surface.set_fill(None);
    surface.set_stroke(None);
}

/// What is only hinted stands back.
fn is_soft(what: What) -> bool {
    matches!(what, What::Membranes | What::Vessel | What::Furrow)
}

fn path(trace: &Trace, place: &dyn Fn(f64, f64) -> (f32, f32)) -> Option<Path> {
    let mut path = PathBuilder::new();
    for step in &trace.steps {
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
