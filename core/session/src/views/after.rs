//! The blood as it grew, and what is looked through before leaving.

use secundine_domain::assess::{Finding, blood_curve};
use secundine_domain::chart::Chart;
use secundine_domain::leaving::{Leaving, leaving};
use secundine_domain::protocol::{Protocol, Step, Watch};
use secundine_domain::time::Stamp;

use crate::api::{BloodCurve, BloodMark, BloodPoint, LeavingLine};
use crate::hide;

/// The blood over time, with the protocol's marks.
pub(super) fn curve(chart: &Chart, protocol: Option<&Protocol>, now: &Stamp) -> Option<BloodCurve> {
    let birth = chart.last_birth()?;
    let point = |(at_ms, blood): (i64, secundine_domain::assess::Blood)| BloodPoint { at_ms, total: blood.total() };
    let mark = |step: &Step| BloodMark { volume: step.value.into(), level: step.level };
    let mut marks: Vec<BloodMark> = protocol.map_or(&[][..], |known| known.steps(Watch::BloodLoss)).iter().map(mark).collect();
    marks.sort_by(|a, b| a.volume.total_cmp(&b.volume));
    let points = blood_curve(chart, protocol).into_iter().map(point).collect();
    Some(BloodCurve { points, now_ms: chart.until(&birth.at, now).ms, marks })
}

/// What is looked through before leaving; babies and placentas are numbered where there are several.
pub(super) fn before_leaving(chart: &Chart, findings: &[Finding]) -> Vec<LeavingLine> {
    let several = chart.babies.len() > 1;
    let line = |Leaving { item, of, said, mark, recorded, level }: Leaving| LeavingLine {
        item,
        name: item.name(),
        of: of.filter(|_| several),
        said: said.map(hide::said),
        clock: mark.map(|mark| mark.at.clock()),
        recorded,
        level,
    };
    leaving(chart, findings).into_iter().map(line).collect()
}
