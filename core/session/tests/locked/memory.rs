//! After the lock nothing that was written before is in the memory of the program, nor in plain in any of its files.

use std::fs::{self, File};
use std::io::{BufRead, BufReader, Read, Seek, SeekFrom, Write};
use std::path::Path;
use std::process::{Child, ChildStdin, Command, Stdio};

use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Client, Fact};
use secundine_session::api::{At, LockedMark, Request, Response};
use secundine_session::clock::SystemClock;
use secundine_session::{Paths, SharedSession};

use super::*;

const INSIDE: &str = "SECUNDINE_TEST_CANARIES";
const CANARIES: u64 = 50;
const TEST: &str = "memory::after_the_lock_nothing_of_before_is_in_memory_or_in_plain_on_disk";

/// Made from a number in either process, so that it stands nowhere else: splitmix64, in letters.
fn canary(seed: u64, n: u64) -> Vec<u8> {
    let mut at = seed.wrapping_add(n.wrapping_mul(0x9e37_79b9_7f4a_7c15));
    let mut letters = vec![0; 24];
    for letter in &mut letters {
        at = at.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = (at ^ (at >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        *letter = b'a' + u8::try_from((mixed ^ (mixed >> 31)) % 26).unwrap();
    }
    letters
}

fn text(seed: u64, n: u64) -> String {
    String::from_utf8(canary(seed, n)).unwrap()
}

#[test]
fn after_the_lock_nothing_of_before_is_in_memory_or_in_plain_on_disk() {
    if let Ok(told) = std::env::var(INSIDE) {
        let (folder, seed) = told.rsplit_once(' ').unwrap();
        return inside(Path::new(folder), seed.parse().unwrap());
    }
    let folder = tempfile::tempdir().unwrap();
    let seed = 0x5ec_u64 ^ u64::from(std::process::id());
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", TEST, "--nocapture"])
        .env(INSIDE, format!("{} {seed}", folder.path().display()))
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut said = BufReader::new(child.stdout.take().unwrap());
    let mut hand = child.stdin.take().unwrap();
    hear(&mut said, "OPEN");
    // What is looked for can be found: while it is open, it is there.
    let open = in_memory(&child, seed);
    assert!(open.len() > 20, "only {} canaries are found while the practice is open", open.len());
    go_on(&mut hand);
    hear(&mut said, "LOCKED");
    let locked = in_memory(&child, seed);
    assert_eq!(locked, Vec::new(), "in memory after the lock");
    go_on(&mut hand);
    hear(&mut said, "MARKED");
    assert_eq!(in_memory(&child, seed), Vec::new(), "in memory after a mark");
    let mut files = 0;
    in_files(folder.path(), seed, &mut files);
    assert!(files >= 5, "{files} files");
    drop(hand);
    assert!(child.wait().unwrap().success());
}

fn hear(said: &mut impl BufRead, word: &str) {
    let mut line = String::new();
    while !line.contains(word) {
        line.clear();
        assert!(said.read_line(&mut line).unwrap() > 0, "ended before {word}");
    }
}

fn go_on(hand: &mut ChildStdin) {
    hand.write_all(b"\n").unwrap();
    hand.flush().unwrap();
}

/// The other process: works as the page does, over JSON, and stands still where it is told to.
fn inside(folder: &Path, seed: u64) {
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    let session = SharedSession::new(Session::new(paths, Arc::new(SystemClock::new())));
    let call = |request: Request| session.call_json(&serde_json::to_string(&request).unwrap()).unwrap();
    let practice =
        Practice { name: text(seed, 0), practitioner: text(seed, 1), role: text(seed, 2), protocol: Some("who".to_owned()) };
    call(Request::CreatePractice { practice, passphrase: text(seed, 3) });
    let mut canaries = (4..CANARIES).map(|n| text(seed, n));
    let mut next = || canaries.next().unwrap();
    let mut births = Vec::new();
    for _ in 0..6 {
        let Response::RegisterBirth { birth } = session.call(Request::RegisterBirth { label: next() }).unwrap() else {
            unreachable!()
        };
        births.push(birth);
        let now = || At::Now { ago_ms: 0 };
        let record = |fact: Fact| call(Request::Record { birth, fact, at: now() });
        record(Fact::ClientRecorded(Client { name: next(), allergies: Some(next()), ..Client::default() }));
        record(Fact::BabyBorn { baby: 1 });
        for _ in 0..4 {
            record(Fact::Noted { text: next() });
        }
    }
    // The rest in reasons.
    let birth = births[0];
    let Response::Record { entry } =
        session.call(Request::Record { birth, fact: Fact::CordCut { baby: 1 }, at: At::Now { ago_ms: 0 } }).unwrap()
    else {
        unreachable!()
    };
    for reason in canaries {
        call(Request::Amend { birth, entry, fact: None, at: None, reason });
    }
    // Everything is looked at, printed, and looked at again after an unlocking.
    look(&call, &births);
    call(Request::Lock);
    call(Request::Unlock { passphrase: text(seed, 3) });
    look(&call, &births);
    stand("OPEN");
    call(Request::Lock);
    stand("LOCKED");
    for mark in [placenta(), LockedMark::BabyBorn, LockedMark::Moment] {
        call(Request::LockedMark { mark, ago_ms: 0 });
    }
    call(Request::LockedUndo);
    call(Request::Status);
    stand("MARKED");
}

fn look(call: &impl Fn(Request) -> String, births: &[BirthId]) {
    call(Request::Births { skip: 0, take: 99 });
    births.iter().for_each(|birth| drop(call(Request::Birth { birth: *birth })));
}

#[allow(clippy::print_stdout, reason = "tells the other process")]
fn stand(word: &str) {
    println!("\n{word}");
    let mut line = String::new();
    std::io::stdin().read_line(&mut line).unwrap();
}

/// The canaries that stand in the writable memory of a process, as UTF-8 or UTF-16, with the kind of memory.
fn in_memory(child: &Child, seed: u64) -> Vec<(u64, String)> {
    let wanted: Vec<Vec<u8>> = (0..CANARIES).map(|n| canary(seed, n)).collect();
    let mut memory = File::open(format!("/proc/{}/mem", child.id())).unwrap();
    let maps = fs::read_to_string(format!("/proc/{}/maps", child.id())).unwrap();
    let mut found = Vec::new();
    for map in maps.lines().filter(|map| map.split_whitespace().nth(1).is_some_and(|rights| rights.starts_with("rw"))) {
        let (from, to) = map.split_whitespace().next().unwrap().split_once('-').unwrap();
        let (from, to) = (u64::from_str_radix(from, 16).unwrap(), u64::from_str_radix(to, 16).unwrap());
        let mut bytes = vec![0; usize::try_from(to - from).unwrap()];
        memory.seek(SeekFrom::Start(from)).unwrap();
        // Some of the kernel's own cannot be read.
        if memory.read_exact(&mut bytes).is_err() {
            continue;
        }
        let kind = map.split_whitespace().nth(5).unwrap_or("anonymous");
        found.extend(hits(&bytes, &wanted).into_iter().map(|n| (n, kind.to_owned())));
    }
    found.sort();
    found
}

/// Which of the canaries stand in these bytes. Half a canary counts: twelve letters are no chance.
fn hits(bytes: &[u8], wanted: &[Vec<u8>]) -> Vec<u64> {
    let heads: std::collections::HashMap<[u8; 12], u64> = (0..)
        .zip(wanted)
        .flat_map(|(n, canary)| [(canary[..12].try_into().unwrap(), n), (canary[12..].try_into().unwrap(), n)])
        .collect();
    let mut found: Vec<u64> = Vec::new();
    for part in bytes.split(|byte| !byte.is_ascii_lowercase()).filter(|part| part.len() >= 12) {
        found.extend(part.windows(12).filter_map(|window| heads.get(window)));
    }
    found.sort_unstable();
    found.dedup();
    found
}

/// No canary stands in any file, nor its name.
fn in_files(folder: &Path, seed: u64, files: &mut u32) {
    let wanted: Vec<Vec<u8>> = (0..CANARIES).map(|n| canary(seed, n)).collect();
    for path in fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        assert_eq!(hits(path.to_string_lossy().as_bytes(), &wanted), Vec::<u64>::new());
        if path.is_dir() {
            in_files(&path, seed, files);
        } else {
            *files += 1;
            assert_eq!(hits(&fs::read(&path).unwrap(), &wanted), Vec::<u64>::new(), "{}", path.display());
        }
    }
}
