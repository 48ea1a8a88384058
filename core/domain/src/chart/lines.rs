//! Entries with their corrections, in order of time.

use std::collections::BTreeMap;

use crate::entry::{Entry, EntryId};
use crate::fact::Fact;
use crate::time::{Boot, Occurred};

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
pub(super) fn lines(entries: &BTreeMap<EntryId, &Entry>) -> (Vec<Line>, Vec<EntryId>) {
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
    let timebase = Timebase::of(entries);
    let mut lines: Vec<Line> = firsts
        .into_iter()
        .map(|first| {
            let mut amendments: Vec<Entry> = amended.remove(&first.id).unwrap_or_default().into_iter().cloned().collect();
            amendments.sort_by_key(|entry| (timebase.place(&Occurred::Marked(entry.recorded.clone())), entry.id));
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

/// Places moments in order even where the wall clock was set in between: within one run of a device's clock the earliest
/// stamp is the anchor and the running clock tells the rest.
struct Timebase<'a>(BTreeMap<&'a str, (i64, i64)>);

impl<'a> Timebase<'a> {
    fn of(entries: &BTreeMap<EntryId, &'a Entry>) -> Self {
        let mut anchors: BTreeMap<&str, (i64, i64)> = BTreeMap::new();
        for stamp in entries.values().flat_map(|entry| [Some(&entry.recorded), marked(&entry.occurred)]).flatten() {
            if let Some(Boot { id, since_ms }) = &stamp.boot {
                let anchor = (*since_ms, stamp.wall_ms);
                anchors.entry(id).and_modify(|kept| *kept = (*kept).min(anchor)).or_insert(anchor);
            }
        }
        Self(anchors)
    }

    fn place(&self, at: &Occurred) -> i64 {
        let running = marked(at).and_then(|stamp| stamp.boot.as_ref()).and_then(|boot| {
            let (since_ms, wall_ms) = self.0.get(boot.id.as_str())?;
            Some(wall_ms.saturating_add(boot.since_ms.saturating_sub(*since_ms)))
        });
        running.unwrap_or_else(|| at.wall_ms())
    }
}

fn marked(at: &Occurred) -> Option<&crate::time::Stamp> {
    match at {
        Occurred::Marked(stamp) => Some(stamp),
        Occurred::Typed { .. } => None,
    }
}
