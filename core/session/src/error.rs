//! Failures as codes and numbers: nothing of a client's data crosses here.

use secundine_domain::fact::Impossible;
use secundine_domain::message::Message;
use secundine_store::{FILE_MAX, PASSPHRASE_LETTERS, PlatformError, Slot, StoreError};

use crate::api::{ApiError, ErrorCode};

impl ApiError {
    pub(crate) fn new(code: ErrorCode, id: &str) -> Self {
        Self { code, message: Message::new(id) }
    }

    pub(crate) fn internal() -> Self {
        Self::new(ErrorCode::Internal, "error-internal")
    }

    pub(crate) fn impossible(message: Message) -> Self {
        Self { code: ErrorCode::Impossible, message }
    }
}

impl From<Impossible> for ApiError {
    fn from(Impossible(message): Impossible) -> Self {
        Self::impossible(message)
    }
}

impl From<StoreError> for ApiError {
    fn from(error: StoreError) -> Self {
        match error {
            StoreError::AlreadyThere => Self::new(ErrorCode::AlreadyThere, "error-already-there"),
            StoreError::NoPractice => Self::new(ErrorCode::NoPractice, "error-no-practice"),
            StoreError::ShortPassphrase => {
                let letters = u32::try_from(PASSPHRASE_LETTERS).unwrap_or(u32::MAX);
                Self::impossible(Message::new("error-short-passphrase").with("letters", letters))
            }
            StoreError::IdentityAsPassphrase => Self::impossible(Message::new("error-identity-as-passphrase")),
            StoreError::WrongPassphrase => Self::new(ErrorCode::WrongPassphrase, "error-wrong-passphrase"),
            StoreError::DamagedKey(_) => Self::new(ErrorCode::DamagedKey, "error-damaged-key"),
            StoreError::NoSlot(Slot::Device) => Self::new(ErrorCode::Device, "error-no-device-key"),
            StoreError::NoSlot(_) => Self::new(ErrorCode::NotFound, "error-no-recovery-key"),
            StoreError::PassphraseStays => Self::impossible(Message::new("error-passphrase-stays")),
            StoreError::Platform(error) => Self::new(ErrorCode::Device, platform_words(&error)),
            StoreError::SecretLeft => Self::new(ErrorCode::Device, "error-device-key-left"),
            StoreError::KeysMissing => Self::new(ErrorCode::DamagedKey, "error-keys-missing"),
            StoreError::NotRead(_) => Self::new(ErrorCode::NotRead, "error-not-read"),
            StoreError::NothingRead => Self::new(ErrorCode::DamagedStore, "error-nothing-read"),
            StoreError::NotDamaged => Self::new(ErrorCode::Impossible, "error-not-damaged"),
            StoreError::ReadOnly => Self::new(ErrorCode::ReadOnly, "error-read-only"),
            StoreError::Damaged(_) => Self::new(ErrorCode::DamagedStore, "error-damaged-store"),
            StoreError::Newer(_) => Self::new(ErrorCode::NewerStore, "error-newer-store"),
            StoreError::NotBackup(_) => Self::new(ErrorCode::Impossible, "error-backup-none"),
            StoreError::DamagedBackup(_) => Self::new(ErrorCode::Impossible, "error-backup-damaged"),
            StoreError::OtherPractice => Self::new(ErrorCode::Impossible, "error-backup-other-practice"),
            StoreError::Misfit(_) => Self::new(ErrorCode::Impossible, "error-misfit"),
            StoreError::NoFile => Self::new(ErrorCode::NotFound, "error-no-file"),
            StoreError::DamagedFile(_) => Self::new(ErrorCode::NotRead, "error-file-damaged"),
            StoreError::TooLarge => {
                let megabytes = u32::try_from(FILE_MAX >> 20).unwrap_or(u32::MAX);
                Self::impossible(Message::new("error-file-large").with("megabytes", megabytes))
            }
            StoreError::WipeUnfinished(_) => Self::new(ErrorCode::NotSaved, "error-wipe-unfinished"),
            StoreError::Closed => Self::new(ErrorCode::Locked, "error-locked"),
            StoreError::InUse => Self::new(ErrorCode::InUse, "error-in-use"),
            StoreError::Full => Self::new(ErrorCode::NotSaved, "error-full"),
            StoreError::NotSaved(_) => Self::new(ErrorCode::NotSaved, "error-not-saved"),
        }
    }
}

/// What the system itself says is not passed on.
fn platform_words(error: &PlatformError) -> &'static str {
    match error {
        PlatformError::NotThere => "error-device-key-lost",
        PlatformError::Refused => "error-device-refused",
        PlatformError::Failed(_) => "error-device-failed",
    }
}
