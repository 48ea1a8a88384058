//! What can be asked and told while the practice is locked. No name, no label, nothing written before the lock.

use secundine_domain::fact::BabyNo;
use secundine_domain::message::Message;
use serde::{Deserialize, Serialize};

use super::{ClockView, NextMark};

/// A mark that can be made while locked. Written as the fact of the same name is.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "kind", content = "data", rename_all = "snake_case")]
pub enum LockedMark {
    /// The next baby is born.
    BabyBorn,
    /// The cord no longer pulses.
    CordPulsationStopped {
        /// Which baby's.
        baby: BabyNo,
    },
    /// The cord is clamped.
    CordClamped {
        /// Which baby's.
        baby: BabyNo,
    },
    /// The cord is cut.
    CordCut {
        /// Which baby's.
        baby: BabyNo,
    },
    /// A placenta is born.
    PlacentaBorn {
        /// The babies that it fed.
        babies: Vec<BabyNo>,
    },
    /// The membranes are born.
    MembranesBorn {
        /// The babies of that placenta.
        babies: Vec<BabyNo>,
    },
    /// Something, to be named later.
    Moment,
}

/// What was marked since the practice was locked, in this run of the program.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct LockedView {
    /// From the birth of the last baby to the last placenta; also where the baby was born before the lock.
    pub third_stage: Option<ClockView>,
    /// How long each cord pulsed, or has pulsed.
    pub cords: Vec<LockedCord>,
    /// The marks since the lock, in the order in which they were made.
    pub marks: Vec<LockedLine>,
    /// The next likely marks, likeliest first.
    pub next: Vec<NextMark>,
    /// The other marks that can be made.
    pub others: Vec<NextMark>,
    /// How many files wait on disk from earlier runs of the program; what they hold cannot be read while locked.
    pub waiting_files: u32,
    /// Their bytes.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub waiting_bytes: u64,
    /// Whether the last mark is NOT on disk.
    pub failed: bool,
}

/// A cord's clock.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct LockedCord {
    /// Counted from 1.
    pub baby: BabyNo,
    /// How long it pulsed, or has pulsed; none where it was clamped first.
    pub clock: Option<ClockView>,
}

/// A mark made while locked.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct LockedLine {
    /// What.
    pub message: Message,
    /// Local time.
    pub clock: String,
    /// Taken back.
    pub undone: bool,
}

/// What unlocking brought in from the time the practice was locked.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct DrainedView {
    /// Entries written into charts.
    pub entries: u32,
    /// Times the end of what was kept is missing: cut short, or gone.
    pub lost_tail: u32,
    /// Files of which a part cannot be read. They are kept.
    pub damaged: u32,
    /// Files that could not be brought in yet, and wait for the next time.
    pub waiting: u32,
}
