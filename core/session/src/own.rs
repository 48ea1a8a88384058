//! The practice's own protocol, read from the changes that were made to it.

use secundine_domain::entry::Entry;
use secundine_domain::fact::Fact;
use secundine_domain::protocol::{OWN, OwnProtocol, Protocol};

use crate::api::{ApiError, ErrorCode};

/// The own protocol as it stands, and as it holds.
#[derive(Clone, Default)]
pub(crate) struct Own {
    /// As it stands, finished or not.
    pub protocol: OwnProtocol,
    /// As it was when it was last finished: this is what a birth begins with.
    pub held: Option<Held>,
}

/// A finished own protocol.
#[derive(Clone)]
pub(crate) struct Held {
    pub protocol: Protocol,
    /// Local date and time from which it holds.
    pub since: String,
}

impl Own {
    /// What the entries of the practice, in order of time, come to.
    pub(crate) fn read<'a>(entries: impl IntoIterator<Item = &'a Entry>) -> Self {
        entries.into_iter().fold(Self::default(), Self::after)
    }

    /// The same after one more entry. What a later version of the program asks for beyond what was decided does not take
    /// from a practice what it had finished.
    pub(crate) fn after(mut self, entry: &Entry) -> Self {
        let Fact::OwnProtocolChanged { change, finished } = &entry.fact else { return self };
        self.protocol = self.protocol.changed(change);
        let whole = self.protocol.finish().ok().or_else(|| finished.as_deref().cloned());
        let held = self.held.as_ref().map(|held| &held.protocol);
        if let Some(protocol) = whole.filter(|whole| held != Some(whole)) {
            self.held = Some(Held { protocol, since: entry.recorded.date_and_clock() });
        }
        self
    }

    /// That a protocol is chosen for a birth: the practice's own goes with it as it holds now.
    ///
    /// # Errors
    /// There is no such protocol, or the own one was never finished.
    pub(crate) fn chosen(&self, protocol: String) -> Result<Fact, ApiError> {
        let own = match (protocol.as_str(), &self.held) {
            (OWN, Some(held)) => Some(Box::new(held.protocol.clone())),
            (OWN, None) => return Err(ApiError::new(ErrorCode::NotFound, "error-own-open")),
            (id, _) if Protocol::find(id).is_none() => return Err(ApiError::new(ErrorCode::NotFound, "error-no-protocol")),
            _ => None,
        };
        Ok(Fact::ProtocolChosen { protocol, own })
    }

    /// A fact as it is written down: the protocol that a choice names goes with it, whatever came along from outside.
    pub(crate) fn completed(&self, fact: Fact) -> Result<Fact, ApiError> {
        match fact {
            Fact::ProtocolChosen { protocol, .. } => self.chosen(protocol),
            other => Ok(other),
        }
    }
}

#[cfg(test)]
mod tests {
    use secundine_domain::entry::{BirthId, DeviceId, EntryId};
    use secundine_domain::protocol::{OwnChange, State};
    use secundine_domain::time::{Occurred, Stamp};

    use super::*;

    fn changed(n: u64, change: OwnChange, finished: Option<&Protocol>) -> Entry {
        let recorded = Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot: None };
        let fact = Fact::OwnProtocolChanged { change, finished: finished.cloned().map(Box::new) };
        let (id, occurred) = (EntryId { device: DeviceId([1; 16]), n }, Occurred::Marked(recorded.clone()));
        Entry { id, birth: BirthId::PRACTICE, author: "Ida".to_owned(), occurred, recorded, fact, amends: None }
    }

    #[test]
    fn a_field_that_a_later_version_asks_for_takes_nothing_from_what_was_finished() {
        let whole = OwnProtocol::of(Protocol::find("who").unwrap()).changed(&OwnProtocol::default().filled());
        let mut finished = whole.finish().unwrap();
        // As an earlier version wrote it, which did not watch saturation.
        let slot = "saturation.limit.under.1".parse().unwrap();
        let mut change = OwnProtocol::default().difference(&whole);
        change.fields.remove(&slot);
        finished.watch.retain(|thresholds| thresholds.watch.name().id != "watch-saturation");
        let own = Own::read(&[changed(1, change.clone(), Some(&finished))]);
        assert_eq!(own.protocol.finish().unwrap_err().open, [slot.to_string()]);
        assert_eq!(own.held.as_ref().unwrap().protocol, finished);
        let title = OwnChange { title: Some("Ours".to_owned()), ..OwnChange::default() };
        let own = own.after(&changed(2, title, None));
        assert_eq!(own.held.as_ref().unwrap().protocol, finished, "what is not finished holds nothing");
        let decided = OwnChange { fields: [(slot, Some(State::Off))].into(), ..OwnChange::default() };
        let own = own.after(&changed(3, decided, None));
        assert_eq!((own.held.unwrap().protocol.title, own.protocol.fields.len()), ("Ours".to_owned(), whole.fields.len()));
    }

    #[test]
    fn two_phones_that_decide_different_fields_at_once_keep_both() {
        let whole = OwnProtocol::of(Protocol::find("who").unwrap()).changed(&OwnProtocol::default().filled());
        let finished = whole.finish().unwrap();
        let first = changed(1, OwnProtocol::default().difference(&whole), Some(&finished));
        let off = |slot: &str| OwnChange { fields: [(slot.parse().unwrap(), Some(State::Off))].into(), ..OwnChange::default() };
        let here = off("saturation.limit.under.1");
        let there = off("pulse.limit.under.1");
        let [of_here, of_there] = [&here, &there].map(|change| whole.clone().changed(change).finish().unwrap());
        let own = Own::read(&[first, changed(2, here, Some(&of_here)), changed(3, there, Some(&of_there))]);
        assert_eq!(own.held.unwrap().protocol.off.len(), 2);
    }
}
