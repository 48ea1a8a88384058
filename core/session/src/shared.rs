//! What every shell wraps: one session behind a lock, a panic made into an error.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::{Mutex, PoisonError};

use crate::Session;
use crate::api::{ApiError, ErrorCode, Request, Response};

/// A session that several threads can call, one at a time.
pub struct SharedSession(Mutex<Session>);

impl SharedSession {
    /// Shares a session.
    #[must_use]
    pub fn new(session: Session) -> Self {
        Self(Mutex::new(session))
    }

    /// See [`Session::call`]. A panic in the core closes the practice and becomes an internal error.
    ///
    /// # Errors
    /// What [`Session::call`] answers.
    pub fn call(&self, request: Request) -> Result<Response, ApiError> {
        let mut session = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        catch_unwind(AssertUnwindSafe(|| session.call(request))).unwrap_or_else(|_| {
            session.abandon();
            Err(ApiError::internal())
        })
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

/// A request that does not parse: mostly a number out of its range, which the message tells.
#[must_use]
pub fn bad_request(error: &serde_json::Error) -> ApiError {
    let message = secundine_domain::message::Message::new("error-bad-request").with("problem", error.to_string());
    ApiError { code: ErrorCode::Impossible, message }
}

fn text(error: &ApiError) -> String {
    serde_json::to_string(error).unwrap_or_default()
}
