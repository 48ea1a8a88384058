//! What the page shows while locked.

use secundine_domain::chart::Chart;
use secundine_domain::entry::Entry;
use secundine_domain::fact::Fact;
use secundine_domain::time::Stamp;
use secundine_store::Waiting;

use super::{baby, marks, third_stage};
use crate::api::{LockedCord, LockedLine, LockedView, NextMark};

/// The marks since the lock, with their clocks.
pub(crate) fn locked(chart: &Chart, made: Vec<LockedLine>, waiting: Waiting, failed: bool, now: &Stamp) -> LockedView {
    let next = marks::next(chart);
    let mut others = marks::all(chart);
    others.extend(of_a_baby_elsewhere(chart));
    others.retain(|other| !next.iter().any(|mark| mark.fact == other.fact));
    let cords = chart.babies.keys().filter_map(|no| baby(chart, None, *no, now, 1));
    LockedView {
        third_stage: third_stage(chart, now, 1),
        cords: cords.map(|baby| LockedCord { baby: baby.baby, clock: baby.cord }).collect(),
        marks: made,
        next,
        others,
        waiting_files: waiting.files,
        waiting_bytes: waiting.bytes,
        failed,
    }
}

pub(crate) fn locked_line(chart: &Chart, entry: &Entry, undone: bool) -> LockedLine {
    LockedLine { message: chart.say(&entry.fact), clock: entry.occurred.clock(), undone }
}

/// Where no baby is known, one may stand in the chart or in an earlier run of the program: its marks can be made all the same.
fn of_a_baby_elsewhere(chart: &Chart) -> Vec<NextMark> {
    if chart.babies.values().any(|baby| baby.born.is_some()) {
        return Vec::new();
    }
    let facts = [
        Fact::CordPulsationStopped { baby: 1 },
        Fact::CordClamped { baby: 1 },
        Fact::CordCut { baby: 1 },
        Fact::PlacentaBorn { babies: vec![1] },
        Fact::MembranesBorn { babies: vec![1] },
    ];
    let here = |fact: &Fact| chart.lines.iter().any(|line| &line.current().fact == fact);
    facts.into_iter().filter(|fact| !here(fact)).map(|fact| NextMark { label: chart.say(&fact), fact }).collect()
}
