//! Odd words in print: what was typed comes out of the file as it went in, or visibly replaced.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod printed;

use printed::{assert_sound, output, session};
use secundine_domain::fact::{Client, Fact, Medicine, Practice};
use secundine_session::api::{At, Outgoing, Request, Response};

/// Not drawn by the typeface, but copied as they are.
const COPIED: [&str; 4] = ["مرحبا", "שלום", "हैलो", "🦩"];
/// Come out as they went in.
const WHOLE: [&str; 7] =
    ["Eirlys Gŵynn", "Nguyễn", "</script><b>", "=cmd|' /C calc'!A0", "\"a\";b,c", "50 % {name} { $name }", "12 μg ½"];

/// The record of a birth whose every written word is this.
fn printed(words: &str, file: Outgoing) -> (tempfile::TempDir, String) {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, _) = session(folder.path());
    let practice = Practice { name: words.into(), practitioner: words.into(), role: words.into(), protocol: None };
    session.call(Request::CreatePractice { practice, passphrase: "seven quiet herons".to_owned() }).unwrap();
    let Response::BabyBornNow { birth, .. } = session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
    let text = || words.to_owned();
    let client =
        Client { name: text(), born: Some(text()), allergies: Some(text()), blood_group: Some(text()), ..Client::default() };
    let medicine = Medicine {
        name: text(),
        dose: text(),
        route: text(),
        site: Some(text()),
        batch: Some(text()),
        giver: Some(text()),
        ..Medicine::default()
    };
    for fact in [Fact::ClientRecorded(client), Fact::MedicineGiven(medicine), Fact::Noted { text: text() }] {
        session.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } }).unwrap();
    }
    let Response::WriteFile { path, .. } = session.call(Request::WriteFile { birth, file, language: None }).unwrap() else {
        unreachable!()
    };
    (folder, path)
}

/// The text of the file, in the order in which it stands there.
fn text(path: &str) -> String {
    output("pdftotext", &["-raw", path, "-"])
}

fn flat(text: &str) -> String {
    text.split_whitespace().collect()
}

#[test]
fn what_was_typed_is_read_as_it_was() {
    for words in WHOLE {
        let (_folder, path) = printed(words, Outgoing::Record);
        assert_sound(&path, "Third stage and examination of the placenta");
        let text = flat(&text(&path));
        // Name above each page and in its row, allergies, blood group, practice, medicine and note.
        assert!(text.matches(&flat(words)).count() > 6, "{words:?} is not in:\n{text}");
    }
}

#[test]
fn what_the_typeface_lacks_is_drawn_as_a_lozenge_and_copied_as_it_was() {
    for words in COPIED {
        let (_folder, path) = printed(words, Outgoing::Record);
        assert_sound(&path, "Third stage and examination of the placenta");
        let text = text(&path);
        for c in words.chars() {
            assert!(text.contains(c), "{c:?} of {words:?} is not in:\n{text}");
        }
    }
}

#[test]
fn what_must_not_be_printed_is_visibly_replaced() {
    let (_folder, path) = printed("a\u{7}b\u{202e}c\u{0}d", Outgoing::Record);
    assert_sound(&path, "Third stage and examination of the placenta");
    let text = text(&path);
    assert!(text.contains("a\u{fffd}b\u{fffd}c\u{fffd}d"), "{text}");
    assert!(!text.contains(['\u{7}', '\u{202e}', '\u{0}']));
}

#[test]
fn marks_stay_with_their_letter_and_ten_thousand_letters_are_all_there() {
    let (_folder, path) = printed("e\u{301}\u{302}", Outgoing::Record);
    assert!(text(&path).contains("e\u{301}\u{302}") || text(&path).contains("é\u{302}"), "{}", text(&path));
    let (_folder, path) = printed(&"x".repeat(10_000), Outgoing::Record);
    assert_sound(&path, "Third stage and examination of the placenta");
    // Blood group, allergies, mother's name, note: each whole; the label is cut.
    let count = text(&path).matches('x').count();
    assert!(count >= 40_000, "{count}");
}

#[test]
fn the_page_for_the_parents_takes_any_name_on_its_one_page() {
    let long = "x".repeat(10_000);
    let all = WHOLE.iter().chain(&COPIED).copied().chain(["", "\u{7}\u{202e}", "👩🏽‍🍼", long.as_str()]);
    for words in all {
        let (_folder, path) = printed(words, Outgoing::Parents);
        assert_sound(&path, "Born on 25 November 2026");
        assert!(output("pdfinfo", &[&path]).contains("Pages:           1\n"), "{words:?}");
        let text = text(&path);
        for never in ["not recorded", "Apgar", "mL", "Blood"] {
            assert!(!text.contains(never), "{never:?} in:\n{text}");
        }
    }
}
