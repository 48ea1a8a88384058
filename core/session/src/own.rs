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
