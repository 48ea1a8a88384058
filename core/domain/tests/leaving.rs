//! What is looked through before leaving, the way to the hospital, the blood as it grew, and the account of the response.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use common::{MINUTE, Phone, born, care, jug, look, membranes, placenta, protocol, seen};
use secundine_domain::assess::{About, Finding, FindingState, assess, blood_curve};
use secundine_domain::due::due;
use secundine_domain::fact::{
    Bladder, Care, Fact, Fundus, LeavingStep, Medicine, MotherObservation, NewbornEvent, NewbornMeasures, NextContact, Perineum,
    ResponseStep, Shared, SharedHow, SharedTo, SharedWhat, Tear,
};
use secundine_domain::leaving::{LeavingItem, leaving};
use secundine_domain::protocol::Level;
use secundine_domain::quantity::{Minutes, RespiratoryRate, Temperature, Volume};

fn travel(minutes: i64) -> Fact {
    Fact::TravelTimeSet { minutes: Minutes::new(minutes).unwrap() }
}

fn stage(phone: &Phone) -> Finding {
    let findings = assess(&phone.chart(), Some(protocol("nice-rcog")), &phone.now());
    findings.into_iter().find(|finding| finding.about == About::ThirdStage).unwrap()
}

/// Items that are not recorded.
fn open(phone: &Phone) -> Vec<LeavingItem> {
    let chart = phone.chart();
    let findings = assess(&chart, Some(protocol("nice-rcog")), &phone.now());
    leaving(&chart, &findings).into_iter().filter(|line| !line.recorded).map(|line| line.item).collect()
}

#[test]
fn each_limit_is_told_by_the_travel_time_earlier() {
    // NICE, physiological: 60 min (second-hand). A way of 25 min: 35 min. The subtraction is our own choice.
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.mark(care(Care::Physiological));
    phone.mark(travel(25));
    phone.pass(35 * MINUTE - 1);
    assert_eq!(stage(&phone).level, None);
    assert!(due(&phone.chart(), Some(protocol("nice-rcog")), &phone.now()).iter().any(|due| due.id == "third-stage-35000"));
    phone.pass(1);
    let early = stage(&phone);
    assert_eq!((early.state, early.level), (FindingState::Passed, Some(Level::Limit)));
    assert!(early.threshold.unwrap().source.ends_with("less the travel time recorded: none found"));
    phone.pass(25 * MINUTE);
    assert!(!stage(&phone).threshold.unwrap().source.contains("travel"), "the limit itself takes over");
}

#[test]
fn a_way_as_long_as_the_limit_is_a_caution_from_the_birth() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.mark(care(Care::Active));
    phone.mark(travel(30));
    assert_eq!(stage(&phone).level, Some(Level::Caution));
    phone.mark(travel(0));
    assert_eq!(stage(&phone).level, None);
}

#[test]
fn once_the_placenta_is_born_the_way_counts_no_more() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.mark(care(Care::Physiological));
    phone.mark(travel(40));
    phone.pass(25 * MINUTE);
    assert_eq!(stage(&phone).state, FindingState::Passed);
    phone.mark(placenta(&[1]));
    assert_eq!(stage(&phone).state, FindingState::Within);
}

#[test]
fn what_is_not_recorded_before_leaving_is_named() {
    use LeavingItem as Item;
    let mut phone = Phone::first();
    assert_eq!(open(&phone), []);
    phone.mark(born(1));
    let all = [
        Item::Placenta,
        Item::Uterus,
        Item::Blood,
        Item::Looks,
        Item::Urine,
        Item::Perineum,
        Item::Feed,
        Item::Temperature,
        Item::Breathing,
        Item::VitaminK,
        Item::WarningSigns,
        Item::Adult,
        Item::Contact,
        Item::Call,
        Item::Shared,
    ];
    assert_eq!(open(&phone), all);
    // A look before the placenta tells nothing of the uterus after it.
    let firm =
        MotherObservation { fundus: Some(Fundus::Firm), bladder: Some(Bladder::PassedUrine), ..MotherObservation::default() };
    phone.pass(MINUTE).mark(Fact::MotherObserved(firm.clone()));
    phone.pass(MINUTE).mark(placenta(&[1]));
    phone.mark(membranes(&[1]));
    assert!(open(&phone).contains(&Item::Uterus) && open(&phone).contains(&Item::Completeness));
    assert!(!open(&phone).contains(&Item::Urine) && !open(&phone).contains(&Item::Placenta));
    phone.pass(MINUTE).mark(Fact::MotherObserved(firm));
    assert!(!open(&phone).contains(&Item::Uterus) && open(&phone).contains(&Item::Looks), "one look of two");
    phone.pass(MINUTE).mark(look(80, 110));
    phone.mark(seen(200));
    let perineum = Perineum { tear: Tear::Intact, also: Default::default(), rectal: None, repair: None };
    phone.mark(Fact::PerineumExamined(perineum));
    phone.mark(Fact::NewbornEvent { baby: 1, event: NewbornEvent::FirstFeed });
    let temperature = Temperature::new(368).ok();
    let respirations = RespiratoryRate::new(44).ok();
    phone.mark(Fact::NewbornMeasured(NewbornMeasures { temperature, respirations, ..NewbornMeasures::nothing(1) }));
    phone.mark(Fact::NewbornEvent { baby: 1, event: NewbornEvent::VitaminKDeclined });
    for step in LeavingStep::ALL {
        phone.mark(Fact::LeavingMarked { step });
    }
    phone.mark(Fact::NextContactPlanned(NextContact { when: "tomorrow".to_owned(), ..NextContact::default() }));
    assert_eq!(open(&phone), [Item::Completeness, Item::Call, Item::Shared]);
    let call =
        phone.mark(Fact::NextContactPlanned(NextContact { when: "tomorrow".to_owned(), call: "Ada".to_owned(), at: None }));
    assert_eq!(open(&phone), [Item::Completeness, Item::Shared]);
    let given = Shared { what: SharedWhat::Record, to: SharedTo::Doctor, how: SharedHow::Paper, name: None, version: None };
    let given = phone.mark(Fact::Shared(given));
    assert_eq!(open(&phone), [Item::Completeness]);
    phone.retract(given);
    phone.retract(call);
    assert_eq!(open(&phone), [Item::Completeness, Item::Call, Item::Shared]);
}

