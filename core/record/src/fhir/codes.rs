//! Codes. Those of published lists stand here, each with where its display was read; all others are our own.
//!
//! A code of our own is the id of a message of the catalogue, so that it always has words. The list is named by an address under
//! `.example`, a name that RFC 2606 keeps free for ever: nobody can put something else there, and it names no registry that we
//! would have to be in. It is a name, not a place to fetch from.

use super::element::{Coding, Concept, Quantity};
use super::text::clean;
use crate::words::Words;

/// The list of our own codes.
pub(super) const OWN: &str = "https://secundine.example/fhir/CodeSystem/third-stage";
/// What our own identifiers are told apart by.
pub(super) const IDENTIFIERS: &str = "https://secundine.example/fhir/identifier";
/// LOINC.
const LOINC: &str = "http://loinc.org";
/// UCUM.
const UCUM: &str = "http://unitsofmeasure.org";

/// What LOINC asks to be said wherever its codes are. Read in HL7's own guides; the range of years is to be checked against the
/// licence before a release.
pub(super) const LOINC_NOTICE: &str = "This material contains content from LOINC (http://loinc.org). LOINC is copyright (c) \
    1995-2020, Regenstrief Institute, Inc. and the Logical Observation Identifiers Names and Codes (LOINC) Committee and is \
    available at no cost under the license at http://loinc.org/license. LOINC(R) is a registered United States trademark of \
    Regenstrief Institute, Inc";

/// A code of LOINC with its display. Status of all: seen in a guide of HL7 or of a nation, not in LOINC's own table, which was not
/// at hand; to be checked against it before a release.
#[derive(Clone, Copy, Debug)]
pub(super) struct Loinc(pub &'static str, pub &'static str);

// Seen: value sets of R4.
pub(super) const DELIVERY_NOTE: Loinc = Loinc("57057-2", "Labor and delivery summary note");
// Seen: BFDR.
pub(super) const NEWBORN_SECTION: Loinc = Loinc("57075-4", "Newborn delivery information");
pub(super) const BIRTH_WEIGHT: Loinc = Loinc("8339-4", "Birth weight Measured");
// Seen: text of a guide.
pub(super) const BIRTH_LENGTH: Loinc = Loinc("89269-5", "Body height Measured --at birth");
// Seen: profiles of vital signs in R4.
pub(super) const HEAD: Loinc = Loinc("9843-4", "Head Occipital-frontal circumference");
pub(super) const PRESSURE: Loinc = Loinc("85354-9", "Blood pressure panel with all children optional");
pub(super) const SYSTOLIC: Loinc = Loinc("8480-6", "Systolic blood pressure");
pub(super) const DIASTOLIC: Loinc = Loinc("8462-4", "Diastolic blood pressure");
pub(super) const HEART_RATE: Loinc = Loinc("8867-4", "Heart rate");
pub(super) const BREATHS: Loinc = Loinc("9279-1", "Respiratory rate");
pub(super) const TEMPERATURE: Loinc = Loinc("8310-5", "Body temperature");
pub(super) const SATURATION: Loinc = Loinc("2708-6", "Oxygen saturation in Arterial blood");
// Seen: sent beside the one before, as guides ask.
pub(super) const SATURATION_BY_PULSE: Loinc = Loinc("59408-5", "Oxygen saturation in Arterial blood by Pulse oximetry");
// Seen: guides of HL7; displays vary.
pub(super) const GESTATION: Loinc = Loinc("76516-4", "Gestational age--at birth");
pub(super) const GRAVIDA: Loinc = Loinc("11996-6", "[#] Pregnancies");
pub(super) const PARA: Loinc = Loinc("11977-6", "[#] Parity");
pub(super) const RH: Loinc = Loinc("10331-7", "Rh [Type] in Blood");
pub(super) const BLOOD_GROUP: Loinc = Loinc("882-1", "ABO and Rh group [Type] in Blood");

/// The score of one minute and its five parts: colour, heart rate, reflex, tone, breathing.
/// Seen: BFDR and Nictiz (scores), Nictiz (parts). Scores of other minutes have our own codes.
#[rustfmt::skip]
pub(super) const APGAR: [(u32, Loinc, [Loinc; 5]); 3] = [
    (1, Loinc("9272-6", "1 minute Apgar Score"), [
        Loinc("32406-1", "1 minute Apgar Color"), Loinc("32407-9", "1 minute Apgar Heart rate"),
        Loinc("32409-5", "1 minute Apgar Reflex irritability"), Loinc("32408-7", "1 minute Apgar Muscle tone"),
        Loinc("32410-3", "1 minute Apgar Respiratory effort")]),
    (5, Loinc("9274-2", "5 minute Apgar Score"), [
        Loinc("32411-1", "5 minute Apgar Color"), Loinc("32412-9", "5 minute Apgar Heart rate"),
        Loinc("32414-5", "5 minute Apgar Reflex irritability"), Loinc("32413-7", "5 minute Apgar Muscle tone"),
        Loinc("32415-2", "5 minute Apgar Respiratory effort")]),
    (10, Loinc("9271-8", "10 minute Apgar Score"), [
        Loinc("32401-2", "10 minute Apgar Color"), Loinc("32402-0", "10 minute Apgar Heart rate"),
        Loinc("32404-6", "10 minute Apgar Reflex irritability"), Loinc("32403-8", "10 minute Apgar Muscle tone"),
        Loinc("32405-3", "10 minute Apgar Respiratory effort")]),
];

