//! The examination of a placenta, as the page draws it.

use secundine_domain::entry::EntryId;
use secundine_domain::examination::{Figure, Kind, Part, Reason};
use secundine_domain::fact::{Answer, BabyNo};
use secundine_domain::message::Message;
use secundine_domain::protocol::Level;
use serde::Serialize;

/// How the practice examines.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ExaminingView {
    /// Whether it has an order of its own.
    pub own_order: bool,
    /// Its table of placental weights in words; none where it has none.
    pub weights: Option<Message>,
}

/// The examination of one placenta.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ExaminationView {
    /// The placenta, named by its first baby.
    pub placenta: BabyNo,
    /// The babies that it fed.
    pub babies: Vec<BabyNo>,
    /// The items, in the practice's order; those that are answered on the drawing are not among them.
    pub items: Vec<ItemView>,
    /// How many are answered.
    pub answered: u32,
    /// What is worked out from the answers.
    pub figures: Vec<Figure>,
    /// What published lists give as reasons, by what is recorded.
    pub reasons: Vec<Reason>,
    /// Whether the practice has an order of its own.
    pub own_order: bool,
    /// The order in which it was gone through, where all is answered and it differs from the practice's: to keep for next time.
    pub gone_through: Option<Vec<String>>,
}

/// One item.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ItemView {
    /// Stable id; also the drawing to show.
    pub item: String,
    /// Where it belongs.
    pub part: Part,
    /// Whose cord, where one disc fed several babies.
    pub cord: Option<BabyNo>,
    /// How it is answered.
    pub kind: Kind,
    /// What is asked.
    pub question: Message,
    /// How to look, and what it means.
    pub how: Message,
    /// The choices of a choice, or of several.
    pub options: Vec<OptionView>,
    /// Of several choices, the one that excludes all others.
    pub none: Option<String>,
    /// Whether all choices are offered at one touch.
    pub all: bool,
    /// Values that are offered at one touch, in the unit of the kind.
    pub quick: Vec<u32>,
    /// Of coils, the stretches that are offered at one touch, mm: the whole cord first, where it was measured.
    pub stretches: Vec<u32>,
    /// Least number taken, in the unit of the kind.
    pub min: u32,
    /// Greatest number taken.
    pub max: u32,
    /// The answer in force.
    pub answer: Option<Answer>,
    /// The answer in words.
    pub answer_words: Option<Message>,
    /// The entry of that answer, to amend it.
    pub entry: Option<EntryId>,
    /// How much the answer asks for attention.
    pub level: Option<Level>,
}

/// One choice.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct OptionView {
    /// Stable id.
    pub option: String,
    /// What stands on the button.
    pub label: Message,
}
