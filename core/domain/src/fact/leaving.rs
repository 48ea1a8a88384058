//! What is seen to before leaving, and how the family is seen next.

use chrono::{NaiveDate, NaiveTime};
use serde::{Deserialize, Serialize};

use super::describe::all_of;
use crate::message::{Arg, Message};
use crate::time::{date_words, moment_words};

/// Something that is seen to before leaving and that no other entry tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum LeavingStep {
    /// The family was told which signs to call for.
    WarningSignsTold,
    /// A second adult stays with the mother.
    AdultStays,
}

impl LeavingStep {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::WarningSignsTold, Self::AdultStays];
}

/// When and how the family is seen next, and whom they call until then.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct NextContact {
    /// When, as written or said, such as tomorrow at 10.
    pub when: String,
    /// Whom they call until then.
    pub call: String,
    /// The local day, `2026-11-27`, or day and time, `2026-11-27T10:00`, for a calendar.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub at: Option<String>,
}

impl NextContact {
    /// The day, and the time of day where one is set; none where nothing of that is written, or it is no such thing.
    #[must_use]
    pub fn moment(&self) -> Option<(NaiveDate, Option<NaiveTime>)> {
        let at = self.at.as_deref()?;
        let (day, time) = at.split_once('T').map_or((at, None), |(day, time)| (day, Some(time)));
        let time = time.map(|time| NaiveTime::parse_from_str(time, "%H:%M")).transpose().ok()?;
        Some((NaiveDate::parse_from_str(day, "%Y-%m-%d").ok()?, time))
    }

    /// When and how, in words; none where nothing of it is written.
    #[must_use]
    pub fn words(&self) -> Option<Message> {
        let moment = self.moment().map(|(day, time)| match time {
            Some(time) => moment_words(&day.to_string(), time.format("%H:%M").to_string()),
            None => date_words(&day.to_string()),
        });
        let when = Some(self.when.as_str()).filter(|when| !when.trim().is_empty());
        let text: Arg = match (moment, when) {
            (None, when) => when?.into(),
            (Some(moment), None) => moment.into(),
            (Some(moment), Some(when)) => all_of([moment, Message::new("value-text").with("value", when)]).into(),
        };
        Some(Message::new("part-next-contact").with("text", text))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_next_contact_has_a_day_or_a_day_and_a_time_or_neither() {
        let moment = |at: &str| NextContact { at: Some(at.to_owned()), ..NextContact::default() }.moment();
        let day = NaiveDate::from_ymd_opt(2026, 11, 27).unwrap();
        assert_eq!(moment("2026-11-27"), Some((day, None)));
        assert_eq!(moment("2026-11-27T10:00"), Some((day, NaiveTime::from_hms_opt(10, 0, 0))));
        for none in ["", "tomorrow", "2026-02-30", "2026-11-27T", "2026-11-27T24:00", "2026-11-27 10:00"] {
            assert_eq!(moment(none), None, "{none}");
        }
    }
}
