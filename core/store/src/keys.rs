//! The data key is random; age wraps it once for each way in. Losing one way loses no data.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::{Arc, OnceLock};

use age::secrecy::{ExposeSecret, SecretString};
use age::{DecryptError, scrypt, x25519};
use zeroize::Zeroizing;

use crate::{PlatformError, Slot, Store, StoreError};

/// The age file that the passphrase opens.
pub const PASSPHRASE_KEY: &str = "key.passphrase.age";
/// The age file that the printed recovery identity opens.
pub const RECOVERY_KEY: &str = "key.recovery.age";
/// The age file that the secret in the key store of this device's system opens.
pub const DEVICE_KEY: &str = "key.device.age";
/// Fewest letters of a passphrase. Our own choice.
pub const PASSPHRASE_LETTERS: usize = 8;

/// log2 of the scrypt cost: 64 MiB of memory. Fixed, since the crate's own choice measures the machine and may take 512 MiB.
const SCRYPT_LOG_N: u8 = 16;
/// The dearest key file that is opened: 256 MiB.
const SCRYPT_LOG_N_MAX: u8 = 18;

/// A passphrase, wiped from memory when dropped.
pub type Passphrase = SecretString;

/// Whether a text is meant as a recovery identity rather than a passphrase: in capitals or not, in groups or lines.
#[must_use]
pub fn is_recovery_identity(secret: &Passphrase) -> bool {
    canonical(secret).expose_secret().starts_with("AGE-SECRET-KEY-1")
}

/// The one spelling of a recovery identity: capitals, no spaces. `None` where its checksum, or anything else of its form,
/// does not hold.
#[must_use]
pub fn recovery_identity(typed: &Passphrase) -> Option<Passphrase> {
    parse(typed).ok().map(|identity| identity.to_string())
}

/// As it is typed off a sheet, in groups or lines, made one text.
fn canonical(typed: &SecretString) -> SecretString {
    let mut text = String::with_capacity(typed.expose_secret().len());
    text.extend(typed.expose_secret().chars().filter(|letter| !letter.is_whitespace()));
    text.make_ascii_uppercase();
    text.into()
}

fn parse(typed: &SecretString) -> Result<x25519::Identity, StoreError> {
    canonical(typed).expose_secret().parse().map_err(|_| StoreError::WrongPassphrase)
}

/// The key of the database, wiped when dropped.
#[derive(Clone)]
pub(crate) struct DataKey {
    /// As the 64 hexadecimal digits that SQLCipher takes.
    digits: Zeroizing<String>,
    whole_files: Arc<OnceLock<WholeFiles>>,
}

/// What seals a whole file with the data key and what opens it. To make one of them takes the crate milliseconds: it measures
/// how fast the machine stretches a passphrase. So they are made once, for all copies of the key.
struct WholeFiles {
    recipient: scrypt::Recipient,
    identity: scrypt::Identity,
}

impl DataKey {
    fn of(digits: Zeroizing<String>) -> Self {
        Self { digits, whole_files: Arc::default() }
    }

    /// A new random key.
    pub(crate) fn random() -> Result<Self, StoreError> {
        let mut bytes = Zeroizing::new([0_u8; 32]);
        getrandom::fill(bytes.as_mut_slice()).map_err(|error| StoreError::DamagedKey(error.to_string()))?;
        Ok(Self::of(Zeroizing::new(hex::encode(bytes.as_slice()))))
    }

    /// The statement that opens the database with this key and no further derivation.
    pub(crate) fn pragma(&self) -> Zeroizing<String> {
        Zeroizing::new(format!("PRAGMA key = \"x'{}'\"", self.digits.as_str()))
    }

    /// The key itself.
    pub(crate) fn bytes(&self) -> Zeroizing<[u8; 32]> {
        let mut bytes = Zeroizing::new([0; 32]);
        // It was made or checked as 64 hexadecimal digits.
        let _ = hex::decode_to_slice(self.digits.as_bytes(), bytes.as_mut_slice());
        bytes
    }

    /// Wraps the key in both ways and gives the recovery identity, which is kept nowhere.
    ///
    /// The passphrase's file is the one that founds the practice. The recovery file takes its name only after it: alone, it
    /// would look like a practice whose passphrase file was lost, and nobody has seen its identity yet.
    pub(crate) fn wrap(&self, folder: &Path, passphrase: Passphrase) -> Result<SecretString, StoreError> {
        let (identity, recovery) = self.seal_for_identity()?;
        let by_passphrase = self.seal_for_passphrase(passphrase)?;
        write_unfinished(folder, RECOVERY_KEY, &recovery)
            .and_then(|()| write_unfinished(folder, PASSPHRASE_KEY, &by_passphrase))
            .and_then(|()| finish(folder, PASSPHRASE_KEY))
            .and_then(|()| finish(folder, RECOVERY_KEY))
            .map_err(|error| StoreError::writing_file(&error))?;
        Ok(identity)
    }

