//! The places that a protocol's numbers stand in: what one protocol sets can be held beside what another one sets.

use std::collections::BTreeSet;
use std::fmt;
use std::str::FromStr;

use serde::de::IntoDeserializer;
use serde::de::value::Error as NoName;
use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::own::State;
use super::{Level, Protocol, Step, Watch};
use crate::message::Message;

/// A place for one number, in the order in which they are shown. Its text stands in files and in the store:
/// `late_entry`, `mother.1`, `pulse.limit.over.again.1`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(try_from = "String", into = "String")]
#[cfg_attr(feature = "types", ts(as = "String", rename = "ProtocolField"))]
pub enum Slot {
    /// A threshold.
    Step(StepSlot),
    /// A phase of the looks at the mother, counted from 1.
    Mother(u32),
    /// When a baby is scored by Apgar.
    Apgar,
    /// Minutes after which a typed entry counts as late.
    LateEntry,
    /// Grams of blood taken as one mL.
    GramsPerMl,
}

/// The place of a threshold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct StepSlot {
    /// What is watched.
    pub watch: Watch,
    /// Whether larger values pass it.
    pub upper: bool,
    /// How much passing it asks for attention.
    pub level: Level,
    /// Whether it asks for a sign beside its value.
    pub with: bool,
    /// Whether it takes two readings.
    pub again: bool,
    /// Counts those that are alike in all this, the nearest first, from 1.
    pub n: u32,
}

/// Text that names no place of a protocol.
#[derive(Debug, Error)]
#[error("not a field of a protocol: {0}")]
pub struct NoSlot(String);

/// Greatest count of places that are alike.
pub(super) const MOST: u32 = 99;

impl Slot {
    /// The place of the same kind with this count.
    #[must_use]
    pub fn numbered(self, n: u32) -> Self {
        match self {
            Self::Step(step) => Self::Step(step.numbered(n)),
            Self::Mother(_) => Self::Mother(n),
            other => other,
        }
    }

    /// Its count among those that are alike.
    #[must_use]
    pub fn n(self) -> u32 {
        match self {
            Self::Step(StepSlot { n, .. }) | Self::Mother(n) => n,
            Self::Apgar | Self::LateEntry | Self::GramsPerMl => 1,
        }
    }

    /// Whether the program works without it.
    #[must_use]
    pub fn can_be_off(self) -> bool {
        !matches!(self, Self::LateEntry | Self::GramsPerMl)
    }

    /// UCUM code of the unit of its number.
    #[must_use]
    pub fn unit(self) -> &'static str {
        match self {
            Self::Step(step) => step.watch.unit(),
            Self::Mother(_) | Self::Apgar | Self::LateEntry => "min",
            Self::GramsPerMl => "g/mL",
        }
    }

    /// Its name.
    #[must_use]
    pub fn name(self) -> Message {
        match self {
            Self::Step(step) => step.name(),
            Self::Mother(n) => Message::new("slot-mother").with("n", n),
            Self::Apgar => Message::new("slot-apgar"),
            Self::LateEntry => Message::new("slot-late-entry"),
            Self::GramsPerMl => Message::new("slot-grams"),
        }
    }
}

impl StepSlot {
    /// The place of this threshold; the first of those that are alike.
    #[must_use]
    pub fn of(watch: Watch, step: &Step) -> Self {
        let (with, again) = (!step.with.is_empty(), step.again.is_some());
        Self { watch, upper: step.is_upper(), level: step.level, with, again, n: 1 }
    }

    /// The place of the same kind with this count.
    pub(super) fn numbered(self, n: u32) -> Self {
        Self { n, ..self }
    }

    fn name(self) -> Message {
        let level = Message::new(match self.level {
            Level::Note => "slot-note",
            Level::Caution => "slot-caution",
            Level::Limit => "slot-limit",
        });
        // Of times and volumes there is no low.
        let side = match (self.watch.unit(), self.upper) {
            ("min" | "h" | "mL", true) => "slot-side-none",
            (_, true) => "slot-side-high",
            (_, false) => "slot-side-low",
        };
        let beside = match (self.with, self.again) {
            (true, _) => "slot-with",
            (_, true) => "slot-again",
            _ => "slot-alone",
        };
        Message::new("slot-step")
            .with("watch", self.watch.heading())
            .with("level", level)
            .with("n", self.n)
            .with("side", Message::new(side))
            .with("beside", Message::new(beside))
    }
}

