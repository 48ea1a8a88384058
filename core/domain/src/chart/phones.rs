//! Several phones at one birth: whose entries are awaited, and what is odd about their clocks.

use std::collections::{BTreeMap, BTreeSet};

use super::{CLOCK_STEP_MS, Chart, Odd, Oddity, Offset};
use crate::entry::{DeviceId, Entry, EntryId};
use crate::message::Message;
use crate::time::{Certainty, Elapsed, Occurred, Stamp, give_or_take, local};

/// Two phones that wrote so far apart were not at one birth together, and nobody compares their clocks, ms. Our own choice.
const TOGETHER_MS: i64 = 24 * 3_600_000;

impl Chart {
    /// The phones that are known to be at this birth, of whose entries none is here.
    #[must_use]
    pub fn awaited(&self) -> BTreeSet<DeviceId> {
        let here: BTreeSet<DeviceId> = self.lines.iter().map(|line| line.first.id.device).collect();
        let told = self.joined.iter().map(|joined| joined.what.from);
        let compared = self.compared.iter().map(|compared| compared.what.other);
        told.chain(compared).filter(|phone| !here.contains(phone)).collect()
    }

    /// Whether the birth was joined, and how it began has not come from the other phone: what is not recorded here may well be there.
    #[must_use]
    pub fn is_partial(&self) -> bool {
        self.opening_missing && !self.joined.is_empty()
    }

    /// How the clock of a phone stands to the one that the birth is told by.
    #[must_use]
    pub fn offset(&self, phone: DeviceId) -> Option<Offset> {
        self.offsets.get(phone)
    }

    /// The moment of an entry by the clock that the birth is told by, with how far that may be off; none where its own phone's says
    /// the same, to 2 s, or where it was typed: whose clock was read then is not known.
    #[must_use]
    pub fn common_clock(&self, entry: &Entry) -> Option<Message> {
        let stamp = entry.occurred.stamp()?;
        let offset = self.offset(self.runs.device(stamp)?)?;
        let clock = local(self.base.place(&entry.occurred), entry.occurred.offset_min(), "%H:%M:%S");
        let said = Message::new("clock-put-right").with("clock", clock).with("error", give_or_take(offset.error_ms));
        apart(&offset).then_some(said)
    }

    /// Every entry in the order in which it was written, by the clock that the birth is told by.
    #[must_use]
    pub fn written_order(&self) -> Vec<EntryId> {
        let mut all: Vec<&Entry> =
            self.lines.iter().flat_map(|line| std::iter::once(&line.first).chain(&line.amendments)).collect();
        all.sort_by_key(|entry| (self.base.written(entry), entry.id));
        all.into_iter().map(|entry| entry.id).collect()
    }

    /// Between moments that two phones marked; none where one phone's clock tells.
    pub(super) fn between_phones(&self, from: &Occurred, to: &Occurred) -> Option<Elapsed> {
        let (a, b) = (from.stamp()?, to.stamp()?);
        let (one, other) = (self.runs.device(a)?, self.runs.device(b)?);
        if one == other || Elapsed::between(from, to).certainty == Certainty::Measured {
            return None;
        }
        let (here, there) = (self.offset(one)?, self.offset(other)?);
        let ms = self.common(b, there).saturating_sub(self.common(a, here));
        match here.reference == there.reference {
            true => {
                let error_ms = here.error_ms.saturating_add(there.error_ms);
                Some(Elapsed { ms, certainty: Certainty::Compared, least_ms: None, error_ms })
            }
            false => Some(Elapsed { ms, certainty: Certainty::NotCompared, least_ms: None, error_ms: 0 }),
        }
    }

    /// A moment by the clock that the birth is told by, ms. One on a run that no entry knows yet stands where the wall clock says.
    fn common(&self, stamp: &Stamp, offset: Offset) -> i64 {
        let placed = self.base.marked(stamp);
        placed.unwrap_or_else(|| stamp.wall_ms.saturating_sub(offset.ahead_ms))
    }
}

fn apart(offset: &Offset) -> bool {
    offset.ahead_ms.saturating_abs() > CLOCK_STEP_MS.into()
}

/// At the first line of each phone: that its clock is ahead or behind, or that nobody compared it. At a comparison: that a surer one
/// says something else.
pub(super) fn find(chart: &Chart) -> Vec<Oddity> {
    let mut firsts: BTreeMap<DeviceId, &super::Line> = BTreeMap::new();
    for line in &chart.lines {
        firsts.entry(line.first.id.device).or_insert(line);
    }
    let first = firsts.keys().copied().filter_map(|phone| chart.offset(phone)).map(|offset| offset.reference);
    let reference = chart.told_by.filter(|phone| firsts.contains_key(phone)).or_else(|| first.min());
    let ends = |phone| {
        let places = chart.lines.iter().filter(|line| line.first.id.device == phone);
        let places: Vec<i64> = places.map(|line| chart.base.written(&line.first)).collect();
        Some((*places.iter().min()?, *places.iter().max()?))
    };
    let mut odd = Vec::new();
    for (phone, line) in &firsts {
        let (Some(reference), Some(offset)) = (reference, chart.offset(*phone)) else { continue };
        let known = chart.offset(reference).is_some_and(|known| known.reference == offset.reference);
        let together = || {
            let ((first, last), (begun, ended)) = (ends(*phone)?, ends(reference)?);
            Some(first.saturating_sub(ended) < TOGETHER_MS && begun.saturating_sub(last) < TOGETHER_MS)
        };
        if !known && together() == Some(true) {
            odd.push(Oddity::plain(line.first.id, Odd::ClocksNotCompared));
        }
        if apart(&offset) {
            odd.push(Oddity { entry: line.first.id, what: Odd::ClocksApart, by_ms: Some(offset.ahead_ms) });
        }
    }
    let stands = |entry| chart.lines.iter().any(|line| line.first.id == entry);
    let disagree = chart.offsets.disagree.iter().filter(|(entry, _)| stands(*entry));
    odd.extend(disagree.map(|(entry, by_ms)| Oddity { entry: *entry, what: Odd::ClocksDisagree, by_ms: Some(*by_ms) }));
    odd
}
