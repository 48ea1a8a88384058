//! What is held in memory about sending: what is under way, and why something failed. What waits stands in the practice's entries.

use std::collections::{BTreeMap, VecDeque};
use std::sync::Arc;

use secundine_domain::entry::BirthId;
use secundine_domain::message::Message;
use secundine_domain::time::{Elapsed, Occurred, Stamp};

use super::answer::{Again, Failure};
use super::letter::{Going, Letter};

/// The pause after the first failure, ms; each further one doubles it (ours).
const FIRST_PAUSE_MS: i64 = 5 * 60_000;
/// The longest pause, ms (ours).
const LONGEST_PAUSE_MS: i64 = 60 * 60_000;

/// What a thread of its own is to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Run {
    /// Sends what stands in the row.
    Send,
    /// Asks the server what it is.
    Try,
}

/// The last failure of a birth.
#[derive(Debug)]
pub(crate) struct Failed {
    pub failure: Failure,
    pub at: Stamp,
    times: u32,
}

/// Whether the server was asked what it is.
#[derive(Clone, Debug, Default)]
pub(crate) enum Tried {
    #[default]
    Not,
    Asked,
    Going,
    Told(Result<Message, Message>),
}

/// What is under way.
#[derive(Debug, Default)]
pub(crate) struct Outbox {
    row: VecDeque<BirthId>,
    /// A thread works through the row.
    busy: bool,
    going: Option<(BirthId, Arc<Going>)>,
    failed: BTreeMap<BirthId, Failed>,
    /// BCP 47 tag of the language to write in.
    pub language: String,
    pub tried: Tried,
}

impl Outbox {
    /// Puts a birth into the row, once.
    pub fn put(&mut self, birth: BirthId) {
        if !self.row.contains(&birth) && self.going(birth).is_none() {
            self.row.push_back(birth);
        }
    }

    /// Whether a birth is sent without anybody asking again: what was refused is not, what failed otherwise after a pause.
    pub fn is_due(&self, birth: BirthId, now: &Stamp) -> bool {
        let Some(Failed { failure, at, times }) = self.failed.get(&birth) else { return true };
        match failure.again {
            Again::AtOnce => true,
            Again::ByHand => false,
            Again::Later => {
                let since = Elapsed::between(&Occurred::Marked(at.clone()), &Occurred::Marked(now.clone())).ms;
                let doubled = FIRST_PAUSE_MS.checked_shl(times.saturating_sub(1)).unwrap_or(LONGEST_PAUSE_MS);
                // A clock that was set back is no reason to wait for ever.
                since < 0 || since >= doubled.clamp(FIRST_PAUSE_MS, LONGEST_PAUSE_MS)
            }
        }
    }

    /// What now has to run that does not.
    pub fn begin(&mut self) -> Vec<Run> {
        let mut runs = Vec::new();
        if !self.busy && !self.row.is_empty() {
            self.busy = true;
            runs.push(Run::Send);
        }
        if matches!(self.tried, Tried::Asked) {
            self.tried = Tried::Going;
            runs.push(Run::Try);
        }
        runs
    }

    /// That something could not run, or came to its end.
    pub fn end(&mut self, run: Run) {
        match run {
            Run::Send => self.busy = false,
            Run::Try => self.tried = Tried::Not,
        }
    }

    pub fn next(&mut self) -> Option<BirthId> {
        self.row.pop_front()
    }

    pub fn set_off(&mut self, letter: &Letter) {
        self.going = Some((letter.birth, Arc::clone(&letter.going)));
    }

    pub fn arrived(&mut self) {
        self.going = None;
    }

    pub fn going(&self, birth: BirthId) -> Option<&Going> {
        self.going.as_ref().filter(|(going, _)| *going == birth).map(|(_, going)| going.as_ref())
    }

    pub fn failed(&self, birth: BirthId) -> Option<&Failed> {
        self.failed.get(&birth)
    }

    pub fn fail(&mut self, birth: BirthId, failure: Failure, at: Stamp) {
        let times = self.failed.get(&birth).map_or(0, |before| before.times).saturating_add(1);
        self.failed.insert(birth, Failed { failure, at, times });
    }

    /// A birth is to be begun with anew, or is done with.
    pub fn clear(&mut self, birth: BirthId) {
        self.row.retain(|other| *other != birth);
        self.failed.remove(&birth);
    }

    /// The practice was closed: what a server said may hold names. What is under way comes to its end by itself.
    pub fn forget(&mut self) {
        self.row.clear();
        self.failed.clear();
        self.tried = Tried::Not;
    }
}

#[cfg(test)]
mod tests {
    use secundine_domain::entry::{DeviceId, EntryId};
    use secundine_domain::time::Boot;

    use super::*;

    #[test]
    fn the_pause_grows_and_a_refusal_waits_for_a_hand() {
        let birth = BirthId(EntryId { device: DeviceId([1; 16]), n: 1 });
        let minute = |minutes: i64| Stamp {
            wall_ms: minutes * 60_000,
            offset_min: 0,
            zone: None,
            boot: Some(Boot { id: "a".to_owned(), since_ms: minutes * 60_000 }),
        };
        let mut outbox = Outbox::default();
        let failure = |again| Failure { said: Message::new("x"), entries: Vec::new(), more: 0, again };
        assert!(outbox.is_due(birth, &minute(0)));
        for pause in [5, 10, 20, 40, 60, 60] {
            outbox.fail(birth, failure(Again::Later), minute(100));
            assert!(!outbox.is_due(birth, &minute(100 + pause - 1)), "{pause}");
            assert!(outbox.is_due(birth, &minute(100 + pause)), "{pause}");
        }
        outbox.fail(birth, failure(Again::AtOnce), minute(100));
        assert!(outbox.is_due(birth, &minute(100)));
        outbox.fail(birth, failure(Again::ByHand), minute(100));
        assert!(!outbox.is_due(birth, &minute(10_000)));
        outbox.clear(birth);
        assert!(outbox.is_due(birth, &minute(100)));
    }
}
