//! The roster: who belongs to the practice, worked out from what its leads have signed.
//!
//! Acts are a set, as entries are: whoever has the same ones comes to the same roster, in whatever order they arrived.
//! Leads who act without having seen each other's acts are no conflict, but for removals: a removal wins over anything of
//! the removed that its author had not seen. Where two remove each other, the one who was lead first stays; the recovery
//! sheet comes before all.

use std::collections::{BTreeMap, BTreeSet};

use secundine_domain::entry::{BirthId, DeviceId, EntryId};
use secundine_store::device_with;
use serde::{Deserialize, Serialize};

use crate::cbor::{Blob, Bytes};
use crate::charter::Charter;
use crate::epoch::EpochId;

/// What a person may do in the practice.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Role {
    /// Adds and removes others; everything that a member does.
    Lead,
    /// Writes and signs.
    Member,
    /// Writes; does not sign.
    Student,
}

/// How far something of a device was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Seen {
    pub(crate) device: Bytes<16>,
    pub(crate) seq: u64,
    pub(crate) hash: Bytes<32>,
}

impl Seen {
    pub(crate) fn new(device: DeviceId, seq: u64, hash: [u8; 32]) -> Self {
        Self { device: Bytes(device.0), seq, hash: Bytes(hash) }
    }

    pub(crate) fn device(&self) -> DeviceId {
        DeviceId(self.device.0)
    }
}

/// What a lead, or for an erasure anybody who is no student, puts into the roster.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Act {
    /// The first act of a practice.
    Found {
        /// The founder's name, as it is shown.
        label: String,
        /// The founder's age recipient.
        kem: String,
    },
    /// Somebody joins.
    Add {
        /// Public key of their device.
        public: Bytes<32>,
        /// Its age recipient.
        kem: String,
        /// The name that is shown.
        label: String,
        /// What they may do.
        role: Role,
    },
    /// What somebody may do is changed.
    Role {
        /// Whose.
        device: Bytes<16>,
        /// From now on.
        role: Role,
    },
    /// A device belongs to the practice no more.
    Remove {
        /// Which.
        device: Bytes<16>,
        /// How far its segments count without a person's word: its last one that the remover has seen.
        segment: u64,
    },
    /// A new key, or the same for somebody more.
    Epoch {
        /// Its number.
        counter: u32,
        /// Which key.
        epoch: EpochId,
        /// SHA-256 of its age file.
        file: Bytes<32>,
        /// Whose devices it was sealed to.
        members: Vec<Bytes<16>>,
    },
    /// What a removed device wrote is taken in after all, as far as this segment.
    Accept {
        /// Which device.
        device: Bytes<16>,
        /// The last segment that is taken in.
        segment: u64,
    },
    /// A birth is to be erased; it is once two people have said so.
    Erase {
        /// The birth, as it stands in the chain.
        birth: Bytes<24>,
    },
    /// Of a later version of the program.
    Later(Blob),
}

/// An act as its author signed it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub(crate) struct Entry {
    /// One more than that of every act that its author had seen.
    pub clock: u64,
    /// UTC milliseconds, by the author's clock; shown, never relied upon.
    pub wall_ms: i64,
    /// How far the author had seen the acts of others, and their own.
    pub seen: Vec<Seen>,
    pub act: Act,
}

/// An act in its place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub(crate) struct Record {
    pub author: Bytes<16>,
    pub seq: u64,
    /// Of the object that it came in.
    pub hash: Bytes<32>,
    pub entry: Entry,
}

/// Somebody who belongs, or belonged, to the practice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Member {
    /// Public key of the device.
    pub public: [u8; 32],
    /// Its age recipient.
    pub kem: String,
    /// The name that is shown.
    pub label: String,
    /// What they may do.
    pub role: Role,
    /// When the device was added, UTC milliseconds by the clock of who added it.
    pub added_ms: i64,
    /// Set once it was removed.
    pub removed: Option<Removed>,
}

/// How a device was removed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Removed {
    /// By whom.
    pub by: DeviceId,
    /// When, UTC milliseconds by their clock.
    pub at_ms: i64,
    /// Segments after this one wait for a person's word.
    pub segment: u64,
}

/// An epoch that was announced.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Announced {
    pub counter: u32,
    pub epoch: EpochId,
    pub file: [u8; 32],
    pub members: BTreeSet<DeviceId>,
}

