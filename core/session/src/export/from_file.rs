//! A record that was given out of hand, read in again: a bundle of FHIR, or the archive of one birth. Nothing of it comes into
//! a practice: entries without their signatures have no place in a chain.

use secundine_domain::chart::fold;
use secundine_domain::entry::{BirthId, Entry};
use secundine_domain::fact::Practice;
use secundine_domain::message::Message;
use secundine_domain::time::Stamp;
use secundine_record::fhir::{self, FhirError};
use secundine_record::words::Words;
use secundine_store::{Extract, StoreError, Stored, version};
use sha2::{Digest, Sha256};

use crate::api::{ApiError, ErrorCode, Outgoing};
use crate::session::{Whole, unsealed};
use crate::verify::archive;

/// A birth out of a file.
pub struct FromFile {
    birth: BirthId,
    stored: Vec<Stored>,
    /// What the practice is called, where the file says so.
    practice: Option<String>,
    /// Whether each entry is signed.
    proved: bool,
    said: Vec<Message>,
}

impl FromFile {
    /// Reads a file.
    ///
    /// # Errors
    /// What the file is instead, or which entry of it does not fit. Nothing is left out in silence.
    pub fn read(bytes: &[u8]) -> Result<Self, ApiError> {
        // An archive says so in its first line, and a bundle of FHIR in its first element.
        match Extract::read(bytes) {
            Ok(extract) => Self::of_archive(&extract),
            Err(StoreError::Newer(_)) => Err(ApiError::new(ErrorCode::NewerStore, "error-read-newer")),
            Err(_) if looks_like_archive(bytes) => Err(ApiError::new(ErrorCode::Impossible, "error-archive-damaged")),
            Err(_) => Self::of_bundle(bytes),
        }
    }

    fn of_archive(extract: &Extract) -> Result<Self, ApiError> {
        let (_, said) = archive(extract);
        if extract.misfit.is_some() {
            return Err(ApiError::impossible(said.into_iter().next().unwrap_or_else(|| Message::new("error-archive-damaged"))));
        }
        let mut births = extract.births.iter().filter(|(birth, _)| **birth != BirthId::PRACTICE);
        let count = u32::try_from(births.clone().count()).unwrap_or(u32::MAX);
        match (births.next(), count) {
            (Some((birth, stored)), 1) => Ok(Self { birth: *birth, stored: stored.clone(), practice: None, proved: true, said }),
            _ => Err(ApiError::impossible(Message::new("error-read-several").with("births", count))),
        }
    }

    fn of_bundle(bytes: &[u8]) -> Result<Self, ApiError> {
        let entries = fhir::read(bytes).map_err(|error| refused(&error))?;
        let birth = entries.first().map(|entry| entry.birth).ok_or_else(|| refused(&FhirError::NoEntries))?;
        let stored = entries.into_iter().map(as_stored).collect::<Result<Vec<_>, _>>()?;
        let count = u32::try_from(stored.len()).unwrap_or(u32::MAX);
        let said = vec![Message::new("read-unproved").with("entries", count)];
        Ok(Self { birth, stored, practice: fhir::read_practice(bytes), proved: false, said })
    }

    /// What is to be known of the file.
    #[must_use]
    pub fn said(&self) -> &[Message] {
        &self.said
    }

    /// The bytes of a file about the birth. Where the practice's name stands, it says that it comes from a file.
    ///
    /// # Errors
    /// [`ApiError`] says why it cannot be made: an archive has to be written where the entries were signed, and pictures lie
    /// there too.
    pub fn file(&self, file: Outgoing, language: Option<&str>, now: &Stamp) -> Result<Vec<u8>, ApiError> {
        let entries = unsealed(&self.stored);
        let whence = if self.proved { "read-from-archive" } else { "read-from-bundle" };
        let whence = Words::of(language.unwrap_or_default()).plain(whence);
        let name = self.practice.iter().cloned().chain([whence]).collect::<Vec<_>>().join(", ");
        // Who wrote the first entry: the practice's own entries are not in the file.
        let practitioner = entries.first().map(|entry| entry.author.clone()).unwrap_or_default();
        let practice = Practice { name, practitioner, role: String::new(), protocol: None };
        let (birth, chart) = (self.birth, fold(self.birth, &entries));
        Whole { birth, chart, version: version(&self.stored), entries, practice }.made(file, language, now).map(|made| made.bytes)
    }
}

/// By what every line of an archive begins with that says of itself.
fn looks_like_archive(bytes: &[u8]) -> bool {
    bytes.starts_with(b"{\"form\":")
}

/// The digest of an entry is that of its stored text, which the bundle has word for word.
fn as_stored(entry: Entry) -> Result<Stored, ApiError> {
    let body = entry.encode().map_err(|_| ApiError::internal())?;
    Ok(Stored { entry, digest: Sha256::digest(&body).into() })
}

fn refused(error: &FhirError) -> ApiError {
    let number = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    let message = match error {
        FhirError::NotWritten => return ApiError::internal(),
        FhirError::NoJson { line, column } => {
            Message::new("error-read-no-json").with("line", number(*line)).with("column", number(*column))
        }
        FhirError::NoBundle => Message::new("error-read-no-bundle"),
        FhirError::NoEntries => Message::new("error-read-not-ours"),
        FhirError::Entry(n) => Message::new("error-read-entry").with("n", number(*n)),
        FhirError::Newer(_) => return ApiError::new(ErrorCode::NewerStore, "error-read-newer"),
        FhirError::Disagrees => Message::new("error-read-disagrees"),
    };
    ApiError::impossible(message)
}
