//! A record of six pages, beside its floor: the same engines writing as many letters on as many pages, without layout, tags or
//! checks. Prints time and peak memory, each of the two in a process of its own.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "a bench stops at the first surprise and prints what it finds"
)]

use std::hint::black_box;
use std::sync::Arc;

use krilla::geom::Point;
use krilla::page::PageSettings;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use parley::fontique::{Blob, Collection, CollectionOptions, SourceCache};
use parley::{FontContext, FontFamilyName, LayoutContext, StyleProperty};
use secundine_domain::chart::{Chart, fold};
use secundine_domain::entry::{BirthId, DeviceId, Entry, EntryId};
use secundine_domain::fact::{Answer, Care, Client, Fact, Loss, MotherObservation, Practice};
use secundine_domain::quantity::{HeartRate, Pressure, Volume};
use secundine_domain::time::{Occurred, Stamp};
use secundine_record::page::{Block, Document, Span};
use secundine_record::words::Words;
use secundine_record::{Origin, document, pdf};
use secundine_tests::measure::report_alone;

const FONT: &[u8] = include_bytes!("../../core/record/fonts/AtkinsonHyperlegibleNext-Regular.ttf");
const GOAL_MS: f64 = 300.0;
const GOAL_MB: u64 = 80;
const ENTRIES: u64 = 70;
/// Pages of the record: what the floor is parted into.
const PAGES: usize = 6;

fn main() {
    let chart = chart();
    let practice = Practice { name: "Heron House".into(), practitioner: "Ida".into(), role: "midwife".into(), protocol: None };
    let origin = Origin { practice: &practice, version: &"0f".repeat(32), written: &stamp(400), words: Words::english() };
    let text = text(&document(&chart, &origin));
    let (floor, least) = report_alone("krilla and parley alone", || drop(black_box(plain(&text, PAGES))));
    let (took, peak) = report_alone("the record", || drop(black_box(pdf(&chart, &origin).unwrap())));
    let made = pdf(&chart, &origin).unwrap();
    assert_eq!(made.pages, PAGES);
    println!("a record of {} pages, {} letters, {:.0} kB", made.pages, text.chars().count(), made.bytes.len() as f64 / 1e3);
    assert!(least > 0 && peak > 0, "no program sets pages without memory");
    let met = if took < GOAL_MS && peak < GOAL_MB { "met" } else { "MISSED" };
    println!("    {:.1} times its floor; goal {GOAL_MS} ms, {GOAL_MB} MB: {met}", took / floor);
}

/// So many letters on so many pages.
fn plain(text: &str, pages: usize) -> Vec<u8> {
    let mut fonts = FontContext {
        collection: Collection::new(CollectionOptions { shared: false, system_fonts: false }),
        source_cache: SourceCache::default(),
    };
    fonts.collection.register_fonts(Blob::new(Arc::new(FONT)), None);
    let mut layouts: LayoutContext<[u8; 4]> = LayoutContext::new();
    let font = Font::new(FONT.into(), 0).unwrap();
    let mut file = krilla::Document::new();
    let letters: Vec<char> = text.chars().collect();
    for part in letters.chunks(letters.len().div_ceil(pages)) {
        let part: String = part.iter().collect();
        let mut builder = layouts.ranged_builder(&mut fonts, &part, 1.0, false);
        builder.push_default(FontFamilyName::Named("Atkinson Hyperlegible Next".into()));
        builder.push_default(StyleProperty::FontSize(10.25));
        let mut layout = builder.build(&part);
        layout.break_all_lines(Some(510.0));
        let mut page = file.start_page_with(PageSettings::from_wh(595.28, 841.89).unwrap());
        let mut surface = page.surface();
        for line in layout.lines() {
            for run in line.runs() {
                let size = run.font_size();
                let mut glyphs = Vec::new();
                for cluster in run.visual_clusters() {
                    let range = cluster.text_range();
                    glyphs.extend(cluster.glyphs().map(|glyph| {
                        KrillaGlyph::new(GlyphId::new(glyph.id), glyph.advance / size, 0.0, 0.0, 0.0, range.clone(), None)
                    }));
                }
                let start = Point::from_xy(42.5, 42.5 + line.metrics().baseline);
                surface.draw_glyphs(start, &glyphs, font.clone(), &part, size, false);
            }
        }
        surface.finish();
        page.finish();
    }
    file.finish().unwrap()
}

