//! The list of our own codes, as a resource for whoever takes in our bundles. It is not sent along: see decision 0023.

use secundine_domain::examination::Examination;

use super::FhirError;
use super::codes::{OWN, own};
use super::element::{Coding, elements};
use crate::words::{Words, english_ids};

elements! {
    /// A list of codes.
    CodeSystem {
        resource_type: Option<&'static str>,
        language: Option<&'static str>,
        url: Option<&'static str>,
        name: Option<&'static str>,
        title: Option<String>,
        status: Option<&'static str>,
        case_sensitive: Option<bool>,
        content: Option<&'static str>,
        count: Option<usize>,
        concept: Vec<Listed>,
    }
    /// A code with its words.
    Listed {
        code: Option<String>,
        display: Option<String>,
    }
}

/// Messages that stand for names and answers, by the first word of their ids.
#[rustfmt::skip]
const FAMILIES: [&str; 16] = [
    "fhir", "also", "bladder", "bleeding", "breathing", "care", "condition", "fundus", "newborn", "rectal", "repair", "response",
    "rhd", "separation", "sex", "tear",
];
/// Others of families that have more than answers in them.
const OTHERS: [&str; 5] = [
    "fundal-position-central",
    "fundal-position-left",
    "fundal-position-right",
    "leaving-adult-stays",
    "leaving-warning-signs-told",
];

/// Every code that a bundle may have from our own list, with its words in English, as a CodeSystem of FHIR R4 in JSON.
///
/// # Errors
/// [`FhirError::NotWritten`], which nothing leads to.
pub fn code_system() -> Result<Vec<u8>, FhirError> {
    let answers = english_ids().filter(|id| id.split_once('-').is_some_and(|(family, _)| FAMILIES.contains(&family)));
    let items = Examination::standard().items.iter().flat_map(|item| {
        let options = item.options.iter().map(|option| format!("exam-{}-{}", item.id, option.id));
        std::iter::once(format!("exam-{}", item.id)).chain(options)
    });
    let words = Words::english();
    let codes = answers.chain(OTHERS).map(str::to_owned).chain(items).flat_map(|id| own(words, &id).coding);
    let mut concept: Vec<Listed> = codes.map(|Coding { code, display, .. }| Listed { code, display }).collect();
    concept.sort_by(|one, next| one.code.cmp(&next.code));
    let system = CodeSystem {
        resource_type: Some("CodeSystem"),
        language: Some("en"),
        url: Some(OWN),
        name: Some("SecundineThirdStage"),
        title: Some(words.plain("record-title")),
        status: Some("draft"),
        case_sensitive: Some(true),
        content: Some("complete"),
        count: Some(concept.len()),
        concept,
    };
    serde_json::to_vec(&system).map_err(|_| FhirError::NotWritten)
}
