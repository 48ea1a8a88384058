//! What native code asks a session for.

use std::path::PathBuf;
use std::sync::Arc;

use secundine_domain::chart::Chart;
use secundine_domain::due::{Due, due, soonest};
use secundine_domain::entry::{Amendment, BirthId, EntryId};
use secundine_domain::fact::Fact;
use secundine_domain::message::Message;
use secundine_domain::time::{Occurred, Stamp};
use secundine_record::words::Words;
use secundine_store::PlatformKeys;

use super::{Session, label_of};
use crate::api::{ApiError, ErrorCode, LockedMark};
use crate::clock::earlier;
use crate::locked::{RECENT_MS, UNDONE};
use crate::native::{Marked, Moment, Reminder, Running};
use crate::practice::{Change, Draft};
use crate::views;

/// Where a mark of native code stands.
#[derive(Clone, Copy)]
pub(super) enum Marking {
    /// In a chart.
    Entry(BirthId, EntryId),
    /// Among the marks since the lock.
    Waiting(EntryId),
}

impl Session {
    /// From now on records go here.
    pub(crate) fn write_records_to(&mut self, records: PathBuf) {
        self.paths.records = records;
    }

    pub(crate) fn keys_kept_by(&mut self, platform: Arc<dyn PlatformKeys>) {
        self.keys.kept_by(platform);
    }

    /// What is armed, soonest first.
    ///
    /// # Errors
    /// Locked, or in a rehearsal, whose reminders wake nobody.
    pub(crate) fn reminders(&mut self, words: &Words) -> Result<Vec<Reminder>, ApiError> {
        let (now, running_ms) = self.clock.now_and_running();
        self.really_open()?;
        let mut all = Vec::new();
        for birth in self.recent_births(&now)? {
            let chart = self.open()?.chart(birth)?;
            let of_birth = due(&chart, chart.protocol(), &now).into_iter();
            all.extend(of_birth.map(|due| Due { id: format!("{}/{}", birth.0, due.id), ..due }));
        }
        let armed = soonest(all).into_iter().filter(|due| due.armed);
        Ok(armed
            .map(|due| Reminder { id: due.id, at: moment(&now, running_ms, due.in_ms), words: words.say(&due.message) })
            .collect())
    }

    /// The third stage that runs, for a day at most.
    ///
    /// # Errors
    /// In a rehearsal.
    pub(crate) fn running(&mut self) -> Result<Option<Running>, ApiError> {
        let (now, running_ms) = self.clock.now_and_running();
        self.not_rehearsing()?;
        let chart = if self.practice.is_none() {
            self.in_front().ok().map(|locked| locked.chart())
        } else {
            let births = self.running_births(&now)?;
            let looked_at = self.latest.filter(|birth| births.contains(birth));
            let birth = looked_at.or_else(|| births.first().copied());
            birth.map(|birth| self.open()?.chart(birth)).transpose()?
        };
        let stage = chart.and_then(|chart| chart.third_stage(&now)).filter(|stage| stage.to.is_none());
        let elapsed_ms = stage.map(|stage| stage.elapsed.ms).filter(|ms| *ms < RECENT_MS);
        Ok(elapsed_ms.map(|elapsed_ms| Running { since: moment(&now, running_ms, -elapsed_ms), elapsed_ms }))
    }

    /// Marks the birth of a baby. Locked, or never opened in this process: into the inbox, as the mark of the page is. Open: into
    /// the chart of the birth looked at last where its third stage runs, as its next baby; else into a chart of its own; and
    /// where the database cannot be written, into the inbox. A rehearsal that runs changes nothing of it: a real birth is not
    /// lost to one.
    ///
    /// # Errors
    /// Whatever the code: it is NOT on disk.
    pub(crate) fn mark_baby_born(&mut self, ago_ms: u32, words: &Words) -> Result<Marked, ApiError> {
        let (now, running_ms) = self.clock.now_and_running();
        let born = earlier(now.clone(), i64::from(ago_ms));
        let marking = if self.practice.is_some() {
            self.mark_open(&born, &now)?
        } else {
            Some(Marking::Waiting(self.in_front()?.mark(LockedMark::BabyBorn, ago_ms, &now)?))
        };
        self.marked = marking;
        let clock = Occurred::Marked(born).clock();
        Ok(Marked {
            at: moment(&now, running_ms, -i64::from(ago_ms)),
            waits: !matches!(marking, Some(Marking::Entry(..))),
            words: words.say(&Message::new("native-saved").with("clock", clock.clone())),
            clock,
        })
    }

    /// Into its chart; none where it was kept in the inbox.
    fn mark_open(&mut self, born: &Stamp, now: &Stamp) -> Result<Option<Marking>, ApiError> {
        let running = self.latest.and_then(|birth| Some((birth, self.running_chart(birth, now)?)));
        let (birth, baby) = running.map_or((BirthId::PRACTICE, 1), |(birth, chart)| (birth, views::next_baby(&chart)));
        let fact = Fact::BabyBorn { baby };
        let draft = Draft { occurred: Occurred::Marked(born.clone()), ..Draft::now(birth, fact.clone(), now) };
        let open = self.practice.as_mut().ok_or_else(ApiError::internal)?;
        let written = match birth {
            BirthId::PRACTICE => {
                let label = label_of(&born.date(), &born.clock());
                open.register(label, false, Some((fact, born.clone())), now)
            }
            birth => open.write(draft.clone()).map(|entry| (birth, Some(entry))),
        };
        match written {
            Ok((birth, entry)) => {
                self.latest = Some(birth);
                Ok(entry.map(|entry| Marking::Entry(birth, entry)))
            }
            Err(_) => self.keep(draft).map(|()| None),
        }
    }

    /// The chart of a birth of the practice whose third stage runs.
    fn running_chart(&mut self, birth: BirthId, now: &Stamp) -> Option<Chart> {
        let chart = self.practice.as_mut()?.chart(birth).ok()?;
        let stage = chart.third_stage(now)?;
        (stage.to.is_none() && stage.elapsed.ms < RECENT_MS).then_some(chart)
    }

    /// Takes the last such mark back.
    ///
    /// # Errors
    /// Not found where there is none, or it cannot be taken back any more. Whatever the code: it still stands.
    pub(crate) fn take_back_mark(&mut self) -> Result<(), ApiError> {
        let now = self.clock.now_and_running().0;
        match self.marked {
            Some(Marking::Waiting(mark)) => self.in_front()?.undo_mark(mark, &now)?,
            Some(Marking::Entry(birth, entry)) => {
                let open = self.practice.as_mut().ok_or_else(ApiError::internal)?;
                let amends = Amendment { entry, reason: UNDONE.to_owned() };
                let draft = open.amendment(birth, amends, Change::Retract, &now)?;
                open.write(draft)?;
            }
            None => return Err(ApiError::new(ErrorCode::NotFound, "error-no-entry")),
        }
        self.marked = None;
        Ok(())
    }
}

/// So long from now, on both clocks.
fn moment(now: &Stamp, running_ms: Option<i64>, in_ms: i64) -> Moment {
    Moment { utc_ms: now.wall_ms.saturating_add(in_ms), running_ms: running_ms.map(|ms| ms.saturating_add(in_ms)) }
}
