//! Measuring on a photograph that stands in the chart.

use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Fact, Photo, PhotoMeasure};
use secundine_domain::file::FileId;
use secundine_domain::photo::{FORMULA, Tracing};
use secundine_domain::time::Stamp;

use super::Session;
use crate::api::{ApiError, ErrorCode, Response};
use crate::practice::Draft;
use crate::views;

impl Session {
    /// The core works the sizes out, so that what is written is what the tracing comes to.
    pub(super) fn measure_photo(
        &mut self,
        birth: BirthId,
        file: FileId,
        tracing: Tracing,
        keep: bool,
        now: &Stamp,
    ) -> Result<Response, ApiError> {
        let open = self.open()?;
        let chart = open.chart(birth)?;
        let photo = chart.photos.iter().map(|noted| &noted.what).find(|photo| photo.file == file);
        let photo = photo.ok_or_else(|| ApiError::new(ErrorCode::NotFound, "error-no-photo"))?;
        let Photo { placenta, width, height, focal, .. } = *photo;
        let sizes = tracing.measure(width, height, focal).map_err(|refusal| ApiError::impossible(refusal.words()))?;
        let measured = views::measured(&sizes);
        let entry = match keep {
            true => {
                let measure = PhotoMeasure { placenta, file, width, height, focal, tracing, sizes, formula: FORMULA };
                Some(open.write(Draft::now(birth, Fact::PhotoMeasured(Box::new(measure)), now))?)
            }
            false => None,
        };
        Ok(Response::MeasurePhoto { measured, entry })
    }
}
