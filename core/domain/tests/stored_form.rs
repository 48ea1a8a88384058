//! Bytes written by any version decode for ever. `fixtures/v1` holds them from the first day and they are never rewritten:
//! `WRITE_FIXTURES=1` adds files that are missing and touches no other.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
#![allow(clippy::disallowed_methods, reason = "fixtures are files")]

mod common;

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;

use common::arbitrary::{entry, fact};
use common::{
    BIRTH, START, apgar, born, care, clamped, compared, cut, examined, id, jug, kind, kinds, membranes, oxytocin, pad, placenta,
    seen,
};
use proptest::prelude::*;
use secundine_domain::entry::{Amendment, BirthId, Entry, EntryId, StoredError};
use secundine_domain::examination::{Weighed, WeightRow, WeightTable};
use secundine_domain::fact::{
    AlsoTorn, Answer, Bladder, Bleeding, Breathing, Care, Chapter, Client, Condition, Consciousness, Fact, FundalPosition,
    Fundus, Joined, LeavingStep, Medicine, MotherObservation, NewbornEvent, NewbornMeasures, NextContact, Perineum, Photo,
    PhotoMeasure, Place, Practice, RectalExamination, Repair, ResponseStep, RhD, SeparationSign, Server, Sex, Shared, SharedHow,
    SharedTo, SharedWhat, Tear, Told, VoiceNote, WrittenUp,
};
use secundine_domain::file::FileId;
use secundine_domain::photo::{FocalFrom, Pixel, Reference, Size, Sizes, ToEdge, Tracing};
use secundine_domain::protocol::{OwnChange, OwnProtocol, Protocol, Slot, State};
use secundine_domain::quantity::{
    BirthWeight, BodyWeight, Count, FundalHeight, Gestation, HeartRate, Length, Minutes, PainScore, Pressure, RespiratoryRate,
    Saturation, Temperature, Volume, Years,
};
use secundine_domain::time::{Boot, Occurred, Precision, Stamp};

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("fixtures/v1")
}

fn stored(fact: Fact) -> Entry {
    let boot = Some(Boot { id: "0f9b6a1e".to_owned(), since_ms: 5_000_000 });
    let stamp = Stamp { wall_ms: START, offset_min: 60, zone: Some("Europe/Amsterdam".to_owned()), boot };
    let occurred = Occurred::Marked(stamp.clone());
    Entry { id: id(1, 12), birth: BIRTH, author: "Ada Łąk".to_owned(), occurred, recorded: stamp, fact, amends: None }
}

fn contact(at: Option<&str>) -> NextContact {
    NextContact { when: "tomorrow at 10".to_owned(), call: "Ada".to_owned(), at: at.map(str::to_owned) }
}

fn typed(precision: Precision) -> Entry {
    let occurred = Occurred::Typed { wall_ms: START - 90_000, offset_min: -210, precision };
    let recorded = Stamp { wall_ms: START, offset_min: -210, zone: None, boot: None };
    Entry { occurred, recorded, ..stored(born(1)) }
}

fn looked(bleeding: Option<Bleeding>, fundus: Option<Fundus>) -> Fact {
    Fact::MotherObserved(MotherObservation {
        pulse: HeartRate::new(84).ok(),
        systolic: Pressure::new(118).ok(),
        diastolic: Pressure::new(72).ok(),
        respirations: RespiratoryRate::new(16).ok(),
        temperature: Temperature::new(368).ok(),
        saturation: Saturation::new(98).ok(),
        fundus,
        bleeding,
        ..MotherObservation::default()
    })
}

fn note() -> VoiceNote {
    let chapter = |item: &str, at_ms| Chapter { item: item.to_owned(), at_ms };
    VoiceNote {
        placenta: Some(1),
        file: FileId([0x9f; 32]),
        ms: 200_450,
        media: "audio/webm;codecs=opus".to_owned(),
        chapters: vec![chapter("amnion", 0), chapter("chorion", 61_020)],
    }
}

fn photo(told: bool) -> Photo {
    let (file, small) = (FileId([0x5a; 32]), FileId([0xa5; 32]));
    let (item, words) = ("lobes".to_owned(), "lobes laid together \u{1F319}".to_owned());
    let bare = Photo { placenta: 1, file, small, width: 4_000, height: 3_000, item: None, words: None, focal: None };
    if told { Photo { placenta: 2, item: Some(item), words: Some(words), focal: Some(3_005), ..bare } } else { bare }
}

