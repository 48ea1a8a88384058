//! Births: begun with a touch or by their label, listed, and read.

use secundine_domain::chart::Chart;
use secundine_domain::entry::BirthId;
use secundine_domain::fact::Fact;
use secundine_domain::time::Stamp;
use secundine_store::version;

use super::Session;
use crate::api::{ApiError, BirthView, Phase, Response};
use crate::views;

impl Session {
    pub(super) fn baby_born_now(&mut self, ago_ms: u32, now: &Stamp) -> Result<Response, ApiError> {
        let rehearsal = self.rehearsal.is_some();
        let born = self.touched(ago_ms, now);
        let label = label_of(&born.date(), &born.clock());
        // The chart opens with the touch, so that it does not stand after the birth.
        let first = Some((Fact::BabyBorn { baby: 1 }, born));
        let (birth, entry) = self.open()?.register(label, rehearsal, first, now)?;
        if !rehearsal {
            self.latest = Some(birth);
        }
        Ok(Response::BabyBornNow { birth, entry: entry.ok_or_else(ApiError::internal)? })
    }

    pub(super) fn register(&mut self, label: String, now: &Stamp) -> Result<Response, ApiError> {
        let rehearsal = self.rehearsal.is_some();
        let (birth, _) = self.open()?.register(label, rehearsal, None, now)?;
        Ok(Response::RegisterBirth { birth })
    }

    pub(super) fn births(&mut self, skip: u32, take: u32, now: &Stamp) -> Result<Response, ApiError> {
        if self.hidden.is_some() {
            return self.hidden_births(skip, take, now);
        }
        views::births(self.open()?, skip, take, now)
    }

    pub(super) fn birth(&mut self, birth: BirthId, now: &Stamp) -> Result<Response, ApiError> {
        let speed = self.speed();
        self.open()?.beat(now);
        let chart = self.shown(birth)?;
        let open = self.open()?;
        let signed = views::signed(&chart, open.entries(birth)?);
        let named = version(open.entries(birth)?);
        let band = open.band(birth)?;
        let order = &open.examining.order;
        let mut view = BirthView { signed, ..views::birth(birth, band, &chart, order, named, now, speed) };
        // A signature that not all of it lies under signs no longer what is shown.
        if view.phase == Phase::Signed && view.signed.last().is_some_and(|last| !last.whole) {
            view.phase = views::unsigned(&chart);
        }
        Ok(Response::Birth(Box::new(view)))
    }

    pub(super) fn chart_picture(&mut self, birth: BirthId, now: &Stamp) -> Result<Response, ApiError> {
        Ok(Response::ChartPicture(Box::new(views::chart_picture(&self.shown(birth)?, now))))
    }

    /// A chart as it may be shown now: without names while they are hidden.
    pub(super) fn shown(&mut self, birth: BirthId) -> Result<Chart, ApiError> {
        let hidden = self.hidden.is_some();
        let open = self.open()?;
        if hidden { open.hidden_chart(birth) } else { open.chart(birth) }
    }
}

/// What a birth is called that began with a touch: its date, its hour and minute.
pub(crate) fn label_of(date: &str, clock: &str) -> String {
    format!("{date} {}", clock.chars().take(5).collect::<String>())
}
