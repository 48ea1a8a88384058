//! What a practice needs of the key store of a device's system, such as Android's Keystore or Apple's keychain.

use thiserror::Error;

use crate::Passphrase;

/// The key store of a device's system: keeps short secrets under names, and gives them to the person who proves to the
/// system that the device is hers.
///
/// A secret must stay on this device: in no backup of the system, and on no other device of the same person.
pub trait PlatformKeys: Send + Sync {
    /// Keeps a secret of at most 100 bytes of ASCII under a name of at most 64, in place of one that was there.
    ///
    /// # Errors
    /// [`PlatformError`] says why not; nothing is kept.
    fn keep(&self, name: &str, secret: &Passphrase) -> Result<(), PlatformError>;

    /// Gives the secret; may ask for a finger, a face or the device's code, and waits for it.
    ///
    /// # Errors
    /// [`PlatformError`] says why not.
    fn fetch(&self, name: &str) -> Result<Passphrase, PlatformError>;

    /// Lets go of the secret for ever, asking nobody.
    ///
    /// # Errors
    /// [`PlatformError::NotThere`] where there was none; [`PlatformError::Failed`]: it may still be there.
    fn remove(&self, name: &str) -> Result<(), PlatformError>;
}

/// Why the key store of a device's system did not do what was asked.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum PlatformError {
    /// It holds no such secret, as after a restore of the device, or it has made the secret unusable.
    #[error("holds no such secret")]
    NotThere,
    /// The person refused, or could not prove that it is she.
    #[error("was refused by the person")]
    Refused,
    /// It cannot be used at the moment, in words of the system.
    #[error("failed: {0}")]
    Failed(String),
}