/// Lists that come with FHIR R4 and HL7's terminology, with the displays that stand there.
pub(super) const CATEGORY: &str = "http://terminology.hl7.org/CodeSystem/observation-category";
pub(super) const ABSENT: &str = "http://terminology.hl7.org/CodeSystem/data-absent-reason";
pub(super) const ALLERGY_CLINICAL: &str = "http://terminology.hl7.org/CodeSystem/allergyintolerance-clinical";
pub(super) const ALLERGY_VERIFICATION: &str = "http://terminology.hl7.org/CodeSystem/allergyintolerance-verification";
pub(super) const PARTICIPANT: &str = "http://terminology.hl7.org/CodeSystem/provenance-participant-type";
pub(super) const OPERATION: &str = "http://terminology.hl7.org/CodeSystem/v3-DataOperation";
pub(super) const ROLE: &str = "http://terminology.hl7.org/CodeSystem/v3-RoleCode";
pub(super) const ACT: &str = "http://terminology.hl7.org/CodeSystem/v3-ActCode";
pub(super) const REASON: &str = "http://terminology.hl7.org/CodeSystem/v3-ActReason";

/// A unit: its code in UCUM, and how it is written.
#[derive(Clone, Copy, Debug)]
pub(super) enum Unit {
    Millilitre,
    Gram,
    Centimetre,
    Minute,
    Celsius,
    Pressure,
    PerMinute,
    Percent,
    Day,
    Iu,
}

impl Unit {
    const fn code(self) -> &'static str {
        match self {
            Self::Millilitre => "mL",
            Self::Gram => "g",
            Self::Centimetre => "cm",
            Self::Minute => "min",
            Self::Celsius => "Cel",
            Self::Pressure => "mm[Hg]",
            Self::PerMinute => "/min",
            Self::Percent => "%",
            Self::Day => "d",
            Self::Iu => "[iU]",
        }
    }

    const fn sign(self) -> &'static str {
        match self {
            Self::Celsius => "°C",
            Self::Pressure => "mmHg",
            Self::Iu => "IU",
            _ => self.code(),
        }
    }

    /// A number in this unit.
    pub fn of(self, value: impl Into<f64>) -> Quantity {
        Quantity {
            value: number(value.into()),
            unit: Some(self.sign().to_owned()),
            system: Some(UCUM),
            code: Some(self.code()),
            ..Quantity::default()
        }
    }

    /// So many tenths of it.
    pub fn tenths(self, value: u32) -> Quantity {
        self.of(f64::from(value) / 10.0)
    }
}

/// A number as JSON writes it; whole ones without a point.
pub(super) fn number(value: f64) -> Option<serde_json::Number> {
    let whole = value as i64;
    if whole as f64 == value { Some(whole.into()) } else { serde_json::Number::from_f64(value) }
}

/// A code of a list that comes with the standard.
pub(super) fn listed(system: &str, code: &str, display: &str) -> Coding {
    Coding { system: Some(system.to_owned()), code: Some(code.to_owned()), display: Some(display.to_owned()) }
}

/// The same by itself, with its display as its words.
pub(super) fn concept(system: &str, code: &str, display: &str) -> Concept {
    Concept { coding: vec![listed(system, code, display)], text: Some(display.to_owned()) }
}

/// Why there is no value.
pub(super) fn absent(code: &str, display: &str) -> Concept {
    concept(ABSENT, code, display)
}

impl Loinc {
    fn coding(self) -> Coding {
        listed(LOINC, self.0, self.1)
    }
}

/// Codes of LOINC, in words of the catalogue.
pub(super) fn loinc(words: &Words, codes: &[Loinc], id: &str) -> Concept {
    Concept { coding: codes.iter().map(|code| code.coding()).collect(), text: clean(&words.plain(id)) }
}

/// Our own code: the id of a message of the catalogue, less `fhir-` where it begins with that.
pub(super) fn own(words: &Words, id: &str) -> Concept {
    let code = id.strip_prefix("fhir-").unwrap_or(id);
    let display = clean(&Words::english().plain(id));
    let coding = Coding { system: Some(OWN.to_owned()), code: Some(code.to_owned()), display };
    Concept { coding: vec![coding], text: clean(&words.plain(id)) }
}

/// Words without a code.
pub(super) fn words_only(text: &str) -> Option<Concept> {
    Some(Concept { text: Some(clean(text)?), ..Concept::default() })
}
