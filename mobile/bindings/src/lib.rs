//! The one call for Kotlin, Swift and Python, through UniFFI. JSON in, JSON out: the same [`Request`] and [`Response`] that
//! the page uses.
//!
//! [`Request`]: secundine_session::api::Request
//! [`Response`]: secundine_session::api::Response

use std::sync::Arc;

use secundine_session::clock::SystemClock;
use secundine_session::{Paths, Session, SharedSession, panics_tell_only_where};

uniffi::setup_scaffolding!();

/// A session over one practice.
#[derive(uniffi::Object)]
pub struct Secundine(SharedSession);

/// A request that was not done.
#[derive(Debug, thiserror::Error, uniffi::Error)]
pub enum CallError {
    /// The error as JSON: a code, and a message of the catalogue.
    #[error("{error}")]
    Refused {
        /// The JSON.
        error: String,
    },
}

#[uniffi::export]
impl Secundine {
    /// A session over these folders: the practice, and the PDF records. Nothing is opened yet.
    #[uniffi::constructor]
    #[must_use]
    pub fn new(data: String, records: String) -> Arc<Self> {
        panics_tell_only_where();
        let paths = Paths { data: data.into(), records: records.into() };
        Arc::new(Self(SharedSession::new(Session::new(paths, Arc::new(SystemClock::new())))))
    }

    /// Asks the core. `request` is a request as JSON; the answer is a response as JSON.
    ///
    /// # Errors
    /// [`CallError::Refused`] with the error as JSON.
    pub fn call(&self, request: String) -> Result<String, CallError> {
        self.0.call_json(&request).map_err(|error| CallError::Refused { error })
    }
}
