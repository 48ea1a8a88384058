//! One lane: its scale, the protocol's lines, its readings.

use secundine_domain::picture::{PictureLane, PictureLimit, PictureReading, PictureSeries, Shape as Form};
use secundine_domain::protocol::Level;

use super::axis::Axis;
use super::canvas::{Canvas, Pen, Point};
use super::{name, number, unit};
use crate::page::{Align, Drawn, Shape, Tone, outline};

/// Least way between two values, and between two labels above each other, in points.
const VALUES_APART: f32 = 15.0;
const LABELS_APART: f32 = 8.5;
const DOT: f32 = 1.9;
const ICON: f32 = 7.2;

/// A lane whose upper edge lies at `top`.
pub(super) fn draw(canvas: &mut Canvas, axis: &Axis, lane: &PictureLane, (top, height): (f32, f32)) {
    let span = (lane.high - lane.low).max(f64::MIN_POSITIVE);
    let y = |value: f64| top + height * (1.0 - ((value - lane.low) / span) as f32);
    let (left, right) = axis.edges();
    for value in &lane.grid {
        canvas.line(&[(left, y(*value)), (right, y(*value))], Pen::HAIR);
        canvas.label((left - 4.0, y(*value)), number(canvas, *value), Align::Right, false);
    }
    canvas.line(&[(left, top), (left, top + height)], Pen::EDGE);
    limits(canvas, lane, (left, right), &y);
    names(canvas, lane, top);
    let several = lane.series.len() > 1;
    let mut taken: Vec<Point> = Vec::new();
    for (n, series) in lane.series.iter().enumerate() {
        let inside: Vec<&PictureReading> = series.readings.iter().filter(|reading| axis.holds(reading.point.at_ms)).collect();
        let points: Vec<Point> = inside.iter().map(|reading| (axis.x(reading.point.at_ms), y(reading.value))).collect();
        match series.shape {
            Form::Line => {
                canvas.line(&points, Pen { weight: 0.7, ..Pen::CURVE });
                points.iter().for_each(|point| mark(canvas, *point, n, several));
            }
            Form::Steps => steps(canvas, &points, (n, y(lane.low), right)),
            Form::Apart => points.iter().for_each(|point| canvas.dot(*point, DOT, Tone::Ink)),
        }
        // The second of two pressures stands below its marks.
        let beside = if several && n > 0 { 7.5 } else { -7.0 };
        for (reading, (x, y)) in inside.iter().zip(&points).filter(|_| n == 0 || series.shape == Form::Line) {
            let (at, align) = match series.shape {
                Form::Steps => ((x - 2.5, y + 4.5), Align::Right),
                _ if y + beside > top + height - 1.0 => ((x + 5.0, *y), Align::Left),
                _ if y + beside < top - 2.0 => ((*x, y + 7.5), Align::Centre),
                _ => ((*x, y + beside), Align::Centre),
            };
            if taken.iter().all(|(x, y)| (at.0 - x).abs() >= VALUES_APART || (at.1 - y).abs() >= LABELS_APART) {
                canvas.value(at, number(canvas, reading.value), align);
                taken.push(at);
            }
        }
    }
}

/// What was read, in which unit, and the mark of each where there are two.
fn names(canvas: &mut Canvas, lane: &PictureLane, top: f32) {
    let mut y = top + 5.0;
    name(canvas, y, canvas.words.say(&lane.name), true);
    y += 10.0;
    name(canvas, y, unit(canvas, lane), false);
    if lane.series.len() < 2 {
        return;
    }
    for (n, PictureSeries { name: said, shape, .. }) in lane.series.iter().enumerate() {
        y += 10.0;
        match shape {
            Form::Steps => canvas.line(&[(1.0, y), (12.0, y)], if n == 0 { Pen::CURVE } else { Pen::SECOND }),
            _ => mark(canvas, (6.0, y), n, true),
        }
        canvas.label((16.0, y), canvas.words.say(said), Align::Left, false);
    }
}

/// A point; of two pressures a wedge that points at the value, down on the upper and up on the lower.
fn mark(canvas: &mut Canvas, (x, y): Point, series: usize, several: bool) {
    match (several, series) {
        (false, _) => canvas.dot((x, y), DOT, Tone::Ink),
        (true, 0) => canvas.line(&[(x - 2.4, y - 3.2), (x, y), (x + 2.4, y - 3.2)], Pen::CURVE),
        (true, _) => canvas.line(&[(x - 2.4, y + 3.2), (x, y), (x + 2.4, y + 3.2)], Pen::CURVE),
    }
}

/// A sum that stands until the next amount, from nothing; the whole of it is tinted.
fn steps(canvas: &mut Canvas, points: &[Point], (series, bottom, right): (usize, f32, f32)) {
    let Some((first, _)) = points.first() else { return };
    let mut line = vec![(*first, bottom)];
    for (x, y) in points {
        line.push((*x, line.last().map_or(bottom, |(_, y)| *y)));
        line.push((*x, *y));
    }
    line.push((right, line.last().map_or(bottom, |(_, y)| *y)));
    if series == 0 {
        let mut area = line.clone();
        area.push((right, bottom));
        canvas.area(&area, Tone::Tint);
    }
    canvas.line(&line, if series == 0 { Pen::CURVE } else { Pen::SECOND });
}

/// The protocol's lines, each with its sign and the comparison that passes it.
fn limits(canvas: &mut Canvas, lane: &PictureLane, (left, right): (f32, f32), y: &dyn Fn(f64) -> f32) {
    let mut last = f32::INFINITY;
    for PictureLimit { value, level, at, .. } in &lane.limits {
        let (shape, dash) = match level {
            Level::Note => (Shape::Circle, [0.8, 2.2]),
            Level::Caution => (Shape::Triangle, [3.0, 2.0]),
            Level::Limit => (Shape::Octagon, [7.0, 2.0]),
        };
        let line = y(*value);
        canvas.line(&[(left, line), (right, line)], Pen { weight: 0.7, ink: Tone::Ink, dash: Some(dash) });
        let corner = (f64::from(right + 2.0), f64::from(line - ICON / 2.0));
        // So small, an octagon would look round.
        let fill = (*level == Level::Limit).then_some(Tone::Ink);
        canvas.shapes.push(Drawn { fill, ..outline(shape, corner, ICON.into(), 0.7) });
        // Lines come from below: a label never stands in the one under it.
        last = line.min(last - LABELS_APART);
        canvas.label((right + 12.0, last), canvas.words.say(at), Align::Left, false);
    }
}
