//! The ways to the practice's key, seen from the session.

use secundine_domain::time::Stamp;

use super::Session;
use crate::api::{ApiError, QrView, RecoveryView, Response, Slot};

impl Session {
    pub(super) fn unlock_by_device(&mut self, _now: &Stamp) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }

    pub(super) fn keys_view(&mut self) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }

    pub(super) fn add_device_key(&mut self, _passphrase: String, _now: &Stamp) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }

    pub(super) fn revoke_key(&mut self, _slot: Slot, _passphrase: String, _now: &Stamp) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }

    pub(super) fn change_passphrase(&mut self, old: String, new: String, now: &Stamp) -> Result<Response, ApiError> {
        self.really_open()?;
        self.keys.change_passphrase(old, new, now)?;
        Ok(Response::ChangePassphrase)
    }

    pub(super) fn renew_recovery(&mut self, passphrase: String, now: &Stamp) -> Result<Response, ApiError> {
        self.really_open()?;
        let identity = self.keys.renew_recovery(passphrase, now)?;
        Ok(Response::RenewRecovery { recovery: recovery_view(&identity) })
    }

    pub(super) fn check_recovery(&mut self, _recovery: String, _now: &Stamp) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }
}

/// A recovery identity as it is shown.
pub(super) fn recovery_view(identity: &str) -> RecoveryView {
    RecoveryView { identity: identity.to_owned(), words: Vec::new(), code: QrView { side: 0, path: String::new() } }
}
