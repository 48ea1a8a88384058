//! Time as a value: what a phone's clocks said, and how far apart two moments are.

use chrono::{DateTime, Datelike, FixedOffset, NaiveDate, NaiveDateTime, SecondsFormat};
use serde::{Deserialize, Serialize};

use crate::message::Message;

/// What the clocks of one device said at one moment. All four parts are read back to back, before anything slow.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Stamp {
    /// UTC, milliseconds since 1970.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub wall_ms: i64,
    /// Local time less UTC, minutes.
    pub offset_min: i32,
    /// IANA name of the time zone, where the system tells.
    pub zone: Option<String>,
    /// The clock that runs through suspend.
    pub boot: Option<Boot>,
}

/// Time on the clock that runs through suspend, from switching on to switching off. An entry has it as the session blinds it: with a
/// name of its own for the run, and counted from no more than an hour before the run was first seen.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Boot {
    /// Names this run of the device, from switching on to switching off.
    pub id: String,
    /// Milliseconds since the run began, or since a moment of it.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub since_ms: i64,
}

/// The last moment at which one run of this device's clock was seen. The device keeps it outside the chart, renews it while
/// a birth is open, and gives it to nobody.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Run {
    /// Names the run, as [`Boot::id`] does.
    pub boot: String,
    /// Milliseconds since boot.
    pub since_ms: i64,
    /// UTC, milliseconds since 1970, as the wall clock said then.
    pub wall_ms: i64,
}

/// When something happened.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "how", rename_all = "snake_case")]
pub enum Occurred {
    /// Marked on the device as it happened.
    Marked(Stamp),
    /// Typed afterwards.
    Typed {
        /// UTC, milliseconds since 1970.
        #[cfg_attr(feature = "types", ts(type = "number"))]
        wall_ms: i64,
        /// Local time less UTC, minutes.
        offset_min: i32,
        /// Whether the author knows or guesses it.
        precision: Precision,
    },
}

/// How well a typed time is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Precision {
    /// Read off a clock at the time.
    Exact,
    /// Reckoned afterwards.
    Estimated,
}

/// How well the distance between two moments is known, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Certainty {
    /// From one device's running clock.
    Measured,
    /// The device restarted in between, so it comes from the wall clock.
    AcrossRestart,
    /// The wall clock was set back in between, so only the least that it can be is known.
    AtLeast,
    /// At least one of the two was typed.
    Typed,
    /// From two phones' clocks, put right by how they were compared.
    Compared,
    /// From two phones' wall clocks, which were never compared.
    NotCompared,
}

/// The distance between two moments.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Elapsed {
    /// Milliseconds, negative when the second moment came first.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub ms: i64,
    /// How well it is known.
    pub certainty: Certainty,
    /// What the running clocks vouch for, with the sign of `ms`: it is this long or longer, whatever the wall clock did.
    #[cfg_attr(feature = "types", ts(type = "number | null"))]
    pub least_ms: Option<i64>,
    /// How far it may be off, either way, by the comparison of two phones' clocks; 0 where none took part. Milliseconds.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub error_ms: i64,
}

impl Stamp {
    /// The run of the clock that this moment stands on, seen now; `None` where the device tells of none.
    #[must_use]
    pub fn run(&self) -> Option<Run> {
        let Boot { id, since_ms } = self.boot.as_ref()?;
        Some(Run { boot: id.clone(), since_ms: *since_ms, wall_ms: self.wall_ms })
    }

    /// So many milliseconds before this moment, on the same run of the clock.
    #[must_use]
    pub fn earlier(&self, ms: i64) -> Self {
        let boot = self.boot.clone().map(|boot| Boot { since_ms: boot.since_ms.saturating_sub(ms), ..boot });
        Self { wall_ms: self.wall_ms.saturating_sub(ms), boot, ..self.clone() }
    }

    /// Hours, minutes and seconds of the local day, `03:12:40`.
    #[must_use]
    pub fn clock(&self) -> String {
        local(self.wall_ms, self.offset_min, "%H:%M:%S")
    }

    /// The local date, `2026-11-25`.
    #[must_use]
    pub fn date(&self) -> String {
        local(self.wall_ms, self.offset_min, "%Y-%m-%d")
    }

    /// The local date and time, `2026-11-25 03:12:40`.
    #[must_use]
    pub fn date_and_clock(&self) -> String {
        format!("{} {}", self.date(), self.clock())
    }

