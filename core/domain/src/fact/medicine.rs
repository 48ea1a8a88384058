//! Medicines as they were given.

use serde::{Deserialize, Serialize};

use super::BabyNo;

/// A medicine as it was given.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Medicine {
    /// Name.
    pub name: String,
    /// Dose with its unit, as written.
    pub dose: String,
    /// Route, as written.
    pub route: String,
    /// Whether it makes the uterus contract: such a dose belongs to the third stage.
    pub uterotonic: bool,
    /// Id in `medicines.toml`, where it was chosen from there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub listed: Option<String>,
    /// Site, such as left thigh.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub site: Option<String>,
    /// Batch number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub batch: Option<String>,
    /// Who gave it, where that is not the author.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub giver: Option<String>,
    /// The baby that it was given to; none for the mother.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub baby: Option<BabyNo>,
}
