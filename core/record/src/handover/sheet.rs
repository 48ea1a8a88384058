//! The handover on one page, black on white.

use secundine_domain::chart::Chart;

use super::{Handover, Item, Part, Topic};
use crate::document::{Origin, Source, headed, written};
use crate::forms::{heading, lines};
use crate::page::{Block, Document, PageError, Pdf, Span};
use crate::sections::Pair;
use crate::words::Words;

/// The longest item that goes on the page, bytes. Our own choice: half a dozen lines.
const ONE_MOST: usize = 600;

/// The handover as a PDF file of one page: where not all goes on it, what matters least is left out, and it says so.
///
/// # Errors
/// [`PageError`] when the file cannot be made.
pub fn transfer_pdf(chart: &Chart, origin: &Origin) -> Result<Pdf, PageError> {
    let (document, pdf) = fitted(chart, origin)?;
    pdf.map_or_else(|| written(&document, origin.words), Ok)
}

/// The same as a document.
///
/// # Errors
/// [`PageError`] when its file could not be made.
pub fn transfer_document(chart: &Chart, origin: &Origin) -> Result<Document, PageError> {
    Ok(fitted(chart, origin)?.0)
}

fn fitted(chart: &Chart, origin: &Origin) -> Result<(Document, Option<Pdf>), PageError> {
    let source = Source::new(chart, origin);
    let whole = Handover::of(chart, origin);
    let made = |kept: &Handover| {
        let document = headed(&source, "handover-sheet", blocks(&source, kept, kept.items.len() < whole.items.len()));
        written(&document, origin.words).map(|pdf| (document, pdf))
    };
    let one_page = |kept: &Handover| match made(kept) {
        Ok((document, pdf)) => (pdf.pages == 1).then_some(Ok((document, Some(pdf)))),
        Err(error) => Some(Err(error)),
    };
    match whole.fitted(origin.words, ONE_MOST, one_page) {
        Some((_, made)) => made,
        // Never seen: what stands on every page leaves no room for an empty handover.
        None => made(&whole).map(|(document, pdf)| (document, Some(pdf))),
    }
}

fn blocks(source: &Source, handover: &Handover, more: bool) -> Vec<Block> {
    let words = source.words;
    let mut blocks = Vec::new();
    for part in Part::ALL {
        let groups: Vec<&[Item]> = handover.groups(part).collect();
        if groups.is_empty() {
            continue;
        }
        blocks.push(heading(source, part.name()));
        blocks.extend(groups.chunk_by(|a, b| is_short(a) == is_short(b)).map(|run| {
            let pairs: Vec<Pair> = run.iter().map(|group| pair(source, group)).collect();
            if run.iter().any(|group| is_short(group)) { Block::ShortFacts(pairs) } else { Block::Facts(pairs) }
        }));
    }
    if more {
        blocks.push(Block::Paragraph(vec![Span::plain(words.plain("handover-more")).bold()]));
    }
    blocks.push(lines(source, &["handover-given-by", "handover-taken-by"]));
    blocks
}

/// What goes two beside each other.
fn is_short(group: &[Item]) -> bool {
    let topic = group.first().map(|item| item.topic);
    matches!(
        topic,
        Some(
            Topic::From
                | Topic::Birth
                | Topic::Pregnancy
                | Topic::Group
                | Topic::Allergies
                | Topic::Conditions
                | Topic::Born
                | Topic::Care
        )
    )
}

/// What stands together, under its name.
fn pair(source: &Source, group: &[Item]) -> Pair {
    let words = source.words;
    let mut spans = Vec::new();
    for (n, item) in group.iter().enumerate() {
        // What was passed has a line of its own, with how well its mark was checked. Whose it is stands above.
        let own = item.threshold.is_some();
        if n > 0 {
            spans.push(Span::plain(if own { "\n" } else { "; " }));
        }
        spans.extend(said(words, item));
        spans.extend(
            item.threshold.as_ref().map(|threshold| Span::plain(format!("  ({})", words.say(&threshold.status.name()))).small()),
        );
    }
    (group.first().map(|item| words.say(&item.label)).unwrap_or_default(), spans)
}

fn said(words: &Words, item: &Item) -> [Span; 1] {
    let line = Span::plain(item.line(words));
    [if item.level.is_some() { line.bold() } else { line }]
}
