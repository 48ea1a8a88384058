//! What the shim shall do, and what it has seen: one plan for the whole process.

use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Mutex, MutexGuard, PoisonError};

/// A call that SQLite makes on a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Call {
    /// Opening it.
    Open,
    /// Reading from it.
    Read,
    /// Writing to it.
    Write,
    /// Putting it on disk.
    Sync,
    /// Cutting it.
    Truncate,
    /// Asking for its length.
    Size,
    /// Removing it.
    Delete,
}

/// Every call.
pub const CALLS: [Call; 7] = [Call::Open, Call::Read, Call::Write, Call::Sync, Call::Truncate, Call::Size, Call::Delete];

/// How a call fails.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Failure {
    /// The device says no, and nothing was done.
    Io,
    /// There is no room, and nothing was done.
    Full,
    /// The device says no after half of the bytes were written.
    Short,
    /// There is no room after half of the bytes were written.
    ShortFull,
    /// A sync fails, and the system forgets all that was to be synced.
    Lost,
}

/// One fault.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Which call fails.
    pub call: Call,
    /// The first that fails, counted from 1.
    pub n: u64,
    /// Whether all after it fail too.
    pub lasting: bool,
    /// How.
    pub failure: Failure,
}

/// A part of the store that SQLite writes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Part {
    /// The database.
    Database,
    /// The write-ahead log.
    Log,
    /// The rollback journal, used until the write-ahead log is.
    Journal,
    /// Anything else.
    Other,
}

/// Something that reached a file, or that the one who plays a birth noted between.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Event {
    /// Bytes were written at a place.
    Write(Part, u64, Vec<u8>),
    /// The file got this length.
    Truncate(Part, u64),
    /// The file's name was removed.
    Delete(Part),
    /// All that was written to it is on disk.
    Sync(Part),
    /// The names in the folder are on disk: what was removed stays so.
    Folder,
    /// So many entries were handed to the store.
    Tried(usize),
    /// So many entries were acknowledged; the head reads like this.
    Acknowledged(usize, Vec<u8>),
}

#[derive(Default)]
struct Plan {
    fault: Option<Fault>,
    counts: [u64; CALLS.len()],
    struck: u64,
    trace: Option<Vec<Event>>,
}

static PLAN: Mutex<Plan> = Mutex::new(Plan { fault: None, counts: [0; CALLS.len()], struck: 0, trace: None });
/// Whether the plan is to be asked at all.
static AWAKE: AtomicBool = AtomicBool::new(false);

fn plan() -> MutexGuard<'static, Plan> {
    PLAN.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Begins to count calls, and lets this fault strike.
pub fn strike(fault: Option<Fault>) {
    *plan() = Plan { fault, ..Plan::default() };
    AWAKE.store(true, Ordering::SeqCst);
}

/// Begins to write down what reaches the files.
pub fn record() {
    *plan() = Plan { trace: Some(Vec::new()), ..Plan::default() };
    AWAKE.store(true, Ordering::SeqCst);
}

/// Goes to sleep. Calls pass, and none waits for the disk. Gives how often the fault struck, and the trace.
pub fn rest() -> (u64, Vec<Event>) {
    AWAKE.store(false, Ordering::SeqCst);
    let seen = std::mem::take(&mut *plan());
    (seen.struck, seen.trace.unwrap_or_default())
}

/// Whether nothing is planned.
pub(crate) fn resting() -> bool {
    !AWAKE.load(Ordering::SeqCst)
}

/// How many calls that change a file were made.
#[must_use]
pub fn changes() -> u64 {
    let counts = plan().counts;
    [Call::Write, Call::Sync, Call::Truncate, Call::Delete].iter().filter_map(|call| counts.get(*call as usize)).sum()
}

/// Counts a call; gives how it fails, if it does.
pub(crate) fn judge(call: Call) -> Option<Failure> {
    if resting() {
        return None;
    }
    let mut plan = plan();
    let count = plan.counts.get_mut(call as usize)?;
    *count += 1;
    let count = *count;
    let fault = plan.fault.filter(|fault| fault.call == call)?;
    let strikes = count == fault.n || fault.lasting && count > fault.n;
    plan.struck += u64::from(strikes);
    strikes.then_some(fault.failure)
}

/// Whether the bytes that are on disk have to be remembered, since a sync will lose the others.
pub(crate) fn forgets() -> bool {
    !resting() && plan().fault.is_some_and(|fault| fault.failure == Failure::Lost)
}

/// Writes an event down, where anybody asked for it.
pub fn note(event: impl FnOnce() -> Event) {
    if !resting()
        && let Some(trace) = &mut plan().trace
    {
        trace.push(event());
    }
}
