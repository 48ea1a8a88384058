//! Several phones at one birth.

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::message::Message;
use serde::Serialize;

use super::QrView;

/// A code that the other phone reads.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct CodeView {
    /// As a picture.
    pub code: QrView,
    /// The same as text, for a phone without a camera.
    pub text: String,
}

/// What another phone's code says.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct CodeRead {
    /// The code as text.
    pub text: String,
    /// The birth that it is of.
    pub birth: BirthId,
    /// What tells it from others.
    pub label: String,
    /// Whether it answers a code that was shown here.
    pub answer: bool,
    /// Whether something of this birth is here.
    pub here: bool,
    /// How the clocks stand to each other, as far as one reading tells; none for an answer.
    pub clocks: Option<Message>,
}

/// What came of it.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct CodeTaken {
    /// The birth.
    pub birth: BirthId,
    /// How the clocks were found to stand; none where the code was typed and the way back is not measured yet.
    pub compared: Option<Message>,
    /// Whether the other phone can read an answer here, by which both ways are measured.
    pub answers: bool,
}

/// The phones at a birth.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct PhonesView {
    /// Whose entries are not here yet, and what that means; none where no other phone is known, or its entries are here.
    pub awaits: Option<Message>,
    /// Each comparison of two clocks, in order of time.
    pub compared: Vec<ComparedLine>,
    /// How the difference changed from the first comparison to the last; none before there are two of the same phones.
    pub drift: Option<Message>,
}

/// A comparison of two clocks.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ComparedLine {
    /// Local time of it.
    pub clock: String,
    /// How they stood.
    pub said: Message,
}

/// Two births that may be the same: the mother's name agrees, and her date of birth or the label.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct AlikeView {
    /// One of them.
    pub one: BirthId,
    /// What tells it from others.
    pub one_label: String,
    /// The other.
    pub other: BirthId,
    /// What tells that one from others.
    pub other_label: String,
    /// The mother's name.
    pub client: String,
}

/// A signature, and what was not on the phone that signed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct SignedView {
    /// Its entry.
    pub entry: EntryId,
    /// Whether it covers all that was written before it.
    pub whole: bool,
    /// Which version it covers, and how many entries written before it were not in that.
    pub said: Message,
}
