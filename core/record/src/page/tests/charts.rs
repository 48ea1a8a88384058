//! Laws of the pages of any chart. `PROPTEST_CASES` sets how many are tried.

#[path = "../../../../domain/tests/common/mod.rs"]
mod common;

use common::arbitrary::{entries, stamp};
use common::{BIRTH, MINUTE, START, born, care, examined, id, jug, look, oxytocin, placenta};
use proptest::prelude::*;
use secundine_domain::chart::{Chart, fold};
use secundine_domain::entry::{Amendment, Entry};
use secundine_domain::examination::Examination;
use secundine_domain::fact::{Answer, Bleeding, Care, Fact, Fundus, MotherObservation, NewbornEvent, Practice, ResponseStep};
use secundine_domain::quantity::{HeartRate, Pressure, RespiratoryRate, Saturation, Temperature};
use secundine_domain::time::{Occurred, Stamp};

use super::super::model::{Block, Cell};
use super::super::paginate::Page;
use super::super::strip::{Mark, Strip};
use super::super::text::Face;
use super::{Document, pages, words};
use crate::words::Words;
use crate::{Origin, document, parents_document};

/// So many charts are tried where nobody says how many.
const CASES: u32 = 24;

fn cases() -> ProptestConfig {
    let asked = std::env::var("PROPTEST_CASES").ok().and_then(|count| count.parse().ok());
    ProptestConfig { cases: asked.unwrap_or(CASES), failure_persistence: None, max_shrink_iters: 60, ..ProptestConfig::default() }
}

fn printed(chart: &Chart, now: &Stamp, make: fn(&Chart, &Origin) -> Document) -> Document {
    let practice = Practice { name: "Heron House".into(), practitioner: "Ida".into(), role: "midwife".into(), protocol: None };
    make(chart, &Origin { practice: &practice, version: &"0f".repeat(32), written: now, words: Words::english() })
}

/// The size of the letters of a strip, and whether they are bold; none without words.
fn face(strip: &Strip) -> Option<(f32, bool)> {
    strip.marks.iter().find_map(|mark| match mark {
        Mark::Line { text, .. } => Some((text.face.size, text.face.bold)),
        _ => None,
    })
}

fn is_heading(strip: &Strip) -> bool {
    let faces =
        [Face::TITLE, Face::HEADING, Face::SUBHEADING, Face::COLUMN, Face::DENSE_COLUMN].map(|face| (face.size, face.bold));
    face(strip).is_some_and(|face| faces.contains(&face))
}

/// A strip that is one line of a text of several: which line, of how many.
fn lone_line(strip: &Strip) -> Option<(usize, usize)> {
    match strip.marks.as_slice() {
        [Mark::Line { text, line, .. }] if text.lines() > 1 => Some((*line, text.lines())),
        _ => None,
    }
}

/// What is wrong with the pages of a document.
fn faults(pages: &[Page], body: f32) -> Vec<String> {
    let mut faults = Vec::new();
    for (n, page) in pages.iter().enumerate() {
        let mut say = |what: &str, strip: &Strip| faults.push(format!("page {}: {what}: {:?}", n + 1, words(strip, false)));
        let (Some((_, first)), Some((_, last))) = (page.first(), page.last()) else { continue };
        if is_heading(last) {
            say("ends with a heading", last);
        }
        if lone_line(last).is_some_and(|(line, _)| line == 0) {
            say("ends with the first line of a text", last);
        }
        if n > 0 && lone_line(first).is_some_and(|(line, lines)| line + 1 == lines) {
            say("begins with the last line of a text", first);
        }
        if first.header.is_some() {
            say("a table goes on without its header", first);
        }
        for (_, strip) in page.iter().filter(|(_, strip)| strip.header.is_some()) {
            let lines = || {
                strip.marks.iter().filter_map(|mark| match mark {
                    Mark::Line { text, .. } => Some(text),
                    _ => None,
                })
            };
            let here = |text| lines().filter(|other| std::rc::Rc::ptr_eq(other, text)).count();
            // A row that could fill much of a page by itself may flow from one to the next.
            let tall = lines().any(|text| text.lines() as f32 * text.face.leading > body * 0.3);
            if !tall && lines().any(|text| here(text) != text.lines()) {
                say("a row is cut", strip);
            }
        }
        let used = last.height + page.last().map_or(0.0, |(top, _)| *top);
        if used > body + 0.01 {
            say("runs off the page", last);
        }
    }
    faults
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn no_page_of_any_record_ends_in_a_heading_or_cuts_a_row((entries, now) in (entries(), stamp())) {
        let chart = fold(BIRTH, &entries);
        let (pages, body) = pages(&printed(&chart, &now, document));
        prop_assert_eq!(faults(&pages, body), Vec::<String>::new());
    }

    #[test]
    fn the_page_for_the_parents_of_one_or_two_is_one_page((entries, now) in (entries(), stamp())) {
        let chart = fold(BIRTH, &entries);
        let (pages, body) = pages(&printed(&chart, &now, parents_document));
        prop_assert!(faults(&pages, body).is_empty());
        if chart.babies.len() <= 2 {
            prop_assert_eq!(pages.len(), 1);
        }
    }
}