fn photo_measure(told: bool) -> PhotoMeasure {
    let (pixel, size) = (|x, y| Pixel { x, y }, |value, plus_minus| Size { value, plus_minus });
    let distance = ToEdge { distance: size(4_321, 210), outside: false };
    let reference = if told { Reference::TwoCards } else { Reference::Frame { side: 300 } };
    let insertion = told.then(|| pixel(20_011, 15_007));
    let tracing = Tracing {
        reference,
        corners: vec![pixel(1_004, 2_007), pixel(5_008, 2_001), pixel(5_003, 4_500), pixel(-7, 4_499)],
        outline: vec![pixel(10_000, 10_000), pixel(20_000, 10_001), pixel(15_000, 20_002)],
        insertion,
        thickness: 22,
    };
    let sizes = Sizes {
        length: size(19_876, 412),
        breadth: size(17_003, 398),
        area: size(26_543, 1_021),
        insertion: told.then_some(distance),
        tilt: 113,
        height: 512,
        focal_from: if told { FocalFrom::Camera } else { FocalFrom::Usual },
    };
    let focal = told.then_some(3_005);
    PhotoMeasure { placenta: 1, file: FileId([0x5a; 32]), width: 4_000, height: 3_000, focal, tracing, sizes, formula: 1 }
}

