//! An open practice: its store, and the births that were looked at.

use std::collections::HashMap;

use secundine_domain::chart::{Chart, State, fold};
use secundine_domain::entry::{Amendment, BirthId, Entry, EntryId};
use secundine_domain::examination::Examination;
use secundine_domain::fact::{Fact, Practice};
use secundine_domain::message::Message;
use secundine_domain::protocol::Protocol;
use secundine_domain::time::{Occurred, Stamp};
use secundine_store::{Birth, Store, Stored};

use crate::api::{ApiError, ErrorCode};

/// An open practice.
pub(crate) struct OpenPractice {
    store: Store,
    described: Practice,
    births: HashMap<BirthId, Vec<Stored>>,
}

/// What is to be written.
pub(crate) struct Draft {
    pub birth: BirthId,
    pub occurred: Occurred,
    pub recorded: Stamp,
    pub fact: Fact,
    pub amends: Option<Amendment>,
}

impl Draft {
    /// Something that happens as it is written.
    pub(crate) fn now(birth: BirthId, fact: Fact, now: &Stamp) -> Self {
        Self { birth, occurred: Occurred::Marked(now.clone()), recorded: now.clone(), fact, amends: None }
    }
}

impl OpenPractice {
    /// A practice just founded: its description is its first entry.
    pub(crate) fn found(store: Store, described: Practice, now: &Stamp) -> Result<Self, ApiError> {
        let mut open = Self { store, described, births: HashMap::new() };
        open.describe(open.described.clone(), now)?;
        Ok(open)
    }

    /// A practice that was here.
    pub(crate) fn open(store: Store) -> Result<Self, ApiError> {
        let mut entries: Vec<Entry> = store.entries(BirthId::PRACTICE)?.into_iter().map(|stored| stored.entry).collect();
        entries.sort_by_key(|entry| (entry.recorded.wall_ms, entry.id));
        let described = entries.into_iter().rev().find_map(|entry| match entry.fact {
            Fact::PracticeDescribed(practice) => Some(practice),
            _ => None,
        });
        // Killed between the key file and the first entry: founded, but nameless.
        let nameless = Practice { name: String::new(), practitioner: String::new(), role: String::new(), protocol: None };
        Ok(Self { store, described: described.unwrap_or(nameless), births: HashMap::new() })
    }

    pub(crate) fn described(&self) -> &Practice {
        &self.described
    }

    pub(crate) fn describe(&mut self, practice: Practice, now: &Stamp) -> Result<(), ApiError> {
        if practice.practitioner.trim().is_empty() {
            return Err(ApiError::impossible(Message::new("error-no-practitioner")));
        }
        known_protocol(practice.protocol.as_deref())?;
        self.described = practice.clone();
        self.write(Draft::now(BirthId::PRACTICE, Fact::PracticeDescribed(practice), now)).map(|_| ())
    }

    /// Registers a birth under the practice's protocol.
    pub(crate) fn register(&mut self, label: String, rehearsal: bool, now: &Stamp) -> Result<BirthId, ApiError> {
        let birth = BirthId(self.store.next_id());
        self.write(Draft::now(birth, Fact::BirthRegistered { label, rehearsal }, now))?;
        Ok(birth)
    }

    /// Records the practice's protocol for a birth, where one is chosen.
    pub(crate) fn adopt_protocol(&mut self, birth: BirthId, now: &Stamp) -> Result<(), ApiError> {
        let Some(protocol) = self.described.protocol.clone() else { return Ok(()) };
        self.write(Draft::now(birth, Fact::ProtocolChosen { protocol }, now)).map(|_| ())
    }

    /// Puts a fact on disk and gives its entry.
    pub(crate) fn write(&mut self, draft: Draft) -> Result<EntryId, ApiError> {
        check(&draft.fact)?;
        let id = self.store.next_id();
        let author = self.described.practitioner.clone();
        let Draft { birth, occurred, recorded, fact, amends } = draft;
        let stored = self.store.append(&Entry { id, birth, author, occurred, recorded, fact, amends })?;
        if let Some(known) = self.births.get_mut(&birth) {
            known.push(stored);
        }
        Ok(id)
    }

    /// Writes an amendment of a line that exists.
    pub(crate) fn amend(
        &mut self,
        mut draft: Draft,
        occurred: Option<Occurred>,
        fact: Option<Fact>,
    ) -> Result<EntryId, ApiError> {
        let Some(amends) = &draft.amends else { return Err(ApiError::internal()) };
        if amends.reason.trim().is_empty() {
            return Err(ApiError::impossible(Message::new("error-no-reason")));
        }
        let entry = amends.entry;
        let chart = self.chart(draft.birth)?;
        let line = chart.lines.iter().find(|line| line.first.id == entry);
        let line = line.ok_or_else(|| ApiError::new(ErrorCode::NotFound, "error-no-entry"))?;
        if matches!(line.first.fact, Fact::Signed { .. } | Fact::BirthRegistered { rehearsal: true, .. }) {
            return Err(ApiError::impossible(Message::new("error-not-amendable")));
        }
        if line.state() == State::Retracted && draft.fact == Fact::Retracted {
            return Err(ApiError::impossible(Message::new("error-already-retracted")));
        }
        draft.occurred = occurred.unwrap_or_else(|| line.shown().occurred.clone());
        if draft.fact != Fact::Retracted {
            draft.fact = fact.unwrap_or_else(|| line.shown().fact.clone());
        }
        self.write(draft)
    }

    /// The entries of a birth.
    ///
    /// # Errors
    /// Not found when there are none.
    pub(crate) fn entries(&mut self, birth: BirthId) -> Result<&[Stored], ApiError> {
        if !self.births.contains_key(&birth) {
            let found = self.store.entries(birth)?;
            if found.is_empty() || birth == BirthId::PRACTICE {
                return Err(ApiError::new(ErrorCode::NotFound, "error-no-birth"));
            }
            self.births.insert(birth, found);
        }
        self.births.get(&birth).map(Vec::as_slice).ok_or_else(ApiError::internal)
    }

    pub(crate) fn chart(&mut self, birth: BirthId) -> Result<Chart, ApiError> {
        Ok(fold(birth, self.entries(birth)?.iter().map(|stored| &stored.entry)))
    }

    /// The births, latest first.
    pub(crate) fn births(&self) -> Result<Vec<Birth>, ApiError> {
        Ok(self.store.births()?)
    }

    /// Lets go of the key.
    pub(crate) fn close(self) -> Result<(), ApiError> {
        Ok(self.store.close()?)
    }
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
        Fact::ProtocolChosen { protocol } => known_protocol(Some(protocol)),
        _ => Ok(()),
    }
}

fn known_protocol(id: Option<&str>) -> Result<(), ApiError> {
    match id {
        Some(id) if Protocol::find(id).is_none() => Err(ApiError::new(ErrorCode::NotFound, "error-no-protocol")),
        _ => Ok(()),
    }
}