/// Who belongs to the practice.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Roster {
    /// Everybody who ever did, by device.
    pub members: BTreeMap<DeviceId, Member>,
    pub(crate) epochs: Vec<Announced>,
    /// By birth: who asked first when, UTC milliseconds by their clocks.
    pub(crate) erasures: BTreeMap<[u8; 24], BTreeMap<DeviceId, i64>>,
    /// The greatest clock among the acts.
    pub(crate) clock: u64,
    /// In what order they became leads.
    seniority: Vec<DeviceId>,
}

struct Removal<'a> {
    record: &'a Record,
    author: DeviceId,
    target: DeviceId,
}

impl Roster {
    /// Works it out from the acts, in any order.
    pub(crate) fn of(charter: &Charter, records: &[Record]) -> Self {
        let mut ordered: Vec<&Record> = records.iter().collect();
        ordered.sort_by_key(|record| (record.entry.clock, record.author, record.seq));
        // Who was ever a lead, if nobody had been removed: whose removals are to be weighed.
        let all = Self::apply(charter, &ordered, &[]);
        let mut removals: Vec<Removal<'_>> = ordered
            .iter()
            .filter_map(|&record| match &record.entry.act {
                Act::Remove { device, .. } => {
                    Some(Removal { record, author: DeviceId(record.author.0), target: DeviceId(device.0) })
                }
                _ => None,
            })
            .filter(|removal| all.seniority.contains(&removal.author))
            .collect();
        let rank = |device| all.seniority.iter().position(|one| *one == device).unwrap_or(usize::MAX);
        removals.sort_by_key(|removal| (rank(removal.author), removal.record.entry.clock, removal.record.seq));
        let mut effective: Vec<Removal<'_>> = Vec::new();
        for removal in removals {
            if !overtaken(&effective, removal.author, removal.record) {
                effective.push(removal);
            }
        }
        Self::apply(charter, &ordered, &effective)
    }