/// What came later to be recorded after a birth.
fn course() -> Vec<(&'static str, Fact)> {
    let text = |text: &str| text.to_owned();
    let felt = MotherObservation {
        response: Some(Consciousness::Alert),
        fundal_height: FundalHeight::new(-1).ok(),
        fundal_position: Some(FundalPosition::Right),
        bladder: Some(Bladder::PassedUrine),
        urine: Volume::new(350).ok(),
        pain: PainScore::new(3).ok(),
        ..MotherObservation::default()
    };
    let baby = NewbornMeasures {
        sex: Some(Sex::Female),
        heart_rate: HeartRate::new(140).ok(),
        respirations: RespiratoryRate::new(44).ok(),
        breathing: Some(Breathing::Regular),
        ..NewbornMeasures::nothing(2)
    };
    let vitamin_k = Medicine {
        name: text("vitamin K"),
        dose: text("1 mg"),
        route: text("IM"),
        uterotonic: false,
        listed: Some(text("vitamin-k")),
        site: Some(text("left thigh")),
        batch: Some(text("B-17")),
        giver: Some(text("Bo")),
        baby: Some(1),
    };
    let client = Client {
        name: text("Rosa"),
        weight: BodyWeight::new(652).ok(),
        height: Length::new(1_650).ok(),
        conditions: Some([Condition::Hypertension, Condition::Asthma].into()),
        rhd: Some(RhD::Negative),
        ..Client::default()
    };
    let perineum = Perineum {
        tear: Tear::ThirdA,
        also: [AlsoTorn::Labial, AlsoTorn::Episiotomy].into(),
        rectal: Some(RectalExamination::Done),
        repair: Some(Repair::InHospital),
    };
    vec![
        ("mother_observed_felt", Fact::MotherObserved(felt)),
        ("newborn_measured_seen", Fact::NewbornMeasured(baby)),
        ("photo_measured", Fact::PhotoMeasured(Box::new(photo_measure(false)))),
        ("photo_measured_insertion", Fact::PhotoMeasured(Box::new(photo_measure(true)))),
        ("photo_taken", Fact::PhotoTaken(photo(false))),
        ("photo_taken_words", Fact::PhotoTaken(photo(true))),
        ("medicine_given_baby", Fact::MedicineGiven(vitamin_k)),
        ("client_recorded_body", Fact::ClientRecorded(client)),
        ("perineum_examined", Fact::PerineumExamined(perineum)),
        ("newborn_event", Fact::NewbornEvent { baby: 1, event: NewbornEvent::SkinToSkin }),
        ("separation_seen", Fact::SeparationSeen { sign: SeparationSign::CordLengthens }),
        ("response_marked", Fact::ResponseMarked { step: ResponseStep::AmbulanceCalled }),
        ("concern_marked", Fact::ConcernMarked),
        ("moment_marked", Fact::MomentMarked),
        ("touched_again", Fact::TouchedAgain { entry: id(1, 11), after_ms: 400 }),
        ("travel_time_set", Fact::TravelTimeSet { minutes: Minutes::new(25).unwrap() }),
        ("next_contact_planned", Fact::NextContactPlanned(contact(None))),
        ("next_contact_planned_at", Fact::NextContactPlanned(contact(Some("2026-11-27T10:00")))),
        ("voice_noted", Fact::VoiceNoted(note())),
        ("voice_noted_short", Fact::VoiceNoted(VoiceNote { placenta: None, chapters: Vec::new(), ..note() })),
        ("written_up", Fact::WrittenUp(WrittenUp { file: note().file, text: text("amnion whole\nchorion ragged") })),
        ("leaving_marked", Fact::LeavingMarked { step: LeavingStep::WarningSignsTold }),
        ("home_left", Fact::HomeLeft),
        (
            "server_set",
            Fact::ServerSet { server: Some(Server { address: text("https://fhir.example/r4"), token: Some(text("s3cr3t")) }) },
        ),
        ("server_set_open", Fact::ServerSet { server: Some(Server { address: text("http://127.0.0.1:8080"), token: None }) }),
        ("server_set_none", Fact::ServerSet { server: None }),
        ("term_set", Fact::TermSet { years: Some(Years::new(25).unwrap()) }),
        ("term_set_none", Fact::TermSet { years: None }),
        ("sending_waits", Fact::SendingWaits { birth: BIRTH, waits: true }),
        ("sending_waits_not", Fact::SendingWaits { birth: BIRTH, waits: false }),
        (
            "birth_joined",
            Fact::BirthJoined(Joined {
                from: id(1, 1).device,
                label: text("blue door"),
                protocol: Some(text("nice")),
                care: Some(Care::Physiological),
                told: vec![Told { entry: id(1, 4), fact: Box::new(born(1)), ago_ms: 241_300 }],
            }),
        ),
        (
            "birth_joined_before",
            Fact::BirthJoined(Joined {
                from: id(1, 1).device,
                label: text("blue door"),
                protocol: None,
                care: None,
                told: Vec::new(),
            }),
        ),
        ("clocks_compared", compared(2, -3_599_800, 640)),
        ("same_birth", Fact::SameBirth { other: BirthId(id(2, 700)), same: true }),
        ("same_birth_not", Fact::SameBirth { other: BirthId(id(2, 700)), same: false }),
        ("asked_for", Fact::AskedFor { text: text("theatre ready, blood cross-matched") }),
        (
            "shared",
            Fact::Shared(Shared {
                what: SharedWhat::Transfer,
                to: SharedTo::Hospital,
                how: SharedHow::Paper,
                name: None,
                version: None,
            }),
        ),
        (
            "shared_named",
            Fact::Shared(Shared {
                what: SharedWhat::Handover,
                to: SharedTo::Ambulance,
                how: SharedHow::Spoken,
                name: Some(text("Ben")),
                version: None,
            }),
        ),
        (
            "shared_version",
            Fact::Shared(Shared {
                what: SharedWhat::Fhir,
                to: SharedTo::Server,
                how: SharedHow::Network,
                name: Some(text("https://fhir.example/r4")),
                version: Some("9f".repeat(32)),
            }),
        ),
    ]
}

/// A practice's own protocol with one of each kind of number.
fn own() -> Box<Protocol> {
    Box::new(
        Protocol::parse(
            r#"
            id = "own"
            title = "Ours"
            edition = "first, 2026"
            checked = "2026-11-25"
            off = ["pulse.limit.under.1", "mother.2"]
            late_entry = { value = 20, source = "none found", status = "choice" }
            grams_per_ml = { value = 1.06, source = "letter of the hospital", status = "seen" }
            mother = [{ every = 15, until = 120, source = "the same", status = "memory" }]

            [[watch]]
            watch = "blood-loss"
            unit = "mL"

            [[watch.step]]
            level = "limit"
            compare = ">="
            value = 400
            source = "meeting of March"
            status = "choice"
            words = "Ours"
            with = [{ watch = "temperature", compare = "<", value = 35.5 }]

            [[watch]]
            watch = "pulse"
            unit = "/min"

            [[watch.step]]
            level = "caution"
            compare = ">"
            value = 110
            again = 15
            source = "meeting of March"
            status = "choice"
            words = ""
            "#,
        )
        .unwrap(),
    )
}

fn own_with_apgar() -> Box<Protocol> {
    Box::new(Protocol { apgar: Protocol::find("who").unwrap().apgar.clone(), ..*own() })
}

