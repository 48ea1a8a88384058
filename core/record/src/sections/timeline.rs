//! The timeline: every entry in order of time, earlier forms struck through beside what replaced them.

use secundine_domain::chart::{Line, State};
use secundine_domain::entry::Entry;
use secundine_domain::fact::Fact;
use secundine_domain::message::Message;
use secundine_domain::time::{Occurred, Precision};

use super::table;
use crate::document::Source;
use crate::page::{Align, Block, Cell, Span};

pub(crate) fn timeline(source: &Source) -> Vec<Block> {
    let mut rows = Vec::new();
    let mut lines = source.chart.lines.as_slice();
    while let Some((line, rest)) = lines.split_first() {
        let run = lines.iter().take_while(|line| is_plain_answer(source, line)).count();
        if run > 1 {
            rows.push(run_row(source, lines.get(..run).unwrap_or(&[])));
            lines = lines.get(run..).unwrap_or(&[]);
        } else {
            rows.push(row(source, line));
            lines = rest;
        }
    }
    let columns = [
        ("record-time", 4, Align::Left),
        ("record-since", 4, Align::Right),
        ("record-what", 26, Align::Left),
        ("record-by", 6, Align::Left),
    ];
    let heading = Message::new("record-timeline").with("date", first_date(source).unwrap_or_default());
    vec![Block::Heading(source.words.say(&heading)), Block::Table(table(source, &columns, rows))]
}

/// The date of the first line stands in the heading; a line of another date carries its own.
fn first_date(source: &Source) -> Option<String> {
    source.chart.lines.first().map(|line| line.shown().occurred.date())
}

/// An answer of the examination that stands as first written: the examination's table shows it already.
fn is_plain_answer(source: &Source, line: &Line) -> bool {
    let odd = source.chart.oddities.iter().any(|odd| odd.entry == line.first.id);
    matches!(line.first.fact, Fact::Examined { .. })
        && line.state() == State::Stands
        && !odd
        && line.first.written_apart().is_none()
}

/// Several such answers in one row.
fn run_row(source: &Source, run: &[Line]) -> Vec<Cell> {
    let (Some(first), Some(last)) = (run.first(), run.last()) else { return Vec::new() };
    let count = u32::try_from(run.len()).unwrap_or(u32::MAX);
    let what = Message::new("record-examined-run").with("count", count).with("until", last.shown().occurred.clock());
    cells(source, first.shown(), vec![Span::plain(source.words.say(&what))])
}

fn row(source: &Source, line: &Line) -> Vec<Cell> {
    let words = source.words;
    let shown = line.shown();
    let mut what = Vec::new();
    let mut form: &Entry = &line.first;
    for amendment in &line.amendments {
        let old = format!("{} {}", form.occurred.clock(), said(source, form));
        what.push(Span::plain(old).struck());
        what.push(Span::plain(format!("\n{}\n", words.say(&change(amendment)))).small());
        if amendment.fact != Fact::Retracted {
            form = amendment;
        }
    }
    if line.state() != State::Retracted {
        what.push(Span::plain(said(source, shown)));
    }
    let marks = marks(source, line);
    if !marks.is_empty() {
        what.push(Span::plain(format!("\n{}", marks.join("; "))).small());
    }
    cells(source, shown, what)
}

fn cells(source: &Source, shown: &Entry, what: Cell) -> Vec<Cell> {
    let since = source.chart.since_birth(&shown.occurred).map(|elapsed| elapsed.clock()).unwrap_or_default();
    let mut clock = shown.occurred.clock();
    let date = shown.occurred.date();
    if first_date(source) != Some(date.clone()) {
        clock = format!("{clock}\n{date}");
    }
    vec![vec![Span::plain(clock)], vec![Span::plain(since)], what, vec![Span::plain(&shown.author)]]
}

fn said(source: &Source, entry: &Entry) -> String {
    source.words.say(&source.chart.say(&entry.fact))
}

fn change(amendment: &Entry) -> Message {
    let id = if amendment.fact == Fact::Retracted { "record-taken-out" } else { "record-changed" };
    let reason = amendment.amends.as_ref().map(|amends| amends.reason.clone()).unwrap_or_default();
    Message::new(id)
        .with("when", amendment.recorded.date_and_clock())
        .with("author", amendment.author.as_str())
        .with("reason", reason)
}

/// What is to be known of a line beside what it says.
fn marks(source: &Source, line: &Line) -> Vec<String> {
    let words = source.words;
    let shown = line.shown();
    let mut marks = Vec::new();
    if let Some(when) = shown.written_apart() {
        marks.push(words.say(&Message::new("record-written").with("when", when)));
    }
    if source.protocol.is_some_and(|protocol| shown.is_late(protocol)) {
        marks.push(words.plain("record-late"));
    }
    if matches!(shown.occurred, Occurred::Typed { precision: Precision::Estimated, .. }) {
        marks.push(words.plain("record-estimated"));
    }
    let odd = source.chart.oddities.iter().filter(|odd| odd.entry == line.first.id);
    marks.extend(odd.map(|odd| words.say(&odd.what.message())));
    marks
}
