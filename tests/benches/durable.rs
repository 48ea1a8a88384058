//! From a tap to its durable acknowledgement, against what the disk itself takes.
//!
//! They are taken in turns in one process, so that they meet the same load; only their ratios tell something.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "a bench stops at the first surprise and prints what it finds"
)]

use std::fs::File;
use std::io::{Seek, SeekFrom, Write};
use std::path::Path;
use std::sync::Arc;
use std::time::{Duration, Instant};

use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Fact, Loss, Practice};
use secundine_domain::quantity::Volume;
use secundine_session::api::{At, BackupState, BackupsView, LockedMark, Request, Response};
use secundine_session::clock::SystemClock;
use secundine_session::{Paths, Session, SharedSession};
use secundine_store::{Inbox, Passphrase, Store};

const ROUNDS: usize = 2_000;
/// Rounds before the first that counts.
const WARM_UP: usize = 100;
/// An entry of a mark, as stored.
const ENTRY_BYTES: usize = 420;
/// A page of the database with its header in the log.
const FRAME_BYTES: usize = 4_096 + 24;
/// Frames after which the log is begun again, and from then on written in place.
const LOG_FRAMES: usize = 1_000;
/// A tap may take so many times as long as one frame that is appended.
const GOAL: f64 = 1.25;
/// A record of the inbox on disk: 1,024 bytes, its length and its tag.
const RECORD_BYTES: usize = 1_044;
/// Of which these are its length and its tag.
const OVERHEAD: usize = 20;
/// A record of the inbox may take so many times as long as the same bytes that are appended.
const INBOX_GOAL: f64 = 1.1;
/// Pictures in a backup, and the bytes of each.
const PICTURES: usize = 200;
const PICTURE_BYTES: usize = 3_000_000;
const PASSPHRASE: &str = "seven quiet herons";
/// Marks to a birth, or to a run of the program.
const MARKS: usize = 20;

fn main() {
    // Beside the build, which is on a disk, unlike many folders for passing files.
    let folder = tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap();
    let mut session = open(folder.path());
    taps(folder.path(), &mut session);
    session.call(Request::Lock).unwrap();
    marks(folder.path());
    drop(session);
    beside_a_backup(folder.path());
}

/// A tap in the open practice.
fn taps(folder: &Path, session: &mut Session) {
    let mut small = File::create(folder.join("small")).unwrap();
    let mut frame = File::create(folder.join("frame")).unwrap();
    let mut again = preallocated(&folder.join("again"));
    let mut birth = born(session);
    let mut times: [Vec<Duration>; 4] = Default::default();
    for round in 0..ROUNDS + WARM_UP {
        if round % MARKS == 0 {
            birth = born(session);
        }
        in_turns(&mut times, round, |which| match which {
            0 => tap(session, birth),
            1 => append(&mut small, &[7; ENTRY_BYTES]),
            2 => append(&mut frame, &[7; FRAME_BYTES]),
            _ => overwrite(&mut again, round),
        });
    }
    let names = ["tap, acknowledged", "420 B appended", "4,120 B appended", "4,120 B in place"];
    let [_, _, ratio, _] = told(names, times);
    let met = if ratio <= GOAL { "met" } else { "MISSED" };
    println!("goal: p50 at most {GOAL} times one frame: {met}");
}

/// A record of the inbox, and a mark while locked, which is one with its answer. The first of each run of the program begins
/// a file and does not count.
fn marks(folder: &Path) {
    let mut bare = File::create(folder.join("bare")).unwrap();
    let mut times: [Vec<Duration>; 3] = Default::default();
    let mut inbox = Inbox::new(&paths(folder).data);
    inbox.append(&[b' '; RECORD_BYTES - OVERHEAD]).unwrap();
    let mut session = locked(folder);
    for round in 0..ROUNDS + WARM_UP {
        if round % MARKS == 0 {
            session = locked(folder);
        }
        in_turns(&mut times, round, |which| match which {
            0 => inbox.append(&[b' '; RECORD_BYTES - OVERHEAD]).unwrap(),
            1 => append(&mut bare, &[7; RECORD_BYTES]),
            _ => mark(&mut session),
        });
    }
    let [_, ratio, _] = told(["record of the inbox", "1,044 B appended", "mark while locked"], times);
    let met = if ratio <= INBOX_GOAL { "met" } else { "MISSED" };
    println!("goal: p50 at most {INBOX_GOAL} times the same bytes appended: {met}");
}

