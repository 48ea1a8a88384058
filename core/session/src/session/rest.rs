//! What is shown when nobody has touched for a while.

use secundine_domain::time::Stamp;

use super::Session;
use super::files::Passing;
use super::hidden::AtWork;
use crate::api::{ApiError, Response};

impl Session {
    /// Locks; where a third stage runs or a backup is being made, which the lock would interrupt, hides the names instead.
    pub(super) fn rest(&mut self, now: &Stamp) -> Result<Response, ApiError> {
        if self.rehearsal.is_some() || self.practice.is_none() {
            return Ok(Response::Rest(self.status(now)));
        }
        let running = self.running_births(now)?;
        if running.is_empty() && !self.copying.is_going() {
            return Ok(Response::Rest(self.lock(now)?));
        }
        self.hidden = Some(AtWork(running));
        self.passing = Passing::default();
        Ok(Response::Rest(self.status(now)))
    }

    pub(super) fn show_names(&mut self, passphrase: String, now: &Stamp) -> Result<Response, ApiError> {
        self.really_open()?;
        self.unhide(passphrase, now)?;
        Ok(Response::ShowNames(self.status(now)))
    }

    /// Shows the names to who has a key; where they are shown already, nothing is asked.
    pub(super) fn unhide(&mut self, passphrase: String, now: &Stamp) -> Result<(), ApiError> {
        if self.hidden.is_some() {
            self.keys.opens(passphrase, now)?;
            self.hidden = None;
        }
        Ok(())
    }
}
