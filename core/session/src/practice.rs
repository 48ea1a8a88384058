//! An open practice: its store, and the births that were looked at.

use std::collections::HashMap;
use std::path::Path;

use secundine_domain::chart::{Chart, State, fold_joined};
use secundine_domain::entry::{Amendment, BirthId, DeviceId, Entry, EntryId};
use secundine_domain::examination::Examination;
use secundine_domain::fact::{Fact, Photo, Practice};
use secundine_domain::message::Message;
use secundine_domain::protocol::OwnChange;
use secundine_domain::time::{Occurred, Run, Stamp};
use secundine_store::{Birth, InboxTail, Restored, Store, StoreError, Stored};

use crate::api::{ApiError, DrainedView, ErrorCode, SalvageView, VerifyView};
use crate::examining::Examining;
use crate::hide;
use crate::locked::{Writer, bring_in, keep_elsewhere};
use crate::own::Own;
use crate::verify;
use sync::{description, others};

mod bands;
mod clock;
mod files;
mod medicines;
mod same;
mod sending;
mod sync;
pub(crate) mod term;

pub(crate) use clock::ClockSince;

/// An open practice.
pub(crate) struct OpenPractice {
    store: Store,
    described: Practice,
    /// Who writes in place of the practitioner.
    scribe: Option<String>,
    own: Own,
    /// How the practice examines.
    pub(crate) examining: Examining,
    births: HashMap<BirthId, Vec<Stored>>,
    bands: bands::Bands,
    /// How far each run of this device's clock was seen.
    runs: Vec<Run>,
    post: sending::Post,
    /// Births that are one, once somebody asked.
    same: Option<same::Same>,
    /// What was read of a damaged store, which is open to be read only.
    salvage: Option<SalvageView>,
}

/// What is to be written.
#[derive(Clone)]
pub(crate) struct Draft {
    pub birth: BirthId,
    pub occurred: Occurred,
    pub recorded: Stamp,
    pub fact: Fact,
    pub amends: Option<Amendment>,
}

/// What an amendment does to a line.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Change {
    /// Puts it right; what is none stays as it is.
    Put { fact: Option<Box<Fact>>, occurred: Option<Occurred> },
    /// Takes it out.
    Retract,
}

impl Draft {
    /// Something that happens as it is written.
    pub(crate) fn now(birth: BirthId, fact: Fact, now: &Stamp) -> Self {
        Self { birth, occurred: Occurred::Marked(now.clone()), recorded: now.clone(), fact, amends: None }
    }

    fn entry(self, id: EntryId, author: String) -> Entry {
        let Self { birth, occurred, recorded, fact, amends } = self;
        Entry { id, birth, author, occurred, recorded, fact, amends }
    }
}

impl OpenPractice {
    /// A practice just founded: its description is its first entry.
    pub(crate) fn found(store: Store, described: Practice, now: &Stamp) -> Result<Self, ApiError> {
        let (own, examining) = (Own::default(), Examining::default());
        let (births, bands, post) = Default::default();
        let runs = Vec::new();
        let (same, salvage) = (None, None);
        let mut open = Self { store, described, own, examining, scribe: None, births, bands, runs, post, same, salvage };
        open.describe(open.described.clone(), now)?;
        open.beat(now);
        Ok(open)
    }

    /// A practice that was here.
    pub(crate) fn open(store: Store) -> Result<Self, ApiError> {
        let (entries, runs) = (practice_entries(&store)?, store.runs()?);
        let others = others(&store);
        let (described, own, examining) = (description(&entries, &others), Own::read(&entries), Examining::read(&entries));
        let (births, bands) = Default::default();
        let post = sending::Post::read(&entries, &others);
        let (same, salvage) = (None, None);
        Ok(Self { store, described, own, examining, scribe: None, births, bands, runs, post, same, salvage })
    }

    /// A damaged practice, as far as it could be read.
    pub(crate) fn open_damaged(store: Store, salvage: SalvageView) -> Result<Self, ApiError> {
        Ok(Self { salvage: Some(salvage), ..Self::open(store)? })
    }

