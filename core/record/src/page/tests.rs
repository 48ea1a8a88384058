//! Laws of the page.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "a test may stop")]

mod charts;
mod setting;

use std::collections::BTreeMap;

use super::furniture::Furniture;
use super::paginate::{Page, paginate};
use super::strip::{Mark, Strip};
use super::tags::Tags;
use super::text::{Face, NOTE, Setter};
use super::{Align, Block, Cell, Column, Document, Made, Manner, Notice, PageError, Shape, Span, Table, WIDTH, flow, write};

fn document(blocks: Vec<Block>) -> Document {
    Document {
        title: "Title".into(),
        language: "en-GB".into(),
        made: Made { year: 2026, month: 3, day: 14, hour: 6, minute: 40, second: 0, offset: -330 },
        label: "Label".into(),
        banner: None,
        footer: "Footer".into(),
        blocks,
        manner: Manner::default(),
    }
}

fn pages(document: &Document) -> (Vec<Page>, f32) {
    let mut setter = Setter::new(&document.language).unwrap();
    let mut tags = Tags::new();
    let body = Furniture::new(document, &mut setter, &mut tags).body();
    let strips = flow::strips(document, body, &mut setter, &mut tags).unwrap();
    (paginate(strips, body), body)
}

/// The words on a strip, line by line. Those that are only repeated are left out on request.
fn words(strip: &Strip, content_only: bool) -> Vec<String> {
    let lines = strip.marks.iter().filter_map(|mark| match mark {
        Mark::Line { text, line, node, .. } if node.is_some() || !content_only => {
            let range = text.layout.get(*line).unwrap().text_range();
            Some(text.source.get(range).unwrap().trim_end().to_owned())
        }
        _ => None,
    });
    lines.collect()
}

fn all_words(pages: &[Page]) -> String {
    let strips = pages.iter().flatten().map(|(_, strip)| words(strip, true).join(" ") + " ");
    strips.collect()
}

fn text(words: impl Into<String>) -> Cell {
    vec![Span::plain(words)]
}

fn table(rows: Vec<Vec<Cell>>) -> Block {
    let column = |head: &str, align| Column { head: head.into(), weight: 1, align };
    Block::Table(Table { columns: vec![column("Left", Align::Left), column("Right", Align::Right)], rows, dense: false })
}

fn numbered(rows: usize) -> Block {
    table((0..rows).map(|row| vec![text(format!("row{row:03}")), text(row.to_string())]).collect())
}

/// `n` paragraphs of one line, to push what follows down the page.
fn filler(n: usize) -> Vec<Block> {
    (0..n).map(|_| Block::Paragraph(text("filler"))).collect()
}

#[test]
fn every_row_is_on_exactly_one_page() {
    for rows in [0, 1, 2, 30, 31, 32, 33, 200] {
        let (pages, _) = pages(&document(vec![numbered(rows)]));
        let mut seen: BTreeMap<String, usize> = BTreeMap::new();
        for (_, strip) in pages.iter().flatten() {
            for word in words(strip, true).into_iter().filter(|word| word.starts_with("row")) {
                *seen.entry(word).or_default() += 1;
            }
        }
        assert_eq!(seen.len(), rows);
        assert!(seen.values().all(|times| *times == 1), "{seen:?}");
    }
}

#[test]
fn the_header_of_a_table_heads_each_of_its_pages() {
    let (pages, _) = pages(&document(vec![numbered(200)]));
    assert!(pages.len() > 3);
    for page in &pages[1..] {
        assert_eq!(words(&page[0].1, false), ["Left", "Right"]);
        assert_eq!(words(&page[0].1, true), [""; 0], "a repeated header is no content");
        assert!(words(&page[1].1, true)[0].starts_with("row"));
    }
}