/// A tap while a backup with pictures is made in its thread, against a tap of before.
fn beside_a_backup(folder: &Path) {
    let mut session = Session::new(paths(folder), Arc::new(SystemClock::new()));
    session.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    session.call(Request::Lock).unwrap();
    let store = Store::open(&paths(folder).data, Passphrase::from(PASSPHRASE.to_owned())).unwrap();
    for n in 0..PICTURES {
        store.keep_file(&vec![u8::try_from(n).unwrap(); PICTURE_BYTES]).unwrap();
    }
    store.close().unwrap();
    session.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    let birth = born(&mut session);
    let session = SharedSession::new(session);
    let tap = || {
        let fact = Fact::BloodLoss(Loss::Jug { volume: Volume::new(150).unwrap() });
        timed(|| drop(session.call(Request::Record { birth, fact, at: At::Now { ago_ms: 12 } }).unwrap()))
    };
    let alone: Vec<Duration> = (0..MARKS * 10).map(|_| tap()).collect();
    let (begun, mut beside) = (Instant::now(), Vec::new());
    session.call(Request::MakeBackup).unwrap();
    let made = loop {
        beside.push(tap());
        // Nobody taps faster, and one who did would only hold the backup up.
        std::thread::sleep(Duration::from_millis(10));
        match session.call(Request::Backups).unwrap() {
            Response::Backups(BackupsView { asked: Some(BackupState::Going { .. }), .. }) => {}
            Response::Backups(BackupsView { asked: Some(BackupState::Made(made)), .. }) => break made,
            other => unreachable!("{other:?}"),
        }
    };
    let took = begun.elapsed();
    println!("a backup of {} MB made in {:.2} s; taps beside it:", made.bytes / 1_000_000, took.as_secs_f64());
    for (name, mut times) in [("before it", alone), ("while it is made", beside)] {
        times.sort();
        let [p50, most] = [times[times.len() / 2], times[times.len() - 1]].map(|time| time.as_secs_f64() * 1e3);
        println!("{name:<20} {:>5} taps, p50 {p50:.2} ms, longest {most:.1} ms", times.len());
    }
}

/// Each once a round, beginning with another one each time: what comes before it leaves its traces in disk and caches.
fn in_turns<const N: usize>(times: &mut [Vec<Duration>; N], round: usize, mut work: impl FnMut(usize)) {
    for turn in 0..N {
        let which = (round + turn) % N;
        let taken = timed(|| work(which));
        if round >= WARM_UP {
            times[which].push(taken);
        }
    }
}

/// Prints p50 and p99 of each, and of the first against each; gives the ratios of p50.
fn told<const N: usize>(names: [&str; N], times: [Vec<Duration>; N]) -> [f64; N] {
    let found = times.map(|mut times| {
        times.sort();
        [times[times.len() / 2], times[times.len() * 99 / 100]].map(|time| time.as_secs_f64() * 1e6)
    });
    println!("{ROUNDS} rounds             p50 µs    p99 µs   times p50  times p99");
    let first = found[0];
    for (name, [p50, p99]) in names.iter().zip(found) {
        println!("{name:<20} {p50:>9.0} {p99:>9.0} {:>11.2} {:>10.2}", first[0] / p50, first[1] / p99);
    }
    found.map(|[p50, _]| first[0] / p50)
}

fn timed(work: impl FnOnce()) -> Duration {
    let start = Instant::now();
    work();
    start.elapsed()
}

fn append(file: &mut File, bytes: &[u8]) {
    file.write_all(bytes).unwrap();
    file.sync_data().unwrap();
}

/// A file as the log is once it was full: it does not grow any more.
fn preallocated(path: &Path) -> File {
    let mut file = File::create(path).unwrap();
    file.write_all(&vec![0; LOG_FRAMES * FRAME_BYTES]).unwrap();
    file.sync_all().unwrap();
    file
}

fn overwrite(file: &mut File, round: usize) {
    file.seek(SeekFrom::Start((round % LOG_FRAMES * FRAME_BYTES) as u64)).unwrap();
    append(file, &[7; FRAME_BYTES]);
}

fn tap(session: &mut Session, birth: BirthId) {
    let fact = Fact::BloodLoss(Loss::Jug { volume: Volume::new(150).unwrap() });
    session.call(Request::Record { birth, fact, at: At::Now { ago_ms: 12 } }).unwrap();
}

fn mark(session: &mut Session) {
    session.call(Request::LockedMark { mark: LockedMark::CordClamped { baby: 1 }, ago_ms: 12 }).unwrap();
}

/// The program begun anew, with the practice locked, after its first mark.
fn locked(folder: &Path) -> Session {
    let mut session = Session::new(paths(folder), Arc::new(SystemClock::new()));
    mark(&mut session);
    session
}

fn paths(folder: &Path) -> Paths {
    Paths { data: folder.join("data"), records: folder.join("records") }
}

fn born(session: &mut Session) -> BirthId {
    let Response::BabyBornNow { birth, .. } = session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
    birth
}

fn open(folder: &Path) -> Session {
    let mut session = Session::new(paths(folder), Arc::new(SystemClock::new()));
    let practice = Practice {
        name: "Heron House".to_owned(),
        practitioner: "Ida Reiher".to_owned(),
        role: "midwife".to_owned(),
        protocol: Some("who".to_owned()),
    };
    session.call(Request::CreatePractice { practice, passphrase: PASSPHRASE.to_owned() }).unwrap();
    session
}
