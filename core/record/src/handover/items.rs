//! What is told, read off the chart.

use secundine_domain::assess::{About, FindingState, blood as add_up};
use secundine_domain::chart::{Baby, Line, Noted, State};
use secundine_domain::fact::{BabyNo, Fact, Medicine, MotherObservation, NewbornMeasures, all_of, care_words, condition_words};
use secundine_domain::message::Message;
use secundine_domain::protocol::Level;
use secundine_domain::quantity::Count;
use secundine_domain::time::{Occurred, date_words, years};

use super::{Item, Topic, when};
use crate::document::Source;
use crate::sections;

pub(super) fn items(source: &Source) -> Vec<Item> {
    let mut items = vec![from(source), birth(source), mother(source)];
    items.extend(placentas(source));
    items.push(blood(source));
    items.extend(signs(source));
    items.extend(way(source));
    items.extend(background(source));
    items.extend(findings(source));
    items.extend(done(source));
    items.extend(perineum(source));
    items.extend(source.chart.babies.iter().flat_map(|(no, known)| baby(source, *no, known)));
    items.push(asked(source));
    items
}

/// An item of no one moment.
fn plain(topic: Topic, said: Message) -> Item {
    let label = Message::new(topic.name());
    Item { topic, label, said, at: None, when: None, ages: false, is_nothing: false, level: None, threshold: None }
}

fn nothing(topic: Topic, said: &str) -> Item {
    Item { is_nothing: true, ..plain(topic, Message::new(said)) }
}

fn at(source: &Source, moment: &Occurred, item: Item) -> Item {
    Item { at: Some(moment.clone()), when: Some(when(source.chart, moment, source.origin.written)), ..item }
}

/// The same, of which it matters how long ago it was.
fn aging(source: &Source, moment: &Occurred, item: Item) -> Item {
    Item { ages: true, ..at(source, moment, item) }
}

fn not_recorded() -> Message {
    Message::new("record-not-recorded")
}

fn text(value: &str) -> Message {
    Message::new("value-text").with("value", value.trim())
}

/// Words that somebody wrote, or that there are none.
fn written(value: Option<&str>) -> Message {
    value.filter(|value| !value.trim().is_empty()).map_or_else(not_recorded, text)
}

/// The parts of a fact without what it begins with.
fn parts(fact: &Fact) -> Message {
    Message { id: "part-seen".to_owned(), args: fact.describe().args }
}

fn from(source: &Source) -> Item {
    let practice = source.origin.practice;
    let said = [&practice.practitioner, &practice.role, &practice.name].map(|part| part.trim());
    let said: Vec<&str> = said.into_iter().filter(|part| !part.is_empty()).collect();
    plain(Topic::From, text(&said.join(", ")))
}

fn mother(source: &Source) -> Item {
    let client = source.chart.client.as_ref();
    let name = written(client.map(|client| client.name.as_str()));
    let born = client.and_then(|client| client.born.as_deref()).filter(|born| !born.trim().is_empty());
    let said = match born {
        None => name,
        Some(born) => {
            let who = Message::new("handover-mother-born").with("name", name).with("born", date_words(born.trim()));
            match years(born, &source.origin.written.date()) {
                Some(age) => Message::new("handover-mother-age").with("who", who).with("age", age),
                None => who,
            }
        }
    };
    plain(Topic::Mother, said)
}

fn birth(source: &Source) -> Item {
    plain(Topic::Birth, text(&source.chart.label))
}

/// Each placenta that is awaited, then each that is born, with whether all is here.
fn placentas(source: &Source) -> Vec<Item> {
    let chart = source.chart;
    if chart.first_birth().is_none() {
        return vec![plain(Topic::Placenta, Message::new("handover-baby-not-born"))];
    }
    let is_out = |no: BabyNo| chart.placentas.values().any(|known| known.born.is_some() && known.babies.contains(&no));
    let mut items = Vec::new();
    for (no, known) in &chart.babies {
        if let Some(born) = known.born.as_ref().filter(|_| !is_out(*no)) {
            let said = Message::new("handover-placenta-in").with("when", when(chart, &born.at, source.origin.written));
            let item = aging(source, &born.at, plain(Topic::Placenta, chart.numbered(said, *no)));
            items.push(Item { when: None, ..item });
        }
    }
    for (no, known) in &chart.placentas {
        let Some(born) = &known.born else { continue };
        let babies: Vec<String> = known.babies.iter().map(BabyNo::to_string).collect();
        let mut said = chart.numbered(Message::new("handover-placenta-out"), *no).with("babies", babies.join(" + "));
        if let Some(first) = known.babies.iter().filter_map(|no| chart.babies.get(no)?.born.as_ref()).next_back() {
            let after = chart.elapsed(&first.at, &born.at).words();
            said = Message::new("handover-placenta-after").with("what", said).with("after", after);
        }
        items.push(at(source, &born.at, plain(Topic::Placenta, said)));
        items.extend(whole(source, *no));
    }
    items
}