    /// What was read of a damaged store; none where the practice can be written.
    pub(crate) fn salvage(&self) -> Option<&SalvageView> {
        self.salvage.as_ref()
    }

    /// The entries of a birth as an archive of their own.
    pub(crate) fn extract(&self, birth: BirthId, made: &Stamp) -> Result<Vec<u8>, StoreError> {
        self.store.extract(birth, Vec::new(), made)
    }

    /// Whether a backup is one of this practice.
    pub(crate) fn is_backup_of(&self, path: &Path) -> Result<(), StoreError> {
        self.store.is_backup_of(path)
    }

    /// Adds what a backup holds and is not here; what was known of the births is read anew.
    pub(crate) fn add_backup(&mut self, path: &Path) -> Result<Restored, StoreError> {
        let restored = self.store.add_backup(path)?;
        self.births.clear();
        self.same = None;
        self.read_practice_anew()?;
        Ok(restored)
    }

    /// Brings in what was marked while it was locked; none where there was nothing.
    pub(crate) fn bring_in(&mut self, expected: Option<&InboxTail>) -> Option<DrainedView> {
        let protocol = self.first_protocol();
        bring_in(&mut self.store, &self.described, protocol, expected)
    }

    /// The practice's own protocol.
    pub(crate) fn own(&self) -> &Own {
        &self.own
    }

    /// The entries of the practice itself, in order of time.
    pub(crate) fn entries_of_practice(&self) -> Result<Vec<Entry>, ApiError> {
        Ok(practice_entries(&self.store)?)
    }

    /// Changes the own protocol; what is not on disk does not hold. What changes nothing is not written.
    pub(crate) fn change_own(&mut self, change: &OwnChange, now: &Stamp) -> Result<(), ApiError> {
        let changed = self.own.protocol.clone().changed(change);
        let change = self.own.protocol.difference(&changed);
        if change == OwnChange::default() {
            return Ok(());
        }
        let finished = changed.finish().ok().map(Box::new);
        let draft = Draft::now(BirthId::PRACTICE, Fact::OwnProtocolChanged { change, finished }, now);
        let entry = self.write_all(vec![draft])?.into_iter().next().ok_or_else(ApiError::internal)?;
        self.own = std::mem::take(&mut self.own).after(&entry);
        Ok(())
    }

    /// The protocol that a new birth begins with; none where none is chosen.
    pub(crate) fn first_protocol(&self) -> Option<Fact> {
        self.own.chosen(self.described.protocol.clone()?).ok()
    }

    pub(crate) fn described(&self) -> &Practice {
        &self.described
    }

    /// Who writes in place of the practitioner; none where the practitioner does.
    pub(crate) fn scribe(&self) -> Option<&str> {
        self.scribe.as_deref()
    }

    /// From now on entries bear this name, or the practitioner's. It is written down nowhere else, and ends with the lock.
    pub(crate) fn write_as(&mut self, scribe: Option<String>) {
        self.scribe = scribe.map(|name| name.trim().to_owned()).filter(|name| !name.is_empty());
    }

    /// Whether these words are the practice's name, or the practitioner's where it has none.
    pub(crate) fn is_named(&self, words: &str) -> Result<(), ApiError> {
        let Practice { name, practitioner, .. } = &self.described;
        let name = if name.trim().is_empty() { practitioner } else { name };
        match words.trim() == name.trim() {
            true => Ok(()),
            false => Err(ApiError::impossible(Message::new("error-other-name"))),
        }
    }

    /// Describes the practice anew; what is not on disk does not hold.
    pub(crate) fn describe(&mut self, practice: Practice, now: &Stamp) -> Result<(), ApiError> {
        describable(&practice, &self.own)?;
        let before = std::mem::replace(&mut self.described, practice.clone());
        let written = self.write(Draft::now(BirthId::PRACTICE, Fact::PracticeDescribed(practice), now));
        if written.is_err() {
            self.described = before;
        }
        written.map(|_| ())
    }

