//! The keys of the practice on this device: who has one may change them, and wrong tries have to wait.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use secundine_domain::message::Message;
use secundine_domain::time::Stamp;
use secundine_store::{Attempts, ExposeSecret, Passphrase, PlatformKeys, Slot, Store, StoreError};

use crate::api::{ApiError, ErrorCode, KeysView};

/// The keys of one practice, with the wrong tries at them.
pub(crate) struct Keys {
    folder: PathBuf,
    attempts: Attempts,
    platform: Option<Arc<dyn PlatformKeys>>,
}

impl Keys {
    /// What a kill broke off is finished; what cannot be finished now is tried again by the next run.
    pub(crate) fn new(folder: &Path, platform: Option<Arc<dyn PlatformKeys>>) -> Self {
        // Until then the door says that the keys are damaged.
        let _ = Store::finish_wipe(folder, platform.as_deref());
        let _ = Store::finish_revoking(folder, platform.as_deref());
        Self { folder: folder.to_owned(), attempts: Attempts::new(folder), platform }
    }

    /// From now on the system keeps keys here.
    pub(crate) fn kept_by(&mut self, platform: Arc<dyn PlatformKeys>) {
        let _ = Store::finish_wipe(&self.folder, Some(platform.as_ref()));
        let _ = Store::finish_revoking(&self.folder, Some(platform.as_ref()));
        self.platform = Some(platform);
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
        Ok(Store::wipe(&self.folder, self.platform.as_deref())?)
    }

    pub(crate) fn view(&self) -> KeysView {
        let held = Store::slots(&self.folder).into_iter().filter(|slot| *slot != Slot::Device || self.platform.is_some());
        KeysView { slots: held.map(Into::into).collect(), device_offered: self.platform.is_some() }
    }

    /// Whether the device may be asked to open the practice.
    pub(crate) fn by_device(&self) -> bool {
        self.platform.is_some() && Store::slots(&self.folder).contains(&Slot::Device)
    }

    /// Has the device open something. Wrong tries at the passphrase are no reason to wait: the system has its own.
    pub(crate) fn with_device<T>(
        &self,
        open: impl FnOnce(&Path, &dyn PlatformKeys) -> Result<T, StoreError>,
    ) -> Result<T, ApiError> {
        Ok(open(&self.folder, self.platform()?.as_ref())?)
    }

    pub(crate) fn add_device(&mut self, passphrase: String, now: &Stamp) -> Result<(), ApiError> {
        let platform = self.platform()?;
        self.attempt(now, |folder| Store::add_device(folder, passphrase.into(), platform.as_ref()))
    }

    pub(crate) fn revoke(&mut self, slot: Slot, passphrase: String, now: &Stamp) -> Result<(), ApiError> {
        let platform = self.platform.clone();
        self.attempt(now, |folder| Store::revoke(folder, slot, passphrase.into(), platform.as_deref()))
    }

    fn platform(&self) -> Result<Arc<dyn PlatformKeys>, ApiError> {
        self.platform.clone().ok_or_else(|| ApiError::new(ErrorCode::Device, "error-no-device-store"))
    }
}
