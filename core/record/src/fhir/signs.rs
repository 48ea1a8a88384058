//! A look at the mother: vital signs by themselves, what was felt and seen together.

use secundine_domain::fact::{MotherObservation, code};

use super::codes::{
    self, BREATHS, DIASTOLIC, HEART_RATE, PRESSURE, SATURATION, SATURATION_BY_PULSE, SYSTOLIC, TEMPERATURE, Unit,
};
use super::codes::{Loinc, concept, loinc};
use super::element::{Meta, Quantity, Value};
use super::resource::{Component, Observation, Resource};
use super::told::{Made, Maker, Told, Who, unknown};

/// Profiles of R4 for vital signs, by their names in the standard.
pub(super) const PROFILE_HEART_RATE: &str = "http://hl7.org/fhir/StructureDefinition/heartrate";
pub(super) const PROFILE_BREATHS: &str = "http://hl7.org/fhir/StructureDefinition/resprate";
pub(super) const PROFILE_TEMPERATURE: &str = "http://hl7.org/fhir/StructureDefinition/bodytemp";
pub(super) const PROFILE_HEAD: &str = "http://hl7.org/fhir/StructureDefinition/headcircum";
const PROFILE_SATURATION: &str = "http://hl7.org/fhir/StructureDefinition/oxygensat";
const PROFILE_PRESSURE: &str = "http://hl7.org/fhir/StructureDefinition/bp";

pub(super) fn of(maker: &mut Maker, told: &Told, seen: &MotherObservation) -> Vec<Made> {
    let mut made = Vec::new();
    let mut vital = |maker: &mut Maker, name: &str, profile, id: &str, codes: &[Loinc], value: Option<Quantity>| {
        let sign = value.map(|value| maker.vital(told, Who::Mother, id, codes, value));
        made.extend(sign.map(|sign| profiled(told, name, profile, sign)));
    };
    let rate = |value: u32| Unit::PerMinute.of(value);
    vital(maker, "pulse", PROFILE_HEART_RATE, "fhir-heart-rate", &[HEART_RATE], seen.pulse.map(|v| rate(v.get())));
    vital(maker, "breaths", PROFILE_BREATHS, "fhir-breaths", &[BREATHS], seen.respirations.map(|v| rate(v.get())));
    let temperature = seen.temperature.map(|tenths| Unit::Celsius.tenths(tenths.get()));
    vital(maker, "temperature", PROFILE_TEMPERATURE, "fhir-temperature", &[TEMPERATURE], temperature);
    let both = [SATURATION, SATURATION_BY_PULSE];
    let saturation = seen.saturation.map(|value| Unit::Percent.of(value.get()));
    vital(maker, "saturation", PROFILE_SATURATION, "fhir-saturation", &both, saturation);
    made.extend(pressure(maker, told, seen));
    made.extend(felt(maker, told, seen));
    made
}

/// A sign under the name of the profile that it keeps to.
pub(super) fn profiled(told: &Told, name: &str, profile: &'static str, sign: Observation) -> Made {
    let meta = Some(Meta { profile: vec![profile], ..Meta::default() });
    told.made(name, Resource::Observation(Box::new(Observation { meta, ..sign })))
}

fn pressure(maker: &mut Maker, told: &Told, seen: &MotherObservation) -> Option<Made> {
    if seen.systolic.is_none() && seen.diastolic.is_none() {
        return None;
    }
    let side = |id: &str, code: Loinc, value: Option<u32>| Component {
        code: Some(loinc(maker.words, &[code], id)),
        value: value.map(|value| Value::Quantity(Unit::Pressure.of(value))),
        data_absent_reason: value.is_none().then(unknown),
    };
    let component = vec![
        side("fhir-systolic", SYSTOLIC, seen.systolic.map(Into::into)),
        side("fhir-diastolic", DIASTOLIC, seen.diastolic.map(Into::into)),
    ];
    let code = loinc(maker.words, &[PRESSURE], "fhir-pressure");
    let category = vec![concept(codes::CATEGORY, "vital-signs", "Vital Signs")];
    let sign = Observation { category, component, ..maker.observation(told, Who::Mother, code) };
    Some(profiled(told, "pressure", PROFILE_PRESSURE, sign))
}

/// What a hand and an eye tell, in one observation.
fn felt(maker: &mut Maker, told: &Told, seen: &MotherObservation) -> Option<Made> {
    let chosen = |id: &str, answer: Option<String>| answer.map(|answer| maker.chosen(id, &answer));
    let fingers = |height: i8| codes::number(height.into()).map(|value| Quantity { value: Some(value), ..Quantity::default() });
    let height = seen.fundal_height.and_then(|height| fingers(height.get())).map(Value::Quantity);
    let component: Vec<Component> = [
        chosen("fhir-consciousness", seen.response.map(|it| format!("response-level-{}", code(&it)))),
        chosen("fhir-fundus", seen.fundus.map(|it| format!("fundus-{}", code(&it)))),
        height.map(|height| maker.component("fhir-fundal-height", Some(height))),
        chosen("fhir-fundal-position", seen.fundal_position.map(|it| format!("fundal-position-{}", code(&it)))),
        chosen("fhir-bleeding", seen.bleeding.map(|it| format!("bleeding-{}", code(&it)))),
        chosen("fhir-bladder", seen.bladder.map(|it| format!("bladder-{}", code(&it)))),
        seen.urine.map(|ml| maker.component("fhir-urine", Some(Value::Quantity(Unit::Millilitre.of(ml.get()))))),
        seen.pain.map(|pain| maker.component("fhir-pain", Some(Value::Integer(pain.get())))),
    ]
    .into_iter()
    .flatten()
    .collect();
    // A look at nothing leaves a trace all the same.
    if component.is_empty() && *seen != MotherObservation::default() {
        return None;
    }
    let code = codes::own(maker.words, "fhir-mother-observed");
    let data_absent_reason = component.is_empty().then(unknown);
    let seen = Observation { component, data_absent_reason, ..maker.observation(told, Who::Mother, code) };
    Some(told.made("felt", Resource::Observation(Box::new(seen))))
}
