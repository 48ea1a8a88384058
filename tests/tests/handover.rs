//! The code of a handover holds for every chart there could be: short enough, whole, and read back as it was.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

#[path = "../../core/session/tests/common/code.rs"]
mod code;
#[path = "../../core/domain/tests/common/mod.rs"]
mod common;
mod printed;

use code::{decoded, modules};
use common::BIRTH;
use common::arbitrary::{entries, stamp};
use printed::{assert_sound, laid_out, session};
use proptest::prelude::*;
use proptest::sample::select;
use secundine_domain::chart::fold;
use secundine_domain::entry::{BirthId, Entry};
use secundine_domain::fact::{Fact, Practice};
use secundine_domain::time::Stamp;
use secundine_record::Origin;
use secundine_record::handover::{CODE_MOST, CodeText, Handover, transfer_pdf};
use secundine_record::words::Words;
use secundine_session::Session;
use secundine_session::api::{At, Outgoing, RehearsalMode, Request, Response, ScenarioName};
use secundine_session::fuzzing::handover_code;

fn practice() -> Practice {
    let (name, role) = ("Heron House".to_owned(), "midwife".to_owned());
    Practice { name, practitioner: "Ida Lindqvist".to_owned(), role, protocol: None }
}

fn languages() -> impl Strategy<Value = &'static str> {
    select(Words::tags().collect::<Vec<_>>())
}

/// A share of the cases that are tried: what takes a camera or a page takes its time.
fn share(of: u32) -> ProptestConfig {
    let usual = ProptestConfig::default();
    ProptestConfig { cases: usual.cases.div_ceil(of), failure_persistence: None, ..usual }
}

fn told(entries: &[Entry], now: &Stamp, words: &'static Words) -> (Handover, CodeText) {
    let chart = fold(BIRTH, entries);
    let practice = practice();
    let handover = Handover::of(&chart, &Origin { practice: &practice, version: "", written: now, words });
    let code = handover.code_text(words);
    (handover, code)
}

proptest! {
    #![proptest_config(share(1))]

    #[test]
    fn every_code_is_short_enough_and_of_whole_items(entries in entries(), now in stamp(), language in languages()) {
        let words = Words::of(language);
        let (handover, told) = told(&entries, &now, words);
        prop_assert!(told.text.len() <= CODE_MOST, "{} bytes", told.text.len());
        prop_assert!(!told.text.contains(|sign: char| sign.is_control() && sign != '\n'));
        // All is in it, or it says that there is more.
        prop_assert_eq!(told.text.ends_with(&words.plain("handover-more")), !told.left_out.is_empty());
        let whole = handover.text(words);
        prop_assert_eq!(told.left_out.is_empty(), whole == told.text);
        for line in told.text.lines().filter(|line| !told.left_out.is_empty() && line.contains(": ")) {
            // In the whole another item may stand first, behind the name of the line.
            let is_told = |item: &str| whole.contains(item) || item.split_once(": ").is_some_and(|(_, item)| whole.contains(item));
            prop_assert!(line.split("; ").all(is_told), "{line} is not of the whole");
        }
    }
}

proptest! {
    #![proptest_config(share(8))]

    #[test]
    fn every_code_is_read_back_as_it_was(entries in entries(), now in stamp(), language in languages()) {
        let (_, told) = told(&entries, &now, Words::of(language));
        let code = handover_code(&told.text);
        prop_assert!(code.side > 0 && code.side <= 93, "version 19 at most: {}", code.side);
        prop_assert_eq!(decoded(&modules(&code)), told.text);
    }
}

proptest! {
    #![proptest_config(share(16))]

    #[test]
    fn every_chart_goes_on_one_page(entries in entries(), now in stamp(), language in languages()) {
        let chart = fold(BIRTH, &entries);
        let practice = practice();
        let words = Words::of(language);
        let pdf = transfer_pdf(&chart, &Origin { practice: &practice, version: "00", written: &now, words }).unwrap();
        prop_assert_eq!(pdf.pages, 1);
    }
}

/// A rehearsal played for so many seconds.
fn played(folder: &std::path::Path, scenario: ScenarioName, seconds: i64) -> (Session, BirthId) {
    let (mut session, clock) = session(folder);
    let begun = session.call(Request::Rehearse { scenario, speed: 1, mode: RehearsalMode::Watch }).unwrap();
    let Response::Rehearse(status) = begun else { unreachable!() };
    clock.advance(seconds * 1000);
    (session, status.rehearsal.unwrap().birth.unwrap())
}

fn sheet(session: &mut Session, birth: BirthId, language: &str) -> String {
    let request = Request::WriteFile { birth, file: Outgoing::Transfer, language: Some(language.to_owned()) };
    let Response::WriteFile { path, pages, .. } = session.call(request).unwrap() else { unreachable!() };
    assert_eq!(pages, 1, "{path}");
    path
}

#[test]
fn each_rehearsal_goes_on_one_page_in_each_language_and_whole_in_english() {
    for scenario in ScenarioName::ALL {
        let folder = tempfile::tempdir().unwrap();
        let (mut session, birth) = played(folder.path(), scenario, 3_300);
        for language in Words::tags() {
            let text = laid_out(&sheet(&mut session, birth, language));
            // Longer words, and the line that says that they are a draft, may leave room for less.
            let more = text.contains(&Words::of(language).plain("handover-more"));
            assert!(!more || language != "en", "{scenario:?}: {text}");
        }
    }
}

#[test]
fn the_transfer_sheet_reads_as_laid_out() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, birth) = played(folder.path(), ScenarioName::BriskBleeding, 1_900);
    let asked = Fact::AskedFor { text: "Theatre ready, two units cross-matched".to_owned() };
    session.call(Request::Record { birth, fact: asked, at: At::Now { ago_ms: 0 } }).unwrap();
    let path = sheet(&mut session, birth, "en");
    assert_sound(&path, "Transfer sheet");
    insta::assert_snapshot!(laid_out(&path));
}

#[test]
fn a_night_too_long_for_one_page_says_that_there_is_more() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, birth) = played(folder.path(), ScenarioName::BriskBleeding, 1_900);
    for n in 0..150 {
        let fact = if n % 2 == 0 { Fact::ConcernMarked } else { serde_json::from_str(OXYTOCIN).unwrap() };
        session.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } }).unwrap();
    }
    let text = laid_out(&sheet(&mut session, birth, "en"));
    assert!(text.contains("… more in the record") && text.contains("Elena Duarte") && text.contains("1045 mL"), "{text}");
}

const OXYTOCIN: &str = r#"{"kind":"medicine_given","data":{"name":"oxytocin by the long name of its maker","dose":"10 IU","route":"into the muscle of the thigh","uterotonic":true}}"#;
