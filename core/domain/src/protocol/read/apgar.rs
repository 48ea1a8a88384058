//! Reads when a baby is scored by Apgar.

use toml::de::DeValue;

use super::{Leaf, Part, Reader};
use crate::message::Message;
use crate::protocol::{ApgarAgain, ApgarTimes};

impl Reader<'_> {
    pub(super) fn apgar(&mut self, top: &Part) -> Option<ApgarTimes> {
        let part = self.table(top, "apgar")?;
        self.only::<ApgarTimes>(&part);
        let (minutes, source, status) = (self.numbers(&part, "minutes"), self.get(&part, "source"), self.get(&part, "status"));
        let again = if part.table.contains_key("again") { self.apgar_again(&part).map(Some) } else { Some(None) };
        let times = ApgarTimes { minutes: minutes?, source: source?, status: status?, again: again? };
        self.all_wrong(&part, times.problems());
        Some(times)
    }

    fn apgar_again(&mut self, part: &Part) -> Option<ApgarAgain> {
        let part = self.table(part, "again")?;
        self.only::<ApgarAgain>(&part);
        let (after, under) = (self.get(&part, "after"), self.get(&part, "under"));
        let (every, until) = (self.get(&part, "every"), self.get(&part, "until"));
        let (source, status, words) = (self.get(&part, "source"), self.get(&part, "status"), self.get(&part, "words"));
        let (source, status, words) = (source?, status?, words?);
        Some(ApgarAgain { after: after?, under: under?, every: every?, until: until?, source, status, words })
    }

    /// A list of whole numbers.
    fn numbers(&mut self, part: &Part, key: &str) -> Option<Vec<u32>> {
        let DeValue::Array(list) = self.asked(part, key)? else {
            self.wrong(&part.at(key), Message::new("protocol-file-list"));
            return None;
        };
        let mut numbers = Some(Vec::new());
        for (i, value) in list.iter().enumerate() {
            let read = u32::read(value.get_ref());
            if read.is_none() {
                self.wrong(&format!("{}[{i}]", part.at(key)), u32::expected());
            }
            numbers = numbers.zip(read).map(|(numbers, read)| numbers.into_iter().chain([read]).collect());
        }
        numbers
    }
}
