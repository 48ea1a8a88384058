//! Reads a protocol file: all that is wrong with it at once, each by its path and line.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;
use serde::de::DeserializeOwned;
use toml::Spanned;
use toml::de::{DeTable, DeValue, ValueDeserializer};

use super::own::is_date;
use super::slot::MOST;
use super::step::sourceless;
use super::{Compare, Level, Milli, Protocol, Schedule, Setting, Sign, Slot, Status, Step, StepSlot, Thresholds, Watch};
use crate::message::Message;

mod apgar;
mod names;

/// One thing that is wrong with a protocol file.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct FileError {
    /// Line, counted from 1.
    pub line: u32,
    /// For example `watch[2].step[0].source`; empty where the text is no TOML there.
    pub path: String,
    /// What is wrong.
    pub problem: Message,
}

/// A protocol, or everything that is wrong with its text, in order of lines.
pub(super) fn protocol(text: &str) -> Result<Protocol, Vec<FileError>> {
    let (document, faults) = DeTable::parse_recoverable(text);
    let mut reader = Reader { text, places: BTreeMap::new(), errors: Vec::new() };
    for fault in &faults {
        let line = reader.line_at(fault.span().map_or(text.len(), |span| span.start));
        let problem = Message::new("protocol-file-syntax").with("problem", fault.message());
        reader.errors.push(FileError { line, path: String::new(), problem });
    }
    let top = Part { table: document.get_ref(), path: String::new() };
    // What stands after a fault of syntax may be read as something else: it is told first.
    let read = if faults.is_empty() { reader.whole(&top) } else { None };
    reader.errors.sort_by(|one, other| (one.line, &one.path).cmp(&(other.line, &other.path)));
    match read {
        Some(protocol) if reader.errors.is_empty() => Ok(protocol),
        _ => Err(reader.errors),
    }
}

/// A value that is read whole.
trait Leaf: DeserializeOwned {
    /// What it has to be.
    fn expected() -> Message;

    fn read(value: &DeValue) -> Option<Self> {
        Self::deserialize(ValueDeserializer::from(Spanned::new(0..0, value.clone()))).ok()
    }
}

impl Leaf for String {
    fn expected() -> Message {
        Message::new("protocol-file-text")
    }
}

impl Leaf for u32 {
    fn expected() -> Message {
        Message::new("protocol-file-minutes")
    }
}

impl Leaf for Milli {
    fn expected() -> Message {
        Message::new("protocol-file-number")
    }
}

impl Leaf for Slot {
    fn expected() -> Message {
        Message::new("protocol-file-field")
    }
}

macro_rules! named {
    ($($name:ty),*) => {$(
        impl Leaf for $name {
            fn expected() -> Message {
                Message::new("protocol-file-one-of").with("names", names::variants::<Self>().join(", "))
            }
        }
    )*};
}

named!(Level, Compare, Status, Watch);

/// A table of the file, and the path to it.
struct Part<'t, 'i> {
    table: &'t DeTable<'i>,
    path: String,
}

impl Part<'_, '_> {
    fn at(&self, key: &str) -> String {
        joined(&self.path, key)
    }
}

/// A path, one step longer. A key that nobody would write is cut, and one without letters stands in quotes.
fn joined(path: &str, key: &str) -> String {
    let key: String = if key.is_empty() { "\"\"".to_owned() } else { key.chars().take(40).collect() };
    if path.is_empty() { key } else { format!("{path}.{key}") }
}

struct Reader<'a> {
    text: &'a str,
    /// Where each path begins in the text.
    places: BTreeMap<String, usize>,
    errors: Vec<FileError>,
}