/// Whether all of a placenta is here, as far as it was looked at.
fn whole(source: &Source, placenta: BabyNo) -> Option<Item> {
    let chart = source.chart;
    let found = source.findings.iter().find(|finding| finding.about == About::Completeness { placenta })?;
    let said = match found.state {
        FindingState::NotRecorded if !chart.examinations.contains_key(&placenta) => {
            chart.numbered(Message::new("handover-not-examined"), placenta)
        }
        FindingState::Within => Message::new("handover-no-doubt"),
        _ => found.message.clone(),
    };
    Some(Item { level: found.level, threshold: found.threshold.clone(), ..plain(Topic::Placenta, said) })
}

fn blood(source: &Source) -> Item {
    let Some(last) = source.chart.losses.last() else { return plain(Topic::Blood, not_recorded()) };
    let sum = add_up(source.chart, source.protocol);
    let said = Message::new("handover-blood-sum");
    let said = said.with("total", sum.total()).with("measured", sum.measured).with("seen", sum.seen);
    aging(source, &last.mark.at, plain(Topic::Blood, said))
}

/// The latest of each sign. What one look saw stands together, the latest look first.
fn signs(source: &Source) -> Vec<Item> {
    let mut told = MotherObservation::default();
    let mut items = Vec::new();
    for look in source.chart.observations.iter().rev() {
        let new = of_mother(&mut told, &look.what);
        if new != MotherObservation::default() {
            items.push(aging(source, &look.mark.at, plain(Topic::Signs, parts(&Fact::MotherObserved(new)))));
        }
    }
    if items.is_empty() { vec![plain(Topic::Signs, not_recorded())] } else { items }
}

/// The same of a baby.
fn seen(source: &Source, no: BabyNo, known: &Baby) -> Vec<Item> {
    let mut told = NewbornMeasures::nothing(no);
    let mut items = Vec::new();
    for look in known.measures.iter().rev() {
        let new = of_baby(&mut told, &look.what);
        if new != NewbornMeasures::nothing(no) {
            items.push(aging(source, &look.mark.at, plain(Topic::Baby, parts(&Fact::NewbornMeasured(new)))));
        }
    }
    items
}

/// Takes each of these signs out of a look, that no later look has told.
macro_rules! take {
    ($new:ident, $told:ident, $look:ident: $($sign:ident),*) => {
        $(if $told.$sign.is_none() && $look.$sign.is_some() {
            ($new.$sign, $told.$sign) = ($look.$sign, $look.$sign);
        })*
    };
}

fn of_mother(told: &mut MotherObservation, look: &MotherObservation) -> MotherObservation {
    let mut new = MotherObservation::default();
    // A pressure is told whole, and never put together from two looks.
    if told.systolic.is_none() && told.diastolic.is_none() {
        take!(new, told, look: systolic, diastolic);
    }
    take!(new, told, look: pulse, respirations, temperature, saturation, response, fundus, fundal_height);
    take!(new, told, look: fundal_position, bleeding, bladder, urine, pain);
    new
}

fn of_baby(told: &mut NewbornMeasures, look: &NewbornMeasures) -> NewbornMeasures {
    let mut new = NewbornMeasures::nothing(look.baby);
    take!(new, told, look: weight, length, head, temperature, sex, heart_rate, respirations, breathing);
    new
}

fn way(source: &Source) -> Option<Item> {
    let minutes = source.chart.travels.last()?.what.get();
    Some(plain(Topic::Way, Message::new("value-minutes").with("value", minutes)))
}