    /// Registers a birth with its first fact, if there is one already, and the practice's protocol, if one is chosen: all
    /// of it is on disk, or nothing. Gives the birth and the entry of that fact.
    pub(crate) fn register(
        &mut self,
        label: String,
        rehearsal: bool,
        first: Option<(Fact, Stamp)>,
        now: &Stamp,
    ) -> Result<(BirthId, Option<EntryId>), ApiError> {
        let birth = BirthId(self.store.next_id());
        let opened = first.as_ref().map_or(now, |(_, at)| at);
        let mut drafts = vec![Draft::now(birth, Fact::BirthRegistered { label, rehearsal }, opened)];
        let with_first = first.is_some();
        drafts.extend(first.map(|(fact, at)| Draft { occurred: Occurred::Marked(at), ..Draft::now(birth, fact, now) }));
        let ways = self.first_protocol().into_iter().chain(self.first_weights());
        drafts.extend(ways.map(|chosen| Draft::now(birth, chosen, now)));
        let entries = self.write_all(drafts)?;
        Ok((birth, entries.get(1).map(|entry| entry.id).filter(|_| with_first)))
    }

    /// Puts a fact on disk and gives its entry.
    pub(crate) fn write(&mut self, draft: Draft) -> Result<EntryId, ApiError> {
        let written = self.write_all(vec![draft])?;
        written.first().map(|entry| entry.id).ok_or_else(ApiError::internal)
    }

    /// This device, as its entries name it.
    pub(crate) fn device(&self) -> DeviceId {
        self.store.next_id().device
    }

    /// Puts facts on disk, all or none.
    pub(crate) fn write_drafts(&mut self, drafts: Vec<Draft>) -> Result<(), ApiError> {
        self.write_all(drafts).map(drop)
    }

    /// Puts facts on disk, all or none, and gives their entries.
    fn write_all(&mut self, drafts: Vec<Draft>) -> Result<Vec<Entry>, ApiError> {
        drafts.iter().try_for_each(|draft| check(&draft.fact))?;
        let first = self.store.next_id();
        let author = self.scribe.as_ref().unwrap_or(&self.described.practitioner);
        let numbered = (first.n..).zip(drafts);
        let entries: Vec<Entry> = numbered.map(|(n, draft)| draft.entry(EntryId { n, ..first }, author.clone())).collect();
        let turns = entries.iter().any(|entry| self.tells_of_same(entry));
        for stored in self.store.append_all(&entries)? {
            for name in self.names_of(stored.entry.birth)? {
                if let Some(known) = self.births.get_mut(&name) {
                    known.push(stored.clone());
                }
            }
        }
        if turns {
            self.births.clear();
            self.same = None;
        }
        Ok(entries)
    }

    /// Keeps in the inbox what could not be put on disk here.
    pub(crate) fn keep_elsewhere(&self, writer: &mut Writer, draft: Draft) -> Result<(), ApiError> {
        check(&draft.fact)?;
        keep_elsewhere(&self.store, writer, draft)
    }

    /// What amends a line that exists; nothing is written yet.
    pub(crate) fn amendment(
        &mut self,
        birth: BirthId,
        amends: Amendment,
        change: Change,
        now: &Stamp,
    ) -> Result<Draft, ApiError> {
        if amends.reason.trim().is_empty() {
            return Err(ApiError::impossible(Message::new("error-no-reason")));
        }
        let chart = self.chart(birth)?;
        let line = chart.lines.iter().find(|line| line.first.id == amends.entry);
        let line = line.ok_or_else(|| ApiError::new(ErrorCode::NotFound, "error-no-entry"))?;
        if matches!(line.first.fact, Fact::Signed { .. } | Fact::BirthRegistered { rehearsal: true, .. }) {
            return Err(ApiError::impossible(Message::new("error-not-amendable")));
        }
        if line.state() == State::Retracted && change == Change::Retract {
            return Err(ApiError::impossible(Message::new("error-already-retracted")));
        }
        let shown = line.shown();
        let (fact, occurred) = match change {
            // What stands there already stays with what went with it.
            Change::Put { fact, occurred } => {
                let other = fact.map(|fact| *fact).filter(|fact| *fact != shown.fact);
                (other.map(|fact| self.own.completed(fact)).transpose()?, occurred)
            }
            Change::Retract => (Some(Fact::Retracted), None),
        };
        let fact = fact.unwrap_or_else(|| shown.fact.clone());
        let occurred = occurred.unwrap_or_else(|| shown.occurred.clone());
        // Under the name that the line stands under: what is put right goes with it.
        let birth = line.first.birth;
        Ok(Draft { birth, occurred, recorded: now.clone(), fact, amends: Some(amends) })
    }

