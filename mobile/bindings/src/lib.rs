//! The core for Kotlin, Swift and Python, through UniFFI: the one call, JSON in, JSON out, with the same [`Request`] and
//! [`Response`] that the page uses; and typed calls for native code that has no page.
//!
//! On a phone this crate is part of the program's own library, so that the page and native code share one session (decision
//! 0034).
//!
//! [`Request`]: secundine_session::api::Request
//! [`Response`]: secundine_session::api::Response

mod native;

use std::path::Path;
use std::sync::Arc;

use secundine_session::{Paths, SharedSession, panics_tell_only_where};

pub use native::{MarkError, NotTold, mark_words};

uniffi::setup_scaffolding!();

/// The session of this process over one practice.
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
    /// The session over these folders: the practice, and the PDF records. Nothing is opened yet. Whoever asks in this process
    /// for the same practice gets the same session.
    #[uniffi::constructor]
    #[must_use]
    pub fn new(data: String, records: String) -> Arc<Self> {
        panics_tell_only_where();
        let paths = Paths { data: data.into(), records: records.into() };
        Arc::new(Self(SharedSession::of_process(paths)))
    }

    /// The same for code that does not know where records go.
    #[uniffi::constructor]
    #[must_use]
    pub fn beside(data: String) -> Arc<Self> {
        panics_tell_only_where();
        Arc::new(Self(SharedSession::beside(Path::new(&data))))
    }

    /// Asks the core. `request` is a request as JSON; the answer is a response as JSON.
    ///
    /// # Errors
    /// [`CallError::Refused`] with the error as JSON.
    pub fn call(&self, request: String) -> Result<String, CallError> {
        self.0.call_json(&request).map_err(|error| CallError::Refused { error })
    }
}
