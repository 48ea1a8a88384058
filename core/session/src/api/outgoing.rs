//! What leaves the phone as a file.

use secundine_domain::fact::BabyNo;
use serde::{Deserialize, Serialize};

/// A file about a birth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Outgoing {
    /// The whole record, PDF.
    Record,
    /// The handover on one page, PDF.
    Transfer,
    /// A request to a laboratory, PDF.
    Laboratory {
        /// The placenta, named by its first baby.
        placenta: BabyNo,
    },
    /// That the family takes a placenta, PDF.
    Family {
        /// The placenta, named by its first baby.
        placenta: BabyNo,
    },
    /// A page for the parents in plain words, PDF.
    Parents,
    /// Every fact as a table, CSV.
    Csv,
    /// The next contact and the ends of the protocol's running times, iCalendar.
    Calendar,
    /// Every entry with what proves it, JSON Lines.
    Entries,
    /// The whole record as a document of HL7 FHIR R4 with the PDF in it, JSON.
    Fhir {
        /// Whether the photographs go along: each is some megabytes, a third larger in such a file.
        #[serde(default)]
        #[cfg_attr(feature = "types", ts(as = "Option<bool>", optional))]
        photos: bool,
    },
}

impl Outgoing {
    /// What the file's name begins with.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Record => "record",
            Self::Transfer => "transfer",
            Self::Laboratory { .. } => "laboratory",
            Self::Family { .. } => "family",
            Self::Parents => "parents",
            Self::Csv => "table",
            Self::Calendar => "calendar",
            Self::Entries => "entries",
            Self::Fhir { .. } => "fhir",
        }
    }

    /// What the file's name ends with.
    pub(crate) const fn ending(self) -> &'static str {
        match self {
            Self::Record | Self::Transfer | Self::Laboratory { .. } | Self::Family { .. } | Self::Parents => "pdf",
            Self::Csv => "csv",
            Self::Calendar => "ics",
            Self::Entries => "jsonl",
            Self::Fhir { .. } => "json",
        }
    }
}
