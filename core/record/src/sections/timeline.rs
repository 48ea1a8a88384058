//! The timeline: every entry in order of time, earlier forms struck through beside what replaced them.

use secundine_domain::chart::{Chart, Line, State};
use secundine_domain::entry::Entry;
use secundine_domain::fact::Fact;
use secundine_domain::message::Message;
use secundine_domain::time::{Occurred, Precision, date_words};

use super::{is_long, looks, table};
use crate::document::Source;
use crate::page::{Align, Block, Cell, Span};

/// When, how long after the first birth, what, by whom.
const COLUMNS: [(&str, u16, Align); 4] = [
    ("record-time", 4, Align::Left),
    ("record-since", 4, Align::Right),
    ("record-what", 26, Align::Left),
    ("record-by", 6, Align::Left),
];

/// The same where letters are smaller, in a long night.
const DENSE: [u16; 4] = [7, 7, 56, 10];

/// Rows of [`COLUMNS`].
pub(super) fn told_rows(source: &Source, rows: Vec<Vec<Cell>>) -> Block {
    let mut columns = COLUMNS;
    if is_long(source) {
        columns.iter_mut().zip(DENSE).for_each(|((_, weight, _), dense)| *weight = dense);
    }
    Block::Table(table(source, &columns, rows))
}

pub(crate) fn timeline(source: &Source) -> Vec<Block> {
    let (mut rows, mut days) = (Vec::new(), Days::new(source));
    let told: Vec<&Line> = source.chart.told_lines().collect();
    let mut lines = told.as_slice();
    while let Some((line, rest)) = lines.split_first() {
        let run = lines.iter().take_while(|line| is_plain_answer(source, line)).count();
        let looks = looks::run(source, lines);
        if run > 1 {
            rows.push(run_row(&mut days, lines.get(..run).unwrap_or(&[])));
            lines = lines.get(run..).unwrap_or(&[]);
        } else if let Some((first, count, said)) = looks {
            rows.push(cells(&mut days, first.shown(), vec![Span::plain(source.words.say(&said))]));
            lines = lines.get(count..).unwrap_or(&[]);
        } else {
            rows.push(row(&mut days, line));
            lines = rest;
        }
    }
    let heading = Message::new("record-timeline").with("date", date_words(&first_date(source).unwrap_or_default()));
    vec![Block::Heading(source.words.say(&heading)), told_rows(source, rows)]
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
        && !after_signing(source.chart, line)
        && source.chart.written_apart(&line.first).is_none()
}

/// Several such answers in one row.
fn run_row(days: &mut Days, run: &[&Line]) -> Vec<Cell> {
    let (Some(first), Some(last)) = (run.first(), run.last()) else { return Vec::new() };
    let count = u32::try_from(run.len()).unwrap_or(u32::MAX);
    let what = Message::new("record-examined-run").with("count", count).with("until", last.shown().occurred.clock());
    let what = days.source.words.say(&what);
    cells(days, first.shown(), vec![Span::plain(what)])
}

pub(super) fn row(days: &mut Days, line: &Line) -> Vec<Cell> {
    let source = days.source;
    let words = source.words;
    let shown = line.shown();
    let mut what = Vec::new();
    let mut form: &Entry = &line.first;
    for amendment in &line.amendments {
        let old = format!("{} {}", form.occurred.clock(), said(source, form));
        what.push(Span::plain(old).struck());
        let (before, after) = if is_long(source) { (' ', ' ') } else { ('\n', '\n') };
        what.push(Span::plain(format!("{before}{}{after}", words.say(&change(amendment)))).small());
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
    cells(days, shown, what)
}

/// A line as it stands, without its earlier forms and what is to be known beside it.
pub(super) fn brief_row(days: &mut Days, line: &Line) -> Vec<Cell> {
    let what = said(days.source, line.shown());
    cells(days, line.shown(), vec![Span::plain(what)])
}

fn cells(days: &mut Days, shown: &Entry, what: Cell) -> Vec<Cell> {
    let mut cells = days.when(shown);
    cells.extend([what, vec![Span::plain(&shown.author)]]);
    cells
}

/// The first two columns of a table, row after row. The date of the record's first line stands in the heading of the timeline, so
/// a row of another date has its own; in a long night, where that would double half of the rows, the first of each date has it.
pub(crate) struct Days<'a> {
    source: &'a Source<'a>,
    /// The date that goes without saying.
    known: Option<String>,
}

