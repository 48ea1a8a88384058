//! What leaves the phone: the handover, the files about a birth, and the drawing that stands on them.

use std::collections::BTreeMap;

use qrcodegen::QrCodeEcc;
use secundine_domain::chart::Chart;
use secundine_domain::entry::{BirthId, Entry};
use secundine_domain::fact::{BabyNo, Practice};
use secundine_domain::file::FileId;
use secundine_domain::time::Stamp;
use secundine_record::fhir;
use secundine_record::handover::{CodeText, Handover, transfer_pdf};
use secundine_record::page::{PageError, Pdf};
use secundine_record::words::Words;
use secundine_record::{Form, Origin, calendar, csv, form_pdf, parents_pdf, pdf};
use secundine_store::{StoreError, Stored, version};

use super::Session;
use crate::api::{ApiError, ErrorCode, HandoverCode, Outgoing, QrView, Response};
use crate::practice::OpenPractice;
use crate::qr;
use crate::views;

impl Session {
    /// Writes a file about a birth into the folder of the records; gives its path, how many pages it has, 0 for what is not for
    /// print, and how large it is.
    pub(super) fn write_file(
        &mut self,
        birth: BirthId,
        file: Outgoing,
        language: Option<&str>,
        now: &Stamp,
    ) -> Result<Response, ApiError> {
        let folder = self.paths.records.clone();
        let open = self.open()?;
        let Made { bytes, pages, rehearsal } = made(open, birth, file, language, now)?;
        let path = views::file_path(&folder, rehearsal, file, now);
        let written = std::fs::create_dir_all(&folder).and_then(|()| std::fs::write(&path, &bytes));
        written.map_err(|_| ApiError::new(ErrorCode::NotSaved, "error-record-not-written"))?;
        let number = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        let path = path.to_string_lossy().into_owned();
        Ok(Response::WriteFile { path, pages: number(pages), bytes: number(bytes.len()) })
    }

    /// What is handed over, as it may be shown now.
    pub(super) fn handover(&mut self, birth: BirthId, now: &Stamp) -> Result<Response, ApiError> {
        let (hidden, speed) = (self.hidden.is_some(), self.speed());
        let chart = self.shown(birth)?;
        let practice = self.open()?.described().clone();
        let origin = Origin { practice: &practice, version: "", written: now, words: words(None) };
        Ok(Response::Handover(views::handover(&chart, Handover::of(&chart, &origin), hidden, now, speed)))
    }

    /// The same as a code, which bears names.
    pub(super) fn handover_code(&mut self, birth: BirthId, language: Option<&str>, now: &Stamp) -> Result<Response, ApiError> {
        let open = self.open()?;
        let chart = open.chart(birth)?;
        let practice = open.described().clone();
        let words = words(language);
        let origin = Origin { practice: &practice, version: "", written: now, words };
        let CodeText { text, left_out } = Handover::of(&chart, &origin).code_text(words);
        Ok(Response::HandoverCode(HandoverCode { code: code(&text), text, left_out }))
    }

    pub(super) fn sketch(&mut self, birth: BirthId, placenta: BabyNo) -> Result<Response, ApiError> {
        let chart = self.shown(birth)?;
        Ok(Response::Sketch(Box::new(views::drawn(&chart, &self.open()?.examining.order, placenta))))
    }
}

/// A file as it was made.
pub(crate) struct Made {
    pub bytes: Vec<u8>,
    /// How many pages it has; 0 for a file without pages.
    pub pages: usize,
    /// Whether it is of an exercise.
    pub rehearsal: bool,
}

/// What files are made from: a birth out of the practice, or out of a file that was read.
pub(crate) struct Whole {
    pub birth: BirthId,
    pub chart: Chart,
    pub entries: Vec<Entry>,
    /// See [`version`].
    pub version: String,
    pub practice: Practice,
}

/// Makes a file about a birth.
pub(crate) fn made(
    open: &mut OpenPractice,
    birth: BirthId,
    file: Outgoing,
    language: Option<&str>,
    now: &Stamp,
) -> Result<Made, ApiError> {
    let (chart, practice) = (open.chart(birth)?, open.described().clone());
    let stored = open.entries(birth)?;
    let whole = Whole { birth, chart, entries: unsealed(stored), version: version(stored), practice };
    match file {
        Outgoing::Entries => Ok(whole.plain(open.extract(birth, now)?)),
        Outgoing::Fhir { photos: true } => {
            let taken = whole.chart.photos.iter().map(|photo| photo.what.file);
            // One that cannot be opened is told: the file may be asked for without them.
            let pictures = taken.map(|file| Ok((file, open.open_file(file)?.to_vec()))).collect::<Result<_, StoreError>>()?;
            whole.document(&pictures, language, now)
        }
        _ => whole.made(file, language, now),
    }
}

