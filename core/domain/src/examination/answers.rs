//! What was found at one placenta, and whether all of it is here.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::Examination;
use crate::entry::EntryId;
use crate::fact::{Answer, BabyNo, Place};
use crate::time::Occurred;

/// An item as it is asked: one of the cord is asked of each cord of a placenta.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Asked {
    /// Id of the item.
    pub item: String,
    /// Whose cord, where one disc fed several babies.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub cord: Option<BabyNo>,
}

/// An answer in force.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Given {
    /// What was found.
    pub answer: Answer,
    /// The entry that it rests on.
    pub entry: EntryId,
    /// When it was found.
    pub at: Occurred,
}

/// What was found for one placenta.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Examined {
    /// The answers.
    pub given: BTreeMap<Asked, Given>,
    /// When the last answer was written.
    pub last: Option<Occurred>,
}

/// Whether all of it is here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Completeness {
    /// Each of the questions that bear on it was answered without doubt.
    NoDoubtRecorded,
    /// These items were answered with no, or could not be told.
    Doubt(Vec<String>),
    /// These items are not answered yet; none so far raises a doubt.
    NotRecorded(Vec<String>),
}

impl Asked {
    /// An item about the placenta as a whole, or about its only cord.
    pub fn of(item: impl Into<String>) -> Self {
        Self { item: item.into(), cord: None }
    }

    /// An item about this cord.
    pub fn cord(item: impl Into<String>, cord: Option<BabyNo>) -> Self {
        Self { item: item.into(), cord }
    }
}

impl Examined {
    /// The answer to an item about the whole, or about the only cord.
    #[must_use]
    pub fn get(&self, item: &str) -> Option<&Given> {
        self.given.get(&Asked::of(item))
    }

    /// The answer to an item of a cord.
    #[must_use]
    pub fn at(&self, item: &str, cord: Option<BabyNo>) -> Option<&Given> {
        self.given.get(&Asked::cord(item, cord))
    }

    /// Whether an item was answered with this choice, among others.
    #[must_use]
    pub fn says(&self, item: &str, cord: Option<BabyNo>, option: &str) -> bool {
        self.at(item, cord).is_some_and(|given| given.answer.options().any(|chosen| chosen == option))
    }

    /// The number that an item comes to, in its unit.
    #[must_use]
    pub fn measure(&self, item: &str, cord: Option<BabyNo>) -> Option<u32> {
        self.at(item, cord)?.answer.measure()
    }

    /// The points that were set for an item; none where it was not answered so.
    #[must_use]
    pub fn places(&self, item: &str, cord: Option<BabyNo>) -> &[Place] {
        match self.at(item, cord).map(|given| &given.answer) {
            Some(Answer::Places { places }) => places,
            _ => &[],
        }
    }

    /// The entries that answers rest on.
    #[must_use]
    pub fn entries(&self, items: &[String]) -> Vec<EntryId> {
        items.iter().filter_map(|item| self.get(item)).map(|given| given.entry).collect()
    }

    /// Whether all of the placenta and membranes is here, as far as the answers tell. Any doubt outweighs what is missing.
    #[must_use]
    pub fn completeness(&self) -> Completeness {
        let (mut doubt, mut missing) = (Vec::new(), Vec::new());
        for item in Examination::standard().items.iter().filter(|item| !item.whole.is_empty()) {
            match self.get(&item.id).map(|given| &given.answer) {
                None => missing.push(item.id.clone()),
                Some(Answer::Choice { option }) if item.whole.contains(option) => {}
                Some(_) => doubt.push(item.id.clone()),
            }
        }
        match (doubt.is_empty(), missing.is_empty()) {
            (false, _) => Completeness::Doubt(doubt),
            (true, false) => Completeness::NotRecorded(missing),
            (true, true) => Completeness::NoDoubtRecorded,
        }
    }
}
