//! What is done when it goes wrong. Each is a mark with its time; none tells what to do.

use serde::{Deserialize, Serialize};

/// One step of the response.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum ResponseStep {
    /// Help called.
    HelpCalled,
    /// Help is there.
    HelpArrived,
    /// Ambulance called.
    AmbulanceCalled,
    /// Ambulance is there.
    AmbulanceArrived,
    /// Uterus massaged.
    UterusMassaged,
    /// Bladder emptied.
    BladderEmptied,
    /// A vein is open.
    VeinOpened,
    /// Fluid runs.
    FluidStarted,
    /// Compression of the uterus begun.
    CompressionStarted,
    /// Compression ended.
    CompressionEnded,
    /// Oxygen begun.
    OxygenStarted,
    /// Bleeding controlled.
    BleedingControlled,
    /// Left for the hospital.
    TransferLeft,
    /// At the hospital.
    TransferArrived,
    /// Handed over.
    HandedOver,
}

impl ResponseStep {
    /// All of them, in the order in which they are offered; none is asked for before another.
    pub const ALL: [Self; 15] = [
        Self::HelpCalled,
        Self::HelpArrived,
        Self::AmbulanceCalled,
        Self::AmbulanceArrived,
        Self::UterusMassaged,
        Self::BladderEmptied,
        Self::VeinOpened,
        Self::FluidStarted,
        Self::CompressionStarted,
        Self::CompressionEnded,
        Self::OxygenStarted,
        Self::BleedingControlled,
        Self::TransferLeft,
        Self::TransferArrived,
        Self::HandedOver,
    ];
}

/// A sign that the placenta may have separated. None of them proves it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum SeparationSign {
    /// Uterus rounder and firmer.
    UterusFirmer,
    /// A gush of blood.
    BloodGush,
    /// Uterus rises.
    UterusRises,
    /// Cord lengthens.
    CordLengthens,
    /// Pressure, contraction or urge.
    Urge,
}

impl SeparationSign {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::UterusFirmer, Self::BloodGush, Self::UterusRises, Self::CordLengthens, Self::Urge];
}
