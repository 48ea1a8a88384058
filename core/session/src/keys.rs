//! The keys of the practice on this device: who has one may change them, and wrong tries have to wait.

use std::path::{Path, PathBuf};

use secundine_domain::message::Message;
use secundine_domain::time::Stamp;
use secundine_store::{Attempts, ExposeSecret, Passphrase, Store, StoreError};

use crate::api::{ApiError, ErrorCode};

/// The keys of one practice, with the wrong tries at them.
pub(crate) struct Keys {
    folder: PathBuf,
    attempts: Attempts,
}

impl Keys {
    pub(crate) fn new(folder: &Path) -> Self {
        Self { folder: folder.to_owned(), attempts: Attempts::new(folder) }
    }

    /// Tries a passphrase or an identity at what opens with it. A wrong one is counted, a right one ends the count; where it
    /// was not even tried on account of something else, nothing is counted.
    ///
    /// # Errors
    /// [`ErrorCode::Wait`], with the seconds, before anything is tried. After a wrong one, [`ErrorCode::WrongPassphrase`]
    /// with the seconds that the next has to `wait`, if it has to.
    pub(crate) fn attempt<T>(
        &mut self,
        now: &Stamp,
        attempt: impl FnOnce(&Path) -> Result<T, StoreError>,
    ) -> Result<T, ApiError> {
        if !Store::exists(&self.folder) {
            return Err(Store::absent(&self.folder).into());
        }
        if let seconds @ 1.. = self.wait(now) {
            let message = Message::new("error-wait").with("seconds", seconds);
            return Err(ApiError { code: ErrorCode::Wait, message });
        }
        self.attempts.count(now);
        match attempt(&self.folder) {
            Ok(opened) => {
                self.attempts.forget();
                Ok(opened)
            }
            Err(wrong @ StoreError::WrongPassphrase) => {
                let mut error = ApiError::from(wrong);
                if let seconds @ 1.. = self.wait(now) {
                    error.message = error.message.with("wait", seconds);
                }
                Err(error)
            }
            Err(other) => {
                self.attempts.take_back();
                Err(other.into())
            }
        }
    }

    /// Whole seconds until the next try, rounded up.
    fn wait(&mut self, now: &Stamp) -> u32 {
        u32::try_from((self.attempts.wait_ms(now) + 999) / 1000).unwrap_or(u32::MAX)
    }

    pub(crate) fn change_passphrase(&mut self, old: String, new: String, now: &Stamp) -> Result<(), ApiError> {
        self.attempt(now, |folder| Store::change_passphrase(folder, old.into(), new.into()))
    }

    /// The new recovery identity, to be shown once.
    pub(crate) fn renew_recovery(&mut self, passphrase: String, now: &Stamp) -> Result<String, ApiError> {
        let identity: Passphrase = self.attempt(now, |folder| Store::renew_recovery(folder, passphrase.into()))?;
        Ok(identity.expose_secret().to_owned())
    }

    /// Whether this is a key of the practice.
    pub(crate) fn opens(&mut self, passphrase: String, now: &Stamp) -> Result<(), ApiError> {
        self.attempt(now, |folder| Store::opens(folder, passphrase.into()))
    }

    /// Destroys the practice, which is closed.
    pub(crate) fn wipe(&mut self) -> Result<(), ApiError> {
        self.attempts.forget();
        Ok(Store::wipe(&self.folder)?)
    }
}
