//! What is odd about the entries: shown with what it is about, never refused, never put right by the program.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use super::clock_changes::{self, CLOCK_STEP_MS};
use super::{Chart, Line, State, phones};
use crate::entry::{Entry, EntryId};
use crate::fact::{BabyNo, Fact};
use crate::message::Message;
use crate::time::{Certainty, Occurred, span};

/// Something odd: life is odd, so it is shown and not refused.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Oddity {
    /// The entry at which it shows.
    pub entry: EntryId,
    /// What is odd.
    pub what: Odd,
    /// By how much the clock or its offset changed, ms; negative when back. At a restart it is the least.
    #[cfg_attr(feature = "types", ts(type = "number | null"))]
    pub by_ms: Option<i64>,
}

impl Oddity {
    pub(super) fn plain(entry: EntryId, what: Odd) -> Self {
        Self { entry, what, by_ms: None }
    }

    /// The sentence that tells it.
    #[must_use]
    pub fn message(&self) -> Message {
        let Some(by_ms) = self.by_ms else { return self.what.message() };
        let way = if by_ms < 0 { "back" } else { "forward" };
        self.what.message().with("way", way).with("by", span(by_ms))
    }
}

/// Kinds of oddity.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Odd {
    /// It happened before the birth of the baby that it is about, or before any birth.
    BeforeBirth,
    /// The baby of this entry has no birth on record.
    NoBaby,
    /// A second birth of the same baby.
    SecondBirth,
    /// A second placenta for the same baby.
    SecondPlacenta,
    /// The same mark stands twice; the first in time counts.
    Repeated,
    /// The cord is cut before it is clamped.
    CutBeforeClamp,
    /// The time lies after the moment of writing.
    InFuture,
    /// The wall clock was changed by more than 2 s since the line before, as the running clock tells.
    ClockChanged,
    /// The wall clock was set back by more than 2 s since the line before, at a restart or without a running clock.
    ClockSetBack,
    /// Local time changed against UTC since the line before: summer time, or another time zone.
    ZoneChanged,
    /// The phone's clock is ahead of the one that the birth is told by, or behind it, by more than 2 s.
    ClocksApart,
    /// The phone wrote about the same birth as another one, and nobody compared their clocks.
    ClocksNotCompared,
    /// A surer comparison of the same two clocks says something else.
    ClocksDisagree,
    /// It puts right an entry that is not here.
    AmendsMissing,
    /// A kind of fact that this version does not know.
    UnknownFact,
}

impl Odd {
    /// The sentence that tells it without its amount; [`Oddity::message`] tells both.
    #[must_use]
    pub fn message(self) -> Message {
        let id = serde_json::to_value(self).ok().and_then(|value| value.as_str().map(|text| format!("odd-{text}")));
        Message::new(id.unwrap_or_default())
    }
}

pub(super) fn find(chart: &mut Chart, missing: &[EntryId]) {
    let mut odd: BTreeSet<Oddity> = missing.iter().map(|entry| Oddity::plain(*entry, Odd::AmendsMissing)).collect();
    let mut seen: BTreeSet<(&'static str, BabyNo)> = BTreeSet::new();
    let mut note = |line: &Line, what| {
        odd.insert(Oddity::plain(line.first.id, what));
    };
    for line in chart.lines.iter().filter(|line| line.state() != State::Retracted) {
        let entry = line.current();
        if chart.delay_ms(entry) < -i64::from(CLOCK_STEP_MS) {
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
    odd.extend(clock_changes::find(&chart.lines, &chart.runs));
    odd.extend(phones::find(chart));
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
        Fact::NewbornEvent { baby, .. } => vec![*baby],
        Fact::MedicineGiven(medicine) => medicine.baby.into_iter().collect(),
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
    let before = |no: &BabyNo| born(no).is_some_and(|mark| earlier(chart, &entry.occurred, &mark.at));
    match &entry.fact {
        Fact::BloodLoss(_) | Fact::Examined { .. } => chart.babies.keys().filter(|no| born(no).is_some()).all(before),
        Fact::BabyBorn { .. } => false,
        fact => babies(fact).iter().any(before),
    }
}

fn cut_before_clamp(chart: &Chart, baby: BabyNo) -> bool {
    let Some(baby) = chart.babies.get(&baby) else { return false };
    match (&baby.cut, &baby.clamped) {
        (Some(cut), Some(clamped)) => earlier(chart, &cut.at, &clamped.at),
        (Some(_), None) => true,
        _ => false,
    }
}

/// A typed time has whole minutes only, so it is earlier only from a minute on.
fn earlier(chart: &Chart, one: &Occurred, other: &Occurred) -> bool {
    let elapsed = chart.elapsed(one, other);
    elapsed.ms > if elapsed.certainty == Certainty::Typed { 59_999 } else { 0 }
}
