//! What native code asks for beside the page: what to remind of, what runs, and one mark. None of it tells a name, and each
//! works in a process that has no page.
//!
//! One process has one session over a practice, whoever asks first (decision 0034).

use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Instant;

use secundine_domain::message::Message;
use secundine_record::words::Words;
use secundine_store::PlatformKeys;

use crate::api::ApiError;
use crate::clock::SystemClock;
use crate::shared::with;
use crate::{Paths, Session, SharedSession};

/// A moment for the timers of the system.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moment {
    /// By the wall clock, milliseconds since 1970, UTC.
    pub utc_ms: i64,
    /// By the clock that counts from the start of the device and runs through suspend, ms; none where the system has none.
    pub running_ms: Option<i64>,
}

/// A reminder that is to come while nobody looks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reminder {
    /// Stable name, the same after a restart.
    pub id: String,
    /// When.
    pub at: Moment,
    /// What it is, without any name.
    pub words: String,
}

/// The third stage that runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Running {
    /// When it began.
    pub since: Moment,
    /// How long it has run, ms.
    pub elapsed_ms: i64,
}

/// A mark that is on disk.
#[derive(Clone, Debug, PartialEq, Eq)]
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
#[derive(Clone, Debug, PartialEq, Eq)]
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

/// Sessions by the folder of their practice.
static SESSIONS: Mutex<Vec<(PathBuf, SharedSession)>> = Mutex::new(Vec::new());

impl SharedSession {
    /// The session of this process over a practice, for who knows where records go. Nothing is opened by it.
    #[must_use]
    pub fn of_process(paths: Paths) -> Self {
        let records = paths.records.clone();
        let session = one(paths);
        let _ = with(&session.session, |session| session.write_records_to(records));
        session
    }

    /// The same for who does not know: as long as nobody has told, records go into a folder beside the practice's.
    #[must_use]
    pub fn beside(data: &Path) -> Self {
        let records = data.parent().unwrap_or(data).join("records");
        one(Paths { data: data.to_owned(), records })
    }

    /// From now on the system of this device keeps keys.
    ///
    /// # Errors
    /// None that a call could mend.
    pub fn keys_kept_by(&self, platform: Arc<dyn PlatformKeys>) -> Result<(), ApiError> {
        with(&self.session, |session| session.keys_kept_by(platform))
    }

    /// What is armed, soonest first, over all births of the last day; at most three.
    ///
    /// # Errors
    /// [`crate::api::ErrorCode::Locked`] or [`crate::api::ErrorCode::Rehearsal`]: what was armed before still holds.
    pub fn reminders(&self, language: &str) -> Result<Vec<Reminder>, ApiError> {
        with(&self.session, |session| session.reminders(Words::of(language)))?
    }

    /// The third stage that runs: of the birth looked at last, else of the one registered last. None where none runs, or,
    /// where the practice is locked, none is known of.
    ///
    /// # Errors
    /// [`crate::api::ErrorCode::Rehearsal`]: what stood before still holds.
    pub fn running(&self) -> Result<Option<Running>, ApiError> {
        with(&self.session, Session::running)?
    }

    /// Marks the birth of a baby so many milliseconds before this call. See [`Session::mark_baby_born`].
    ///
    /// # Errors
    /// Whatever the code: it is NOT on disk.
    pub fn mark_baby_born(&self, ago_ms: u32, language: &str) -> Result<Marked, ApiError> {
        // The session may be at work for another, and reads its clock only then.
        let asked = Instant::now();
        with(&self.session, |session| {
            let waited = u32::try_from(asked.elapsed().as_millis()).unwrap_or(u32::MAX);
            session.mark_baby_born(ago_ms.saturating_add(waited), Words::of(language))
        })?
    }

    /// Takes that mark back.
    ///
    /// # Errors
    /// [`crate::api::ErrorCode::NotFound`] where it cannot be taken back here, such as after an unlocking: the page can.
    /// Whatever the code: it still stands.
    pub fn take_back_mark(&self) -> Result<(), ApiError> {
        with(&self.session, Session::take_back_mark)?
    }
}

/// The words of a switch that marks, in the language of a BCP 47 tag, or the nearest.
#[must_use]
pub fn mark_words(language: &str) -> MarkWords {
    let words = Words::of(language);
    MarkWords {
        label: words.say(&Message::new("fact-baby-born").with("of", 1_u32).with("baby", 1_u32)),
        take_back: words.plain("native-take-back"),
        taken_back: words.plain("native-taken-back"),
        not_saved: words.plain("native-not-saved"),
    }
}

/// An error in words.
#[must_use]
pub fn error_words(error: &ApiError, language: &str) -> String {
    Words::of(language).say(&error.message)
}

fn one(paths: Paths) -> SharedSession {
    let mut sessions = SESSIONS.lock().unwrap_or_else(PoisonError::into_inner);
    let place = place(&paths.data);
    if let Some((_, session)) = sessions.iter().find(|(known, _)| *known == place) {
        return session.clone();
    }
    let session = SharedSession::new(Session::new(paths, Arc::new(SystemClock::new())));
    sessions.push((place, session.clone()));
    session
}

/// A folder by its one name: a system may give several, and it need not be there yet.
fn place(folder: &Path) -> PathBuf {
    let mut missing = Vec::new();
    for there in folder.ancestors() {
        if let Ok(known) = there.canonicalize() {
            return missing.iter().rev().fold(known, |path, name| path.join(name));
        }
        missing.extend(there.file_name());
    }
    folder.to_owned()
}
