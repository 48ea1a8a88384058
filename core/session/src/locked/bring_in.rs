//! After unlocking: what was marked while locked becomes entries.
//!
//! Who marked it is not known, since nobody had unlocked the practice: the practitioner of the practice stands as author.

use secundine_domain::chart::{Chart, fold};
use secundine_domain::entry::{Amendment, BirthId, Entry, EntryId};
use secundine_domain::fact::{Fact, Practice};
use secundine_domain::time::{Occurred, Stamp};
use secundine_store::{Batch, InboxTail, Store, StoreError, Turned};
use serde::{Deserialize, Serialize};

use super::UNDONE;
use super::record::{Record, Undone, Unreadable};
use crate::api::DrainedView;
use crate::session::label_of;

/// How long before a mark a birth may have been registered for the mark to be taken as its own: a day.
pub(crate) const RECENT_MS: i64 = 24 * 60 * 60 * 1000;

/// Brings everything in; none where there was nothing. A birth that it opens begins with this protocol. Never an error: what
/// cannot be brought in now waits, and is told.
pub(crate) fn bring_in(
    store: &mut Store,
    practice: &Practice,
    protocol: Option<Fact>,
    expected: Option<&InboxTail>,
) -> Option<DrainedView> {
    let turn = |store: &Store, batch: Batch| turn(store, practice, protocol.as_ref(), &batch);
    let view = match store.drain(expected, turn) {
        Ok(drained) => DrainedView {
            entries: drained.entries,
            lost_tail: drained.lost_tail.saturating_add(drained.torn),
            damaged: drained.damaged,
            waiting: drained.waiting,
        },
        Err(_) => {
            let waiting = secundine_store::Inbox::waiting(store.folder()).files;
            DrainedView { entries: 0, lost_tail: 0, damaged: 0, waiting }
        }
    };
    let nothing = DrainedView { entries: 0, lost_tail: 0, damaged: 0, waiting: 0 };
    (view != nothing).then_some(view)
}

/// Goes over from one file to the next: the birth that the marks belong to.
#[derive(Serialize, Deserialize)]
struct Carry {
    birth: Option<BirthId>,
}

/// Entries of the records of one file.
fn turn(store: &Store, practice: &Practice, protocol: Option<&Fact>, batch: &Batch) -> Result<Turned, StoreError> {
    let carried = batch.carry.as_deref().and_then(|carry| serde_json::from_slice::<Carry>(carry).ok());
    let here = carried.and_then(|carry| carry.birth);
    let mut work = Work { store, practice, protocol, here, entries: Vec::new() };
    let mut unread = 0;
    for record in &batch.records {
        let (record, vouched) = Record::vouched(store, record)?;
        match Record::decode(record) {
            Ok(record) if vouched && record.undoes.is_none() && keepable(&record) => work.take_vouched(record)?,
            Ok(record) if markable(&record) => work.take(record)?,
            Err(Unreadable::Newer(form)) => return Err(StoreError::Newer(i64::from(form))),
            Ok(_) | Err(Unreadable::Nothing) => unread += 1,
        }
    }
    let carry = serde_json::to_vec(&Carry { birth: work.here }).map_err(|error| StoreError::NotSaved(error.to_string()))?;
    Ok(Turned { entries: work.entries, carry, unread })
}

/// Whether a record is one that this program writes: whoever can write files here can seal others.
fn markable(record: &Record) -> bool {
    let kind = record.fact.is_mark() || matches!(record.fact, Fact::Noted { .. }) || record.undoes.is_some();
    kind && record.amends.is_none() && keepable(record)
}

/// Whether a record can stand in a chart.
fn keepable(record: &Record) -> bool {
    record.birth != Some(BirthId::PRACTICE) && record.fact.check().is_ok()
}

struct Work<'a> {
    store: &'a Store,
    practice: &'a Practice,
    /// What a new chart begins with.
    protocol: Option<&'a Fact>,
    /// The birth that a mark without one belongs to.
    here: Option<BirthId>,
    entries: Vec<Entry>,
}

