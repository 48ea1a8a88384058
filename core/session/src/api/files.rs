//! Files that facts name, handed over and read back in parts.

use secundine_domain::file::FileId;
use serde::{Deserialize, Serialize};

/// What a file is taken for while it comes in. Once it is kept, the fact that names it says what it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum FileKind {
    /// JPEG or PNG. It is kept upright, as JPEG, without anything that the camera wrote into it.
    Photo,
    /// A sound, kept as it is.
    Voice,
}

/// A file that is on disk, sealed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct KeptFile {
    /// Its name, for the fact that is to name it. Until one does, it is of no use.
    pub file: FileId,
    /// What a photograph came to.
    pub picture: Option<KeptPicture>,
}

/// A photograph that is on disk.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct KeptPicture {
    /// The same picture, small.
    pub small: FileId,
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
    /// Focal length of the lens, in pixels, where the camera told of it.
    pub focal: Option<u32>,
}

/// A part of a file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct FileBytes {
    /// Bytes of the whole file.
    pub length: u32,
    /// At most 1 MiB from the place that was asked for, as base64; empty at the end.
    pub base64: String,
}
