//! The clock of the device, held against what was seen of it last.

use secundine_domain::time::Stamp;

use super::OpenPractice;
use crate::api::ApiError;

/// How the clock of the device stands against what was seen of it last.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum ClockSince {
    /// By how much it was set in this run of the device, ms.
    Measured { by_ms: i64 },
    /// How far it is past the last that is known from before; behind it when negative, ms.
    Compared { by_ms: i64 },
    /// There is nothing to hold it against.
    Nothing,
}

impl OpenPractice {
    /// How the clock stands against what was seen of it last; the marks of a run that still goes on measure it.
    pub(crate) fn clock_since(&self, now: &Stamp) -> Result<ClockSince, ApiError> {
        let here = now.run();
        let same = here.as_ref().and_then(|here| self.runs.iter().find(|run| run.boot == here.boot).map(|run| (here, run)));
        if let Some((here, run)) = same {
            let by_ms = here.wall_ms.saturating_sub(run.wall_ms).saturating_sub(here.since_ms.saturating_sub(run.since_ms));
            return Ok(ClockSince::Measured { by_ms });
        }
        let registered = self.births()?.first().map(|birth| birth.registered_ms);
        let last_ms = self.runs.iter().map(|run| run.wall_ms).chain(registered).max();
        Ok(last_ms.map_or(ClockSince::Nothing, |last_ms| ClockSince::Compared { by_ms: now.wall_ms.saturating_sub(last_ms) }))
    }
}
