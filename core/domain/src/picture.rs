//! A birth as a picture: every entry and every reading on one axis of time. The page turns it into pixels and the record into
//! lines, and no more.

use std::collections::{BTreeMap, BTreeSet};

use crate::assess::{blood_curve, readings_of};
use crate::chart::{Chart, Line, Mark, State};
use crate::entry::EntryId;
use crate::fact::{BabyNo, Fact};
use crate::message::Message;
use crate::protocol::{Milli, Protocol, Step, Watch};
use crate::time::{Occurred, Stamp};

mod model;
mod scale;

pub use model::{ChartPicture, PictureLane, PictureLimit, PicturePoint, PictureReading, PictureRow, PictureSeries, Shape, Span};
use scale::{Reach, Scale};

/// Least that is shown of a birth, ms. Ours.
const LEAST_MS: i64 = 10 * 60_000;
/// What happened further from the birth than this is no part of its course, ms. Ours.
const COURSE_MS: i64 = 24 * 3_600_000;
/// The greatest Apgar score.
const APGAR_MOST: u32 = 10;

/// What an entry is about, in the order of the rows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum About {
    Baby(BabyNo),
    Placenta,
    Mother,
    Done,
    Notes,
    /// The record itself: its times are those of writing, and no part of the birth.
    Record,
}

/// The chart, and where its axis begins.
struct Axis<'a> {
    chart: &'a Chart,
    protocol: Option<&'a Protocol>,
    zero: Occurred,
    lines: BTreeMap<EntryId, &'a Line>,
}

/// The picture of a birth as it stands now.
#[must_use]
pub fn chart_picture(chart: &Chart, now: &Stamp) -> ChartPicture {
    let first = chart.lines.first().map(|line| line.shown().occurred.clone());
    let born = chart.first_birth().map(|mark| mark.at.clone());
    let from_birth = born.is_some();
    let zero = born.or(first).unwrap_or_else(|| Occurred::Marked(now.clone()));
    let lines = chart.lines.iter().map(|line| (line.first.id, line)).collect();
    let axis = Axis { chart, protocol: chart.protocol(), zero, lines };
    let now_ms = chart.until(&axis.zero, now).ms;
    let third_stage = third_stage(&axis, now_ms);
    let points: Vec<(About, PicturePoint)> = chart.told_lines().map(|line| axis.line(line)).collect();
    let course = course(&points, third_stage.filter(|_| chart.last_placenta().is_none()), now_ms);
    let times = || points.iter().map(|(_, point)| point.at_ms).chain([course.from_ms, course.to_ms, now_ms]);
    let whole = Span { from_ms: times().min().unwrap_or(0), to_ms: times().max().unwrap_or(0) };
    ChartPicture {
        from_birth,
        zero_local_ms: axis.zero.wall_ms().saturating_add(i64::from(axis.zero.offset_min()) * 60_000),
        course,
        whole,
        now_ms,
        third_stage,
        rows: rows(chart, points),
        lanes: lanes(&axis),
    }
}

fn third_stage(axis: &Axis, now_ms: i64) -> Option<Span> {
    let from_ms = axis.ms(&axis.chart.last_birth()?.at);
    let to_ms = axis.chart.last_placenta().map_or(now_ms, |mark| axis.ms(&mark.at));
    Some(Span { from_ms, to_ms: to_ms.max(from_ms) })
}

/// From the first to the last entry of the birth itself; to now while a placenta is awaited.
fn course(points: &[(About, PicturePoint)], running: Option<Span>, now_ms: i64) -> Span {
    let of_birth = points.iter().filter(|(about, point)| *about != About::Record && !point.retracted);
    let now = running.map(|_| now_ms);
    let times = of_birth.map(|(_, point)| point.at_ms).chain(now).filter(|ms| ms.saturating_abs() < COURSE_MS);
    let span =
        times.fold(Span { from_ms: 0, to_ms: 0 }, |span, ms| Span { from_ms: span.from_ms.min(ms), to_ms: span.to_ms.max(ms) });
    Span { to_ms: span.to_ms.max(span.from_ms + LEAST_MS), ..span }
}

fn rows(chart: &Chart, points: Vec<(About, PicturePoint)>) -> Vec<PictureRow> {
    let mut rows: BTreeMap<About, Vec<PicturePoint>> = BTreeMap::new();
    for (about, point) in points {
        rows.entry(about).or_default().push(point);
    }
    rows.into_iter().map(|(about, points)| PictureRow { name: about.name(chart), points }).collect()
}

