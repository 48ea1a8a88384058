//! What sharing means for an open practice: whose entries speak for this phone, and what is read anew when some came.

use std::collections::BTreeSet;

use secundine_domain::entry::{BirthId, DeviceId};
use secundine_domain::fact::Practice;
use secundine_domain::message::Message;
use secundine_store::{Store, StoreError};
use secundine_sync::Role;

use super::{Entry, Fact, OpenPractice, Own, practice_entries, sending};
use crate::api::ApiError;
use crate::examining::Examining;

impl OpenPractice {
    pub(crate) fn store(&self) -> &Store {
        &self.store
    }

    /// The store, where it can be written.
    pub(crate) fn store_mut(&mut self) -> Result<&mut Store, ApiError> {
        match self.salvage {
            Some(_) => Err(StoreError::ReadOnly.into()),
            None => Ok(&mut self.store),
        }
    }

    /// Entries came, or were erased: what was known of their births is read anew.
    pub(crate) fn came(&mut self, births: &[BirthId], erased: &[BirthId]) -> Result<(), StoreError> {
        if !births.is_empty() || !erased.is_empty() {
            // One may be another registered twice, so all are read anew.
            self.births.clear();
            self.same = None;
        }
        match births.contains(&BirthId::PRACTICE) {
            true => self.read_practice_anew(),
            false => Ok(()),
        }
    }

    /// Reads what the entries of the practice itself tell.
    pub(crate) fn read_practice_anew(&mut self) -> Result<(), StoreError> {
        let entries = practice_entries(&self.store)?;
        let others = others(&self.store);
        (self.described, self.own) = (description(&entries, &others), Own::read(&entries));
        (self.examining, self.post) = (Examining::read(&entries), sending::Post::read(&entries, &others));
        Ok(())
    }

    /// Whether who works on this phone may sign: a student does not.
    pub(crate) fn may_sign(&self) -> Result<(), ApiError> {
        let roster = secundine_sync::roster(&self.store).unwrap_or_default();
        match roster.member(self.store.device()).map(|member| member.role) {
            Some(Role::Student) => Err(ApiError::impossible(Message::new("error-student-signs"))),
            _ => Ok(()),
        }
    }
}

/// The devices of the practice that are other people's.
pub(super) fn others(store: &Store) -> BTreeSet<DeviceId> {
    secundine_sync::others(store).unwrap_or_default()
}

/// How the practice was described last. Its name and protocol are everybody's; who works on this phone, only this phone says.
pub(super) fn description(entries: &[Entry], others: &BTreeSet<DeviceId>) -> Practice {
    let described = |entry: &Entry| match &entry.fact {
        Fact::PracticeDescribed(practice) => Some(practice.clone()),
        _ => None,
    };
    let last = entries.iter().rev().find_map(described);
    let own = entries.iter().rev().filter(|entry| !others.contains(&entry.id.device)).find_map(described);
    // Killed between the key file and the first entry: founded, but nameless.
    let nameless = Practice { name: String::new(), practitioner: String::new(), role: String::new(), protocol: None };
    let Practice { practitioner, role, .. } = own.unwrap_or_else(|| nameless.clone());
    Practice { practitioner, role, ..last.unwrap_or(nameless) }
}
