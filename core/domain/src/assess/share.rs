//! The blood lost as a share of all her blood, which is estimated from her weight.

use super::blood;
use crate::chart::Chart;
use crate::message::{Message, decimal};
use crate::protocol::{Protocol, Status};

/// Blood of a woman at term, mL for each kg of her weight at booking.
const ML_PER_KG: u32 = 100;
/// Who says so. Other formulas give other volumes, so the share is rough.
const SOURCE: &str = "NHS Highland, postpartum haemorrhage guideline";
const STATUS: Status = Status::Seen;

/// The share in words, with formula and source; none while no weight or no blood is on record.
#[must_use]
pub fn blood_share(chart: &Chart, protocol: Option<&Protocol>) -> Option<Message> {
    let hectograms = chart.client.as_ref()?.weight?.get();
    if chart.losses.is_empty() {
        return None;
    }
    let volume = hectograms * ML_PER_KG / 10;
    let lost = blood(chart, protocol).total();
    // Tenths of a percent, rounded.
    let tenths = (u64::from(lost) * 1000 + u64::from(volume) / 2) / u64::from(volume).max(1);
    let message = Message::new("value-blood-share")
        .with("share", decimal(tenths / 10, &(tenths % 10).to_string()))
        .with("lost", lost)
        .with("volume", volume)
        .with("weight", f64::from(hectograms) / 10.0)
        .with("factor", ML_PER_KG)
        .with("source", SOURCE)
        .with("status", STATUS.name());
    Some(message)
}
