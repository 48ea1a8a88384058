//! The response when it goes wrong: its marks with their times, and the account that they make.

use secundine_domain::chart::{Chart, Line};
use secundine_domain::fact::{Fact, ResponseStep};
use secundine_domain::time::Stamp;

use super::{clock, stands};
use crate::api::{EmergencyMark, EmergencyView};

pub(super) fn emergency(chart: &Chart, now: &Stamp, speed: u32) -> EmergencyView {
    let steps = ResponseStep::ALL.into_iter().map(|step| Fact::ResponseMarked { step });
    let since = chart.response_began().map(|began| match chart.response_ended() {
        Some(ended) => clock(chart.elapsed(&began.at, &ended.at), false, speed),
        None => clock(chart.until(&began.at, now), true, speed),
    });
    EmergencyView {
        since,
        marks: std::iter::once(Fact::ConcernMarked).chain(steps).map(|fact| mark(chart, fact)).collect(),
        account: chart.account().into_iter().map(|line| line.first.id).collect(),
    }
}

fn mark(chart: &Chart, fact: Fact) -> EmergencyMark {
    let made = |line: &&Line| stands(line) && line.current().fact == fact;
    let clocks = chart.lines.iter().filter(made).map(|line| line.current().occurred.clock()).collect();
    EmergencyMark { label: chart.say(&fact), clocks, fact }
}
