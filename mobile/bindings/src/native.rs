//! Typed calls for native code that has no page: reminders, the clock of the lock screen, and a switch that marks a birth.
//! Nothing that comes out of them bears a name.

use secundine_session::api::{ApiError, ErrorCode};
use secundine_session::native;
use secundine_session::native::{MarkWords, Marked, Moment, Reminder, Running};

use crate::Secundine;

/// A moment for the timers of the system.
#[uniffi::remote(Record)]
pub struct Moment {
    /// By the wall clock, milliseconds since 1970, UTC.
    pub utc_ms: i64,
    /// By the clock that counts from the start of the device and runs through suspend, ms; none where the system has none.
    pub running_ms: Option<i64>,
}

/// A reminder that is to come while nobody looks.
#[uniffi::remote(Record)]
pub struct Reminder {
    /// Stable name, the same after a restart.
    pub id: String,
    /// When.
    pub at: Moment,
    /// What it is, without any name.
    pub words: String,
}

/// The third stage that runs.
#[uniffi::remote(Record)]
pub struct Running {
    /// When it began.
    pub since: Moment,
    /// How long it has run, ms.
    pub elapsed_ms: i64,
}

/// A mark that is on disk.
#[uniffi::remote(Record)]
pub struct Marked {
    /// The moment that was marked.
    pub at: Moment,
    /// The same in local time, `03:12:40`.
    pub clock: String,
    /// Whether it waits in the inbox for the next unlocking; else it stands in its chart.
    pub waits: bool,
    /// The same in words: the time, and that it is saved.
    pub words: String,
}

/// The words of a switch that marks.
#[uniffi::remote(Record)]
pub struct MarkWords {
    /// What it marks.
    pub label: String,
    /// That the mark can be taken back by touching again.
    pub take_back: String,
    /// That it was taken back.
    pub taken_back: String,
    /// That it is NOT on disk.
    pub not_saved: String,
}

/// Why a mark is NOT on disk, or still stands. Either way it has to be told loudly.
#[derive(Debug, thiserror::Error, uniffi::Error)]
pub enum MarkError {
    /// It is NOT SAVED.
    #[error("NOT SAVED: {why}")]
    NotSaved {
        /// Why, and what to do, in words.
        why: String,
    },
    /// It was not taken back, and still stands.
    #[error("not taken back: {why}")]
    Stands {
        /// Why, in words.
        why: String,
    },
}

/// Why something is not told now. What was told before still holds.
#[derive(Debug, thiserror::Error, uniffi::Error)]
pub enum NotTold {
    /// The practice is locked.
    #[error("locked")]
    Locked,
    /// A rehearsal runs, which is no birth.
    #[error("a rehearsal runs")]
    Rehearsal,
    /// It could not be read.
    #[error("not read")]
    NotRead,
}

impl From<ApiError> for NotTold {
    fn from(error: ApiError) -> Self {
        match error.code {
            ErrorCode::Locked => Self::Locked,
            ErrorCode::Rehearsal => Self::Rehearsal,
            _ => Self::NotRead,
        }
    }
}

#[uniffi::export]
impl Secundine {
    /// The reminders that are to be set on the device, soonest first, at most three. They replace those before.
    ///
    /// # Errors
    /// [`NotTold`]: those before still hold.
    pub fn reminders(&self, language: &str) -> Result<Vec<Reminder>, NotTold> {
        Ok(self.0.reminders(language)?)
    }

    /// The third stage that runs, for the clock of the lock screen; also while locked, where it ran at the lock or was begun
    /// since.
    ///
    /// # Errors
    /// [`NotTold`]: the clock before still holds.
    pub fn running(&self) -> Result<Option<Running>, NotTold> {
        Ok(self.0.running()?)
    }

    /// Marks the birth of a baby so many milliseconds before this call. It needs no passphrase: while the practice is locked,
    /// the mark waits in the inbox for the next unlocking. When this returns, it is on disk.
    ///
    /// # Errors
    /// [`MarkError::NotSaved`].
    pub fn mark_baby_born(&self, ago_ms: u32, language: &str) -> Result<Marked, MarkError> {
        let marked = self.0.mark_baby_born(ago_ms, language);
        marked.map_err(|error| MarkError::NotSaved { why: native::error_words(&error, language) })
    }

    /// Takes back the last mark that was made by [`Secundine::mark_baby_born`] in this process. After an unlocking or a lock
    /// only the page can.
    ///
    /// # Errors
    /// [`MarkError::Stands`].
    pub fn take_back_mark(&self, language: &str) -> Result<(), MarkError> {
        let taken = self.0.take_back_mark();
        taken.map_err(|error| MarkError::Stands { why: native::error_words(&error, language) })
    }
}

/// The words of a switch that marks, in the language of a BCP 47 tag, or the nearest that there is.
#[uniffi::export]
#[must_use]
pub fn mark_words(language: &str) -> MarkWords {
    native::mark_words(language)
}
