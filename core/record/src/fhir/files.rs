//! Files inside a bundle: all entries as they are kept, the record in print, and photographs where they were asked for.

use std::collections::BTreeMap;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use secundine_domain::entry::Entry;
use secundine_domain::fact::Fact;
use secundine_domain::file::FileId;
use secundine_domain::time::Stamp;

use super::FhirError;
use super::codes::{DELIVERY_NOTE, loinc, own};
use super::element::{Concept, Reference};
use super::resource::{Attachment, Binary, Content, DocumentReference, Resource};
use super::text::clean;
use super::told::{Made, Maker, Part};

/// Media type of the entries, one a line.
pub(super) const ENTRIES: &str = "application/x-ndjson";
/// Key of the file of entries.
const ENTRIES_KEY: &str = "entries";

/// Every entry, one a line, as it is kept: what is read back.
pub(super) fn entries(maker: &Maker, all: &[Entry], from: &From) -> Result<[Made; 2], FhirError> {
    let mut ordered: Vec<&Entry> = all.iter().collect();
    ordered.sort_by_key(|entry| entry.id);
    let mut bytes = Vec::new();
    for entry in ordered {
        bytes.extend(entry.encode().map_err(|_| FhirError::NotWritten)?);
        bytes.push(b'\n');
    }
    let kind = own(maker.words, "fhir-entries");
    let (key, title) = (ENTRIES_KEY.to_owned(), maker.words.plain("fhir-entries"));
    Ok(file(maker, from, File { key, media: ENTRIES, title, kind, bytes: &bytes }))
}

/// The record in print.
pub(super) fn record(maker: &Maker, pdf: &[u8], from: &From) -> [Made; 2] {
    let kind = loinc(maker.words, &[DELIVERY_NOTE], "record-title");
    let (key, title) = ("record".to_owned(), maker.words.plain("record-title"));
    file(maker, from, File { key, media: "application/pdf", title, kind, bytes: pdf })
}

/// Each photograph of the chart whose picture goes along, once. Nothing of them is read back: the entries name them.
pub(super) fn photos(maker: &Maker, pictures: &BTreeMap<FileId, Vec<u8>>, from: &From) -> Vec<Made> {
    let mut taken: BTreeMap<FileId, String> = BTreeMap::new();
    for photo in &maker.chart.photos {
        let said = maker.words.say(&maker.chart.say(&Fact::PhotoTaken(photo.what.clone())));
        taken.entry(photo.what.file).or_insert(said);
    }
    let there = taken.into_iter().filter_map(|(name, title)| Some((name, title, pictures.get(&name)?)));
    let files = there.map(|(name, title, bytes)| {
        let kind = own(maker.words, "fhir-photo");
        file(maker, from, File { key: format!("photo-{name}"), media: "image/jpeg", title, kind, bytes })
    });
    files.flatten().collect()
}

/// Where a file comes from.
pub(super) struct From<'a> {
    pub author: Reference,
    pub written: &'a Stamp,
    /// How a file of the same bundle is referred to.
    pub form: super::Form,
}

struct File<'a> {
    key: String,
    media: &'static str,
    title: String,
    kind: Concept,
    bytes: &'a [u8],
}

fn file(maker: &Maker, from: &From, file: File) -> [Made; 2] {
    let key = format!("file-{}", file.key);
    let url = match from.form {
        super::Form::Document => maker.names.url(&key),
        // A server puts it under this id; it does not look for places of the bundle in an address.
        super::Form::Transaction => format!("Binary/{}", maker.names.id(&key)),
    };
    let attachment = Attachment {
        content_type: Some(file.media),
        language: Some(maker.words.language().to_owned()),
        url: Some(url),
        size: Some(file.bytes.len()),
        title: clean(&file.title),
    };
    let about = DocumentReference {
        status: Some("current"),
        kind: Some(file.kind),
        subject: Some(maker.mother()),
        date: Some(from.written.rfc3339()),
        author: vec![from.author.clone()],
        description: clean(&file.title),
        content: vec![Content { attachment: Some(attachment) }],
        ..DocumentReference::default()
    };
    let data = Some(STANDARD.encode(file.bytes)).filter(|data| !data.is_empty());
    let binary = Binary { content_type: Some(file.media), data, ..Binary::default() };
    [
        Made {
            key: format!("about-{}", file.key),
            part: Some(Part::Files),
            resource: Resource::DocumentReference(Box::new(about)),
            replaces: true,
        },
        Made { key, part: None, resource: Resource::Binary(Box::new(binary)), replaces: true },
    ]
}
