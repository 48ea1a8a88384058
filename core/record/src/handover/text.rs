//! The handover as text, for a code that any telephone reads.

use std::fmt::Write as _;

use secundine_domain::message::Message;

use super::{Handover, Item, Part, when_made};
use crate::words::Words;

/// The most bytes of UTF-8 that a code holds. A code of more modules is hard to read off a telephone: at error level M this is
/// version 19, 93 modules.
pub const CODE_MOST: usize = 600;

/// The longest item that goes into a code, bytes. Our own choice: a third of the whole.
const ONE_MOST: usize = 200;

/// The text of a code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CodeText {
    /// At most [`CODE_MOST`] bytes.
    pub text: String,
    /// What is not in it, as it would stand there.
    pub left_out: Vec<String>,
}

impl Handover {
    /// The whole as text, whatever its length.
    #[must_use]
    pub fn text(&self, words: &Words) -> String {
        let mut text = words.say(&Message::new("handover-code-head").with("when", when_made(self)));
        if self.rehearsal {
            text.push('\n');
            text.push_str(&words.plain("record-rehearsal"));
        }
        for part in Part::ALL {
            let lines: Vec<String> = self.groups(part).map(|group| line(words, group)).collect();
            if !lines.is_empty() {
                // The letter alone: the four are known by it.
                let letter = words.plain(part.name()).chars().next().unwrap_or('-');
                let _ = write!(text, "\n{letter}\n{}", lines.join("\n"));
            }
        }
        text
    }

    /// As much of it as a code holds: whole items, those that matter most, and at the end that there is more.
    #[must_use]
    pub fn code_text(&self, words: &Words) -> CodeText {
        let fits = |kept: &Self| {
            let mut text = kept.text(words);
            if kept.items.len() < self.items.len() {
                let _ = write!(text, "\n{}", words.plain("handover-more"));
            }
            (text.len() <= CODE_MOST).then_some(text)
        };
        let Some((kept, text)) = self.fitted(words, ONE_MOST, fits) else {
            return CodeText { text: words.plain("handover-more"), left_out: self.told(words) };
        };
        let mut kept: Vec<&Item> = kept.items.iter().collect();
        let left = self.items.iter().filter(|item| {
            let place = kept.iter().position(|other| other == item);
            place.map(|place| kept.remove(place)).is_none()
        });
        CodeText { text, left_out: left.map(|item| told(words, item)).collect() }
    }

    fn told(&self, words: &Words) -> Vec<String> {
        self.items.iter().map(|item| told(words, item)).collect()
    }
}

/// What stands together, on one line under its name.
fn line(words: &Words, group: &[Item]) -> String {
    let name = group.first().map(|item| words.say(&item.label)).unwrap_or_default();
    let said: Vec<String> = group.iter().map(|item| one_line(&item.line(words))).collect();
    format!("{}: {}", one_line(&name), said.join("; "))
}

fn told(words: &Words, item: &Item) -> String {
    line(words, std::slice::from_ref(item))
}

/// Line breaks and other signs that cannot be seen would take the text apart.
fn one_line(text: &str) -> String {
    text.split(char::is_control).flat_map(str::split_whitespace).collect::<Vec<_>>().join(" ")
}
