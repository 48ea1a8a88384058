//! Times that run from a birth until something is recorded: urine, a feed, and the hours in which a medicine is given.

use super::{Finding, Subject, blood_limit_passed, for_time};
use crate::chart::{Chart, Mark};
use crate::fact::{Bladder, MotherObservation, NewbornEvent, ResponseStep, RhD};
use crate::protocol::{Protocol, Watch};
use crate::time::Stamp;

/// Ids in `medicines.toml`.
const TRANEXAMIC_ACID: &str = "tranexamic-acid";
const ANTI_D: &str = "anti-d";

/// The mark from which the time of a watch runs; none where it does not run, or no longer.
pub(crate) fn running(chart: &Chart, protocol: &Protocol, watch: Watch, now: &Stamp) -> Option<Mark> {
    let given = |listed: &str| chart.medicines.iter().any(|given| given.what.listed.as_deref() == Some(listed));
    match watch {
        Watch::TranexamicWindow => chart.last_birth().filter(|_| bleeds(chart, protocol) && !given(TRANEXAMIC_ACID)).cloned(),
        Watch::AntiDWindow => {
            let negative = chart.client.as_ref().is_some_and(|client| client.rhd == Some(RhD::Negative));
            chart.first_birth().filter(|_| negative && !given(ANTI_D)).cloned()
        }
        Watch::TimeToUrine => chart.last_birth().filter(|_| !emptied(chart)).cloned(),
        // Of several babies, the one that has waited longest.
        Watch::FirstFeed => {
            let unfed = chart.babies.values().filter(|baby| baby.events.iter().all(|seen| seen.what != NewbornEvent::FirstFeed));
            unfed.filter_map(|baby| baby.born.as_ref()).max_by_key(|born| chart.until(&born.at, now).ms).cloned()
        }
        _ => None,
    }
}

/// Bleeding is an issue once a limit of blood loss is passed or the response is begun.
fn bleeds(chart: &Chart, protocol: &Protocol) -> bool {
    !chart.responses.is_empty() || blood_limit_passed(chart, protocol)
}

/// Whether urine was passed or drained, as far as it is on record.
fn emptied(chart: &Chart) -> bool {
    let looks = chart.observations.iter().any(|look| passed_urine(&look.what));
    looks || chart.responses.iter().any(|step| step.what == ResponseStep::BladderEmptied)
}

/// Whether a look tells of urine that was passed or drained.
pub(crate) fn passed_urine(look: &MotherObservation) -> bool {
    matches!(look.bladder, Some(Bladder::PassedUrine | Bladder::Drained)) || look.urine.is_some_and(|ml| ml.get() > 0)
}

/// What a running time has come to; `None` where it does not run or the protocol has no mark for it.
pub(super) fn finding(chart: &Chart, protocol: &Protocol, watch: Watch, now: &Stamp) -> Option<Finding> {
    let steps = protocol.steps(watch);
    let from = running(chart, protocol, watch, now).filter(|_| !steps.is_empty())?;
    let elapsed = chart.until(&from.at, now);
    (elapsed.ms >= 0).then(|| for_time(Subject::of(watch), &elapsed, steps, vec![from.entry], protocol))
}
