//! The practice's own protocol: it begins empty, and is one only once each field is set or deliberately off.

use std::collections::{BTreeMap, BTreeSet};

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use super::strictest::{strictest, strictest_schedule};
use super::{ApgarAgain, ApgarTimes, Protocol, Schedule, Setting, Slot, Status, Step, StepSlot, Thresholds, Watch};
use crate::message::Message;

/// The id under which a practice chooses its own protocol.
pub const OWN: &str = "own";

/// What stands in a field that is not open.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "state", content = "value", rename_all = "snake_case")]
#[cfg_attr(feature = "types", ts(rename = "FieldState"))]
pub enum State {
    /// Left out on purpose.
    Off,
    /// A single number.
    Setting(Setting),
    /// A phase of the looks at the mother.
    Phase(Schedule),
    /// The times of the Apgar scores.
    Apgar(ApgarTimes),
    /// A threshold.
    Step(Step),
}

/// A protocol in the making.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct OwnProtocol {
    /// Name as printed; empty while it has none.
    pub title: String,
    /// What it was built from; empty while that is not said.
    pub edition: String,
    /// Day on which its numbers were last held against their sources, `2026-11-25`; empty while that is not said.
    pub checked: String,
    /// What was decided. A field that is not here is open.
    pub fields: BTreeMap<Slot, State>,
}

/// What a change of the own protocol puts in place of what stood there. What it does not name stays.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct OwnChange {
    /// Name as printed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub title: Option<String>,
    /// What it was built from.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub edition: Option<String>,
    /// Day on which its numbers were last held against their sources, `2026-11-25`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub checked: Option<String>,
    /// Fields; none opens one again.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    #[cfg_attr(feature = "types", ts(as = "Option<BTreeMap<Slot, Option<State>>>", optional))]
    pub fields: BTreeMap<Slot, Option<State>>,
}

/// Why it is no protocol yet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Unfinished {
    /// What is open, as it is named in a file.
    pub open: Vec<String>,
    /// What does not fit together, though all of it is set.
    pub problems: Vec<(Slot, Message)>,
}

impl State {
    /// What is wrong with it in this field; none where it can stand there.
    #[must_use]
    pub fn problem(&self, slot: Slot) -> Option<Message> {
        let found = match (slot, self) {
            (_, Self::Off) if slot.can_be_off() => Vec::new(),
            (_, Self::Off) => return Some(Message::new("protocol-file-never-off")),
            (Slot::LateEntry, Self::Setting(setting)) => super::step::sourceless(&setting.source),
            (Slot::GramsPerMl, Self::Setting(setting)) if setting.value.0 <= 0 => {
                return Some(Message::new("protocol-file-zero"));
            }
            (Slot::GramsPerMl, Self::Setting(setting)) => super::step::sourceless(&setting.source),
            (Slot::Mother(_), Self::Phase(phase)) => phase.problems(),
            (Slot::Apgar, Self::Apgar(times)) => times.problems(),
            (Slot::Step(place), Self::Step(step)) if StepSlot::of(place.watch, step).numbered(place.n) == place => {
                step.problems(place.watch)
            }
            _ => return Some(Message::new("protocol-file-other-field")),
        };
        found.into_iter().next().map(|(_, problem)| problem)
    }

    /// Where it comes from and how well that was checked; none where it is off.
    #[must_use]
    pub fn whence(&self) -> Option<(&str, Status)> {
        match self {
            Self::Off => None,
            Self::Setting(Setting { source, status, .. })
            | Self::Phase(Schedule { source, status, .. })
            | Self::Apgar(ApgarTimes { source, status, .. })
            | Self::Step(Step { source, status, .. }) => Some((source, *status)),
        }
    }

    /// The same number without source and words, as a practice's own number begins.
    #[must_use]
    pub fn bare(&self) -> Self {
        let (source, status) = (String::new(), Status::Choice);
        match self.clone() {
            Self::Off => Self::Off,
            Self::Setting(setting) => Self::Setting(Setting { source, status, ..setting }),
            Self::Phase(phase) => Self::Phase(Schedule { source, status, ..phase }),
            Self::Apgar(times) => {
                let (after, words) = (source.clone(), String::new());
                let again = times.again.map(|again| ApgarAgain { source: after, status, words, ..again });
                Self::Apgar(ApgarTimes { source, status, again, ..times })
            }
            Self::Step(step) => Self::Step(Step { source, status, words: String::new(), ..step }),
        }
    }

