//! What leaves the phone: the handover, the files about a birth, and the drawing that stands on them.

use qrcodegen::QrCodeEcc;
use secundine_domain::chart::Chart;
use secundine_domain::entry::{BirthId, Entry};
use secundine_domain::fact::BabyNo;
use secundine_domain::time::Stamp;
use secundine_record::fhir;
use secundine_record::handover::{CodeText, Handover, transfer_pdf};
use secundine_record::page::{PageError, Pdf};
use secundine_record::words::Words;
use secundine_record::{Form, Origin, calendar, csv, form_pdf, parents_pdf, pdf};
use secundine_store::{Stored, version};

use super::Session;
use crate::api::{ApiError, ErrorCode, HandoverCode, Outgoing, QrView, Response};
use crate::practice::OpenPractice;
use crate::qr;
use crate::views;

impl Session {
    /// Writes a file about a birth into the folder of the records; gives its path and how many pages it has, 0 for what is not
    /// for print.
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
        Ok(Response::WriteFile { path: path.to_string_lossy().into_owned(), pages: u32::try_from(pages).unwrap_or(u32::MAX) })
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

/// Makes a file about a birth.
pub(crate) fn made(
    open: &mut OpenPractice,
    birth: BirthId,
    file: Outgoing,
    language: Option<&str>,
    now: &Stamp,
) -> Result<Made, ApiError> {
    let chart = open.chart(birth)?;
    let named = version(open.entries(birth)?);
    let practice = open.described().clone();
    let words = words(language);
    let origin = Origin { practice: &practice, version: &named, written: now, words };
    let rehearsal = chart.rehearsal;
    let paged = |made: Result<Pdf, PageError>| {
        made.map(|Pdf { bytes, pages, .. }| Made { bytes, pages, rehearsal }).map_err(|_| ApiError::internal())
    };
    let plain = |bytes| Made { bytes, pages: 0, rehearsal };
    match file {
        Outgoing::Record => paged(pdf(&chart, &origin)),
        Outgoing::Transfer => paged(transfer_pdf(&chart, &origin)),
        Outgoing::Laboratory { placenta } => paged(form_pdf(&chart, &origin, Form::Laboratory, known(&chart, placenta)?)),
        Outgoing::Family { placenta } => paged(form_pdf(&chart, &origin, Form::Family, known(&chart, placenta)?)),
        Outgoing::Parents => paged(parents_pdf(&chart, &origin)),
        Outgoing::Csv => csv(birth, &chart, words).map(plain).map_err(|_| ApiError::internal()),
        Outgoing::Calendar => {
            let planned = calendar(birth, &chart, now, words);
            planned.map(plain).ok_or_else(|| ApiError::new(ErrorCode::NotFound, "error-nothing-planned"))
        }
        Outgoing::Fhir => bundle(birth, &chart, &unsealed(open.entries(birth)?), &origin, fhir::Form::Document).map(plain),
        Outgoing::Entries => Ok(plain(open.extract(birth, now)?)),
    }
}

/// A birth as a bundle of FHIR, with its record in print.
pub(crate) fn bundle(
    birth: BirthId,
    chart: &Chart,
    entries: &[Entry],
    origin: &Origin,
    form: fhir::Form,
) -> Result<Vec<u8>, ApiError> {
    let record = pdf(chart, origin).map_err(|_| ApiError::internal())?;
    let handover = fhir::Handover { birth, chart, entries, origin, record: Some(&record.bytes) };
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