#[test]
fn nothing_reaches_below_the_body_or_over_its_neighbour() {
    let long = "A longer text that takes several lines in a narrow column. ".repeat(5);
    for n in 0..45 {
        let mut blocks = filler(n);
        blocks.push(Block::Heading("Heading".into()));
        blocks.push(table((0..20).map(|row| vec![text(&long), text(row.to_string())]).collect()));
        blocks.push(Block::Gap(50.0));
        blocks.push(Block::Signature(vec!["Name".into(), "Date".into()]));
        let (pages, body) = pages(&document(blocks));
        for page in &pages {
            let mut used = 0.0;
            for (top, strip) in page {
                assert!(*top >= used - 0.01, "strips overlap");
                used = top + strip.height;
            }
            assert!(used <= body + 0.01, "{used} of {body}");
        }
    }
}

#[test]
fn no_heading_and_no_table_header_is_the_last_on_a_page() {
    for n in 0..80 {
        let mut blocks = filler(n);
        blocks.push(Block::Gap(if n % 2 == 0 { 0.0 } else { 600.0 }));
        blocks.push(Block::Heading("Heading".into()));
        blocks.push(Block::Subheading("Heading".into()));
        blocks.push(numbered(3));
        let (pages, _) = pages(&document(blocks));
        for page in &pages {
            let last = words(&page.last().unwrap().1, false);
            assert!(last[0] != "Heading" && last[0] != "Left", "after {n} lines");
        }
    }
}

#[test]
fn no_page_begins_or_ends_with_a_single_line_of_a_paragraph() {
    let long = "word ".repeat(100);
    for n in 0..45 {
        let mut blocks = filler(n);
        blocks.push(Block::Paragraph(text(&long)));
        let (pages, _) = pages(&document(blocks));
        for page in &pages {
            let lines = page.iter().filter(|(_, strip)| words(strip, true)[0].starts_with("word")).count();
            assert_ne!(lines, 1, "after {n} lines");
        }
    }
}

#[test]
fn a_cell_taller_than_a_page_loses_nothing() {
    let long: String = (0..2000).map(|n| format!("{n:04} ")).collect();
    let (pages, _) = pages(&document(vec![table(vec![vec![text(&long), text("x")]])]));
    assert!(pages.len() > 2);
    // The other cell says "x" beside the first line.
    let seen = all_words(&pages).replacen('x', " ", 1);
    let numbers: Vec<&str> = long.split_whitespace().collect();
    assert_eq!(seen.trim_start_matches("Title Left Right").split_whitespace().collect::<Vec<_>>(), numbers);

    let unbroken = "x".repeat(10_000);
    let (pages, body) = self::pages(&document(vec![table(vec![vec![text(&unbroken)]])]));
    assert_eq!(all_words(&pages).matches('x').count(), 10_000);
    for (top, strip) in pages.iter().flatten() {
        assert!(top + strip.height <= body + 0.01, "a row runs off its page");
        for mark in &strip.marks {
            if let Mark::Line { text, .. } = mark {
                assert!(text.width() <= WIDTH / 2.0, "text runs out of its column");
            }
        }
    }
}

#[test]
fn any_text_can_be_printed() {
    let nasty = [
        "",
        " ",
        "\n\n\n",
        "\0\u{1}\u{7f}\u{85}\t\r\n\r\u{b}\u{c}\u{1b}[31m",
        "مرحبا 123 بالعالم",
        "שלום\u{202e}abc\u{2066}x\u{2069}",
        "हैलो 👩🏽‍🍼 🦩 👨‍👩‍👧 e\u{301}\u{301}\u{301}",
        "\u{fffe}\u{ffff}\u{feff}\u{e000}\u{f8ff}\u{10ffff}\u{fdd0}\u{ad}\u{200b}\u{200d}\u{fe0f}",
        "Nguyễn µg Ŵ ½ → ≥",
    ];
    for words in nasty.iter().map(|words| (*words).to_owned()).chain(["\u{1f476}".repeat(200)]) {
        let spans = vec![Span::plain(&words), Span::plain(&words).bold().struck(), Span::plain(&words).small()];
        let blocks = vec![
            Block::Heading(words.clone()),
            Block::Subheading(words.clone()),
            Block::Paragraph(spans.clone()),
            Block::Facts(vec![(words.clone(), spans.clone()), (words.clone(), Vec::new())]),
            table(vec![vec![spans.clone(), spans.clone()], Vec::new()]),
            Block::Notice(Notice { shape: Shape::Octagon, word: words.clone(), text: spans }),
            Block::Signature(vec![words.clone(); 3]),
        ];
        let document = Document {
            title: format!("T{words}"),
            label: words.clone(),
            banner: Some(words.clone()),
            footer: words.clone(),
            ..document(blocks)
        };
        let pdf = write(&document, &|_, _| words.clone());
        assert!(pdf.as_ref().is_ok_and(|pdf| pdf.pages > 0), "{words:?}: {:?}", pdf.err());
    }
}

