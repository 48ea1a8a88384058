//! A placenta drawn as a tree, from the drawing of its examination: the cord is the trunk, the vessels are the branches. What a
//! clinician looks for on that drawing (tears, lumps, clamps, a bar of 5 cm) is left out, and nothing is put in.

use std::f64::consts::FRAC_PI_2;

use secundine_domain::chart::Chart;
use secundine_domain::examination::{PathStep, Side, Trace, What, sketch};

use crate::page::{Drawing, Drawn, Tone, WIDTH, circle};
use crate::words::Words;

/// Tallest beside the words for one baby, and for several; widest of one; in points. Ours, as is every weight and tone.
const TALLEST: f64 = 280.0;
const LOW: f64 = 150.0;
const WIDEST: f64 = 300.0;
/// How far the pale ground reaches beyond the disc.
const GLOW: f64 = 1.09;

/// Those whose cord was looked at, side by side; none where none was.
pub(super) fn keepsake(chart: &Chart, words: &Words) -> Option<Drawing> {
    let drawn = |placenta: &u8| tree(&sketch(chart, *placenta).fetal);
    let trees: Vec<Vec<Drawn>> = chart.examinations.keys().filter_map(drawn).collect();
    let count = f64::from(u32::try_from(trees.len()).ok().filter(|count| *count > 0)?);
    let room = (f64::from(WIDTH) / count).min(WIDEST);
    let tallest = if chart.babies.len() > 1 { LOW } else { TALLEST };
    let trees: Vec<(Vec<Drawn>, f64)> = trees.into_iter().map(|tree| fitted(tree, (room - 10.0, tallest))).collect();
    let height = trees.iter().map(|(_, height)| *height).fold(0.0, f64::max);
    let place = |(n, (tree, tall)): (usize, (Vec<Drawn>, f64))| {
        let left = room * (f64::from(u32::try_from(n).unwrap_or(0)) + 0.5);
        tree.into_iter().map(move |shape| each(shape, &|x, y| (x + left, y + (height - tall))))
    };
    let shapes = trees.into_iter().enumerate().flat_map(place).collect();
    let alt = words.plain("parents-drawing-alt");
    Some(Drawing { width: (room * count) as f32, height: height as f32, shapes, labels: Vec::new(), alt })
}

/// A line with a bud in the middle.
pub(super) fn ornament() -> Drawing {
    const HALF: f64 = 70.0;
    let wine = |steps, weight, fill| Drawn { steps, weight, ink: Tone::Wine, dash: None, fill };
    let line = |from: f64, to: f64| wine(vec![PathStep::Move { x: from, y: 4.0 }, PathStep::Line { x: to, y: 4.0 }], 0.7, None);
    let bud = wine(circle((HALF, 4.0), 3.0), 0.7, Some(Tone::Rose));
    let shapes = vec![line(0.0, HALF - 8.0), bud, line(HALF + 8.0, 2.0 * HALF)];
    Drawing { width: 2.0 * HALF as f32, height: 8.0, shapes, labels: Vec::new(), alt: String::new() }
}

/// In mm, turned so that a single cord leads down; none without a cord and vessels.
fn tree(side: &Side) -> Option<Vec<Drawn>> {
    let of = |what: What| side.traces.iter().filter(move |trace| trace.what == what);
    let cords: Vec<&Trace> = of(What::Cord).collect();
    of(What::Vessel).next()?;
    let trunk = cords.first()?;
    let turn = match cords.len() {
        1 => middle(trunk).and_then(|(x, y)| Some((x, y, middle(of(What::Outline).next()?)?))),
        _ => None,
    };
    let turn = turn.map_or(0.0, |(x, y, (from_x, from_y))| FRAC_PI_2 - (y - from_y).atan2(x - from_x));
    let (sin, cos) = turn.sin_cos();
    let shape = |trace: &Trace, weight: f64, ink: Tone, fill: Option<Tone>| Drawn {
        steps: trace.steps.iter().map(|step| step.each(|x, y| (x * cos - y * sin, x * sin + y * cos))).collect(),
        weight: weight as f32,
        ink,
        dash: None,
        fill,
    };
    let mut shapes: Vec<Drawn> = Vec::new();
    let glow = |trace| each(shape(trace, 0.0, Tone::Wine, Some(Tone::Blush)), &|x, y| (x * GLOW, y * GLOW));
    shapes.extend(of(What::Outline).map(glow));
    // A lobe whose vessels are torn would lie there by itself.
    let lobes = of(What::ExtraLobe).filter(|_| of(What::TornVessel).next().is_none());
    shapes.extend(lobes.chain(of(What::Outline)).map(|trace| shape(trace, 1.2, Tone::Wine, Some(Tone::Rose))));
    let vessels = of(What::Vessel).chain(of(What::BareVessel));
    shapes.extend(vessels.map(|trace| shape(trace, trace.weight * 2.2 - 0.4, Tone::Wine, None)));
    shapes.extend(cords.iter().map(|trace| shape(trace, 1.2, Tone::Wine, Some(Tone::Blush))));
    Some(shapes)
}

/// The middle of the points of a shape.
fn middle(trace: &Trace) -> Option<(f64, f64)> {
    let ends: Vec<(f64, f64)> = trace.steps.iter().filter_map(|step| step.end()).collect();
    let count = f64::from(u32::try_from(ends.len()).ok().filter(|count| *count > 0)?);
    Some((ends.iter().map(|(x, _)| x).sum::<f64>() / count, ends.iter().map(|(_, y)| y).sum::<f64>() / count))
}

/// From mm to points, so that it fits so wide and tall; its middle at 0, its top at 0, and how tall it is.
fn fitted(shapes: Vec<Drawn>, (room, tallest): (f64, f64)) -> (Vec<Drawn>, f64) {
    let ends = || shapes.iter().flat_map(|shape| &shape.steps).filter_map(|step| step.end());
    let least = |of: fn((f64, f64)) -> f64| ends().map(of).fold(f64::INFINITY, f64::min);
    let most = |of: fn((f64, f64)) -> f64| ends().map(of).fold(f64::NEG_INFINITY, f64::max);
    let (left, right, top, bottom) = (least(|end| end.0), most(|end| end.0), least(|end| end.1), most(|end| end.1));
    let scale = (room / (right - left).max(1.0)).min(tallest / (bottom - top).max(1.0));
    let middle = f64::midpoint(left, right);
    let fit = |shape| each(shape, &|x, y| ((x - middle) * scale, (y - top) * scale));
    (shapes.into_iter().map(fit).collect(), (bottom - top) * scale)
}

fn each(shape: Drawn, place: &dyn Fn(f64, f64) -> (f64, f64)) -> Drawn {
    Drawn { steps: shape.steps.into_iter().map(|step| step.each(place)).collect(), ..shape }
}