fn own_apgar_changed() -> Fact {
    let times = own_with_apgar().apgar.map(State::Apgar);
    let change = OwnChange { fields: [(Slot::Apgar, times)].into(), ..OwnChange::default() };
    Fact::OwnProtocolChanged { change, finished: None }
}

/// A change of every kind of thing that can change.
fn own_changed() -> Fact {
    let text = |text: &str| Some(text.to_owned());
    let ours = OwnProtocol::of(&own());
    let opened = ("saturation.limit.under.1".parse().unwrap(), None);
    let fields = ours.fields.into_iter().map(|(slot, state)| (slot, Some(state))).chain([opened]).collect();
    let change = OwnChange { title: text("Ours"), edition: text("first, 2026"), checked: text("2026-11-25"), fields };
    Fact::OwnProtocolChanged { change, finished: None }
}

fn people() -> Vec<(&'static str, Fact)> {
    let text = |text: &str| text.to_owned();
    let client = Client {
        name: text("Rosa"),
        born: Some(text("1994-05-17")),
        gestation: Gestation::new(281).ok(),
        gravida: Count::new(2).ok(),
        para: Count::new(1).ok(),
        blood_group: Some(text("O Rh−")),
        allergies: Some(String::new()),
        ..Client::default()
    };
    let practice =
        |protocol| Practice { name: text("Vroedvrouwen"), practitioner: text("Ada Łąk"), role: text("midwife"), protocol };
    vec![
        ("practice_described", Fact::PracticeDescribed(practice(Some(text("who"))))),
        ("practice_described_without_protocol", Fact::PracticeDescribed(practice(None))),
        ("birth_registered", Fact::BirthRegistered { label: text("Rosa"), rehearsal: false }),
        ("client_recorded", Fact::ClientRecorded(client)),
        ("client_recorded_by_name", Fact::ClientRecorded(Client { name: text("Rosa"), ..Client::default() })),
        ("medicines_listed", Fact::MedicinesListed { medicines: vec![oxytocin()] }),
        ("placenta_weights", Fact::PlacentaWeights { table: Some(Box::new(weights())) }),
        ("placenta_weights_none", Fact::PlacentaWeights { table: None }),
        ("examination_ordered", Fact::ExaminationOrdered { items: ["amnion", "chorion", "lobes"].map(str::to_owned).into() }),
        ("protocol_chosen", Fact::ProtocolChosen { protocol: text("nice-rcog"), own: None }),
        ("protocol_chosen_own", Fact::ProtocolChosen { protocol: text("own"), own: Some(own()) }),
        ("protocol_chosen_own_apgar", Fact::ProtocolChosen { protocol: text("own"), own: Some(own_with_apgar()) }),
        ("own_protocol_changed", own_changed()),
        ("own_protocol_changed_apgar", own_apgar_changed()),
        ("own_protocol_changed_finished", Fact::OwnProtocolChanged { change: OwnChange::default(), finished: Some(own()) }),
        ("noted", Fact::Noted { text: text("line one\nline \"two\" \u{1F319}") }),
        ("retracted", Fact::Retracted),
        ("signed", Fact::Signed { name: text("Ada Łąk"), role: text("midwife"), version: "9f".repeat(32) }),
    ]
}

