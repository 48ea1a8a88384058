//! Lines before which a phone's clock or time zone was changed: shown, and no time is put right by it.

use std::collections::BTreeMap;

use super::runs::{Runs, moment, off};
use super::{Line, Odd, Oddity};
use crate::entry::{DeviceId, Entry, EntryId};
use crate::time::Stamp;

/// A wall clock that moved by more than this against the running clock was set, ms.
pub const CLOCK_STEP_MS: u32 = 2_000;

/// What changed on each device from one entry to the next, in the order of writing.
pub(super) fn find(lines: &[Line], runs: &Runs) -> Vec<Oddity> {
    let mut entries: BTreeMap<EntryId, (&Entry, EntryId)> = BTreeMap::new();
    for line in lines {
        let all = std::iter::once(&line.first).chain(&line.amendments);
        entries.extend(all.map(|entry| (entry.id, (entry, line.first.id))));
    }
    let mut last: BTreeMap<DeviceId, &Stamp> = BTreeMap::new();
    let mut odd = Vec::new();
    for (id, (entry, line)) in entries {
        let Some(before) = last.insert(id.device, &entry.recorded) else { continue };
        let mut note = |what, by_ms| odd.push(Oddity { entry: line, what, by_ms: Some(by_ms) });
        let zone = i64::from(entry.recorded.offset_min) - i64::from(before.offset_min);
        if zone != 0 {
            note(Odd::ZoneChanged, zone * 60_000);
        }
        clock(before, &entry.recorded, runs, note);
    }
    odd
}

/// On one run of the clock a change is measured. Across a restart it shows where the wall clock lags behind what the runs
/// vouch for, and then it was that much or more.
fn clock(before: &Stamp, here: &Stamp, runs: &Runs, mut note: impl FnMut(Odd, i64)) {
    let mut changed = |by_ms: i64| {
        if by_ms.unsigned_abs() > CLOCK_STEP_MS.into() {
            note(Odd::ClockChanged, by_ms);
        }
    };
    let lag = match (&before.boot, &here.boot) {
        (Some(a), Some(b)) if a.id == b.id => return changed(off(moment(before, a), moment(here, b)).saturating_add(a.since_ms)),
        (Some(a), Some(b)) => {
            let last = runs.last(&a.id).unwrap_or_else(|| moment(before, a));
            changed(off(moment(before, a), last).saturating_add(a.since_ms));
            off(last, moment(here, b))
        }
        _ => here.wall_ms.saturating_sub(before.wall_ms),
    };
    if lag < -i64::from(CLOCK_STEP_MS) {
        note(Odd::ClockSetBack, lag);
    }
}
