//! Voice notes as the page draws them.

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::file::FileId;
use secundine_domain::message::Message;
use serde::Serialize;

/// A voice note, and what has become of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct VoiceView {
    /// The birth that it belongs to.
    pub birth: BirthId,
    /// The entry, as first written.
    pub entry: EntryId,
    /// What it is and how long it plays.
    pub said: Message,
    /// Local date on which it was spoken.
    pub date: String,
    /// Local time at which it began.
    pub clock: String,
    /// Who spoke it.
    pub author: String,
    /// Names its sealed file.
    pub file: FileId,
    /// Media type of the recording.
    pub media: String,
    /// How long it plays, ms.
    pub ms: u32,
    /// What was looked at while it was spoken, in order.
    pub chapters: Vec<ChapterView>,
    /// What was written up from it; none while it waits.
    pub written: Option<WrittenView>,
}

/// A stretch of a voice note.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ChapterView {
    /// The item of the examination that was on the screen.
    pub title: Message,
    /// Where it begins, ms of the recording.
    pub at_ms: u32,
    /// The same as `m:ss`.
    pub at: String,
}

/// What was written up from a voice note.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct WrittenView {
    /// The entry, as first written.
    pub entry: EntryId,
    /// What was typed; empty where nothing was added.
    pub text: String,
    /// Who wrote it up.
    pub author: String,
    /// Local date and time of that.
    pub when: String,
}

/// A voice note that still has to be written up, and whose it is.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct WaitingNote {
    /// What tells the birth from others.
    pub label: String,
    /// Name of the mother, once recorded.
    pub client: Option<String>,
    /// The note.
    pub note: VoiceView,
}
