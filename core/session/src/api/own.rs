//! The practice's own protocol as the page draws it.

use secundine_domain::message::Message;
use secundine_domain::protocol::{FileError, Slot, State};
use serde::Serialize;

/// How far the practice's own protocol has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct OwnState {
    /// Fields that are neither set nor off.
    pub open: u32,
    /// Fields in all.
    pub count: u32,
}

/// The practice's own protocol, field by field.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct OwnView {
    /// Name as printed; empty while it has none.
    pub title: String,
    /// What it was built from; empty while that is not said.
    pub edition: String,
    /// Day on which its numbers were last held against their sources; empty while that is not said.
    pub checked: String,
    /// How far it has come; the three above count too.
    pub state: OwnState,
    /// Its fields.
    pub groups: Vec<OwnGroup>,
    /// What does not fit together, though all of it is set.
    pub problems: Vec<Message>,
    /// When what was finished last was finished, `2026-11-26 05:12:40`; none until it was finished once.
    pub holds_since: Option<String>,
    /// Whether what holds is what stands here.
    pub holds_as_it_stands: bool,
    /// Whether new births begin with what was finished last: the practice has chosen it.
    pub in_use: bool,
    /// Every change, latest first.
    pub log: Vec<OwnSave>,
}

/// Fields under a heading of their own.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct OwnGroup {
    /// Stable id.
    pub id: String,
    /// The heading.
    pub name: Message,
    /// How many of its fields are open.
    pub open: u32,
    /// Its fields, in order.
    pub fields: Vec<OwnField>,
}

/// A field of the own protocol.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct OwnField {
    /// Its place.
    pub slot: Slot,
    /// Its name.
    pub name: Message,
    /// What stands in it; none while it is open.
    pub state: Option<State>,
    /// The same in words.
    pub words: Message,
    /// Whether the program works without it.
    pub can_be_off: bool,
    /// UCUM code of its unit.
    pub unit: String,
    /// Figures after the point.
    pub decimals: u32,
    /// By how much one touch changes it, in the last of these figures.
    pub by: u32,
    /// What a number of the practice's own begins from: with neither source nor words.
    pub blank: State,
    /// What the published protocols have here, as it would be taken over.
    pub offers: Vec<OwnOffer>,
}

/// What a published protocol has in a field.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct OwnOffer {
    /// Whose it is.
    pub title: String,
    /// Its number in words.
    pub words: Message,
    /// Where it comes from there, and how well that was checked.
    pub whence: Option<Message>,
    /// What is put into the field.
    pub state: State,
}

/// Changes that were made at once.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct OwnSave {
    /// Local date and time.
    pub at: String,
    /// Who made them.
    pub author: String,
    /// What was changed.
    pub changes: Vec<OwnLine>,
}

/// One change.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct OwnLine {
    /// What was changed.
    pub field: Message,
    /// What stood there.
    pub old: Message,
    /// What stands there since.
    pub new: Message,
}

/// What came of a protocol file.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ImportView {
    /// The own protocol as it is now; none where the file was refused and nothing changed.
    pub own: Option<OwnView>,
    /// What is wrong with the file, in order of lines.
    pub errors: Vec<FileError>,
    /// How many more there are.
    pub more: u32,
    /// How many things were changed.
    pub changed: u32,
}
