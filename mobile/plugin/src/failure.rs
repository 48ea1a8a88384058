//! Why a phone did not do what was asked.

use serde::Serialize;
use thiserror::Error;

/// Why not.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Code {
    /// This device has no way to do it.
    Cannot,
    /// Nothing of that name is held.
    NotThere,
    /// The person refused, or could not prove that it is she.
    Refused,
    /// It went wrong this time.
    Failed,
}

impl Code {
    /// As Kotlin and Swift call it; what they call otherwise has gone wrong.
    fn named(name: Option<&str>) -> Self {
        match name {
            Some("cannot") => Self::Cannot,
            Some("not-there") => Self::NotThere,
            Some("refused") => Self::Refused,
            _ => Self::Failed,
        }
    }
}

/// Why a phone did not do what was asked. The words are the system's own: for a log, not for the screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Error)]
#[error("{code:?}: {message}")]
pub struct Failure {
    /// Why.
    pub code: Code,
    /// In words of the system.
    pub message: String,
}

impl Failure {
    /// What Kotlin or Swift rejected with.
    #[must_use]
    pub fn told(code: Option<&str>, message: Option<String>) -> Self {
        Self { code: Code::named(code), message: message.unwrap_or_default() }
    }

    /// On a desk.
    #[must_use]
    pub fn cannot(what: &str) -> Self {
        Self { code: Code::Cannot, message: format!("only a phone can: {what}") }
    }

    pub(crate) fn failed(message: impl ToString) -> Self {
        Self { code: Code::Failed, message: message.to_string() }
    }
}