    /// The file that this passphrase opens.
    fn seal_for_passphrase(&self, passphrase: Passphrase) -> Result<Vec<u8>, StoreError> {
        let mut recipient = scrypt::Recipient::new(passphrase);
        recipient.set_work_factor(SCRYPT_LOG_N);
        self.seal(&recipient)
    }

    /// A new random identity, and the file that it opens.
    pub(crate) fn seal_for_identity(&self) -> Result<(SecretString, Vec<u8>), StoreError> {
        let identity = x25519::Identity::generate();
        Ok((identity.to_string(), self.seal(&identity.to_public())?))
    }

    fn seal(&self, recipient: &impl age::Recipient) -> Result<Vec<u8>, StoreError> {
        age::encrypt(recipient, self.digits.as_bytes()).map_err(|error| StoreError::NotSaved(error.to_string()))
    }

    /// The key, by the passphrase.
    pub(crate) fn by_passphrase(folder: &Path, passphrase: Passphrase) -> Result<Self, StoreError> {
        Self::read(folder, PASSPHRASE_KEY, &by_passphrase(passphrase))
    }

    /// The key, by the recovery identity as it was printed.
    pub(crate) fn by_identity(folder: &Path, identity: &SecretString) -> Result<Self, StoreError> {
        let identity = parse(identity)?;
        match folder.join(PASSPHRASE_KEY).exists() && !folder.join(RECOVERY_KEY).exists() {
            true => Err(StoreError::NoSlot(Slot::Recovery)),
            false => Self::read(folder, RECOVERY_KEY, &identity),
        }
    }

    /// The key, by the secret that this device's system keeps.
    pub(crate) fn by_device(folder: &Path, secret: &SecretString) -> Result<Self, StoreError> {
        // A secret that does not fit is none: nobody typed it.
        parse(secret).and_then(|identity| Self::read(folder, DEVICE_KEY, &identity)).map_err(|error| match error {
            StoreError::WrongPassphrase => StoreError::Platform(PlatformError::NotThere),
            other => other,
        })
    }

    /// The key, by either.
    pub(crate) fn by_secret(folder: &Path, secret: Passphrase) -> Result<Self, StoreError> {
        match is_recovery_identity(&secret) {
            true => Self::by_identity(folder, &secret),
            false => Self::by_passphrase(folder, secret),
        }
    }

    /// The key, by either, from a key file of this name that lies elsewhere.
    pub(crate) fn unseal(name: &str, sealed: &[u8], secret: Passphrase) -> Result<Self, StoreError> {
        match is_recovery_identity(&secret) {
            true => Self::opened(name, sealed, &parse(&secret)?),
            false => Self::opened(name, sealed, &by_passphrase(secret)),
        }
    }

    /// What a whole file is sealed to with this key.
    pub(crate) fn whole_file_recipient(&self) -> &scrypt::Recipient {
        &self.whole_files().recipient
    }

    /// What opens such a file.
    pub(crate) fn whole_file_identity(&self) -> &scrypt::Identity {
        &self.whole_files().identity
    }

    fn whole_files(&self) -> &WholeFiles {
        self.whole_files.get_or_init(|| {
            let digits = || SecretString::from(self.digits.to_string());
            let mut recipient = scrypt::Recipient::new(digits());
            // The key is random, so nothing is gained by stretching it.
            recipient.set_work_factor(1);
            WholeFiles { recipient, identity: by_passphrase(digits()) }
        })
    }

    fn read(folder: &Path, name: &str, identity: &impl age::Identity) -> Result<Self, StoreError> {
        let sealed = fs::read(folder.join(name)).map_err(|error| StoreError::DamagedKey(format!("{name}: {error}")))?;
        Self::opened(name, &sealed, identity)
    }

    /// The key in the bytes of an age file; `name` tells which file in what is said of a damaged one.
    pub(crate) fn opened(name: &str, sealed: &[u8], identity: &impl age::Identity) -> Result<Self, StoreError> {
        let damaged = |error: &dyn std::fmt::Display| StoreError::DamagedKey(format!("{name}: {error}"));
        let opened = age::decrypt(identity, sealed).map(Zeroizing::new).map_err(|error| match error {
            DecryptError::NoMatchingKeys | DecryptError::KeyDecryptionFailed | DecryptError::DecryptionFailed => {
                StoreError::WrongPassphrase
            }
            // The crate's own text for this one shifts by the number in the file, and overflows on a damaged one.
            DecryptError::ExcessiveWork { required, .. } => damaged(&format!("asks for a work factor of {required}")),
            other => damaged(&other),
        })?;
        let text = std::str::from_utf8(&opened).map_err(|error| damaged(&error))?;
        Self::from_digits(text).map_err(|_| damaged(&"not a key"))
    }

