//! What a backup brought, in words; and what kept it from being made or restored.

use secundine_domain::message::Message;
use secundine_store::{Backed, Misfit, MisfitKind, Restored, StoreError};

use crate::api::{ApiError, ErrorCode};
use crate::verify::{self, number};

/// Most sentences about single entries; the rest are counted. Our own choice.
const SENTENCES: usize = 50;

/// That a backup was made.
#[must_use]
pub fn made(backed: &Backed) -> Message {
    let made = Message::new("backup-made").with("entries", number(backed.entries)).with("births", number(backed.births));
    match (number(backed.files), number(backed.damaged_files)) {
        (0, 0) => made,
        (files, 0) => Message::new("backup-made-files").with("made", made).with("files", files),
        (files, damaged) => Message::new("backup-made-damaged").with("made", made).with("files", files).with("damaged", damaged),
    }
}

/// How much a backup brought.
#[must_use]
pub fn brought(restored: &Restored) -> Message {
    Message::new("restored-brought").with("added", number(restored.added)).with("known", number(restored.known))
}

/// How much was not taken in.
#[must_use]
pub fn left_out(restored: &Restored) -> u32 {
    let Restored { refused, erased, damaged_files, damaged_keys, .. } = restored;
    number((refused.len() + damaged_keys.len()) as u64 + erased + damaged_files)
}

/// What was not taken in, in words.
#[must_use]
pub fn told(restored: &Restored) -> Vec<Message> {
    let keys = restored.damaged_keys.iter().map(|name| Message::new("restored-key-damaged").with("file", *name));
    let entries = restored.refused.iter().take(SENTENCES).map(refused);
    let further = restored.refused.len().saturating_sub(SENTENCES);
    let rest = (further > 0).then(|| Message::new("restored-further").with("count", number(further as u64)));
    let erased = (restored.erased > 0).then(|| Message::new("restored-erased").with("count", number(restored.erased)));
    let damaged = number(restored.damaged_files);
    let files = (damaged > 0).then(|| Message::new("restored-files-damaged").with("count", damaged));
    keys.chain(entries).chain(rest).chain(erased).chain(files).collect()
}

fn refused(misfit: &Misfit) -> Message {
    match misfit {
        Misfit::Entry { device, n, kind: MisfitKind::Rewritten, .. } => {
            Message::new("restored-other-history").with("n", number(*n)).with("device", verify::short(*device))
        }
        Misfit::Entry { kind: MisfitKind::Missing, .. } => verify::misfit(misfit),
        other => Message::new("restored-refused").with("why", verify::misfit(other)),
    }
}

/// Why a backup was not made.
#[must_use]
pub fn making(error: StoreError) -> ApiError {
    match error {
        StoreError::Full | StoreError::NotSaved(_) => not_made(),
        StoreError::Damaged(_) => ApiError::new(ErrorCode::DamagedStore, "error-backup-misfit"),
        other => other.into(),
    }
}

/// Why a backup was not restored.
#[must_use]
pub fn restoring(error: StoreError) -> ApiError {
    match error {
        StoreError::Full | StoreError::NotSaved(_) => not_restored(),
        StoreError::WrongPassphrase => ApiError::new(ErrorCode::WrongPassphrase, "error-backup-passphrase"),
        StoreError::DamagedKey(_) => ApiError::new(ErrorCode::DamagedKey, "error-backup-key"),
        other => other.into(),
    }
}

pub(crate) fn not_made() -> ApiError {
    ApiError::new(ErrorCode::NotSaved, "error-backup-not-made")
}

pub(crate) fn not_restored() -> ApiError {
    ApiError::new(ErrorCode::NotSaved, "error-restore-not-made")
}
