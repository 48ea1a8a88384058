//! The record in print, read back by programs of others.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod printed;

use std::path::Path;

use printed::{assert_sound, laid_out, output, rehearsed, session};
use secundine_domain::fact::{Fact, MotherObservation, Practice};
use secundine_domain::protocol::OwnChange;
use secundine_domain::quantity::HeartRate;
use secundine_session::api::{At, Outgoing, Request, Response};

/// The record of the rehearsal, begun on 2026-11-25 at 02:40 local time.
fn record(folder: &Path) -> String {
    let (mut session, birth) = rehearsed(folder);
    let Response::WriteFile { path, .. } =
        session.call(Request::WriteFile { birth, file: Outgoing::Record, language: None }).unwrap()
    else {
        unreachable!()
    };
    path
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
        "Baby",
        "Apgar 1 min",
        "colour 1, heart rate 2, reflex 2, tone 2, breathing 1",
        "Size at birth",
        "Among girls born at 40+1 weeks",
        "3540 g: centile 75",
        "INTERGROWTH-21st newborn size",
        "Page 1 of 5",
        "Rosa Amberly · 1993-08-14 · Birch Row 4",
        "REHEARSAL",
        "Course",
        "Blood loss",
        "Each mark is a reading",
        "Readings",
        "118/72",
        "Examination",
        "Fetal side. The bar is 5 cm long.",
        "Maternal side, turned over",
        "Dashed, since its place is not recorded: Tear in the membranes.",
        "Lobes, cupped together",
        "they meet",
        "Worked out",
        "Coiling index",
        "0.20 a cm",
        "Timeline, 25 Nov 2026",
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
        "SHA-256 of its 53 entries",
        "1 put right, 0 taken out",
        "Page 5 of 5",
    ] {
        let (_, after) = rest.split_once(next).unwrap_or_else(|| panic!("{next:?} is not next in:\n{rest}"));
        rest = after;
    }
}

#[test]
fn the_course_is_drawn_told_in_words_and_stands_in_a_table() {
    let folder = tempfile::tempdir().unwrap();
    let path = record(folder.path());
    let text = laid_out(&path);
    for row in ["02:56:00 15:00 84 118/72 16 36.8 98", "03:03:45 22:45 80", "03:05:00 24:00 295", "03:11:00 30:00 88 114/70"] {
        assert!(text.contains(row), "{row:?} is not in:\n{text}");
    }
    let plain = output("qpdf", &["--qdf", "--object-streams=disable", &path, "-"]);
    assert_eq!(plain.matches("/S /Figure").count(), 3, "the course and both sides");
    let told = "Graph over time, from 02:40 to 03:20. Blood loss, all: 80 mL at 03:03:45, 295 mL at 03:05:00";
    let wide: String = told.encode_utf16().flat_map(u16::to_be_bytes).map(|byte| format!("{byte:02x}")).collect();
    assert!(plain.contains(told) || plain.to_lowercase().contains(&wide), "no words for the drawing");
}

#[test]
fn it_reads_as_laid_out() {
    let folder = tempfile::tempdir().unwrap();
    insta::assert_snapshot!(laid_out(&record(folder.path())));
}

#[test]
fn the_file_is_sound_and_carries_its_fonts() {
    let folder = tempfile::tempdir().unwrap();
    assert_sound(&record(folder.path()), "Third stage and examination of the placenta");
}

#[test]
fn a_limit_of_the_own_protocol_says_from_where_it_is_and_that_it_is_unverified() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, _) = session(folder.path());
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
    let Response::WriteFile { path, .. } =
        session.call(Request::WriteFile { birth, file: Outgoing::Record, language: None }).unwrap()
    else {
        unreachable!()
    };
    let text = output("pdftotext", &["-layout", &path, "-"]).split_whitespace().collect::<Vec<_>>().join(" ");
    for told in [
        "Ours, first (own); numbers last checked 25 Nov 2026",
        "Ours: WHO 2012 to 2025: WHO Labour Care Guide 2020, made for labour",
        "from memory, unverified",
    ] {
        assert!(text.contains(told), "{told:?} is not in:\n{text}");
    }
}