impl About {
    fn of(fact: &Fact) -> Self {
        match fact {
            Fact::BabyBorn { baby }
            | Fact::CordPulsationStopped { baby }
            | Fact::CordClamped { baby }
            | Fact::CordCut { baby }
            | Fact::NewbornEvent { baby, .. } => Self::Baby(*baby),
            Fact::ApgarScored(apgar) => Self::Baby(apgar.baby),
            Fact::NewbornMeasured(measures) => Self::Baby(measures.baby),
            Fact::PlacentaBorn { .. }
            | Fact::MembranesBorn { .. }
            | Fact::SeparationSeen { .. }
            | Fact::Examined { .. }
            | Fact::PhotoTaken(_)
            | Fact::PhotoMeasured(_) => Self::Placenta,
            Fact::BloodLoss(_) | Fact::MotherObserved(_) | Fact::PerineumExamined(_) => Self::Mother,
            Fact::MedicineGiven(_)
            | Fact::ResponseMarked { .. }
            | Fact::ConcernMarked
            | Fact::CareChosen { .. }
            | Fact::LeavingMarked { .. }
            | Fact::HomeLeft
            | Fact::Shared(_) => Self::Done,
            Fact::MomentMarked | Fact::Noted { .. } | Fact::AskedFor { .. } | Fact::VoiceNoted(_) | Fact::WrittenUp(_) => {
                Self::Notes
            }
            Fact::PracticeDescribed(_)
            | Fact::OwnProtocolChanged { .. }
            | Fact::MedicinesListed { .. }
            | Fact::BirthRegistered { .. }
            | Fact::ClientRecorded(_)
            | Fact::ProtocolChosen { .. }
            | Fact::TravelTimeSet { .. }
            | Fact::NextContactPlanned(_)
            | Fact::PlacentaWeights { .. }
            | Fact::ExaminationOrdered { .. }
            | Fact::ServerSet { .. }
            | Fact::TermSet { .. }
            | Fact::SendingWaits { .. }
            | Fact::TouchedAgain { .. }
            | Fact::BirthJoined(_)
            | Fact::ClocksCompared(_)
            | Fact::SameBirth { .. }
            | Fact::Retracted
            | Fact::Signed { .. }
            | Fact::Unknown { .. } => Self::Record,
        }
    }

    fn name(self, chart: &Chart) -> Message {
        Message::new(match self {
            Self::Baby(no) => return chart.numbered(Message::new("picture-baby"), no),
            Self::Placenta => "picture-placenta",
            Self::Mother => "picture-mother",
            Self::Done => "picture-done",
            Self::Notes => "picture-notes",
            Self::Record => "picture-record",
        })
    }
}