impl Whole {
    /// A file without what only the practice has: what proves the entries, and pictures.
    pub(crate) fn made(&self, file: Outgoing, language: Option<&str>, now: &Stamp) -> Result<Made, ApiError> {
        let (chart, words) = (&self.chart, words(language));
        let origin = Origin { practice: &self.practice, version: &self.version, written: now, words };
        let paged = |made: Result<Pdf, PageError>| {
            let rehearsal = chart.rehearsal;
            made.map(|Pdf { bytes, pages, .. }| Made { bytes, pages, rehearsal }).map_err(|_| ApiError::internal())
        };
        match file {
            Outgoing::Record => paged(pdf(chart, &origin)),
            Outgoing::Transfer => paged(transfer_pdf(chart, &origin)),
            Outgoing::Laboratory { placenta } => paged(form_pdf(chart, &origin, Form::Laboratory, known(chart, placenta)?)),
            Outgoing::Family { placenta } => paged(form_pdf(chart, &origin, Form::Family, known(chart, placenta)?)),
            Outgoing::Parents => paged(parents_pdf(chart, &origin)),
            Outgoing::Csv => csv(self.birth, chart, words).map(|bytes| self.plain(bytes)).map_err(|_| ApiError::internal()),
            Outgoing::Calendar => {
                let planned = calendar(self.birth, chart, now, words).map(|bytes| self.plain(bytes));
                planned.ok_or_else(|| ApiError::new(ErrorCode::NotFound, "error-nothing-planned"))
            }
            Outgoing::Fhir { photos: false } => self.document(&BTreeMap::new(), language, now),
            Outgoing::Fhir { photos: true } => Err(ApiError::new(ErrorCode::NotFound, "error-no-file")),
            Outgoing::Entries => Err(ApiError::new(ErrorCode::NotFound, "error-read-unproved")),
        }
    }

    fn plain(&self, bytes: Vec<u8>) -> Made {
        Made { bytes, pages: 0, rehearsal: self.chart.rehearsal }
    }

    fn document(&self, photos: &BTreeMap<FileId, Vec<u8>>, language: Option<&str>, now: &Stamp) -> Result<Made, ApiError> {
        let origin = Origin { practice: &self.practice, version: &self.version, written: now, words: words(language) };
        let bytes = bundle(self.birth, &self.chart, &self.entries, &origin, (fhir::Form::Document, photos))?;
        Ok(self.plain(bytes))
    }
}

/// A birth as a bundle of FHIR, with its record in print.
pub(crate) fn bundle(
    birth: BirthId,
    chart: &Chart,
    entries: &[Entry],
    origin: &Origin,
    (form, photos): (fhir::Form, &BTreeMap<FileId, Vec<u8>>),
) -> Result<Vec<u8>, ApiError> {
    let record = pdf(chart, origin).map_err(|_| ApiError::internal())?;
    let handover = fhir::Handover { birth, chart, entries, origin, record: Some(&record.bytes), photos };
    fhir::write(&handover, form).map_err(|_| ApiError::internal())
}

/// Entries without what proves them.
pub(crate) fn unsealed(stored: &[Stored]) -> Vec<Entry> {
    stored.iter().map(|stored| stored.entry.clone()).collect()
}

/// The code of a handover. A screen is bright and whole, and fewer modules are read sooner than more that mend more.
pub(crate) fn code(text: &str) -> QrView {
    qr::code(text, QrCodeEcc::Medium)
}

/// The language of a tag.
fn words(language: Option<&str>) -> &'static Words {
    Words::of(language.unwrap_or_default())
}

/// A placenta of this birth, born or looked at.
fn known(chart: &Chart, placenta: BabyNo) -> Result<BabyNo, ApiError> {
    let known = chart.placentas.contains_key(&placenta) || chart.examinations.contains_key(&placenta);
    if known { Ok(placenta) } else { Err(ApiError::new(ErrorCode::NotFound, "error-no-placenta")) }
}
