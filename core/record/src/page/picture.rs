//! The two sides of a placenta, side by side.

use std::rc::Rc;

use krilla::tagging::Tag;
use secundine_domain::examination::{Fill, Side, Trace, What};

use super::flow::Flow;
use super::strip::{Mark, Strip};
use super::tags::Tags;
use super::text::Face;
use super::{Align, Drawn, Picture, Tone, WIDTH};

/// Widest drawing (80 mm) and tallest, in points.
const WIDEST: f32 = 226.8;
const TALLEST: f32 = 205.0;
const GUTTER: f32 = 18.0;
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
        strip.marks.push(Mark::Drawn { shapes: shapes(side, scale), x, node: Some(node) });
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

/// One side, so many points for each of its mm.
fn shapes(side: &Side, scale: f32) -> Rc<[Drawn]> {
    let place = |x: f64, y: f64| ((x - side.view.x) * f64::from(scale), (y - side.view.y) * f64::from(scale));
    let shape = |trace: &Trace| {
        let ink = if is_soft(trace.what) { Tone::Soft } else { Tone::Ink };
        let fill = match trace.fill {
            Fill::None => None,
            Fill::Ground => Some(Tone::Ground),
            Fill::Tint => Some(Tone::Tint),
            Fill::Solid => Some(ink),
        };
        Drawn {
            steps: trace.steps.iter().map(|step| step.each(place)).collect(),
            weight: trace.weight as f32 * scale,
            ink,
            dash: trace.dashed.then(|| DASH.map(|mm| mm * scale)),
            fill,
        }
    };
    side.traces.iter().map(shape).collect()
}

/// What is only hinted stands back.
fn is_soft(what: What) -> bool {
    matches!(what, What::Membranes | What::Vessel | What::Furrow)
}
