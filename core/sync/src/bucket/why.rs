//! What an object store says went wrong, in the words of a bucket.

use std::error::Error;
use std::io;

use super::BucketError;

/// Status of what a folder does not allow, as the others have it.
const FORBIDDEN: u16 = 403;

/// The first of its kind among an error and its causes.
pub(super) fn found<'a, E: Error + 'static>(error: &'a (dyn Error + 'static)) -> Option<&'a E> {
    let mut at = Some(error);
    while let Some(one) = at {
        if let Some(sought) = one.downcast_ref() {
            return Some(sought);
        }
        at = one.source();
    }
    None
}

/// What it comes to.
pub(super) fn why(error: &object_store::Error) -> BucketError {
    if let Some(known) = found::<BucketError>(error) {
        return known.clone();
    }
    match error {
        object_store::Error::NotFound { .. } => BucketError::Absent,
        object_store::Error::PermissionDenied { .. } => BucketError::Refused(FORBIDDEN),
        object_store::Error::AlreadyExists { .. } => BucketError::Refused(409),
        object_store::Error::Precondition { .. } => BucketError::Refused(412),
        other => match found::<io::Error>(other) {
            Some(cause) => of_disk(cause),
            None => BucketError::Broken(short(&other.to_string())),
        },
    }
}

fn of_disk(error: &io::Error) -> BucketError {
    match error.kind() {
        io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => BucketError::Refused(FORBIDDEN),
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded | io::ErrorKind::FileTooLarge => BucketError::Full,
        io::ErrorKind::TimedOut => BucketError::Slow,
        io::ErrorKind::HostUnreachable | io::ErrorKind::NetworkUnreachable | io::ErrorKind::NetworkDown => {
            BucketError::NoConnection
        }
        io::ErrorKind::NotFound | io::ErrorKind::NotADirectory | io::ErrorKind::StaleNetworkFileHandle => BucketError::NoBucket,
        _ => BucketError::Broken(short(&error.to_string())),
    }
}

/// No page of a server goes into a sentence for people.
fn short(text: &str) -> String {
    text.lines().next().unwrap_or_default().chars().take(200).collect()
}
