//! Words are kept in one catalogue (`core/messages`); the core speaks in message ids and what fills them.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

/// A sentence of the catalogue: its id, and the values that fill it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Message {
    /// Id in the catalogue, kebab-case.
    pub id: String,
    /// Named values; a value may itself be a message.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    #[cfg_attr(feature = "types", ts(as = "Option<BTreeMap<String, Arg>>", optional))]
    pub args: BTreeMap<String, Arg>,
}

/// A value inside a [`Message`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(untagged)]
pub enum Arg {
    /// A number, written by the rules of the reader's language.
    Number(f64),
    /// Text as it stands.
    Text(String),
    /// A message, put into words before it is used.
    Message(Message),
}

impl Message {
    /// A message without values.
    pub fn new(id: impl Into<String>) -> Self {
        Self { id: id.into(), args: BTreeMap::new() }
    }

    /// The same message with one more value.
    #[must_use]
    pub fn with(mut self, name: &str, value: impl Into<Arg>) -> Self {
        self.args.insert(name.to_owned(), value.into());
        self
    }
}

/// A figure with all its places, `0.90`, by the sign of the reader's language: a number would lose those that are nought.
#[must_use]
pub fn decimal(whole: impl ToString, places: &str) -> Message {
    Message::new("decimal").with("whole", whole.to_string()).with("places", places)
}

/// The same of a number, rounded to so many places.
pub(crate) fn rounded(value: f64, places: usize) -> Message {
    let text = format!("{value:.places$}");
    let (whole, places) = text.split_once('.').unwrap_or((&text, ""));
    decimal(whole, places)
}

impl From<f64> for Arg {
    fn from(value: f64) -> Self {
        Self::Number(value)
    }
}

impl From<u32> for Arg {
    fn from(value: u32) -> Self {
        Self::Number(f64::from(value))
    }
}

impl From<&str> for Arg {
    fn from(value: &str) -> Self {
        Self::Text(value.to_owned())
    }
}

impl From<String> for Arg {
    fn from(value: String) -> Self {
        Self::Text(value)
    }
}

impl From<Message> for Arg {
    fn from(value: Message) -> Self {
        Self::Message(value)
    }
}
