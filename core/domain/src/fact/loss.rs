//! Blood that was lost.

use serde::{Deserialize, Serialize};

use crate::quantity::{ItemWeight, Volume};

/// One amount of blood.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "method", rename_all = "snake_case")]
pub enum Loss {
    /// A pad or cloth on the scale.
    Weighed {
        /// What was weighed.
        item: String,
        /// Weight with blood, g.
        gross: ItemWeight,
        /// Weight when dry, g.
        dry: ItemWeight,
    },
    /// Read off a jug, mL.
    Jug {
        /// Volume, mL.
        volume: Volume,
    },
    /// Judged by eye, mL. Mostly too little: see the protocol's note.
    Seen {
        /// Volume, mL.
        volume: Volume,
    },
}
