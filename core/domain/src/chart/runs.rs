//! The runs of the devices' clocks, and what they vouch for between moments on different runs.

use std::collections::{BTreeMap, BTreeSet};

use crate::entry::{DeviceId, Entry, EntryId};
use crate::time::{Boot, Certainty, Elapsed, Occurred, Run, Stamp};

/// What both clocks said at one moment of a run, earliest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Moment {
    /// Milliseconds since boot.
    pub since_ms: i64,
    /// UTC, milliseconds since 1970.
    pub wall_ms: i64,
}

/// Every run of a clock that the entries or the device tell of.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Runs {
    known: BTreeMap<String, Known>,
    /// Moments of a device without a running clock.
    bare: BTreeMap<Stamp, Bare>,
    /// The device that reads: the one that has kept runs of its own.
    here: Option<DeviceId>,
}

/// One run.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Known {
    moments: BTreeSet<Moment>,
    /// The earliest moment of an entry.
    anchor: Option<Moment>,
    /// The first entry that was written in it. Entries of a device are numbered in the order of writing, so that this puts
    /// its runs in order too.
    written: Option<EntryId>,
}

/// A moment of which only the wall clock tells, and the first entry that tells of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Bare {
    entry: EntryId,
    /// How long before the writing of that entry, ms.
    ago_ms: i64,
}

impl Runs {
    pub(super) fn of(entries: &BTreeMap<EntryId, &Entry>, kept: &[Run]) -> Self {
        let mut runs = Self::default();
        for entry in entries.values() {
            runs.take(&entry.recorded, Some(entry.id));
            if let Some(stamp) = entry.occurred.stamp() {
                runs.take(stamp, None);
            }
            for (stamp, ago_ms) in bare(entry) {
                runs.bare.entry(stamp.clone()).or_insert(Bare { entry: entry.id, ago_ms });
            }
        }
        let devices = kept.iter().filter_map(|run| Some(runs.known.get(&run.boot)?.written?.device)).collect::<BTreeSet<_>>();
        runs.here = devices.first().copied().filter(|_| devices.len() == 1);
        for Run { boot, since_ms, wall_ms } in kept {
            let moment = Moment { since_ms: *since_ms, wall_ms: *wall_ms };
            runs.known.entry(boot.clone()).or_default().moments.insert(moment);
        }
        runs
    }

    fn take(&mut self, stamp: &Stamp, written: Option<EntryId>) {
        let Some(boot) = &stamp.boot else { return };
        let known = self.known.entry(boot.id.clone()).or_default();
        let moment = moment(stamp, boot);
        known.moments.insert(moment);
        known.anchor = Some(known.anchor.map_or(moment, |anchor| anchor.min(moment)));
        known.written = known.written.or(written);
    }

    /// From one moment to another, by all that is known of the runs that they stand on.
    pub(super) fn elapsed(&self, from: &Occurred, to: &Occurred) -> Elapsed {
        let plain = Elapsed::between(from, to);
        match (from.stamp(), to.stamp()) {
            (Some(a), Some(b)) if plain.certainty != Certainty::Measured => self.apart(a, b).unwrap_or(plain),
            _ => plain,
        }
    }

    /// Between moments on different runs, or on none; `None` where the wall clock alone can tell.
    fn apart(&self, from: &Stamp, to: &Stamp) -> Option<Elapsed> {
        let (first, second) = (self.order(from)?, self.order(to)?);
        if first.device != second.device || first == second {
            None
        } else if first > second {
            self.apart(to, from).map(Elapsed::back)
        } else {
            match (&from.boot, &to.boot) {
                (Some(a), Some(b)) => Some(self.across((&a.id, moment(from, a)), (&b.id, moment(to, b)))),
                (None, None) => self.by_writing(from, to),
                _ => None,
            }
        }
    }

    /// Without a running clock: the least that the order of writing vouches for, where the wall clock was set back.
    fn by_writing(&self, from: &Stamp, to: &Stamp) -> Option<Elapsed> {
        let (first, second) = (self.bare.get(from)?, self.bare.get(to)?);
        let wall = to.wall_ms.saturating_sub(from.wall_ms);
        let least = first.ago_ms.saturating_sub(second.ago_ms);
        (wall < least).then(|| Elapsed::at_least(least))
    }