    /// Its number in words, with its unit.
    #[must_use]
    pub fn words(&self, slot: Slot) -> Message {
        match (self, slot) {
            (Self::Off, _) => Message::new("state-off"),
            (Self::Setting(setting), Slot::GramsPerMl) => Message::new("state-grams").with("value", f64::from(setting.value)),
            (Self::Setting(setting), _) => Message::new("value-minutes").with("value", f64::from(setting.value)),
            (Self::Phase(phase), _) => Message::new("state-phase").with("every", phase.every).with("until", phase.until),
            (Self::Apgar(times), _) => times.words(),
            (Self::Step(step), Slot::Step(place)) => step_words(place.watch, step),
            (Self::Step(step), _) => Message::new("value-ratio").with("value", f64::from(step.value)),
        }
    }
}

fn step_words(watch: Watch, step: &Step) -> Message {
    let limit = |watch: Watch, compare: super::Compare, value| {
        let limit = Message::new("state-limit").with("compare", compare.sign());
        limit.with("value", watch.value_words(value))
    };
    let value = limit(watch, step.compare, step.value);
    let signs = step.with.iter().rev().fold(None, |rest: Option<Message>, sign| {
        let sign = Message::new("state-sign")
            .with("watch", sign.watch.name())
            .with("value", limit(sign.watch, sign.compare, sign.value));
        Some(match rest {
            None => sign,
            Some(rest) => Message::new("state-or").with("first", sign).with("rest", rest),
        })
    });
    let value = match signs {
        Some(signs) => Message::new("state-with").with("value", value).with("signs", signs),
        None => value,
    };
    match step.again {
        Some(minutes) => Message::new("state-again").with("value", value).with("minutes", minutes),
        None => value,
    }
}

impl OwnChange {
    /// What is wrong with it; none where it can be written down.
    #[must_use]
    pub fn problem(&self) -> Option<Message> {
        let date = self.checked.as_deref().filter(|day| !day.is_empty() && !is_date(day));
        let date = date.map(|_| Message::new("protocol-file-date"));
        date.or_else(|| self.fields.iter().find_map(|(slot, state)| state.as_ref()?.problem(*slot)))
    }

    /// How many things it changes.
    #[must_use]
    pub fn count(&self) -> u32 {
        let head = [&self.title, &self.edition, &self.checked].into_iter().flatten().count();
        u32::try_from(head + self.fields.len()).unwrap_or(u32::MAX)
    }
}

impl OwnProtocol {
    /// What a finished protocol sets and leaves out, as its own.
    #[must_use]
    pub fn of(protocol: &Protocol) -> Self {
        let Protocol { title, edition, checked, off, .. } = protocol.clone();
        let fields = protocol.numbers().into_iter().chain(off.into_iter().map(|slot| (slot, State::Off))).collect();
        let [title, edition, checked] = [title, edition, checked].map(|text| text.trim().to_owned());
        Self { title, edition, checked, fields }
    }

    /// The same after a change.
    #[must_use]
    pub fn changed(mut self, change: &OwnChange) -> Self {
        let put = |text: &mut String, new: &Option<String>| {
            if let Some(new) = new {
                new.trim().clone_into(text);
            }
        };
        put(&mut self.title, &change.title);
        put(&mut self.edition, &change.edition);
        put(&mut self.checked, &change.checked);
        for (slot, state) in &change.fields {
            match state {
                Some(state) => self.fields.insert(*slot, state.clone()),
                None => self.fields.remove(slot),
            };
        }
        self
    }

    /// What makes the other one out of this one.
    #[must_use]
    pub fn difference(&self, other: &Self) -> OwnChange {
        let text = |ours: &str, theirs: &str| (ours != theirs).then(|| theirs.to_owned());
        let slots: BTreeSet<Slot> = self.fields.keys().chain(other.fields.keys()).copied().collect();
        let differ = slots.into_iter().filter(|slot| self.fields.get(slot) != other.fields.get(slot));
        OwnChange {
            title: text(&self.title, &other.title),
            edition: text(&self.edition, &other.edition),
            checked: text(&self.checked, &other.checked),
            fields: differ.map(|slot| (slot, other.fields.get(&slot).cloned())).collect(),
        }
    }

    /// Every field that has to be decided, in order: what any published protocol sets, and what stands here beyond that.
    #[must_use]
    pub fn slots(&self) -> BTreeSet<Slot> {
        let published = Protocol::published().iter().flat_map(|protocol| protocol.numbers().into_iter().map(|(slot, _)| slot));
        let phases = (1..).zip(strictest_schedule()).map(|(n, _)| Slot::Mother(n));
        let mut all: BTreeSet<Slot> = published.chain(phases).chain(self.fields.keys().copied()).collect();
        // Of those that are alike none is passed over.
        let before = |slot: &Slot| (1..slot.n()).map(|n| slot.numbered(n)).collect::<Vec<_>>();
        all.extend(all.clone().iter().flat_map(before));
        all
    }

