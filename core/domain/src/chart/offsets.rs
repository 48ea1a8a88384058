//! How the clocks of the phones at one birth stand to each other, by what was compared between them.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

use super::CLOCK_STEP_MS;
use super::timebase::Timebase;
use crate::entry::{DeviceId, Entry, EntryId};
use crate::fact::{Compared, Fact};

/// A phone's clock against the one that its birth is told by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Offset {
    /// The phone whose clock it is held against.
    pub reference: DeviceId,
    /// How far it is ahead of that one, ms.
    pub ahead_ms: i64,
    /// The truth lies within so many ms of it, either way.
    pub error_ms: i64,
}

/// Every phone that wrote about the birth, or was compared with one that did.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Offsets {
    of: BTreeMap<DeviceId, Offset>,
    /// Comparisons that say something else than the surest one of the same two phones, and by how many ms.
    pub disagree: Vec<(EntryId, i64)>,
}

/// One comparison, of two phones in the order of their ids.
#[derive(Clone, Copy)]
struct Edge {
    entry: Option<EntryId>,
    ahead_ms: i64,
    error_ms: i64,
    at_ms: i64,
}

type Pair = (DeviceId, DeviceId);

impl Offsets {
    /// Of the phones of these entries; the birth is told by the clock of the first phone where the others lead to it.
    pub(super) fn of(first: DeviceId, entries: &BTreeMap<EntryId, &Entry>, base: &Timebase) -> Self {
        let mut edges = same_phone(entries);
        let mut phones: BTreeSet<DeviceId> = entries.keys().map(|id| id.device).collect();
        for (pair, edge) in compared(entries, base) {
            phones.extend([pair.0, pair.1]);
            edges.entry(pair).or_default().push(edge);
        }
        let mut offsets = Self::default();
        let best: BTreeMap<Pair, Edge> =
            edges.into_iter().filter_map(|(pair, all)| Some((pair, offsets.choose(&all)?))).collect();
        for phone in std::iter::once(first).chain(phones.iter().copied()) {
            if !offsets.of.contains_key(&phone) {
                offsets.spread(phone, &best, phones.len());
            }
        }
        offsets
    }

    pub(super) fn get(&self, phone: DeviceId) -> Option<Offset> {
        self.of.get(&phone).copied()
    }

    /// The surest; of equally sure ones the latest.
    fn choose(&mut self, edges: &[Edge]) -> Option<Edge> {
        let best = *edges.iter().min_by_key(|edge| (edge.error_ms, Reverse((edge.at_ms, edge.entry))))?;
        for edge in edges {
            let apart = edge.ahead_ms.saturating_sub(best.ahead_ms);
            let doubt = edge.error_ms.saturating_add(best.error_ms).saturating_add(CLOCK_STEP_MS.into());
            if let Some(entry) = edge.entry.filter(|_| apart.saturating_abs() > doubt) {
                self.disagree.push((entry, apart));
            }
        }
        Some(best.sure())
    }

    /// From a phone to all that it leads to, by the ways on which the errors add up to least.
    fn spread(&mut self, reference: DeviceId, edges: &BTreeMap<Pair, Edge>, rounds: usize) {
        self.of.insert(reference, Offset { reference, ahead_ms: 0, error_ms: 0 });
        for _ in 0..rounds {
            for ((one, other), edge) in edges {
                self.reach(reference, *one, *other, edge.ahead_ms, edge.error_ms);
                self.reach(reference, *other, *one, edge.ahead_ms.saturating_neg(), edge.error_ms);
            }
        }
    }

    fn reach(&mut self, reference: DeviceId, from: DeviceId, to: DeviceId, ahead_ms: i64, error_ms: i64) {
        let Some(known) = self.of.get(&from).filter(|known| known.reference == reference) else { return };
        let ahead_ms = known.ahead_ms.saturating_add(ahead_ms);
        let reached = Offset { reference, ahead_ms, error_ms: known.error_ms.saturating_add(error_ms) };
        let key = |offset: &Offset| (offset.error_ms, offset.ahead_ms);
        match self.of.get(&to) {
            Some(before) if before.reference != reference || key(before) <= key(&reached) => (),
            _ => drop(self.of.insert(to, reached)),
        }
    }
}

impl Edge {
    /// A difference of which not even the sign is sure puts nothing right: most phones have their time from the network, and
    /// agree. Our own choice.
    fn sure(self) -> Self {
        let apart = self.ahead_ms.saturating_abs();
        match apart <= self.error_ms {
            true => Self { ahead_ms: 0, error_ms: self.error_ms.saturating_add(apart), ..self },
            false => self,
        }
    }
}

/// Devices that wrote on one run of a clock are one phone: its store was restored in between.
fn same_phone(entries: &BTreeMap<EntryId, &Entry>) -> BTreeMap<Pair, Vec<Edge>> {
    let mut runs: BTreeMap<&str, DeviceId> = BTreeMap::new();
    let mut edges = BTreeMap::new();
    for (id, entry) in entries {
        let Some(boot) = &entry.recorded.boot else { continue };
        let before = *runs.entry(&boot.id).or_insert(id.device);
        if before != id.device {
            let edge = Edge { entry: None, ahead_ms: 0, error_ms: 0, at_ms: 0 };
            edges.insert((before.min(id.device), before.max(id.device)), vec![edge]);
        }
    }
    edges
}

/// The comparisons that were not taken back. Each is brought onto the running clocks, so that a wall clock that was set since puts
/// nothing out.
fn compared(entries: &BTreeMap<EntryId, &Entry>, base: &Timebase) -> Vec<(Pair, Edge)> {
    let gone: BTreeSet<EntryId> = entries
        .values()
        .filter(|entry| entry.fact == Fact::Retracted)
        .filter_map(|entry| Some(entry.amends.as_ref()?.entry))
        .collect();
    let mut edges = Vec::new();
    for (id, entry) in entries {
        let (Fact::ClocksCompared(Compared { other, ahead_ms, error_ms }), None) = (&entry.fact, &entry.amends) else { continue };
        if *other == id.device || gone.contains(id) {
            continue;
        }
        let here = base.place(&entry.occurred);
        let wall_there = entry.occurred.wall_ms().saturating_add(*ahead_ms);
        let there = wall_there.saturating_add(shift(*other, wall_there, entries, base));
        let (ahead, error_ms) = (there.saturating_sub(here), error_ms.saturating_abs());
        let ahead_ms = if id.device < *other { ahead } else { ahead.saturating_neg() };
        let edge = Edge { entry: Some(*id), ahead_ms, error_ms, at_ms: here };
        edges.push(((id.device.min(*other), id.device.max(*other)), edge));
    }
    edges
}

/// How far a phone's running clock stood from its wall clock when that said so much, by its entry that is nearest, ms.
fn shift(phone: DeviceId, wall_ms: i64, entries: &BTreeMap<EntryId, &Entry>, base: &Timebase) -> i64 {
    let of = |n| EntryId { device: phone, n };
    let nearest = entries.range(of(0)..=of(u64::MAX)).min_by_key(|(_, entry)| entry.recorded.wall_ms.abs_diff(wall_ms));
    nearest.map_or(0, |(_, entry)| base.written(entry).saturating_sub(entry.recorded.wall_ms))
}
