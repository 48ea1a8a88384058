//! The handover, with ages that run.

use secundine_domain::chart::Chart;
use secundine_domain::message::Message;
use secundine_domain::time::Stamp;
use secundine_record::handover::{Handover, Item, Part};

use super::clock;
use crate::api::{HandoverGroup, HandoverLine, HandoverPart, HandoverView};
use crate::hide;

/// What is handed over; without who people are, where the names are hidden.
pub(crate) fn handover(chart: &Chart, told: Handover, hidden: bool, now: &Stamp, speed: u32) -> HandoverView {
    let told = if hidden { told.without_people() } else { told };
    let line = |item: &Item| {
        let at = item.at.as_ref().filter(|_| item.ages);
        HandoverLine {
            said: hide::said(item.said.clone()),
            when: item.when.clone(),
            age: at.map(|at| clock(chart.until(at, now), true, speed)),
            level: item.level,
            threshold: item.threshold.clone(),
        }
    };
    let group =
        |group: &[Item]| Some(HandoverGroup { label: group.first()?.label.clone(), lines: group.iter().map(line).collect() });
    let part = |part: Part| {
        let groups = told.groups(part).filter_map(group).collect();
        HandoverPart { title: Message::new(part.name()), groups }
    };
    HandoverView { parts: Part::ALL.map(part).into(), people_hidden: hidden }
}
