//! Every fact of a birth as a table (CSV, RFC 4180): a row for each value, so that a spreadsheet or a statistician's program
//! takes it as it is. `core/decisions/0024-archive-and-tables.md` says what the columns are.

use csv::{Terminator, WriterBuilder};
use secundine_domain::chart::{Chart, Line};
use secundine_domain::entry::{BirthId, Entry};
use secundine_domain::fact::Fact;
use secundine_domain::time::{Certainty, Occurred, Precision};

use cell::Cell;
use values::{Value, values};

use crate::words::Words;

mod cell;
mod units;
mod values;

/// The columns. Names for programs, the same in every language.
const COLUMNS: [&str; 18] = [
    "birth",
    "entry",
    "time",
    "time_known",
    "since_birth_s",
    "since_birth_known",
    "baby",
    "placenta",
    "what",
    "value",
    "unit",
    "words",
    "author",
    "recorded",
    "state",
    "amends",
    "reason",
    "rehearsal",
];

/// The mark by which spreadsheets know that a file is UTF-8.
const UTF_8: &[u8] = "\u{feff}".as_bytes();

/// The table, its lines in order of time, earlier forms of what was put right before the later ones.
///
/// # Errors
/// None that a chart can cause.
pub fn csv(birth: BirthId, chart: &Chart, words: &Words) -> Result<Vec<u8>, csv::Error> {
    let mut writer = WriterBuilder::new().terminator(Terminator::CRLF).from_writer(UTF_8.to_vec());
    writer.write_record(COLUMNS)?;
    for line in &chart.lines {
        for entry in std::iter::once(&line.first).chain(&line.amendments) {
            for value in values(&entry.fact) {
                writer.write_record(row(birth, chart, words, line, entry, value).map(Cell::written))?;
            }
        }
    }
    writer.into_inner().map_err(|error| error.into_error().into())
}

fn row(birth: BirthId, chart: &Chart, words: &Words, line: &Line, entry: &Entry, value: Value) -> [Cell; COLUMNS.len()] {
    let number = |number: Option<u8>| number.map_or_else(Cell::nothing, |number| Cell::parts(number.into(), 1));
    let since = chart.since_birth(&entry.occurred);
    let Value { baby, placenta, what, value, unit } = value;
    let amends = entry.amends.as_ref();
    [
        Cell::code(birth.0),
        Cell::code(entry.id),
        Cell::Code(entry.occurred.rfc3339()),
        Cell::code(known(&entry.occurred)),
        since.map_or_else(Cell::nothing, |since| Cell::parts(since.ms, 1_000)),
        Cell::code(since.map_or("", |since| certainty(since.certainty))),
        number(baby),
        number(placenta),
        Cell::Code(what),
        value,
        Cell::code(unit),
        Cell::Text(words.say(&chart.say(&entry.fact))),
        Cell::text(&entry.author),
        Cell::Code(entry.recorded.rfc3339()),
        Cell::code(state(line, entry)),
        amends.map_or_else(Cell::nothing, |amends| Cell::code(amends.entry)),
        amends.map_or_else(Cell::nothing, |amends| Cell::text(&amends.reason)),
        Cell::code(chart.rehearsal),
    ]
}

fn known(at: &Occurred) -> &'static str {
    match at {
        Occurred::Marked(_) => "marked",
        Occurred::Typed { precision: Precision::Exact, .. } => "typed",
        Occurred::Typed { precision: Precision::Estimated, .. } => "estimated",
    }
}

fn certainty(certainty: Certainty) -> &'static str {
    match certainty {
        Certainty::Measured => "measured",
        Certainty::AcrossRestart => "across_restart",
        Certainty::AtLeast => "at_least",
        Certainty::Typed => "typed",
        Certainty::Compared => "compared",
        Certainty::NotCompared => "not_compared",
    }
}

/// What became of one form of a line.
fn state(line: &Line, entry: &Entry) -> &'static str {
    let last = line.current();
    match (entry.fact == Fact::Retracted, last.fact == Fact::Retracted, entry.id == last.id) {
        (true, _, _) => "withdrawal",
        (false, true, _) if entry.id == line.shown().id => "withdrawn",
        (false, _, true) => "stands",
        (false, _, false) => "replaced",
    }
}

#[cfg(test)]
mod tests;
