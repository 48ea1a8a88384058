//! When a baby is scored by Apgar, and when it is scored again.

use serde::{Deserialize, Serialize};

use super::Status;
use super::step::sourceless;
use crate::message::Message;

/// Minutes after its birth at which a baby is scored.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct ApgarTimes {
    /// Minutes, rising.
    pub minutes: Vec<u32>,
    /// Where they come from.
    pub source: String,
    /// How well that was checked.
    pub status: Status,
    /// After a low score; none where the protocol does not score again.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub again: Option<ApgarAgain>,
}

/// Further scores after a low one.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
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
    /// What is wrong with it, by the path inside.
    pub(super) fn problems(&self) -> Vec<(String, Message)> {
        let wrong = |path: String, id: &str| (path, Message::new(id));
        let mut found = sourceless(&self.source);
        // No minute comes before the first.
        let before = std::iter::once(&0).chain(&self.minutes);
        let place = self.minutes.iter().zip(before).position(|(minute, before)| minute <= before);
        found.extend(place.map(|i| wrong(format!("minutes[{i}]"), "protocol-file-apgar-rise")));
        let Some(again) = &self.again else { return found };
        found.extend(sourceless(&again.source).into_iter().map(|(path, problem)| (format!("again.{path}"), problem)));
        let problem = match again {
            ApgarAgain { after, .. } if !self.minutes.contains(after) => Some(("after", "protocol-file-apgar-after")),
            ApgarAgain { under: 0 | 11.., .. } => Some(("under", "protocol-file-apgar-under")),
            ApgarAgain { every: 0, .. } => Some(("every", "protocol-file-every")),
            ApgarAgain { until: 1_441.., .. } => Some(("until", "protocol-file-apgar-day")),
            again if again.minutes().next().is_none() => Some(("until", "protocol-file-apgar-until")),
            _ => None,
        };
        found.extend(problem.map(|(key, id)| wrong(format!("again.{key}"), id)));
        found
    }

    /// The minutes and what follows a low score, in words.
    #[must_use]
    pub fn words(&self) -> Message {
        let minutes: Vec<String> = self.minutes.iter().map(u32::to_string).collect();
        let at = Message::new("state-apgar").with("minutes", minutes.join(", "));
        match &self.again {
            None => at,
            Some(again) => Message::new("state-apgar-again")
                .with("at", at)
                .with("under", again.under)
                .with("every", again.every)
                .with("until", again.until),
        }
    }
}
