//! Killed at any moment, the program loses no entry that it acknowledged, and its clock runs on.
//!
//! `SECUNDINE_KILLS` and `SECUNDINE_SEED` set how often and at which moments.

#![cfg(target_os = "linux")]
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::print_stderr,
    reason = "a test may stop at the first surprise, and tells its seed"
)]

mod chance;

use std::collections::{BTreeMap, BTreeSet};
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::Arc;
use std::sync::mpsc::{Receiver, channel};
use std::time::Duration;

use chance::{Chance, seed_of_now, variable};
use secundine_domain::entry::EntryId;
use secundine_domain::fact::Practice;
use secundine_session::api::{Request, Response};
use secundine_session::clock::SystemClock;
use secundine_session::{Paths, Session};

/// How far the clock after a kill may be from the one read here, ms: the pipe and a busy machine stand between the two.
const CLOCK_MS: i64 = 1_000;

#[test]
fn no_acknowledged_entry_is_lost_and_the_clock_runs_on() {
    let kills: u32 = variable("SECUNDINE_KILLS").unwrap_or(100);
    let seed = variable("SECUNDINE_SEED").unwrap_or_else(seed_of_now);
    eprintln!("SECUNDINE_KILLS={kills} SECUNDINE_SEED={seed}");
    let folder = tempfile::tempdir().unwrap();
    let recovery = found(folder.path());
    let mut chance = Chance(seed);
    let mut known = Known::default();
    for round in 0..kills {
        let killed = until_killed(folder.path(), &recovery, round, &known, &mut chance);
        known.learn(&killed);
    }
    eprintln!("{} entries acknowledged in {} births, {} read back", known.count(), known.births.len(), known.read_back);
    assert!(known.count() > kills as usize, "too little was written to be a test: {}", known.count());
    assert!(known.read_back > kills / 4, "too little was read back: {}", known.read_back);
    everything_is_there(folder.path(), recovery, &known);
}

/// A line of the scribe, and when it came on the clock that runs through suspend.
struct Heard {
    at_ms: i64,
    words: Vec<String>,
}

/// What the scribe acknowledged of one birth.
#[derive(Default)]
struct Acknowledged {
    born_ms: i64,
    placenta_ms: Option<i64>,
    entries: BTreeSet<EntryId>,
}

#[derive(Default)]
struct Known {
    births: BTreeMap<EntryId, Acknowledged>,
    /// The births that the next scribe is asked about: the first of all, and those written since the last report.
    ask: BTreeSet<EntryId>,
    read_back: u32,
}

impl Known {
    fn count(&self) -> usize {
        self.births.values().map(|birth| birth.entries.len()).sum()
    }

    /// Checks the report that a scribe began with, if it got that far, and takes in what it acknowledged.
    fn learn(&mut self, heard: &[Heard]) {
        if heard.iter().any(|line| line.words[0] == "reported") {
            for birth in std::mem::take(&mut self.ask) {
                self.check(birth, heard);
            }
            self.ask.extend(self.births.first_key_value().map(|(birth, _)| *birth));
        }
        for line in heard.iter().filter(|line| ["born", "ack"].contains(&line.words[0].as_str())) {
            let birth: EntryId = line.words[1].parse().unwrap();
            let acknowledged = self.births.entry(birth).or_default();
            acknowledged.entries.insert(line.words[2].parse().unwrap());
            match line.words[3].as_str() {
                "baby_born" => acknowledged.born_ms = line.at_ms,
                "placenta_born" => acknowledged.placenta_ms = Some(line.at_ms),
                _ => {}
            }
            self.ask.insert(birth);
        }
    }

    fn check(&mut self, birth: EntryId, heard: &[Heard]) {
        let told =
            |word: &'static str| heard.iter().filter(move |line| line.words[0] == word && line.words[1] == birth.to_string());
        let acknowledged = &self.births[&birth];
        let seen: BTreeMap<EntryId, &str> =
            told("seen").map(|line| (line.words[2].parse().unwrap(), line.words[3].as_str())).collect();
        let missing: Vec<_> = acknowledged.entries.iter().filter(|entry| !seen.contains_key(entry)).collect();
        assert!(missing.is_empty(), "lost of birth {birth}: {missing:?}");
        for written_with_it in ["birth_registered", "protocol_chosen"] {
            assert!(seen.values().any(|kind| *kind == written_with_it), "{birth} has no {written_with_it}");
        }
        let clock = told("clock").next().unwrap();
        let (elapsed_ms, running): (i64, bool) = (clock.words[2].parse().unwrap(), clock.words[3].parse().unwrap());
        let placenta = seen.values().any(|kind| *kind == "placenta_born");
        assert_eq!(running, !placenta, "{birth}");
        let until = if placenta { acknowledged.placenta_ms } else { Some(clock.at_ms) };
        // A placenta that is on disk but was not acknowledged came at a moment that nobody else knows.
        if let Some(until) = until {
            let off = elapsed_ms - (until - acknowledged.born_ms);
            assert!(off.abs() <= CLOCK_MS, "the clock of {birth} is off by {off} ms");
        }
        self.read_back += 1;
    }
}