impl Work<'_> {
    fn take(&mut self, record: Record) -> Result<(), StoreError> {
        let known = match record.birth {
            Some(birth) if !self.entries_of(birth)?.is_empty() => Some(birth),
            _ => None,
        };
        let Record { fact, occurred, recorded, undoes, .. } = record;
        if let Some(undone) = undoes {
            return self.take_back(known, &undone, occurred, recorded);
        }
        let birth = match known {
            Some(birth) => birth,
            None => self.birth_for(&fact, &recorded)?,
        };
        let birth = match birth {
            BirthId::PRACTICE => self.open_chart(&occurred, &recorded),
            birth => birth,
        };
        self.here = Some(birth);
        self.write(birth, fact, occurred, recorded, None);
        Ok(())
    }

    /// What could not be saved while the practice was open: it names its birth, or opens a chart. Marks that were made after
    /// the lock belong to its birth only if it opened one.
    fn take_vouched(&mut self, record: Record) -> Result<(), StoreError> {
        let Record { birth, fact, occurred, recorded, amends, .. } = record;
        let birth = birth.unwrap_or_else(|| {
            let opened = self.open_chart(&occurred, &recorded);
            *self.here.insert(opened)
        });
        self.write(birth, fact, occurred, recorded, amends);
        Ok(())
    }

    /// The birth of a mark that names none: the one of the marks before it, else the only one whose third stage runs.
    /// [`BirthId::PRACTICE`] where a chart is to be opened: a first baby does that, unless it belongs to a chart that has
    /// none yet.
    fn birth_for(&self, fact: &Fact, at: &Stamp) -> Result<BirthId, StoreError> {
        let first_baby = matches!(fact, Fact::BabyBorn { baby: 1 });
        let birth = match self.here {
            Some(here) if first_baby && self.chart(here)?.babies.get(&1).is_some_and(|baby| baby.born.is_some()) => None,
            Some(here) => Some(here),
            None if first_baby => None,
            None => self.only_running(at)?,
        };
        Ok(birth.unwrap_or(BirthId::PRACTICE))
    }

    fn only_running(&self, at: &Stamp) -> Result<Option<BirthId>, StoreError> {
        let mut running = Vec::new();
        for birth in self.store.births()? {
            let age = at.wall_ms.saturating_sub(birth.registered_ms);
            if (0..RECENT_MS).contains(&age) && self.chart(birth.id)?.third_stage(at).is_some_and(|stage| stage.to.is_none()) {
                running.push(birth.id);
            }
        }
        Ok(running.first().copied().filter(|_| running.len() == 1))
    }

    /// A new chart, as a baby's birth opens one: with its label, and the protocol of the practice.
    fn open_chart(&mut self, occurred: &Occurred, recorded: &Stamp) -> BirthId {
        let birth = BirthId(self.next_id());
        let label = label_of(&occurred.date(), &occurred.clock());
        self.write(birth, Fact::BirthRegistered { label, rehearsal: false }, occurred.clone(), recorded.clone(), None);
        if let Some(chosen) = self.protocol {
            self.write(birth, chosen.clone(), Occurred::Marked(recorded.clone()), recorded.clone(), None);
        }
        birth
    }

    /// A mark that is not here any more needs no taking back.
    fn take_back(
        &mut self,
        known: Option<BirthId>,
        undone: &Undone,
        occurred: Occurred,
        recorded: Stamp,
    ) -> Result<(), StoreError> {
        if let Some((birth, entry)) = self.find(known, undone, &recorded)? {
            let amends = Some(Amendment { entry, reason: UNDONE.to_owned() });
            self.write(birth, Fact::Retracted, occurred, recorded, amends);
        }
        Ok(())
    }

    /// The entry of a mark, in whichever birth: since it was made, another mark may have opened a chart.
    fn find(&self, known: Option<BirthId>, of: &Undone, now: &Stamp) -> Result<Option<(BirthId, EntryId)>, StoreError> {
        let is = |entry: &&Entry| entry.fact == of.fact && entry.recorded == of.recorded;
        if let Some(entry) = self.entries.iter().rev().find(is) {
            return Ok(Some((entry.birth, entry.id)));
        }
        let recent = self.store.births()?.into_iter().filter(|birth| now.wall_ms.saturating_sub(birth.registered_ms) < RECENT_MS);
        for birth in known.into_iter().chain(self.here).chain(recent.map(|birth| birth.id)) {
            let entries = self.entries_of(birth)?;
            if let Some(entry) = entries.iter().rev().find(is) {
                return Ok(Some((birth, entry.id)));
            }
        }
        Ok(None)
    }

    fn write(&mut self, birth: BirthId, fact: Fact, occurred: Occurred, recorded: Stamp, amends: Option<Amendment>) {
        let (id, author) = (self.next_id(), self.practice.practitioner.clone());
        self.entries.push(Entry { id, birth, author, occurred, recorded, fact, amends });
    }

    fn next_id(&self) -> EntryId {
        let next = self.store.next_id();
        EntryId { n: next.n + self.entries.len() as u64, ..next }
    }

    fn entries_of(&self, birth: BirthId) -> Result<Vec<Entry>, StoreError> {
        let mut entries: Vec<Entry> = self.store.entries(birth)?.into_iter().map(|stored| stored.entry).collect();
        entries.extend(self.entries.iter().filter(|entry| entry.birth == birth).cloned());
        Ok(entries)
    }

    fn chart(&self, birth: BirthId) -> Result<Chart, StoreError> {
        Ok(fold(birth, &self.entries_of(birth)?))
    }
}
