//! Entries with their corrections, in order of time.

use std::collections::BTreeMap;

use super::timebase::Timebase;
use crate::entry::{Entry, EntryId};
use crate::fact::Fact;

/// An entry as first written, what was written over it, and what now holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// The first form.
    pub first: Entry,
    /// Corrections and retractions, in the order in which they were written.
    pub amendments: Vec<Entry>,
}

/// What became of an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// Stands as first written.
    Stands,
    /// Put right; the earlier form stays readable.
    Corrected,
    /// Taken out; stays readable.
    Retracted,
}

impl Line {
    /// The form in force.
    #[must_use]
    pub fn current(&self) -> &Entry {
        self.amendments.last().unwrap_or(&self.first)
    }

    /// What became of it.
    #[must_use]
    pub fn state(&self) -> State {
        match (&self.current().fact, self.amendments.is_empty()) {
            (Fact::Retracted, _) => State::Retracted,
            (_, true) => State::Stands,
            (_, false) => State::Corrected,
        }
    }

    /// The form whose fact and time are to be shown: for a retracted line, the last one before it was taken out.
    #[must_use]
    pub fn shown(&self) -> &Entry {
        let last = self.amendments.iter().rev().find(|entry| entry.fact != Fact::Retracted);
        last.unwrap_or(&self.first)
    }
}

/// The lines in order of time, and the amendments whose target is not here (each then stands as a line of its own).
pub(super) fn lines(entries: &BTreeMap<EntryId, &Entry>, timebase: &Timebase) -> (Vec<Line>, Vec<EntryId>) {
    let mut amended: BTreeMap<EntryId, Vec<&Entry>> = BTreeMap::new();
    let mut firsts = Vec::new();
    let mut missing = Vec::new();
    for entry in entries.values().copied() {
        let root = root(entry, entries).unwrap_or(entry.id);
        if root != entry.id {
            amended.entry(root).or_default().push(entry);
            continue;
        }
        firsts.push(entry);
        if entry.amends.is_some() {
            missing.push(entry.id);
        }
    }
    let mut lines: Vec<Line> = firsts
        .into_iter()
        .map(|first| {
            let mut amendments: Vec<Entry> = amended.remove(&first.id).unwrap_or_default().into_iter().cloned().collect();
            amendments.sort_by_key(|entry| (timebase.written(entry), entry.id));
            Line { first: first.clone(), amendments }
        })
        .collect();
    lines.sort_by_key(|line| (timebase.place(&line.shown().occurred), line.first.id));
    (lines, missing)
}

/// The entry that a chain of amendments began with, as far as it is here; `None` for one that runs into a circle.
fn root(entry: &Entry, entries: &BTreeMap<EntryId, &Entry>) -> Option<EntryId> {
    let mut at = entry;
    for _ in 0..=entries.len() {
        match at.amends.as_ref().and_then(|amends| entries.get(&amends.entry)) {
            None => return Some(at.id),
            Some(earlier) => at = earlier,
        }
    }
    None
}
