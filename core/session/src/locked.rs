//! Marks while the practice is locked: kept in the inbox, which nobody can read until it is unlocked, and brought into
//! charts then.
//!
//! In memory stands only what was marked since the lock, and of a birth whose third stage ran at the lock its marks,
//! without name, label or author.

mod bring_in;
mod elsewhere;
mod record;

use std::path::Path;

use secundine_domain::chart::{Chart, State, fold};
use secundine_domain::entry::{Amendment, BirthId, DeviceId, Entry, EntryId};
use secundine_domain::fact::Fact;
use secundine_domain::time::{Occurred, Stamp};
use secundine_store::{Inbox, InboxTail, Waiting};

pub(crate) use bring_in::{RECENT_MS, bring_in};
pub(crate) use elsewhere::keep_elsewhere;

use crate::api::{ApiError, ErrorCode, LockedMark, LockedView};
use crate::clock::earlier;
use crate::views;
use record::Record;

/// A record of the inbox as it would be written again; none for bytes that are no record.
#[cfg(feature = "fuzzing")]
pub(crate) fn rewritten(bytes: &[u8]) -> Option<Vec<u8>> {
    Record::decode(bytes).ok()?.encode().ok().map(|written| written.to_vec())
}

/// Stands for a moment that is named later. Stored, so in no catalogue.
pub(crate) const MOMENT: &str = "Moment marked while locked";
/// Why a mark was taken back. Stored, as the page's own undo stores it.
pub(crate) const UNDONE: &str = "Undone at once";

/// Not a device: entries that are not written yet stand under it.
const NOWHERE: DeviceId = DeviceId([0; 16]);
/// The birth that marks belong to as long as it has no name of its own.
const HERE: BirthId = BirthId(EntryId { device: NOWHERE, n: 1 });

/// A third stage that ran when the practice was locked.
pub(crate) struct Running {
    birth: BirthId,
    /// Its marks as they stood, without author.
    marks: Vec<Entry>,
}

impl Running {
    /// The marks of a birth, where its third stage runs.
    pub(crate) fn of(birth: BirthId, chart: &Chart, now: &Stamp) -> Option<Self> {
        chart.third_stage(now).filter(|stage| stage.to.is_none())?;
        let standing =
            chart.lines.iter().filter(|line| line.state() != State::Retracted).map(|line| (line.first.id, line.current()));
        let marks = standing.filter(|(_, entry)| entry.fact.is_mark()).map(|(id, entry)| Entry {
            id,
            birth: HERE,
            author: String::new(),
            amends: None,
            ..entry.clone()
        });
        Some(Self { birth, marks: marks.collect() })
    }
}

/// The inbox as this run of the program writes to it.
pub(crate) struct Writer {
    inbox: Inbox,
    /// What lay in it before.
    waiting: Waiting,
}

impl Writer {
    pub(crate) fn new(practice: &Path) -> Self {
        Self { inbox: Inbox::new(practice), waiting: Inbox::waiting(practice) }
    }
}

/// The practice while it is locked.
pub(crate) struct Locked {
    running: Option<Running>,
    /// What was marked since the lock.
    made: Vec<Entry>,
    writer: Writer,
    failed: bool,
}

impl Locked {
    pub(crate) fn new(running: Option<Running>, writer: Writer) -> Self {
        Self { running, made: Vec::new(), writer, failed: false }
    }

    /// Keeps a mark, and names it among those since the lock.
    ///
    /// # Errors
    /// [`ErrorCode::NotSaved`]: it is NOT on disk.
    pub(crate) fn mark(&mut self, mark: LockedMark, ago_ms: u32, now: &Stamp) -> Result<EntryId, ApiError> {
        let fact = self.fact(mark);
        fact.check()?;
        let occurred = Occurred::Marked(earlier(now.clone(), i64::from(ago_ms)));
        self.keep(fact, occurred, None, now)
    }

    /// Takes the last mark back that was made since the lock and still stands.
    ///
    /// # Errors
    /// Not found where there is none; [`ErrorCode::NotSaved`]: it still stands.
    pub(crate) fn undo(&mut self, now: &Stamp) -> Result<(), ApiError> {
        self.take_back(|_| true, now)
    }

    /// Takes one mark back that was made since the lock, where it still stands.
    ///
    /// # Errors
    /// As for [`Locked::undo`].
    pub(crate) fn undo_mark(&mut self, mark: EntryId, now: &Stamp) -> Result<(), ApiError> {
        self.take_back(|entry| entry.id == mark, now)
    }

    fn take_back(&mut self, is: impl Fn(&Entry) -> bool, now: &Stamp) -> Result<(), ApiError> {
        let chart = self.chart();
        let standing = |entry: &&Entry| entry.amends.is_none() && !retracted(&chart, entry.id) && is(entry);
        let last = self.made.iter().rev().find(standing);
        let last = last.ok_or_else(|| ApiError::new(ErrorCode::NotFound, "error-no-entry"))?.clone();
        self.keep(Fact::Retracted, last.occurred.clone(), Some(last), now).map(drop)
    }

    fn keep(&mut self, fact: Fact, occurred: Occurred, undoes: Option<Entry>, now: &Stamp) -> Result<EntryId, ApiError> {
        let birth = self.running.as_ref().map(|running| running.birth);
        let amends = undoes.as_ref().map(|entry| Amendment { entry: entry.id, reason: UNDONE.to_owned() });
        let record = Record::new(birth, fact.clone(), occurred.clone(), now.clone(), undoes);
        let written = self.writer.inbox.append(&record.encode().map_err(|_| ApiError::internal())?);
        self.failed = written.is_err();
        written?;
        let id = EntryId { device: NOWHERE, n: self.made.len() as u64 + 1 };
        self.made.push(Entry { id, birth: HERE, author: String::new(), occurred, recorded: now.clone(), fact, amends });
        Ok(id)
    }

    fn fact(&self, mark: LockedMark) -> Fact {
        match mark {
            LockedMark::BabyBorn => Fact::BabyBorn { baby: views::next_baby(&self.chart()) },
            LockedMark::CordPulsationStopped { baby } => Fact::CordPulsationStopped { baby },
            LockedMark::CordClamped { baby } => Fact::CordClamped { baby },
            LockedMark::CordCut { baby } => Fact::CordCut { baby },
            LockedMark::PlacentaBorn { babies } => Fact::PlacentaBorn { babies },
            LockedMark::MembranesBorn { babies } => Fact::MembranesBorn { babies },
            LockedMark::Moment => Fact::Noted { text: MOMENT.to_owned() },
        }
    }

    /// The marks since the lock, and before them those of the birth whose third stage ran.
    pub(crate) fn chart(&self) -> Chart {
        let before = self.running.iter().flat_map(|running| &running.marks);
        fold(HERE, before.chain(&self.made))
    }

    pub(crate) fn view(&self, now: &Stamp) -> LockedView {
        let chart = self.chart();
        let made: Vec<_> = self.made.iter().filter(|entry| entry.amends.is_none()).collect();
        let marks = made.iter().map(|entry| views::locked_line(&chart, entry, retracted(&chart, entry.id))).collect();
        views::locked(&chart, marks, self.writer.waiting, self.failed, now)
    }

    /// Lets go of everything; tells how far the inbox was written.
    pub(crate) fn end(self) -> Option<InboxTail> {
        self.writer.inbox.tail()
    }
}

fn retracted(chart: &Chart, entry: EntryId) -> bool {
    chart.lines.iter().any(|line| line.first.id == entry && line.state() == State::Retracted)
}
