//! The blood lost as it grew.

use super::{Blood, loss_volume};
use crate::chart::Chart;
use crate::fact::Loss;
use crate::protocol::Protocol;

/// The sum of the blood after each entry, in order of time: milliseconds from the birth of the last baby, negative for
/// blood before it, and mL. Empty before a birth.
#[must_use]
pub fn blood_curve(chart: &Chart, protocol: Option<&Protocol>) -> Vec<(i64, Blood)> {
    let Some(birth) = chart.last_birth() else { return Vec::new() };
    let mut sum = Blood::default();
    let point = |loss: &crate::chart::Noted<Loss>| {
        sum = sum.and(&loss.what, loss_volume(&loss.what, protocol));
        (chart.elapsed(&birth.at, &loss.mark.at).ms, sum)
    };
    chart.losses.iter().map(point).collect()
}