impl<'a> Days<'a> {
    pub fn new(source: &'a Source<'a>) -> Self {
        Self { source, known: first_date(source) }
    }

    /// When, and how long after the first birth.
    pub fn when(&mut self, shown: &Entry) -> Vec<Cell> {
        let source = self.source;
        let since = source.chart.since_birth(&shown.occurred).map(|elapsed| elapsed.clock()).unwrap_or_default();
        let mut clock = shown.occurred.clock();
        let date = Some(shown.occurred.date());
        if self.known != date {
            clock = format!("{clock}\n{}", source.words.say(&date_words(date.as_deref().unwrap_or_default())));
            if is_long(source) {
                self.known = date;
            }
        }
        vec![vec![Span::plain(clock)], vec![Span::plain(since)]]
    }
}

fn said(source: &Source, entry: &Entry) -> String {
    source.words.say(&source.chart.say(&entry.fact))
}

fn change(amendment: &Entry) -> Message {
    let id = if amendment.fact == Fact::Retracted { "record-taken-out" } else { "record-changed" };
    let reason = amendment.amends.as_ref().map(|amends| amends.reason.clone()).unwrap_or_default();
    Message::new(id).with("when", amendment.recorded.words()).with("author", amendment.author.as_str()).with("reason", reason)
}

/// Whether a line was first written after a signature: by the device's own numbers, or between two devices by their clocks.
/// A further signature adds nothing to the record, so it is not meant.
#[must_use]
pub fn after_signing(chart: &Chart, line: &Line) -> bool {
    let after = |signed: &Entry| match line.first.id.device == signed.id.device {
        true => line.first.id.n > signed.id.n,
        false => line.first.recorded.wall_ms > signed.recorded.wall_ms,
    };
    let is_signature = |line: &Line| matches!(line.first.fact, Fact::Signed { .. });
    !is_signature(line) && chart.lines.iter().filter(|line| is_signature(line)).any(|line| after(&line.first))
}

/// What is to be known of a line beside what it says.
pub(super) fn marks(source: &Source, line: &Line) -> Vec<String> {
    let words = source.words;
    let shown = line.shown();
    let mut marks = Vec::new();
    if let Some(when) = source.chart.written_apart(shown) {
        marks.push(words.say(&Message::new("record-written").with("when", when.words())));
    }
    if source.protocol.is_some_and(|protocol| source.chart.is_late(shown, protocol)) {
        marks.push(words.plain("record-late"));
    }
    if after_signing(source.chart, line) {
        marks.push(words.plain("record-addendum"));
    }
    if matches!(shown.occurred, Occurred::Typed { precision: Precision::Estimated, .. }) {
        marks.push(words.plain("record-estimated"));
    }
    let odd = source.chart.oddities.iter().filter(|odd| odd.entry == line.first.id);
    marks.extend(odd.map(|odd| words.say(&odd.message())));
    marks.extend(source.chart.touched_again(line).map(|again| words.say(&again.first.fact.describe())));
    marks
}

#[cfg(test)]
mod tests {
    use secundine_domain::chart::fold;
    use secundine_domain::entry::{BirthId, DeviceId, EntryId};
    use secundine_domain::fact::{Answer, Practice, VoiceNote, WrittenUp};
    use secundine_domain::file::FileId;
    use secundine_domain::time::Stamp;

    use super::*;
    use crate::document::{Origin, document};
    use crate::words::Words;

    const BIRTH: BirthId = BirthId(EntryId { device: DeviceId([1; 16]), n: 1 });

    /// Written at this second by this device.
    fn entry(device: u8, n: u64, second: i64, fact: Fact) -> Entry {
        let recorded = Stamp { wall_ms: 1_795_570_800_000 + second * 1000, offset_min: 60, zone: None, boot: None };
        let id = EntryId { device: DeviceId([device; 16]), n };
        let occurred = Occurred::Marked(recorded.clone());
        Entry { id, birth: BIRTH, author: "Ida".to_owned(), occurred, recorded, fact, amends: None }
    }

    fn note(text: &str) -> Fact {
        Fact::Noted { text: text.to_owned() }
    }

