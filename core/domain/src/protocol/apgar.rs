//! When a baby is scored by Apgar, and when it is scored again.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::Status;

/// Minutes after its birth at which a baby is scored.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct ApgarTimes {
    /// Minutes, rising.
    pub minutes: Vec<u32>,
    /// Where they come from.
    pub source: String,
    /// How well that was checked.
    pub status: Status,
    /// After a low score; none where the protocol does not score again.
    #[serde(default)]
    pub again: Option<ApgarAgain>,
}

/// Further scores after a low one.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct ApgarAgain {
    /// Minute of the score that decides; one of the minutes above.
    pub after: u32,
    /// A score under this is low, 1 to 10.
    pub under: u32,
    /// Minutes between two further scores.
    pub every: u32,
    /// Minutes after the birth at which the last of them falls.
    pub until: u32,
    /// Where it comes from.
    pub source: String,
    /// How well that was checked.
    pub status: Status,
    /// What the protocol says there, in short.
    pub words: String,
}

impl ApgarAgain {
    /// The minutes of the further scores, rising.
    pub fn minutes(&self) -> impl Iterator<Item = u32> {
        let step = usize::try_from(self.every.max(1)).unwrap_or(usize::MAX);
        (self.after.saturating_add(self.every)..=self.until).step_by(step)
    }
}

impl ApgarTimes {
    /// What does not fit, as path below `apgar` and problem.
    pub(super) fn wrong(&self) -> Option<(String, &'static str)> {
        // No minute comes before the first.
        let before = std::iter::once(&0).chain(&self.minutes);
        if let Some(i) = self.minutes.iter().zip(before).position(|(minute, before)| minute <= before) {
            return Some((format!("minutes[{i}]"), "must be at least 1, and rise"));
        }
        let again = self.again.as_ref()?;
        let problem = match again {
            ApgarAgain { after, .. } if !self.minutes.contains(after) => ("after", "must be one of the minutes"),
            ApgarAgain { under: 0 | 11.., .. } => ("under", "must be 1 to 10"),
            ApgarAgain { every: 0, .. } => ("every", "must be at least 1 minute"),
            ApgarAgain { until: 1_441.., .. } => ("until", "must be a day at most"),
            again if again.minutes().next().is_none() => ("until", "must not come before the first further score"),
            _ => return None,
        };
        Some((format!("again.{}", problem.0), problem.1))
    }
}
