//! Thresholds are data: a protocol is a TOML file in which every number carries its source and how well it was checked.

use std::sync::LazyLock;

use serde::{Deserialize, Serialize};

use crate::message::Message;

mod apgar;
mod own;
mod read;
mod slot;
mod step;
mod strictest;
mod watch;

pub use apgar::{ApgarAgain, ApgarTimes};
pub use own::{OWN, OwnChange, OwnProtocol, State, Unfinished, state_words};
pub use read::FileError;
pub use slot::{NoSlot, Slot, StepSlot};
pub use step::{Compare, Milli, NoThreshold, Sign, Step};
pub use strictest::{borrowed, misattributed, strictest};
pub use watch::Watch;

/// How much a notice asks for attention: told by word, shape and colour together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
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
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
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
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
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
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
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
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
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
    /// What the practice leaves out on purpose; empty in a published protocol, which has what its sources have.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "types", ts(as = "Option<Vec<Slot>>", optional))]
    pub off: Vec<Slot>,
    /// Minutes after which a typed entry counts as late.
    pub late_entry: Setting,
    /// Grams of blood taken as one mL.
    pub grams_per_ml: Setting,
    /// Observations of the mother, phase by phase.
    pub mother: Vec<Schedule>,
    /// When a baby is scored by Apgar; none where the protocol does not say.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub apgar: Option<ApgarTimes>,
    /// The watches.
    pub watch: Vec<Thresholds>,
}

impl Protocol {
    /// Reads a protocol file and checks that every number has a source and every watch its own unit.
    ///
    /// # Errors
    /// All that is wrong, each by its path and line.
    pub fn parse(text: &str) -> Result<Self, Vec<FileError>> {
        read::protocol(text)
    }

    /// The file that it is read from again, as it is.
    #[must_use]
    pub fn file(&self) -> String {
        let text = toml::to_string(self).unwrap_or_default();
        format!("{FILE_HEAD}\n{text}")
    }