    /// The entries of a birth, under all its names.
    ///
    /// # Errors
    /// Not found when there are none.
    pub(crate) fn entries(&mut self, birth: BirthId) -> Result<&[Stored], ApiError> {
        if !self.births.contains_key(&birth) {
            let mut found = Vec::new();
            for name in self.names_of(birth)? {
                found.extend(self.store.entries(name)?);
            }
            if found.is_empty() || birth == BirthId::PRACTICE {
                return Err(ApiError::new(ErrorCode::NotFound, "error-no-birth"));
            }
            self.births.insert(birth, found);
        }
        self.births.get(&birth).map(Vec::as_slice).ok_or_else(ApiError::internal)
    }

    pub(crate) fn chart(&mut self, birth: BirthId) -> Result<Chart, ApiError> {
        self.entries(birth)?;
        let names = self.names_of(birth)?;
        let entries = self.births.get(&birth).map_or(&[][..], Vec::as_slice);
        Ok(fold_joined(&names, entries.iter().map(|stored| &stored.entry), &self.runs))
    }

    /// The same without names and words of people: to be shown, never to be written from.
    pub(crate) fn hidden_chart(&mut self, birth: BirthId) -> Result<Chart, ApiError> {
        self.entries(birth)?;
        let names = self.names_of(birth)?;
        let entries = self.births.get(&birth).map_or(&[][..], Vec::as_slice);
        Ok(hide::chart(&names, entries.iter().map(|stored| &stored.entry), &self.runs))
    }

    /// Whether a birth was looked at since the practice was opened.
    pub(crate) fn knows(&self, birth: BirthId) -> bool {
        self.births.contains_key(&birth)
    }

    /// The births, latest first, each once.
    pub(crate) fn births(&mut self) -> Result<Vec<Birth>, ApiError> {
        let births = self.store.births()?;
        self.once(births)
    }

    /// Checks everything that is on disk.
    pub(crate) fn verify(&mut self) -> Result<VerifyView, ApiError> {
        let mut view = verify::view(&self.store.verify()?);
        view.label = view.birth.and_then(|birth| self.chart(birth).ok()).map(|chart| chart.label);
        Ok(view)
    }

    /// Lets go of the key.
    pub(crate) fn close(self) -> Result<(), ApiError> {
        Ok(self.store.close()?)
    }
}

/// The entries of the practice itself, in order of time.
fn practice_entries(store: &Store) -> Result<Vec<Entry>, StoreError> {
    let mut entries: Vec<Entry> = store.entries(BirthId::PRACTICE)?.into_iter().map(|stored| stored.entry).collect();
    entries.sort_by_key(|entry| (entry.recorded.wall_ms, entry.id));
    Ok(entries)
}

/// Whether a practice with this own protocol can be described so.
pub(crate) fn describable(practice: &Practice, own: &Own) -> Result<(), ApiError> {
    if practice.practitioner.trim().is_empty() {
        return Err(ApiError::impossible(Message::new("error-no-practitioner")));
    }
    practice.protocol.clone().map_or(Ok(()), |protocol| own.chosen(protocol).map(drop))
}

/// Whether a fact can be.
fn check(fact: &Fact) -> Result<(), ApiError> {
    fact.check()?;
    match fact {
        Fact::Examined { item, answer, .. } => {
            let known = Examination::standard().item(item);
            let known = known.ok_or_else(|| ApiError::new(ErrorCode::NotFound, "error-no-item"))?;
            known.check(answer).map_err(ApiError::impossible)
        }
        Fact::PhotoTaken(Photo { item: Some(item), .. }) if Examination::standard().item(item).is_none() => {
            Err(ApiError::new(ErrorCode::NotFound, "error-no-item"))
        }
        _ => Ok(()),
    }
}
