//! Where moments stand in order, even where the wall clock was set in between.

use std::collections::BTreeMap;

use super::offsets::Offsets;
use super::runs::{Runs, bare};
use crate::entry::{DeviceId, Entry, EntryId};
use crate::time::{Occurred, Stamp};

/// Within one run of a device's clock the first entry is the anchor and the running clock tells the rest. A device numbers
/// its entries in the order of writing, so a later run begins after the last moment of the one before, whatever the wall
/// clock says. Typed times stand where they were typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Timebase {
    /// When each run began.
    began: BTreeMap<String, i64>,
    /// Moments without a running clock.
    bare: BTreeMap<Stamp, i64>,
}

/// How far a device has come.
#[derive(Clone, Copy)]
struct Reached {
    /// Where its last entry was placed.
    entry: i64,
    /// The end of its last run.
    run: i64,
    /// How far its last entry without a running clock was placed after its wall clock.
    shift: i64,
}

impl Timebase {
    pub(super) fn of(entries: &BTreeMap<EntryId, &Entry>, runs: &Runs) -> Self {
        let mut base = Self { began: BTreeMap::new(), bare: BTreeMap::new() };
        let mut devices: BTreeMap<DeviceId, Reached> = BTreeMap::new();
        for (id, entry) in entries {
            let reached = devices.entry(id.device).or_insert(Reached { entry: i64::MIN, run: i64::MIN, shift: 0 });
            base.take(entry, reached, runs);
        }
        // Runs in which something happened and nothing was written here.
        for run in runs.names() {
            if let Some(began) = runs.began(run) {
                base.began.entry(run.to_owned()).or_insert(began);
            }
        }
        base
    }

    /// Brings the moments of every phone onto the clock that the birth is told by.
    pub(super) fn put_right(&mut self, offsets: &Offsets, runs: &Runs) {
        let ahead = |phone: Option<DeviceId>| phone.and_then(|phone| offsets.get(phone)).map_or(0, |offset| offset.ahead_ms);
        for (run, began) in &mut self.began {
            *began = began.saturating_sub(ahead(runs.device_of_run(run)));
        }
        for (stamp, place) in &mut self.bare {
            *place = place.saturating_sub(ahead(runs.device(stamp)));
        }
    }

    fn take(&mut self, entry: &Entry, reached: &mut Reached, runs: &Runs) {
        let recorded = &entry.recorded;
        let Some(boot) = &recorded.boot else {
            // Where the clock was set back, the distances from there on are kept until it has caught up.
            let behind = recorded.wall_ms < reached.entry;
            let shifted = recorded.wall_ms.saturating_add(if behind { reached.shift } else { 0 });
            reached.entry = shifted.max(reached.entry);
            reached.shift = reached.entry.saturating_sub(recorded.wall_ms);
            for (stamp, ago_ms) in bare(entry) {
                // A clock that was set forth and back may read the same twice: then both stand where the later one does.
                let place = reached.entry.saturating_sub(ago_ms);
                self.bare.entry(stamp.clone()).and_modify(|known| *known = place.max(*known)).or_insert(place);
            }
            return;
        };
        let floor = reached.entry.max(reached.run);
        let began =
            *self.began.entry(boot.id.clone()).or_insert_with(|| runs.began(&boot.id).unwrap_or(recorded.wall_ms).max(floor));
        reached.entry = began.saturating_add(boot.since_ms);
        let last = runs.last(&boot.id).map_or(boot.since_ms, |last| last.since_ms);
        reached.run = reached.run.max(began.saturating_add(last));
    }

    /// A number that is greater the later the moment.
    pub(super) fn place(&self, at: &Occurred) -> i64 {
        at.stamp().and_then(|stamp| self.marked(stamp)).unwrap_or_else(|| at.wall_ms())
    }

    /// The same for the moment of writing.
    pub(super) fn written(&self, entry: &Entry) -> i64 {
        self.marked(&entry.recorded).unwrap_or(entry.recorded.wall_ms)
    }

    /// Where a marked moment stands; none on a run that no entry tells of.
    pub(super) fn marked(&self, stamp: &Stamp) -> Option<i64> {
        match &stamp.boot {
            Some(boot) => Some(self.began.get(boot.id.as_str())?.saturating_add(boot.since_ms)),
            None => self.bare.get(stamp).copied(),
        }
    }
}