    /// The same in words.
    #[must_use]
    pub fn words(&self) -> Message {
        moment_words(&self.date(), self.clock())
    }

    /// The moment with its offset from UTC, as in [`rfc3339`].
    #[must_use]
    pub fn rfc3339(&self) -> String {
        rfc3339(self.wall_ms, self.offset_min)
    }
}

impl Occurred {
    /// UTC, milliseconds since 1970, as the clock then said.
    #[must_use]
    pub fn wall_ms(&self) -> i64 {
        match self {
            Self::Marked(stamp) => stamp.wall_ms,
            Self::Typed { wall_ms, .. } => *wall_ms,
        }
    }

    /// Local time less UTC, minutes.
    #[must_use]
    pub fn offset_min(&self) -> i32 {
        match self {
            Self::Marked(stamp) => stamp.offset_min,
            Self::Typed { offset_min, .. } => *offset_min,
        }
    }

    /// `03:12:40` for a marked time, `03:12` for a typed one: no more digits than are known.
    #[must_use]
    pub fn clock(&self) -> String {
        match self {
            Self::Marked(stamp) => stamp.clock(),
            Self::Typed { wall_ms, offset_min, .. } => local(*wall_ms, *offset_min, "%H:%M"),
        }
    }

    /// The local date, `2026-11-25`.
    #[must_use]
    pub fn date(&self) -> String {
        local(self.wall_ms(), self.offset_min(), "%Y-%m-%d")
    }

    /// Local date and time in words; no more digits than are known.
    #[must_use]
    pub fn words(&self) -> Message {
        moment_words(&self.date(), self.clock())
    }

    /// The moment with its offset from UTC, as in [`rfc3339`].
    #[must_use]
    pub fn rfc3339(&self) -> String {
        rfc3339(self.wall_ms(), self.offset_min())
    }

    /// The stamp of a marked time.
    pub(crate) fn stamp(&self) -> Option<&Stamp> {
        match self {
            Self::Marked(stamp) => Some(stamp),
            Self::Typed { .. } => None,
        }
    }
}

impl Elapsed {
    /// From one moment to another by these two alone: on the running clock where both stand on the same run of it, else on
    /// the wall clock. [`Chart::elapsed`](crate::chart::Chart::elapsed) knows more.
    #[must_use]
    pub fn between(from: &Occurred, to: &Occurred) -> Self {
        let (Some(a), Some(b)) = (from.stamp(), to.stamp()) else {
            return Self { ms: wall_between(from, to), certainty: Certainty::Typed, least_ms: None, error_ms: 0 };
        };
        match (&a.boot, &b.boot) {
            (Some(a), Some(b)) if a.id == b.id => {
                let ms = b.since_ms.saturating_sub(a.since_ms);
                Self { ms, certainty: Certainty::Measured, least_ms: Some(ms), error_ms: 0 }
            }
            _ => Self { ms: wall_between(from, to), certainty: Certainty::AcrossRestart, least_ms: None, error_ms: 0 },
        }
    }

    /// At least so many milliseconds.
    pub(crate) fn at_least(ms: i64) -> Self {
        Self { ms, certainty: Certainty::AtLeast, least_ms: Some(ms), error_ms: 0 }
    }

    /// The same distance, told from the other end.
    pub(crate) fn back(self) -> Self {
        Self { ms: self.ms.saturating_neg(), least_ms: self.least_ms.map(i64::saturating_neg), ..self }
    }

    /// The duration in words: "at least" where only that is known, and how far it may be off where that is a second or more.
    #[must_use]
    pub fn words(&self) -> Message {
        let id = match self.certainty {
            Certainty::AtLeast => "value-at-least",
            _ if self.error_ms >= 1_000 => {
                return Message::new("value-give-or-take").with("value", self.clock()).with("error", self.error());
            }
            _ => "value-text",
        };
        Message::new(id).with("value", self.clock())
    }

    /// How far it may be off, in words.
    #[must_use]
    pub fn error(&self) -> Message {
        give_or_take(self.error_ms)
    }

    /// Whole minutes of the duration in words: "at least" where only that is known.
    #[must_use]
    pub fn minutes(&self) -> Message {
        let id = if self.certainty == Certainty::AtLeast { "age-at-least" } else { "age-minutes" };
        let minutes = u32::try_from(self.ms.max(0) / 60_000).unwrap_or(u32::MAX);
        Message::new(id).with("minutes", minutes)
    }

