//! What every shell wraps: one session behind a lock, a panic made into an error.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread;

use secundine_domain::message::Message;
use secundine_store::Store;

use crate::Session;
use crate::api::{ApiError, Request, Response};
use crate::backup::{BackupTask, not_made};
use crate::sending::{Courier, Failure, Http, Run, try_server};
use crate::sync::{self, Moments, Task};

/// A session that several threads can call, one at a time. What takes the network is done by a thread of its own, without the lock:
/// no mark ever waits for a server.
#[derive(Clone)]
pub struct SharedSession {
    pub(crate) session: Arc<Mutex<Session>>,
    courier: Arc<dyn Courier>,
}

impl SharedSession {
    /// Shares a session.
    #[must_use]
    pub fn new(session: Session) -> Self {
        Self::with_courier(session, Arc::new(Http::default()))
    }

    /// The same with another way to the network.
    #[must_use]
    pub fn with_courier(session: Session, courier: Arc<dyn Courier>) -> Self {
        Self { session: Arc::new(Mutex::new(session)), courier }
    }

    /// See [`Session::call`]. A panic in the core closes the practice and becomes an internal error.
    ///
    /// # Errors
    /// What [`Session::call`] answers.
    pub fn call(&self, request: Request) -> Result<Response, ApiError> {
        let (answer, runs, task, backup) = with(&self.session, |session| {
            (session.call(request), session.runs_to_begin(), session.sync_to_begin(), session.backup_to_begin())
        })?;
        backup.into_iter().for_each(|backup| self.begin_backup(backup));
        runs.into_iter().for_each(|run| self.begin(run));
        task.into_iter().for_each(|task| self.begin_sync(task));
        answer
    }

    fn begin_backup(&self, task: BackupTask) {
        let (session, number) = (Arc::clone(&self.session), task.number);
        let begun = thread::Builder::new().name("backup".to_owned()).spawn(move || back_up(task, &session));
        if begun.is_err() {
            let _ = with(&self.session, |session| session.backed_up(number, Err(not_made())));
        }
    }

    fn begin_sync(&self, task: Task) {
        let session = Arc::clone(&self.session);
        let begun = thread::Builder::new().name("sync".to_owned()).spawn(move || share(task, &session));
        if begun.is_err() {
            let _ = with(&self.session, Session::sync_not_begun);
        }
    }

    fn begin(&self, run: Run) {
        let (session, courier) = (Arc::clone(&self.session), Arc::clone(&self.courier));
        let begun = thread::Builder::new().name("sending".to_owned()).spawn(move || carry(run, &session, &*courier));
        if begun.is_err() {
            // Nothing is lost: it waits still.
            let _ = with(&self.session, |session| session.not_begun(run));
        }
    }

    /// The same over JSON text: a [`Request`] in, a [`Response`] or an [`ApiError`] out.
    ///
    /// # Errors
    /// The [`ApiError`] as JSON.
    pub fn call_json(&self, request: &str) -> Result<String, String> {
        let answer = serde_json::from_str(request).map_err(|error| bad_request(&error)).and_then(|request| self.call(request));
        match answer {
            Ok(response) => serde_json::to_string(&response).map_err(|_| text(&ApiError::internal())),
            Err(error) => Err(text(&error)),
        }
    }
}

/// Works with a session under its lock. A panic closes the practice and becomes an internal error.
pub(crate) fn with<T>(session: &Mutex<Session>, work: impl FnOnce(&mut Session) -> T) -> Result<T, ApiError> {
    let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
    catch_unwind(AssertUnwindSafe(|| work(&mut session))).map_err(|_| {
        session.abandon();
        ApiError::internal()
    })
}

/// Takes out what is to be carried, carries it without the lock, and puts back what became of it. After a panic it ends, and what
/// waits is taken up when somebody asks again.
fn carry(run: Run, session: &Mutex<Session>, courier: &dyn Courier) {
    match run {
        Run::Send => {
            while let Ok(Some(letter)) = with(session, Session::next_letter) {
                let told = catch_unwind(AssertUnwindSafe(|| letter.carry(courier)));
                let told = told.unwrap_or_else(|_| Err(Failure::from(ApiError::internal())));
                if with(session, |session| session.settle(&letter, told)).is_err() {
                    return;
                }
            }
        }
        Run::Try => {
            if let Ok(Some(server)) = with(session, Session::server_to_try) {
                let told = catch_unwind(AssertUnwindSafe(|| try_server(&server, courier)));
                let told = told.unwrap_or_else(|_| Err(ApiError::internal().message));
                let _ = with(session, |session| session.tried(&server, told));
            }
        }
    }
}

/// Makes a backup. The session is held for moments only: no mark ever waits for it.
fn back_up(task: BackupTask, session: &Mutex<Session>) {
    let number = task.number;
    let lend = &mut |work: &mut dyn FnMut(&Store)| with(session, |session| session.lend(number, work)).unwrap_or(false);
    let made = catch_unwind(AssertUnwindSafe(|| task.make(lend)));
    let _ = with(session, |session| session.backed_up(number, made.unwrap_or_else(|_| Err(ApiError::internal()))));
}

/// Does a task of sharing, and what was asked for meanwhile. The session is held for moments only.
fn share(first: Task, session: &Mutex<Session>) {
    let access = Moments(|work: &mut dyn FnMut(&mut Store)| with(session, |session| session.with_store(work)).unwrap_or(false));
    let mut next = Some(first);
    while let Some(task) = next.take() {
        let Ok((stop, far)) = with(session, |session| session.sync_controls()) else { return };
        let outcome = catch_unwind(AssertUnwindSafe(|| sync::work(task, &access, &stop, &far)));
        let ended = match outcome {
            Ok(outcome) => with(session, |session| session.synced(outcome)),
            Err(_) => with(session, Session::sync_not_begun),
        };
        if ended.is_err() {
            return;
        }
        next = with(session, Session::sync_to_begin).unwrap_or(None);
    }
}

/// A request that does not parse: mostly a number out of its range, which the message tells. What the parser itself says
/// is not passed on, since it may quote what was typed.
#[must_use]
pub fn bad_request(error: &serde_json::Error) -> ApiError {
    ApiError::impossible(out_of_range(&error.to_string()).unwrap_or_else(|| Message::new("error-bad-request")))
}

/// Reads back the text of [`secundine_domain::quantity::OutOfRange`], the only form in which it comes out of a parser.
fn out_of_range(text: &str) -> Option<Message> {
    let words: Vec<&str> = text.split(' ').collect();
    let [quantity, value, "is", "not", "between", min, "and", max, unit, ..] = words.as_slice() else { return None };
    if !quantity.strip_prefix("quantity-")?.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'-') {
        return None;
    }
    // A temperature is kept in tenths; the others are shown as they are kept.
    let (shown, scale) = match *unit {
        "0.1.Cel" => ("°C", 10.0),
        "mm[Hg]" => ("mmHg", 1.0),
        "/min" => ("a minute", 1.0),
        "d" => ("days", 1.0),
        "1" | "{score}" => ("", 1.0),
        other => (other, 1.0),
    };
    let number = |text: &str| text.parse::<i32>().ok().map(|number| f64::from(number) / scale);
    let id = if shown.is_empty() { "impossible-number" } else { "impossible-quantity" };
    let message = Message::new(id).with("quantity", Message::new(*quantity)).with("unit", shown);
    Some(message.with("value", number(value)?).with("min", number(min)?).with("max", number(max)?))
}

fn text(error: &ApiError) -> String {
    serde_json::to_string(error).unwrap_or_default()
}
