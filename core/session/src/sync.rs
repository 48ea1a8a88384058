//! Sharing with the other phones of the practice: what a thread of its own does, and what is remembered of it in memory.

use std::path::Path;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex};

use secundine_domain::file::FileId;
use secundine_domain::message::Message;
use secundine_domain::time::{Elapsed, Occurred, Stamp};
use secundine_store::Store;
use secundine_sync::{Access, Place, Progress, Report, SyncError, Wishes};

mod place;
mod words;

pub(crate) use place::{place_view, placed};
use words::{bucket_words, probed_words};
pub(crate) use words::{error_words, trouble_view};

/// The pause after the first failure, ms; each further one doubles it (ours).
const FIRST_PAUSE_MS: i64 = 30_000;
/// The longest pause, ms (ours).
const LONGEST_PAUSE_MS: i64 = 60 * 60_000;
/// A round is made by itself so long after the last good one, ms (ours).
const EVERY_MS: i64 = 15 * 60_000;

/// Files are counted anew after this, ms (ours): the view is looked at more than once a second.
const COUNT_MS: u64 = 60_000;

/// What a thread of its own is to do.
#[derive(Clone, PartialEq)]
pub(crate) enum Task {
    /// A round with the bucket.
    Round {
        /// UTC milliseconds.
        now_ms: i64,
        /// Whether pictures and sounds go too.
        files: bool,
        place: Place,
    },
    /// Tries a place.
    Try(Place),
    /// Gets the practice back by its sheet.
    Recover { sheet: String, label: String, place: Place, now_ms: i64 },
    /// Fetches a picture or sound.
    Fetch { file: FileId, place: Place },
}

/// What came of a task.
pub(crate) enum Outcome {
    Round(Report, Result<(), SyncError>),
    Tried(Result<Message, Message>),
    Recovered(Result<(), SyncError>),
    Fetched(Result<(), SyncError>),
}

/// What a thread looks at: whether it is to stop, and where it tells how far it is.
pub(crate) type Controls = (Arc<AtomicBool>, Arc<Mutex<Progress>>);

/// What is remembered of sharing while the practice is open.
#[derive(Default)]
pub(crate) struct Desk {
    asked: Vec<Task>,
    /// A thread is at work.
    pub busy: bool,
    pub stop: Arc<AtomicBool>,
    pub paused: bool,
    pub far: Arc<Mutex<Progress>>,
    /// When the last round ended, and how often rounds have failed one after the other.
    last: Option<Stamp>,
    failed: u32,
    pub failure: Option<Message>,
    pub report: Report,
    /// Bytes that the records take, and when that was counted.
    counted: Option<(Stamp, u64)>,
    pub tried: Option<Option<Result<Message, Message>>>,
}

impl Desk {
    /// Asks for something to be done by a thread of its own; what is asked for already is not asked for twice.
    pub fn ask(&mut self, task: Task) {
        let same = |other: &Task| match (other, &task) {
            (Task::Fetch { file: one, .. }, Task::Fetch { file, .. }) => one == file,
            _ => std::mem::discriminant(other) == std::mem::discriminant(&task),
        };
        if !self.asked.iter().any(same) {
            self.asked.push(task);
        }
    }

    /// What now has to run; one thing at a time.
    pub fn begin(&mut self) -> Option<Task> {
        if self.busy || self.asked.is_empty() {
            return None;
        }
        self.busy = true;
        self.stop.store(false, Ordering::Relaxed);
        Some(self.asked.remove(0))
    }

    /// Milliseconds until the next round is made by itself; none while it is paused.
    pub fn due_in(&self, now: &Stamp) -> Option<i64> {
        if self.paused {
            return None;
        }
        let Some(last) = &self.last else { return Some(0) };
        let since = Elapsed::between(&Occurred::Marked(last.clone()), &Occurred::Marked(now.clone())).ms;
        let pause = match self.failed {
            0 => EVERY_MS,
            times => FIRST_PAUSE_MS.checked_shl(times - 1).unwrap_or(LONGEST_PAUSE_MS).clamp(FIRST_PAUSE_MS, LONGEST_PAUSE_MS),
        };
        // A clock that was set back is no reason to wait for ever.
        Some(if since < 0 { 0 } else { (pause - since).max(0) })
    }

    /// Something was written that the others are to have soon: the next round does not wait for its time.
    pub fn soon(&mut self) {
        if self.failed == 0 {
            self.last = None;
        }
    }

