//! Signs of the mother and of each baby: the latest reading, and whether it stood twice where the protocol asks for that.

use super::{About, Finding, FindingState, Subject, gravest, held, limit_message, not_recorded, plain, threshold};
use crate::chart::{Chart, Mark, Noted};
use crate::due::look_after;
use crate::fact::{BabyNo, MotherObservation, NewbornMeasures};
use crate::message::Message;
use crate::protocol::{Level, Milli, Protocol, Step, Watch};
use crate::quantity::Temperature;
use crate::time::Stamp;

/// One reading of a sign.
pub struct Reading<'a> {
    /// In thousandths of the unit of its watch.
    pub value: Milli,
    /// When, and by which entry.
    pub mark: &'a Mark,
}

/// The mother's signs.
pub(super) fn mother() -> impl Iterator<Item = Subject> {
    Watch::READ.into_iter().map(Subject::of)
}

/// The signs of each baby that is on record.
pub(super) fn babies(chart: &Chart) -> impl Iterator<Item = Subject> {
    chart.babies.keys().flat_map(|no| Watch::NEWBORN.into_iter().map(|watch| Subject::baby(chart, *no, watch)))
}

/// The value of a watch in one look at the mother, in thousandths of its unit; none where it was not read.
fn read(watch: Watch, seen: &MotherObservation) -> Option<Milli> {
    match watch {
        Watch::Pulse => seen.pulse.map(|value| Milli::from(value.get())),
        Watch::Systolic => seen.systolic.map(|value| Milli::from(value.get())),
        Watch::Diastolic => seen.diastolic.map(|value| Milli::from(value.get())),
        Watch::Respirations => seen.respirations.map(|value| Milli::from(value.get())),
        Watch::Temperature => seen.temperature.map(degrees),
        Watch::Saturation => seen.saturation.map(|value| Milli::from(value.get())),
        // Only of one and the same look.
        Watch::ShockIndex => {
            let (pulse, systolic) = (seen.pulse?, seen.systolic.filter(|mmhg| mmhg.get() > 0)?);
            Some(Milli(i64::from(pulse.get()) * 1000 / i64::from(systolic.get())))
        }
        Watch::ThirdStageActive
        | Watch::ThirdStagePhysiological
        | Watch::BloodLoss
        | Watch::TranexamicWindow
        | Watch::AntiDWindow
        | Watch::TimeToUrine
        | Watch::FirstFeed
        | Watch::NewbornTemperature
        | Watch::NewbornHeartRate
        | Watch::NewbornRespirations
        | Watch::Completeness => None,
    }
}

/// The same in one look at a baby.
fn read_baby(watch: Watch, seen: &NewbornMeasures) -> Option<Milli> {
    match watch {
        Watch::NewbornTemperature => seen.temperature.map(degrees),
        Watch::NewbornHeartRate => seen.heart_rate.map(|value| Milli::from(value.get())),
        Watch::NewbornRespirations => seen.respirations.map(|value| Milli::from(value.get())),
        _ => None,
    }
}

fn degrees(tenths: Temperature) -> Milli {
    Milli(i64::from(tenths.get()) * 100)
}

/// The readings of a sign of the mother, or of this baby, in order of time.
#[must_use]
pub fn readings_of(chart: &Chart, watch: Watch, baby: Option<BabyNo>) -> Vec<Reading<'_>> {
    readings(chart, &baby.map_or_else(|| Subject::of(watch), |no| Subject::baby(chart, no, watch)))
}

/// The readings of a sign, in order of time.
fn readings<'a>(chart: &'a Chart, subject: &Subject) -> Vec<Reading<'a>> {
    let watch = subject.watch;
    match subject.about {
        About::Newborn { baby, .. } => {
            let looks = chart.babies.get(&baby).map_or(&[][..], |baby| baby.measures.as_slice());
            looks.iter().filter_map(|look| reading(look, |seen| read_baby(watch, seen))).collect()
        }
        _ => chart.observations.iter().filter_map(|look| reading(look, |seen| read(watch, seen))).collect(),
    }
}

fn reading<T>(look: &Noted<T>, read: impl Fn(&T) -> Option<Milli>) -> Option<Reading<'_>> {
    Some(Reading { value: read(&look.what)?, mark: &look.mark })
}

