//! Killed as it makes any of its system calls, the program loses no entry that it acknowledged, and none is there by halves.
//!
//! A scripted birth is played once under strace, which lists its calls; then again for each of them, from the opening on,
//! and killed as it makes it. `SECUNDINE_EVERY` sets at which of the calls: 1 is every one.

#![cfg(target_os = "linux")]
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::print_stderr,
    reason = "a test may stop at the first surprise, and tells its figures"
)]

mod chance;

use std::collections::BTreeMap;
use std::fs;
use std::io::{BufRead, BufReader};
use std::os::unix::process::ExitStatusExt;
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::Arc;

use secundine_domain::entry::{Amendment, BirthId, EntryId};
use secundine_domain::fact::{Fact, Practice};
use secundine_session::api::{Request, Response};
use secundine_session::clock::SystemClock;
use secundine_session::{Paths, Session};
use secundine_store::{Store, version};
use tempfile::TempDir;

/// How far the clock after a kill may be from the one read here, ms.
const CLOCK_MS: i64 = 1_000;
/// The script marks the baby so long before its touch is answered, and the placenta, ms.
const BORN_AGO_MS: i64 = 90_000;
const PLACENTA_AGO_MS: i64 = 30_000;

#[test]
fn killed_at_any_system_call_of_a_birth_nothing_acknowledged_is_lost() {
    let every = chance::variable("SECUNDINE_EVERY").unwrap_or(8);
    let template = Template::new();
    let calls = template.calls();
    let whole = template.play(None);
    let reference = Reference { written: whole.open(&template.recovery), steps: whole.steps() };
    assert_eq!(reference.written.len(), reference.after(reference.steps.len()), "the script was played to its end");
    let (mut kills, mut acknowledged) = (0, 0);
    for call in calls.iter().step_by(every) {
        let played = template.play(Some(call));
        kills += usize::from(played.killed);
        acknowledged += played.steps().iter().sum::<usize>();
        played.check(&template.recovery, &reference);
    }
    eprintln!("{} system calls, {kills} kills, {acknowledged} entries acknowledged, 0 lost", calls.len());
    let played = calls.len().div_ceil(every);
    assert!(calls.len() > 300 && kills * 10 >= played * 9, "{kills} kills of {played}: the calls are not the same each time");
}

/// One call of the program: its name, and which of those of this name it is.
#[derive(Debug)]
struct Call {
    name: String,
    nth: usize,
}

/// An entry without the times at which it was written: the same each time the script is played.
#[derive(Clone, Debug, PartialEq)]
struct Written {
    id: EntryId,
    birth: BirthId,
    author: String,
    fact: Fact,
    amends: Option<Amendment>,
}

/// What the script writes when it is played to its end.
struct Reference {
    written: Vec<Written>,
    steps: Vec<usize>,
}

impl Reference {
    /// How many entries there are after so many steps. The practice's own description is the first.
    fn after(&self, steps: usize) -> usize {
        1 + self.steps.iter().take(steps).sum::<usize>()
    }
}

/// A practice that was founded, and is closed: each time the script is played on a copy.
struct Template {
    folder: TempDir,
    recovery: String,
}