    /// The key that has these 64 digits.
    pub(crate) fn from_digits(digits: &str) -> Result<Self, StoreError> {
        match digits.len() == 64 && digits.bytes().all(|byte| byte.is_ascii_hexdigit()) {
            true => Ok(Self::of(Zeroizing::new(digits.to_owned()))),
            false => Err(StoreError::DamagedKey("not a key".to_owned())),
        }
    }
}

fn by_passphrase(passphrase: Passphrase) -> scrypt::Identity {
    let mut identity = scrypt::Identity::new(passphrase);
    identity.set_max_work_factor(SCRYPT_LOG_N_MAX);
    identity
}

/// Whether a practice can have this passphrase.
pub(crate) fn check_new(passphrase: &Passphrase) -> Result<(), StoreError> {
    if is_recovery_identity(passphrase) {
        // It would be taken for an identity at the door, and never open anything.
        return Err(StoreError::IdentityAsPassphrase);
    }
    match passphrase.expose_secret().chars().count() < PASSPHRASE_LETTERS {
        true => Err(StoreError::ShortPassphrase),
        false => Ok(()),
    }
}

impl Store {
    /// Gives the practice in this folder another passphrase; `secret` is the old one, or the recovery identity as it was
    /// printed. After a crash either the old or the new one opens.
    ///
    /// # Errors
    /// [`StoreError`] says why not: the old passphrase holds.
    pub fn change_passphrase(folder: &Path, secret: Passphrase, new: Passphrase) -> Result<(), StoreError> {
        check_new(&new)?;
        let sealed = Self::key_of(folder, secret)?.seal_for_passphrase(new)?;
        write_named(folder, PASSPHRASE_KEY, &sealed).map_err(|error| StoreError::writing_file(&error))
    }

    /// Gives the practice in this folder another recovery identity, which is kept nowhere; `secret` is the passphrase, or
    /// the recovery identity that holds. The old identity still opens a copy of the old file, were there one.
    ///
    /// # Errors
    /// [`StoreError`] says why not: the old identity holds.
    pub fn renew_recovery(folder: &Path, secret: Passphrase) -> Result<Passphrase, StoreError> {
        let (identity, sealed) = Self::key_of(folder, secret)?.seal_for_identity()?;
        write_named(folder, RECOVERY_KEY, &sealed).map_err(|error| StoreError::writing_file(&error))?;
        Ok(identity)
    }

    /// Whether this passphrase, or recovery identity as it was printed, opens the key of the practice in this folder.
    ///
    /// # Errors
    /// [`StoreError`] says why not.
    pub fn opens(folder: &Path, secret: Passphrase) -> Result<(), StoreError> {
        Self::key_of(folder, secret).map(|_| ())
    }

    pub(crate) fn key_of(folder: &Path, secret: Passphrase) -> Result<DataKey, StoreError> {
        match Self::exists(folder) {
            true => DataKey::by_secret(folder, secret),
            false => Err(Self::absent(folder)),
        }
    }
}

pub(crate) fn unfinished(folder: &Path, name: &str) -> PathBuf {
    folder.join(format!("{name}.unfinished"))
}

/// Puts a file on disk under a passing name.
fn write_unfinished(folder: &Path, name: &str, bytes: &[u8]) -> io::Result<()> {
    let mut file = File::create(unfinished(folder, name))?;
    file.write_all(bytes)?;
    file.sync_all()
}

/// Puts a file on disk: after a crash it is there as it was before, or as it is now.
pub(crate) fn write_named(folder: &Path, name: &str, bytes: &[u8]) -> io::Result<()> {
    write_unfinished(folder, name, bytes)?;
    finish(folder, name)
}

/// Gives a file its name: after a crash it is there whole or not at all.
fn finish(folder: &Path, name: &str) -> io::Result<()> {
    fs::rename(unfinished(folder, name), folder.join(name))?;
    sync_folder(folder)
}

/// Puts the names in a folder on disk.
pub(crate) fn sync_folder(folder: &Path) -> io::Result<()> {
    #[cfg(unix)]
    File::open(folder)?.sync_all()?;
    #[cfg(not(unix))]
    let _ = folder;
    Ok(())
}