fn third_stage() -> Vec<(&'static str, Fact)> {
    let medicine = oxytocin();
    vec![
        ("care_chosen", care(Care::Physiological)),
        ("care_chosen_active", care(Care::Active)),
        ("baby_born", born(1)),
        ("cord_pulsation_stopped", Fact::CordPulsationStopped { baby: 1 }),
        ("cord_clamped", clamped(1)),
        ("cord_cut", cut(2)),
        ("placenta_born", placenta(&[1, 2])),
        ("membranes_born", membranes(&[1])),
        ("blood_loss", pad(740, 120)),
        ("blood_loss_jug", jug(350)),
        ("blood_loss_seen", seen(150)),
        ("mother_observed", looked(Some(Bleeding::Light), Some(Fundus::Firm))),
        ("mother_observed_moderate", looked(Some(Bleeding::Moderate), Some(Fundus::FirmsWhenRubbed))),
        ("mother_observed_heavy", looked(Some(Bleeding::Heavy), Some(Fundus::Soft))),
        ("mother_observed_trickle", looked(Some(Bleeding::Trickle), None)),
        ("mother_observed_clots", looked(Some(Bleeding::Clots), None)),
        ("apgar_scored", apgar(1)),
        (
            "newborn_measured",
            Fact::NewbornMeasured(NewbornMeasures {
                baby: 1,
                weight: BirthWeight::new(3_650).ok(),
                length: Length::new(510).ok(),
                head: None,
                temperature: Temperature::new(369).ok(),
                ..NewbornMeasures::nothing(1)
            }),
        ),
        ("medicine_given", Fact::MedicineGiven(medicine)),
        ("examined", examined("lobes", Answer::Choice { option: "meet".to_owned() })),
        ("examined_measure", examined("cord-length", Answer::Measure { value: 540 })),
        ("examined_choices", examined("fetal-marks", Answer::Choices { options: ["cyst", "plaque"].map(str::to_owned).into() })),
        ("examined_pieces", of_cord(2, "cord-length", Answer::Pieces { lengths: vec![410, 130], all: true })),
        ("examined_coils", examined("cord-coils", Answer::Coils { coils: 11, over: 500 })),
        (
            "examined_places",
            examined("firm-places", Answer::Places { places: vec![place(-420, 310, Some(25)), place(0, -900, None)] }),
        ),
        ("examined_could_not_tell", examined("vessels", Answer::CouldNotTell)),
    ]
}

fn weights() -> WeightTable {
    let rows = vec![WeightRow { week: 40, grams: vec![410, 510, 610] }];
    WeightTable { source: "A made-up cohort".to_owned(), weighed: Weighed::Untrimmed, centiles: vec![10, 50, 90], rows }
}

fn of_cord(cord: u8, item: &str, answer: Answer) -> Fact {
    Fact::Examined { placenta: 1, item: item.to_owned(), cord: Some(cord), answer }
}

fn place(x: i32, y: i32, size: Option<u32>) -> Place {
    Place { x, y, size }
}

/// What each file holds. A file's name begins with the kind of its fact.
fn fixtures() -> Vec<(&'static str, Entry)> {
    let mut all: Vec<_> =
        people().into_iter().chain(third_stage()).chain(course()).map(|(name, fact)| (name, stored(fact))).collect();
    let amends = Some(Amendment { entry: id(2, 7), reason: "scale read again".to_owned() });
    all.push(("blood_loss_amended", Entry { amends, ..stored(pad(310, 120)) }));
    all.push(("baby_born_typed", typed(Precision::Exact)));
    all.push(("baby_born_typed_estimated", typed(Precision::Estimated)));
    all
}

