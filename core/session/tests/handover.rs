//! What is handed over: each rehearsal at a moment when somebody might, and what holds of a birth with everything in it.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

#[path = "common/code.rs"]
mod code;
#[path = "common/room.rs"]
mod room;

use std::sync::Arc;

use code::{decoded, modules};
use room::{PASSPHRASE, Room};
use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Fact, Loss, Medicine, MotherObservation, ResponseStep};
use secundine_domain::message::Message;
use secundine_domain::time::{Boot, Stamp};
use secundine_record::words::Words;
use secundine_session::api::{At, ErrorCode, HandoverCode, HandoverView, RehearsalMode, Request, Response, ScenarioName};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};

fn handover(session: &mut Session, birth: BirthId) -> HandoverView {
    let Response::Handover(view) = session.call(Request::Handover { birth }).unwrap() else { unreachable!() };
    view
}

fn coded(session: &mut Session, birth: BirthId, language: &str) -> HandoverCode {
    let request = Request::HandoverCode { birth, language: Some(language.to_owned()) };
    let Response::HandoverCode(code) = session.call(request).unwrap() else { unreachable!() };
    code
}

/// A rehearsal played for so many seconds.
fn played(folder: &std::path::Path, scenario: ScenarioName, seconds: i64) -> (Session, BirthId) {
    let boot = Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 });
    let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot });
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    let mut session = Session::new(paths, Arc::new(clock.clone()));
    let begin = Request::Rehearse { scenario, speed: 1, mode: RehearsalMode::Watch };
    let Response::Rehearse(status) = session.call(begin).unwrap() else { unreachable!() };
    clock.advance(seconds * 1000);
    (session, status.rehearsal.unwrap().birth.unwrap())
}

/// The screen as it is read out.
fn read(view: &HandoverView) -> String {
    let words = Words::english();
    let mut text = String::new();
    for part in &view.parts {
        text.push_str(&format!("{}\n", words.say(&part.title)));
        for group in &part.groups {
            text.push_str(&format!("  {}\n", words.say(&group.label)));
            for line in &group.lines {
                let when = line.when.as_ref().map(|when| format!("{} ", words.say(when))).unwrap_or_default();
                let age = line.age.as_ref().map(|age| format!(" [{} ago]", age.text)).unwrap_or_default();
                let level = line.level.map(|level| format!(" <{level:?}>")).unwrap_or_default();
                text.push_str(&format!("    {when}{}{age}{level}\n", words.say(&line.said)));
            }
        }
    }
    text
}

#[test]
fn each_rehearsal_is_handed_over() {
    let moments = [
        (ScenarioName::QuietNight, 3_000),
        (ScenarioName::SlowPlacenta, 3_000),
        (ScenarioName::BriskBleeding, 1_900),
        (ScenarioName::Twins, 3_000),
    ];
    for (scenario, seconds) in moments {
        let folder = tempfile::tempdir().unwrap();
        let (mut session, birth) = played(folder.path(), scenario, seconds);
        insta::assert_snapshot!(format!("{scenario:?} read out"), read(&handover(&mut session, birth)));
        let code = coded(&mut session, birth, "en");
        let left: Vec<String> = code.left_out.iter().map(|line| format!("\n- {line}")).collect();
        insta::assert_snapshot!(
            format!("{scenario:?} as a code"),
            format!("{}\n\n{} bytes, {} modules, left out:{}", code.text, code.text.len(), code.code.side, left.concat())
        );
        for language in Words::tags() {
            let code = coded(&mut session, birth, language);
            assert!(code.text.len() <= 600 && !code.text.contains("{$"), "{scenario:?} in {language}");
            assert_eq!(decoded(&modules(&code.code)), code.text, "{scenario:?} in {language}");
            assert!(code.text.contains("\nS\n"), "{}", code.text);
        }
    }
}

fn room() -> Room {
    Room::new(Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 }))
}

impl Room {
    fn write(&mut self, fact: Fact) {
        self.session.call(Request::Record { birth: self.birth, fact, at: At::Now { ago_ms: 0 } }).unwrap();
    }
}

fn parsed<T: for<'a> serde::Deserialize<'a>>(json: &str) -> T {
    serde_json::from_str(json).unwrap()
}

fn client(name: &str) -> Fact {
    parsed(&format!(
        r#"{{"kind":"client_recorded","data":{{"name":"{name}","born":"1996-11-26","gestation":276,"gravida":2,"para":1,
        "blood_group":"B Rh positive","allergies":"penicillin"}}}}"#
    ))
}

