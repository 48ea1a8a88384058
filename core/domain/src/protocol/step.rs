//! One threshold: a number, how a value is held against it, and what else it takes.

use std::cmp::Ordering;

use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::{Level, Status, Watch};
use crate::message::Message;

/// A number in thousandths, so that comparisons are exact. Read from 0 to a million, and from nothing that is no number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(try_from = "f64", into = "f64")]
#[cfg_attr(feature = "types", ts(as = "f64"))]
pub struct Milli(pub i64);

/// A number that no threshold can be.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{0} is not between 0 and 1000000")]
pub struct NoThreshold(f64);

/// How a value is held against a threshold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub enum Compare {
    /// At the value or past it.
    #[serde(rename = ">=")]
    AtLeast,
    /// Past the value.
    #[serde(rename = ">")]
    Over,
    /// Below the value.
    #[serde(rename = "<")]
    Under,
    /// At the value or below it.
    #[serde(rename = "<=")]
    AtMost,
}

/// One threshold.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Step {
    /// How much passing it asks for attention.
    pub level: Level,
    /// How a value is held against it.
    pub compare: Compare,
    /// The number, in the unit of its watch.
    pub value: Milli,
    /// Where it comes from.
    pub source: String,
    /// How well that was checked.
    pub status: Status,
    /// What the protocol says there, in short.
    pub words: String,
    /// Minutes between two readings that must both pass it; none where one reading is enough.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub again: Option<u32>,
    /// Where there are any, it is passed only with one of these signs, by the latest reading of each.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "types", ts(as = "Option<Vec<Sign>>", optional))]
    pub with: Vec<Sign>,
}

/// A sign that a threshold asks for beside its own value.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Sign {
    /// What is read.
    pub watch: Watch,
    /// How it is held against the value.
    pub compare: Compare,
    /// The number, in the unit of its watch.
    pub value: Milli,
}

impl Step {
    /// Whether the value is at or past this threshold, as its comparator says.
    #[must_use]
    pub fn passed_by(&self, value: Milli) -> bool {
        self.compare.holds(value, self.value)
    }

    /// Whether larger values pass it.
    #[must_use]
    pub fn is_upper(&self) -> bool {
        matches!(self.compare, Compare::AtLeast | Compare::Over)
    }

    /// What is wrong with it as a threshold of this watch, by the path of the part.
    pub(super) fn problems(&self, watch: Watch) -> Vec<(String, Message)> {
        let mut found = sourceless(&self.source);
        if self.again.is_some_and(|minutes| minutes == 0 || !watch.is_read()) {
            found.push(("again".to_owned(), Message::new("protocol-file-again")));
        }
        if !self.with.is_empty() && watch != Watch::BloodLoss {
            found.push(("with".to_owned(), Message::new("protocol-file-with")));
        }
        let unread = self.with.iter().enumerate().filter(|(_, sign)| !Watch::READ.contains(&sign.watch));
        found.extend(unread.map(|(k, _)| (format!("with[{k}].watch"), Message::new("protocol-file-sign"))));
        found
    }

    /// Where it lies on the way that values go past it: the nearer, the less.
    pub(super) fn distance(&self) -> i64 {
        if self.is_upper() { self.value.0 } else { -self.value.0 }
    }
}

/// Every number needs its source.
pub(super) fn sourceless(source: &str) -> Vec<(String, Message)> {
    let missing = source.trim().is_empty().then(|| ("source".to_owned(), Message::new("protocol-file-no-source")));
    missing.into_iter().collect()
}

impl Compare {
    /// Whether a value is past a limit.
    #[must_use]
    pub fn holds(self, value: Milli, limit: Milli) -> bool {
        matches!(
            (self, value.cmp(&limit)),
            (Self::AtLeast, Ordering::Equal | Ordering::Greater)
                | (Self::Over, Ordering::Greater)
                | (Self::Under, Ordering::Less)
                | (Self::AtMost, Ordering::Equal | Ordering::Less)
        )
    }

    /// The sign as printed.
    #[must_use]
    pub fn sign(self) -> &'static str {
        match self {
            Self::AtLeast => "≥",
            Self::Over => ">",
            Self::Under => "<",
            Self::AtMost => "≤",
        }
    }
}

impl TryFrom<f64> for Milli {
    type Error = NoThreshold;
    #[allow(clippy::cast_possible_truncation, reason = "a threshold is a small number")]
    fn try_from(value: f64) -> Result<Self, NoThreshold> {
        match (0.0..=1_000_000.0).contains(&value) {
            true => Ok(Self((value * 1000.0).round() as i64)),
            false => Err(NoThreshold(value)),
        }
    }
}

impl From<Milli> for f64 {
    #[allow(clippy::cast_precision_loss, reason = "thousandths of clinical numbers are far below 2^53")]
    fn from(value: Milli) -> Self {
        value.0 as Self / 1000.0
    }
}

impl From<u32> for Milli {
    fn from(value: u32) -> Self {
        Self(i64::from(value) * 1000)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_comparator_below_at_and_above() {
        let holds = |compare: Compare| [999, 1000, 1001].map(|value| compare.holds(Milli(value), Milli(1000)));
        assert_eq!(holds(Compare::AtLeast), [false, true, true]);
        assert_eq!(holds(Compare::Over), [false, false, true]);
        assert_eq!(holds(Compare::Under), [true, false, false]);
        assert_eq!(holds(Compare::AtMost), [true, true, false]);
    }
}
