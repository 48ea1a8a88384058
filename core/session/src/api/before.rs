//! Before a birth: what is in place on this device, what is not, and what it cannot tell.

use secundine_domain::message::Message;
use serde::{Deserialize, Serialize};

/// What the device tells of itself; none where it cannot tell.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct DeviceTold {
    /// Whether it shows notifications.
    pub notifications: Option<bool>,
    /// Whether it wakes for a time reminder at its exact time.
    pub exact_reminders: Option<bool>,
    /// Volume of sounds, percent.
    pub volume: Option<u8>,
    /// Charge of the battery, percent.
    pub battery: Option<u8>,
    /// Whether the screen can be kept on.
    pub awake: Option<bool>,
    /// Whether it vibrates.
    pub vibration: Option<bool>,
}

/// A thing that is looked at before a birth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Thing {
    /// Notifications are shown.
    Notifications,
    /// Time reminders come at their exact time.
    ExactReminders,
    /// Sounds can be heard.
    Volume,
    /// It vibrates.
    Vibration,
    /// The battery.
    Battery,
    /// Room on the disk.
    Space,
    /// The clock of the device.
    Clock,
    /// The screen stays on.
    Awake,
    /// The key store of the device opens the practice.
    Key,
    /// The last backup.
    Backup,
    /// The protocol that a birth begins with.
    Protocol,
}

/// How a thing stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Standing {
    /// In place. Not a promise of anything.
    InPlace,
    /// Not in place, or not as it should be.
    NotInPlace,
    /// This device cannot tell.
    CannotTell,
}

/// One thing, and how it stands.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ThingView {
    /// What.
    pub thing: Thing,
    /// The same in words.
    pub name: Message,
    /// How it stands.
    pub standing: Standing,
    /// More of that, in words.
    pub said: Message,
}
