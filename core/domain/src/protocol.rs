//! Thresholds are data: a protocol is a TOML file in which every number carries its source and how well it was checked.

use std::sync::LazyLock;

use serde::{Deserialize, Serialize};
use thiserror::Error;
use ts_rs::TS;

use crate::message::Message;

mod apgar;
mod step;
mod watch;

pub use apgar::{ApgarAgain, ApgarTimes};
pub use step::{Compare, Milli, NoThreshold, Sign, Step};
pub use watch::Watch;

/// How much a notice asks for attention: told by word, shape and colour together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Level {
    /// Worth knowing.
    Note,
    /// Comes near.
    Caution,
    /// A limit of the protocol.
    Limit,
}

/// How well a number was checked against its source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Status {
    /// Read in the source.
    Seen,
    /// Read in another's account of the source.
    SecondHand,
    /// From memory, unverified; shown so.
    Memory,
    /// Taken over from another guideline, which the source names.
    Borrowed,
    /// Our own choice, for want of a source.
    Choice,
    /// A fact of the trade without a published source.
    CommonPractice,
}

/// The thresholds of one watch, in the order of the file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Thresholds {
    /// What is watched.
    pub watch: Watch,
    /// UCUM code of the unit; must be the watch's own.
    pub unit: String,
    /// Its thresholds.
    pub step: Vec<Step>,
}

/// Every so many minutes until so many minutes after the birth.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Schedule {
    /// Minutes between two observations.
    pub every: u32,
    /// Minutes after the birth at which this phase ends.
    pub until: u32,
    /// Where it comes from.
    pub source: String,
    /// How well that was checked.
    pub status: Status,
}

/// A single number with its source.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Setting {
    /// The number.
    pub value: Milli,
    /// Where it comes from.
    pub source: String,
    /// How well that was checked.
    pub status: Status,
}

/// A protocol: whose limits are watched.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Protocol {
    /// Stable id.
    pub id: String,
    /// Name as printed.
    pub title: String,
    /// Editions of the guidance that it was built from.
    pub edition: String,
    /// Day on which the numbers were last held against their sources, `2026-11-25`.
    pub checked: String,
    /// Minutes after which a typed entry counts as late.
    pub late_entry: Setting,
    /// Grams of blood taken as one mL.
    pub grams_per_ml: Setting,
    /// Observations of the mother, phase by phase.
    pub mother: Vec<Schedule>,
    /// When a baby is scored by Apgar; none where the protocol does not say.
    #[serde(default)]
    pub apgar: Option<ApgarTimes>,
    /// The watches.
    pub watch: Vec<Thresholds>,
}

/// Why a file is no protocol.
#[derive(Debug, Error, PartialEq, Eq)]
pub enum ProtocolError {
    /// The text does not parse; the message names line and column.
    #[error("{0}")]
    Syntax(String),
    /// The parts do not fit; the path names which.
    #[error("{path}: {problem}")]
    Content {
        /// For example `watch[2].step[0].source`.
        path: String,
        /// What is wrong.
        problem: String,
    },
}

impl Protocol {
    /// Reads a protocol file and checks that every number has a source and every watch its own unit.
    ///
    /// # Errors
    /// [`ProtocolError`] names the place and what is wrong.
    pub fn parse(text: &str) -> Result<Self, ProtocolError> {
        let protocol: Self = toml::from_str(text).map_err(|error| ProtocolError::Syntax(error.to_string()))?;
        protocol.check()?;
        Ok(protocol)
    }

    fn check(&self) -> Result<(), ProtocolError> {
        let wrong = |path: String, problem: &str| Err(ProtocolError::Content { path, problem: problem.to_owned() });
        if let Some((path, _)) = self.sources().find(|(_, source)| source.trim().is_empty()) {
            return wrong(format!("{path}.source"), "every number needs its source");
        }
        for (i, thresholds) in self.watch.iter().enumerate() {
            if thresholds.unit != thresholds.watch.unit() {
                return wrong(format!("watch[{i}].unit"), &format!("must be {}", thresholds.watch.unit()));
            }
            if self.watch.iter().filter(|other| other.watch == thresholds.watch).count() > 1 {
                return wrong(format!("watch[{i}].watch"), "stands twice");
            }
            if thresholds.step.is_empty() {
                return wrong(format!("watch[{i}].step"), "has no threshold");
            }
            for (j, step) in thresholds.step.iter().enumerate() {
                if step.again.is_some_and(|minutes| minutes == 0 || !thresholds.watch.is_read()) {
                    return wrong(format!("watch[{i}].step[{j}].again"), "must be minutes between two readings of a sign");
                }
                if !step.with.is_empty() && thresholds.watch != Watch::BloodLoss {
                    return wrong(format!("watch[{i}].step[{j}].with"), "only a volume of blood takes signs beside it");
                }
                if let Some(k) = step.with.iter().position(|sign| !Watch::READ.contains(&sign.watch)) {
                    return wrong(format!("watch[{i}].step[{j}].with[{k}].watch"), "must be a sign that is read at a look");
                }
            }
        }
        let every_zero = self.mother.iter().position(|phase| phase.every == 0);
        if let Some(i) = every_zero {
            return wrong(format!("mother[{i}].every"), "must be at least 1 minute");
        }
        if let Some((path, problem)) = self.apgar.as_ref().and_then(ApgarTimes::wrong) {
            return wrong(format!("apgar.{path}"), problem);
        }
        if self.grams_per_ml.value.0 <= 0 {
            return wrong("grams_per_ml.value".to_owned(), "must be more than 0");
        }
        Ok(())
    }

