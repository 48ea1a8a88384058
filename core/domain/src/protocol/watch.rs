//! What is watched, in which unit, and how its values read.

use serde::{Deserialize, Serialize};

use super::Milli;
use crate::message::{Arg, Message, decimal};

/// What is watched against limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Watch {
    /// Minutes from the birth of the last baby, active care.
    ThirdStageActive,
    /// Minutes from the birth of the last baby, physiological care.
    ThirdStagePhysiological,
    /// Blood lost, mL.
    BloodLoss,
    /// Pulse divided by systolic pressure.
    ShockIndex,
    /// Mother's pulse, beats a minute.
    Pulse,
    /// Mother's systolic pressure, mmHg.
    Systolic,
    /// Mother's diastolic pressure, mmHg.
    Diastolic,
    /// Mother's breaths a minute.
    Respirations,
    /// Mother's temperature, °C.
    Temperature,
    /// Mother's oxygen saturation, %.
    Saturation,
    /// Minutes from the birth of the last baby in which tranexamic acid has been studied, once bleeding is an issue.
    TranexamicWindow,
    /// Hours from the first birth in which anti-D is given to a mother without Rh factor D.
    AntiDWindow,
    /// Hours from the birth of the last baby until she passes urine.
    TimeToUrine,
    /// Minutes from its birth until a baby is fed.
    FirstFeed,
    /// A baby's temperature, °C.
    NewbornTemperature,
    /// A baby's heart beats a minute.
    NewbornHeartRate,
    /// A baby's breaths a minute.
    NewbornRespirations,
    /// Of the four questions whether all of a placenta is here, how many were answered with no or could not be told.
    Completeness,
}

impl Watch {
    /// Those that are read off the mother at one look, in the order in which they are told.
    pub const READ: [Self; 7] =
        [Self::ShockIndex, Self::Pulse, Self::Systolic, Self::Diastolic, Self::Respirations, Self::Temperature, Self::Saturation];

    /// Those that are read off a baby at one look, in the order in which they are told.
    pub const NEWBORN: [Self; 3] = [Self::NewbornTemperature, Self::NewbornHeartRate, Self::NewbornRespirations];

    /// Those that run from a birth until something is recorded.
    pub const WINDOWS: [Self; 4] = [Self::TranexamicWindow, Self::TimeToUrine, Self::FirstFeed, Self::AntiDWindow];

    /// UCUM code of the unit.
    #[must_use]
    pub fn unit(self) -> &'static str {
        match self {
            Self::ThirdStageActive | Self::ThirdStagePhysiological | Self::TranexamicWindow | Self::FirstFeed => "min",
            Self::AntiDWindow | Self::TimeToUrine => "h",
            Self::BloodLoss => "mL",
            Self::ShockIndex => "1",
            Self::Pulse | Self::Respirations | Self::NewbornHeartRate | Self::NewbornRespirations => "/min",
            Self::Systolic | Self::Diastolic => "mm[Hg]",
            Self::Temperature | Self::NewbornTemperature => "Cel",
            Self::Saturation => "%",
            Self::Completeness => "{question}",
        }
    }

    /// The catalogue's id of its name; that of a baby takes its number as `baby`, and as `of` how many there are.
    #[must_use]
    pub fn name(self) -> Message {
        Message::new(match self {
            Self::ThirdStageActive | Self::ThirdStagePhysiological => "watch-third-stage",
            Self::BloodLoss => "watch-blood-loss",
            Self::ShockIndex => "watch-shock-index",
            Self::Pulse => "watch-pulse",
            Self::Systolic => "watch-systolic",
            Self::Diastolic => "watch-diastolic",
            Self::Respirations => "watch-respirations",
            Self::Temperature => "watch-temperature",
            Self::Saturation => "watch-saturation",
            Self::TranexamicWindow => "watch-tranexamic-window",
            Self::AntiDWindow => "watch-anti-d-window",
            Self::TimeToUrine => "watch-time-to-urine",
            Self::FirstFeed => "watch-first-feed",
            Self::NewbornTemperature => "watch-newborn-temperature",
            Self::NewbornHeartRate => "watch-newborn-heart-rate",
            Self::NewbornRespirations => "watch-newborn-respirations",
            Self::Completeness => "watch-completeness",
        })
    }

    /// Whether it is read at a look, off the mother or a baby, so that it can be read twice.
    #[must_use]
    pub fn is_read(self) -> bool {
        Self::READ.contains(&self) || Self::NEWBORN.contains(&self)
    }

    /// Its name where both kinds of care stand together, and no baby is meant by its number.
    #[must_use]
    pub fn heading(self) -> Message {
        match self {
            Self::ThirdStageActive => Message::new("watch-third-stage-active"),
            Self::ThirdStagePhysiological => Message::new("watch-third-stage-physiological"),
            baby if Self::NEWBORN.contains(&baby) => baby.name().with("baby", 1_u32).with("of", 1_u32),
            other => other.name(),
        }
    }

    /// Milliseconds in its unit, for a watch of time.
    #[must_use]
    pub fn unit_ms(self) -> i64 {
        match self.unit() {
            "h" => 3_600_000,
            _ => 60_000,
        }
    }

    /// A value of this watch in words, with its unit.
    #[must_use]
    pub fn value_words(self, value: Milli) -> Message {
        Message::new(match self {
            Self::ThirdStageActive | Self::ThirdStagePhysiological | Self::TranexamicWindow | Self::FirstFeed => "value-minutes",
            Self::AntiDWindow | Self::TimeToUrine => "value-hours",
            Self::BloodLoss => "value-millilitres",
            Self::ShockIndex => "value-ratio",
            Self::Pulse | Self::Respirations | Self::NewbornHeartRate | Self::NewbornRespirations => "value-per-minute",
            Self::Systolic | Self::Diastolic => "value-mmhg",
            Self::Temperature | Self::NewbornTemperature => "value-celsius",
            Self::Saturation => "value-percent",
            Self::Completeness => "value-questions",
        })
        .with("value", if self == Self::ShockIndex { Arg::Message(hundredths(value)) } else { Arg::Number(f64::from(value)) })
    }
}

/// Two digits, cut and not rounded: a value short of a threshold never reads as having reached it.
fn hundredths(value: Milli) -> Message {
    decimal(value.0 / 1000, &format!("{:02}", value.0 % 1000 / 10))
}