/// Starts a scribe, kills it at a moment of chance, and gives every whole line that it wrote.
fn until_killed(folder: &Path, recovery: &str, round: u32, known: &Known, chance: &mut Chance) -> Vec<Heard> {
    let mut scribe = Command::new(env!("CARGO_BIN_EXE_scribe"))
        .arg(folder)
        .args([recovery, &round.to_string()])
        .args(known.ask.iter().map(EntryId::to_string))
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let lines = listen(&mut scribe);
    let mut heard = Vec::new();
    // Now and then while it starts and opens the practice; mostly while it writes.
    if chance.below(8) == 0 {
        std::thread::sleep(Duration::from_micros(chance.below(500_000)));
    } else {
        while let Ok(line) = lines.recv() {
            let reported = line.words[0] == "reported";
            heard.push(line);
            if reported {
                break;
            }
        }
        std::thread::sleep(Duration::from_micros(chance.below(60_000)));
    }
    assert!(scribe.try_wait().unwrap().is_none(), "the scribe ended by itself in round {round}");
    scribe.kill().unwrap();
    scribe.wait().unwrap();
    heard.extend(lines);
    heard
}

/// Reads each line as it comes. One that the kill cut short was not acknowledged.
fn listen(scribe: &mut Child) -> Receiver<Heard> {
    let mut out = BufReader::new(scribe.stdout.take().unwrap());
    let (sender, receiver) = channel();
    std::thread::spawn(move || {
        let mut line = String::new();
        while out.read_line(&mut line).is_ok_and(|length| length > 0) && line.ends_with('\n') {
            let words = line.split_whitespace().map(str::to_owned).collect();
            if sender.send(Heard { at_ms: boottime_ms(), words }).is_err() {
                break;
            }
            line.clear();
        }
    });
    receiver
}

/// Founds a practice, and gives what opens it quickly.
fn found(folder: &Path) -> String {
    let practice = Practice {
        name: "Heron House".to_owned(),
        practitioner: "Ida".to_owned(),
        role: "midwife".to_owned(),
        protocol: Some("who".to_owned()),
    };
    let mut session = session(folder);
    let found = Request::CreatePractice { practice, passphrase: "seven quiet herons".to_owned() };
    let Response::CreatePractice { recovery } = session.call(found).unwrap() else { unreachable!() };
    session.call(Request::Lock).unwrap();
    recovery.identity
}

/// At the end: every acknowledged entry of every birth, and no number missing between the first and the last.
fn everything_is_there(folder: &Path, recovery: String, known: &Known) {
    let mut session = session(folder);
    session.call(Request::Unlock { passphrase: recovery }).unwrap();
    let Response::Births { births, count, .. } = session.call(Request::Births { skip: 0, take: u32::MAX }).unwrap() else {
        unreachable!()
    };
    assert_eq!(births.len(), count as usize);
    let mut found = BTreeSet::new();
    for line in births {
        let Response::Birth(view) = session.call(Request::Birth { birth: line.birth }).unwrap() else { unreachable!() };
        found.extend(view.timeline.iter().map(|line| line.entry));
        let odd: Vec<_> = view.timeline.iter().flat_map(|line| &line.oddities).collect();
        assert!(odd.is_empty(), "{odd:?}");
    }
    let lost: Vec<_> = known.births.values().flat_map(|birth| &birth.entries).filter(|entry| !found.contains(entry)).collect();
    assert!(lost.is_empty(), "{lost:?}");
    // The practice's own description is number 1.
    let numbers: Vec<u64> = found.iter().map(|entry| entry.n).collect();
    assert_eq!(numbers, (2..2 + numbers.len() as u64).collect::<Vec<_>>());
}

fn session(folder: &Path) -> Session {
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    Session::new(paths, Arc::new(SystemClock::new()))
}

fn boottime_ms() -> i64 {
    let time = rustix::time::clock_gettime(rustix::time::ClockId::Boottime);
    time.tv_sec * 1000 + time.tv_nsec / 1_000_000
}