    /// Where each number comes from, with the path of the number.
    fn sources(&self) -> impl Iterator<Item = (String, &str)> {
        let settings = [("late_entry", &self.late_entry), ("grams_per_ml", &self.grams_per_ml)];
        let settings = settings.into_iter().map(|(path, setting)| (path.to_owned(), setting.source.as_str()));
        let phases = self.mother.iter().enumerate().map(|(i, phase)| (format!("mother[{i}]"), phase.source.as_str()));
        let apgar = self.apgar.iter().map(|times| ("apgar".to_owned(), times.source.as_str()));
        let again = self.apgar.iter().filter_map(|times| times.again.as_ref());
        let again = again.map(|again| ("apgar.again".to_owned(), again.source.as_str()));
        let steps = self.watch.iter().enumerate().flat_map(|(i, thresholds)| {
            let steps = thresholds.step.iter().enumerate();
            steps.map(move |(j, step)| (format!("watch[{i}].step[{j}]"), step.source.as_str()))
        });
        settings.chain(phases).chain(apgar).chain(again).chain(steps)
    }

    /// The protocols that come with the program, built from published guidance. None is preselected.
    #[must_use]
    pub fn published() -> &'static [Self] {
        static PUBLISHED: LazyLock<Vec<Protocol>> =
            LazyLock::new(|| PUBLISHED_TEXTS.iter().filter_map(|text| Protocol::parse(text).ok()).collect());
        &PUBLISHED
    }

    /// A protocol that comes with the program.
    #[must_use]
    pub fn find(id: &str) -> Option<&'static Self> {
        Self::published().iter().find(|protocol| protocol.id == id)
    }

    /// The thresholds of a watch; empty where the protocol sets none.
    #[must_use]
    pub fn steps(&self, watch: Watch) -> &[Step] {
        self.watch.iter().find(|thresholds| thresholds.watch == watch).map_or(&[], |thresholds| thresholds.step.as_slice())
    }

    /// Blood in mL that so many grams are taken for.
    #[must_use]
    pub fn millilitres(&self, grams: u32) -> u32 {
        let exact = i64::from(grams).saturating_mul(1000) / self.grams_per_ml.value.0.max(1);
        u32::try_from(exact).unwrap_or(u32::MAX)
    }
}

const PUBLISHED_TEXTS: [&str; 3] = [
    include_str!("../protocols/nice-rcog.toml"),
    include_str!("../protocols/who.toml"),
    include_str!("../protocols/acog-aap.toml"),
];