#[test]
fn empty_and_odd_blocks_can_be_printed() {
    let column = Column { head: String::new(), weight: 0, align: Align::Right };
    let blocks = vec![
        Block::Facts(Vec::new()),
        Block::Signature(Vec::new()),
        Block::Paragraph(Vec::new()),
        Block::Table(Table { columns: Vec::new(), rows: Vec::new(), dense: false }),
        numbered(0),
        Block::Table(Table { columns: vec![column; 60], rows: vec![vec![text("1234"); 60]; 3], dense: false }),
        Block::Gap(f32::NAN),
        Block::Gap(-5.0),
        Block::Gap(f32::INFINITY),
        Block::Heading("Last".into()),
    ];
    let pdf = write(&document(blocks), &|_, _| String::new()).unwrap();
    assert!(pdf.pages >= 2);
    assert_eq!(write(&document(Vec::new()), &|_, _| String::new()).unwrap().pages, 1);
}

#[test]
fn a_long_label_leaves_room_for_the_record() {
    let long = "name ".repeat(2000);
    let document = Document { label: long.clone(), banner: Some(long.clone()), footer: long, ..document(vec![numbered(3)]) };
    let (pages, body) = pages(&document);
    assert!(body > 500.0 && pages.len() == 1);
}

#[test]
fn a_title_too_long_for_the_file_is_still_printed_whole() {
    let title = "title ".repeat(7000);
    let document = Document { title: title.clone(), ..document(Vec::new()) };
    let (pages, _) = pages(&document);
    assert_eq!(all_words(&pages).matches("title").count(), 7000);
    assert!(write(&document, &|_, _| String::new()).is_ok());
}

#[test]
fn the_same_document_gives_the_same_bytes() {
    let mut blocks = filler(3);
    blocks.push(numbered(60));
    let document = Document { banner: Some("Rehearsal".into()), ..document(blocks) };
    let page_words = |page: usize, pages: usize| format!("{page}/{pages}");
    let first = write(&document, &page_words).unwrap();
    assert_eq!(first, write(&document, &page_words).unwrap());
    assert!(first.bytes.starts_with(b"%PDF-1.7"));
    let other = Document { label: "Other".into(), ..document };
    assert_ne!(first, write(&other, &page_words).unwrap());
}

#[test]
fn every_page_is_given_its_number() {
    let asked = std::cell::RefCell::new(Vec::new());
    let pdf = write(&document(vec![numbered(100)]), &|page, pages| {
        asked.borrow_mut().push((page, pages));
        String::new()
    });
    let pages = pdf.unwrap().pages;
    assert_eq!(asked.into_inner(), (1..=pages).map(|page| (page, pages)).collect::<Vec<_>>());
}

#[test]
fn mistakes_of_the_caller_are_errors() {
    let write = |document: Document| write(&document, &|_, _| String::new()).unwrap_err();
    assert_eq!(write(Document { title: " \n".into(), ..document(Vec::new()) }), PageError::Untitled);
    let language = PageError::Language("?".into());
    assert_eq!(write(Document { language: "?".into(), ..document(Vec::new()) }), language);
    let wide = document(vec![table(vec![vec![text("x"); 3]])]);
    assert_eq!(write(wide), PageError::RowTooWide { cells: 3, columns: 2 });
}

#[test]
fn nothing_is_set_under_nine_points() {
    let faces = [Face::TITLE, Face::HEADING, Face::SUBHEADING, Face::BODY, Face::LABEL, Face::COLUMN, Face::HEADER, Face::FOOTER];
    assert!(faces.iter().all(|face| face.size >= 9.0 && face.leading > face.size));
    const { assert!(Face::BODY.size * NOTE >= 9.0) };
}