    /// Fills every open field with the strictest of the published protocols. What is decided stays.
    #[must_use]
    pub fn filled(&self) -> OwnChange {
        let open = self.slots().into_iter().filter(|slot| !self.fields.contains_key(slot));
        let fields = open.filter_map(|slot| Some((slot, Some(strictest(slot)?)))).collect();
        OwnChange { fields, ..OwnChange::default() }
    }

    /// The protocol that it has become.
    ///
    /// # Errors
    /// Everything that is open, and what does not fit together.
    pub fn finish(&self) -> Result<Protocol, Unfinished> {
        let head = [("title", &self.title), ("edition", &self.edition), ("checked", &self.checked)];
        let head = head.into_iter().filter(|(_, text)| text.is_empty()).map(|(name, _)| name.to_owned());
        let slots = self.slots().into_iter().filter(|slot| !self.fields.contains_key(slot)).map(String::from);
        let unfinished = Unfinished { open: head.chain(slots).collect(), problems: self.problems() };
        if unfinished != Unfinished::default() {
            return Err(unfinished);
        }
        let setting = |slot| match self.fields.get(&slot) {
            Some(State::Setting(setting)) => Ok(setting.clone()),
            _ => Err(Unfinished { open: vec![slot.to_string()], ..Unfinished::default() }),
        };
        Ok(Protocol {
            id: OWN.to_owned(),
            title: self.title.clone(),
            edition: self.edition.clone(),
            checked: self.checked.clone(),
            off: self.fields.iter().filter(|(_, state)| **state == State::Off).map(|(slot, _)| *slot).collect(),
            late_entry: setting(Slot::LateEntry)?,
            grams_per_ml: setting(Slot::GramsPerMl)?,
            apgar: match self.fields.get(&Slot::Apgar) {
                Some(State::Apgar(times)) => Some(times.clone()),
                _ => None,
            },
            mother: self.phases().map(|(_, phase)| phase.clone()).collect(),
            watch: self.watches(),
        })
    }

    fn phases(&self) -> impl Iterator<Item = (Slot, &Schedule)> {
        self.fields.iter().filter_map(|(slot, state)| match state {
            State::Phase(phase) => Some((*slot, phase)),
            _ => None,
        })
    }

    fn steps(&self) -> impl Iterator<Item = (StepSlot, &Step)> {
        self.fields.iter().filter_map(|(slot, state)| match (slot, state) {
            (Slot::Step(place), State::Step(step)) => Some((*place, step)),
            _ => None,
        })
    }

    /// The thresholds of each watch, the furthest last, as those who read a file expect it.
    fn watches(&self) -> Vec<Thresholds> {
        let mut all: BTreeMap<Watch, Vec<&Step>> = BTreeMap::new();
        self.steps().for_each(|(place, step)| all.entry(place.watch).or_default().push(step));
        let thresholds = |(watch, mut steps): (Watch, Vec<&Step>)| {
            steps.sort_by_key(|step| (step.is_upper(), step.distance(), step.with.is_empty(), step.again.is_none(), step.level));
            Thresholds { watch, unit: watch.unit().to_owned(), step: steps.into_iter().cloned().collect() }
        };
        all.into_iter().map(thresholds).collect()
    }

    /// Fields that cannot stand beside the one before them, or not at all.
    fn problems(&self) -> Vec<(Slot, Message)> {
        let mut found: Vec<(Slot, Message)> =
            self.fields.iter().filter_map(|(slot, state)| Some((*slot, state.problem(*slot)?))).collect();
        let phases: Vec<(Slot, &Schedule)> = self.phases().collect();
        found.extend(phases.windows(2).filter_map(|pair| match pair {
            [(_, before), (slot, after)] if after.until <= before.until => Some((*slot, Message::new("protocol-file-phase"))),
            _ => None,
        }));
        let steps: Vec<(StepSlot, &Step)> = self.steps().collect();
        found.extend(steps.windows(2).filter_map(|pair| match pair {
            [(before, nearer), (place, further)]
                if before.numbered(1) == place.numbered(1) && further.distance() <= nearer.distance() =>
            {
                Some((Slot::Step(*place), Message::new("protocol-file-order")))
            }
            _ => None,
        }));
        found
    }
}

/// Whether this is a day as `2026-11-25`.
pub(super) fn is_date(text: &str) -> bool {
    text.len() == 10 && NaiveDate::parse_from_str(text, "%Y-%m-%d").is_ok()
}

/// What stands in a field, in words; none is an open one.
#[must_use]
pub fn state_words(state: Option<&State>, slot: Slot) -> Message {
    state.map_or_else(|| Message::new("state-open"), |state| state.words(slot))
}
