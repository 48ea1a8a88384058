//! What is seen of the mother.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use crate::quantity::{FundalHeight, HeartRate, PainScore, Pressure, RespiratoryRate, Saturation, Temperature, Volume};

/// A look at the mother; what was not looked at is absent.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(default)]
pub struct MotherObservation {
    /// Pulse, beats a minute.
    pub pulse: Option<HeartRate>,
    /// Systolic pressure, mmHg.
    pub systolic: Option<Pressure>,
    /// Diastolic pressure, mmHg.
    pub diastolic: Option<Pressure>,
    /// Breaths a minute.
    pub respirations: Option<RespiratoryRate>,
    /// Temperature, tenths of a degree Celsius.
    pub temperature: Option<Temperature>,
    /// Oxygen saturation, %.
    pub saturation: Option<Saturation>,
    /// Whether the uterus is firm.
    pub fundus: Option<Fundus>,
    /// How the bleeding looks.
    pub bleeding: Option<Bleeding>,
    /// How far she answers.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub response: Option<Consciousness>,
    /// Where the fundus stands against the umbilicus, finger-breadths.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub fundal_height: Option<FundalHeight>,
    /// Whether the uterus lies in the middle.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub fundal_position: Option<FundalPosition>,
    /// The bladder.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub bladder: Option<Bladder>,
    /// Urine passed or drained, mL.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub urine: Option<Volume>,
    /// Pain from 0 to 10, as she says.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub pain: Option<PainScore>,
}

/// How the fundus feels.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Fundus {
    /// Firm and central.
    Firm,
    /// Firm when rubbed, then soft again.
    FirmsWhenRubbed,
    /// Soft.
    Soft,
}

/// How the bleeding looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Bleeding {
    /// Little.
    Light,
    /// As after most births.
    Moderate,
    /// More than that.
    Heavy,
    /// Small but without end.
    Trickle,
    /// With clots.
    Clots,
}

/// How far she answers: alert, confused, to voice, to pain, not at all (ACVPU).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Consciousness {
    /// Awake and clear.
    Alert,
    /// Newly confused.
    Confused,
    /// Answers to a voice.
    Voice,
    /// Answers to pain.
    Pain,
    /// Does not answer.
    Unresponsive,
}

/// Whether the uterus lies in the middle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum FundalPosition {
    /// In the middle.
    Central,
    /// To her left.
    Left,
    /// To her right.
    Right,
}

/// The bladder.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Bladder {
    /// She passed urine.
    PassedUrine,
    /// Not felt.
    NotPalpable,
    /// Felt above the pubic bone.
    Palpable,
    /// Drained by a catheter.
    Drained,
}

/// The perineum and what else is torn. In doubt, the higher grade is recorded (RCOG GTG 29, 2015).
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Perineum {
    /// The perineum itself.
    pub tear: Tear,
    /// What else is torn or cut.
    pub also: BTreeSet<AlsoTorn>,
    /// Whether the anus and rectum were felt; none where it was not said.
    pub rectal: Option<RectalExamination>,
    /// What becomes of it; none where it was not said.
    pub repair: Option<Repair>,
}

/// Perineal tears by the standard classes (RCOG GTG 29, 2015).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Tear {
    /// Not looked at.
    NotExamined,
    /// Whole.
    Intact,
    /// Skin or mucosa of the vagina.
    First,
    /// Perineal muscle, not the anal sphincter.
    Second,
    /// Under half of the external sphincter's thickness.
    ThirdA,
    /// Half of the external sphincter or more.
    ThirdB,
    /// External and internal sphincter.
    ThirdC,
    /// Sphincters and anorectal mucosa.
    Fourth,
}

/// What else is torn or cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum AlsoTorn {
    /// Cut.
    Episiotomy,
    /// Labia.
    Labial,
    /// Clitoris or around it.
    Clitoral,
    /// Wall of the vagina.
    Vaginal,
    /// Cervix.
    Cervical,
    /// Rectal mucosa with a whole sphincter.
    Buttonhole,
}

/// Whether the anus and rectum were felt.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum RectalExamination {
    /// Done with her consent.
    Done,
    /// Offered and declined.
    Declined,
}

/// What becomes of a tear.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Repair {
    /// None needed.
    NotNeeded,
    /// Sutured here.
    Sutured,
    /// Left to heal by itself.
    Unsutured,
    /// To be repaired in hospital.
    InHospital,
}
