//! A device's key store in memory, which can be made to fail.

#![allow(dead_code, reason = "each test file uses its own part")]

use std::collections::HashMap;
use std::sync::Mutex;

use secundine_store::{Passphrase, PlatformError, PlatformKeys};

#[derive(Default)]
pub struct Vault {
    pub secrets: Mutex<HashMap<String, Passphrase>>,
    pub fails: Mutex<Option<PlatformError>>,
}

impl Vault {
    pub fn fail(&self, how: Option<PlatformError>) {
        *self.fails.lock().unwrap() = how;
    }

    pub fn held(&self) -> usize {
        self.secrets.lock().unwrap().len()
    }

    /// As a phone that was restored from a backup: the secrets are not in it.
    pub fn restored(&self) {
        self.secrets.lock().unwrap().clear();
    }

    fn works(&self) -> Result<(), PlatformError> {
        self.fails.lock().unwrap().clone().map_or(Ok(()), Err)
    }
}

impl PlatformKeys for Vault {
    fn keep(&self, name: &str, secret: &Passphrase) -> Result<(), PlatformError> {
        self.works()?;
        self.secrets.lock().unwrap().insert(name.to_owned(), secret.clone());
        Ok(())
    }

    fn fetch(&self, name: &str) -> Result<Passphrase, PlatformError> {
        self.works()?;
        self.secrets.lock().unwrap().get(name).cloned().ok_or(PlatformError::NotThere)
    }

    fn remove(&self, name: &str) -> Result<(), PlatformError> {
        self.works()?;
        self.secrets.lock().unwrap().remove(name).map(|_| ()).ok_or(PlatformError::NotThere)
    }
}
