//! The phones at a birth, as the page tells of them.

use secundine_domain::chart::Chart;
use secundine_domain::message::Message;
use secundine_domain::time::{give_or_take, span};

use crate::api::{ComparedLine, PhonesView};

pub(super) fn phones(chart: &Chart) -> PhonesView {
    let awaits =
        (!chart.awaited().is_empty()).then(|| Message::new(if chart.is_partial() { "phones-partial" } else { "phones-awaited" }));
    let line = |compared: &secundine_domain::chart::Noted<secundine_domain::fact::Compared>| ComparedLine {
        clock: compared.mark.at.clock(),
        said: compared.what.words(),
    };
    PhonesView { awaits, compared: chart.compared.iter().map(line).collect(), drift: drift(chart) }
}

/// From the first to the last comparison that one phone made of the same other.
fn drift(chart: &Chart) -> Option<Message> {
    let last = chart.compared.last()?;
    let same = |other: &&secundine_domain::chart::Noted<secundine_domain::fact::Compared>| {
        other.mark.entry.device == last.mark.entry.device && other.what.other == last.what.other
    };
    let first = chart.compared.iter().find(same).filter(|first| first.mark.entry != last.mark.entry)?;
    let by = last.what.ahead_ms.saturating_sub(first.what.ahead_ms);
    let error = last.what.error_ms.saturating_add(first.what.error_ms);
    Some(
        Message::new("phones-drift").with("clock", first.mark.at.clock()).with("by", span(by)).with("error", give_or_take(error)),
    )
}