#[test]
fn an_empty_catheter_later_does_not_take_the_place_of_urine_that_was_passed() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    let passed = MotherObservation { urine: Volume::new(300).ok(), ..MotherObservation::default() };
    let nothing = MotherObservation { urine: Volume::new(0).ok(), ..MotherObservation::default() };
    let urine = |phone: &Phone| leaving(&phone.chart(), &[]).into_iter().find(|line| line.item == LeavingItem::Urine).unwrap();
    phone.pass(MINUTE).mark(Fact::MotherObserved(nothing.clone()));
    assert!(!urine(&phone).recorded);
    let told = phone.pass(MINUTE).mark(Fact::MotherObserved(passed));
    phone.pass(MINUTE).mark(Fact::MotherObserved(nothing));
    assert_eq!(urine(&phone).mark.unwrap().entry, told);
}

#[test]
fn vitamin_k_given_to_one_twin_is_not_given_to_the_other() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(MINUTE).mark(born(2));
    let given =
        Medicine { name: "vitamin K".to_owned(), listed: Some("vitamin-k".to_owned()), baby: Some(2), ..Medicine::default() };
    phone.mark(Fact::MedicineGiven(given));
    let chart = phone.chart();
    let lines = leaving(&chart, &[]);
    let recorded: Vec<_> =
        lines.iter().filter(|line| line.item == LeavingItem::VitaminK).map(|line| (line.of, line.recorded)).collect();
    assert_eq!(recorded, [(Some(1), false), (Some(2), true)]);
}

#[test]
fn the_blood_grows_in_steps_from_the_last_birth() {
    let mut phone = Phone::first();
    phone.mark(seen(50));
    phone.pass(MINUTE).mark(born(1));
    phone.pass(2 * MINUTE).mark(jug(100));
    let wrong = phone.pass(MINUTE).mark(jug(900));
    phone.pass(MINUTE).mark(seen(200));
    let curve = |phone: &Phone| -> Vec<(i64, u32)> {
        blood_curve(&phone.chart(), None).iter().map(|(ms, blood)| (ms / MINUTE, blood.total())).collect()
    };
    assert_eq!(curve(&phone), [(-1, 50), (2, 150), (3, 1050), (4, 1250)]);
    phone.retract(wrong);
    assert_eq!(curve(&phone), [(-1, 50), (2, 150), (4, 350)]);
}

#[test]
fn the_account_begins_with_the_first_mark_of_the_response() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(MINUTE).mark(jug(400));
    let help = phone.pass(MINUTE).mark(Fact::ResponseMarked { step: ResponseStep::HelpCalled });
    let blood = phone.pass(MINUTE).mark(jug(300));
    phone.mark(Fact::TravelTimeSet { minutes: Minutes::new(20).unwrap() });
    let left = phone.pass(MINUTE).mark(Fact::ResponseMarked { step: ResponseStep::TransferLeft });
    let ids = |phone: &Phone| -> Vec<_> { phone.chart().account().iter().map(|line| line.first.id).collect() };
    assert_eq!(ids(&phone), [help, blood, left]);
    assert!(phone.chart().response_ended().is_none());
    phone.mark(Fact::ResponseMarked { step: ResponseStep::HandedOver });
    assert!(phone.chart().response_ended().is_some());
    // Taken back, it never began.
    let mut calm = Phone::first();
    let slip = calm.mark(Fact::ConcernMarked);
    assert_eq!(calm.chart().response_began().unwrap().entry, slip);
    calm.retract(slip);
    assert!(calm.chart().response_began().is_none() && calm.chart().account().is_empty());
}
