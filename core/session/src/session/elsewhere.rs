//! What could not be saved is kept in another file.

use secundine_domain::entry::{Amendment, BirthId, EntryId};
use secundine_domain::fact::Fact;
use secundine_domain::message::Message;
use secundine_domain::time::{Occurred, Stamp};

use super::{Session, recordable};
use crate::api::{ApiError, Request, Response};
use crate::locked::Writer;
use crate::practice::{Change, Draft};

/// What was kept elsewhere since the last unlocking.
#[derive(Default)]
pub(super) struct Kept {
    /// Where it is written to; goes over to the marks that are made after the lock.
    pub writer: Option<Writer>,
    /// How many entries.
    pub entries: u32,
}

impl Session {
    /// Keeps what a request would have written, checked as the request itself is. Its `ago_ms` counts from the touch to now.
    pub(super) fn elsewhere(&mut self, request: Request, now: &Stamp) -> Result<Response, ApiError> {
        self.really_open()?;
        let draft = match request {
            Request::BabyBornNow { ago_ms } => {
                let occurred = Occurred::Marked(self.touched(ago_ms, now));
                Draft { occurred, ..Draft::now(BirthId::PRACTICE, Fact::BabyBorn { baby: 1 }, now) }
            }
            other => self.draft(other, now)?,
        };
        self.keep(draft)?;
        Ok(Response::Elsewhere(self.status(now)))
    }

    /// Puts a draft of the practice that is open on disk, in another file than its database.
    pub(super) fn keep(&mut self, draft: Draft) -> Result<(), ApiError> {
        let writer = self.writer();
        let writer = self.kept.writer.insert(writer);
        let open = self.practice.as_ref().ok_or_else(ApiError::internal)?;
        open.keep_elsewhere(writer, draft)?;
        self.kept.entries = self.kept.entries.saturating_add(1);
        Ok(())
    }

    /// Writes what a request asks for.
    pub(super) fn write(&mut self, request: Request, now: &Stamp) -> Result<EntryId, ApiError> {
        let draft = self.draft(request, now)?;
        self.open()?.write(draft)
    }

    /// What a request would write about a birth that is here: a fact, an amendment or a retraction.
    fn draft(&mut self, request: Request, now: &Stamp) -> Result<Draft, ApiError> {
        match request {
            Request::Record { birth, fact, at } => {
                recordable(&fact)?;
                let occurred = self.occurred(&at, now)?;
                let open = self.open()?;
                open.entries(birth)?;
                let fact = open.own().completed(fact)?;
                Ok(Draft { occurred, ..Draft::now(birth, fact, now) })
            }
            Request::Amend { birth, entry, fact, at, reason } => {
                let occurred = at.map(|at| self.occurred(&at, now)).transpose()?;
                fact.as_ref().map_or(Ok(()), recordable)?;
                self.open()?.amendment(
                    birth,
                    Amendment { entry, reason },
                    Change::Put { fact: fact.map(Box::new), occurred },
                    now,
                )
            }
            Request::Retract { birth, entry, reason } => {
                self.open()?.amendment(birth, Amendment { entry, reason }, Change::Retract, now)
            }
            _ => Err(ApiError::impossible(Message::new("error-not-elsewhere"))),
        }
    }
}