impl Template {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let practice = Practice {
            name: "Heron House".to_owned(),
            practitioner: "Ida".to_owned(),
            role: "midwife".to_owned(),
            protocol: Some("who".to_owned()),
        };
        let mut session = session(folder.path());
        let found = Request::CreatePractice { practice, passphrase: "seven quiet herons".to_owned() };
        let Response::CreatePractice { recovery } = session.call(found).unwrap() else { unreachable!() };
        session.call(Request::Lock).unwrap();
        Self { folder, recovery: recovery.identity }
    }

    fn copy(&self) -> TempDir {
        let copy = tempfile::tempdir().unwrap();
        fs::create_dir(copy.path().join("data")).unwrap();
        for file in fs::read_dir(self.folder.path().join("data")).unwrap().map(|file| file.unwrap()) {
            fs::copy(file.path(), copy.path().join("data").join(file.file_name())).unwrap();
        }
        copy
    }

    fn scribe(&self, folder: &Path, options: &[String]) -> Command {
        let mut strace = Command::new("strace");
        strace.args(["-f", "-qq"]).args(options).arg(env!("CARGO_BIN_EXE_scribe")).arg(folder);
        strace.args([&self.recovery, "script"]);
        strace
    }

    /// The calls from the opening on, in their order.
    fn calls(&self) -> Vec<Call> {
        let folder = self.copy();
        let trace = folder.path().join("trace");
        let options = ["-o".to_owned(), trace.to_str().unwrap().to_owned()];
        let output = self.scribe(folder.path(), &options).output();
        let output = output.unwrap_or_else(|error| unreachable!("strace cannot be run ({error}): install the package `strace`"));
        assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
        let mut made: BTreeMap<String, usize> = BTreeMap::new();
        let mut calls = Vec::new();
        let mut opening = false;
        for line in fs::read_to_string(trace).unwrap().lines() {
            assert!(!line.contains("<unfinished") && !line.contains("resumed>"), "the script runs in one thread: {line}");
            let call = line.split_once(' ').map(|(_, call)| call.trim_start());
            let Some((name, arguments)) = call.and_then(|call| call.split_once('(')) else { continue };
            let nth = made.entry(name.to_owned()).or_default();
            *nth += 1;
            opening |= name == "write" && arguments.contains("opening");
            if opening && name != "exit_group" {
                calls.push(Call { name: name.to_owned(), nth: *nth });
            }
        }
        calls
    }

    /// Plays the script, and kills it as it makes this call.
    fn play(&self, at: Option<&Call>) -> Played {
        let folder = self.copy();
        let mut options = ["-o", "/dev/null", "-e"].map(str::to_owned).to_vec();
        options.push(at.map_or("trace=none".to_owned(), |Call { name, .. }| format!("trace={name}")));
        options.extend(
            at.iter().flat_map(|Call { name, nth }| ["-e".to_owned(), format!("inject={name}:signal=SIGKILL:when={nth}")]),
        );
        let mut scribe = self.scribe(folder.path(), &options).stdout(Stdio::piped()).spawn().unwrap();
        let mut out = BufReader::new(scribe.stdout.take().unwrap());
        let (mut heard, mut line) = (Vec::new(), String::new());
        // A line that the kill cut short was not acknowledged.
        while out.read_line(&mut line).is_ok_and(|length| length > 0) && line.ends_with('\n') {
            heard.push(Heard { at_ms: boottime_ms(), words: line.split_whitespace().map(str::to_owned).collect() });
            line.clear();
        }
        let status = scribe.wait().unwrap();
        assert!(status.success() || status.signal() == Some(9), "{at:?}: {status:?}");
        let place = at.map_or("whole".to_owned(), |call| format!("{call:?}"));
        Played { folder, killed: !status.success(), heard, place }
    }
}

/// A line of the scribe, and when it came on the clock that runs through suspend.
struct Heard {
    at_ms: i64,
    words: Vec<String>,
}

/// A script that was played, to its end or until it was killed.
struct Played {
    folder: TempDir,
    killed: bool,
    heard: Vec<Heard>,
    place: String,
}

impl Played {
    /// How many entries each acknowledged step wrote: a birth comes with its registration and its protocol.
    fn steps(&self) -> Vec<usize> {
        self.heard.iter().filter_map(|line| step(&line.words)).collect()
    }

    /// Opens what is there, and gives every entry.
    fn open(&self, recovery: &str) -> Vec<Written> {
        let place = &self.place;
        let mut session = session(self.folder.path());
        session.call(Request::Unlock { passphrase: recovery.to_owned() }).unwrap();
        let Response::Verify(verified) = session.call(Request::Verify).unwrap() else { unreachable!() };
        assert!(verified.ok, "{place}: {verified:?}");
        self.clock_is_right(&mut session);
        session.call(Request::Lock).unwrap();
        let inbox = self.folder.path().join("data/inbox");
        let left = [inbox.clone(), inbox.join("damaged")].map(|folder| fs::read_dir(folder).into_iter().flatten());
        let left = left.into_iter().flatten().map(|file| file.unwrap()).filter(|file| file.file_type().unwrap().is_file());
        // Between its making and its first record a file is empty, and is kept as one that was cut short.
        let held = left.filter(|file| file.file_name() != "lock" && file.metadata().unwrap().len() > 0).count();
        assert_eq!(held, 0, "{place}: all of it is brought in");
        written(&self.folder.path().join("data"), recovery)
    }

