//! What is odd about the entries: shown with what it is about, never refused, never put right by the program.

use std::collections::{BTreeMap, BTreeSet};

use super::{Chart, Line, Odd, Oddity, State};
use crate::entry::{Entry, EntryId};
use crate::fact::{BabyNo, Fact};
use crate::time::{Certainty, Elapsed, Occurred};

/// A wall clock that moved by more than this against the running clock was set, ms.
const CLOCK_STEP_MS: u32 = 2_000;

pub(super) fn find(chart: &mut Chart, missing: &[EntryId]) {
    let mut odd: BTreeSet<Oddity> = missing.iter().map(|entry| Oddity { entry: *entry, what: Odd::AmendsMissing }).collect();
    let mut seen: BTreeSet<(&'static str, BabyNo)> = BTreeSet::new();
    let mut note = |line: &Line, what| {
        odd.insert(Oddity { entry: line.first.id, what });
    };
    for line in chart.lines.iter().filter(|line| line.state() != State::Retracted) {
        let entry = line.current();
        if Elapsed::between(&Occurred::Marked(entry.recorded.clone()), &entry.occurred).ms > CLOCK_STEP_MS.into() {
            note(line, Odd::InFuture);
        }
        if matches!(entry.fact, Fact::Unknown { .. }) {
            note(line, Odd::UnknownFact);
        }
        if before_birth(chart, entry) {
            note(line, Odd::BeforeBirth);
        }
        for baby in babies(&entry.fact) {
            if chart.babies.get(&baby).is_none_or(|known| known.born.is_none()) {
                note(line, Odd::NoBaby);
            }
            if let Some((what, odd)) = once(&entry.fact)
                && !seen.insert((what, baby))
            {
                note(line, odd);
            }
        }
        if let Fact::CordCut { baby } = entry.fact
            && cut_before_clamp(chart, baby)
        {
            note(line, Odd::CutBeforeClamp);
        }
    }
    odd.extend(clock_changes(&chart.lines));
    chart.oddities = odd.into_iter().collect();
}

/// The babies that a fact is about.
fn babies(fact: &Fact) -> Vec<BabyNo> {
    match fact {
        Fact::CordPulsationStopped { baby } | Fact::CordClamped { baby } | Fact::CordCut { baby } | Fact::BabyBorn { baby } => {
            vec![*baby]
        }
        Fact::PlacentaBorn { babies } | Fact::MembranesBorn { babies } => babies.clone(),
        Fact::ApgarScored(apgar) => vec![apgar.baby],
        Fact::NewbornMeasured(measures) => vec![measures.baby],
        _ => Vec::new(),
    }
}

/// Marks that a baby has once, and what a second one is called.
fn once(fact: &Fact) -> Option<(&'static str, Odd)> {
    match fact {
        Fact::BabyBorn { .. } => Some(("born", Odd::SecondBirth)),
        Fact::CordPulsationStopped { .. } => Some(("stopped", Odd::Repeated)),
        Fact::CordClamped { .. } => Some(("clamped", Odd::Repeated)),
        Fact::CordCut { .. } => Some(("cut", Odd::Repeated)),
        Fact::PlacentaBorn { .. } => Some(("placenta", Odd::SecondPlacenta)),
        Fact::MembranesBorn { .. } => Some(("membranes", Odd::Repeated)),
        _ => None,
    }
}

/// Third-stage facts that lie before the birth of a baby that they are about; blood and examination, before any birth.
fn before_birth(chart: &Chart, entry: &Entry) -> bool {
    let born = |no: &BabyNo| chart.babies.get(no).and_then(|baby| baby.born.as_ref());
    let before = |no: &BabyNo| born(no).is_some_and(|mark| earlier(&entry.occurred, &mark.at));
    match &entry.fact {
        Fact::BloodLoss(_) | Fact::Examined { .. } => chart.babies.keys().filter(|no| born(no).is_some()).all(before),
        Fact::BabyBorn { .. } => false,
        fact => babies(fact).iter().any(before),
    }
}

fn cut_before_clamp(chart: &Chart, baby: BabyNo) -> bool {
    let Some(baby) = chart.babies.get(&baby) else { return false };
    match (&baby.cut, &baby.clamped) {
        (Some(cut), Some(clamped)) => earlier(&cut.at, &clamped.at),
        (Some(_), None) => true,
        _ => false,
    }
}

/// A typed time has whole minutes only, so it is earlier only from a minute on.
fn earlier(one: &Occurred, other: &Occurred) -> bool {
    let elapsed = Elapsed::between(one, other);
    elapsed.ms > if elapsed.certainty == Certainty::Typed { 59_999 } else { 0 }
}

/// Lines at which the wall clock had moved against the running clock since the stamp before, in order of writing.
fn clock_changes(lines: &[Line]) -> Vec<Oddity> {
    let mut entries: Vec<(&Entry, EntryId)> = Vec::new();
    for line in lines {
        entries.push((&line.first, line.first.id));
        entries.extend(line.amendments.iter().map(|entry| (entry, line.first.id)));
    }
    entries.sort_by_key(|(entry, _)| entry.id);
    let mut last: BTreeMap<&str, (i64, i64)> = BTreeMap::new();
    let mut odd = Vec::new();
    for (entry, line) in entries {
        let Some(boot) = &entry.recorded.boot else { continue };
        let here = (entry.recorded.wall_ms, boot.since_ms);
        if let Some((wall_ms, since_ms)) = last.insert(&boot.id, here) {
            let drift = (here.0.saturating_sub(wall_ms)).saturating_sub(here.1.saturating_sub(since_ms));
            if drift.unsigned_abs() > CLOCK_STEP_MS.into() {
                odd.push(Oddity { entry: line, what: Odd::ClockChanged });
            }
        }
    }
    odd
}
