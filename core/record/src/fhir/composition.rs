//! The first page of the document.

use secundine_domain::chart::Chart;

use super::codes::{DELIVERY_NOTE, LOINC_NOTICE, Loinc, NEWBORN_SECTION, loinc, own};
use super::element::Reference;
use super::resource::{Attester, Composition, Resource, Section};
use super::text::narrative;
use super::told::{Made, Maker, Part, Told};
use crate::Origin;
use crate::words::Words;

/// Who, what, when, the sections with what they hold, and who stands by it.
pub(super) fn of(maker: &mut Maker, origin: &Origin, made: &[Made]) -> Made {
    let mut sections: Vec<Section> = PARTS.iter().filter_map(|(part, id, code)| section(maker, made, *part, id, *code)).collect();
    sections.push(about(maker.words));
    let attester = maker.chart.signatures.iter().map(|signature| Attester {
        mode: Some("professional"),
        time: Some(signature.mark.at.rfc3339()),
        party: Some(Reference::to(maker.names.url(&maker.names.person(&signature.what.name)))),
    });
    let attester = attester.collect();
    for signature in &maker.chart.signatures {
        maker.people.insert(signature.what.name.clone());
    }
    let author = vec![maker.person(&origin.practice.practitioner)];
    let title = maker.words.plain("record-title");
    let told = Composition {
        language: Some(maker.words.language().to_owned()),
        text: narrative([title.as_str(), maker.chart.label.as_str()]),
        status: Some(status(maker.chart)),
        kind: Some(loinc(maker.words, &[DELIVERY_NOTE], "record-title")),
        subject: Some(maker.mother()),
        encounter: Some(maker.encounter()),
        date: Some(origin.written.rfc3339()),
        author,
        title: Some(title),
        attester,
        custodian: Some(Reference::to(maker.names.url("organization"))),
        section: sections,
        ..Composition::default()
    };
    let resource = Resource::Composition(Box::new(told));
    Made { key: "composition".to_owned(), part: None, resource, replaces: true }
}

/// Signed and untouched since; signed and written in since; not signed.
fn status(chart: &Chart) -> &'static str {
    match chart.signatures.last() {
        None => "preliminary",
        Some(last) if chart.last_written == Some(last.mark.entry) => "final",
        Some(_) => "amended",
    }
}

const PARTS: [(Part, &str, Option<Loinc>); 8] = [
    (Part::Mother, "fhir-section-mother", None),
    (Part::ThirdStage, "fhir-section-third-stage", None),
    (Part::Signs, "fhir-section-signs", None),
    (Part::Medicines, "fhir-section-medicines", None),
    (Part::Placenta, "fhir-section-placenta", None),
    (Part::Newborn, "fhir-section-newborn", Some(NEWBORN_SECTION)),
    (Part::Course, "fhir-section-course", None),
    (Part::Files, "fhir-section-files", None),
];

/// A section with its lines in words, in order of time; none where it would be empty.
fn section(maker: &Maker, made: &[Made], part: Part, id: &str, code: Option<Loinc>) -> Option<Section> {
    let entry: Vec<Reference> =
        made.iter().filter(|made| made.part == Some(part)).map(|made| Reference::to(maker.names.url(&made.key))).collect();
    let told = maker.chart.lines.iter().map(|line| Told::new(line, super::facts::part(&line.shown().fact)));
    let lines: Vec<String> = told.filter(|told| told.part == part).map(|told| line(maker, &told)).collect();
    (!entry.is_empty()).then(|| Section {
        title: Some(maker.words.plain(id)),
        code: Some(code.map_or_else(|| own(maker.words, id), |code| loinc(maker.words, &[code], id))),
        text: narrative(lines.iter().map(String::as_str)),
        entry,
    })
}

fn line(maker: &Maker, told: &Told) -> String {
    let at = &told.entry.occurred;
    let error = told.observed() == "entered-in-error";
    let taken_out = if error { format!(" ({})", maker.words.plain("fhir-retracted")) } else { String::new() };
    format!("{} {} {}{taken_out}", at.date(), at.clock(), maker.said(told))
}

/// What is to be known of the file itself.
fn about(words: &Words) -> Section {
    let draft = words.draft().unwrap_or_default();
    let note = words.plain("record-note");
    Section {
        title: Some(words.plain("fhir-section-about")),
        code: Some(own(words, "fhir-section-about")),
        text: narrative([note.as_str(), draft.as_str(), LOINC_NOTICE]),
        entry: Vec::new(),
    }
}