    /// `m:ss` to 59:59, then `h:mm:ss`; a minus sign where the second moment came first.
    #[must_use]
    pub fn clock(&self) -> String {
        let seconds = self.ms.unsigned_abs() / 1000;
        let sign = if self.ms < 0 && seconds > 0 { "−" } else { "" };
        let (hours, minutes, seconds) = (seconds / 3600, seconds / 60 % 60, seconds % 60);
        if hours == 0 { format!("{sign}{minutes}:{seconds:02}") } else { format!("{sign}{hours}:{minutes:02}:{seconds:02}") }
    }
}

/// A span of time by its two greatest units.
#[must_use]
pub fn span(ms: i64) -> Message {
    let seconds = ms.unsigned_abs() / 1000;
    let (id, great, small) = match seconds {
        0..60 => return Message::new("span-seconds").with("seconds", seconds.to_string()),
        60..3600 => ("span-minutes", ("minutes", seconds / 60), ("seconds", seconds % 60)),
        _ => ("span-hours", ("hours", seconds / 3600), ("minutes", seconds / 60 % 60)),
    };
    Message::new(id).with(great.0, great.1.to_string()).with(small.0, small.1.to_string())
}

/// How far something may be off, in full seconds and never less than it is.
#[must_use]
pub fn give_or_take(ms: i64) -> Message {
    span(ms.saturating_abs().saturating_add(999))
}

/// A date such as `2026-11-25` in words; anything else as it stands.
#[must_use]
pub fn date_words(date: &str) -> Message {
    match date.parse::<NaiveDate>() {
        Ok(day) => Message::new("date").with("year", day.year().to_string()).with("month", day.month()).with("day", day.day()),
        Err(_) => Message::new("value-text").with("value", date),
    }
}

/// Whole years from one date to another, both such as `2026-11-25`; none where either is no date, or they run backwards.
#[must_use]
pub fn years(from: &str, to: &str) -> Option<u32> {
    let day = |text: &str| text.trim().parse::<NaiveDate>().ok();
    day(to)?.years_since(day(from)?)
}

pub(crate) fn moment_words(date: &str, clock: String) -> Message {
    Message::new("date-clock").with("date", date_words(date)).with("clock", clock)
}

fn wall_between(from: &Occurred, to: &Occurred) -> i64 {
    to.wall_ms().saturating_sub(from.wall_ms())
}

pub(crate) fn local(wall_ms: i64, offset_min: i32, form: &str) -> String {
    let offset = FixedOffset::east_opt(offset_min.saturating_mul(60));
    match (DateTime::from_timestamp_millis(wall_ms), offset) {
        (Some(utc), Some(offset)) => utc.with_timezone(&offset).format(form).to_string(),
        _ => "?".to_owned(),
    }
}

/// A moment in UTC as a calendar writes it, `20261125T021240Z`; `None` outside of the years that have four digits.
#[must_use]
pub fn calendar_utc(wall_ms: i64) -> Option<String> {
    let utc = DateTime::from_timestamp_millis(wall_ms).filter(|utc| (0..=9999).contains(&utc.year()))?;
    Some(utc.format("%Y%m%dT%H%M%SZ").to_string())
}

/// A moment as RFC 3339 writes it, such as `2026-11-25T03:12:00+01:00`, with as many places of a second as it has. In UTC where
/// the offset is more than 14 hours; a year that it cannot write becomes the first or last that it can.
#[must_use]
pub fn rfc3339(wall_ms: i64, offset_min: i32) -> String {
    let offset = offset_min.checked_mul(60).filter(|seconds| seconds.abs() <= 14 * 3600).and_then(FixedOffset::east_opt);
    let utc = DateTime::from_timestamp_millis(wall_ms).filter(|utc| (0..=10_000).contains(&utc.year()));
    let local = utc.map(|utc| match offset {
        Some(offset) => utc.with_timezone(&offset),
        None => utc.fixed_offset(),
    });
    match local {
        Some(local) if (1..=9999).contains(&local.year()) => local.to_rfc3339_opts(SecondsFormat::AutoSi, false),
        _ if wall_ms < 0 => "0001-01-01T00:00:00+00:00".to_owned(),
        _ => "9999-12-31T23:59:59+00:00".to_owned(),
    }
}

