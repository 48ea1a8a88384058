//! One round with the bucket: acts first, then what this phone has to give, then what the others gave, then whether all of
//! them have been shown the same.
//!
//! Whatever stops a round, nothing is lost: what is to be given waits in the queue and is given again byte for byte, and
//! what was taken in is on disk together with how far that was.

use std::collections::BTreeSet;

use secundine_domain::entry::{BirthId, DeviceId};
use secundine_store::Store;

use crate::access::{Access, with};
use crate::bucket::Bucket;
use crate::member;
use crate::notes::{self, Me};
use crate::roster::Roster;
use crate::{SyncError, Trouble};

pub(crate) mod acts;
mod check;
mod compare;
mod give;
pub(crate) mod sealer;
mod take;

/// What a round is to do, and who looks on.
pub struct Wishes<'a> {
    /// UTC milliseconds.
    pub now_ms: i64,
    /// Whether pictures and sounds may go out too; not over a metered line.
    pub files: bool,
    /// Told after each object; answers whether to go on.
    pub progress: &'a mut dyn FnMut(Progress) -> bool,
}

/// How far a round is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Progress {
    /// Entries that the bucket has taken.
    pub sent: u64,
    /// Entries that still wait for it.
    pub to_send: u64,
    /// Bytes that it has taken.
    pub sent_bytes: u64,
    /// Entries that came.
    pub got: u64,
    /// Bytes that came.
    pub got_bytes: u64,
}

/// What came of a round.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Report {
    /// How far it came.
    pub progress: Progress,
    /// Births that entries came for; the practice itself among them.
    pub births: Vec<BirthId>,
    /// Births that were erased, since two people agreed.
    pub erased: Vec<BirthId>,
    /// What is not as it should be.
    pub troubles: BTreeSet<Trouble>,
    /// This device was removed: nothing is exchanged any more.
    pub removed: bool,
    /// Files that were given.
    pub files: u64,
}

/// What is at hand in a round.
pub(crate) struct At<'a, 'b> {
    pub access: &'a dyn Access,
    pub me: &'a Me,
    pub device: DeviceId,
    pub bucket: &'a dyn Bucket,
    pub wishes: &'a mut Wishes<'b>,
    pub roster: Roster,
    pub report: Report,
    pub births: BTreeSet<BirthId>,
}

impl At<'_, '_> {
    /// Tells how far it is.
    ///
    /// # Errors
    /// [`SyncError::Paused`] where it is to end here.
    pub(crate) fn tell(&mut self) -> Result<(), SyncError> {
        match (self.wishes.progress)(self.report.progress) {
            true => Ok(()),
            false => Err(SyncError::Paused),
        }
    }

    /// Works with the store for a moment.
    pub(crate) fn with<T>(&self, work: impl FnOnce(&mut Store) -> Result<T, SyncError>) -> Result<T, SyncError> {
        with(self.access, work)
    }
}

/// Exchanges with the bucket what there is to exchange. The report tells what was done, whether or not all of it was.
///
/// # Errors
/// Beside the report, what ended the round before its end. Whatever is wrong with single objects is no error but a
/// [`Trouble`].
pub fn round(access: &dyn Access, bucket: &dyn Bucket, wishes: &mut Wishes<'_>) -> (Report, Result<(), SyncError>) {
    let (me, device) = match with(access, |store| Ok((member::current(store)?, store.device()))) {
        Ok((Some(me), device)) => (me, device),
        Ok((None, _)) => return (Report::default(), Err(SyncError::NotMember)),
        Err(error) => return (Report::default(), Err(error)),
    };
    let (roster, report, births) = Default::default();
    let mut at = At { access, me: &me, device, bucket, wishes, roster, report, births };
    let done = all(&mut at);
    at.report.births = at.births.into_iter().collect();
    (at.report, done)
}

fn all(at: &mut At<'_, '_>) -> Result<(), SyncError> {
    // Who has read nothing of the others yet must not give on, from a backup, what they have erased.
    let pull = if at.with(|store| notes::peers(store))?.is_empty() { acts::pull_all } else { acts::pull };
    pull(at.access, at.me, at.bucket, &mut at.report.troubles)?;
    look_at_roster(at)?;
    if at.report.removed {
        return Ok(());
    }
    give::all(at)?;
    take::all(at)?;
    // What has no key may have been erased, by an act that is told of behind the very segment that has none.
    let keyless = |trouble: &Trouble| matches!(trouble, Trouble::NoBirthKey { .. });
    let stuck = at.report.troubles.iter().any(keyless);
    if stuck || !compare::acts_behind(at)?.is_empty() {
        acts::pull_all(at.access, at.me, at.bucket, &mut at.report.troubles)?;
        look_at_roster(at)?;
        if stuck && !at.report.removed {
            at.report.troubles.retain(|trouble| !keyless(trouble));
            take::all(at)?;
        }
        let behind = compare::acts_behind(at)?;
        at.report.troubles.extend(behind);
    }
    compare::segments(at)?;
    if at.wishes.files && !at.report.removed {
        give::files(at)?;
    }
    Ok(())
}

/// Works the roster out anew, mends what a lead can mend, and erases what two people want erased.
fn look_at_roster(at: &mut At<'_, '_>) -> Result<(), SyncError> {
    let (me, device, now_ms) = (at.me, at.device, at.wishes.now_ms);
    at.roster = at.with(|store| {
        let roster = member::roster(store)?;
        if !roster.is_lead(device) || roster.all_have_the_key() {
            return Ok(roster);
        }
        member::mend_epoch(store, me, now_ms)?;
        member::roster(store)
    })?;
    at.report.removed = at.roster.members.get(&device).is_some_and(|member| member.removed.is_some());
    let erased = give::erase(at)?;
    at.report.erased.extend(erased);
    Ok(())
}