    /// Every number at its place.
    #[must_use]
    pub fn numbers(&self) -> Vec<(Slot, State)> {
        slot::places(self)
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

/// Stands above every protocol in a file.
const FILE_HEAD: &str = "\
# Thresholds are data. Every number names its source and how well it was checked:
# seen, second-hand, memory (shown as unverified), borrowed (the source names from where), choice (ours).
# The protocol in force at a birth is the practitioner's choice; local protocol and local law come first.
";

const PUBLISHED_TEXTS: [&str; 3] = [
    include_str!("../protocols/nice-rcog.toml"),
    include_str!("../protocols/who.toml"),
    include_str!("../protocols/acog-aap.toml"),
];

impl Schedule {
    /// What is wrong with it by itself, by the path of the part.
    fn problems(&self) -> Vec<(String, Message)> {
        let mut found = step::sourceless(&self.source);
        if self.every == 0 {
            found.push(("every".to_owned(), Message::new("protocol-file-every")));
        }
        found
    }
}

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

    /// What is wrong with a text, as `path: id`.
    fn wrong(text: &str) -> Vec<String> {
        let errors = Protocol::parse(text).err().unwrap_or_default();
        errors.into_iter().map(|error| format!("{}: {}", error.path, error.problem.id)).collect()
    }

    #[test]
    fn a_bad_file_is_told_by_place() {
        let good = PUBLISHED_TEXTS[0];
        assert_eq!(wrong(good), [""; 0]);
        assert_eq!(wrong(&good.replacen("unit = \"min\"", "unit = \"h\"", 1)), ["watch[0].unit: protocol-file-unit"]);
        let without = good.replacen("source = \"NICE CG190", "source = \"\" # \"NICE CG190", 1);
        assert_eq!(wrong(&without), ["watch[0].step[1].source: protocol-file-no-source"]);
        let again = good.replacen("again = 30", "again = 0", 1);
        assert_eq!(wrong(&again), ["watch[4].step[1].again: protocol-file-again"]);
        let time = good.replacen("value = 20\n", "value = 20\nagain = 30\n", 1);
        assert_eq!(wrong(&time), ["watch[0].step[0].again: protocol-file-again"]);
        let with = PUBLISHED_TEXTS[1].replacen("watch = \"shock-index\", compare", "watch = \"blood-loss\", compare", 1);
        assert_eq!(wrong(&with), ["watch[2].step[1].with[3].watch: protocol-file-sign"]);
    }

    #[test]
    fn a_fault_of_syntax_has_its_line() {
        let errors = Protocol::parse("id = \"x\"\ntitle = \nedition = 3 4\n").unwrap_err();
        assert!(errors.iter().all(|error| error.path.is_empty() && error.problem.id == "protocol-file-syntax"), "{errors:?}");
        assert_eq!(errors.iter().map(|error| error.line).collect::<Vec<_>>(), [2, 3]);
    }

    #[test]
    fn everything_that_is_wrong_is_told_at_once_in_order_of_lines() {
        let bad = PUBLISHED_TEXTS[0]
            .replacen("title", "titel", 1)
            .replacen("value = 15", "value = \"15\"", 1)
            .replacen("level = \"caution\"", "level = \"alarm\"", 1)
            .replacen("value = 2000", "value = 900", 1);
        let errors = Protocol::parse(&bad).unwrap_err();
        assert!(errors.is_sorted_by_key(|error| error.line), "{errors:?}");
        let told: Vec<String> = errors.iter().map(|error| format!("{}: {}", error.path, error.problem.id)).collect();
        let expected = [
            "title: protocol-file-missing",
            "titel: protocol-file-unknown",
            "late_entry.value: protocol-file-number",
            "watch[0].step[0].level: protocol-file-one-of",
            "watch[2].step[3].value: protocol-file-order",
        ];
        assert_eq!(told, expected);
        let line = |text: &str| bad.lines().position(|line| line.starts_with(text)).unwrap() + 1;
        let lines: Vec<usize> = errors.iter().map(|error| error.line as usize).collect();
        assert_eq!(lines[1..4], [line("titel"), line("value = \"15\""), line("level = \"alarm\"")]);
    }

    #[test]
    fn apgar_times_that_do_not_fit_are_told_by_place() {
        let told = |from: &str, to: &str| {
            let text = PUBLISHED_TEXTS[0].replacen(from, to, 1);
            assert_ne!(text, PUBLISHED_TEXTS[0], "{from}");
            wrong(&text).concat()
        };
        assert_eq!(told("minutes = [1, 5]", "minutes = [0, 5]"), "apgar.minutes[0]: protocol-file-apgar-rise");
        assert_eq!(told("minutes = [1, 5]", "minutes = [1, 5, 5]"), "apgar.minutes[2]: protocol-file-apgar-rise");
        assert_eq!(told("minutes = [1, 5]", "minutes = [1, \"5\"]"), "apgar.minutes[1]: protocol-file-minutes");
        assert_eq!(told("minutes = [1, 5]", "minutes = [1]"), "apgar.again.after: protocol-file-apgar-after");
        for under in ["0", "11"] {
            assert_eq!(told("under = 7", &format!("under = {under}")), "apgar.again.under: protocol-file-apgar-under");
        }
        assert_eq!(told("every = 5 #", "every = 0 #"), "apgar.again.every: protocol-file-every");
        assert_eq!(told("until = 20\n", "until = 9\n"), "apgar.again.until: protocol-file-apgar-until");
        assert_eq!(told("until = 20\n", "until = 1441\n"), "apgar.again.until: protocol-file-apgar-day");
        let without = |change: fn(&mut ApgarTimes)| {
            let mut protocol = Protocol::published()[0].clone();
            change(protocol.apgar.as_mut().unwrap());
            wrong(&protocol.file()).concat()
        };
        assert_eq!(without(|apgar| apgar.source.clear()), "apgar.source: protocol-file-no-source");
        let again = without(|apgar| apgar.again.as_mut().unwrap().source.clear());
        assert_eq!(again, "apgar.again.source: protocol-file-no-source");
    }

    #[test]
    fn a_setting_and_a_phase_need_their_sources_too() {
        let sourceless = |change: fn(&mut Protocol)| {
            let mut protocol = Protocol::published()[0].clone();
            change(&mut protocol);
            wrong(&protocol.file()).concat()
        };
        assert_eq!(sourceless(|it| it.late_entry.source.clear()), "late_entry.source: protocol-file-no-source");
        assert_eq!(sourceless(|it| it.grams_per_ml.source = " ".to_owned()), "grams_per_ml.source: protocol-file-no-source");
        assert_eq!(sourceless(|it| it.mother[0].source.clear()), "mother[0].source: protocol-file-no-source");
    }

    #[test]
    fn a_protocol_is_read_back_from_its_own_file() {
        for protocol in Protocol::published() {
            assert_eq!(Protocol::parse(&protocol.file()).as_ref(), Ok(protocol));
        }
        let bare = Protocol { apgar: None, mother: Vec::new(), watch: Vec::new(), ..Protocol::published()[0].clone() };
        assert_eq!(Protocol::parse(&bare.file()), Ok(bare));
    }

    #[test]
    fn what_is_no_number_is_no_threshold() {
        let good = PUBLISHED_TEXTS[0];
        for bad in ["nan", "inf", "-inf", "-1", "-0.001", "1000000.1", "9223372036854775807"] {
            let text = good.replacen("value = ", &format!("value = {bad} # "), 1);
            assert_eq!(wrong(&text), ["late_entry.value: protocol-file-number"], "{bad}");
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
