//! A device's key store, played by a folder: it outlives a kill, and can be made to fail.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Mutex;

use secundine_store::{ExposeSecret, Passphrase, PlatformError, PlatformKeys};

/// Its folder inside a practice's, where nothing of it is the practice's own.
pub const VAULT: &str = "vault";

pub struct Vault {
    folder: PathBuf,
    fails: Mutex<Option<PlatformError>>,
}

impl Vault {
    pub fn at(practice: &Path) -> Self {
        let folder = practice.join(VAULT);
        fs::create_dir_all(&folder).unwrap();
        Self { folder, fails: Mutex::new(None) }
    }

    /// From now on every call fails so, or none.
    pub fn fail(&self, how: Option<PlatformError>) {
        *self.fails.lock().unwrap() = how;
    }

    /// The names of the secrets that it holds.
    pub fn names(&self) -> Vec<String> {
        let names = fs::read_dir(&self.folder).unwrap().map(|file| file.unwrap().file_name().into_string().unwrap());
        names.filter_map(|name| name.strip_suffix(".secret").map(str::to_owned)).collect()
    }

    /// As a phone that was restored from a backup: the secrets are not in it.
    pub fn restored(&self) {
        for name in self.names() {
            fs::remove_file(self.secret(&name)).unwrap();
        }
    }

    fn secret(&self, name: &str) -> PathBuf {
        assert!(name.len() <= 64, "{name}");
        self.folder.join(format!("{name}.secret"))
    }

    fn works(&self) -> Result<(), PlatformError> {
        self.fails.lock().unwrap().clone().map_or(Ok(()), Err)
    }
}

impl PlatformKeys for Vault {
    fn keep(&self, name: &str, secret: &Passphrase) -> Result<(), PlatformError> {
        self.works()?;
        assert!(secret.expose_secret().is_ascii() && secret.expose_secret().len() <= 100);
        fs::write(self.secret(name), secret.expose_secret()).map_err(|error| PlatformError::Failed(error.to_string()))
    }

    fn fetch(&self, name: &str) -> Result<Passphrase, PlatformError> {
        self.works()?;
        fs::read_to_string(self.secret(name)).map(Passphrase::from).map_err(|_| PlatformError::NotThere)
    }

    fn remove(&self, name: &str) -> Result<(), PlatformError> {
        self.works()?;
        fs::remove_file(self.secret(name)).map_err(|_| PlatformError::NotThere)
    }
}
