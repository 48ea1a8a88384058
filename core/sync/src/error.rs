//! Why sync could not do what was asked.

use secundine_store::StoreError;
use thiserror::Error;

use crate::BucketError;

/// Why sync could not do what was asked. Nothing that is on the phone is lost by any of these.
#[derive(Debug, Error)]
pub enum SyncError {
    /// The bucket did not do its part.
    #[error("the bucket: {0}")]
    Bucket(#[from] BucketError),
    /// The store on this phone did not.
    #[error("the store: {0}")]
    Store(#[from] StoreError),
    /// This phone shares with nobody.
    #[error("this phone shares with nobody")]
    NotShared,
    /// It shares already.
    #[error("this phone shares already")]
    SharesAlready,
    /// This phone was removed from the practice, or is a new device that has to join.
    #[error("this phone does not belong to the practice")]
    NotMember,
    /// It takes a lead of the practice.
    #[error("only a lead may do this")]
    NotLead,
    /// The code or sheet is none of ours, or belongs to another practice or phone.
    #[error("the code does not fit")]
    WrongCode,
    /// No such device in the practice.
    #[error("no such device")]
    NoDevice,
    /// A practice needs a lead.
    #[error("the last lead stays")]
    LastLead,
    /// No practice lies in this bucket that the sheet opens.
    #[error("no practice that the sheet opens is here")]
    NothingToRecover,
    /// What was signed and sealed is none of our forms; a later version of the program may have written it.
    #[error("it cannot be read")]
    Unreadable,
    /// The practice was locked in the middle.
    #[error("the practice was locked")]
    Closed,
    /// It was paused.
    #[error("paused")]
    Paused,
    /// Never by what a store or a person does.
    #[error("internal: {0}")]
    Internal(String),
}