/// Everything that a document says.
fn text(document: &Document) -> String {
    let spans = |spans: &[Span]| spans.iter().map(|span| span.text.clone()).collect::<String>();
    let pairs = |pairs: &[(String, Vec<Span>)]| pairs.iter().map(|(name, value)| format!("{name} {}", spans(value))).collect();
    let block = |block: &Block| -> Vec<String> {
        match block {
            Block::Heading(text) | Block::Subheading(text) => vec![text.clone()],
            Block::Paragraph(text) => vec![spans(text)],
            Block::Facts(facts) | Block::ShortFacts(facts) => pairs(facts),
            Block::Table(table) => table.rows.iter().flatten().map(|cell| spans(cell)).collect(),
            Block::Notice(notice) => vec![notice.word.clone(), spans(&notice.text)],
            Block::Pictures(pictures) => pictures.iter().map(|picture| picture.caption.clone()).collect(),
            Block::Drawing(drawing) => drawing.labels.iter().map(|label| label.text.clone()).collect(),
            Block::Ticks(lines) => lines.iter().map(|line| spans(line)).collect(),
            Block::Signature(labels) => labels.clone(),
            Block::Gap(_) => Vec::new(),
        }
    };
    document.blocks.iter().flat_map(block).collect::<Vec<_>>().join(" ")
}

fn stamp(n: u64) -> Stamp {
    Stamp { wall_ms: 1_795_570_800_000 + i64::try_from(n).unwrap() * 60_000, offset_min: 60, zone: None, boot: None }
}

/// A birth with its blood, looks at the mother and an examination.
fn chart() -> Chart {
    let birth = BirthId(EntryId { device: DeviceId([7; 16]), n: 1 });
    let client = Client { name: "Rosa Amberly".to_owned(), born: Some("1993-08-14".to_owned()), ..Client::default() };
    let opening = [
        Fact::BirthRegistered { label: "Birch Row 4".to_owned(), rehearsal: false },
        Fact::ProtocolChosen { protocol: "who".to_owned(), own: None },
        Fact::ClientRecorded(client),
        Fact::CareChosen { care: Care::Physiological },
        Fact::BabyBorn { baby: 1 },
        Fact::CordClamped { baby: 1 },
        Fact::PlacentaBorn { babies: vec![1] },
    ];
    let answers = [("disc-length", 205), ("disc-breadth", 180), ("cord-thickness", 12), ("insertion-edge", 40)];
    let fact = |n: usize| match (opening.get(n), answers.get(n.wrapping_sub(opening.len()))) {
        (Some(fact), _) => fact.clone(),
        (_, Some((item, value))) => {
            Fact::Examined { placenta: 1, item: (*item).to_owned(), cord: None, answer: Answer::Measure { value: *value } }
        }
        _ => match n % 3 {
            0 => Fact::BloodLoss(Loss::Jug { volume: Volume::new(15).unwrap() }),
            1 => Fact::MotherObserved(MotherObservation {
                pulse: HeartRate::new(84).ok(),
                systolic: Pressure::new(118).ok(),
                diastolic: Pressure::new(72).ok(),
                ..MotherObservation::default()
            }),
            _ => Fact::Noted { text: "She drank a cup of sweet tea and is talking with her sister.".to_owned() },
        },
    };
    let entry = |n: u64| {
        let recorded = stamp(n * 2);
        let occurred = Occurred::Marked(recorded.clone());
        let id = EntryId { n: n + 1, ..birth.0 };
        let fact = fact(usize::try_from(n).unwrap());
        Entry { id, birth, author: "Ida Lindqvist".to_owned(), occurred, recorded, fact, amends: None }
    };
    let entries: Vec<Entry> = (0..ENTRIES).map(entry).collect();
    fold(birth, &entries)
}
