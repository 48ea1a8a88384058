//! What is seen of a baby.

use serde::{Deserialize, Serialize};

use super::BabyNo;
use crate::quantity::{ApgarPart, BirthWeight, HeartRate, Length, Minutes, RespiratoryRate, Temperature};

/// The five parts of the Apgar score, each 0 to 2, picked by the midwife and never worked out by the tool.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Apgar {
    /// Which baby.
    pub baby: BabyNo,
    /// Minutes after the birth.
    pub minute: Minutes,
    /// Colour.
    pub colour: ApgarPart,
    /// Heart rate.
    pub heart_rate: ApgarPart,
    /// Reflex.
    pub reflex: ApgarPart,
    /// Tone.
    pub tone: ApgarPart,
    /// Breathing.
    pub breathing: ApgarPart,
}

impl Apgar {
    /// The sum of the five parts, 0 to 10.
    #[must_use]
    pub fn total(&self) -> u32 {
        [self.colour, self.heart_rate, self.reflex, self.tone, self.breathing].iter().map(|part| part.get()).sum()
    }
}

/// A look at a baby, with its measures; what was not looked at is absent.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct NewbornMeasures {
    /// Which baby.
    pub baby: BabyNo,
    /// Weight, g.
    #[serde(default)]
    pub weight: Option<BirthWeight>,
    /// Length from crown to heel, mm.
    #[serde(default)]
    pub length: Option<Length>,
    /// Head circumference, mm.
    #[serde(default)]
    pub head: Option<Length>,
    /// Temperature, tenths of a degree Celsius.
    #[serde(default)]
    pub temperature: Option<Temperature>,
    /// Sex, as seen.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub sex: Option<Sex>,
    /// Heart rate, beats a minute.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub heart_rate: Option<HeartRate>,
    /// Breaths a minute.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub respirations: Option<RespiratoryRate>,
    /// How it breathes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub breathing: Option<Breathing>,
}

impl NewbornMeasures {
    /// A look at which nothing was seen.
    #[must_use]
    pub fn nothing(baby: BabyNo) -> Self {
        Self {
            baby,
            weight: None,
            length: None,
            head: None,
            temperature: None,
            sex: None,
            heart_rate: None,
            respirations: None,
            breathing: None,
        }
    }
}

/// Sex, as seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Sex {
    /// Female.
    Female,
    /// Male.
    Male,
    /// Not clear.
    Unclear,
}

/// How a baby breathes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Breathing {
    /// Cries.
    Crying,
    /// Regular.
    Regular,
    /// Irregular.
    Irregular,
    /// With grunting.
    Grunting,
    /// Not at all.
    None,
}

/// What happens to a baby once, or is told at once.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum NewbornEvent {
    /// Laid skin to skin.
    SkinToSkin,
    /// No longer skin to skin.
    SkinToSkinEnded,
    /// First feed.
    FirstFeed,
    /// Passed urine.
    PassedUrine,
    /// Passed meconium.
    PassedMeconium,
    /// Vitamin K declined.
    VitaminKDeclined,
}

impl NewbornEvent {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::SkinToSkin,
        Self::SkinToSkinEnded,
        Self::FirstFeed,
        Self::PassedUrine,
        Self::PassedMeconium,
        Self::VitaminKDeclined,
    ];
}