/// How often the mother was looked at.
#[derive(Clone, Copy, PartialEq)]
enum Looks {
    Sometimes,
    /// Nearly always, each time with every reading and something else that was seen.
    Always,
}

/// A long night: every minute and a half a look, an amount, words, a dose, something of the baby or a moment; the examination in one go, help called half way,
/// every tenth entry puts the one before it right.
fn night(count: u64, looks: Looks) -> Chart {
    let opening = [
        Fact::BirthRegistered { label: "2026-11-25 02:40".to_owned(), rehearsal: false },
        Fact::ProtocolChosen { protocol: "who".to_owned(), own: None },
        care(Care::Physiological),
        born(1),
        placenta(&[1]),
    ];
    let items: Vec<&str> = Examination::standard().items.iter().map(|item| item.id.as_str()).collect();
    let full = MotherObservation {
        pulse: HeartRate::new(96).ok(),
        systolic: Pressure::new(104).ok(),
        diastolic: Pressure::new(66).ok(),
        respirations: RespiratoryRate::new(18).ok(),
        fundus: Some(Fundus::Firm),
        bleeding: Some(Bleeding::Light),
        ..MotherObservation::default()
    };
    let text = "She drank a cup of sweet tea and is talking with her sister. The pad was changed.".to_owned();
    let fact = |n: usize| match (opening.get(n - 1), n) {
        (Some(fact), _) => fact.clone(),
        (_, 40..75) => examined(items[(n - 40) % items.len()], Answer::CouldNotTell),
        (_, 150..) if n.is_multiple_of(8) => Fact::ResponseMarked { step: ResponseStep::ALL[n / 8 % ResponseStep::ALL.len()] },
        _ if looks == Looks::Always && !n.is_multiple_of(7) => Fact::MotherObserved(every(n)),
        _ => match n % 6 {
            0 => Fact::MotherObserved(full.clone()),
            1 => jug(5),
            2 => Fact::Noted { text: text.clone() },
            3 if n.is_multiple_of(5) => Fact::MedicineGiven(oxytocin()),
            3 => look(88, 112),
            4 => Fact::NewbornEvent { baby: 1, event: NewbornEvent::PassedUrine },
            _ => Fact::MomentMarked,
        },
    };
    let entry = |n: u64| {
        let wall_ms = START + i64::try_from(n).unwrap() * MINUTE * 3 / 2;
        let recorded = Stamp { wall_ms, offset_min: 60, zone: None, boot: None };
        let amends = (n > 80 && n.is_multiple_of(10)).then(|| Amendment { entry: id(1, n - 1), reason: "a slip".to_owned() });
        let fact = fact(usize::try_from(n).unwrap());
        let occurred = Occurred::Marked(recorded.clone());
        Entry { id: id(1, n), birth: BIRTH, author: "Ida Lindqvist".to_owned(), occurred, recorded, fact, amends }
    };
    let entries: Vec<Entry> = (1..=count).map(entry).collect();
    fold(BIRTH, &entries)
}

