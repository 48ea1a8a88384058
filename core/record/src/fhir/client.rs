//! What is known of the mother beside who she is.

use secundine_domain::fact::{Client, code};

use super::codes::{ALLERGY_CLINICAL, ALLERGY_VERIFICATION, BLOOD_GROUP, GESTATION, GRAVIDA, Loinc, PARA, RH, Unit, concept};
use super::codes::{loinc, own, words_only};
use super::element::{Concept, Value};
use super::resource::{AllergyIntolerance, Component, Observation, Resource};
use super::told::{Made, Maker, Told, Who};

pub(super) fn of(maker: &mut Maker, told: &Told, known: &Client) -> Vec<Made> {
    let words = maker.words;
    let mut made = Vec::new();
    let mut tell = |maker: &mut Maker, name: &str, code: Concept, value: Option<Value>| {
        let Some(value) = value else { return };
        let seen = Observation { value: Some(value), ..maker.observation(told, Who::Mother, code) };
        made.push(told.made(name, Resource::Observation(Box::new(seen))));
    };
    let listed = |code: Loinc, id: &str| loinc(words, &[code], id);
    let text = |text: Option<&String>| text.and_then(|text| Value::text(text));
    let gestation = known.gestation.map(|days| Value::Quantity(Unit::Day.of(days.get())));
    tell(maker, "gestation", listed(GESTATION, "fhir-gestation"), gestation);
    tell(maker, "gravida", listed(GRAVIDA, "fhir-gravida"), known.gravida.map(|count| Value::Integer(count.get())));
    tell(maker, "para", listed(PARA, "fhir-para"), known.para.map(|count| Value::Integer(count.get())));
    tell(maker, "blood-group", listed(BLOOD_GROUP, "fhir-blood-group"), text(known.blood_group.as_ref()));
    let rhd = known.rhd.map(|rhd| Value::Concept(own(words, &format!("rhd-{}", code(&rhd)))));
    tell(maker, "rhd", listed(RH, "fhir-rhd"), rhd);
    // Hundreds of grams.
    let weight = known.weight.map(|hg| Value::Quantity(Unit::Gram.of(f64::from(hg.get()) * 100.0)));
    tell(maker, "weight", own(words, "fhir-body-weight"), weight);
    let height = known.height.map(|mm| Value::Quantity(Unit::Centimetre.tenths(mm.get())));
    tell(maker, "height", own(words, "fhir-body-height"), height);
    made.extend(allergies(maker, told, known));
    made.extend(conditions(maker, told, known));
    // Her name alone is told in her own resource; this one keeps that it was written.
    let said = Value::text(&maker.said(told));
    let all = maker.seen(told, Who::Mother, "fhir-client", said);
    made.push(told.made("", Resource::Observation(Box::new(all))));
    made
}

/// An allergy that was told is an allergy; "none known" is an observation, since the code for it is of a list that is not free.
fn allergies(maker: &mut Maker, told: &Told, known: &Client) -> Option<Made> {
    let Some(code) = words_only(known.allergies.as_ref()?) else {
        let seen = maker.seen(told, Who::Mother, "fhir-no-allergies", Value::text(&maker.words.plain("record-none-known")));
        return Some(told.made("allergies", Resource::Observation(Box::new(seen))));
    };
    let wrong = told.observed() == "entered-in-error";
    let verification = match wrong {
        true => concept(ALLERGY_VERIFICATION, "entered-in-error", "Entered in Error"),
        false => concept(ALLERGY_VERIFICATION, "unconfirmed", "Unconfirmed"),
    };
    let allergy = AllergyIntolerance {
        text: maker.narrative(told),
        clinical_status: (!wrong).then(|| concept(ALLERGY_CLINICAL, "active", "Active")),
        verification_status: Some(verification),
        code: Some(code),
        patient: Some(maker.mother()),
        encounter: Some(maker.encounter()),
        recorded_date: Some(told.entry.recorded.rfc3339()),
        recorder: Some(maker.person(&told.entry.author)),
        ..AllergyIntolerance::default()
    };
    Some(told.made("allergies", Resource::AllergyIntolerance(Box::new(allergy))))
}

fn conditions(maker: &mut Maker, told: &Told, known: &Client) -> Option<Made> {
    let conditions = known.conditions.as_ref()?;
    let component: Vec<Component> =
        conditions.iter().map(|condition| maker.chosen("fhir-condition", &format!("condition-{}", code(condition)))).collect();
    let none = Value::text(&maker.words.plain("part-no-conditions"));
    let value = none.filter(|_| component.is_empty());
    let code = own(maker.words, "fhir-conditions");
    let seen = Observation { component, value, ..maker.observation(told, Who::Mother, code) };
    Some(told.made("conditions", Resource::Observation(Box::new(seen))))
}
