//! A file that a fact names: a picture or a sound, kept sealed beside the entries.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

use crate::entry::NoId;

/// Names a file by the SHA-256 of its sealed bytes, written as 64 small hexadecimal digits. What it is, the fact says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(try_from = "String", into = "String")]
#[cfg_attr(feature = "types", ts(as = "String"))]
pub struct FileId(pub [u8; 32]);

impl fmt::Display for FileId {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(out, "{byte:02x}"))
    }
}

impl FromStr for FileId {
    type Err = NoId;
    fn from_str(text: &str) -> Result<Self, NoId> {
        let mut bytes = [0; 32];
        let digits = text.as_bytes().chunks(2).map(|pair| std::str::from_utf8(pair).unwrap_or_default());
        for (byte, digits) in bytes.iter_mut().zip(digits) {
            *byte = u8::from_str_radix(digits, 16).unwrap_or_default();
        }
        // One id has one spelling: whatever was no digit does not come to the same text again.
        Some(Self(bytes)).filter(|id| id.to_string() == text).ok_or_else(|| NoId(text.to_owned()))
    }
}

impl TryFrom<String> for FileId {
    type Error = NoId;
    fn try_from(text: String) -> Result<Self, NoId> {
        text.parse()
    }
}

impl From<FileId> for String {
    fn from(id: FileId) -> Self {
        id.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_id_has_one_spelling() {
        let id = FileId(std::array::from_fn(|n| u8::try_from(n * 7).unwrap()));
        let text = id.to_string();
        assert_eq!(text.parse::<FileId>().unwrap(), id);
        let other =
            [text.to_uppercase(), text.split_at(1).1.to_owned(), format!("{text}0"), text.replacen('0', "+", 1), "é".repeat(32)];
        for bad in other.iter().map(String::as_str).chain(["", "../../../etc/passwd"]) {
            assert!(bad.parse::<FileId>().is_err(), "{bad}");
        }
    }
}
