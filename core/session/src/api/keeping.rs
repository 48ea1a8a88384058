//! Keeping the practice: its keys, backups, a damaged store, and what is shown when nobody has touched for a while.

use secundine_domain::message::Message;
use serde::{Deserialize, Serialize};

use super::StatusView;

/// A way to the practice's key.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Slot {
    /// The passphrase; always there.
    Passphrase,
    /// The printed recovery sheet.
    Recovery,
    /// The key store of this device's system.
    Device,
}

impl From<secundine_store::Slot> for Slot {
    fn from(slot: secundine_store::Slot) -> Self {
        match slot {
            secundine_store::Slot::Passphrase => Self::Passphrase,
            secundine_store::Slot::Recovery => Self::Recovery,
            secundine_store::Slot::Device => Self::Device,
        }
    }
}

impl From<Slot> for secundine_store::Slot {
    fn from(slot: Slot) -> Self {
        match slot {
            Slot::Passphrase => Self::Passphrase,
            Slot::Recovery => Self::Recovery,
            Slot::Device => Self::Device,
        }
    }
}

/// The ways to the practice's key.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct KeysView {
    /// Those that open it now. Whether this device still holds its key is known only when it is asked to open.
    pub slots: Vec<Slot>,
    /// Whether this device has a key store that could be one.
    pub device_offered: bool,
}

/// The recovery identity, to be printed or written down. Kept nowhere on the device.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct RecoveryView {
    /// The age identity.
    pub identity: String,
    /// Four words made from it: the same on the sheet and whenever it is typed, so that it shows which sheet it is. They are
    /// the first 44 bits of the SHA-256 of the identity as it is printed, 11 bits a word, from the English list of BIP 39.
    pub words: Vec<String>,
    /// The identity as a QR code.
    pub code: QrView,
}

/// A QR code to be drawn.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct QrView {
    /// Modules along one side, without the quiet zone of four.
    pub side: u32,
    /// SVG path data that fills the dark modules, one unit each, from the corner 0 0.
    pub path: String,
}

/// Backups on this device.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct BackupsView {
    /// The folder where they are.
    pub folder: String,
    /// Newest first.
    pub backups: Vec<BackupLine>,
    /// What became of the one that was asked for since the practice was opened.
    pub asked: Option<BackupState>,
}

/// A backup that was asked for.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "state", rename_all = "snake_case")]
pub enum BackupState {
    /// It is being made, and marks do not wait for it.
    Going {
        /// Of what is to be written and read back, in hundredths.
        percent: u32,
    },
    /// It was made.
    Made(BackupMade),
    /// There is none.
    Failed {
        /// Why, in words.
        said: Message,
    },
}

/// A backup on this device.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct BackupLine {
    /// Name of the file.
    pub file: String,
    /// Local date and time at which it was made, `2026-11-25 03:12`.
    pub made: String,
    /// Its size.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub bytes: u64,
}

/// A backup that was just made, and read back.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct BackupMade {
    /// Where.
    pub path: String,
    /// Births in it.
    pub births: u32,
    /// Entries in it.
    pub entries: u32,
    /// Pictures and sounds in it.
    pub files: u32,
    /// Pictures and sounds that were left out, since they are damaged.
    pub damaged_files: u32,
    /// Its size.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub bytes: u64,
    /// Files of the inbox that wait and are not in it.
    pub waiting: u32,
}

/// What a backup brought.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct RestoredView {
    /// How things stand now: open.
    pub status: StatusView,
    /// Entries that were not here before.
    pub added: u32,
    /// Entries that were here already.
    pub known: u32,
    /// Births that were not here before.
    pub births: u32,
    /// Local date and time at which the backup was made, `2026-11-25 03:12`.
    pub made: String,
    /// Entries, files and keys that were not taken in.
    pub left_out: u32,
    /// The same, in words.
    pub refused: Vec<Message>,
}

/// What could be read of a damaged store, and what is missing.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct SalvageView {
    /// Entries that were read.
    pub entries: u32,
    /// Births among them.
    pub births: u32,
    /// Entries that are known to be missing.
    pub missing: u32,
    /// What is missing or cannot be proved, each in words.
    pub report: Vec<Message>,
    /// Where the damaged files were set aside; none while they are only read.
    pub set_aside: Option<String>,
}
