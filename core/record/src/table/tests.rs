//! The table as a whole.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop")]

use csv::ReaderBuilder;
use secundine_domain::chart::fold;
use secundine_domain::entry::{Amendment, DeviceId, EntryId};
use secundine_domain::fact::MotherObservation;
use secundine_domain::quantity::{HeartRate, Temperature};
use secundine_domain::time::Stamp;

use super::*;

const BIRTH: BirthId = BirthId(EntryId { device: DeviceId([1; 16]), n: 1 });

fn id(n: u64) -> EntryId {
    EntryId { device: DeviceId([1; 16]), n }
}

fn entry(n: u64, fact: Fact) -> Entry {
    let recorded =
        Stamp { wall_ms: 1_795_570_800_000 + i64::try_from(n).unwrap() * 30_250, offset_min: 60, zone: None, boot: None };
    let occurred = Occurred::Marked(recorded.clone());
    Entry { id: id(n), birth: BIRTH, author: "Ida".to_owned(), occurred, recorded, fact, amends: None }
}

fn amended(n: u64, of: u64, fact: Fact) -> Entry {
    Entry { amends: Some(Amendment { entry: id(of), reason: "Misread".to_owned() }), ..entry(n, fact) }
}

fn seen(pulse: i64) -> Fact {
    let (pulse, temperature) = (HeartRate::new(pulse).ok(), Temperature::new(371).ok());
    Fact::MotherObserved(MotherObservation { pulse, temperature, ..MotherObservation::default() })
}

fn note(text: &str) -> Fact {
    Fact::Noted { text: text.to_owned() }
}

/// The rows as another program reads them, by the names of the columns that are asked for.
fn rows(entries: &[Entry], columns: &[&str]) -> Vec<Vec<String>> {
    let bytes = csv(BIRTH, &fold(BIRTH, entries), Words::english()).unwrap();
    let text = std::str::from_utf8(&bytes).unwrap().strip_prefix('\u{feff}').unwrap();
    let mut reader = ReaderBuilder::new().from_reader(text.as_bytes());
    let heads = reader.headers().unwrap().clone();
    let at = |name: &&str| heads.iter().position(|head| head == *name).unwrap();
    let columns: Vec<usize> = columns.iter().map(at).collect();
    reader.records().map(|row| columns.iter().map(|at| row.as_ref().unwrap()[*at].to_owned()).collect()).collect()
}

#[test]
fn each_value_has_a_row_with_its_time_and_its_unit() {
    let entries = [
        entry(1, Fact::BirthRegistered { label: "Rosa".to_owned(), rehearsal: false }),
        entry(2, seen(84)),
        entry(3, Fact::BabyBorn { baby: 1 }),
    ];
    let told = rows(&entries, &["what", "value", "unit", "since_birth_s", "time", "state"]);
    assert_eq!(
        told,
        [
            ["birth_registered.label", "Rosa", "", "-60.5", "2026-11-25T02:40:30.250+01:00", "stands"],
            ["birth_registered.rehearsal", "false", "", "-60.5", "2026-11-25T02:40:30.250+01:00", "stands"],
            ["mother_observed.pulse", "84", "/min", "-30.25", "2026-11-25T02:41:00.500+01:00", "stands"],
            ["mother_observed.temperature", "37.1", "Cel", "-30.25", "2026-11-25T02:41:00.500+01:00", "stands"],
            ["baby_born", "", "", "0", "2026-11-25T02:41:30.750+01:00", "stands"],
        ]
    );
}

#[test]
fn what_was_put_right_or_taken_out_stays_and_says_so() {
    let entries = [
        entry(1, note("one")),
        amended(2, 1, note("two")),
        amended(3, 2, note("three")),
        entry(4, note("four")),
        amended(5, 4, note("five")),
        amended(6, 5, Fact::Retracted),
    ];
    let told = rows(&entries, &["value", "state", "amends", "reason"]);
    let (two, three, five, six) = (id(1).to_string(), id(2).to_string(), id(4).to_string(), id(5).to_string());
    assert_eq!(
        told,
        [
            ["one", "replaced", "", ""],
            ["two", "replaced", &two, "Misread"],
            ["three", "stands", &three, "Misread"],
            ["four", "replaced", "", ""],
            ["five", "withdrawn", &five, "Misread"],
            ["", "withdrawal", &six, "Misread"],
        ]
    );
}

#[test]
fn whatever_was_written_comes_back_in_one_cell() {
    let odd =
        ["=cmd|' /C calc'!A0", "a,b;\"c\"\r\nd", "'quoted'", "مريم \u{202e}abc", "e\u{301} 👩‍🍼", "</script>", &"ő".repeat(10_000)];
    let entries: Vec<Entry> = (1..).zip(odd).map(|(n, text)| entry(n, note(text))).collect();
    let told: Vec<String> = rows(&entries, &["value"]).into_iter().flatten().collect();
    let read: Vec<&str> = told.iter().map(|cell| cell.strip_prefix('\'').unwrap_or(cell)).collect();
    assert_eq!(read, odd);
    assert!(told.iter().all(|cell| !cell.starts_with(['=', '+', '-', '@', '\t', '\r'])));
}
