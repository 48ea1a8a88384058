//! What stands in the record of a birth.

use secundine_domain::assess::{Finding, assess};
use secundine_domain::chart::Chart;
use secundine_domain::fact::Practice;
use secundine_domain::message::Message;
use secundine_domain::protocol::Protocol;
use secundine_domain::time::Stamp;

use crate::graph::graph;
use crate::page::{self, Block, Document, Made, Manner, PageError, Pdf, Span};
use crate::sections;
use crate::words::Words;

/// Where a record comes from.
pub struct Origin<'a> {
    /// The practice and its practitioner.
    pub practice: &'a Practice,
    /// SHA-256 of the entries that it shows, hexadecimal.
    pub version: &'a str,
    /// When it is made.
    pub written: &'a Stamp,
    /// The language that it is written in.
    pub words: &'a Words,
}

/// What the sections are made from.
pub(crate) struct Source<'a> {
    pub chart: &'a Chart,
    pub origin: &'a Origin<'a>,
    pub protocol: Option<&'a Protocol>,
    pub findings: Vec<Finding>,
    pub words: &'a Words,
}

impl<'a> Source<'a> {
    pub fn new(chart: &'a Chart, origin: &'a Origin<'a>) -> Self {
        let protocol = chart.protocol();
        Self { chart, origin, protocol, findings: assess(chart, protocol, origin.written), words: origin.words }
    }
}

/// The record as a PDF file.
///
/// # Errors
/// [`PageError`] when the file cannot be made.
pub fn pdf(chart: &Chart, origin: &Origin) -> Result<Pdf, PageError> {
    written(&document(chart, origin), origin.words)
}

/// A document as a PDF file; the pages of a record are numbered.
pub(crate) fn written(document: &Document, words: &Words) -> Result<Pdf, PageError> {
    let page_words = |page: usize, pages: usize| {
        if document.manner == Manner::Keepsake {
            return String::new();
        }
        let number = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        words.say(&Message::new("record-page").with("page", number(page)).with("pages", number(pages)))
    };
    page::write(document, &page_words)
}

/// The record as a document: who, times and blood, what was held against the protocol, babies, the course as a drawing and a
/// table, the account of an emergency, medicines, examination, photographs, leaving, timeline, signatures and version.
#[must_use]
pub fn document(chart: &Chart, origin: &Origin) -> Document {
    let source = Source::new(chart, origin);
    let mut blocks = sections::birth(&source);
    blocks.extend(sections::times(&source));
    blocks.extend(sections::findings(&source));
    blocks.extend(sections::babies(&source));
    let mut course = [graph(&source), sections::account(&source), sections::medicines(&source)];
    if sections::is_long(&source) {
        // The drawing takes most of a page, and pages of readings follow it.
        course.rotate_left(1);
    }
    blocks.extend(course.into_iter().flatten());
    blocks.extend(sections::examinations(&source));
    blocks.extend(sections::photographs(&source));
    blocks.extend(sections::leaving(&source));
    blocks.extend(sections::timeline(&source));
    blocks.extend(sections::signatures(&source));
    blocks.push(Block::Paragraph(vec![Span::plain(origin.words.plain("record-note")).small()]));
    headed(&source, "record-title", blocks)
}

/// A document about this birth, with what stands above and below every page of it, and whether its words are a draft.
pub(crate) fn headed(source: &Source, title: &str, mut blocks: Vec<Block>) -> Document {
    let Source { chart, origin, words, .. } = source;
    let footer = Message::new("record-footer")
        .with("written", origin.written.words())
        .with("version", origin.version.chars().take(16).collect::<String>());
    blocks.extend(words.draft().map(|draft| Block::Paragraph(vec![Span::plain(draft).small()])));
    Document {
        title: words.plain(title),
        language: words.language().to_owned(),
        made: made(origin.written),
        label: label(chart),
        banner: chart.rehearsal.then(|| words.plain("record-rehearsal")),
        footer: words.say(&footer),
        blocks,
        manner: Manner::Record,
    }
}

/// Mother and birth, on every page.
fn label(chart: &Chart) -> String {
    let client = chart.client.as_ref();
    let name = client.map(|client| client.name.trim()).filter(|name| !name.is_empty());
    let born = client.and_then(|client| client.born.as_deref());
    [name, born.map(str::trim), Some(chart.label.as_str())].into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

/// When a document is made.
pub(crate) fn made(stamp: &Stamp) -> Made {
    let (date, clock) = (stamp.date(), stamp.clock());
    let mut numbers = date.split('-').chain(clock.split(':')).map(|part| part.parse::<u16>().unwrap_or(0));
    let mut next = || numbers.next().unwrap_or(0);
    let (year, month, day, hour, minute, second) = (next(), next(), next(), next(), next(), next());
    let small = |number: u16| u8::try_from(number).unwrap_or(0);
    Made {
        year,
        month: small(month),
        day: small(day),
        hour: small(hour),
        minute: small(minute),
        second: small(second),
        offset: i16::try_from(stamp.offset_min).unwrap_or(0),
    }
}
