//! The timeline: every entry, with its corrections and what is odd about it.

use secundine_domain::chart::{Chart, Line, Oddity};
use secundine_domain::entry::Entry;
use secundine_domain::fact::Fact;
use secundine_domain::message::Message;
use secundine_domain::protocol::Protocol;
use secundine_domain::time::{Occurred, Precision, Stamp};
use secundine_record::after_signing;

use super::stands;
use crate::api::{EarlierView, LineView};
use crate::hide;
use crate::locked::MOMENT;

pub(super) fn lines(chart: &Chart, protocol: Option<&Protocol>) -> Vec<LineView> {
    chart.told_lines().map(|line| view(chart, protocol, line)).collect()
}

fn view(chart: &Chart, protocol: Option<&Protocol>, line: &Line) -> LineView {
    let shown = line.shown();
    let oddities = chart.oddities.iter().filter(|odd| odd.entry == line.first.id);
    LineView {
        entry: line.first.id,
        date: shown.occurred.date(),
        clock: shown.occurred.clock(),
        common: chart.common_clock(shown),
        since_birth: chart.since_birth(&shown.occurred).map(|elapsed| elapsed.clock()),
        message: said(chart, &shown.fact),
        fact: shown.fact.clone(),
        author: shown.author.clone(),
        written: chart.written_apart(shown).map(Stamp::date_and_clock),
        estimated: matches!(shown.occurred, Occurred::Typed { precision: Precision::Estimated, .. }),
        late: protocol.is_some_and(|protocol| chart.is_late(shown, protocol)),
        after_signing: after_signing(chart, line),
        retracted: !stands(line),
        earlier: earlier(chart, line),
        oddities: oddities.map(Oddity::message).collect(),
        again: chart.touched_again(line).map(|again| again.first.fact.describe()).collect(),
        unnamed: stands(line) && is_unnamed(&line.current().fact),
    }
}

/// A moment that was marked without a name, here or while it was locked.
fn is_unnamed(fact: &Fact) -> bool {
    match fact {
        Fact::MomentMarked => true,
        Fact::Noted { text } => text == MOMENT,
        _ => false,
    }
}

/// Where the names are hidden, a word of the reader's language says so.
fn said(chart: &Chart, fact: &Fact) -> Message {
    hide::said(chart.say(fact))
}

/// Each form that was left, with the amendment that left it.
fn earlier(chart: &Chart, line: &Line) -> Vec<EarlierView> {
    let mut form: &Entry = &line.first;
    let mut views = Vec::new();
    for amendment in &line.amendments {
        views.push(EarlierView {
            clock: form.occurred.clock(),
            message: said(chart, &form.fact),
            changed_by: amendment.author.clone(),
            changed: amendment.recorded.date_and_clock(),
            reason: amendment.amends.as_ref().map(|amends| amends.reason.clone()).unwrap_or_default(),
        });
        if amendment.fact != Fact::Retracted {
            form = amendment;
        }
    }
    views
}
