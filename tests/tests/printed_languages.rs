//! The record in each language that there is, read back by programs of others.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod printed;

use printed::{assert_sound, laid_out, output, rehearsed};
use secundine_domain::entry::BirthId;
use secundine_record::words::Words;
use secundine_session::Session;
use secundine_session::api::{Outgoing, Request, Response};

/// So many lines of the first page are read by a person.
const LINES: usize = 45;

fn record(session: &mut Session, birth: BirthId, language: &str) -> String {
    let written =
        session.call(Request::WriteFile { birth, file: Outgoing::Record, language: Some(language.to_owned()) }).unwrap();
    let Response::WriteFile { path, .. } = written else { unreachable!() };
    path
}

#[test]
fn the_record_is_written_in_the_language_asked_for() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, birth) = rehearsed(folder.path());
    for tag in Words::tags() {
        let words = Words::of(tag);
        let path = record(&mut session, birth, tag);
        assert_sound(&path, &words.plain("record-title"));
        let about = output("qpdf", &["--qdf", "--object-streams=disable", &path, "-"]);
        assert!(about.contains(&format!("/Lang ({tag})")), "{tag}");
        let text = laid_out(&path);
        let places = words.say(&secundine_domain::message::decimal(0, "20"));
        assert!(text.contains(&places), "{tag}: the coiling index is {places}");
        let flat = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
        if let Some(draft) = words.draft() {
            assert!(flat(&text).contains(&flat(&draft)), "{tag}: {draft}");
        }
        if tag != "en" {
            insta::assert_snapshot!(tag, text.lines().take(LINES).collect::<Vec<_>>().join("\n"));
        }
    }
}

#[test]
fn a_language_that_there_is_not_is_english() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, birth) = rehearsed(folder.path());
    let text = laid_out(&record(&mut session, birth, "tlh"));
    assert!(text.contains("Third stage and examination of the placenta"), "{text}");
}