    /// Bytes that the records in this folder take: counted anew after a round, and after a while.
    pub fn stored_bytes(&mut self, folder: &Path, now: &Stamp) -> u64 {
        let fresh = |then: &Stamp| now.wall_ms.abs_diff(then.wall_ms) < COUNT_MS;
        match &self.counted {
            Some((then, bytes)) if fresh(then) => *bytes,
            _ => {
                let bytes = stored_bytes(folder);
                self.counted = Some((now.clone(), bytes));
                bytes
            }
        }
    }

    /// How often rounds have failed one after the other.
    pub fn failures(&self) -> u32 {
        self.failed
    }

    /// Keeps what came of a round.
    pub fn ended(&mut self, report: Report, done: Result<(), SyncError>, now: Stamp) {
        self.last = Some(now.clone());
        self.counted = None;
        match done {
            Ok(()) => {
                self.failed = 0;
                self.failure = None;
                self.report = report;
            }
            Err(SyncError::Paused | SyncError::Closed) => {
                self.report.progress = report.progress;
            }
            Err(error) => {
                self.failed = self.failed.saturating_add(1);
                self.failure = Some(error_words(&error));
                // What was found before it broke off is told; what was found before that may hold still.
                self.report.troubles.extend(report.troubles);
            }
        }
    }

    /// The practice was closed. What is under way comes to its end by itself.
    pub fn forget(&mut self) {
        self.stop.store(true, Ordering::Relaxed);
        let (busy, stop, far) = (self.busy, Arc::clone(&self.stop), Arc::clone(&self.far));
        *self = Self { busy, stop, far, ..Self::default() };
    }
}

/// Does a task, without the lock but for moments.
pub(crate) fn work(task: Task, access: &dyn Access, stop: &AtomicBool, far: &Mutex<Progress>) -> Outcome {
    match task {
        Task::Round { now_ms, files, place } => {
            let bucket = match secundine_sync::open(&place) {
                Ok(bucket) => bucket,
                Err(error) => return Outcome::Round(Report::default(), Err(error.into())),
            };
            let mut progress = |progress: Progress| {
                if let Ok(mut far) = far.lock() {
                    *far = progress;
                }
                !stop.load(Ordering::Relaxed)
            };
            let mut wishes = Wishes { now_ms, files, progress: &mut progress };
            let (report, done) = secundine_sync::round(access, &*bucket, &mut wishes);
            Outcome::Round(report, done)
        }
        Task::Try(place) => Outcome::Tried(try_place(&place)),
        Task::Recover { sheet, label, place, now_ms } => {
            let settings = serde_json::to_vec(&place).unwrap_or_default();
            let done = secundine_sync::open(&place)
                .map_err(SyncError::from)
                .and_then(|bucket| secundine_sync::recover(access, &*bucket, &sheet, &label, settings, now_ms));
            Outcome::Recovered(done.map(|_| ()))
        }
        Task::Fetch { file, place } => {
            let mut progress = |bytes| {
                if let Ok(mut far) = far.lock() {
                    *far = Progress { got_bytes: bytes, ..Progress::default() };
                }
                !stop.load(Ordering::Relaxed)
            };
            let bucket = secundine_sync::open(&place).map_err(SyncError::from);
            Outcome::Fetched(bucket.and_then(|bucket| secundine_sync::fetch_file(access, &*bucket, file, &mut progress)))
        }
    }
}

fn try_place(place: &Place) -> Result<Message, Message> {
    let bucket = secundine_sync::open(place).map_err(|error| bucket_words(&error))?;
    let mut name = [0; 8];
    getrandom::fill(&mut name).map_err(|_| Message::new("error-internal"))?;
    probed_words(&secundine_sync::probe(&*bucket, &format!("probe/{:016x}", u64::from_be_bytes(name))))
}

/// Bytes of the practice's folder: the database and what lies beside it.
fn stored_bytes(folder: &Path) -> u64 {
    let files = |folder: &Path| std::fs::read_dir(folder).into_iter().flatten().flatten().collect::<Vec<_>>();
    let beside = files(&folder.join(secundine_store::FILES));
    let all = files(folder).into_iter().chain(beside);
    all.filter_map(|file| file.metadata().ok()).filter(|file| file.is_file()).map(|file| file.len()).sum()
}

/// The store of the session that is shared, for moments at a time.
pub(crate) struct Moments<F>(pub F);

impl<F: Fn(&mut dyn FnMut(&mut Store)) -> bool> Access for Moments<F> {
    fn with(&self, work: &mut dyn FnMut(&mut Store)) -> bool {
        (self.0)(work)
    }
}