    /// Every acknowledged entry is there once; of the interrupted step all entries, or none.
    fn check(&self, recovery: &str, reference: &Reference) {
        let (written, acknowledged) = (self.open(recovery), self.steps().len());
        let wanted = [acknowledged, acknowledged + 1].map(|steps| reference.after(steps));
        assert!(wanted.contains(&written.len()), "{}: {wanted:?} entries, not {written:#?}", self.place);
        assert_eq!(written, reference.written[..written.len()], "{}", self.place);
    }

    fn clock_is_right(&self, session: &mut Session) {
        let Some(born) = self.heard.iter().find(|line| line.words[0] == "born") else { return };
        let birth = BirthId(born.words[1].parse().unwrap());
        let asked_ms = boottime_ms();
        let Response::Birth(view) = session.call(Request::Birth { birth }).unwrap() else { unreachable!() };
        let odd: Vec<_> = view.timeline.iter().flat_map(|line| &line.oddities).collect();
        assert!(odd.is_empty(), "{}: {odd:?}", self.place);
        let stage = view.third_stage.unwrap();
        let placenta = self.heard.iter().find(|line| line.words.last().is_some_and(|kind| kind == "placenta_born"));
        let until_ms = match placenta {
            Some(placenta) => placenta.at_ms - PLACENTA_AGO_MS,
            None if stage.running => asked_ms,
            // On disk but not acknowledged: it came at a moment that nobody else knows.
            None => return,
        };
        assert_eq!(stage.running, placenta.is_none(), "{}", self.place);
        let off = stage.elapsed_ms - (until_ms - (born.at_ms - BORN_AGO_MS));
        assert!(off.abs() <= CLOCK_MS, "{}: the clock is off by {off} ms", self.place);
    }
}

/// How many entries a line of the scribe acknowledges.
fn step(words: &[String]) -> Option<usize> {
    match (words[0].as_str(), words.last()?.as_str()) {
        ("born", _) | ("locked", "baby_born") => Some(3),
        ("ack" | "locked", _) => Some(1),
        _ => None,
    }
}

/// Every entry of the store in the order of writing. A signature has signed what was there before it.
fn written(data: &Path, recovery: &str) -> Vec<Written> {
    let store = Store::open_with_identity(data, &recovery.to_owned().into()).unwrap();
    let births = store.births().unwrap().into_iter().map(|birth| birth.id);
    let mut written = Vec::new();
    for birth in births.chain([BirthId::PRACTICE]) {
        let entries = store.entries(birth).unwrap();
        for (before, stored) in entries.iter().enumerate() {
            let entry = stored.entry.clone();
            let fact = match entry.fact {
                Fact::Signed { name, role, version: signed } => {
                    assert_eq!(signed, version(&entries[..before]));
                    Fact::Signed { name, role, version: String::new() }
                }
                Fact::BirthRegistered { rehearsal, .. } => Fact::BirthRegistered { label: String::new(), rehearsal },
                fact => fact,
            };
            written.push(Written { id: entry.id, birth, author: entry.author, fact, amends: entry.amends });
        }
    }
    written.sort_by_key(|written| written.id);
    written
}

fn session(folder: &Path) -> Session {
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    Session::new(paths, Arc::new(SystemClock::new()))
}

fn boottime_ms() -> i64 {
    let time = rustix::time::clock_gettime(rustix::time::ClockId::Boottime);
    time.tv_sec * 1000 + time.tv_nsec / 1_000_000
}
