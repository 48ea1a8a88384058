//! What is told about sending records to a server.

use secundine_domain::message::Message;
use serde::Serialize;

/// Where this practice sends records. The token itself is never told.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ServerView {
    /// Its base address; none where none is set.
    pub address: Option<String>,
    /// Whether there is a token.
    pub token: bool,
    /// What came of asking it what it is; none where it was not asked since the practice was opened.
    pub tried: Option<TriedView>,
}

/// What came of asking a server what it is.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "tried", rename_all = "snake_case")]
pub enum TriedView {
    /// It has not answered yet.
    Going,
    /// Its answer.
    Told {
        /// In words.
        said: Message,
        /// Whether it takes what is sent.
        well: bool,
    },
}

/// How a birth stands with the server.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct SendingView {
    /// The address of the server; none where none is set.
    pub server: Option<String>,
    /// Where it is now.
    pub state: SendingState,
    /// The last version that a server took.
    pub taken: Option<TakenView>,
}

/// Where a birth is on its way.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "state", rename_all = "snake_case")]
pub enum SendingState {
    /// Nobody asked.
    NotAsked,
    /// It waits; why it did not go, where it was tried since the practice was opened.
    Waiting {
        /// The last failure.
        failure: Option<FailureView>,
    },
    /// It is being sent.
    Going {
        /// Bytes that were given to the network.
        sent: u32,
        /// Of how many; 0 while it is written.
        of: u32,
    },
}

/// Why a server does not have it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct FailureView {
    /// `2026-11-25`.
    pub date: String,
    /// `03:12:40`.
    pub clock: String,
    /// In words.
    pub said: Message,
    /// What the server found wrong, entry by entry.
    pub entries: Vec<Message>,
    /// How many more it found.
    pub more: u32,
    /// Whether it is tried again without being asked.
    pub again: bool,
}

/// A version that a server took.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct TakenView {
    /// `2026-11-25`.
    pub date: String,
    /// `03:12:40`.
    pub clock: String,
    /// The address of that server.
    pub server: Option<String>,
    /// SHA-256 of the entries, hexadecimal.
    pub version: String,
    /// Whether nothing was written since.
    pub current: bool,
}
