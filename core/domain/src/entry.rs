//! An entry is one fact as one person wrote it down: never changed, never removed.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::fact::Fact;
use crate::time::{Occurred, Stamp};

/// A device of the practice: 16 bytes, written as 32 hexadecimal digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(try_from = "String", into = "String")]
#[cfg_attr(feature = "types", ts(as = "String"))]
pub struct DeviceId(pub [u8; 16]);

/// The n-th entry of a device, counted from 1. Written `<device>-<n>`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(try_from = "String", into = "String")]
#[cfg_attr(feature = "types", ts(as = "String"))]
pub struct EntryId {
    /// The device that wrote it.
    pub device: DeviceId,
    /// Its number on that device.
    pub n: u64,
}

/// A birth is named by the entry that registered it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[cfg_attr(feature = "types", ts(as = "String"))]
pub struct BirthId(pub EntryId);

impl BirthId {
    /// Not a birth: entries about the practice itself stand under this id.
    pub const PRACTICE: Self = Self(EntryId { device: DeviceId([0; 16]), n: 0 });
}

/// One fact, by one author, at one time, written at one time.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Entry {
    /// Names the entry for ever.
    pub id: EntryId,
    /// The birth that it belongs to.
    pub birth: BirthId,
    /// Who wrote it, as their name is printed.
    pub author: String,
    /// When it happened.
    pub occurred: Occurred,
    /// When it was written.
    pub recorded: Stamp,
    /// What happened.
    pub fact: Fact,
    /// The entry that this one puts right, if any.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub amends: Option<Amendment>,
}

/// Which entry is put right, and why. The fact of a correction takes the place of the earlier one;
/// [`Fact::Retracted`] takes it out of the chart. Both stay readable.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Amendment {
    /// The earlier entry.
    pub entry: EntryId,
    /// Why, in the author's words.
    pub reason: String,
}

/// Version of the stored form that this program writes.
pub const STORED_FORM: u32 = 1;

/// Bytes that are no entry.
#[derive(Debug, Error)]
pub enum StoredError {
    /// Not JSON, or a part is missing or of the wrong kind.
    #[error("the stored entry cannot be read: {0}")]
    Unreadable(#[from] serde_json::Error),
    /// Written by a later version of the program.
    #[error("the stored entry has form {0}, which is newer than this program")]
    Newer(u32),
}

#[derive(Serialize)]
struct Write<'a> {
    v: u32,
    #[serde(flatten)]
    entry: &'a Entry,
}

#[derive(Deserialize)]
struct Version {
    v: u32,
}

impl Entry {
    /// The stored form: one line of JSON, beginning with its version.
    ///
    /// # Errors
    /// None that an entry can cause; JSON writing itself may fail.
    pub fn encode(&self) -> Result<Vec<u8>, StoredError> {
        Ok(serde_json::to_vec(&Write { v: STORED_FORM, entry: self })?)
    }

    /// Reads what any released version has written. A fact of an unknown kind, or one that this version cannot take,
    /// is kept as [`Fact::Unknown`].
    ///
    /// # Errors
    /// [`StoredError`] when the bytes are no entry or come from a later form.
    pub fn decode(bytes: &[u8]) -> Result<Self, StoredError> {
        let version: Version = serde_json::from_slice(bytes)?;
        if version.v > STORED_FORM {
            return Err(StoredError::Newer(version.v));
        }
        serde_json::from_slice(bytes).or_else(|_| Self::decode_unknown(bytes))
    }

    fn decode_unknown(bytes: &[u8]) -> Result<Self, StoredError> {
        let mut value: serde_json::Value = serde_json::from_slice(bytes)?;
        if let Some(slot) = value.get_mut("fact") {
            let stored = slot.take();
            let kind = stored.get("kind").and_then(serde_json::Value::as_str).unwrap_or("?").to_owned();
            *slot = serde_json::to_value(Fact::Unknown { kind, stored: stored.to_string() })?;
        }
        Ok(serde_json::from_value(value)?)
    }
}

/// Text that is no id.
#[derive(Debug, Error)]
#[error("not an entry id: {0}")]
pub struct NoId(pub(crate) String);

impl fmt::Display for DeviceId {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(out, "{byte:02x}"))
    }
}

impl FromStr for DeviceId {
    type Err = NoId;
    fn from_str(text: &str) -> Result<Self, NoId> {
        // One id has one spelling.
        let spelled = text.len() == 32 && text.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'));
        let number = spelled.then(|| u128::from_str_radix(text, 16).ok()).flatten();
        number.map(|n| Self(n.to_be_bytes())).ok_or_else(|| NoId(text.to_owned()))
    }
}

impl fmt::Display for EntryId {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}-{}", self.device, self.n)
    }
}

impl FromStr for EntryId {
    type Err = NoId;
    fn from_str(text: &str) -> Result<Self, NoId> {
        // One id has one spelling: no sign, no leading zero, no capital.
        let spelled = |n: &str| n.bytes().all(|byte| byte.is_ascii_digit()) && (n == "0" || !n.starts_with('0'));
        let parts = text.split_once('-').filter(|(_, n)| spelled(n));
        let id = parts.and_then(|(device, n)| Some(Self { device: device.parse().ok()?, n: n.parse().ok()? }));
        id.ok_or_else(|| NoId(text.to_owned()))
    }
}

impl TryFrom<String> for DeviceId {
    type Error = NoId;
    fn try_from(text: String) -> Result<Self, NoId> {
        text.parse()
    }
}

impl From<DeviceId> for String {
    fn from(id: DeviceId) -> Self {
        id.to_string()
    }
}

impl TryFrom<String> for EntryId {
    type Error = NoId;
    fn try_from(text: String) -> Result<Self, NoId> {
        text.parse()
    }
}

impl From<EntryId> for String {
    fn from(id: EntryId) -> Self {
        id.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_id_reads_back_as_written() {
        let id = EntryId { device: DeviceId(*b"0123456789abcdef"), n: 12 };
        assert_eq!(id.to_string().parse::<EntryId>().unwrap(), id);
        for bad in ["", "12", "30313233343536373839616263646566", "zz-1", "30313233343536373839616263646566-x"] {
            assert!(bad.parse::<EntryId>().is_err(), "{bad}");
        }
    }

    #[test]
    fn a_fact_of_a_later_version_is_kept() {
        let id = EntryId { device: DeviceId([7; 16]), n: 1 };
        let text = format!(
            r#"{{"v":1,"id":"{id}","birth":"{id}","author":"A","occurred":{{"how":"typed","wall_ms":1,"offset_min":0,
            "precision":"exact"}},"recorded":{{"wall_ms":1,"offset_min":0,"zone":null,"boot":null}},
            "fact":{{"kind":"moon_phase","data":{{"full":true}}}}}}"#
        );
        let entry = Entry::decode(text.as_bytes()).unwrap();
        let Fact::Unknown { kind, stored } = &entry.fact else { unreachable!("{entry:?}") };
        assert_eq!(kind, "moon_phase");
        assert!(stored.contains(r#""full":true"#));
    }

    #[test]
    fn a_later_form_is_refused_by_number() {
        assert!(matches!(Entry::decode(br#"{"v":2}"#), Err(StoredError::Newer(2))));
    }
}
