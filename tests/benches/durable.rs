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
use secundine_session::api::{At, Request, Response};
use secundine_session::clock::SystemClock;
use secundine_session::{Paths, Session};

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
/// Marks to a birth.
const MARKS: usize = 20;

fn main() {
    // Beside the build, which is on a disk, unlike many folders for passing files.
    let folder = tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap();
    let mut session = open(folder.path());
    let mut small = File::create(folder.path().join("small")).unwrap();
    let mut frame = File::create(folder.path().join("frame")).unwrap();
    let mut again = preallocated(&folder.path().join("again"));
    let mut birth = born(&mut session);
    let mut times: [Vec<Duration>; 4] = Default::default();
    for round in 0..ROUNDS + WARM_UP {
        if round % MARKS == 0 {
            birth = born(&mut session);
        }
        let taken = [
            timed(|| append(&mut small, &[7; ENTRY_BYTES])),
            timed(|| append(&mut frame, &[7; FRAME_BYTES])),
            timed(|| overwrite(&mut again, round)),
            timed(|| tap(&mut session, birth)),
        ];
        if round >= WARM_UP {
            times.iter_mut().zip(taken).for_each(|(times, taken)| times.push(taken));
        }
    }
    let [small, frame, again, tap] = times.map(|mut times| {
        times.sort();
        [times[times.len() / 2], times[times.len() * 99 / 100]].map(|time| time.as_secs_f64() * 1e6)
    });
    println!("{ROUNDS} rounds             p50 µs    p99 µs");
    let floors =
        [("420 B appended", small), ("4,120 B appended", frame), ("4,120 B in place", again), ("tap, acknowledged", tap)];
    for (name, [p50, p99]) in floors {
        println!("{name:<20} {p50:>9.0} {p99:>9.0}");
    }
    for (name, floor) in &floors[..3] {
        println!("tap : {name:<18} {:>5.2} {:>9.2}", tap[0] / floor[0], tap[1] / floor[1]);
    }
    let met = if tap[0] / frame[0] <= GOAL { "met" } else { "MISSED" };
    println!("goal: p50 at most {GOAL} times one frame: {met}");
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

fn born(session: &mut Session) -> BirthId {
    let Response::BabyBornNow { birth, .. } = session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
    birth
}

fn open(folder: &Path) -> Session {
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    let mut session = Session::new(paths, Arc::new(SystemClock::new()));
    let practice = Practice {
        name: "Heron House".to_owned(),
        practitioner: "Ida Reiher".to_owned(),
        role: "midwife".to_owned(),
        protocol: Some("who".to_owned()),
    };
    session.call(Request::CreatePractice { practice, passphrase: "seven quiet herons".to_owned() }).unwrap();
    session
}