/// UTC milliseconds of a local date and time of day, `2026-11-25` and `03:12` or `03:12:40`; `None` if it is no time.
#[must_use]
pub fn parse_local(date: &str, clock: &str, offset_min: i32) -> Option<i64> {
    let text = format!("{} {}", date.trim(), clock.trim());
    let naive = NaiveDateTime::parse_from_str(&text, "%Y-%m-%d %H:%M:%S")
        .or_else(|_| NaiveDateTime::parse_from_str(&text, "%Y-%m-%d %H:%M"))
        .ok()?;
    naive.and_utc().timestamp_millis().checked_sub(i64::from(offset_min) * 60_000)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn marked(wall_ms: i64, boot: &str, since_ms: i64) -> Occurred {
        let boot = Some(Boot { id: boot.to_owned(), since_ms });
        Occurred::Marked(Stamp { wall_ms, offset_min: 60, zone: None, boot })
    }

    #[test]
    fn one_run_of_the_clock_ignores_the_wall() {
        let elapsed = Elapsed::between(&marked(0, "a", 5_000), &marked(-86_400_000, "a", 65_000));
        assert_eq!(elapsed, Elapsed { ms: 60_000, certainty: Certainty::Measured, least_ms: Some(60_000), error_ms: 0 });
    }

    #[test]
    fn across_a_restart_the_wall_counts_and_says_so() {
        let elapsed = Elapsed::between(&marked(1_000, "a", 900_000), &marked(301_000, "b", 20_000));
        assert_eq!(elapsed, Elapsed { ms: 300_000, certainty: Certainty::AcrossRestart, least_ms: None, error_ms: 0 });
    }

    #[test]
    fn a_typed_time_makes_the_distance_typed() {
        let typed = Occurred::Typed { wall_ms: 61_000, offset_min: 0, precision: Precision::Estimated };
        let elapsed = Elapsed::between(&marked(1_000, "a", 0), &typed);
        assert_eq!(elapsed, Elapsed { ms: 60_000, certainty: Certainty::Typed, least_ms: None, error_ms: 0 });
    }

    #[test]
    fn durations_are_written_as_a_midwife_reads_them() {
        let text = |ms| Elapsed { ms, certainty: Certainty::Measured, least_ms: None, error_ms: 0 }.clock();
        assert_eq!(text(0), "0:00");
        assert_eq!(text(59_999), "0:59");
        assert_eq!(text(3_599_000), "59:59");
        assert_eq!(text(3_600_000), "1:00:00");
        assert_eq!(text(-61_000), "−1:01");
        assert_eq!(text(-400), "0:00");
    }

    #[test]
    fn a_moment_is_written_with_its_offset_whatever_the_clock_said() {
        let ms = parse_local("2026-02-07", "03:12", 60).unwrap();
        assert_eq!(rfc3339(ms, 60), "2026-02-07T03:12:00+01:00");
        assert_eq!(rfc3339(ms + 7, -330), "2026-02-06T20:42:00.007-05:30");
        for offset in [i32::MIN, i32::MAX, 15 * 60] {
            assert_eq!(rfc3339(ms, offset), "2026-02-07T02:12:00+00:00");
        }
        for (ms, told) in [(i64::MIN, "0001-01-01T00:00:00+00:00"), (i64::MAX, "9999-12-31T23:59:59+00:00")] {
            assert_eq!(rfc3339(ms, 840), told);
        }
    }

    #[test]
    fn a_calendar_has_its_own_form_of_a_moment() {
        assert_eq!(calendar_utc(1_795_570_800_000).as_deref(), Some("20261125T014000Z"));
        assert_eq!(calendar_utc(i64::MAX), None);
    }

    #[test]
    fn years_are_full_on_the_day_and_not_the_day_before() {
        assert_eq!(years("1996-11-20", "2026-11-19"), Some(29));
        assert_eq!(years("1996-11-20", "2026-11-20"), Some(30));
        assert_eq!(years("1996-02-29", "2026-02-28"), Some(29));
        assert_eq!((years("20 Nov 1996", "2026-11-20"), years("2027-01-01", "2026-11-20")), (None, None));
    }

    #[test]
    fn a_local_time_is_read_with_its_offset() {
        let ms = parse_local("2026-02-07", "03:12", 60).unwrap();
        let typed = Occurred::Typed { wall_ms: ms, offset_min: 60, precision: Precision::Exact };
        assert_eq!((typed.date().as_str(), typed.clock().as_str()), ("2026-02-07", "03:12"));
        assert_eq!(parse_local("2026-02-30", "03:12", 0), None);
        assert_eq!(parse_local("2026-02-07", "24:00", 0), None);
    }
}
