//! The placenta drawn from its answers: both sides in true proportion, in mm, as plain shapes for the screen and for print.
//!
//! What was not measured is drawn dashed, in the usual proportion, and said; what was not recorded is not drawn. Vessels, lobes
//! and membranes are only hinted. Widths and ways that no answer tells are our own choice, with no source.

use super::order::cords;
use super::{Examination, Examined};
use crate::chart::Chart;
use crate::fact::{BabyNo, Place, all_of, of_cord};
use crate::message::Message;
use edge::{Edge, Point, round, smooth, straight};
pub use shape::{Fill, PathStep, Side, Sketch, Trace, ViewBox, What};

mod cord;
mod edge;
mod maternal;
mod membranes;
mod shape;
#[cfg(test)]
mod tests;

/// Half the usual length of a disc, mm, and its breadth to its length: mean radius 9.0 to 9.5 cm, Yampolsky, 980 placentas, seen;
/// 0.88 to 0.91 worked out from the eccentricities of Narayanan and Ravikumar.
const USUAL_HALF_LENGTH: f64 = 92.5;
const USUAL_BREADTH: f64 = 0.9;
/// How much broader one that is spread thin is drawn where it was not measured: our own choice.
const SPREAD: f64 = 1.4;
/// Least room round the disc, so that a point set outside does not move the whole drawing, and the bar below.
const ROOM: f64 = 42.0;
const BAR: f64 = 50.0;

/// The drawing of one placenta. Total: any answers, no number that is not finite.
#[must_use]
pub fn sketch(chart: &Chart, placenta: BabyNo) -> Sketch {
    let mut pad = Pad::new(chart.examined(placenta), &chart.fed(placenta));
    pad.membranes_and_disc();
    pad.fetal_side();
    pad.maternal_side();
    pad.finished()
}

/// What is drawn so far.
struct Pad<'a> {
    examined: &'a Examined,
    cords: Vec<Option<BabyNo>>,
    edge: Edge,
    fetal: Vec<Trace>,
    maternal: Vec<Trace>,
    unmeasured: Vec<Message>,
    unplaced: Vec<Message>,
    missing: Vec<Message>,
}

/// Whose sides a shape stands on.
#[derive(Clone, Copy)]
enum On {
    Fetal,
    Maternal,
    Both,
}

impl<'a> Pad<'a> {
    fn new(examined: &'a Examined, babies: &[BabyNo]) -> Self {
        let spread = examined.says("shape", None, "thin-spread");
        let two_lobes = examined.says("shape", None, "two-lobes");
        let length = measure(examined, "disc-length", None);
        let breadth = measure(examined, "disc-breadth", None);
        let usual = USUAL_HALF_LENGTH * if spread { SPREAD } else { 1.0 };
        let half_length = length.map_or_else(|| breadth.map_or(usual, |breadth| breadth / 2.0 / USUAL_BREADTH), |mm| mm / 2.0);
        let half_breadth = breadth.map_or(half_length * USUAL_BREADTH, |mm| mm / 2.0);
        let mut pad = Self {
            examined,
            cords: cords(babies),
            edge: Edge::new(half_length, half_breadth, two_lobes),
            fetal: Vec::new(),
            maternal: Vec::new(),
            unmeasured: Vec::new(),
            unplaced: Vec::new(),
            missing: Vec::new(),
        };
        for (item, found) in [("disc-length", length), ("disc-breadth", breadth)] {
            if found.is_none() {
                pad.unmeasured.push(name(item));
            }
        }
        pad
    }

    fn is_measured(&self) -> bool {
        ["disc-length", "disc-breadth"].iter().all(|item| measure(self.examined, item, None).is_some())
    }

    fn disc(&mut self) {
        let points = self.edge.ring(0.0, 1.0, 48, |_| 0.0);
        let around = points.get(1..).unwrap_or_default();
        let dashed = !self.is_measured() || self.says("shape", "thin-spread");
        let outline = Trace::new(What::Outline, smooth(around, true), 1.7).filled(Fill::Ground).dashed(dashed);
        self.draw(On::Both, outline);
    }

    fn says(&self, item: &str, option: &str) -> bool {
        self.examined.says(item, None, option)
    }

    /// A length that was measured; else the usual one, which is noted.
    fn length_or(&mut self, item: &str, usual: f64) -> (f64, bool) {
        match measure(self.examined, item, None) {
            Some(mm) => (mm, true),
            None => {
                self.unmeasured.push(name(item));
                (usual, false)
            }
        }
    }

    /// The points that were set for an item.
    fn points(&self, item: &str, cord: Option<BabyNo>) -> Vec<(Point, Option<f64>)> {
        let point = |place: &Place| {
            let share = |value: i32| f64::from(value.clamp(-super::FARTHEST, super::FARTHEST)) / 1000.0;
            let point = Point::new(share(place.x) * self.edge.half_length, share(place.y) * self.edge.half_breadth);
            (point, place.size.map(|mm| f64::from(mm.clamp(1, 300))))
        };
        self.examined.places(item, cord).iter().map(point).collect()
    }

    fn draw(&mut self, on: On, trace: Trace) {
        if matches!(on, On::Fetal | On::Both) {
            self.fetal.push(trace.clone());
        }
        if matches!(on, On::Maternal | On::Both) {
            self.maternal.push(trace);
        }
    }