/// A look with every reading, none like the one before, and what else was seen.
fn every(n: usize) -> MotherObservation {
    let of = |least: i64, many: usize| least + i64::try_from(n % many).unwrap();
    MotherObservation {
        pulse: HeartRate::new(of(70, 61)).ok(),
        systolic: Pressure::new(of(95, 37)).ok(),
        diastolic: Pressure::new(of(55, 29)).ok(),
        respirations: RespiratoryRate::new(of(12, 17)).ok(),
        temperature: Temperature::new(of(365, 19)).ok(),
        saturation: Saturation::new(of(90, 11)).ok(),
        fundus: Some(if n.is_multiple_of(5) { Fundus::FirmsWhenRubbed } else { Fundus::Firm }),
        bleeding: Some(Bleeding::Light),
        ..MotherObservation::default()
    }
}

#[test]
fn a_night_of_three_hundred_entries_stays_within_twelve_pages() {
    let now = Stamp { wall_ms: START + 600 * MINUTE, offset_min: 60, zone: None, boot: None };
    for looks in [Looks::Sometimes, Looks::Always] {
        let (pages, body) = pages(&printed(&night(300, looks), &now, document));
        assert_eq!(faults(&pages, body), Vec::<String>::new());
        assert!(pages.len() <= 12, "{} pages", pages.len());
    }
}

/// What every table row says, its cells parted by `|`.
fn rows(document: &Document) -> Vec<String> {
    let tables = document.blocks.iter().filter_map(|block| match block {
        Block::Table(table) => Some(&table.rows),
        _ => None,
    });
    let cell = |cell: &Cell| cell.iter().map(|span| span.text.as_str()).collect::<String>();
    tables.flatten().map(|row| row.iter().map(cell).collect::<Vec<_>>().join("|")).collect()
}

#[test]
fn looks_that_stand_in_one_row_have_each_reading_with_its_time_in_the_table() {
    let now = Stamp { wall_ms: START + 600 * MINUTE, offset_min: 60, zone: None, boot: None };
    let chart = night(300, Looks::Always);
    let rows = rows(&printed(&chart, &now, document));
    let mut together = 0;
    for line in &chart.lines {
        let Fact::MotherObserved(look @ MotherObservation { temperature: Some(degrees), .. }) = &line.shown().fact else {
            continue;
        };
        let clock = line.shown().occurred.clock();
        let said = Words::english().say(&chart.say(&line.shown().fact));
        if rows.iter().any(|row| row.starts_with(&clock) && row.contains(&said)) {
            continue;
        }
        together += 1;
        let pressure = format!("{}/{}", look.systolic.unwrap().get(), look.diastolic.unwrap().get());
        let degrees = f64::from(degrees.get()) / 10.0;
        let read = [
            look.pulse.unwrap().get().to_string(),
            pressure,
            look.respirations.unwrap().get().to_string(),
            format!("{degrees}"),
            look.saturation.unwrap().get().to_string(),
        ]
        .join("|");
        assert!(rows.iter().any(|row| row.starts_with(&clock) && row.ends_with(&read)), "{clock} {read}: {rows:#?}");
    }
    assert!(together > 150, "{together}");
    let again = rows.iter().filter(|row| row.contains("looks alike to")).count();
    assert!(again > 20, "{again}");
}

#[test]
fn a_long_night_over_midnight_says_the_date_once_a_day() {
    let now = Stamp { wall_ms: START + 2_000 * MINUTE, offset_min: 1_200, zone: None, boot: None };
    let mut entries: Vec<Entry> = night(300, Looks::Always).lines.iter().map(|line| line.first.clone()).collect();
    for entry in &mut entries {
        // 450 minutes from 02:40 on reach over midnight here.
        let Occurred::Marked(stamp) = &mut entry.occurred else { continue };
        stamp.offset_min = 18 * 60;
        entry.recorded.offset_min = 18 * 60;
    }
    let rows = rows(&printed(&fold(BIRTH, &entries), &now, document));
    let dated = rows.iter().filter(|row| row.split('|').next().is_some_and(|cell| cell.contains("26 Nov 2026"))).count();
    assert!((2..=5).contains(&dated), "{dated} rows of {}", rows.len());
}
