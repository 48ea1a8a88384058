//! Which of the rows that were found are entries: signed by their device, and following from the one before.
//!
//! A link that its device has signed stands for all before it, even where the row around it is torn: it proves the entry
//! that follows. An entry whose link cannot be worked out, since nothing of the one before is here, or whose device's key is
//! missing, is kept if its pages are whole, and told. An entry that contradicts its neighbours is left out, and told.

use std::collections::{BTreeMap, BTreeSet};

use ed25519_dalek::VerifyingKey;
use secundine_domain::entry::{BirthId, DeviceId, Entry, EntryId, StoredError};

use super::found::Row;
use super::report::{Missing, Report};
use crate::chain::{Link, Position};
use crate::database::{BirthKey, birth_of};

/// An entry that is kept, or what remains of one.
pub(super) struct Kept {
    pub row: Row,
    pub proved: bool,
}

impl Kept {
    /// Whether it is the entry at which a device was at this position.
    pub(super) fn is_at(&self, device: DeviceId, at: &Position) -> bool {
        (self.row.device, self.row.n, self.row.link) == (device, at.n, at.link)
    }
}

/// Proves the rows; what is kept comes in the order of device and number.
pub(super) fn prove(
    rows: Vec<Row>,
    devices: &BTreeMap<DeviceId, VerifyingKey>,
    heads: &[(DeviceId, Position)],
    report: &mut Report,
) -> Vec<Kept> {
    let mut chains: BTreeMap<DeviceId, Vec<Row>> = BTreeMap::new();
    rows.into_iter().for_each(|row| chains.entry(row.device).or_default().push(row));
    // A head tells of a chain even where nothing else of it is left.
    for (device, _) in heads {
        chains.entry(*device).or_default();
    }
    let mut touched = BTreeSet::new();
    let mut kept = Vec::new();
    for (device, rows) in chains {
        let heads = heads.iter().filter(|(of, _)| *of == device).map(|(_, at)| *at).collect();
        let mut chain = Chain { public: devices.get(&device), heads, anchors: BTreeMap::new(), touched: &mut touched, report };
        kept.extend(chain.walk(device, rows));
    }
    let here: BTreeSet<(DeviceId, u64)> = kept.iter().map(|kept| (kept.row.device, kept.row.n)).collect();
    let whole = kept.iter().filter(|kept| kept.row.body.is_some());
    let births: BTreeSet<BirthKey> = whole.map(|kept| kept.row.birth).collect();
    let headless = births.iter().filter(|key| birth_of(*key).is_some_and(|birth| !begins(birth, &here)));
    touched.extend(headless);
    let count = |births: &BTreeSet<BirthKey>| births.iter().filter(|key| birth_of(*key) != Some(BirthId::PRACTICE)).count();
    (report.births, report.births_touched) = (count(&births) as u64, count(&touched) as u64);
    kept
}

/// Whether the entry that registered a birth is here.
fn begins(birth: BirthId, here: &BTreeSet<(DeviceId, u64)>) -> bool {
    birth == BirthId::PRACTICE || here.contains(&(birth.0.device, birth.0.n))
}

/// A link at a number, and whether it is known to be the device's own.
type Anchors = BTreeMap<u64, Vec<(Link, bool)>>;

struct Chain<'a> {
    public: Option<&'a VerifyingKey>,
    heads: Vec<Position>,
    anchors: Anchors,
    touched: &'a mut BTreeSet<BirthKey>,
    report: &'a mut Report,
}

