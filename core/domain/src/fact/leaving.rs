//! What is seen to before leaving, and how the family is seen next.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Something that is seen to before leaving and that no other entry tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
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
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
pub struct NextContact {
    /// When, as written or said, such as tomorrow at 10.
    pub when: String,
    /// Whom they call until then.
    pub call: String,
}
