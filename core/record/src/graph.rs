//! What was read of the mother, and what happened, drawn over one axis of time.

use secundine_domain::message::{Arg, Message};
use secundine_domain::picture::{ChartPicture, PictureLane, PictureReading, chart_picture};

use crate::document::Source;
use crate::page::{Align, Block, Drawing, Span, WIDTH};

mod axis;
mod canvas;
mod events;
mod lane;
mod readings;

use axis::Axis;
use canvas::Canvas;

/// Left edge of the plot, its width, and the room right of it for the protocol's lines, in points. Ours, as all measures here.
const LEFT: f32 = 112.0;
const RIGHT: f32 = 46.0;
/// Height of the signs with the bar of the third stage; of the lane of blood and of each other; between lanes; of the axis.
const SIGNS: f32 = 28.0;
const BLOOD: f32 = 60.0;
const LANE: f32 = 38.0;
const GAP: f32 = 12.0;
const AXIS: f32 = 24.0;
/// Readings of one series that the words for the drawing tell one by one.
const TOLD: usize = 8;

/// The drawing, its note and its key, and the same readings as a table; nothing before anything was read of the mother.
pub(crate) fn graph(source: &Source) -> Vec<Block> {
    let ChartPicture { lanes, course, third_stage, from_birth, zero_local_ms, rows, .. } =
        chart_picture(source.chart, source.origin.written);
    let lanes: Vec<PictureLane> = lanes.into_iter().filter(|lane| !lane.is_of_baby()).collect();
    if lanes.is_empty() {
        return Vec::new();
    }
    let axis = Axis::new(course, zero_local_ms, from_birth, (LEFT, WIDTH - LEFT - RIGHT));
    let groups = events::groups(source, &axis, &rows);
    let mut canvas = Canvas::new(source.words);
    let heights: Vec<f32> =
        lanes.iter().enumerate().map(|(n, lane)| if n == 0 && lane.is_sum() { BLOOD } else { LANE }).collect();
    let bottom = SIGNS + heights.iter().map(|height| height + GAP).sum::<f32>();
    events::draw(&mut canvas, &axis, &groups, third_stage, bottom);
    let mut top = SIGNS + GAP;
    for (lane, height) in lanes.iter().zip(heights) {
        lane::draw(&mut canvas, &axis, lane, (top, height));
        top += height + GAP;
    }
    axis.draw(&mut canvas, bottom);
    let alt = alt(source, &axis, &lanes);
    let table = readings::table(source, &canvas, &lanes);
    let drawing = Drawing { width: WIDTH, height: bottom + AXIS, shapes: canvas.shapes, labels: canvas.labels, alt };
    let mut blocks = vec![Block::Heading(source.words.plain("graph-title")), Block::Drawing(drawing)];
    blocks.push(Block::Paragraph(vec![Span::plain(note(source, &axis, &lanes)).small()]));
    blocks.extend(events::key(groups));
    blocks.extend([Block::Subheading(source.words.plain("graph-readings")), table]);
    blocks
}

/// How to read it, and how many readings lie before or after it.
fn note(source: &Source, axis: &Axis, lanes: &[PictureLane]) -> String {
    let outside = readings(lanes).filter(|reading| !axis.holds(reading.point.at_ms)).count();
    let outside = u32::try_from(outside).unwrap_or(u32::MAX);
    let note = source.words.plain("graph-note");
    match outside {
        0 => note,
        count => format!("{note} {}", source.words.say(&Message::new("graph-outside").with("count", count))),
    }
}

fn readings(lanes: &[PictureLane]) -> impl Iterator<Item = &PictureReading> {
    lanes.iter().flat_map(|lane| &lane.series).flat_map(|series| &series.readings)
}

/// What the drawing shows, in words: every reading of a short series, of a long one the range and the last.
fn alt(source: &Source, axis: &Axis, lanes: &[PictureLane]) -> String {
    let words = source.words;
    let at = |reading: &PictureReading| {
        let said = Message::new("graph-at").with("value", reading.said.clone()).with("clock", reading.point.clock.as_str());
        words.say(&said)
    };
    let series = lanes.iter().flat_map(|lane| lane.series.iter().map(move |series| (lane, series)));
    let said = series.map(|(lane, series)| {
        let name = if lane.series.len() > 1 {
            format!("{}, {}", words.say(&lane.name), words.say(&series.name))
        } else {
            words.say(&lane.name)
        };
        let all = &series.readings;
        let by_value = |one: &&PictureReading, other: &&PictureReading| one.value.total_cmp(&other.value);
        let read = match (all.iter().min_by(by_value), all.iter().max_by(by_value), all.last()) {
            (Some(least), Some(most), Some(last)) if all.len() > TOLD => {
                let count = u32::try_from(all.len()).unwrap_or(u32::MAX);
                let range = Message::new("graph-range").with("count", count).with("least", least.said.clone());
                words.say(&range.with("most", most.said.clone()).with("last", at(last)))
            }
            _ => all.iter().map(at).collect::<Vec<_>>().join(", "),
        };
        words.say(&Message::new("reason-because").with("name", name).with("value", read))
    });
    let (from, to) = axis.clocks();
    let said = said.collect::<Vec<_>>().join("; ");
    words.say(&Message::new("graph-alt").with("from", from).with("to", to).with("said", said))
}

/// The unit alone, as the reader's language writes it behind a number.
fn unit(canvas: &Canvas, lane: &PictureLane) -> String {
    let said = lane.series.iter().flat_map(|series| &series.readings).map(|reading| reading.said.clone()).next();
    let bare = said.map(|said| said.with("value", Arg::Text(String::new())));
    bare.map_or(String::new(), |bare| canvas.words.say(&bare).trim().to_owned())
}

/// A bare number by the reader's decimal sign.
fn number(canvas: &Canvas, value: f64) -> String {
    canvas.words.say(&Message::new("value-text").with("value", value))
}

/// Names stand in the column left of the plot.
fn name(canvas: &mut Canvas, y: f32, text: String, bold: bool) {
    canvas.label((0.0, y), text, Align::Left, bold);
}
