//! Apgar scores: which are due of each baby, which were missed, and a score that the protocol counts as low.

use std::collections::BTreeSet;

use super::{About, Finding, FindingState, Threshold, limit_words, plain};
use crate::chart::{Baby, Chart, Noted};
use crate::fact::{Apgar, BabyNo};
use crate::message::Message;
use crate::protocol::{ApgarAgain, Compare, Level, Protocol, Status};
use crate::time::Stamp;

/// Minutes that are offered whatever the protocol: 1 and 5 are published in each (AAP and ACOG CO 644, 2015); 10 is our own
/// choice, without a source.
pub const ALWAYS_OFFERED: [u32; 3] = [1, 5, 10];

/// So many minutes a missed score is still awaited; from then on it is told as not recorded. Our own choice.
const AWAITED_MIN: u32 = 5;

/// A score that the protocol has, and that is not on record.
pub(crate) struct Awaited<'a> {
    /// Minutes after the birth.
    pub minute: u32,
    /// Milliseconds from now; negative once it is past.
    pub in_ms: i64,
    /// Where the minute comes from.
    pub source: &'a str,
    /// How well that was checked.
    pub status: Status,
}

/// The scores of one baby that are still awaited, in the order of the protocol.
pub(crate) fn awaited<'a>(chart: &Chart, protocol: &'a Protocol, baby: &Baby, now: &Stamp) -> Vec<Awaited<'a>> {
    missing(chart, protocol, baby, now).into_iter().filter(|score| !is_missed(score)).collect()
}

fn is_missed(score: &Awaited) -> bool {
    score.in_ms <= -minutes(AWAITED_MIN)
}

/// The scores of one baby that are not on record, past and to come, each minute once.
fn missing<'a>(chart: &Chart, protocol: &'a Protocol, baby: &Baby, now: &Stamp) -> Vec<Awaited<'a>> {
    let (Some(born), Some(times)) = (&baby.born, &protocol.apgar) else { return Vec::new() };
    let age_ms = chart.until(&born.at, now).ms;
    let again = low(protocol, baby).map(|(again, _)| again);
    let planned = times.minutes.iter().map(|minute| (*minute, times.source.as_str(), times.status));
    let further = again.into_iter().flat_map(|again| again.minutes().map(|minute| (minute, again.source.as_str(), again.status)));
    let further = further.filter(|(minute, ..)| !times.minutes.contains(minute));
    planned
        .chain(further)
        .filter(|(minute, ..)| scored(baby, *minute).is_none())
        .map(|(minute, source, status)| Awaited { minute, in_ms: minutes(minute).saturating_sub(age_ms), source, status })
        .collect()
}

/// The score of a minute; of several the last.
fn scored(baby: &Baby, minute: u32) -> Option<&Noted<Apgar>> {
    baby.apgars.iter().rfind(|apgar| apgar.what.minute.get() == minute)
}

/// The score after which the protocol scores again, if it stands.
fn low<'a, 'b>(protocol: &'a Protocol, baby: &'b Baby) -> Option<(&'a ApgarAgain, &'b Noted<Apgar>)> {
    let again = protocol.apgar.as_ref()?.again.as_ref()?;
    let score = scored(baby, again.after).filter(|score| score.what.total() < again.under)?;
    Some((again, score))
}

/// The minutes that can be scored of a baby, rising: those of the protocol, those that are always offered, those on record.
#[must_use]
pub fn apgar_minutes(chart: &Chart, protocol: Option<&Protocol>, no: BabyNo) -> Vec<u32> {
    let mut offered = BTreeSet::from(ALWAYS_OFFERED);
    offered
        .extend(protocol.iter().filter_map(|protocol| protocol.apgar.as_ref()).flat_map(|times| times.minutes.iter().copied()));
    if let Some(baby) = chart.babies.get(&no) {
        offered.extend(baby.apgars.iter().map(|apgar| apgar.what.minute.get()));
        let again = protocol.and_then(|protocol| low(protocol, baby));
        offered.extend(again.into_iter().flat_map(|(again, _)| again.minutes()));
    }
    offered.into_iter().collect()
}

/// What was missed and what is low, of each baby; nothing where neither is.
pub(super) fn findings(chart: &Chart, protocol: &Protocol, now: &Stamp) -> Vec<Finding> {
    let of = |(no, baby): (&BabyNo, &Baby)| {
        let missed = missing(chart, protocol, baby, now).into_iter().filter(is_missed).map(|score| score.minute.to_string());
        let missed: Vec<String> = missed.collect();
        let about = About::Apgar { baby: *no };
        let told = (!missed.is_empty()).then(|| {
            let message = Message::new("finding-apgar-not-recorded").with("minutes", missed.join(", "));
            plain(about.clone(), FindingState::NotRecorded, chart.numbered(message, *no), Vec::new())
        });
        let low = low(protocol, baby).map(|(again, score)| low_score(chart, protocol, *no, again, score));
        low.into_iter().chain(told)
    };
    chart.babies.iter().flat_map(of).collect()
}

fn low_score(chart: &Chart, protocol: &Protocol, baby: BabyNo, again: &ApgarAgain, score: &Noted<Apgar>) -> Finding {
    let name = chart.numbered(Message::new("watch-apgar").with("minute", again.after), baby);
    let scored = Message::new("value-scored").with("value", score.what.total());
    let limit = Message::new("value-text").with("value", again.under);
    let message = limit_words("finding-near", name, scored, Compare::Under, limit);
    Finding {
        level: Some(Level::Caution),
        threshold: Some(Threshold {
            source: format!("{}: {}", protocol.title, again.source),
            status: again.status,
            words: Some(again.words.clone()),
        }),
        ..plain(About::Apgar { baby }, FindingState::Near, message, vec![score.mark.entry])
    }
}

fn minutes(count: u32) -> i64 {
    i64::from(count) * 60_000
}