fn background(source: &Source) -> Vec<Item> {
    let chart = source.chart;
    let client = chart.client.as_ref();
    let gestation = client.and_then(|client| client.gestation);
    let gestation =
        gestation.map(|days| Message::new("part-gestation").with("weeks", days.get() / 7).with("days", days.get() % 7));
    let counted = |id: &str, count: Option<Count>| count.map(|count| Message::new(id).with("count", count.get()));
    let pregnancy: Vec<Message> = [
        counted("handover-gravida", client.and_then(|client| client.gravida)),
        counted("handover-para", client.and_then(|client| client.para)),
        gestation,
    ]
    .into_iter()
    .flatten()
    .collect();
    let pregnancy = if pregnancy.is_empty() { not_recorded() } else { all_of(pregnancy) };
    let group = written(client.and_then(|client| client.blood_group.as_deref()));
    let allergies = match client.and_then(|client| client.allergies.as_deref()) {
        None => Message::new("handover-not-asked"),
        Some(known) if known.trim().is_empty() => Message::new("record-none-known"),
        Some(known) => text(known),
    };
    let mut items = vec![plain(Topic::Pregnancy, pregnancy), plain(Topic::Group, group), plain(Topic::Allergies, allergies)];
    let conditions = client.and_then(|client| client.conditions.as_ref()).filter(|known| !known.is_empty());
    items.extend(conditions.map(|known| plain(Topic::Conditions, all_of(known.iter().map(|one| condition_words(*one))))));
    items.extend(chart.babies.iter().filter_map(|(no, known)| {
        let when = when(chart, &known.born.as_ref()?.at, source.origin.written);
        let said = Message::new("handover-born-at").with("when", when);
        Some(plain(Topic::Born, chart.numbered(said, *no)))
    }));
    items.extend(chart.care().map(|care| plain(Topic::Care, care_words(care))));
    let given: Vec<Item> =
        chart.medicines.iter().filter(|given| given.what.baby.is_none()).map(|given| medicine(source, given)).collect();
    match given.is_empty() {
        true => items.push(plain(Topic::Given, not_recorded())),
        false => items.extend(given),
    }
    items.extend(sections::protocol(source).map(|known| plain(Topic::Protocol, known)));
    items
}

fn medicine(source: &Source, given: &Noted<Medicine>) -> Item {
    let said = Fact::MedicineGiven(given.what.clone()).describe();
    let said = Message { id: "handover-medicine".to_owned(), args: said.args };
    aging(source, &given.mark.at, plain(Topic::Given, said))
}

/// What of the protocol in force is passed, gravest first. Whether all of the placenta is here stands beside the placenta.
fn findings(source: &Source) -> Vec<Item> {
    let passed = source.findings.iter().filter(|finding| !matches!(finding.about, About::Completeness { .. }));
    let mut items: Vec<Item> = Vec::new();
    for finding in passed {
        let topic = match finding.level {
            Some(Level::Limit) => Topic::Limits,
            Some(Level::Caution | Level::Note) => Topic::Cautions,
            // That nothing is watched is told too.
            None if finding.about == About::Protocol => Topic::Limits,
            None => continue,
        };
        let (level, threshold) = (finding.level, finding.threshold.clone());
        items.push(Item { level, threshold, ..plain(topic, finding.message.clone()) });
    }
    items.sort_by_key(|item| (item.topic, std::cmp::Reverse(item.level)));
    if items.first().is_none_or(|item| item.topic != Topic::Limits) {
        items.insert(0, nothing(Topic::Limits, "handover-no-limit-passed"));
    }
    items
}

/// The marks of the response and of concern, in order of time.
fn done(source: &Source) -> Vec<Item> {
    let chart = source.chart;
    let standing = chart.lines.iter().filter(|line| line.state() != State::Retracted).map(Line::current);
    let marked = standing.filter(|entry| matches!(entry.fact, Fact::ResponseMarked { .. } | Fact::ConcernMarked));
    marked.map(|entry| at(source, &entry.occurred, plain(Topic::Done, chart.say(&entry.fact)))).collect()
}

fn perineum(source: &Source) -> Option<Item> {
    let seen = source.chart.perinea.last()?;
    Some(at(source, &seen.mark.at, plain(Topic::Perineum, parts(&Fact::PerineumExamined(seen.what.clone())))))
}

/// Apgar scores, the latest that was seen of it, and what it was given.
fn baby(source: &Source, no: BabyNo, known: &Baby) -> Vec<Item> {
    let chart = source.chart;
    let mut items = Vec::new();
    let scores = known
        .apgars
        .iter()
        .map(|scored| Message::new("form-apgar-at").with("minute", scored.what.minute.get()).with("score", scored.what.total()));
    let scores = all_of(if known.apgars.is_empty() { vec![not_recorded()] } else { scores.collect() });
    items.push(plain(Topic::Baby, Message::new("handover-apgar").with("scores", scores)));
    items.extend(seen(source, no, known));
    let given = chart.medicines.iter().filter(|given| given.what.baby == Some(no));
    items.extend(given.map(|given| Item { topic: Topic::Baby, ..medicine(source, given) }));
    let label = chart.numbered(Message::new(Topic::Baby.name()), no);
    items.into_iter().map(|item| Item { label: label.clone(), ..item }).collect()
}

fn asked(source: &Source) -> Item {
    match source.chart.asks() {
        Some(asked) => plain(Topic::Asked, text(&asked.what)),
        None => nothing(Topic::Asked, "handover-nothing-asked"),
    }
}