impl Status {
    /// The catalogue's id of its words.
    #[must_use]
    pub fn name(self) -> Message {
        Message::new(match self {
            Self::Seen => "status-seen",
            Self::SecondHand => "status-second-hand",
            Self::Memory => "status-memory",
            Self::Borrowed => "status-borrowed",
            Self::Choice => "status-choice",
            Self::CommonPractice => "status-common-practice",
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_published_protocols_are_read() {
        for text in PUBLISHED_TEXTS {
            Protocol::parse(text).unwrap();
        }
        let ids: Vec<_> = Protocol::published().iter().map(|protocol| protocol.id.as_str()).collect();
        assert_eq!(ids, ["nice-rcog", "who", "acog-aap"]);
    }

    #[test]
    fn a_bad_file_is_told_by_place() {
        let good = PUBLISHED_TEXTS[0];
        let unit = Protocol::parse(&good.replacen("unit = \"min\"", "unit = \"h\"", 1)).unwrap_err().to_string();
        assert_eq!(unit, "watch[0].unit: must be min");
        let syntax = Protocol::parse("id = \"x\"\ntitle = 3").unwrap_err().to_string();
        assert!(syntax.contains("line 2"), "{syntax}");
        let without = good.replacen("source = \"NICE CG190", "source = \"\" # \"NICE CG190", 1);
        let refusal = Protocol::parse(&without).unwrap_err().to_string();
        assert!(refusal.contains("step") && refusal.contains("needs its source"), "{refusal}");
        let again = Protocol::parse(&good.replacen("again = 30", "again = 0", 1)).unwrap_err().to_string();
        assert_eq!(again, "watch[4].step[1].again: must be minutes between two readings of a sign");
        let time = Protocol::parse(&good.replacen("value = 20\n", "value = 20\nagain = 30\n", 1)).unwrap_err().to_string();
        assert_eq!(time, "watch[0].step[0].again: must be minutes between two readings of a sign");
        let with = PUBLISHED_TEXTS[1].replacen("watch = \"shock-index\", compare", "watch = \"blood-loss\", compare", 1);
        let with = Protocol::parse(&with).unwrap_err().to_string();
        assert_eq!(with, "watch[2].step[1].with[3].watch: must be a sign that is read at a look");
    }

    #[test]
    fn apgar_times_that_do_not_fit_are_told_by_place() {
        let told = |from: &str, to: &str| {
            let text = PUBLISHED_TEXTS[0].replacen(from, to, 1);
            assert_ne!(text, PUBLISHED_TEXTS[0], "{from}");
            Protocol::parse(&text).unwrap_err().to_string()
        };
        let rise = "must be at least 1, and rise";
        assert_eq!(told("minutes = [1, 5]", "minutes = [0, 5]"), format!("apgar.minutes[0]: {rise}"));
        assert_eq!(told("minutes = [1, 5]", "minutes = [1, 5, 5]"), format!("apgar.minutes[2]: {rise}"));
        assert_eq!(told("minutes = [1, 5]", "minutes = [1]"), "apgar.again.after: must be one of the minutes");
        for under in ["0", "11"] {
            assert_eq!(told("under = 7", &format!("under = {under}")), "apgar.again.under: must be 1 to 10");
        }
        assert_eq!(told("every = 5 #", "every = 0 #"), "apgar.again.every: must be at least 1 minute");
        assert_eq!(told("until = 20\n", "until = 9\n"), "apgar.again.until: must not come before the first further score");
        assert_eq!(told("until = 20\n", "until = 1441\n"), "apgar.again.until: must be a day at most");
        let without = |change: fn(&mut ApgarTimes)| {
            let mut protocol = Protocol::published()[0].clone();
            change(protocol.apgar.as_mut().unwrap());
            protocol.check().unwrap_err().to_string()
        };
        let told = "every number needs its source";
        assert_eq!(without(|apgar| apgar.source.clear()), format!("apgar.source: {told}"));
        assert_eq!(without(|apgar| apgar.again.as_mut().unwrap().source.clear()), format!("apgar.again.source: {told}"));
    }

    #[test]
    fn a_setting_and_a_phase_need_their_sources_too() {
        let sourceless = |change: fn(&mut Protocol)| {
            let mut protocol = Protocol::published()[0].clone();
            change(&mut protocol);
            protocol.check().unwrap_err().to_string()
        };
        let told = "every number needs its source";
        assert_eq!(sourceless(|it| it.late_entry.source.clear()), format!("late_entry.source: {told}"));
        assert_eq!(sourceless(|it| it.grams_per_ml.source = " ".to_owned()), format!("grams_per_ml.source: {told}"));
        assert_eq!(sourceless(|it| it.mother[0].source.clear()), format!("mother[0].source: {told}"));
    }

    #[test]
    fn what_is_no_number_is_no_threshold() {
        let good = PUBLISHED_TEXTS[0];
        for bad in ["nan", "inf", "-inf", "-1", "-0.001", "1000000.1", "9223372036854775807"] {
            let text = good.replacen("value = ", &format!("value = {bad} # "), 1);
            let refusal = Protocol::parse(&text).unwrap_err().to_string();
            assert!(refusal.contains("line ") && refusal.contains("is not between 0 and 1000000"), "{bad}: {refusal}");
        }
        assert_eq!(Milli::try_from(0.0), Ok(Milli(0)));
        assert_eq!(Milli::try_from(1_000_000.0), Ok(Milli(1_000_000_000)));
        assert!(Milli::try_from(f64::NAN).is_err());
    }

    #[test]
    fn weighed_blood_follows_the_factor() {
        // Source: arithmetic; 530 g is 530 mL at 1.00 and 500 mL at 1.06 g/mL.
        let mut protocol = Protocol::published()[0].clone();
        assert_eq!(protocol.millilitres(530), 530);
        protocol.grams_per_ml.value = Milli(1060);
        assert_eq!(protocol.millilitres(530), 500);
    }
}