impl Reader<'_> {
    fn whole(&mut self, top: &Part) -> Option<Protocol> {
        self.find(top.table, "");
        self.only::<Protocol>(top);
        let (id, title, edition) = (self.words(top, "id"), self.words(top, "title"), self.words(top, "edition"));
        let checked = self.words(top, "checked");
        if checked.as_deref().is_some_and(|day| !is_date(day)) {
            self.wrong(&top.at("checked"), Message::new("protocol-file-date"));
        }
        let off = if top.table.contains_key("off") { self.off(top) } else { Some(Vec::new()) };
        let (late_entry, grams_per_ml) = (self.setting(top, "late_entry"), self.setting(top, "grams_per_ml"));
        if grams_per_ml.as_ref().is_some_and(|grams| grams.value.0 <= 0) {
            self.wrong("grams_per_ml.value", Message::new("protocol-file-zero"));
        }
        let apgar = if top.table.contains_key("apgar") { self.apgar(top).map(Some) } else { Some(None) };
        let mother = self.each(top, "mother", Self::phase);
        self.phases_follow(mother.as_deref().unwrap_or_default());
        let watch = self.each(top, "watch", Self::thresholds);
        self.once(watch.as_deref().unwrap_or_default());
        let (off, late_entry, grams_per_ml, mother, watch) = (off?, late_entry?, grams_per_ml?, mother?, watch?);
        let (id, title, edition, checked, apgar) = (id?, title?, edition?, checked?, apgar?);
        let protocol = Protocol { id, title, edition, checked, off, late_entry, grams_per_ml, apgar, mother, watch };
        if let Some((slot, _)) = protocol.numbers().iter().find(|(slot, _)| slot.n() > MOST) {
            let list = if matches!(slot, Slot::Mother(_)) { "mother" } else { "watch" };
            self.wrong(list, Message::new("protocol-file-many").with("most", MOST));
        }
        Some(protocol)
    }

    fn off(&mut self, top: &Part) -> Option<Vec<Slot>> {
        let Some(DeValue::Array(list)) = top.table.get("off").map(|value| value.get_ref()) else {
            self.wrong("off", Message::new("protocol-file-list"));
            return None;
        };
        let mut off = Vec::new();
        for (i, value) in list.iter().enumerate() {
            match Slot::read(value.get_ref()) {
                None => self.wrong(&format!("off[{i}]"), Slot::expected()),
                Some(slot) if !slot.can_be_off() => self.wrong(&format!("off[{i}]"), Message::new("protocol-file-never-off")),
                Some(slot) if off.contains(&slot) => self.wrong(&format!("off[{i}]"), Message::new("protocol-file-twice")),
                Some(slot) => off.push(slot),
            }
        }
        Some(off)
    }

    fn setting(&mut self, top: &Part, key: &str) -> Option<Setting> {
        let part = self.table(top, key)?;
        self.only::<Setting>(&part);
        let (value, source, status) = (self.get(&part, "value"), self.get(&part, "source"), self.get(&part, "status"));
        let setting = Setting { value: value?, source: source?, status: status? };
        self.all_wrong(&part, sourceless(&setting.source));
        Some(setting)
    }

    fn phase(&mut self, part: &Part) -> Option<Schedule> {
        self.only::<Schedule>(part);
        let (every, until) = (self.get(part, "every"), self.get(part, "until"));
        let (source, status) = (self.get(part, "source"), self.get(part, "status"));
        let phase = Schedule { every: every?, until: until?, source: source?, status: status? };
        self.all_wrong(part, phase.problems());
        Some(phase)
    }

    fn phases_follow(&mut self, phases: &[Schedule]) {
        for (i, pair) in phases.windows(2).enumerate() {
            if let [before, after] = pair
                && after.until <= before.until
            {
                self.wrong(&format!("mother[{}].until", i + 1), Message::new("protocol-file-phase"));
            }
        }
    }

    fn thresholds(&mut self, part: &Part) -> Option<Thresholds> {
        self.only::<Thresholds>(part);
        let watch: Option<Watch> = self.get(part, "watch");
        let unit: Option<String> = self.get(part, "unit");
        if let (Some(watch), Some(unit)) = (watch, &unit)
            && unit != watch.unit()
        {
            self.wrong(&part.at("unit"), Message::new("protocol-file-unit").with("unit", watch.unit()));
        }
        let step = self.each(part, "step", |reader, part| reader.step(part, watch));
        let thresholds = Thresholds { watch: watch?, unit: unit?, step: step? };
        if thresholds.step.is_empty() {
            self.wrong(&part.at("step"), Message::new("protocol-file-no-step"));
        }
        self.steps_go_further(part, &thresholds);
        Some(thresholds)
    }

    /// Of steps that are alike each lies past the one before it.
    fn steps_go_further(&mut self, part: &Part, thresholds: &Thresholds) {
        let mut last: BTreeMap<StepSlot, i64> = BTreeMap::new();
        for (j, step) in thresholds.step.iter().enumerate() {
            let before = last.insert(StepSlot::of(thresholds.watch, step), step.distance());
            if before.is_some_and(|before| step.distance() <= before) {
                self.wrong(&part.at(&format!("step[{j}].value")), Message::new("protocol-file-order"));
            }
        }
    }

    fn once(&mut self, watches: &[Thresholds]) {
        let mut seen = BTreeSet::new();
        for (i, thresholds) in watches.iter().enumerate() {
            if !seen.insert(thresholds.watch) {
                self.wrong(&format!("watch[{i}].watch"), Message::new("protocol-file-twice"));
            }
        }
    }

    fn step(&mut self, part: &Part, watch: Option<Watch>) -> Option<Step> {
        self.only::<Step>(part);
        let (level, compare, value) = (self.get(part, "level"), self.get(part, "compare"), self.get(part, "value"));
        let (source, status, words) = (self.get(part, "source"), self.get(part, "status"), self.get(part, "words"));
        let again = if part.table.contains_key("again") { self.get(part, "again").map(Some) } else { Some(None) };
        let with = if part.table.contains_key("with") { self.each(part, "with", Self::sign) } else { Some(Vec::new()) };
        let (source, status, words) = (source?, status?, words?);
        let step = Step { level: level?, compare: compare?, value: value?, source, status, words, again: again?, with: with? };
        match watch {
            Some(watch) => self.all_wrong(part, step.problems(watch)),
            None => self.all_wrong(part, sourceless(&step.source)),
        }
        Some(step)
    }

    fn sign(&mut self, part: &Part) -> Option<Sign> {
        self.only::<Sign>(part);
        let (watch, compare, value) = (self.get(part, "watch"), self.get(part, "compare"), self.get(part, "value"));
        Some(Sign { watch: watch?, compare: compare?, value: value? })
    }

    /// A text that has to say something.
    fn words(&mut self, part: &Part, key: &str) -> Option<String> {
        let text: String = self.get(part, key)?;
        if text.trim().is_empty() {
            self.wrong(&part.at(key), Message::new("protocol-file-empty"));
        }
        Some(text)
    }

    fn get<T: Leaf>(&mut self, part: &Part, key: &str) -> Option<T> {
        let value = self.asked(part, key)?;
        let read = T::read(value);
        if read.is_none() {
            self.wrong(&part.at(key), T::expected());
        }
        read
    }

    fn table<'t, 'i>(&mut self, part: &Part<'t, 'i>, key: &str) -> Option<Part<'t, 'i>> {
        match self.asked(part, key)? {
            DeValue::Table(table) => Some(Part { table, path: part.at(key) }),
            _ => {
                self.wrong(&part.at(key), Message::new("protocol-file-table"));
                None
            }
        }
    }

    /// Every table of a list; none where one of them cannot be read.
    fn each<T>(&mut self, part: &Part, key: &str, read: impl Fn(&mut Self, &Part) -> Option<T>) -> Option<Vec<T>> {
        let DeValue::Array(list) = self.asked(part, key)? else {
            self.wrong(&part.at(key), Message::new("protocol-file-list"));
            return None;
        };
        let mut all = Some(Vec::new());
        for (i, value) in list.iter().enumerate() {
            let path = format!("{}[{i}]", part.at(key));
            let one = match value.get_ref() {
                DeValue::Table(table) => read(self, &Part { table, path }),
                _ => {
                    self.wrong(&path, Message::new("protocol-file-table"));
                    None
                }
            };
            all = all.zip(one).map(|(mut all, one)| {
                all.push(one);
                all
            });
        }
        all
    }

    fn asked<'t, 'i>(&mut self, part: &Part<'t, 'i>, key: &str) -> Option<&'t DeValue<'i>> {
        let found = part.table.get(key).map(|value| value.get_ref());
        if found.is_none() {
            self.wrong(&part.at(key), Message::new("protocol-file-missing"));
        }
        found
    }

    /// Nothing else stands in a table than the fields of its type.
    fn only<T: DeserializeOwned>(&mut self, part: &Part) {
        let known = names::fields::<T>();
        for key in part.table.keys().map(|key| key.get_ref()).filter(|key| !known.contains(&key.as_ref())) {
            let problem = Message::new("protocol-file-unknown").with("names", known.join(", "));
            self.wrong(&part.at(key), problem);
        }
    }

    fn all_wrong(&mut self, part: &Part, problems: Vec<(String, Message)>) {
        problems.into_iter().for_each(|(inside, problem)| self.wrong(&format!("{}.{inside}", part.path), problem));
    }

    fn wrong(&mut self, path: &str, problem: Message) {
        let line = self.line(path);
        self.errors.push(FileError { line, path: path.to_owned(), problem });
    }

    /// The line of a path, or of the nearest thing around it that is there.
    fn line(&self, path: &str) -> u32 {
        let mut path = path;
        loop {
            if let Some(place) = self.places.get(path) {
                return self.line_at(*place);
            }
            let Some(cut) = path.rfind(['.', '[']) else { return 1 };
            path = path.get(..cut).unwrap_or_default();
        }
    }

    fn line_at(&self, place: usize) -> u32 {
        let breaks = self.text.bytes().take(place).filter(|byte| *byte == b'\n').count();
        u32::try_from(breaks).unwrap_or(u32::MAX).saturating_add(1)
    }

    /// Notes where every part of a table begins.
    fn find(&mut self, table: &DeTable, path: &str) {
        for (key, value) in table {
            let path = joined(path, key.get_ref());
            self.places.insert(path.clone(), key.span().start);
            self.find_in(value.get_ref(), &path);
        }
    }

    fn find_in(&mut self, value: &DeValue, path: &str) {
        match value {
            DeValue::Table(table) => self.find(table, path),
            DeValue::Array(list) => {
                for (i, one) in list.iter().enumerate() {
                    let path = format!("{path}[{i}]");
                    self.places.insert(path.clone(), one.span().start);
                    self.find_in(one.get_ref(), &path);
                }
            }
            _ => (),
        }
    }
}
