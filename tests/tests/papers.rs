//! The drawing in print, and the papers that go with a placenta, read back by programs of others.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod printed;

use std::collections::BTreeSet;

use printed::{assert_sound, laid_out, output, rehearsed, session};
use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Answer, BabyNo, Fact, Place, Practice};
use secundine_session::Session;
use secundine_session::api::{At, ErrorCode, Outgoing, Request, Response};

fn paper(session: &mut Session, birth: BirthId, file: Outgoing) -> String {
    let written = session.call(Request::WriteFile { birth, file, language: None }).unwrap();
    let Response::WriteFile { path, pages, .. } = written else { unreachable!() };
    assert!(pages > 0);
    path
}

fn record(session: &mut Session, birth: BirthId) -> String {
    let Response::WriteFile { path, .. } =
        session.call(Request::WriteFile { birth, file: Outgoing::Record, language: None }).unwrap()
    else {
        unreachable!()
    };
    path
}

/// Twins on one disc, one cord in the membranes, a gap.
fn twins(folder: &std::path::Path) -> (Session, BirthId) {
    let (mut session, _) = session(folder);
    let practice = Practice {
        name: "Heron House".to_owned(),
        practitioner: "Ida".to_owned(),
        role: "midwife".to_owned(),
        protocol: Some("who".to_owned()),
    };
    session.call(Request::CreatePractice { practice, passphrase: "seven quiet herons".to_owned() }).unwrap();
    let Response::BabyBornNow { birth, .. } = session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
    let mut write = |fact| session.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } }).map(|_| ()).unwrap();
    write(Fact::BabyBorn { baby: 2 });
    write(Fact::PlacentaBorn { babies: vec![1, 2] });
    let choice = |option: &str| Answer::Choice { option: option.to_owned() };
    let place = |x, y| Answer::Places { places: vec![Place { x, y, size: None }] };
    let answers: [(&str, Option<BabyNo>, Answer); 7] = [
        ("insertion", Some(1), choice("central")),
        ("insertion", Some(2), choice("velamentous")),
        ("insertion-place", Some(2), place(1_200, 0)),
        ("disc-length", None, Answer::Measure { value: 240 }),
        ("disc-breadth", None, Answer::Measure { value: 190 }),
        ("lobes", None, choice("gap")),
        ("gap-place", None, place(700, 500)),
    ];
    for (item, cord, answer) in answers {
        write(Fact::Examined { placenta: 1, item: item.to_owned(), cord, answer });
    }
    (session, birth)
}

#[test]
fn the_request_to_a_laboratory_reads_as_laid_out() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, birth) = rehearsed(folder.path());
    let path = paper(&mut session, birth, Outgoing::Laboratory { placenta: 1 });
    assert_sound(&path, "Request to examine a placenta");
    let text = laid_out(&path);
    for told in ["REHEARSAL", "The laboratory's own rule and form come first", "Rosa Amberly", "Apgar", "Kept cold since"] {
        assert!(text.contains(told), "{told:?} is not in:\n{text}");
    }
    insta::assert_snapshot!(text);
}

#[test]
fn the_paper_for_the_family_reads_as_laid_out() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, birth) = rehearsed(folder.path());
    let path = paper(&mut session, birth, Outgoing::Family { placenta: 1 });
    assert_sound(&path, "Placenta taken by the family");
    insta::assert_snapshot!(laid_out(&path));
}

#[test]
fn the_page_for_the_parents_reads_as_laid_out_and_tells_nothing_that_judges() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, birth) = rehearsed(folder.path());
    let path = paper(&mut session, birth, Outgoing::Parents);
    assert_sound(&path, "Born on 25 November 2026");
    let text = laid_out(&path);
    for told in
        ["Rosa Amberly", "A girl, born at 02:41", "3540 g · 51 cm long · 35 cm round the head", "The cord was cut at 02:49"]
    {
        assert!(text.contains(told), "{told:?} is not in:\n{text}");
    }
    for never in ["not recorded", "Apgar", "mL", "1993", "centile", "Birch Row"] {
        assert!(!text.contains(never), "{never:?} is in:\n{text}");
    }
    insta::assert_snapshot!(text);
}

#[test]
fn the_page_for_the_parents_of_twins_is_one_page_for_both_with_the_drawing() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, birth) = twins(folder.path());
    let path = paper(&mut session, birth, Outgoing::Parents);
    assert_sound(&path, "Born on 25 November 2026");
    assert!(output("pdfinfo", &[&path]).contains("Pages:           1\n"));
    let text = laid_out(&path);
    for told in ["First baby", "Second baby", "The placenta was born at 02:40", "drawn from the notes of its examination"] {
        assert!(text.contains(told), "{told:?} is not in:\n{text}");
    }
    let plain = output("qpdf", &["--qdf", "--object-streams=disable", &path, "-"]);
    assert_eq!(plain.matches("/S /Figure").count(), 1, "the ornament is none");
}

#[test]
fn each_cord_of_a_fused_disc_is_told_and_drawn() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, birth) = twins(folder.path());
    let path = record(&mut session, birth);
    assert_sound(&path, "Third stage and examination of the placenta");
    let text = output("pdftotext", &[&path, "-"]).split_whitespace().collect::<Vec<_>>().join(" ");
    for told in ["cord of baby 1", "cord of baby 2", "The bar is 5 cm long", "Worked out", "Your local laboratory's rule decides"]
    {
        assert!(text.contains(told), "{told:?} is not in:\n{text}");
    }
    // What the drawing shows stands in words for who does not see it.
    let plain = folder.path().join("plain.pdf");
    output("qpdf", &["--qdf", "--object-streams=disable", &path, plain.to_str().unwrap()]);
    let bytes = std::fs::read(&plain).unwrap();
    let file = String::from_utf8_lossy(&bytes);
    assert_eq!(file.matches("/S /Figure").count(), 2, "one for each side");
    let alts: Vec<&str> = file.lines().filter(|line| line.contains("/Alt")).collect();
    assert_eq!(alts.len(), 2, "{alts:?}");
    let told = |words: &str| {
        let wide: String = words.encode_utf16().flat_map(u16::to_be_bytes).map(|byte| format!("{byte:02x}")).collect();
        alts.iter().any(|alt| alt.contains(words) || alt.to_lowercase().contains(&wide))
    };
    assert!(told("in the membranes") && told("there is a gap"), "{alts:?}");
}

#[test]
fn no_two_papers_take_one_file_and_no_paper_is_made_of_a_placenta_that_is_not_here() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, birth) = twins(folder.path());
    let files = [
        record(&mut session, birth),
        paper(&mut session, birth, Outgoing::Laboratory { placenta: 1 }),
        paper(&mut session, birth, Outgoing::Family { placenta: 1 }),
    ];
    assert_eq!(files.iter().collect::<BTreeSet<_>>().len(), 3);
    let refused = session.call(Request::WriteFile { birth, file: Outgoing::Family { placenta: 2 }, language: None }).unwrap_err();
    assert_eq!((refused.code, refused.message.id.as_str()), (ErrorCode::NotFound, "error-no-placenta"));
}
