//! The examination: one observation for each placenta, each item a part of it, also those that were not answered.

use std::collections::BTreeSet;

use secundine_domain::chart::{Line, State};
use secundine_domain::examination::{Asked, Examination, Given, Kind, asked};
use secundine_domain::fact::{Answer, BabyNo, of_cord};
use secundine_domain::message::Message;

use super::codes::{Unit, absent, own};
use super::element::{Concept, Quantity, Value};
use super::resource::{Component, Observation, Resource};
use super::text::{clean, narrative};
use super::told::{Made, Maker, Part, Told, Who};

/// The key of a placenta's observation.
fn key(placenta: BabyNo) -> String {
    format!("placenta-{placenta}")
}

/// The placenta in whose observation this line stands; none where another answer took its place, or it was taken out.
pub(super) fn stands_in(maker: &Maker, line: &Line) -> Option<String> {
    let holds = |given: &Given| given.entry == line.first.id;
    let found = maker.chart.examinations.iter().find(|(_, examined)| examined.given.values().any(holds));
    found.filter(|_| line.state() != State::Retracted).map(|(placenta, _)| key(*placenta))
}

/// What was found at each placenta that was born or looked at, as it holds now.
pub(super) fn placentas(maker: &mut Maker) -> Vec<Made> {
    let chart = maker.chart;
    let known: BTreeSet<BabyNo> = chart.placentas.keys().chain(chart.examinations.keys()).copied().collect();
    known.into_iter().map(|placenta| whole(maker, placenta)).collect()
}

fn whole(maker: &mut Maker, placenta: BabyNo) -> Made {
    let chart = maker.chart;
    let (examined, fed) = (chart.examined(placenta), chart.fed(placenta));
    let listed = asked(examined, &fed, &[]).into_iter();
    // What is set on the drawing is asked of nobody.
    let listed = listed.filter(|(item, cord)| item.kind != Kind::Places || examined.at(&item.id, *cord).is_some());
    let mut all: Vec<Asked> = listed.map(|(item, cord)| Asked::cord(&item.id, cord)).collect();
    // Answers to what this version does not ask.
    let others: Vec<Asked> = examined.given.keys().filter(|given| !all.contains(given)).cloned().collect();
    all.extend(others);
    let mut component = Vec::new();
    let mut lines = Vec::new();
    for asked in all {
        let given = examined.given.get(&asked).map(|given| &given.answer);
        component.extend(parts(maker, &asked.item, asked.cord, given));
        lines.extend(given.map(|answer| said(maker, &asked.item, asked.cord, answer)));
    }
    let given: BTreeSet<_> = examined.given.values().map(|given| given.entry).collect();
    let of_it: Vec<&Line> = chart.lines.iter().filter(|line| given.contains(&line.first.id)).collect();
    let changed = of_it.iter().any(|line| line.state() == State::Corrected);
    let authors: BTreeSet<&str> = of_it.iter().map(|line| line.current().author.as_str()).collect();
    let performer = authors.into_iter().map(|author| maker.person(author)).collect();
    let focus = fed.into_iter().map(|no| maker.baby(no)).collect();
    let seen = Observation {
        text: narrative(lines.iter().map(String::as_str)),
        status: Some(if changed { "amended" } else { "final" }),
        code: Some(own(maker.words, "fhir-examination")),
        subject: Some(maker.mother()),
        focus,
        encounter: Some(maker.encounter()),
        effective_date_time: examined.last.as_ref().map(|last| last.rfc3339()),
        performer,
        data_absent_reason: given.is_empty().then(not_done),
        component,
        ..Observation::default()
    };
    // It grows with each answer.
    Made { key: key(placenta), part: Some(Part::Placenta), resource: Resource::Observation(Box::new(seen)), replaces: true }
}

/// A line that stands in no placenta's observation, by itself.
pub(super) fn alone(
    maker: &mut Maker,
    told: &Told,
    placenta: BabyNo,
    item: &str,
    cord: Option<BabyNo>,
    answer: &Answer,
) -> Option<Made> {
    if stands_in(maker, told.line).is_some() {
        return None;
    }
    let component = parts(maker, item, cord, Some(answer));
    let code = own(maker.words, "fhir-examined");
    let seen = Observation { component, ..maker.observation(told, Who::MotherFor(placenta), code) };
    Some(told.made("", Resource::Observation(Box::new(seen))))
}

fn said(maker: &Maker, item: &str, cord: Option<BabyNo>, answer: &Answer) -> String {
    let name = of_cord(Message::new(format!("exam-{item}")), cord);
    maker.words.say(&Message::new("fact-examined").with("item", name).with("answer", answer.describe(item)))
}

/// An item with its answer; one part for each of several choices.
fn parts(maker: &Maker, item: &str, cord: Option<BabyNo>, answer: Option<&Answer>) -> Vec<Component> {
    let code = || Some(name(maker, item, cord));
    let lone = |value| vec![Component { code: code(), value: Some(value), ..Component::default() }];
    let missing = |reason| vec![Component { code: code(), data_absent_reason: Some(reason), ..Component::default() }];
    let Some(answer) = answer else { return missing(not_done()) };
    let chosen = |option: &str| match Examination::standard().item(item).and_then(|known| known.choice(option)) {
        Some(choice) => Value::Concept(own(maker.words, &format!("exam-{item}-{}", choice.id))),
        None => Value::Text(clean(option).unwrap_or_else(|| maker.words.plain("record-not-recorded"))),
    };
    match answer {
        Answer::CouldNotTell => missing(absent("unknown", "Unknown")),
        Answer::Choice { option } => lone(chosen(option)),
        Answer::Choices { options } if options.is_empty() => missing(absent("unknown", "Unknown")),
        Answer::Choices { options } => options.iter().flat_map(|option| lone(chosen(option))).collect(),
        Answer::Measure { value } => lone(Value::Quantity(measured(item, *value))),
        Answer::Pieces { lengths, all } => {
            let sum = lengths.iter().copied().fold(0, u32::saturating_add);
            lone(Value::Quantity(Quantity { comparator: (!all).then_some(">="), ..Unit::Centimetre.tenths(sum) }))
        }
        Answer::Coils { .. } | Answer::Places { .. } => lone(Value::Text(maker.words.say(&answer.describe(item)))),
    }
}

/// A number in the unit of its item.
fn measured(item: &str, value: u32) -> Quantity {
    match Examination::standard().item(item).map(|known| known.kind) {
        Some(Kind::Millimetres | Kind::Pieces) => Unit::Centimetre.tenths(value),
        Some(Kind::Grams) => Unit::Gram.of(value),
        Some(Kind::Percent) => Unit::Percent.of(value),
        Some(Kind::Choice | Kind::Choices | Kind::Coils | Kind::Places) | None => {
            Quantity { value: Some(value.into()), ..Quantity::default() }
        }
    }
}

/// What was looked at, and whose cord in words; what this version does not know, by how it is called.
fn name(maker: &Maker, item: &str, cord: Option<BabyNo>) -> Concept {
    match Examination::standard().item(item) {
        Some(known) => {
            Concept { text: clean(&maker.words.say(&of_cord(known.name(), cord))), ..own(maker.words, &format!("exam-{item}")) }
        }
        None => Concept { text: clean(item), ..own(maker.words, "fhir-examined") },
    }
}

fn not_done() -> Concept {
    absent("not-performed", "Not Performed")
}
