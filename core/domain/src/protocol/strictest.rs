//! The strictest of the published protocols, field by field, and how a number is taken over from one of them.

use std::collections::BTreeSet;

use super::{ApgarAgain, ApgarTimes, Compare, Protocol, Schedule, Setting, Slot, State, Status, Step};

/// The strictest that a published protocol has in this field: the lowest of upper limits, the highest of lower ones, the
/// shortest of times. Where several are alike, the one that was checked best. None where no protocol sets it.
#[must_use]
pub fn strictest(slot: Slot) -> Option<State> {
    if let Slot::Mother(n) = slot {
        return (1..).zip(strictest_schedule()).find(|(at, _)| *at == n).map(|(_, phase)| State::Phase(phase));
    }
    let all = Protocol::published().iter().flat_map(|protocol| {
        let here = protocol.numbers().into_iter().filter(move |(at, _)| *at == slot);
        here.map(move |(_, state)| (protocol, state))
    });
    let (protocol, state) = all.min_by_key(|(_, state)| order(state))?;
    Some(borrowed(protocol, state))
}

/// The stricter, the less.
fn order(state: &State) -> (i64, bool, u32, u8) {
    match state {
        // More mL for a gram, and sooner late: the lower is the stricter.
        State::Setting(setting) => (setting.value.0, false, 0, doubt(setting.status)),
        State::Step(step) => {
            let past = matches!(step.compare, Compare::Over | Compare::Under);
            (step.distance(), past, step.again.unwrap_or_default(), doubt(step.status))
        }
        State::Phase(phase) => (i64::from(phase.every), false, 0, doubt(phase.status)),
        // More scores, and sooner.
        State::Apgar(times) => {
            let scores = times.minutes.len() + times.again.as_ref().map_or(0, |again| again.minutes().count());
            (-i64::try_from(scores).unwrap_or(i64::MAX), false, 0, doubt(times.status))
        }
        State::Off => (i64::MAX, false, 0, 0),
    }
}

/// How far a number is from having been read in its source.
fn doubt(status: Status) -> u8 {
    match status {
        Status::Seen => 0,
        Status::SecondHand => 1,
        Status::Borrowed => 2,
        Status::CommonPractice => 3,
        Status::Choice => 4,
        Status::Memory => 5,
    }
}

/// Minute by minute after the birth the shortest interval that any published protocol has there.
pub(super) fn strictest_schedule() -> Vec<Schedule> {
    let all = Protocol::published();
    let ends: BTreeSet<u32> = all.iter().flat_map(|protocol| &protocol.mother).map(|phase| phase.until).collect();
    let mut phases: Vec<Schedule> = Vec::new();
    for until in ends {
        let here = all.iter().filter_map(|protocol| {
            let phase = protocol.mother.iter().find(|phase| phase.until >= until)?;
            Some((protocol, phase))
        });
        let Some((protocol, phase)) = here.min_by_key(|(_, phase)| (phase.every, doubt(phase.status))) else { continue };
        // One phase, as far as the interval stays.
        phases.pop_if(|before| before.every == phase.every);
        let (source, status) = whence(protocol, &phase.source, phase.status);
        phases.push(Schedule { every: phase.every, until, source, status });
    }
    phases
}

/// A number of another protocol, as it is taken over: its source says from where. From memory stays from memory, and a
/// choice stays one.
#[must_use]
pub fn borrowed(from: &Protocol, state: State) -> State {
    match state {
        State::Off => State::Off,
        State::Setting(setting) => {
            let (source, status) = whence(from, &setting.source, setting.status);
            State::Setting(Setting { source, status, ..setting })
        }
        State::Phase(phase) => {
            let (source, status) = whence(from, &phase.source, phase.status);
            State::Phase(Schedule { source, status, ..phase })
        }
        State::Apgar(times) => {
            let (source, status) = whence(from, &times.source, times.status);
            let again = times.again.map(|again| {
                let (source, status) = whence(from, &again.source, again.status);
                ApgarAgain { source, status, ..again }
            });
            State::Apgar(ApgarTimes { source, status, again, ..times })
        }
        State::Step(step) => {
            let (source, status) = whence(from, &step.source, step.status);
            State::Step(Step { source, status, ..step })
        }
    }
}

/// Whether a number names a published protocol as its source that has another number in this field.
#[must_use]
pub fn misattributed(slot: Slot, state: &State) -> bool {
    let Some((source, _)) = state.whence() else { return false };
    let all = Protocol::published().iter().flat_map(|protocol| {
        protocol.numbers().into_iter().filter(|(at, _)| *at == slot).map(move |(_, theirs)| borrowed(protocol, theirs))
    });
    let mut same = all.filter(|theirs| theirs.whence().is_some_and(|(theirs, _)| theirs == source)).peekable();
    same.peek().is_some() && same.all(|theirs| theirs.bare() != state.bare())
}

fn whence(from: &Protocol, source: &str, status: Status) -> (String, Status) {
    let status = match status {
        Status::Memory | Status::Choice => status,
        _ => Status::Borrowed,
    };
    (format!("{}: {source}", from.title), status)
}