    /// Round spots where points were set, of their own size or dashed of a usual one.
    fn spots(&mut self, on: On, what: What, item: &str, usual: f64) {
        let points = self.points(item, None);
        if points.iter().any(|(_, size)| size.is_none()) {
            self.unmeasured.push(name(item));
        }
        for (middle, size) in points {
            let spot = round(middle, size.unwrap_or(usual) / 2.0);
            self.draw(on, Trace::new(what, spot, 1.1).filled(Fill::Tint).dashed(size.is_none()));
        }
    }

    fn finished(self) -> Sketch {
        let measured = self.is_measured();
        let Edge { half_length, half_breadth, .. } = self.edge;
        let mut view = Bounds::of(Point::new(half_length + ROOM, half_breadth + ROOM));
        for step in self.fetal.iter().chain(&self.maternal).flat_map(|trace| &trace.steps) {
            view.take(*step);
        }
        // Room for the bar; the other side lies the other way round.
        view.most.y += if measured { 12.0 } else { 4.0 };
        let mirrored = view.mirrored();
        let maternal = self.maternal.into_iter().map(Trace::mirrored).collect();
        let side = |traces, view: Bounds, words| Side::new(traces, view, words).with_bar(measured);
        let notes = [
            noted("sketch-unmeasured", &self.unmeasured),
            noted("sketch-unplaced", &self.unplaced),
            noted("sketch-missing", &self.missing),
            Some(Message::new("sketch-hinted")),
        ];
        Sketch {
            fetal: side(self.fetal, view, said(self.examined, &self.cords, FETAL)),
            maternal: side(maternal, mirrored, said(self.examined, &self.cords, MATERNAL)),
            half_length: hundredth(half_length),
            half_breadth: hundredth(half_breadth),
            measured,
            notes: notes.into_iter().flatten().collect(),
        }
    }
}

/// What a side shows, for its words.
const FETAL: &str = "shape disc-length disc-breadth insertion insertion-edge insertion-place fetal-vessels fetal-marks lump-places \
    rim rim-share amnion chorion tear-edge tear-place edge-vessels extra-lobe-size extra-lobe-gap";
const MATERNAL: &str = "shape disc-length disc-breadth lobes gap-place maternal-clot clot-share clot-place maternal-surface \
    firm-places";

/// The answers to these items, cord by cord.
fn said(examined: &Examined, cords: &[Option<BabyNo>], items: &str) -> Vec<Message> {
    let whole = std::iter::once(None).chain(cords.iter().copied().filter(Option::is_some));
    let every: Vec<Option<BabyNo>> = whole.collect();
    let pairs = items.split_whitespace().flat_map(|item| every.iter().map(move |cord| (item, *cord)));
    pairs
        .filter_map(|(item, cord)| {
            let answer = examined.at(item, cord)?.answer.describe(item);
            Some(Message::new("reason-because").with("name", of_cord(name(item), cord)).with("value", answer))
        })
        .collect()
}

fn noted(id: &str, what: &[Message]) -> Option<Message> {
    let mut each: Vec<Message> = Vec::new();
    for one in what {
        if !each.contains(one) {
            each.push(one.clone());
        }
    }
    (!each.is_empty()).then(|| Message::new(id).with("what", all_of(each)))
}

fn name(item: &str) -> Message {
    Message::new(format!("exam-{item}"))
}

/// A measure within what its item takes.
fn measure(examined: &Examined, item: &str, cord: Option<BabyNo>) -> Option<f64> {
    let known = Examination::standard().item(item)?;
    examined.measure(item, cord).map(|value| f64::from(value.clamp(known.min, known.max)))
}

impl Side {
    fn new(traces: Vec<Trace>, Bounds { least, most }: Bounds, words: Vec<Message>) -> Self {
        let tidy = |trace: Trace| Trace {
            steps: trace.steps.into_iter().map(|step| step.each(|x, y| (hundredth(x), hundredth(y)))).collect(),
            ..trace
        };
        let (width, height) = (hundredth(most.x - least.x), hundredth(most.y - least.y));
        let view = ViewBox { x: hundredth(least.x), y: hundredth(least.y), width, height };
        Self { view, traces: traces.into_iter().map(tidy).collect(), words }
    }

    fn with_bar(mut self, measured: bool) -> Self {
        if measured {
            let (x, y) = (self.view.x + 3.0, hundredth(self.view.y + self.view.height - 4.0));
            let ends = [Point::new(x, y - 3.0), Point::new(x, y), Point::new(x + BAR, y), Point::new(x + BAR, y - 3.0)];
            self.traces.push(Trace::new(What::Scale, straight(&ends, false), 1.0));
        }
        self
    }
}

/// A part of the plane that grows.
#[derive(Clone, Copy)]
struct Bounds {
    least: Point,
    most: Point,
}

impl Bounds {
    /// Round the middle.
    fn of(half: Point) -> Self {
        Self { least: half * -1.0, most: half }
    }

    fn take(&mut self, step: PathStep) {
        let Some((x, y)) = step.end() else { return };
        self.least = Point::new(self.least.x.min(x - 3.0), self.least.y.min(y - 3.0));
        self.most = Point::new(self.most.x.max(x + 3.0), self.most.y.max(y + 3.0));
    }

    fn mirrored(self) -> Self {
        let (least, most) = (self.least, self.most);
        Self { least: Point::new(-most.x, least.y), most: Point::new(-least.x, most.y) }
    }
}

/// Rounded to a hundredth of a mm.
fn hundredth(mm: f64) -> f64 {
    // Adding 0 turns -0 into 0.
    (mm * 100.0).round() / 100.0 + 0.0
}
