//! What a backup brought, in words; and what kept it from being made or restored.

use std::path::PathBuf;
use std::sync::atomic::{AtomicU32, Ordering};
use std::sync::{Arc, Weak};

use secundine_domain::message::Message;
use secundine_store::{Backed, BackupBegun, Lend, Misfit, MisfitKind, Restored, StoreError};

use crate::api::{ApiError, BackupMade, BackupState, ErrorCode};
use crate::verify::{self, number};

/// Most sentences about single entries; the rest are counted. Our own choice.
const SENTENCES: usize = 50;

/// The backup that was asked for, and what became of it.
#[derive(Default)]
pub(crate) struct BackupDesk {
    /// Counts those that were asked for, so that what comes of one that was forgotten is not taken for another's.
    asked: u64,
    now: Option<Now>,
    /// How far the one is that was begun last; there as long as it is worked at.
    last: Weak<AtomicU32>,
    /// Begun, and no thread has taken it yet.
    pub(crate) next: Option<BackupTask>,
}

enum Now {
    Going(Arc<AtomicU32>),
    Ended(BackupState),
}

/// A backup that is to be made beside everything else.
pub struct BackupTask {
    /// Which of those that were asked for.
    pub(crate) number: u64,
    begun: BackupBegun,
    path: PathBuf,
    far: Arc<AtomicU32>,
}

impl BackupDesk {
    pub(crate) fn begin(&mut self, begun: BackupBegun, path: PathBuf) {
        let far = Arc::default();
        self.last = Arc::downgrade(&far);
        self.asked += 1;
        self.now = Some(Now::Going(Arc::clone(&far)));
        self.next = Some(BackupTask { number: self.asked, begun, path, far });
    }

    pub(crate) fn is_going(&self) -> bool {
        matches!(self.now, Some(Now::Going(_)))
    }

    /// Whether no thread works at one any more, also at none that was forgotten.
    pub(crate) fn is_at_rest(&self) -> bool {
        !self.is_going() && self.last.strong_count() == 0
    }

    /// Whether it is this one that is being made.
    pub(crate) fn is(&self, number: u64) -> bool {
        self.is_going() && self.asked == number
    }

    pub(crate) fn end(&mut self, number: u64, made: Result<BackupMade, ApiError>) {
        if self.is(number) {
            let ended = made.map_or_else(|error| BackupState::Failed { said: error.message }, BackupState::Made);
            self.now = Some(Now::Ended(ended));
        }
    }

    /// The practice was closed.
    pub(crate) fn forget(&mut self) {
        (self.now, self.next) = (None, None);
    }

    pub(crate) fn asked(&self) -> Option<BackupState> {
        Some(match self.now.as_ref()? {
            Now::Going(far) => BackupState::Going { percent: far.load(Ordering::Relaxed) / 10 },
            Now::Ended(ended) => ended.clone(),
        })
    }
}

impl BackupTask {
    /// Makes it, and asks for the store by moments.
    pub(crate) fn make(self, lend: Lend<'_>) -> Result<BackupMade, ApiError> {
        let Self { begun, path, far, .. } = self;
        let backed = begun.make(&path, lend, &mut |thousandths| far.store(thousandths, Ordering::Relaxed)).map_err(making)?;
        Ok(BackupMade {
            path: path.to_string_lossy().into_owned(),
            births: number(backed.births),
            entries: number(backed.entries),
            files: number(backed.files),
            damaged_files: number(backed.damaged_files),
            bytes: backed.bytes,
            waiting: 0,
        })
    }
}

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

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use secundine_domain::fact::Practice;
    use secundine_domain::time::Stamp;
    use secundine_store::unfinished_backup;

    use super::*;
    use crate::api::Request;
    use crate::clock::HandClock;
    use crate::{Paths, Session};

    #[test]
    fn one_that_was_forgotten_keeps_its_passing_name_while_it_is_worked_at() {
        let folder = tempfile::tempdir().unwrap();
        let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot: None });
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        let mut session = Session::new(paths, Arc::new(clock));
        let [name, practitioner, role] = ["Heron House", "Ida Reiher", "midwife"].map(str::to_owned);
        let (practice, passphrase) = (Practice { name, practitioner, role, protocol: None }, "seven quiet herons".to_owned());
        session.call(Request::CreatePractice { practice, passphrase: passphrase.clone() }).unwrap();
        let begin = |session: &mut Session| {
            session.call(Request::MakeBackup).unwrap();
            session.backup_to_begin().unwrap()
        };
        let first = begin(&mut session);
        let unfinished = unfinished_backup(&first.path);
        std::fs::write(&unfinished, "half of it").unwrap();
        let anew = |session: &mut Session| {
            session.call(Request::Lock).unwrap();
            session.call(Request::Unlock { passphrase: passphrase.clone() }).unwrap();
        };
        anew(&mut session);
        let second = begin(&mut session);
        assert_ne!(first.path, second.path);
        assert!(unfinished.exists());
        drop((first, second));
        anew(&mut session);
        begin(&mut session);
        assert!(!unfinished.exists(), "what nobody works at is tidied up");
    }
}
