//! A damaged store: read as far as it can be, or built anew.

use secundine_domain::time::Stamp;
use secundine_store::{Passphrase, Store};

use super::Session;
use crate::api::{ApiError, Response, StatusView};
use crate::practice::OpenPractice;
use crate::salvage::view;

impl Session {
    pub(super) fn read_damaged(&mut self, passphrase: String, now: &Stamp) -> Result<Response, ApiError> {
        self.close_with(&passphrase, now)?;
        let (store, report) = self.keys.attempt(now, |folder| Store::read_damaged(folder, Passphrase::from(passphrase)))?;
        self.practice = Some(OpenPractice::open_damaged(store, view(&report, None))?);
        Ok(Response::ReadDamaged(self.status(now)))
    }

    pub(super) fn salvage(&mut self, passphrase: String, now: &Stamp) -> Result<Response, ApiError> {
        self.close_with(&passphrase, now)?;
        let (store, report, set_aside) = self.keys.attempt(now, |folder| Store::salvage(folder, Passphrase::from(passphrase)))?;
        let salvage = Some(view(&report, Some(&set_aside)));
        Ok(Response::Salvage(StatusView { salvage, ..self.admit(store, now)? }))
    }

    /// Damage may have shown only after unlocking: the practice is closed for whoever has a key of it.
    fn close_with(&mut self, passphrase: &str, now: &Stamp) -> Result<(), ApiError> {
        self.not_rehearsing()?;
        if self.practice.is_some() {
            self.keys.opens(passphrase.to_owned(), now)?;
            // What cannot be folded in now is read from the log.
            let _ = self.practice.take().map(OpenPractice::close);
        }
        Ok(())
    }
}
