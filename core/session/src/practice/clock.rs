//! How the device's clock ran, as far as it was seen.

use secundine_domain::time::Stamp;

use super::OpenPractice;
use crate::api::ApiError;

/// Milliseconds between two beats of one run.
const BEAT_MS: i64 = 60_000;

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
    /// Notes once a minute how far the running clock has come, so that after a restart less of the time in between is in
    /// doubt. A beat that cannot be written only leaves more of it in doubt.
    pub(crate) fn beat(&mut self, now: &Stamp) {
        let Some(run) = now.run() else { return };
        let last = self.runs.iter_mut().find(|known| known.boot == run.boot);
        if last.as_ref().is_some_and(|last| run.since_ms < last.since_ms.saturating_add(BEAT_MS))
            || self.store.beat(&run).is_err()
        {
            return;
        }
        match last {
            Some(last) => *last = run,
            None => self.runs.push(run),
        }
    }

    /// How the clock stands against what was seen of it last; the marks of a run that still goes on measure it.
    pub(crate) fn clock_since(&self, now: &Stamp) -> Result<ClockSince, ApiError> {
        let here = now.run();
        let same = here.as_ref().and_then(|here| self.runs.iter().find(|run| run.boot == here.boot).map(|run| (here, run)));
        if let Some((here, run)) = same {
            let by_ms = here.wall_ms.saturating_sub(run.wall_ms).saturating_sub(here.since_ms.saturating_sub(run.since_ms));
            return Ok(ClockSince::Measured { by_ms });
        }
        let registered = self.store.births()?.first().map(|birth| birth.registered_ms);
        let last_ms = self.runs.iter().map(|run| run.wall_ms).chain(registered).max();
        Ok(last_ms.map_or(ClockSince::Nothing, |last_ms| ClockSince::Compared { by_ms: now.wall_ms.saturating_sub(last_ms) }))
    }
}
