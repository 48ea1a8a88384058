//! The ways to the practice's key, seen from the session.

use secundine_domain::message::Message;
use secundine_domain::time::Stamp;
use secundine_store::{ExposeSecret, Passphrase, Store, recovery_identity};

use super::Session;
use crate::api::{ApiError, ErrorCode, Response, Slot};
use crate::recovery;

impl Session {
    /// Opens the practice; where it is open and its names are hidden, shows them.
    pub(super) fn unlock_by_device(&mut self, now: &Stamp) -> Result<Response, ApiError> {
        self.not_rehearsing()?;
        let status = match (&self.practice, self.hidden.is_some()) {
            (None, _) => {
                let store = self.keys.with_device(Store::open_with_device)?;
                self.admit(store, now)?
            }
            (Some(_), true) => {
                self.keys.with_device(Store::opens_with_device)?;
                self.hidden = None;
                self.status(now)
            }
            (Some(_), false) => self.status(now),
        };
        Ok(Response::UnlockByDevice(status))
    }

    pub(super) fn keys_view(&mut self) -> Result<Response, ApiError> {
        self.really_open()?;
        Ok(Response::Keys(self.keys.view()))
    }

    pub(super) fn add_device_key(&mut self, passphrase: String, now: &Stamp) -> Result<Response, ApiError> {
        self.really_open()?;
        self.keys.add_device(passphrase, now)?;
        Ok(Response::AddDeviceKey(self.keys.view()))
    }

    pub(super) fn revoke_key(&mut self, slot: Slot, passphrase: String, now: &Stamp) -> Result<Response, ApiError> {
        self.really_open()?;
        self.keys.revoke(slot.into(), passphrase, now)?;
        Ok(Response::RevokeKey(self.keys.view()))
    }

    pub(super) fn change_passphrase(&mut self, old: String, new: String, now: &Stamp) -> Result<Response, ApiError> {
        self.really_open()?;
        self.keys.change_passphrase(old, new, now)?;
        Ok(Response::ChangePassphrase)
    }

    pub(super) fn renew_recovery(&mut self, passphrase: String, now: &Stamp) -> Result<Response, ApiError> {
        self.really_open()?;
        let identity = self.keys.renew_recovery(passphrase, now)?;
        Ok(Response::RenewRecovery { recovery: recovery::view(&identity) })
    }

    /// Also while locked, and where there is no practice: the words tell which sheet it is. Only a key that could open one
    /// is tried, and waits.
    pub(super) fn check_recovery(&mut self, recovery: String, now: &Stamp) -> Result<Response, ApiError> {
        self.not_rehearsing()?;
        let identity = recovery_identity(&Passphrase::from(recovery));
        let identity = identity.ok_or_else(|| ApiError::impossible(Message::new("error-recovery-slip")))?;
        let words = recovery::words(identity.expose_secret());
        let opens = match self.keys.opens(identity.expose_secret().to_owned(), now) {
            Ok(()) => true,
            Err(ApiError { code: ErrorCode::WrongPassphrase | ErrorCode::NotFound | ErrorCode::NoPractice, .. }) => false,
            Err(other) => return Err(other),
        };
        Ok(Response::CheckRecovery { words, opens })
    }
}
