//! What left the phone, to whom and how; and what is asked of whoever takes over.

use std::fmt;

use serde::{Deserialize, Serialize};

/// Something that was given out of hand. That a file was written does not say that anybody has it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Shared {
    /// What.
    pub what: SharedWhat,
    /// To whom.
    pub to: SharedTo,
    /// How.
    pub how: SharedHow,
    /// Whom by name, where it was typed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub name: Option<String>,
    /// Which version of the entries a server took: their SHA-256, hexadecimal.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub version: Option<String>,
}

/// Where this practice sends records: a server of HL7 FHIR R4.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Server {
    /// Its base address, `https://…`, without a slash at the end.
    pub address: String,
    /// What it knows the practice by: a bearer token.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub token: Option<String>,
}

/// A token is never printed.
impl fmt::Debug for Server {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Server").field("address", &self.address).field("token", &self.token.is_some()).finish()
    }
}

/// What can be given out of hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum SharedWhat {
    /// The handover, as it is read out or scanned.
    Handover,
    /// The handover on one page.
    Transfer,
    /// The whole record.
    Record,
    /// A request to a laboratory.
    Laboratory,
    /// That the family takes a placenta.
    Family,
    /// The entries as a table.
    Csv,
    /// What is planned, for a calendar.
    Calendar,
    /// The entries for another device.
    Entries,
    /// The record for another program.
    Fhir,
    /// What the parents keep.
    Parents,
}

impl SharedWhat {
    /// All of them.
    pub const ALL: [Self; 10] = [
        Self::Handover,
        Self::Transfer,
        Self::Record,
        Self::Laboratory,
        Self::Family,
        Self::Csv,
        Self::Calendar,
        Self::Entries,
        Self::Fhir,
        Self::Parents,
    ];
}

/// Who has it now.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum SharedTo {
    /// A hospital.
    Hospital,
    /// The ambulance.
    Ambulance,
    /// Her doctor.
    Doctor,
    /// Another midwife.
    Midwife,
    /// A laboratory.
    Laboratory,
    /// The family.
    Family,
    /// Somebody else.
    Other,
    /// A server that keeps records.
    Server,
}

impl SharedTo {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 8] =
        [Self::Hospital, Self::Ambulance, Self::Doctor, Self::Midwife, Self::Laboratory, Self::Family, Self::Other, Self::Server];
}

/// How it was given.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum SharedHow {
    /// Said, face to face or over the telephone.
    Spoken,
    /// Scanned off the screen.
    Code,
    /// On paper.
    Paper,
    /// As a file.
    File,
    /// Sent over the network.
    Network,
}

impl SharedHow {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Spoken, Self::Code, Self::Paper, Self::File, Self::Network];
}