    /// The device that a run is of, as far as it is known.
    pub(super) fn device_of_run(&self, run: &str) -> Option<DeviceId> {
        self.known.get(run)?.written.map(|id| id.device)
    }

    /// The device whose clock told a moment, as far as it is known.
    pub(super) fn device(&self, stamp: &Stamp) -> Option<DeviceId> {
        self.order(stamp).map(|id| id.device)
    }

    /// The place of a moment's run among those of its device. One that no entry knows is the newest of the device that reads.
    fn order(&self, stamp: &Stamp) -> Option<EntryId> {
        let Some(boot) = &stamp.boot else { return self.bare.get(stamp).map(|bare| bare.entry) };
        match self.known.get(&boot.id) {
            Some(Known { written: Some(id), .. }) => Some(*id),
            Some(Known { anchor: Some(_), .. }) => None,
            _ => self.here.map(|device| EntryId { device, n: u64::MAX }),
        }
    }

    /// From a moment of one run to a moment of a later run. The wall clock tells how long the device was off: by the first
    /// moment of the later run at which it had not been set back.
    fn across(&self, from: (&str, Moment), to: (&str, Moment)) -> Elapsed {
        let (last, (_, to_at)) = (self.last_of(from.0, from.1), to);
        let ran = last.since_ms.saturating_sub(from.1.since_ms);
        let between = self.between(from.0, to.0);
        let least = ran.saturating_add(between).saturating_add(to_at.since_ms.max(0));
        let later = self.known.get(to.0).into_iter().flat_map(|known| &known.moments).chain([&to_at]);
        let off = later.map(|moment| (moment, off(last, *moment))).filter(|(_, off)| *off >= between).min();
        match off {
            Some((_, off)) => Elapsed {
                ms: ran.saturating_add(off).saturating_add(to_at.since_ms),
                certainty: Certainty::AcrossRestart,
                least_ms: Some(least),
                error_ms: 0,
            },
            None => Elapsed::at_least(least),
        }
    }

    fn last_of(&self, run: &str, moment: Moment) -> Moment {
        self.last(run).map_or(moment, |last| last.max(moment))
    }

    /// The last moment at which a run was seen.
    pub(super) fn last(&self, run: &str) -> Option<Moment> {
        self.known.get(run)?.moments.last().copied()
    }

    /// How long the runs between two runs of a device lasted at least.
    fn between(&self, first: &str, second: &str) -> i64 {
        let written = |run: &str| self.known.get(run).and_then(|known| known.written);
        let Some(from) = written(first) else { return 0 };
        let to = written(second).unwrap_or(EntryId { device: from.device, n: u64::MAX });
        let whole = self.known.values().filter(|known| known.written.is_some_and(|id| from < id && id < to));
        whole.filter_map(|known| known.moments.last()).fold(0, |sum, last| sum.saturating_add(last.since_ms.max(0)))
    }

    /// When a run began, by what the wall clock said at its first entry.
    pub(super) fn began(&self, run: &str) -> Option<i64> {
        self.known.get(run)?.anchor.map(|anchor| anchor.wall_ms.saturating_sub(anchor.since_ms))
    }

    /// The runs that entries tell of.
    pub(super) fn names(&self) -> impl Iterator<Item = &str> {
        self.known.iter().filter(|(_, known)| known.anchor.is_some()).map(|(run, _)| run.as_str())
    }
}

/// The moments of an entry that was written without a running clock, and how long before the writing each was. The time of a
/// correction is that of the entry which it puts right.
pub(super) fn bare(entry: &Entry) -> impl Iterator<Item = (&Stamp, i64)> {
    let writing = Some(&entry.recorded);
    let moments = [writing, entry.occurred.stamp().filter(|_| entry.amends.is_none())];
    let of = entry.recorded.boot.is_none();
    let moments = moments.into_iter().flatten().filter(move |stamp| of && stamp.boot.is_none());
    moments.map(|stamp| (stamp, entry.recorded.wall_ms.saturating_sub(stamp.wall_ms)))
}

pub(super) fn moment(stamp: &Stamp, boot: &Boot) -> Moment {
    Moment { since_ms: boot.since_ms, wall_ms: stamp.wall_ms }
}

/// By the wall clock, how long after the last moment of one run a later run began, ms; negative where it was set back.
pub(super) fn off(last: Moment, later: Moment) -> i64 {
    later.wall_ms.saturating_sub(last.wall_ms).saturating_sub(later.since_ms)
}
