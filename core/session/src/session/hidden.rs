//! The gate while the names are hidden: what may be asked, and of which births.

use secundine_domain::entry::BirthId;
use secundine_domain::fact::Fact;
use secundine_domain::time::Stamp;

use super::Session;
use crate::api::{ApiError, ErrorCode, FileKind, Request, Response};
use crate::hide;
use crate::locked::RECENT_MS;
use crate::views;

/// The births whose third stage ran when the names were hidden: they can be worked with until the next rest, also once the
/// placenta is born.
pub(super) struct AtWork(pub Vec<BirthId>);

impl Session {
    /// Refuses what is not on the list below, as long as the names are hidden. A new request is refused until it stands there.
    pub(super) fn pass(&mut self, request: &Request, now: &Stamp) -> Result<(), ApiError> {
        match self.hidden.is_some() && !self.passes(request, now) {
            true => Err(ApiError::new(ErrorCode::NamesHidden, "error-names-hidden")),
            false => Ok(()),
        }
    }

    fn passes(&mut self, request: &Request, now: &Stamp) -> bool {
        match request {
            Request::Status
            | Request::Protocols
            | Request::Lock
            | Request::Rest
            | Request::ShowNames { .. }
            | Request::Unlock { .. }
            | Request::UnlockByDevice
            | Request::Births { .. }
            | Request::BabyBornNow { .. }
            // A voice note can be spoken, as a note can be written. To listen to one waits.
            | Request::FilePart { kind: FileKind::Voice, .. } => true,
            Request::Birth { birth }
            | Request::ChartPicture { birth }
            | Request::Handover { birth }
            | Request::Sketch { birth, .. }
            | Request::Retract { birth, .. } => self.at_work(*birth, now),
            // Who does not see the mother's data, what was planned with her, or what was asked for, would write over it.
            Request::Record { birth, fact, .. } => {
                !matches!(fact, Fact::ClientRecorded(_) | Fact::NextContactPlanned(_) | Fact::AskedFor { .. })
                    && self.at_work(*birth, now)
            }
            // Words that are not shown cannot be put right: what stands in their place would be written.
            Request::Amend { birth, fact, .. } => !fact.as_ref().is_some_and(hide::has_words) && self.at_work(*birth, now),
            Request::Elsewhere { what } => birth_or_mark(what) && self.passes(what, now),
            _ => false,
        }
    }

    /// Births whose third stage runs, latest registered first.
    pub(super) fn running_births(&mut self, now: &Stamp) -> Result<Vec<BirthId>, ApiError> {
        let mut births = self.recent_births(now)?;
        births.retain(|birth| self.runs(*birth, now));
        Ok(births)
    }

    /// Births registered within a day, or looked at since the practice was opened, latest registered first.
    pub(super) fn recent_births(&mut self, now: &Stamp) -> Result<Vec<BirthId>, ApiError> {
        let open = self.open()?;
        let mut births = open.births()?;
        births.retain(|birth| now.wall_ms.saturating_sub(birth.registered_ms) < RECENT_MS || open.knows(birth.id));
        Ok(births.into_iter().map(|birth| birth.id).collect())
    }

    /// Whether a birth can be worked with while the names are hidden.
    fn at_work(&mut self, birth: BirthId, now: &Stamp) -> bool {
        self.hidden.as_ref().is_some_and(|AtWork(births)| births.contains(&birth)) || self.runs(birth, now)
    }

    /// Whether the third stage of this birth runs, for a day at most: a placenta that nobody wrote down is no reason to
    /// keep a practice open for ever.
    fn runs(&mut self, birth: BirthId, now: &Stamp) -> bool {
        let chart = self.open().and_then(|open| open.chart(birth));
        let stage = chart.ok().and_then(|chart| chart.third_stage(now));
        stage.is_some_and(|stage| stage.to.is_none() && stage.elapsed.ms < RECENT_MS)
    }

    /// The list of births, of which only those are on it that can be worked with.
    pub(super) fn hidden_births(&mut self, skip: u32, take: u32, now: &Stamp) -> Result<Response, ApiError> {
        let mut births = self.recent_births(now)?;
        births.retain(|birth| self.at_work(*birth, now));
        let open = self.open()?;
        let count = views::counted(births.len());
        let page = births.into_iter().skip(views::index(skip)).take(views::index(take));
        let births = page
            .map(|birth| Ok(views::line(birth, open.band(birth)?, &open.hidden_chart(birth)?, None, now)))
            .collect::<Result<_, ApiError>>()?;
        Ok(Response::Births { births, count, alike: Vec::new() })
    }
}

/// What could not be saved at a birth, and not a way round the gate.
fn birth_or_mark(request: &Request) -> bool {
    matches!(request, Request::BabyBornNow { .. } | Request::Record { .. } | Request::Amend { .. } | Request::Retract { .. })
}
