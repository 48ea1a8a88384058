//! A baby: Apgar scores and measures.

use secundine_domain::fact::{Apgar, NewbornMeasures, code};

use super::codes::{self, APGAR, BIRTH_LENGTH, BIRTH_WEIGHT, BREATHS, HEAD, HEART_RATE, Loinc, TEMPERATURE, Unit, loinc, own};
use super::element::{Concept, Quantity, Value};
use super::resource::{Component, Observation, Resource};
use super::signs::{PROFILE_BREATHS, PROFILE_HEAD, PROFILE_HEART_RATE, PROFILE_TEMPERATURE, profiled};
use super::told::{Made, Maker, Told, Who, unknown};

const APGAR_PARTS: [&str; 5] =
    ["fhir-apgar-colour", "fhir-apgar-heart-rate", "fhir-apgar-reflex", "fhir-apgar-tone", "fhir-apgar-breathing"];

/// The score with its five parts. Minutes without a published code say which minute in a part of their own.
pub(super) fn apgar(maker: &mut Maker, told: &Told, apgar: &Apgar) -> Vec<Made> {
    let minute = apgar.minute.get();
    let known = APGAR.iter().find(|(of, ..)| *of == minute);
    let code = coded(maker, known.map(|(_, total, _)| *total), "fhir-apgar");
    let values = [apgar.colour, apgar.heart_rate, apgar.reflex, apgar.tone, apgar.breathing];
    let codes = APGAR_PARTS.iter().enumerate().map(|(n, id)| {
        let part = known.and_then(|(_, _, parts)| parts.get(n)).copied();
        coded(maker, part, id)
    });
    let mut component: Vec<Component> = codes
        .zip(values)
        .map(|(code, value)| Component { code: Some(code), value: Some(Value::Integer(value.get())), ..Component::default() })
        .collect();
    if known.is_none() {
        component.push(maker.component("fhir-apgar-minute", Some(Value::Quantity(Unit::Minute.of(minute)))));
    }
    let category = vec![codes::concept(codes::CATEGORY, "survey", "Survey")];
    let value = Some(Value::Integer(apgar.total()));
    let score = Observation { category, value, component, ..maker.observation(told, Who::Baby(apgar.baby), code) };
    vec![told.made("", Resource::Observation(Box::new(score)))]
}

fn coded(maker: &Maker, known: Option<Loinc>, id: &str) -> Concept {
    known.map_or_else(|| own(maker.words, id), |known| loinc(maker.words, &[known], id))
}

/// Size and vital signs by themselves, sex and breathing together.
pub(super) fn measures(maker: &mut Maker, told: &Told, measures: &NewbornMeasures) -> Vec<Made> {
    let who = Who::Baby(measures.baby);
    let mut made = Vec::new();
    let mut sign =
        |maker: &mut Maker, name: &str, profile: Option<&'static str>, id: &str, code: Loinc, value: Option<Quantity>| {
            let Some(sign) = value.map(|value| maker.vital(told, who, id, &[code], value)) else { return };
            made.push(match profile {
                Some(profile) => profiled(told, name, profile, sign),
                None => told.made(name, Resource::Observation(Box::new(sign))),
            });
        };
    let cm = |mm: secundine_domain::quantity::Length| Unit::Centimetre.tenths(mm.get());
    let rate = |value: u32| Unit::PerMinute.of(value);
    sign(maker, "weight", None, "fhir-birth-weight", BIRTH_WEIGHT, measures.weight.map(|g| Unit::Gram.of(g.get())));
    sign(maker, "length", None, "fhir-birth-length", BIRTH_LENGTH, measures.length.map(cm));
    sign(maker, "head", Some(PROFILE_HEAD), "fhir-head", HEAD, measures.head.map(cm));
    let temperature = measures.temperature.map(|tenths| Unit::Celsius.tenths(tenths.get()));
    sign(maker, "temperature", Some(PROFILE_TEMPERATURE), "fhir-temperature", TEMPERATURE, temperature);
    let heart_rate = measures.heart_rate.map(|value| rate(value.get()));
    sign(maker, "heart-rate", Some(PROFILE_HEART_RATE), "fhir-heart-rate", HEART_RATE, heart_rate);
    let breaths = measures.respirations.map(|value| rate(value.get()));
    sign(maker, "breaths", Some(PROFILE_BREATHS), "fhir-breaths", BREATHS, breaths);
    made.extend(seen(maker, told, measures));
    made
}

fn seen(maker: &mut Maker, told: &Told, measures: &NewbornMeasures) -> Option<Made> {
    let sex = measures.sex.map(|sex| maker.chosen("fhir-sex", &format!("sex-{}", code(&sex))));
    let breathing =
        measures.breathing.map(|breathing| maker.chosen("fhir-breathing", &format!("breathing-{}", code(&breathing))));
    let component: Vec<Component> = sex.into_iter().chain(breathing).collect();
    // A look at nothing leaves a trace all the same.
    if component.is_empty() && *measures != NewbornMeasures::nothing(measures.baby) {
        return None;
    }
    let code = own(maker.words, "fhir-newborn-observed");
    let data_absent_reason = component.is_empty().then(unknown);
    let seen = Observation { component, data_absent_reason, ..maker.observation(told, Who::Baby(measures.baby), code) };
    Some(told.made("seen", Resource::Observation(Box::new(seen))))
}
