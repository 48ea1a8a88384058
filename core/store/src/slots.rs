//! The ways to a practice's key: which there are, one more by the key store of this device's system, and one taken out.
//!
//! That key store does not hold the data key but the identity of one more age file. The name under which it is kept is
//! random and lies in plain beside the file, so that no two practices of a device share one, and so that the secret can be
//! found and removed when the file itself is destroyed already.

use std::fs;
use std::io;
use std::path::Path;

use crate::keys::{DEVICE_KEY, DataKey, PASSPHRASE_KEY, Passphrase, RECOVERY_KEY, sync_folder, unfinished, write_named};
use crate::wipe::write_over;
use crate::{PlatformError, PlatformKeys, Store, StoreError};

/// The file that tells under which name the device's system keeps the secret.
pub const DEVICE_NAME: &str = "key.device.name";

/// A way to the key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slot {
    /// The passphrase; never the one that is taken out.
    Passphrase,
    /// The printed recovery identity.
    Recovery,
    /// The key store of this device's system.
    Device,
}

impl Slot {
    fn file(self) -> &'static str {
        match self {
            Self::Passphrase => PASSPHRASE_KEY,
            Self::Recovery => RECOVERY_KEY,
            Self::Device => DEVICE_KEY,
        }
    }
}

impl Store {
    /// The ways to the key that have their file in this folder. Whether the device's system still holds the secret is known
    /// only by asking it, which may ask the person.
    #[must_use]
    pub fn slots(folder: &Path) -> Vec<Slot> {
        let all = [Slot::Passphrase, Slot::Recovery, Slot::Device];
        all.into_iter().filter(|slot| folder.join(slot.file()).exists()).collect()
    }

    /// Makes the key store of this device's system a way to the key, in place of an earlier one; `secret` is the passphrase,
    /// or the recovery identity as it was printed. Killed in between, there is none.
    ///
    /// # Errors
    /// [`StoreError`] says why not; the other ways stay as they were.
    pub fn add_device(folder: &Path, secret: Passphrase, platform: &dyn PlatformKeys) -> Result<(), StoreError> {
        let (identity, sealed) = Self::key_of(folder, secret)?.seal_for_identity()?;
        take_out(folder, Slot::Device, Some(platform))?;
        let writing = |error: io::Error| StoreError::writing_file(&error);
        let name = new_name().map_err(writing)?;
        // The name first: a secret that nobody could find would stay for ever.
        write_named(folder, DEVICE_NAME, name.as_bytes()).map_err(writing)?;
        let added = platform.keep(&name, &identity).map_err(StoreError::from);
        let added = added.and_then(|()| write_named(folder, DEVICE_KEY, &sealed).map_err(writing));
        if added.is_err() {
            let _ = forget_secret(folder, Some(platform));
        }
        added
    }

    /// Opens the practice with the secret that this device's system keeps.
    ///
    /// # Errors
    /// [`StoreError`] says why not, [`StoreError::Platform`] where the passphrase is to be asked for; nothing is changed.
    pub fn open_with_device(folder: &Path, platform: &dyn PlatformKeys) -> Result<Self, StoreError> {
        Self::with_key(folder, by_device(folder, platform)?)
    }

    /// Whether the secret that this device's system keeps opens the key of the practice in this folder.
    ///
    /// # Errors
    /// [`StoreError`] says why not.
    pub fn opens_with_device(folder: &Path, platform: &dyn PlatformKeys) -> Result<(), StoreError> {
        by_device(folder, platform).map(|_| ())
    }