/// Every number of a protocol at its place. Of those that are alike the first stands at the first place that is not
/// deliberately off.
pub(super) fn places(protocol: &Protocol) -> Vec<(Slot, State)> {
    let mut taken: BTreeSet<Slot> = protocol.off.iter().copied().collect();
    let mut place = |first: Slot| {
        let free = (1..).map(|n| first.numbered(n)).find(|slot| !taken.contains(slot)).unwrap_or(first);
        taken.insert(free);
        free
    };
    let mut all = vec![
        (Slot::LateEntry, State::Setting(protocol.late_entry.clone())),
        (Slot::GramsPerMl, State::Setting(protocol.grams_per_ml.clone())),
    ];
    if let Some(times) = &protocol.apgar {
        all.push((Slot::Apgar, State::Apgar(times.clone())));
    }
    all.extend(protocol.mother.iter().map(|phase| (place(Slot::Mother(1)), State::Phase(phase.clone()))));
    for thresholds in &protocol.watch {
        let steps = thresholds.step.iter();
        all.extend(steps.map(|step| (place(Slot::Step(StepSlot::of(thresholds.watch, step))), State::Step(step.clone()))));
    }
    all
}

impl fmt::Display for Slot {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Step(StepSlot { watch, upper, level, with, again, n }) => {
                let side = if *upper { "over" } else { "under" };
                let with = if *with { ".with" } else { "" };
                let again = if *again { ".again" } else { "" };
                write!(out, "{}.{}.{side}{with}{again}.{n}", code(watch), code(level))
            }
            Self::Mother(n) => write!(out, "mother.{n}"),
            Self::Apgar => write!(out, "apgar"),
            Self::LateEntry => write!(out, "late_entry"),
            Self::GramsPerMl => write!(out, "grams_per_ml"),
        }
    }
}

impl FromStr for Slot {
    type Err = NoSlot;
    fn from_str(text: &str) -> Result<Self, NoSlot> {
        // One place has one spelling.
        let slot = read(text).filter(|slot| slot.to_string() == text && (1..=MOST).contains(&slot.n()));
        slot.ok_or_else(|| NoSlot(text.chars().take(60).collect()))
    }
}

fn read(text: &str) -> Option<Slot> {
    let parts: Vec<&str> = text.split('.').collect();
    match parts.as_slice() {
        ["apgar"] => Some(Slot::Apgar),
        ["late_entry"] => Some(Slot::LateEntry),
        ["grams_per_ml"] => Some(Slot::GramsPerMl),
        ["mother", n] => Some(Slot::Mother(n.parse().ok()?)),
        [watch, level, side, marks @ .., n] => Some(Slot::Step(StepSlot {
            watch: named(watch)?,
            upper: *side == "over",
            level: named(level)?,
            with: marks.contains(&"with"),
            again: marks.contains(&"again"),
            n: n.parse().ok()?,
        })),
        _ => None,
    }
}

/// A value by the name that it has in a file.
fn named<'a, T: Deserialize<'a>>(name: &'a str) -> Option<T> {
    T::deserialize(IntoDeserializer::<NoName>::into_deserializer(name)).ok()
}

fn code<T: Serialize>(value: &T) -> String {
    serde_json::to_value(value).ok().and_then(|value| value.as_str().map(str::to_owned)).unwrap_or_default()
}

impl TryFrom<String> for Slot {
    type Error = NoSlot;
    fn try_from(text: String) -> Result<Self, NoSlot> {
        text.parse()
    }
}

impl From<Slot> for String {
    fn from(slot: Slot) -> Self {
        slot.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_of_every_published_protocol_reads_back_as_written_and_is_another() {
        for protocol in Protocol::published() {
            let found: Vec<Slot> = places(protocol).into_iter().map(|(slot, _)| slot).collect();
            for slot in &found {
                assert_eq!(slot.to_string().parse::<Slot>().unwrap(), *slot);
            }
            assert_eq!(found.iter().collect::<BTreeSet<_>>().len(), found.len(), "{}", protocol.id);
        }
    }

    #[test]
    fn a_place_has_one_spelling() {
        let good = "pulse.limit.over.again.1";
        assert_eq!(good.parse::<Slot>().unwrap().to_string(), good);
        for bad in [
            "",
            "pulse",
            "pulse.limit.over.1.again",
            "pulse.limit.over.0",
            "pulse.limit.over.01",
            "pulse.limit.over.100",
            "pulse.limit.beyond.1",
            "moon.limit.over.1",
            "mother",
            "mother.0",
        ] {
            assert!(bad.parse::<Slot>().is_err(), "{bad}");
        }
    }

    #[test]
    fn what_is_alike_is_counted_and_what_is_off_is_passed_over() {
        let mut protocol = Protocol::find("nice-rcog").unwrap().clone();
        let limits = |protocol: &Protocol| -> Vec<String> {
            let texts = places(protocol).into_iter().map(|(slot, _)| slot.to_string());
            texts.filter(|text| text.starts_with("blood-loss.limit")).collect()
        };
        assert_eq!(limits(&protocol), ["blood-loss.limit.over.1", "blood-loss.limit.over.2", "blood-loss.limit.over.3"]);
        protocol.off = vec!["blood-loss.limit.over.2".parse().unwrap()];
        assert_eq!(limits(&protocol), ["blood-loss.limit.over.1", "blood-loss.limit.over.3", "blood-loss.limit.over.4"]);
    }
}
