//! The time since birth, held against the limits of the care that was chosen.

use std::borrow::Cow;

use super::{About, Finding, FindingState, Subject, Threshold, blood_limit_passed, for_time, plain};
use crate::chart::{Chart, ThirdStage};
use crate::entry::EntryId;
use crate::fact::Care;
use crate::message::Message;
use crate::protocol::{Level, Milli, Protocol, Status, Step, Watch};
use crate::time::Stamp;

pub(super) fn finding(chart: &Chart, protocol: &Protocol, now: &Stamp) -> Finding {
    let about = About::ThirdStage;
    let Some(stage) = chart.third_stage(now) else {
        return plain(
            about,
            FindingState::NotRecorded,
            Message::new("finding-not-recorded").with("what", Message::new("watch-third-stage")),
            Vec::new(),
        );
    };
    let mut rests_on = vec![stage.from.entry];
    rests_on.extend(stage.to.as_ref().map(|mark| mark.entry));
    rests_on.extend(chart.travels.last().filter(|_| stage.to.is_none()).map(|travel| travel.mark.entry));
    let Some((watch, steps)) = steps(chart, protocol, &stage) else {
        return plain(
            about,
            FindingState::CannotAssess,
            Message::new("finding-no-care").with("value", stage.elapsed.words()),
            rests_on,
        );
    };
    if stage.elapsed.ms < 0 {
        return plain(about, FindingState::CannotAssess, Message::new("finding-placenta-first"), rests_on);
    }
    let timed = for_time(Subject { about, watch, name: watch.name() }, &stage.elapsed, &steps, rests_on, protocol);
    match overriding(chart, protocol).filter(|_| stage.to.is_none() && timed.state != FindingState::Passed) {
        Some(rests_on) => Finding {
            level: Some(Level::Limit),
            threshold: Some(Threshold {
                source: "none found: bleeding or concern overrides every time limit".to_owned(),
                status: Status::Choice,
                words: None,
            }),
            ..plain(
                About::ThirdStage,
                FindingState::Passed,
                Message::new("finding-no-waiting").with("value", stage.elapsed.words()),
                rests_on,
            )
        },
        None => timed,
    }
}

/// The entries by which no time limit is waited for: a marked concern, or blood past a limit. Our own choice.
fn overriding(chart: &Chart, protocol: &Protocol) -> Option<Vec<EntryId>> {
    let concerns = chart.concerns.iter().map(|mark| mark.entry);
    let blood = chart.losses.iter().map(|loss| loss.mark.entry).filter(|_| blood_limit_passed(chart, protocol));
    let rests_on: Vec<EntryId> = concerns.chain(blood).collect();
    (!rests_on.is_empty()).then_some(rests_on)
}

/// The thresholds that the time since birth is held against; none where the care is not recorded.
///
/// Care that was physiological at any time keeps the physiological clock from the birth, and a uterotonic given part-way
/// adds the active limit counted from it: so the limit is the earlier of the two, and no clock is set back. The guidelines
/// are silent on this; it is our own choice.
pub(crate) fn steps<'a>(chart: &Chart, protocol: &'a Protocol, stage: &ThirdStage) -> Option<(Watch, Cow<'a, [Step]>)> {
    let (watch, mut steps) = by_care(chart, protocol, stage)?;
    for step in less_travel(chart, stage, &steps) {
        if steps.iter().all(|other| (other.level, other.value) != (step.level, step.value)) {
            insert(&mut steps, step);
        }
    }
    Some((watch, steps))
}

fn by_care<'a>(chart: &Chart, protocol: &'a Protocol, stage: &ThirdStage) -> Option<(Watch, Cow<'a, [Step]>)> {
    let began_physiological = chart.cares.iter().any(|care| care.what == Care::Physiological);
    match chart.care()? {
        Care::Active if !began_physiological => Some((Watch::ThirdStageActive, protocol.steps(Watch::ThirdStageActive).into())),
        Care::Active | Care::Physiological => {
            let watch = Watch::ThirdStagePhysiological;
            let mut steps = Cow::from(protocol.steps(watch));
            if let Some(part_way) = part_way(chart, protocol, stage) {
                insert(&mut steps, part_way);
            }
            Some((watch, steps))
        }
    }
}

/// Puts a step where its number belongs.
fn insert(steps: &mut Cow<[Step]>, step: Step) {
    let place = steps.iter().position(|other| other.value > step.value).unwrap_or(steps.len());
    steps.to_mut().insert(place, step);
}

/// While a placenta is awaited, each limit once more, by the travel time earlier: who sets out there arrives at the limit.
/// A way as long as the limit is told from the birth on, as a caution. Our own choice.
fn less_travel(chart: &Chart, stage: &ThirdStage, steps: &[Step]) -> Vec<Step> {
    let travel = chart.travels.last().map_or(0, |travel| i64::from(travel.what.get()) * 1_000);
    if travel == 0 || stage.to.is_some() {
        return Vec::new();
    }
    let limits = steps.iter().filter(|step| step.level == Level::Limit);
    let early = |step: &Step| Step {
        level: if step.value.0 > travel { Level::Limit } else { Level::Caution },
        value: Milli(step.value.0.saturating_sub(travel).max(0)),
        source: format!("{}; less the travel time recorded: none found", step.source),
        status: Status::Choice,
        words: "The limit less the travel time to the hospital".to_owned(),
        ..step.clone()
    };
    limits.map(early).collect()
}

/// The active limit, counted from the first uterotonic.
fn part_way(chart: &Chart, protocol: &Protocol, stage: &ThirdStage) -> Option<Step> {
    let given = chart.medicines.iter().find(|medicine| medicine.what.uterotonic)?;
    let active = protocol.steps(Watch::ThirdStageActive).iter().find(|step| step.level == Level::Limit)?;
    let after_birth = Milli(chart.elapsed(&stage.from.at, &given.mark.at).ms.max(0) / 60);
    Some(Step {
        value: Milli(after_birth.0.saturating_add(active.value.0)),
        source: format!("{}; counted from the uterotonic: none found", active.source),
        status: Status::Choice,
        words: "Uterotonic given part-way: the limit of active care, counted from it".to_owned(),
        ..active.clone()
    })
}