impl Chain<'_> {
    fn walk(&mut self, device: DeviceId, rows: Vec<Row>) -> Vec<Kept> {
        let (signed, not): (Vec<Row>, Vec<Row>) = rows.into_iter().partition(|row| self.is_signed(row));
        not.iter().for_each(|row| self.contradicts(row));
        self.anchors.insert(0, vec![(Position::START.link, true)]);
        for at in &self.heads {
            self.anchors.entry(at.n).or_default().push((at.link, true));
        }
        for row in &signed {
            let sure = self.public.is_some() || row.whole;
            self.anchors.entry(row.n).or_default().push((row.link, sure));
        }
        let mut standing: BTreeMap<u64, Vec<Kept>> = BTreeMap::new();
        for row in signed {
            match self.standing(&row) {
                Some(proved) => standing.entry(row.n).or_default().push(Kept { row, proved }),
                None => self.contradicts(&row),
            }
        }
        let kept: Vec<Kept> = self.choose(standing).into_iter().filter_map(|kept| self.read(kept)).collect();
        self.missing(device, &kept);
        kept
    }

    /// Whether the device signed a row, or cannot be asked.
    fn is_signed(&self, row: &Row) -> bool {
        self.public.is_none_or(|public| Position { n: row.n, link: row.link }.is_signed(public, &row.seal))
    }

    /// Whether a row is proved; none where it contradicts what is known, or nothing vouches for it.
    fn standing(&self, row: &Row) -> Option<bool> {
        let before = self.anchors.get(&(row.n - 1)).map_or(&[][..], Vec::as_slice);
        let follows = before.iter().any(|(link, _)| follows(row, link));
        match follows {
            true => Some(self.public.is_some()),
            false => (self.is_likely(row) && !before.iter().any(|(_, sure)| *sure)).then_some(false),
        }
    }

    /// Whether a row is likely to be as it was written: its pages are, or it is signed and no page at all could be checked.
    fn is_likely(&self, row: &Row) -> bool {
        row.whole || (self.report.unchecked && self.public.is_some())
    }

    /// One row for each number, from the last on: the one that the next follows from, else a proved one, else what remains of
    /// an erased one, else the one that a head names. What else stands at its number contradicts it.
    fn choose(&mut self, standing: BTreeMap<u64, Vec<Kept>>) -> Vec<Kept> {
        let mut chosen: Vec<Kept> = Vec::new();
        for (n, rows) in standing.into_iter().rev() {
            let after = chosen.last().filter(|after| after.row.n == n + 1);
            let worth = |kept: &Kept| {
                let wanted = after.is_some_and(|after| follows(&after.row, &kept.row.link));
                let told = self.heads.iter().any(|at| (at.n, at.link) == (n, kept.row.link));
                // What was erased stays so, wherever its text was found.
                (wanted, kept.proved, kept.row.body.is_none(), told, kept.row.whole)
            };
            let (mut best, mut others): (Option<Kept>, Vec<Kept>) = (None, Vec::new());
            for kept in rows {
                match &best {
                    Some(held) if worth(held) >= worth(&kept) => others.push(kept),
                    _ => others.extend(best.replace(kept)),
                }
            }
            let same = |kept: &Kept| {
                best.as_ref().is_some_and(|best| (best.row.link, best.row.digest) == (kept.row.link, kept.row.digest))
            };
            others.iter().filter(|kept| !same(kept)).for_each(|kept| self.contradicts(&kept.row));
            chosen.extend(best);
        }
        chosen.reverse();
        chosen
    }

    /// Keeps what this program can read, and what a later one has written.
    fn read(&mut self, kept: Kept) -> Option<Kept> {
        let row = &kept.row;
        let Some(body) = &row.body else { return Some(kept) };
        let id = EntryId { device: row.device, n: row.n };
        match Entry::decode(body) {
            Ok(entry) if entry.id == id && Some(entry.birth) == birth_of(&row.birth) => {}
            Err(StoredError::Newer(_)) => self.report.newer += 1,
            _ => {
                self.report.unreadable += 1;
                self.touched.insert(row.birth);
                return None;
            }
        }
        self.report.entries += 1;
        if !kept.proved {
            self.report.unprovable += 1;
            self.touched.insert(row.birth);
        }
        Some(kept)
    }

    /// A row that is left out. On a page that is not whole that is the damage itself, and what is missing is told anyway.
    fn contradicts(&mut self, row: &Row) {
        if row.whole {
            self.report.contradicting += 1;
            self.touched.insert(row.birth);
        }
    }

    /// The numbers up to the greatest that was seen at which nothing is kept.
    fn missing(&mut self, device: DeviceId, kept: &[Kept]) {
        let sure = |(n, links): (&u64, &Vec<(Link, bool)>)| links.iter().any(|(_, sure)| *sure).then_some(*n);
        let greatest = self.anchors.iter().rev().find_map(sure).unwrap_or(0);
        let end = greatest.saturating_add(1);
        let mut next = 1;
        for n in kept.iter().map(|kept| kept.row.n).chain([end]) {
            if n > next {
                self.report.missing.push(Missing { device, first: next, last: n - 1 });
            }
            next = n.saturating_add(1);
        }
    }
}

/// Whether the link of a row is made from this one and what stands in the row.
fn follows(row: &Row, before: &Link) -> bool {
    let before = Position { n: row.n - 1, link: *before };
    before.then(&row.birth, &row.digest).link == row.link
}
