//! For how long the practice means to keep its records. It is told of each birth past it, and nothing is erased by it.

use secundine_domain::chart::Chart;
use secundine_domain::entry::BirthId;
use secundine_domain::fact::Fact;
use secundine_domain::quantity::Years;
use secundine_domain::time::{Stamp, years};

use super::{Draft, OpenPractice, practice_entries};
use crate::api::ApiError;

impl OpenPractice {
    /// Years from a birth, as the practice set them last; none where it set no term.
    pub(crate) fn term(&self) -> Result<Option<Years>, ApiError> {
        let set = practice_entries(&self.store)?.into_iter().rev().find_map(|entry| match entry.fact {
            Fact::TermSet { years } => Some(years),
            _ => None,
        });
        Ok(set.flatten())
    }

    /// Sets it; gives what holds now.
    pub(crate) fn set_term(&mut self, years: Option<Years>, now: &Stamp) -> Result<Option<Years>, ApiError> {
        self.write(Draft::now(BirthId::PRACTICE, Fact::TermSet { years }, now))?;
        self.term()
    }
}

/// Whether a birth is older than this term; from the first baby's birth, or where there is none from its first entry.
pub(crate) fn past(term: Option<Years>, chart: &Chart, now: &Stamp) -> bool {
    let first = || chart.lines.first().map(|line| line.first.occurred.date());
    let from = chart.first_birth().map(|mark| mark.at.date()).or_else(first);
    let age = from.and_then(|from| years(&from, &now.date()));
    term.is_some_and(|term| age.is_some_and(|age| age >= term.get()))
}