/// Entries of later versions: the bytes, and the kind under which they are kept.
const LATER: [(&str, &str, &str); 2] = [
    ("later_kind", r#"{"kind":"cord_blood_taken","data":{"millilitres":60}}"#, "cord_blood_taken"),
    ("later_number", r#"{"kind":"blood_loss","data":{"method":"jug","volume":20000}}"#, "blood_loss"),
];

fn write_if_missing(name: &str, bytes: &[u8]) {
    let path = folder().join(format!("{name}.json"));
    if std::env::var_os("WRITE_FIXTURES").is_some() && !path.exists() {
        fs::create_dir_all(folder()).unwrap();
        fs::write(&path, bytes).unwrap();
    }
}

fn bytes(name: &str) -> Vec<u8> {
    fs::read(folder().join(format!("{name}.json"))).unwrap_or_else(|error| unreachable!("fixture {name}: {error}"))
}

#[test]
fn every_fixture_is_read_as_what_it_is_and_written_as_it_was() {
    for (name, entry) in fixtures() {
        write_if_missing(name, &entry.encode().unwrap());
        let bytes = bytes(name);
        let read = Entry::decode(&bytes).unwrap();
        assert_eq!(read, entry, "{name}");
        assert_eq!(String::from_utf8(read.encode().unwrap()).unwrap(), String::from_utf8(bytes).unwrap(), "{name}");
    }
}

#[test]
fn what_a_later_version_wrote_is_kept_whole() {
    let known = String::from_utf8(stored(Fact::Retracted).encode().unwrap()).unwrap();
    for (name, fact, later) in LATER {
        write_if_missing(name, known.replace(r#"{"kind":"retracted"}"#, fact).as_bytes());
        let read = Entry::decode(&bytes(name)).unwrap();
        let Fact::Unknown { kind, stored: whole } = &read.fact else { unreachable!("{name}: {:?}", read.fact) };
        assert_eq!(kind, later);
        let [kept, written] = [whole.as_str(), fact].map(|text| serde_json::from_str::<serde_json::Value>(text).unwrap());
        assert_eq!(kept, written, "{name}");
        assert_eq!(Entry { fact: Fact::Retracted, ..read.clone() }, stored(Fact::Retracted), "{name}: all but the fact is read");
        assert_eq!(Entry::decode(&read.encode().unwrap()).unwrap(), read, "{name}: once read, it stays the same");
    }
}

#[test]
fn every_kind_has_a_fixture_and_every_file_is_asked_for() {
    let known: BTreeSet<String> = kinds().into_iter().filter(|kind| kind != "unknown").collect();
    assert!(known.len() >= 20, "{known:?}");
    let held: BTreeSet<String> = fixtures().iter().map(|(_, entry)| kind(&entry.fact).to_owned()).collect();
    assert_eq!(held, known, "each kind is among the fixtures");
    for (name, entry) in fixtures() {
        assert!(name.starts_with(kind(&entry.fact)), "{name}");
    }
    let asked: BTreeSet<String> =
        fixtures().iter().map(|(name, _)| *name).chain(LATER.map(|(name, ..)| name)).map(|name| format!("{name}.json")).collect();
    let files: BTreeSet<String> =
        fs::read_dir(folder()).unwrap().map(|file| file.unwrap().file_name().into_string().unwrap()).collect();
    assert_eq!(files, asked);
}

#[test]
fn bytes_that_are_no_entry_are_refused_and_not_guessed_at() {
    let good = String::from_utf8(stored(born(1)).encode().unwrap()).unwrap();
    assert!(Entry::decode(good.as_bytes()).is_ok());
    let cases = [
        ("nothing", String::new()),
        ("half a line", good.chars().take(good.len() / 2).collect()),
        ("no version", good.replace(r#""v":1,"#, "")),
        ("no id", good.replace(r#""id":"0"#, r#""di":"0"#)),
        ("a time that is text", good.replace(&START.to_string(), "\"now\"")),
        ("no fact", good.replace("\"fact\"", "\"fiction\"")),
        ("bytes that are no text", "\u{0}".to_owned()),
    ];
    for (what, text) in cases {
        assert_ne!(text, good, "{what}");
        assert!(matches!(Entry::decode(text.as_bytes()), Err(StoredError::Unreadable(_))), "{what}");
    }
    let newer = good.replace(r#""v":1"#, r#""v":2"#);
    assert!(matches!(Entry::decode(newer.as_bytes()), Err(StoredError::Newer(2))));
}

#[test]
fn an_id_has_one_spelling() {
    let id = id(0xab, 12).to_string();
    assert_eq!(id.parse::<EntryId>().unwrap().to_string(), id);
    let other_spellings = [id.to_uppercase(), id.replacen('a', "+", 1), id.replace("-12", "-012"), id.replace("-12", "-+12")];
    for text in other_spellings {
        assert!(text.parse::<EntryId>().is_err(), "{text}");
    }
}

proptest! {
    #[test]
    fn an_entry_is_read_back_as_it_was_written(entry in entry()) {
        let bytes = entry.encode().unwrap();
        prop_assert!(bytes.starts_with(br#"{"v":1,"#), "the version comes first");
        prop_assert!(!bytes.contains(&b'\n'), "one entry, one line");
        let read = Entry::decode(&bytes).unwrap();
        prop_assert_eq!(read.encode().unwrap(), bytes);
        prop_assert_eq!(read, entry);
    }

    #[test]
    fn every_kind_is_read_back(fact in fact()) {
        let entry = stored(fact);
        prop_assert_eq!(Entry::decode(&entry.encode().unwrap()).unwrap(), entry);
    }

    #[test]
    fn no_bytes_make_it_panic(bytes in prop::collection::vec(any::<u8>(), 0..64), entry in entry(), at in any::<prop::sample::Index>(), byte in any::<u8>()) {
        let _ = Entry::decode(&bytes);
        let mut spoilt = entry.encode().unwrap();
        let at = at.index(spoilt.len());
        spoilt.get_mut(at).into_iter().for_each(|there| *there = byte);
        if let Ok(read) = Entry::decode(&spoilt) {
            prop_assert_eq!(Entry::decode(&read.encode().unwrap()).unwrap(), read);
        }
    }
}