    /// Takes a way to the key out; its wrap is destroyed as by a wipe. A copy of the device's wrap no longer opens, since
    /// the secret is gone; a copy of the recovery file opens with its sheet as before. After a crash either it is as it was,
    /// or [`Store::finish_revoking`] goes on with it.
    ///
    /// # Errors
    /// [`StoreError::PassphraseStays`], or why the passphrase does not open: nothing is changed. [`StoreError::SecretLeft`]:
    /// the wrap is destroyed, and [`Store::finish_revoking`] tries once more to remove the secret.
    pub fn revoke(
        folder: &Path,
        slot: Slot,
        passphrase: Passphrase,
        platform: Option<&dyn PlatformKeys>,
    ) -> Result<(), StoreError> {
        if slot == Slot::Passphrase {
            return Err(StoreError::PassphraseStays);
        }
        if !Self::exists(folder) {
            return Err(StoreError::NoPractice);
        }
        // By the passphrase and nothing else: what stays must be known to open.
        DataKey::by_passphrase(folder, passphrase)?;
        match Self::slots(folder).contains(&slot) {
            true => take_out(folder, slot, platform),
            false => Err(StoreError::NoSlot(slot)),
        }
    }

    /// Finishes what a kill broke off while a way to the key was taken out, or was added for this device; does nothing
    /// where nothing was.
    ///
    /// # Errors
    /// [`StoreError`] says what is left to be done.
    pub fn finish_revoking(folder: &Path, platform: Option<&dyn PlatformKeys>) -> Result<(), StoreError> {
        for slot in [Slot::Recovery, Slot::Device] {
            destroy(folder, slot)?;
        }
        match folder.join(DEVICE_KEY).exists() {
            true => Ok(()),
            false => forget_secret(folder, platform),
        }
    }
}

fn by_device(folder: &Path, platform: &dyn PlatformKeys) -> Result<DataKey, StoreError> {
    if !Store::exists(folder) {
        return Err(StoreError::NoPractice);
    }
    if !folder.join(DEVICE_KEY).exists() {
        return Err(StoreError::NoSlot(Slot::Device));
    }
    let name = name(folder).ok_or(PlatformError::NotThere)?;
    DataKey::by_device(folder, &platform.fetch(&name)?)
}

/// The wrap loses its name in one step, which decides; what follows can be done again.
fn take_out(folder: &Path, slot: Slot, platform: Option<&dyn PlatformKeys>) -> Result<(), StoreError> {
    destroy(folder, slot)?;
    let wrap = folder.join(slot.file());
    if wrap.exists() {
        let renamed = fs::rename(wrap, unfinished(folder, slot.file())).and_then(|()| sync_folder(folder));
        renamed.map_err(|error| StoreError::writing_file(&error))?;
        destroy(folder, slot)?;
    }
    match slot {
        Slot::Device => forget_secret(folder, platform),
        _ => Ok(()),
    }
}

/// Destroys a wrap that has lost its name, or has not got it yet.
fn destroy(folder: &Path, slot: Slot) -> Result<(), StoreError> {
    let path = unfinished(folder, slot.file());
    if !path.exists() {
        return Ok(());
    }
    let gone = write_over(&path).and_then(|()| fs::remove_file(&path)).and_then(|()| sync_folder(folder));
    gone.map_err(|error| StoreError::writing_file(&error))
}

/// Has the device's system let go of the secret whose name lies here, then removes the name.
pub(crate) fn forget_secret(folder: &Path, platform: Option<&dyn PlatformKeys>) -> Result<(), StoreError> {
    let path = folder.join(DEVICE_NAME);
    if !path.exists() {
        return Ok(());
    }
    if let Some(name) = name(folder) {
        match platform.map(|platform| platform.remove(&name)) {
            Some(Ok(()) | Err(PlatformError::NotThere)) => (),
            _ => return Err(StoreError::SecretLeft),
        }
    }
    fs::remove_file(path).and_then(|()| sync_folder(folder)).map_err(|error| StoreError::writing_file(&error))
}

fn new_name() -> io::Result<String> {
    let mut bytes = [0_u8; 16];
    getrandom::fill(&mut bytes).map_err(|error| io::Error::other(error.to_string()))?;
    Ok(format!("secundine-{}", hex::encode(bytes)))
}

/// The name as it was written; none where the file holds something else.
fn name(folder: &Path) -> Option<String> {
    let name = fs::read_to_string(folder.join(DEVICE_NAME)).ok()?;
    let random = name.strip_prefix("secundine-")?;
    (random.len() == 32 && random.bytes().all(|byte| byte.is_ascii_hexdigit())).then_some(name)
}
