//! What comes next, and when: a pure function of chart, protocol and time, so that a restart gives the same list.

use serde::{Deserialize, Serialize};

use crate::assess::{About, Awaited, Repeat, awaited_apgars, reminder_id, repeats, third_stage_steps, window_running};
use crate::chart::{Chart, Mark};
use crate::fact::BabyNo;
use crate::message::Message;
use crate::protocol::{Level, Protocol, Schedule, Status, Step, Watch};
use crate::time::Stamp;

/// One coming time reminder.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Due {
    /// Stable name, the same after a restart.
    pub id: String,
    /// Milliseconds from now; negative once it is past.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub in_ms: i64,
    /// How much it asks for attention.
    pub level: Level,
    /// What it is.
    pub message: Message,
    /// Where the time comes from.
    pub source: String,
    /// How well that was checked.
    pub status: Status,
    /// Whether its time is set on the device: only of the next few, so that a phone that sleeps is not woken by a crowd.
    pub armed: bool,
}

/// Most reminders that are armed at a time. Our own choice.
const ARMED: usize = 3;

/// The coming reminders, soonest first.
#[must_use]
pub fn due(chart: &Chart, protocol: Option<&Protocol>, now: &Stamp) -> Vec<Due> {
    // A reminder rests on what is not recorded, and of that the other phone knows.
    let Some(protocol) = protocol.filter(|_| !chart.is_partial()) else { return Vec::new() };
    let mut list = placenta(chart, protocol, now);
    list.extend(mother(chart, protocol, now));
    list.extend(apgars(chart, protocol, now));
    list.extend(again(chart, protocol, now));
    list.extend(Watch::WINDOWS.iter().flat_map(|watch| window(chart, protocol, *watch, now)));
    soonest(list)
}

/// Reminders, also of several births, soonest first; armed anew are the first few that are still to come.
#[must_use]
pub fn soonest(mut list: Vec<Due>) -> Vec<Due> {
    list.sort_by(|a, b| (a.in_ms, &a.id).cmp(&(b.in_ms, &b.id)));
    list.iter_mut().for_each(|due| due.armed = false);
    list.iter_mut().filter(|due| due.in_ms > 0).take(ARMED).for_each(|due| due.armed = true);
    list
}

/// While a placenta is awaited, each time threshold that is still to come.
fn placenta(chart: &Chart, protocol: &Protocol, now: &Stamp) -> Vec<Due> {
    let Some(stage) = chart.third_stage(now).filter(|stage| stage.to.is_none()) else { return Vec::new() };
    let Some((watch, steps)) = third_stage_steps(chart, protocol, &stage) else { return Vec::new() };
    let message = |step: &Step| Message::new("due-third-stage").with("minutes", f64::from(step.value));
    to_come(&steps, watch, stage.elapsed.ms, message)
}

/// The marks of a running window that are still to come, in the protocol's order.
#[must_use]
pub fn window(chart: &Chart, protocol: &Protocol, watch: Watch, now: &Stamp) -> Vec<Due> {
    let Some(from) = window_running(chart, protocol, watch, now) else { return Vec::new() };
    let message =
        |step: &Step| Message::new("due-window").with("what", watch.name()).with("value", watch.value_words(step.value));
    to_come(protocol.steps(watch), watch, chart.until(&from.at, now).ms, message)
}

/// The steps of a running time that are still to come.
fn to_come(steps: &[Step], watch: Watch, passed_ms: i64, message: impl Fn(&Step) -> Message) -> Vec<Due> {
    let one = |step: &Step| {
        // The number is in thousandths of the unit.
        let in_ms = step.value.0.saturating_mul(watch.unit_ms() / 1_000).saturating_sub(passed_ms);
        (in_ms > 0).then(|| Due {
            id: reminder_id(watch, step),
            in_ms,
            level: step.level,
            message: message(step),
            source: step.source.clone(),
            status: step.status,
            armed: false,
        })
    };
    steps.iter().filter_map(one).collect()
}

/// The next look at the mother: so many minutes after the last one, or after the birth.
fn mother(chart: &Chart, protocol: &Protocol, now: &Stamp) -> Option<Due> {
    let birth = chart.last_birth()?;
    let last: &Mark = chart
        .observations
        .iter()
        .map(|seen| &seen.mark)
        .rfind(|mark| chart.elapsed(&birth.at, &mark.at).ms >= 0)
        .unwrap_or(birth);
    let phase = look_after(chart, protocol, last)?;
    let in_ms = minutes(phase.every).saturating_sub(chart.until(&last.at, now).ms);
    Some(Due {
        id: "mother-observation".to_owned(),
        in_ms,
        level: Level::Note,
        message: Message::new("due-mother").with("minutes", phase.every),
        source: phase.source.clone(),
        status: phase.status,
        armed: false,
    })
}

/// The Apgar scores of each baby that are awaited.
fn apgars(chart: &Chart, protocol: &Protocol, now: &Stamp) -> Vec<Due> {
    let due = |no: BabyNo, score: Awaited| Due {
        id: format!("apgar-{no}-{}", score.minute),
        in_ms: score.in_ms,
        level: Level::Note,
        message: chart.numbered(Message::new("watch-apgar").with("minute", score.minute), no),
        source: score.source.to_owned(),
        status: score.status,
        armed: false,
    };
    let babies = chart.babies.iter();
    babies.flat_map(|(no, baby)| awaited_apgars(chart, protocol, baby, now).into_iter().map(|score| due(*no, score))).collect()
}

/// The second reading of a sign that counts when it is read twice.
fn again(chart: &Chart, protocol: &Protocol, now: &Stamp) -> Vec<Due> {
    let second = |Repeat { subject, step, again, first }: Repeat| {
        let of_baby = if let About::Newborn { baby, .. } = subject.about { format!("-{baby}") } else { String::new() };
        Due {
            id: format!("again-{}-{}{of_baby}", subject.name.id, step.value.0),
            in_ms: minutes(again).saturating_sub(chart.until(&first.at, now).ms),
            level: Level::Note,
            message: Message::new("due-again").with("what", subject.name).with("minutes", again),
            source: step.source.clone(),
            status: step.status,
            armed: false,
        }
    };
    repeats(chart, protocol).into_iter().map(second).collect()
}

/// When the protocol has the look at the mother that follows one made at this moment; none where it has none.
pub(crate) fn look_after<'a>(chart: &Chart, protocol: &'a Protocol, last: &Mark) -> Option<&'a Schedule> {
    let birth = chart.last_birth()?;
    phase(&protocol.mother, chart.elapsed(&birth.at, &last.at).ms)
}

/// The phase in which the next look falls; `None` when the schedule has ended.
fn phase(schedule: &[Schedule], last_after_birth: i64) -> Option<&Schedule> {
    schedule.iter().find(|phase| last_after_birth.saturating_add(minutes(phase.every)) <= minutes(phase.until))
}

fn minutes(count: u32) -> i64 {
    i64::from(count) * 60_000
}