/// The latest value of one sign; `None` where the protocol does not watch it.
pub(super) fn finding(chart: &Chart, protocol: &Protocol, subject: Subject, now: &Stamp) -> Option<Finding> {
    let watch = subject.watch;
    let steps = protocol.steps(watch);
    if steps.is_empty() && watch != Watch::ShockIndex {
        return None;
    }
    let readings = readings(chart, &subject);
    let Some(latest) = readings.last() else { return Some(not_recorded(subject)) };
    let words = aged(chart, protocol, &subject, latest, now);
    let rests_on = vec![latest.mark.entry];
    let (stands, once): (Vec<&Step>, Vec<&Step>) = steps
        .iter()
        .filter(|step| step.passed_by(latest.value))
        .partition(|step| step.again.is_none_or(|again| first_of_two(chart, &readings, step, again).is_some()));
    let passed = gravest(stands.into_iter());
    Some(match gravest(once.into_iter()) {
        // Past a mark that counts when it is read twice: near it, until it is.
        Some(step) if passed.is_none_or(|passed| passed.level < Level::Caution) => {
            let message = limit_message("finding-once", &subject, words, step).with("minutes", step.again.unwrap_or_default());
            Finding {
                level: Some(step.level.min(Level::Caution)),
                threshold: Some(threshold(step, protocol)),
                ..plain(subject.about, FindingState::Near, message, rests_on)
            }
        }
        _ => {
            let earlier = passed.and_then(|step| first_of_two(chart, &readings, step, step.again?));
            let rests_on = earlier.into_iter().map(|reading| reading.mark.entry).chain(rests_on).collect();
            held(subject, words, rests_on, passed, protocol)
        }
    })
}

/// A value, with the age of its reading where the protocol has the next look at the mother come sooner than that. The shock
/// index, which nobody reads off her, has its age in any case.
fn aged(chart: &Chart, protocol: &Protocol, subject: &Subject, reading: &Reading, now: &Stamp) -> Message {
    let value = subject.watch.value_words(reading.value);
    let age = chart.until(&reading.mark.at, now);
    let look = look_after(chart, protocol, reading.mark).filter(|look| age.ms > minutes(look.every));
    let of_mother = !matches!(subject.about, About::Newborn { .. });
    let message = match look.filter(|_| of_mother) {
        Some(look) => Message::new("value-stale").with("every", look.every),
        None if subject.watch == Watch::ShockIndex && age.ms >= 0 => Message::new("value-read"),
        None => return value,
    };
    message.with("value", value).with("age", age.minutes())
}

/// The earlier of two readings past this step that lie at least so many minutes apart, the later being the latest of all.
fn first_of_two<'a, 'b>(chart: &Chart, readings: &'b [Reading<'a>], step: &Step, again: u32) -> Option<&'b Reading<'a>> {
    let latest = readings.last().filter(|latest| step.passed_by(latest.value))?;
    let apart = |reading: &Reading| chart.elapsed(&reading.mark.at, &latest.mark.at).ms >= minutes(again);
    readings.iter().rfind(|reading| step.passed_by(reading.value) && apart(reading))
}

/// A sign that was read once past a mark which counts when it is read twice.
pub(crate) struct Repeat<'a, 'b> {
    /// The sign.
    pub subject: Subject,
    /// The mark.
    pub step: &'b Step,
    /// Minutes between the two readings.
    pub again: u32,
    /// The reading from which they run.
    pub first: &'a Mark,
}

/// Every sign that was read once past such a mark.
pub(crate) fn repeats<'a, 'b>(chart: &'a Chart, protocol: &'b Protocol) -> Vec<Repeat<'a, 'b>> {
    mother().chain(babies(chart)).flat_map(|subject| repeats_of(chart, protocol, &subject)).collect()
}

fn repeats_of<'a, 'b>(chart: &'a Chart, protocol: &'b Protocol, subject: &Subject) -> Vec<Repeat<'a, 'b>> {
    let readings = readings(chart, subject);
    let repeat = |step: &'b Step| {
        let again = step.again?;
        let past = readings.iter().rev().take_while(|reading| step.passed_by(reading.value)).last();
        let first = past.filter(|_| first_of_two(chart, &readings, step, again).is_none())?.mark;
        Some(Repeat { subject: subject.clone(), step, again, first })
    };
    protocol.steps(subject.watch).iter().filter_map(repeat).collect()
}

/// Whether one of the signs that a step asks for is there; so it is where it asks for none.
pub(super) fn beside(chart: &Chart, step: &Step) -> bool {
    let holds = |sign: &crate::protocol::Sign| {
        readings(chart, &Subject::of(sign.watch)).last().is_some_and(|latest| sign.compare.holds(latest.value, sign.value))
    };
    step.with.is_empty() || step.with.iter().any(holds)
}

fn minutes(count: u32) -> i64 {
    i64::from(count) * 60_000
}
