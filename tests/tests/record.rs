//! The record in print, read back by programs of others.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

use std::path::Path;
use std::process::Command;
use std::sync::Arc;

use secundine_domain::fact::{Fact, MotherObservation, Practice};
use secundine_domain::protocol::OwnChange;
use secundine_domain::quantity::HeartRate;
use secundine_domain::time::{Boot, Stamp};
use secundine_session::api::{At, RehearsalMode, Request, Response};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};

/// The record of the rehearsal, begun on 2026-11-25 at 02:40 local time.
fn record(folder: &Path) -> String {
    let boot = Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 });
    let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot });
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    let mut session = Session::new(paths, Arc::new(clock.clone()));
    let begun = session.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Watch }).unwrap();
    let Response::Rehearse(status) = begun else { unreachable!() };
    let birth = status.rehearsal.unwrap().birth.unwrap();
    clock.advance(3_000_000);
    let Response::WriteRecord { path, .. } = session.call(Request::WriteRecord { birth }).unwrap() else { unreachable!() };
    path
}

fn output(program: &str, args: &[&str]) -> String {
    let done = Command::new(program).args(args).output().unwrap_or_else(|error| panic!("{program}: {error}"));
    assert!(done.status.success(), "{program}: {}", String::from_utf8_lossy(&done.stderr));
    String::from_utf8(done.stdout).unwrap()
}

#[test]
fn its_text_comes_out_in_reading_order() {
    let folder = tempfile::tempdir().unwrap();
    let text = output("pdftotext", &[&record(folder.path()), "-"]);
    let mut rest = text.as_str();
    for next in [
        "Rosa Amberly · 1993-08-14 · Birch Row 4",
        "REHEARSAL",
        "Third stage and examination of the placenta",
        "Cord pulsed for",
        "6:42",
        "Third stage",
        "21:37",
        "Blood",
        "295 mL",
        "Held against the protocol",
        "Heart rate of the baby 138",
        "Size of the baby at birth",
        "Among girls born at 40+1 weeks",
        "3540 g: centile 75",
        "read at second hand",
        "Examination",
        "Page 1 of 3",
        "Rosa Amberly · 1993-08-14 · Birch Row 4",
        "REHEARSAL",
        "Lobes, cupped together",
        "they meet",
        "Timeline, 2026-11-25",
        "02:41:00",
        "Baby born",
        "02:47:42",
        "6:42",
        "Cord pulsation stopped",
        "03:02:37",
        "Placenta born",
        "Blood on pad: 415 g",
        "Misread the scale: 310 g",
        "Blood on pad: 215 g",
        "Signatures",
        "Page 3 of 3",
    ] {
        let (_, after) = rest.split_once(next).unwrap_or_else(|| panic!("{next:?} is not next in:\n{rest}"));
        rest = after;
    }
}

#[test]
fn it_reads_as_laid_out() {
    let folder = tempfile::tempdir().unwrap();
    let text = output("pdftotext", &["-layout", &record(folder.path()), "-"]);
    // The versions are hashes over random device ids; how wide a gap is drawn is the reader's own affair.
    let hashed = |word: &str| word.len() >= 16 && word.bytes().all(|byte| byte.is_ascii_hexdigit());
    let word = |word: &str| if hashed(word) { "(hash)".to_owned() } else { word.to_owned() };
    let line = |line: &str| line.split_whitespace().map(word).collect::<Vec<_>>().join(" ");
    let text = text.lines().map(line).collect::<Vec<_>>().join("\n");
    insta::assert_snapshot!(text);
}

#[test]
fn the_file_is_sound_and_carries_its_fonts() {
    let folder = tempfile::tempdir().unwrap();
    let path = record(folder.path());
    output("qpdf", &["--check", &path]);
    let fonts = output("pdffonts", &[&path]);
    let rows: Vec<&str> = fonts.lines().skip(2).collect();
    assert!(!rows.is_empty());
    for row in rows {
        let told: Vec<&str> = row.split_whitespace().collect();
        // Columns from the right: object, its generation, Unicode map, subset, embedded.
        assert!(told.ends_with(&["yes", "yes", "yes", told[told.len() - 2], told[told.len() - 1]]), "{row}");
    }
    let about = output("pdfinfo", &[&path]);
    assert!(about.contains("Title:           Third stage and examination of the placenta"), "{about}");
    assert!(about.contains("Tagged:          yes"), "{about}");
}

#[test]
fn a_limit_of_the_own_protocol_says_from_where_it_is_and_that_it_is_unverified() {
    let folder = tempfile::tempdir().unwrap();
    let boot = Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 });
    let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot });
    let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
    let mut session = Session::new(paths, Arc::new(clock));
    let practice = |protocol: Option<&str>| Practice {
        name: "Heron House".to_owned(),
        practitioner: "Ida".to_owned(),
        role: "midwife".to_owned(),
        protocol: protocol.map(str::to_owned),
    };
    let named = OwnChange {
        title: Some("Ours".to_owned()),
        edition: Some("first".to_owned()),
        checked: Some("2026-11-25".to_owned()),
        ..OwnChange::default()
    };
    session.call(Request::CreatePractice { practice: practice(None), passphrase: "seven quiet herons".to_owned() }).unwrap();
    session.call(Request::FillOwnProtocol).unwrap();
    session.call(Request::ChangeOwnProtocol { change: named }).unwrap();
    session.call(Request::DescribePractice { practice: practice(Some("own")) }).unwrap();
    let Response::BabyBornNow { birth, .. } = session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
    // Below 60 a minute: the WHO Labour Care Guide, from memory.
    let fact = Fact::MotherObserved(MotherObservation { pulse: HeartRate::new(55).ok(), ..MotherObservation::default() });
    session.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } }).unwrap();
    let Response::WriteRecord { path, .. } = session.call(Request::WriteRecord { birth }).unwrap() else { unreachable!() };
    let text = output("pdftotext", &["-layout", &path, "-"]).split_whitespace().collect::<Vec<_>>().join(" ");
    for told in [
        "Ours, first; numbers last checked 2026-11-25",
        "Ours: WHO 2012 to 2025: WHO Labour Care Guide 2020, made for labour",
        "from memory, unverified",
    ] {
        assert!(text.contains(told), "{told:?} is not in:\n{text}");
    }
}