impl Axis<'_> {
    fn ms(&self, at: &Occurred) -> i64 {
        self.chart.elapsed(&self.zero, at).ms
    }

    fn line(&self, line: &Line) -> (About, PicturePoint) {
        let shown = line.shown();
        let state = line.state();
        let point = PicturePoint {
            entry: line.first.id,
            at_ms: self.ms(&shown.occurred),
            clock: shown.occurred.clock(),
            corrected: state == State::Corrected,
            late: self.protocol.is_some_and(|protocol| self.chart.is_late(shown, protocol)),
            retracted: state == State::Retracted,
        };
        (About::of(&shown.fact), point)
    }

    /// A value that an entry gave.
    fn reading(&self, mark: &Mark, value: Milli, said: Message) -> Option<PictureReading> {
        let (_, point) = self.line(self.lines.get(&mark.entry)?);
        Some(PictureReading { point, value: value.into(), said })
    }

    /// What was read of a sign, off the mother or a baby.
    fn series(&self, watch: Watch, baby: Option<BabyNo>) -> (Reach, PictureSeries) {
        let read = readings_of(self.chart, watch, baby);
        let reach = read.iter().fold(Reach::default(), |reach, reading| reach.with(reading.value));
        let readings =
            read.iter().filter_map(|reading| self.reading(reading.mark, reading.value, watch.value_words(reading.value)));
        let name = baby.map_or_else(|| watch.name(), |no| self.chart.numbered(watch.name(), no));
        (self.to_lines(reach, watch), PictureSeries { name, shape: Shape::Line, readings: readings.collect() })
    }

    fn steps(&self, watch: Watch) -> &[Step] {
        self.protocol.map_or(&[], |protocol| protocol.steps(watch))
    }

    fn to_lines(&self, reach: Reach, watch: Watch) -> Reach {
        reach.to_lines(self.steps(watch).iter().map(|step| (step.value, step.is_upper())))
    }

    /// The protocol's lines on a scale; of two at one value the graver.
    fn limits(&self, watches: &[Watch], scale: Scale) -> Vec<PictureLimit> {
        let steps = watches.iter().flat_map(|watch| self.steps(*watch).iter().map(move |step| (*watch, step)));
        let mut steps: Vec<(Watch, &Step)> = steps.filter(|(_, step)| scale.holds(step.value)).collect();
        steps.sort_by_key(|(_, step)| (step.value, std::cmp::Reverse(step.level)));
        let mut seen = BTreeSet::new();
        steps.retain(|(watch, step)| seen.insert((*watch, step.value)));
        steps.into_iter().map(|(watch, step)| limit(watch, step)).collect()
    }

    /// A lane of series; none where nothing was read. Series without a reading are left out.
    fn lane(&self, name: Message, watches: &[Watch], series: Vec<(Reach, PictureSeries)>) -> Option<PictureLane> {
        let reach = series.iter().fold(Reach::default(), |reach, (one, _)| reach.and(*one));
        let scale = reach.scale()?;
        let series = series.into_iter().map(|(_, one)| one).filter(|one| !one.readings.is_empty()).collect();
        let limits = self.limits(watches, scale);
        Some(PictureLane { name, low: scale.low.into(), high: scale.high.into(), grid: scale.grid(), series, limits })
    }

    fn sign(&self, watch: Watch, baby: Option<BabyNo>) -> Option<PictureLane> {
        let (reach, series) = self.series(watch, baby);
        self.lane(series.name.clone(), &[watch], vec![(reach, series)])
    }

    fn pressure(&self) -> Option<PictureLane> {
        let named = |(watch, name): (Watch, &str)| {
            let (reach, series) = self.series(watch, None);
            (reach, PictureSeries { name: Message::new(name), ..series })
        };
        let both = [(Watch::Systolic, "picture-systolic"), (Watch::Diastolic, "picture-diastolic")];
        self.lane(Message::new("picture-pressure"), &both.map(|(watch, _)| watch), both.into_iter().map(named).collect())
    }

    /// The blood as it grew: all of it, and what of it was measured where some was judged by eye.
    fn blood(&self) -> Option<PictureLane> {
        let curve = blood_curve(self.chart, self.protocol);
        let by_eye = curve.last().is_some_and(|(_, blood)| blood.seen > 0);
        let mut series = vec![self.sums("picture-blood-all", curve.iter().map(|(_, blood)| blood.total()))];
        if by_eye {
            series.push(self.sums("picture-blood-measured", curve.iter().map(|(_, blood)| blood.measured)));
        }
        self.lane(Watch::BloodLoss.name(), &[Watch::BloodLoss], series)
    }

    /// One sum of the blood, after each entry.
    fn sums(&self, name: &str, ml: impl Iterator<Item = u32>) -> (Reach, PictureSeries) {
        let sums: Vec<(&Mark, Milli)> = self.chart.losses.iter().map(|loss| &loss.mark).zip(ml.map(Milli::from)).collect();
        let reach = sums.iter().fold(Reach::default(), |reach, (_, sum)| reach.with(Milli(0)).with(*sum));
        let readings = sums.iter().filter_map(|(mark, sum)| self.reading(mark, *sum, Watch::BloodLoss.value_words(*sum)));
        let series = PictureSeries { name: Message::new(name), shape: Shape::Steps, readings: readings.collect() };
        (self.to_lines(reach, Watch::BloodLoss), series)
    }

    fn apgar(&self, no: BabyNo) -> Option<PictureLane> {
        let scored = &self.chart.babies.get(&no)?.apgars;
        let reading = |total: u32, minute: u32| Message::new("picture-apgar-at").with("total", total).with("minute", minute);
        let readings = scored.iter().filter_map(|apgar| {
            let total = apgar.what.total();
            self.reading(&apgar.mark, Milli::from(total), reading(total, apgar.what.minute.get()))
        });
        let readings: Vec<PictureReading> = readings.collect();
        let name = self.chart.numbered(Message::new("picture-apgar"), no);
        let reach = match readings.is_empty() {
            true => Reach::default(),
            false => Reach::default().with(Milli(0)).with(Milli::from(APGAR_MOST)),
        };
        let series = PictureSeries { name: name.clone(), shape: Shape::Apart, readings };
        self.lane(name, &[], vec![(reach, series)])
    }
}

fn limit(watch: Watch, step: &Step) -> PictureLimit {
    let at = Message::new("picture-limit-at").with("compare", step.compare.sign()).with("value", f64::from(step.value));
    let said = Message::new("picture-limit").with("at", at.clone());
    let said = match step.words.trim() {
        "" => said.with("words", watch.heading()),
        words => said.with("words", words),
    };
    PictureLimit { value: step.value.into(), level: step.level, upper: step.is_upper(), at, said }
}

/// The mother's first, then each baby's.
fn lanes(axis: &Axis) -> Vec<PictureLane> {
    let mut lanes = vec![axis.blood(), axis.sign(Watch::Pulse, None), axis.pressure()];
    let rest = [Watch::Respirations, Watch::Temperature, Watch::Saturation];
    lanes.extend(rest.into_iter().map(|watch| axis.sign(watch, None)));
    for no in axis.chart.babies.keys() {
        lanes.push(axis.apgar(*no));
        lanes.extend(Watch::NEWBORN.into_iter().map(|watch| axis.sign(watch, Some(*no))));
    }
    lanes.into_iter().flatten().collect()
}