#[test]
fn ages_are_those_of_each_reading_and_run() {
    let mut room = room();
    let minute = 60_000;
    room.write(Fact::MotherObserved(parsed(r#"{"pulse":88,"systolic":118,"diastolic":70,"temperature":368}"#)));
    room.clock.advance(5 * minute);
    room.write(Fact::MotherObserved(parsed(r#"{"pulse":110,"systolic":90}"#)));
    room.clock.advance(3 * minute);
    let view = handover(&mut room.session, room.birth);
    let signs = view.parts[0].groups.iter().find(|group| group.label.id == "handover-signs").unwrap();
    let told: Vec<(String, i64, bool)> = signs
        .lines
        .iter()
        .map(|line| {
            let age = line.age.as_ref().unwrap();
            (Words::english().say(&line.said), age.elapsed_ms / minute, age.running)
        })
        .collect();
    let expected = [("pulse 110, blood pressure 90/–".to_owned(), 3, true), ("36.8 °C".to_owned(), 8, true)];
    assert_eq!(told, expected, "no pressure is put together from two looks");
}

#[test]
fn it_recommends_nothing_and_tells_what_was_asked_for() {
    let mut room = room();
    let asked = |room: &mut Room| {
        let view = handover(&mut room.session, room.birth);
        let said = view.parts[3].groups[0].lines[0].said.clone();
        Words::english().say(&said)
    };
    assert_eq!(asked(&mut room), "nothing written");
    room.write(Fact::AskedFor { text: "Theatre ready, blood cross-matched".to_owned() });
    assert_eq!(asked(&mut room), "Theatre ready, blood cross-matched");
    assert!(coded(&mut room.session, room.birth, "en").text.ends_with("R\nAsked for: Theatre ready, blood cross-matched"));
    room.write(Fact::AskedFor { text: " ".to_owned() });
    assert_eq!(asked(&mut room), "nothing written");
}

#[test]
fn without_names_nothing_that_is_hidden_is_called_not_recorded() {
    let mut room = room();
    room.write(client("Rosa Quill"));
    room.write(Fact::AskedFor { text: "Rosa asks for her sister".to_owned() });
    room.session.call(Request::Rest).unwrap();
    let view = handover(&mut room.session, room.birth);
    assert!(view.people_hidden);
    let text = read(&view);
    assert!(!text.contains("Rosa") && !text.contains("Mother") && !text.contains("Blood group"), "{text}");
    assert!(text.contains("NOT born") && text.contains("Blood\n    not recorded"), "{text}");
    let refused = room.session.call(Request::HandoverCode { birth: room.birth, language: None }).unwrap_err();
    assert_eq!(refused.code, ErrorCode::NamesHidden);
    room.session.call(Request::ShowNames { passphrase: PASSPHRASE.to_owned() }).unwrap();
    assert!(read(&handover(&mut room.session, room.birth)).contains("Rosa Quill, born 26 Nov 1996, 29 years"));
}

/// A birth at which everything happened, many times over.
fn full() -> Room {
    let mut room = room();
    room.write(client("Élodie Åström-Łukasiewicz"));
    room.write(Fact::ProtocolChosen { protocol: "who".to_owned(), own: None });
    for step in ResponseStep::ALL {
        room.clock.advance(30_000);
        room.write(Fact::ResponseMarked { step });
        room.write(Fact::BloodLoss(Loss::Seen { volume: parsed("150") }));
        room.write(Fact::MedicineGiven(Medicine {
            name: format!("oxytocin {step:?}"),
            dose: "10 IU".to_owned(),
            route: "IM".to_owned(),
            ..Medicine::default()
        }));
        let look: MotherObservation = parsed(r#"{"pulse":118,"systolic":92,"diastolic":54,"respirations":22}"#);
        room.write(Fact::MotherObserved(look));
    }
    room
}

#[test]
fn what_matters_most_stays_in_the_code_and_nothing_is_cut() {
    let mut room = full();
    let words = Words::english();
    let code = coded(&mut room.session, room.birth, "en");
    assert!(code.text.len() <= 600 && code.text.len() > 500, "{}", code.text);
    assert!(code.text.ends_with("… more in the record"), "{}", code.text);
    for kept in [
        "Élodie Åström-Łukasiewicz",
        "NOT born",
        "pulse 118",
        "2250 mL",
        "oxytocin HandedOver 10 IU, IM",
        "Allergies: penicillin",
    ] {
        assert!(code.text.contains(kept), "{kept} in {}", code.text);
    }
    assert!(code.left_out.iter().any(|line| line.contains("oxytocin HelpCalled")), "{:?}", code.left_out);
    // Each line of the code is a whole one of the screen, and each one of the screen is in the code or told to be left out.
    let view = handover(&mut room.session, room.birth);
    let mut items = 0;
    for group in view.parts.iter().flat_map(|part| &part.groups) {
        for line in &group.lines {
            let when = line.when.as_ref().map(|when: &Message| format!("{} ", words.say(when))).unwrap_or_default();
            let told = format!("{when}{}", words.say(&line.said));
            let left = code.left_out.contains(&format!("{}: {told}", words.say(&group.label)));
            assert!(left || code.text.contains(&told), "{told}");
            items += 1;
        }
    }
    let lines = code.text.lines().filter(|line| line.contains(": ")).map(|line| line.split("; ").count());
    assert_eq!(lines.sum::<usize>() + code.left_out.len(), items, "each once: {}", code.text);
    assert!(items > 40, "{items}");
}

#[test]
fn one_long_wish_pushes_nothing_else_out() {
    let mut room = room();
    room.write(client("Rosa Quill"));
    let before = coded(&mut room.session, room.birth, "en");
    assert!(before.left_out.is_empty(), "{:?}", before.left_out);
    room.write(Fact::AskedFor { text: "please ".repeat(60) });
    let after = coded(&mut room.session, room.birth, "en");
    assert_eq!(after.left_out.len(), 1);
    assert!(after.text.contains("Rosa Quill") && after.text.ends_with("… more in the record"), "{}", after.text);
}