    fn signed() -> Fact {
        Fact::Signed { name: "Ida".to_owned(), role: "midwife".to_owned(), version: "00".to_owned() }
    }

    #[test]
    fn after_signing_goes_by_the_devices_numbers_and_between_devices_by_the_clock() {
        let entries = [
            entry(1, 1, 0, note("before")),
            entry(1, 2, 100, signed()),
            entry(1, 3, 50, note("after, though the clock was set back")),
            entry(2, 1, 99, note("other device, before")),
            entry(2, 2, 100, note("other device, at the same second")),
            entry(2, 3, 101, note("other device, after")),
            entry(2, 4, 102, signed()),
        ];
        let chart = fold(BIRTH, &entries);
        let mut after: Vec<EntryId> =
            chart.lines.iter().filter(|line| after_signing(&chart, line)).map(|line| line.first.id).collect();
        after.sort_unstable();
        assert_eq!(after, [entries[2].id, entries[5].id]);
    }

    #[test]
    fn in_print_a_voice_note_says_whether_it_is_written_up() {
        let media = "audio/webm".to_owned();
        let note = VoiceNote { placenta: Some(1), file: FileId([0x0f; 32]), ms: 200_000, media, chapters: Vec::new() };
        let up = WrittenUp { file: FileId([0x0f; 32]), text: "Chorion ragged.".to_owned() };
        let mut entries = vec![entry(1, 1, 0, Fact::VoiceNoted(note))];
        let printed = |entries: &[Entry]| {
            let practice = Practice { name: String::new(), practitioner: "Ida".to_owned(), role: String::new(), protocol: None };
            let origin = Origin { practice: &practice, version: "00", written: &entries[0].recorded, words: Words::english() };
            format!("{:?}", document(&fold(BIRTH, entries), &origin))
        };
        let before = printed(&entries);
        assert!(before.contains("Voice note at the examination, 3 min 20 s, not yet written up"), "{before}");
        assert!(before.contains("One voice note is not yet written up"), "{before}");
        entries.push(entry(1, 2, 60, Fact::WrittenUp(up)));
        let after = printed(&entries);
        assert!(after.contains("Voice note at the examination, 3 min 20 s, written up 25 Nov 2026 02:41:00"), "{after}");
        assert!(after.contains("Written up from a voice note: Chorion ragged."), "{after}");
        assert!(!after.contains("not yet written up"), "{after}");
    }

    #[test]
    fn in_print_a_touch_that_came_again_stands_in_the_row_of_its_mark() {
        let clamped = entry(1, 1, 0, Fact::CordClamped { baby: 1 });
        let again = entry(1, 2, 0, Fact::TouchedAgain { entry: clamped.id, after_ms: 430 });
        let entries = [clamped, again];
        let practice = Practice { name: String::new(), practitioner: "Ida".to_owned(), role: String::new(), protocol: None };
        let origin = Origin { practice: &practice, version: "00", written: &entries[0].recorded, words: Words::english() };
        let chart = fold(BIRTH, &entries);
        let printed = format!("{:?}", document(&chart, &origin));
        assert_eq!(printed.matches("touched again 0.43 s later").count(), 1, "{printed}");
        assert_eq!(chart.told_lines().count(), 1);
    }

    #[test]
    fn in_print_an_addition_is_marked_and_stands_in_a_row_of_its_own() {
        let answer = |item: &str| {
            let answer = Answer::Choice { option: "no".to_owned() };
            Fact::Examined { placenta: 1, item: item.to_owned(), cord: None, answer }
        };
        let mut entries = vec![entry(1, 1, 0, answer("a")), entry(1, 2, 1, answer("b")), entry(1, 3, 2, signed())];
        let rows = |entries: &[Entry]| {
            let chart = fold(BIRTH, entries);
            let practice = Practice { name: String::new(), practitioner: "Ida".to_owned(), role: String::new(), protocol: None };
            let written = &entries[0].recorded;
            let document = document(&chart, &Origin { practice: &practice, version: "00", written, words: Words::english() });
            format!("{document:?}").matches("added after signing").count()
        };
        assert_eq!(rows(&entries), 0);
        entries.push(entry(1, 4, 3, answer("c")));
        entries.push(entry(1, 5, 4, answer("d")));
        assert_eq!(rows(&entries), 2);
    }
}
