//! Who: mother, babies, practice and its people, and the time of care.

use secundine_domain::chart::Chart;
use secundine_domain::fact::{BabyNo, NewbornMeasures, Practice, Sex};
use secundine_domain::growth::latest;
use secundine_domain::time::rfc3339;

use super::codes::{ACT, ROLE, concept, listed};
use super::element::{Beside, Extension, Name, Period, Reference};
use super::resource::{Encounter, Link, Organization, Participant, Patient, Practitioner, RelatedPerson, Resource};
use super::text::{clean, narrative};
use super::told::{Made, Maker, baby_key};

/// Moment of a birth, beside its day: an extension of R4.
const BIRTH_TIME: &str = "http://hl7.org/fhir/StructureDefinition/patient-birthTime";

/// Everybody who was spoken of. Comes last, when it is known who was.
pub(super) fn all(maker: &mut Maker, practice: &Practice) -> Vec<Made> {
    let practitioner = maker.person(&practice.practitioner);
    let mut made = vec![mother(maker)];
    for no in maker.babies.clone() {
        made.push(baby(maker, no));
        made.push(related(maker, no));
    }
    made.push(encounter(maker, practitioner));
    made.push(person_less("organization", Resource::Organization(Box::new(organization(maker, practice)))));
    for name in &maker.people {
        let told = Practitioner { name: named(maker, name), ..Practitioner::default() };
        made.push(person_less(&maker.names.person(name), Resource::Practitioner(Box::new(told))));
    }
    made
}

/// A server that has added to what it knows of a person keeps that: people are made once and never replaced.
fn person_less(key: &str, resource: Resource) -> Made {
    Made { key: key.to_owned(), part: None, resource, replaces: false }
}

fn organization(maker: &Maker, practice: &Practice) -> Organization {
    let name = clean(&practice.name).unwrap_or_else(|| maker.words.plain("record-not-recorded"));
    Organization { name: Some(name), ..Organization::default() }
}

fn named(maker: &Maker, name: &str) -> Vec<Name> {
    vec![Name { text: Some(clean(name).unwrap_or_else(|| maker.words.plain("record-not-recorded"))) }]
}

fn mother_name(chart: &Chart) -> Vec<Name> {
    let name = chart.client.as_ref().and_then(|client| clean(&client.name));
    name.map(|name| Name { text: Some(name) }).into_iter().collect()
}

fn mother(maker: &Maker) -> Made {
    let born = maker.chart.client.as_ref().and_then(|client| client.born.as_deref()).and_then(day);
    let link = |no: &BabyNo| Link { other: Some(Reference::to(maker.names.url(&mother_of(*no)))), kind: Some("seealso") };
    let told = Patient {
        text: narrative([maker.chart.label.as_str()]),
        name: mother_name(maker.chart),
        birth_date: born,
        link: maker.babies.iter().map(link).collect(),
        ..Patient::default()
    };
    person_less("mother", Resource::Patient(Box::new(told)))
}

/// A date that is one, in the form that FHIR has for it.
fn day(text: &str) -> Option<String> {
    let text = text.trim();
    let midnight = secundine_domain::time::parse_local(text, "00:00", 0)?;
    rfc3339(midnight, 0).split_once('T').map(|(day, _)| day.to_owned()).filter(|day| day == text)
}

fn baby(maker: &Maker, no: BabyNo) -> Made {
    let chart = maker.chart;
    let known = chart.babies.get(&no);
    let born = known.and_then(|baby| baby.born.as_ref()).map(|mark| mark.at.rfc3339());
    let date = born.as_deref().and_then(|born| born.split_once('T')).map(|(day, _)| day.to_owned());
    let beside = |born| Beside { extension: vec![Extension { url: Some(BIRTH_TIME), value_date_time: Some(born) }] };
    let seen = known.map_or_else(|| NewbornMeasures::nothing(no), |baby| latest(baby, no));
    let several = maker.babies.len() > 1;
    let told = Patient {
        gender: seen.sex.map(|sex| match sex {
            Sex::Female => "female",
            Sex::Male => "male",
            Sex::Unclear => "unknown",
        }),
        birth_date: date,
        birth_moment: born.map(beside),
        multiple_birth_boolean: (!several).then_some(false),
        multiple_birth_integer: several.then_some(no).filter(|no| *no > 0),
        ..Patient::default()
    };
    person_less(&baby_key(no), Resource::Patient(Box::new(told)))
}

/// The key of the mother as the mother of this baby.
fn mother_of(no: BabyNo) -> String {
    format!("mother-of-{no}")
}

fn related(maker: &mut Maker, no: BabyNo) -> Made {
    let told = RelatedPerson {
        patient: Some(maker.baby(no)),
        relationship: vec![concept(ROLE, "NMTH", "natural mother")],
        name: mother_name(maker.chart),
        ..RelatedPerson::default()
    };
    person_less(&mother_of(no), Resource::RelatedPerson(Box::new(told)))
}

fn encounter(maker: &Maker, practitioner: Reference) -> Made {
    let chart = maker.chart;
    let moments = chart.lines.iter().map(|line| (line.current().occurred.wall_ms(), line.current().occurred.rfc3339()));
    let start = moments.min_by_key(|(ms, _)| *ms);
    let end = chart.left.as_ref().map(|left| (left.at.wall_ms(), left.at.rfc3339()));
    let ended = end.is_some();
    let end = end.filter(|(ms, _)| start.as_ref().is_none_or(|(start, _)| start <= ms));
    let told = Encounter {
        text: narrative([chart.label.as_str()]),
        status: Some(if ended { "finished" } else { "in-progress" }),
        class: Some(listed(ACT, "HH", "home health")),
        subject: Some(maker.mother()),
        participant: vec![Participant { individual: Some(practitioner) }],
        period: start.is_some().then(|| Period { start: start.map(|(_, at)| at), end: end.map(|(_, at)| at) }),
        service_provider: Some(Reference::to(maker.names.url("organization"))),
        ..Encounter::default()
    };
    Made { key: "encounter".to_owned(), part: None, resource: Resource::Encounter(Box::new(told)), replaces: true }
}
