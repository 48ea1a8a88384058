//! A birth as a file of HL7 FHIR R4 (4.0.1), and back.
//!
//! One model, two forms: a document to hand over, and a transaction for a server. Every entry comes out as a resource, in the
//! form that holds now; who wrote it and what it said before stands in its provenance. The entries themselves go along as they
//! are kept, so that our own file reads back without loss.

use std::collections::{BTreeMap, BTreeSet};

use secundine_domain::chart::Chart;
use secundine_domain::entry::{BirthId, Entry};
use secundine_domain::file::FileId;
use thiserror::Error;

use crate::Origin;
use codes::{REASON, listed};
use names::Names;
use resource::{Bundle, Request, Resource};
use told::{Made, Maker, Told};

mod client;
mod code_system;
mod codes;
mod composition;
mod element;
mod examination;
mod facts;
mod files;
mod medicine;
mod names;
mod newborn;
mod people;
mod provenance;
mod read;
mod resource;
mod signs;
mod text;
mod told;
mod worked_out;

pub use code_system::code_system;
pub use read::{read, read_practice};

/// Which of the two forms.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// A document, its composition first: a file to hand over.
    Document,
    /// A transaction: what a server is asked to keep, all of it or nothing. Sent once more it doubles nothing.
    Transaction,
}

/// Why a bundle is not written or not read.
#[derive(Debug, Error)]
pub enum FhirError {
    /// It could not be put into JSON.
    #[error("the bundle cannot be written")]
    NotWritten,
    /// It is no JSON.
    #[error("the file is no JSON (line {line}, column {column})")]
    NoJson {
        /// Counted from 1.
        line: usize,
        /// Counted from 1.
        column: usize,
    },
    /// It is JSON, but no bundle of FHIR that is a document or a transaction.
    #[error("the file is no FHIR document or transaction")]
    NoBundle,
    /// It was written by another program, or the entries were taken out.
    #[error("the bundle has no entries of Secundine in it")]
    NoEntries,
    /// The file of entries is cut off, altered or not of one birth.
    #[error("entry {0} of the bundle cannot be read")]
    Entry(usize),
    /// A later version of the program wrote it.
    #[error("the bundle was written by a later version (form {0})")]
    Newer(u32),
    /// The entries are not those that the resources speak of.
    #[error("the entries of the bundle and its resources do not belong together")]
    Disagrees,
}

/// What a bundle is made from.
pub struct Handover<'a> {
    /// The birth.
    pub birth: BirthId,
    /// Its chart.
    pub chart: &'a Chart,
    /// All entries of the birth.
    pub entries: &'a [Entry],
    /// Practice, version, moment and language.
    pub origin: &'a Origin<'a>,
    /// The record in print, PDF.
    pub record: Option<&'a [u8]>,
    /// Pictures that go along, JPEG, by their names in the practice. A photograph that is not among them is only told of.
    pub photos: &'a BTreeMap<FileId, Vec<u8>>,
}

/// The bundle as JSON.
///
/// # Errors
/// [`FhirError::NotWritten`], which no entry that was stored leads to.
pub fn write(handover: &Handover, form: Form) -> Result<Vec<u8>, FhirError> {
    serde_json::to_vec(&bundle(handover, form)?).map_err(|_| FhirError::NotWritten)
}

fn bundle(handover: &Handover, form: Form) -> Result<Bundle, FhirError> {
    let Handover { birth, chart, origin, .. } = handover;
    let names = Names(*birth);
    let tag = chart.rehearsal.then(|| listed(REASON, "HTEST", "test health data"));
    let entry = all(handover, form)?.into_iter().map(|Made { key, mut resource, replaces, .. }| {
        resource.identify(names.identifier(&key));
        let request = (form == Form::Transaction).then(|| request(names, &key, &resource, replaces));
        // A server that finds a thing by its identifier has given it an id, and refuses another.
        let own_id = form == Form::Document || resource.is_put_by_id();
        resource.mark(own_id.then(|| names.id(&key)), tag.as_ref());
        resource::Entry { full_url: Some(names.url(&key)), resource: Some(resource), request }
    });
    let entry = entry.collect();
    let document = form == Form::Document;
    Ok(Bundle {
        resource_type: Some("Bundle"),
        language: Some(origin.words.language().to_owned()),
        identifier: document.then(|| names.identifier(&format!("document-{}", origin.version))),
        kind: Some(if document { "document" } else { "transaction" }),
        timestamp: Some(origin.written.rfc3339()),
        entry,
    })
}

/// Every resource, the composition first.
fn all(handover: &Handover, form: Form) -> Result<Vec<Made>, FhirError> {
    let Handover { birth, chart, entries, origin, record, photos } = handover;
    let mut maker = Maker::new(chart, origin.words, Names(*birth));
    let mut made = Vec::new();
    let mut written = Vec::new();
    for line in &chart.lines {
        let told = Told::new(line, facts::part(&line.shown().fact));
        let of_line = facts::of_line(&mut maker, &told);
        let stands_in = examination::stands_in(&maker, line);
        let about: BTreeSet<String> = of_line.iter().map(|made| made.key.clone()).chain(stands_in).collect();
        let about: Vec<String> = about.iter().map(|key| maker.names.url(key)).collect();
        written.extend(provenance::of_line(&mut maker, line, &about));
        made.extend(of_line);
    }
    made.extend(worked_out::all(&mut maker, origin.written));
    made.extend(examination::placentas(&mut maker));
    let from = files::From { author: maker.person(&origin.practice.practitioner), written: origin.written, form };
    made.extend(files::entries(&maker, entries, &from)?);
    made.extend(record.iter().flat_map(|pdf| files::record(&maker, pdf, &from)));
    made.extend(files::photos(&maker, photos, &from));
    let first = composition::of(&mut maker, origin, &made);
    let people = people::all(&mut maker, origin.practice);
    Ok(std::iter::once(first).chain(people).chain(made).chain(written).collect())
}

/// What a server is asked to do. What has an identifier is made unless it is there; what may have changed since it was sent is put
/// in the place of what has its identifier; what cannot be asked for by one is put under its id. All leave one, however often it is
/// sent.
fn request(names: Names, key: &str, resource: &Resource, replaces: bool) -> Request {
    let kind = resource.kind();
    let identifier = names.identifier(key);
    let query =
        format!("identifier={}|{}", identifier.system.unwrap_or_default(), identifier.value.as_deref().unwrap_or_default());
    let (method, url, if_none_exist) = match (resource.is_put_by_id(), replaces) {
        (true, _) => ("PUT", format!("{kind}/{}", names.id(key)), None),
        (false, true) => ("PUT", format!("{kind}?{query}"), None),
        (false, false) => ("POST", kind.to_owned(), Some(query)),
    };
    Request { method: Some(method), url: Some(url), if_none_exist }
}
