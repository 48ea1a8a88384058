//! Odd words in print: what was typed comes out of the file as it went in, or visibly replaced.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod printed;

use printed::{assert_sound, output, session};
use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Client, Fact, Medicine, Practice};
use secundine_session::Session;
use secundine_session::api::{At, Outgoing, Request, Response};

/// Come out as they went in.
const WHOLE: [&str; 8] =
    ["Eirlys Gŵynn", "Nguyễn", "</script><b>", "=cmd|' /C calc'!A0", "\"a\";b,c", "50 % {name} { $name }", "12 μg ½", "x\\ny"];
/// Not drawn by the typeface, but copied as they are.
const COPIED: [&str; 5] = ["مرحبا", "שלום", "हैलो", "🦩", "👩🏽‍🍼"];
/// Must not be printed, and what stands in their place.
const REPLACED: [(&str, &str); 2] = [("a\u{7}b\u{202e}c\u{0}d", "a\u{fffd}b\u{fffd}c\u{fffd}d"), ("u\u{e000}v", "u\u{fffd}v")];

fn birth(folder: &std::path::Path) -> (Session, BirthId) {
    let (mut session, _) = session(folder);
    let practice = Practice { name: "=1+1".into(), practitioner: "Ida".into(), role: "midwife".into(), protocol: None };
    session.call(Request::CreatePractice { practice, passphrase: "seven quiet herons".to_owned() }).unwrap();
    let Response::BabyBornNow { birth, .. } = session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
    (session, birth)
}

fn write(session: &mut Session, birth: BirthId, fact: Fact) {
    session.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } }).unwrap();
}

fn file(session: &mut Session, birth: BirthId, file: Outgoing) -> String {
    let written = session.call(Request::WriteFile { birth, file, language: None }).unwrap();
    let Response::WriteFile { path, .. } = written else { unreachable!() };
    path
}

fn named(words: &str) -> Fact {
    let text = || Some(words.to_owned());
    Fact::ClientRecorded(Client {
        name: words.to_owned(),
        born: text(),
        allergies: text(),
        blood_group: text(),
        ..Client::default()
    })
}

/// The same words as a note and as each word of a medicine.
fn told(words: &str) -> [Fact; 2] {
    let text = || words.to_owned();
    let medicine = Medicine {
        name: text(),
        dose: text(),
        route: text(),
        site: Some(text()),
        batch: Some(text()),
        giver: Some(text()),
        ..Medicine::default()
    };
    [Fact::Noted { text: text() }, Fact::MedicineGiven(medicine)]
}

/// The text of the file, in the order in which it stands there, without the gaps.
fn text(path: &str) -> String {
    output("pdftotext", &["-raw", path, "-"]).split_whitespace().collect()
}

fn flat(text: &str) -> String {
    text.split_whitespace().collect()
}

#[test]
fn whatever_was_typed_is_read_as_it_was_or_visibly_replaced() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, birth) = birth(folder.path());
    let replaced = REPLACED.iter().map(|(typed, _)| *typed);
    for words in WHOLE.iter().chain(&COPIED).copied().chain(["e\u{301}\u{302}"]).chain(replaced) {
        told(words).into_iter().for_each(|fact| write(&mut session, birth, fact));
    }
    write(&mut session, birth, named(WHOLE[2]));
    let path = file(&mut session, birth, Outgoing::Record);
    assert_sound(&path, "Third stage and examination of the placenta");
    let text = text(&path);
    let times = |words: &str| text.matches(&flat(words)).count();
    for words in WHOLE {
        // The note, the whole medicine in the timeline and again in its table: a narrow column may part a long word there.
        assert!(times(words) >= 6, "{words:?} stands {} times in:\n{text}", times(words));
    }
    for c in COPIED.iter().flat_map(|words| words.chars()) {
        assert!(text.contains(c), "{c:?} is not in:\n{text}");
    }
    for (_, words) in REPLACED {
        assert!(times(words) >= 6, "{words:?} stands {} times in:\n{text}", times(words));
    }
    assert!(times("e\u{301}\u{302}") + times("é\u{302}") >= 6, "{text}");
    assert!(!text.contains(['\u{7}', '\u{202e}', '\u{0}', '\u{e000}']));
}

#[test]
fn ten_thousand_letters_are_all_there() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, birth) = birth(folder.path());
    write(&mut session, birth, Fact::Noted { text: "w".repeat(10_000) });
    write(&mut session, birth, named(&"q".repeat(10_000)));
    let path = file(&mut session, birth, Outgoing::Record);
    assert_sound(&path, "Third stage and examination of the placenta");
    let text = text(&path);
    let count = |c: char| text.chars().filter(|found| *found == c).count();
    // A few more stand in other words. The name, born, blood group and allergies are each whole; the label above a page is cut.
    assert!((10_000..10_100).contains(&count('w')), "{}", count('w'));
    assert!(count('q') >= 40_000, "{}", count('q'));
}

#[test]
fn the_page_for_the_parents_takes_any_name_on_its_one_page() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, birth) = birth(folder.path());
    let long = "x".repeat(10_000);
    let replaced = REPLACED.iter().map(|(typed, _)| *typed);
    for words in WHOLE.iter().chain(&COPIED).copied().chain(replaced).chain(["", long.as_str()]) {
        write(&mut session, birth, named(words));
        let path = file(&mut session, birth, Outgoing::Parents);
        assert!(output("pdfinfo", &[&path]).contains("Pages:           1\n"), "{words:?}");
        let text = text(&path);
        if WHOLE.contains(&words) {
            assert!(text.contains(&flat(words)), "{words:?} is not in:\n{text}");
        }
    }
}
