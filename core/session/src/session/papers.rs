//! What is written on paper: the record, and what goes with a placenta; and the drawing that stands on them.

use secundine_domain::chart::Chart;
use secundine_domain::entry::BirthId;
use secundine_domain::fact::BabyNo;
use secundine_domain::time::Stamp;
use secundine_record::page::{PageError, Pdf};
use secundine_record::words::Words;
use secundine_record::{Form, Origin, form_pdf, pdf};
use secundine_store::version;

use super::Session;
use crate::api::{ApiError, ErrorCode, Paper, Response};
use crate::views;

impl Session {
    pub(super) fn write_record(&mut self, birth: BirthId, language: Option<&str>, now: &Stamp) -> Result<Response, ApiError> {
        let (path, pages) = self.write_pdf(birth, "record", language, now, pdf)?;
        Ok(Response::WriteRecord { path, pages })
    }

    pub(super) fn write_paper(
        &mut self,
        birth: BirthId,
        placenta: BabyNo,
        paper: Paper,
        language: Option<&str>,
        now: &Stamp,
    ) -> Result<Response, ApiError> {
        known(&self.open()?.chart(birth)?, placenta)?;
        let (name, form) = match paper {
            Paper::Laboratory => ("laboratory", Form::Laboratory),
            Paper::Family => ("family", Form::Family),
        };
        let (path, pages) =
            self.write_pdf(birth, name, language, now, |chart, origin| form_pdf(chart, origin, form, placenta))?;
        Ok(Response::WritePaper { path, pages })
    }

    pub(super) fn sketch(&mut self, birth: BirthId, placenta: BabyNo) -> Result<Response, ApiError> {
        let chart = self.shown(birth)?;
        Ok(Response::Sketch(Box::new(views::drawn(&chart, &self.open()?.examining.order, placenta))))
    }

    /// Writes a file about a birth into the folder of the records; gives its path and how many pages it has.
    fn write_pdf(
        &mut self,
        birth: BirthId,
        name: &str,
        language: Option<&str>,
        now: &Stamp,
        make: impl FnOnce(&Chart, &Origin) -> Result<Pdf, PageError>,
    ) -> Result<(String, u32), ApiError> {
        let folder = self.paths.records.clone();
        let open = self.open()?;
        let chart = open.chart(birth)?;
        let named = version(open.entries(birth)?);
        let practice = open.described().clone();
        let origin =
            Origin { practice: &practice, version: &named, written: now, words: Words::of(language.unwrap_or_default()) };
        let pdf = make(&chart, &origin).map_err(|_| ApiError::internal())?;
        let path = views::paper_file(&folder, &chart, name, now);
        let written = std::fs::create_dir_all(&folder).and_then(|()| std::fs::write(&path, &pdf.bytes));
        written.map_err(|_| ApiError::new(ErrorCode::NotSaved, "error-record-not-written"))?;
        Ok((path.to_string_lossy().into_owned(), u32::try_from(pdf.pages).unwrap_or(u32::MAX)))
    }
}

/// A placenta of this birth, born or looked at.
fn known(chart: &Chart, placenta: BabyNo) -> Result<(), ApiError> {
    let known = chart.placentas.contains_key(&placenta) || chart.examinations.contains_key(&placenta);
    if known { Ok(()) } else { Err(ApiError::new(ErrorCode::NotFound, "error-no-placenta")) }
}
