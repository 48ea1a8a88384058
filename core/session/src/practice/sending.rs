//! Where this practice sends records, and which births wait to be sent.

use std::collections::BTreeSet;

use secundine_domain::entry::{BirthId, DeviceId, Entry};
use secundine_domain::fact::{Fact, Server, Shared, SharedHow, SharedTo, SharedWhat};
use secundine_domain::time::Stamp;
use secundine_store::{Stored, version};

use super::{Draft, OpenPractice};
use crate::api::ApiError;

/// As the practice's entries tell it.
#[derive(Default)]
pub(super) struct Post {
    server: Option<Server>,
    waiting: BTreeSet<BirthId>,
}

impl Post {
    /// From the entries in order of time. The server is the practice's; what waits is sent by the phone that was asked.
    pub(super) fn read(entries: &[Entry], others: &BTreeSet<DeviceId>) -> Self {
        let mut post = Self::default();
        let here = |entry: &&Entry| !matches!(entry.fact, Fact::SendingWaits { .. }) || !others.contains(&entry.id.device);
        entries.iter().filter(here).for_each(|entry| post.take(&entry.fact));
        post
    }

    fn take(&mut self, fact: &Fact) {
        match fact {
            Fact::ServerSet { server } => self.server.clone_from(server),
            Fact::SendingWaits { birth, waits: true } => drop(self.waiting.insert(*birth)),
            Fact::SendingWaits { birth, waits: false } => drop(self.waiting.remove(birth)),
            _ => (),
        }
    }
}

impl OpenPractice {
    /// Where records are sent.
    pub(crate) fn server(&self) -> Option<&Server> {
        self.post.server.as_ref()
    }

    /// The births that wait to be sent.
    pub(crate) fn waiting(&self) -> &BTreeSet<BirthId> {
        &self.post.waiting
    }

    /// Sets or takes away the server.
    pub(crate) fn set_server(&mut self, server: Option<Server>, now: &Stamp) -> Result<(), ApiError> {
        self.write_post(vec![Draft::now(BirthId::PRACTICE, Fact::ServerSet { server }, now)])
    }

    /// Whether a birth waits from now on; what changes nothing is not written.
    pub(crate) fn let_wait(&mut self, birth: BirthId, waits: bool, now: &Stamp) -> Result<(), ApiError> {
        self.entries(birth)?;
        if self.post.waiting.contains(&birth) == waits {
            return Ok(());
        }
        self.write_post(vec![Draft::now(BirthId::PRACTICE, Fact::SendingWaits { birth, waits }, now)])
    }

    /// A server took this version of a birth: that stands in its chart, and it waits no more. Both are on disk, or neither.
    pub(crate) fn sent(&mut self, birth: BirthId, server: &Server, version: &str, now: &Stamp) -> Result<(), ApiError> {
        self.entries(birth)?;
        let (what, to, how) = (SharedWhat::Fhir, SharedTo::Server, SharedHow::Network);
        let (name, version) = (Some(server.address.clone()), Some(version.to_owned()));
        let shared = Draft::now(birth, Fact::Shared(Shared { what, to, how, name, version }), now);
        self.write_post(vec![shared, Draft::now(BirthId::PRACTICE, Fact::SendingWaits { birth, waits: false }, now)])
    }

    fn write_post(&mut self, drafts: Vec<Draft>) -> Result<(), ApiError> {
        self.write_all(drafts)?.iter().for_each(|entry| self.post.take(&entry.fact));
        Ok(())
    }

    /// The last version of a birth that a server took: when, where, which, and whether nothing was written since it was taken up.
    pub(crate) fn last_sent(&mut self, birth: BirthId) -> Result<Option<Sent>, ApiError> {
        let chart = self.chart(birth)?;
        let Some(last) = chart.shared.iter().rev().find(|shared| shared.what.version.is_some()) else { return Ok(None) };
        let others: Vec<Stored> =
            self.entries(birth)?.iter().filter(|stored| stored.entry.id != last.mark.entry).cloned().collect();
        let Shared { name, version: taken, .. } = last.what.clone();
        let current = taken.as_ref() == Some(&version(&others));
        let (date, clock) = (last.mark.at.date(), last.mark.at.clock());
        Ok(Some(Sent { date, clock, server: name, version: taken.unwrap_or_default(), current }))
    }
}

/// What a server took.
pub(crate) struct Sent {
    pub date: String,
    pub clock: String,
    pub server: Option<String>,
    pub version: String,
    pub current: bool,
}