    fn apply(charter: &Charter, ordered: &[&Record], removals: &[Removal<'_>]) -> Self {
        let mut roster = Self { seniority: charter.recovery_id().into_iter().collect(), ..Self::default() };
        for record in ordered {
            let (author, entry) = (DeviceId(record.author.0), &record.entry);
            if overtaken(removals, author, record) {
                continue;
            }
            let founds = matches!(entry.act, Act::Found { .. }) && Some(author) == charter.founder_id() && record.seq == 1;
            let leads = founds || roster.leads(charter, author);
            let asks = matches!(entry.act, Act::Erase { .. }) && roster.is_full(author);
            if leads || asks {
                roster.clock = roster.clock.max(entry.clock);
                roster.act(charter, author, entry, removals, record);
            }
        }
        roster
    }

    fn act(&mut self, charter: &Charter, author: DeviceId, entry: &Entry, removals: &[Removal<'_>], record: &Record) {
        match &entry.act {
            Act::Found { label, kem } => self.add(charter.founder.0, kem, label, Role::Lead, entry.wall_ms),
            Act::Add { public, kem, label, role } => self.add(public.0, kem, label, *role, entry.wall_ms),
            Act::Role { device, role } => {
                let device = DeviceId(device.0);
                if let Some(member) = self.members.get_mut(&device) {
                    member.role = *role;
                    self.note_lead(device, *role);
                }
            }
            Act::Remove { device, segment } => {
                let counts = removals.iter().any(|one| std::ptr::eq(one.record, record));
                if let Some(member) = self.members.get_mut(&DeviceId(device.0)).filter(|_| counts) {
                    let sooner = member.removed.map_or(*segment, |removed| removed.segment.min(*segment));
                    member.removed = Some(Removed { by: author, at_ms: entry.wall_ms, segment: sooner });
                }
            }
            Act::Epoch { counter, epoch, file, members } => {
                let members = members.iter().map(|device| DeviceId(device.0)).collect();
                self.epochs.push(Announced { counter: *counter, epoch: *epoch, file: file.0, members });
            }
            Act::Accept { device, segment } => {
                let removed = self.members.get_mut(&DeviceId(device.0)).and_then(|member| member.removed.as_mut());
                if let Some(removed) = removed {
                    removed.segment = removed.segment.max(*segment);
                }
            }
            Act::Erase { birth } => drop(self.erasures.entry(birth.0).or_default().entry(author).or_insert(entry.wall_ms)),
            Act::Later(_) => {}
        }
    }

    /// A device is added once; one that comes back does so as a new one.
    fn add(&mut self, public: [u8; 32], kem: &str, label: &str, role: Role, added_ms: i64) {
        let Some(device) = device_with(&public) else { return };
        let (kem, label) = (kem.to_owned(), label.to_owned());
        self.members.entry(device).or_insert(Member { public, kem, label, role, added_ms, removed: None });
        self.note_lead(device, role);
    }

    fn note_lead(&mut self, device: DeviceId, role: Role) {
        if role == Role::Lead && !self.seniority.contains(&device) {
            self.seniority.push(device);
        }
    }

    /// Whether a device's acts count here, as far as the acts before them were applied.
    fn leads(&self, charter: &Charter, device: DeviceId) -> bool {
        charter.recovery_id() == Some(device) || self.members.get(&device).is_some_and(|member| member.role == Role::Lead)
    }

    fn is_full(&self, device: DeviceId) -> bool {
        self.members.get(&device).is_some_and(|member| member.role != Role::Student)
    }

    /// A device that belongs to the practice.
    #[must_use]
    pub fn member(&self, device: DeviceId) -> Option<&Member> {
        self.members.get(&device).filter(|member| member.removed.is_none())
    }

    /// Those who belong to it.
    pub fn present(&self) -> impl Iterator<Item = (DeviceId, &Member)> {
        self.members.iter().filter(|(_, member)| member.removed.is_none()).map(|(device, member)| (*device, member))
    }

    /// Whether a device may add and remove.
    #[must_use]
    pub fn is_lead(&self, device: DeviceId) -> bool {
        self.member(device).is_some_and(|member| member.role == Role::Lead)
    }

    /// Everybody whose acts may count: those who are or were leads, the first first.
    pub(crate) fn leads_ever(&self) -> &[DeviceId] {
        &self.seniority
    }

    /// The epoch under which to seal: the latest whose key no removed device was given. Two leads may have begun one at a
    /// time; the greater id is taken, by everybody.
    pub(crate) fn current_epoch(&self) -> Option<&Announced> {
        let clean = |epoch: &&Announced| epoch.members.iter().all(|device| self.member(*device).is_some());
        // A file for somebody who came later has the same key.
        let tainted: BTreeSet<EpochId> = self.epochs.iter().filter(|one| !clean(one)).map(|one| one.epoch).collect();
        self.epochs.iter().filter(|one| !tainted.contains(&one.epoch)).max_by_key(|one| (one.counter, one.epoch))
    }

    /// Whether there is an epoch to seal under, and everybody who belongs to the practice was given its key. Two leads who
    /// let people in at once, one of them with a new key, leave somebody out.
    pub(crate) fn all_have_the_key(&self) -> bool {
        let Some(current) = self.current_epoch().map(|one| one.epoch) else { return false };
        let files = || self.epochs.iter().filter(|one| one.epoch == current);
        self.present().all(|(device, _)| files().any(|one| one.members.contains(&device)))
    }

    /// The greatest number of an epoch so far.
    pub(crate) fn last_counter(&self) -> u32 {
        self.epochs.iter().map(|one| one.counter).max().unwrap_or(0)
    }

    /// Births that one person wants erased, and that another has yet to ask for: who asked, and when, UTC milliseconds by
    /// their clock.
    pub fn asked(&self) -> impl Iterator<Item = (BirthId, DeviceId, i64)> {
        let alone = |asked: &BTreeMap<DeviceId, i64>| asked.first_key_value().map(|(who, ms)| (*who, *ms));
        let asked = self.erasures.iter().filter(|(_, asked)| asked.len() == 1);
        asked.filter_map(move |(birth, asked)| alone(asked).and_then(|(who, ms)| Some((unchained(birth)?, who, ms))))
    }

    /// Births that two people want erased.
    pub(crate) fn erased(&self) -> impl Iterator<Item = &[u8; 24]> {
        self.erasures.iter().filter(|(_, asked)| asked.len() > 1).map(|(birth, _)| birth)
    }
}

/// The birth of a name in the chain.
pub(crate) fn unchained(birth: &[u8; 24]) -> Option<BirthId> {
    let (device, n) = birth.split_first_chunk::<16>()?;
    let n = n.try_into().map(u64::from_be_bytes).ok()?;
    Some(BirthId(EntryId { device: DeviceId(*device), n }))
}

/// Whether a removal of this author had not seen this act.
fn overtaken(removals: &[Removal<'_>], author: DeviceId, record: &Record) -> bool {
    removals.iter().filter(|removal| removal.target == author).any(|removal| {
        let seen = removal.record.entry.seen.iter().find(|seen| seen.device() == author);
        seen.is_none_or(|seen| seen.seq < record.seq)
    })
}

#[cfg(test)]
mod tests;
