//! The data key is random; age wraps it once for each way in. Losing one way loses no data.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::Path;

use age::secrecy::{ExposeSecret, SecretString};
use age::{DecryptError, scrypt, x25519};
use zeroize::Zeroizing;

use crate::StoreError;

/// The age file that the passphrase opens.
pub const PASSPHRASE_KEY: &str = "key.passphrase.age";
/// The age file that the printed recovery identity opens.
pub const RECOVERY_KEY: &str = "key.recovery.age";
/// Fewest letters of a passphrase. Our own choice.
pub const PASSPHRASE_LETTERS: usize = 8;

/// log2 of the scrypt cost: 64 MiB of memory. Fixed, since the crate's own choice measures the machine and may take 512 MiB.
const SCRYPT_LOG_N: u8 = 16;
/// The dearest key file that is opened: 256 MiB.
const SCRYPT_LOG_N_MAX: u8 = 18;

/// A passphrase, wiped from memory when dropped.
pub type Passphrase = SecretString;

/// The key of the database, as the 64 hexadecimal digits that SQLCipher takes; wiped when dropped.
pub(crate) struct DataKey(Zeroizing<String>);

impl DataKey {
    /// A new random key.
    pub(crate) fn random() -> Result<Self, StoreError> {
        let mut bytes = Zeroizing::new([0_u8; 32]);
        getrandom::fill(bytes.as_mut_slice()).map_err(|error| StoreError::DamagedKey(error.to_string()))?;
        Ok(Self(Zeroizing::new(hex::encode(bytes.as_slice()))))
    }

    /// The statement that opens the database with this key and no further derivation.
    pub(crate) fn pragma(&self) -> Zeroizing<String> {
        Zeroizing::new(format!("PRAGMA key = \"x'{}'\"", self.0.as_str()))
    }

    /// Wraps the key in both ways and gives the recovery identity, which is kept nowhere.
    pub(crate) fn wrap(&self, folder: &Path, passphrase: Passphrase) -> Result<SecretString, StoreError> {
        let identity = x25519::Identity::generate();
        self.write(folder, RECOVERY_KEY, &identity.to_public())?;
        let mut recipient = scrypt::Recipient::new(passphrase);
        recipient.set_work_factor(SCRYPT_LOG_N);
        self.write(folder, PASSPHRASE_KEY, &recipient)?;
        Ok(identity.to_string())
    }

    fn write(&self, folder: &Path, name: &str, recipient: &impl age::Recipient) -> Result<(), StoreError> {
        let sealed = age::encrypt(recipient, self.0.as_bytes()).map_err(|error| StoreError::NotSaved(error.to_string()))?;
        write_durably(folder, name, &sealed).map_err(|error| match error.kind() {
            io::ErrorKind::StorageFull => StoreError::Full,
            _ => StoreError::NotSaved(error.to_string()),
        })
    }

    /// The key, by the passphrase.
    pub(crate) fn by_passphrase(folder: &Path, passphrase: Passphrase) -> Result<Self, StoreError> {
        let mut identity = scrypt::Identity::new(passphrase);
        identity.set_max_work_factor(SCRYPT_LOG_N_MAX);
        Self::read(folder, PASSPHRASE_KEY, &identity)
    }

    /// The key, by the recovery identity as it was printed.
    pub(crate) fn by_identity(folder: &Path, identity: &SecretString) -> Result<Self, StoreError> {
        let identity: x25519::Identity = identity.expose_secret().trim().parse().map_err(|_| StoreError::WrongPassphrase)?;
        Self::read(folder, RECOVERY_KEY, &identity)
    }

    fn read(folder: &Path, name: &str, identity: &impl age::Identity) -> Result<Self, StoreError> {
        let damaged = |error: &dyn std::fmt::Display| StoreError::DamagedKey(format!("{name}: {error}"));
        let sealed = fs::read(folder.join(name)).map_err(|error| damaged(&error))?;
        let opened = age::decrypt(identity, &sealed).map(Zeroizing::new).map_err(|error| match error {
            DecryptError::NoMatchingKeys | DecryptError::KeyDecryptionFailed | DecryptError::DecryptionFailed => StoreError::WrongPassphrase,
            other => damaged(&other),
        })?;
        let text = std::str::from_utf8(&opened).map_err(|error| damaged(&error))?;
        if text.len() != 64 || !text.bytes().all(|byte| byte.is_ascii_hexdigit()) {
            return Err(damaged(&"not a key"));
        }
        Ok(Self(Zeroizing::new(text.to_owned())))
    }
}

/// Writes a file so that after a crash it is there whole or not at all.
fn write_durably(folder: &Path, name: &str, bytes: &[u8]) -> io::Result<()> {
    let unfinished = folder.join(format!("{name}.unfinished"));
    let mut file = File::create(&unfinished)?;
    file.write_all(bytes)?;
    file.sync_all()?;
    fs::rename(&unfinished, folder.join(name))?;
    #[cfg(unix)]
    File::open(folder)?.sync_all()?;
    Ok(())
}
