//! Whatever is put in, the answer is a clear sentence, and everything recorded before is still there.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod desk;

use std::fmt::Write as _;

use desk::{Desk, Refusal, note, now, practice, typed};
use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{Answer, Fact, Loss, Medicine, MotherObservation, Place, Practice};
use secundine_domain::quantity::{ItemWeight, Pressure};
use secundine_session::api::{At, Outgoing, RehearsalMode, Request};

/// What is tried, and the code that it is answered by.
type Case = (&'static str, &'static str, fn(&Desk) -> Refusal);

const IMPOSSIBLE: &str = "impossible";
const NOT_FOUND: &str = "not_found";

const CASES: &[Case] = &[
    ("a day that is none", IMPOSSIBLE, |desk| at(desk, typed("2026-02-30", "03:12"))),
    ("an hour that is none", IMPOSSIBLE, |desk| at(desk, typed("2026-11-25", "25:00"))),
    ("no time at all", IMPOSSIBLE, |desk| at(desk, typed("", ""))),
    ("a time in the future", IMPOSSIBLE, |desk| at(desk, typed("2026-11-25", "04:00"))),
    ("a year far ahead", IMPOSSIBLE, |desk| at(desk, typed("262142-01-01", "00:00"))),
    ("weighed lighter than dry", IMPOSSIBLE, |desk| record(desk, weighed(80, 300))),
    ("pressure the wrong way round", IMPOSSIBLE, |desk| record(desk, pressure(70, 120))),
    ("nothing observed", IMPOSSIBLE, |desk| record(desk, Fact::MotherObserved(MotherObservation::default()))),
    ("an empty note", IMPOSSIBLE, |desk| record(desk, note("  "))),
    ("a medicine without a name", IMPOSSIBLE, |desk| record(desk, Fact::MedicineGiven(nameless()))),
    ("a placenta of no baby", IMPOSSIBLE, |desk| record(desk, Fact::PlacentaBorn { babies: Vec::new() })),
    ("an item that is not examined", NOT_FOUND, |desk| record(desk, examined("colour", choice("red")))),
    ("an answer that the item has not", IMPOSSIBLE, |desk| record(desk, examined("lobes", choice("purple")))),
    ("a measure for a choice", IMPOSSIBLE, |desk| record(desk, examined("lobes", Answer::Measure { value: 3 }))),
    ("a cord of ten metres", IMPOSSIBLE, |desk| record(desk, examined("cord-length", Answer::Measure { value: 10_000 }))),
    ("an unknown protocol", NOT_FOUND, |desk| record(desk, Fact::ProtocolChosen { protocol: "ours".to_owned(), own: None })),
    ("a signature by hand", IMPOSSIBLE, |desk| record(desk, signature())),
    ("a retraction by hand", IMPOSSIBLE, |desk| record(desk, Fact::Retracted)),
    ("a practice recorded at a birth", IMPOSSIBLE, |desk| record(desk, Fact::PracticeDescribed(practice()))),
    ("an unknown fact", IMPOSSIBLE, |desk| record(desk, Fact::Unknown { kind: "moon".to_owned(), stored: "{}".to_owned() })),
    ("an unknown birth looked at", NOT_FOUND, |desk| refused(desk, Request::Birth { birth: unknown(desk) })),
    ("an unknown birth recorded for", NOT_FOUND, |desk| {
        refused(desk, Request::Record { birth: unknown(desk), fact: note("x"), at: now() })
    }),
    ("an unknown birth signed", NOT_FOUND, |desk| refused(desk, Request::Sign { birth: unknown(desk), signer: None })),
    ("an unknown birth printed", NOT_FOUND, |desk| {
        refused(desk, Request::WriteFile { birth: unknown(desk), file: Outgoing::Record, language: None })
    }),
    ("an unknown birth as a picture", NOT_FOUND, |desk| refused(desk, Request::ChartPicture { birth: unknown(desk) })),
    ("an unknown birth handed over", NOT_FOUND, |desk| refused(desk, Request::Handover { birth: unknown(desk) })),
    ("an unknown birth as a code", NOT_FOUND, |desk| {
        refused(desk, Request::HandoverCode { birth: unknown(desk), language: None })
    }),
    ("an unknown birth drawn", NOT_FOUND, |desk| refused(desk, Request::Sketch { birth: unknown(desk), placenta: 1 })),
    ("a paper of a placenta that is not here", NOT_FOUND, |desk| {
        refused(desk, Request::WriteFile { birth: desk.birth, file: Outgoing::Family { placenta: 7 }, language: None })
    }),
    ("an unknown birth shown to a second phone", NOT_FOUND, |desk| {
        refused(desk, Request::ShowCode { birth: unknown(desk), answer: false })
    }),
    ("an unknown birth erased", NOT_FOUND, |desk| refused(desk, Request::AskErasure { birth: unknown(desk) })),
    ("a birth erased where nobody shares", IMPOSSIBLE, |desk| refused(desk, Request::AskErasure { birth: desk.birth })),
    ("a phone removed where nobody shares", IMPOSSIBLE, |desk| {
        refused(desk, Request::RemoveFromSync { device: "00".repeat(16) })
    }),
    ("a code that is none", IMPOSSIBLE, |desk| refused(desk, Request::JoinSync { code: "x".to_owned() })),
    ("a birth that is the same as itself", IMPOSSIBLE, |desk| {
        refused(desk, Request::SameBirth { birth: desk.birth, other: desk.birth, same: true })
    }),
    ("a birth that is the same as an unknown one", NOT_FOUND, |desk| {
        refused(desk, Request::SameBirth { birth: desk.birth, other: unknown(desk), same: true })
    }),
    ("an answer where no code was read", NOT_FOUND, |desk| refused(desk, Request::ShowCode { birth: desk.birth, answer: true })),
    ("a code that is none", IMPOSSIBLE, |desk| {
        refused(desk, Request::ReadCode { picture: None, text: Some("SECUNDINE".to_owned()) })
    }),
    ("a picture of a code that is none", IMPOSSIBLE, |desk| {
        refused(desk, Request::ReadCode { picture: Some("AAAA".to_owned()), text: None })
    }),
    ("a code that is damaged taken", IMPOSSIBLE, |desk| {
        refused(desk, Request::TakeCode { text: "SECUNDINE:1:BIRTH:AAAAAAAA".to_owned(), ago_ms: None })
    }),
    ("a server that is not sealed", IMPOSSIBLE, |desk| server(desk, "http://fhir.example/r4", None)),
    ("a server that is no address", IMPOSSIBLE, |desk| server(desk, "the clinic's", None)),
    ("a token with a line in it", IMPOSSIBLE, |desk| server(desk, "https://fhir.example/r4", Some("a\r\nHost: b"))),
    ("no server to ask", NOT_FOUND, |desk| refused(desk, Request::TryServer)),
    ("sending without a server", NOT_FOUND, |desk| refused(desk, Request::AskSending { birth: desk.birth })),
    ("an unknown birth and the server", NOT_FOUND, |desk| refused(desk, Request::Sending { birth: unknown(desk) })),
    ("an unknown birth not sent", NOT_FOUND, |desk| refused(desk, Request::TakeBackSending { birth: unknown(desk) })),
    ("a server recorded at a birth", IMPOSSIBLE, |desk| record(desk, Fact::ServerSet { server: None })),
    ("a term recorded at a birth", IMPOSSIBLE, |desk| record(desk, Fact::TermSet { years: None })),
    ("a waiting recorded at a birth", IMPOSSIBLE, |desk| record(desk, Fact::SendingWaits { birth: desk.birth, waits: true })),
    ("a point far beyond the disc", IMPOSSIBLE, |desk| record(desk, examined("tear-place", point(3_001)))),
    ("the practice taken for a birth", NOT_FOUND, |desk| {
        refused(desk, Request::Record { birth: BirthId::PRACTICE, fact: note("x"), at: now() })
    }),
    ("an unknown entry amended", NOT_FOUND, |desk| amend(desk, unknown(desk).0, "a slip")),
    ("an unknown entry taken out", NOT_FOUND, |desk| retract(desk, unknown(desk).0, "a slip")),
    ("a correction without a reason", IMPOSSIBLE, |desk| amend(desk, desk.born, " ")),
    ("a retraction without a reason", IMPOSSIBLE, |desk| retract(desk, desk.born, "")),
    ("a correction to a time to come", IMPOSSIBLE, |desk| {
        let at = Some(typed("2026-11-26", "03:00"));
        refused(desk, Request::Amend { birth: desk.birth, entry: desk.born, fact: None, at, reason: "late".to_owned() })
    }),
    ("a signature amended", IMPOSSIBLE, |desk| amend(desk, desk.signed, "a slip")),
    ("a signature taken out", IMPOSSIBLE, |desk| retract(desk, desk.signed, "a slip")),
    ("a birth without a label", IMPOSSIBLE, |desk| refused(desk, Request::RegisterBirth { label: " ".to_owned() })),
    ("a practice without a person", IMPOSSIBLE, |desk| {
        refused(desk, Request::DescribePractice { practice: Practice { practitioner: String::new(), ..practice() } })
    }),
    ("a practice under an unknown protocol", NOT_FOUND, |desk| {
        refused(desk, Request::DescribePractice { practice: Practice { protocol: Some("ours".to_owned()), ..practice() } })
    }),
    ("a practice over this one", "already_there", |desk| {
        refused(desk, Request::CreatePractice { practice: practice(), passphrase: desk::PASSPHRASE.to_owned() })
    }),
    ("no rehearsal to end", "rehearsal", |desk| refused(desk, Request::EndRehearsal)),
    ("a rehearsal that stands still", IMPOSSIBLE, |desk| {
        refused(desk, Request::Rehearse { scenario: Default::default(), speed: 0, mode: RehearsalMode::Watch })
    }),
    ("15 litres and more of blood", IMPOSSIBLE, |desk| {
        json_fact(desk, r#"{"kind":"blood_loss","data":{"method":"jug","volume":99999}}"#)
    }),
    ("a pulse below nothing", IMPOSSIBLE, |desk| json_fact(desk, r#"{"kind":"mother_observed","data":{"pulse":-1}}"#)),
    ("half a millilitre", IMPOSSIBLE, |desk| json_fact(desk, r#"{"kind":"blood_loss","data":{"method":"seen","volume":0.5}}"#)),
    ("baby 300", IMPOSSIBLE, |desk| json_fact(desk, r#"{"kind":"baby_born","data":{"baby":300}}"#)),
    ("an Apgar part of three", IMPOSSIBLE, |desk| {
        let parts = r#""colour":3,"heart_rate":2,"reflex":2,"tone":2,"breathing":2"#;
        json_fact(desk, &format!(r#"{{"kind":"apgar_scored","data":{{"baby":1,"minute":1,{parts}}}}}"#))
    }),
    ("a request that does not exist", IMPOSSIBLE, |desk| json(desk, r#"{"request":"forget_everything"}"#)),
    ("half a request", IMPOSSIBLE, |desk| json(desk, r#"{"request":"#)),
    ("no request", IMPOSSIBLE, |desk| json(desk, "")),
];

#[test]
fn each_slip_is_answered_by_a_sentence_and_changes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let desk = Desk::new(folder.path());
    let before = desk.view(desk.birth);
    let entries = desk.entries(desk.birth);
    assert_eq!(entries.len(), 7);
    let mut sentences = String::new();
    for (name, code, run) in CASES {
        let refusal = run(&desk);
        assert_eq!(refusal.code, *code, "{name}: {refusal:?}");
        writeln!(sentences, "{name}\n    {}", refusal.read()).unwrap();
        let after = desk.view(desk.birth);
        assert_eq!((after.version, after.phase), (before.version.clone(), before.phase), "{name}");
    }
    insta::assert_snapshot!("slips", sentences);
    desk.call(Request::Lock).unwrap();
    desk.unlock().unwrap();
    assert_eq!(desk.entries(desk.birth), entries);
}

#[test]
fn what_is_odd_is_taken_and_told() {
    let folder = tempfile::tempdir().unwrap();
    let desk = Desk::new(folder.path());
    let before = desk.entries(desk.birth);
    let odd = |birth: BirthId, entry: EntryId| -> Vec<String> {
        let line = desk.view(birth).timeline.into_iter().find(|line| line.entry == entry).unwrap();
        line.oddities.iter().for_each(desk::in_catalogue);
        line.oddities.into_iter().map(|message| message.id).collect()
    };
    let Ok(secundine_session::api::Response::RegisterBirth { birth: waiting }) =
        desk.call(Request::RegisterBirth { label: "the next".to_owned() })
    else {
        unreachable!()
    };
    let early = desk.record(waiting, Fact::PlacentaBorn { babies: vec![1] }).unwrap();
    assert_eq!(odd(waiting, early), ["odd-no-baby"], "a placenta before its baby");
    let birth = desk.birth;
    let before_birth = desk.record_at(birth, Fact::CordPulsationStopped { baby: 1 }, typed("2026-11-25", "01:00")).unwrap();
    assert_eq!(odd(birth, before_birth), ["odd-before-birth"]);
    for (fact, told) in [
        (Fact::PlacentaBorn { babies: vec![1] }, "odd-second-placenta"),
        (Fact::BabyBorn { baby: 1 }, "odd-second-birth"),
        (Fact::CordClamped { baby: 1 }, "odd-repeated"),
        (Fact::CordCut { baby: 2 }, "odd-no-baby"),
    ] {
        let entry = desk.record(birth, fact).unwrap();
        assert!(odd(birth, entry).iter().any(|id| id == told), "{told}: {:?}", odd(birth, entry));
    }
    let cut = desk.record_at(birth, Fact::CordCut { baby: 1 }, typed("2026-11-25", "03:00")).unwrap();
    desk.clock.change(|stamp| stamp.wall_ms += 3_600_000);
    let late = desk.record(birth, note("the clock was set")).unwrap();
    assert_eq!(odd(birth, late), ["odd-clock-changed"]);
    desk.call(Request::Lock).unwrap();
    desk.unlock().unwrap();
    let after = desk.entries(birth);
    assert!(before.iter().all(|entry| after.contains(entry)), "what was there stays");
    assert_eq!(after.len(), before.len() + 7);
    assert!(after.iter().any(|(entry, _)| *entry == cut));
}

fn server(desk: &Desk, address: &str, token: Option<&str>) -> Refusal {
    refused(desk, Request::SetServer { address: address.to_owned(), token: token.map(str::to_owned) })
}

fn refused(desk: &Desk, request: Request) -> Refusal {
    desk.call(request).unwrap_err().into()
}

fn record(desk: &Desk, fact: Fact) -> Refusal {
    desk.record(desk.birth, fact).unwrap_err().into()
}

fn at(desk: &Desk, at: At) -> Refusal {
    desk.record_at(desk.birth, note("x"), at).unwrap_err().into()
}

fn amend(desk: &Desk, entry: EntryId, reason: &str) -> Refusal {
    let fact = Some(note("put right"));
    refused(desk, Request::Amend { birth: desk.birth, entry, fact, at: None, reason: reason.to_owned() })
}

fn retract(desk: &Desk, entry: EntryId, reason: &str) -> Refusal {
    refused(desk, Request::Retract { birth: desk.birth, entry, reason: reason.to_owned() })
}

fn json(desk: &Desk, request: &str) -> Refusal {
    Refusal::from_json(&desk.session.call_json(request).unwrap_err())
}

fn json_fact(desk: &Desk, fact: &str) -> Refusal {
    let birth = serde_json::to_string(&desk.birth).unwrap();
    json(desk, &format!(r#"{{"request":"record","birth":{birth},"fact":{fact},"at":{{"at":"now","ago_ms":0}}}}"#))
}

fn unknown(desk: &Desk) -> BirthId {
    BirthId(EntryId { n: 999, ..desk.birth.0 })
}

fn point(x: i32) -> Answer {
    Answer::Places { places: vec![Place { x, y: 0, size: None }] }
}

fn weighed(gross: i64, dry: i64) -> Fact {
    let [gross, dry] = [gross, dry].map(|grams| ItemWeight::new(grams).unwrap());
    Fact::BloodLoss(Loss::Weighed { item: "pad".to_owned(), gross, dry })
}

fn pressure(systolic: i64, diastolic: i64) -> Fact {
    let [systolic, diastolic] = [systolic, diastolic].map(|mmhg| Some(Pressure::new(mmhg).unwrap()));
    Fact::MotherObserved(MotherObservation { systolic, diastolic, ..MotherObservation::default() })
}

fn nameless() -> Medicine {
    Medicine { name: " ".to_owned(), dose: "10 IU".to_owned(), route: "i.m.".to_owned(), uterotonic: true, ..Medicine::default() }
}

fn signature() -> Fact {
    Fact::Signed { name: "Ida".to_owned(), role: "midwife".to_owned(), version: String::new() }
}

fn choice(option: &str) -> Answer {
    Answer::Choice { option: option.to_owned() }
}

fn examined(item: &str, answer: Answer) -> Fact {
    Fact::Examined { placenta: 1, item: item.to_owned(), cord: None, answer }
}

#[test]
fn what_crosses_holds_no_words_of_a_client() {
    let folder = tempfile::tempdir().unwrap();
    let desk = Desk::new(folder.path());
    for fact in [
        r#"{"kind":"Canaryname"}"#,
        r#"{"kind":"client_recorded","data":{"name":"Canaryname","gestation":"Canaryname"}}"#,
        r#"{"kind":"client_recorded","data":"Canaryname"}"#,
        r#"{"kind":"baby_born","data":{"baby":"Canaryname"}}"#,
        r#"{"kind":"noted","data":{"text":"Canaryname}"#,
    ] {
        let refusal = json_fact(&desk, fact);
        assert!(!format!("{refusal:?}").contains("Canaryname"), "{fact}: {refusal:?}");
    }
}

#[test]
fn a_number_that_cannot_be_is_told_with_its_range() {
    let folder = tempfile::tempdir().unwrap();
    let desk = Desk::new(folder.path());
    let blood = json_fact(&desk, r#"{"kind":"blood_loss","data":{"method":"jug","volume":99999}}"#);
    assert_eq!(blood.read(), "impossible impossible-quantity: volume: 99999 cannot be. It takes 0 to 15000 mL.");
    let pulse = json_fact(&desk, r#"{"kind":"mother_observed","data":{"pulse":-1}}"#);
    assert_eq!(pulse.message.id, "impossible-quantity");
}
