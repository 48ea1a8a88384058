//! What could not be saved is kept in another file, and stands in its chart after the next unlocking, once.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::Arc;

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{Client, Fact, Practice};
use secundine_domain::time::{Boot, Precision, Stamp};
use secundine_record::words::Words;
use secundine_session::api::{ApiError, At, BirthView, DrainedView, ErrorCode, LockedMark, Request, Response, StatusView};
use secundine_session::clock::{Clock, HandClock};
use secundine_session::{Paths, Session};

const INSIDE: &str = "SECUNDINE_TEST_ELSEWHERE";
const PASSPHRASE: &str = "seven quiet herons";
/// 2026-11-25 03:12:40 at UTC+1.
const START_MS: i64 = 1_795_572_760_000;

/// A birth with its baby.
struct Desk {
    session: Session,
    clock: HandClock,
    folder: PathBuf,
}

impl Desk {
    fn at(folder: &Path) -> Self {
        let boot = Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 });
        let clock = HandClock::at(Stamp { wall_ms: START_MS, offset_min: 60, zone: None, boot });
        let paths = Paths { data: folder.join("data"), records: folder.join("records") };
        Self { session: Session::new(paths, Arc::new(clock.clone())), clock, folder: folder.to_owned() }
    }

    fn founded(folder: &Path) -> (Self, BirthId, EntryId) {
        let mut desk = Self::at(folder);
        let practice = Practice {
            name: "Heron House".to_owned(),
            practitioner: "Ida Lindqvist".to_owned(),
            role: "midwife".to_owned(),
            protocol: Some("who".to_owned()),
        };
        desk.call(Request::CreatePractice { practice, passphrase: PASSPHRASE.to_owned() }).unwrap();
        let Response::BabyBornNow { birth, entry } = desk.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else {
            unreachable!()
        };
        (desk, birth, entry)
    }

    fn call(&mut self, request: Request) -> Result<Response, ApiError> {
        self.session.call(request)
    }

    fn elsewhere(&mut self, what: &Request) -> Result<StatusView, ApiError> {
        self.call(Request::Elsewhere { what: Box::new(what.clone()) }).map(|response| match response {
            Response::Elsewhere(status) => status,
            other => unreachable!("{other:?}"),
        })
    }

    fn lock(&mut self) -> StatusView {
        let Response::Lock(status) = self.call(Request::Lock).unwrap() else { unreachable!() };
        status
    }

    fn unlock(&mut self) -> StatusView {
        let Response::Unlock(status) = self.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap() else {
            unreachable!()
        };
        status
    }

    fn births(&mut self) -> Vec<BirthView> {
        let Response::Births { births, .. } = self.call(Request::Births { skip: 0, take: 99 }).unwrap() else { unreachable!() };
        births.into_iter().rev().map(|line| self.birth(line.birth)).collect()
    }

    fn birth(&mut self, birth: BirthId) -> BirthView {
        let Response::Birth(view) = self.call(Request::Birth { birth }).unwrap() else { unreachable!() };
        *view
    }

    fn fits(&mut self) {
        let Response::Verify(view) = self.call(Request::Verify).unwrap() else { unreachable!() };
        assert!(view.ok, "{view:?}");
    }
}

fn drained(entries: u32) -> Option<DrainedView> {
    Some(DrainedView { entries, lost_tail: 0, damaged: 0, waiting: 0 })
}

fn record(birth: BirthId, fact: Fact, ago_ms: u32) -> Request {
    Request::Record { birth, fact, at: At::Now { ago_ms } }
}

fn note(text: &str) -> Fact {
    Fact::Noted { text: text.to_owned() }
}

/// The lines of a chart; those taken out in brackets.
fn lines(view: &BirthView) -> Vec<String> {
    let words = Words::english();
    let line = |clock: &str, what: &str, out: bool| if out { format!("({clock} {what})") } else { format!("{clock} {what}") };
    view.timeline.iter().map(|one| line(&one.clock, &words.say(&one.message), one.retracted)).collect()
}

#[test]
fn each_of_them_stands_in_its_chart_after_the_next_unlocking() {
    let folder = tempfile::tempdir().unwrap();
    let (mut desk, birth, born) = Desk::founded(folder.path());
    let Response::Record { entry } = desk.call(record(birth, note("slip"), 0)).unwrap() else { unreachable!() };
    desk.clock.advance(65_000);
    let client = Fact::ClientRecorded(Client { name: "Ada".to_owned(), ..Client::default() });
    let typed = At::Typed { date: "2026-11-25".to_owned(), clock: "03:10".to_owned(), precision: Precision::Exact };
    let amend = Request::Amend { birth, entry: born, fact: None, at: Some(typed), reason: "by the wall clock".to_owned() };
    let kept = [
        record(birth, Fact::CordClamped { baby: 1 }, 5_000),
        record(birth, client, 0),
        amend,
        Request::Retract { birth, entry, reason: "said nothing".to_owned() },
        Request::BabyBornNow { ago_ms: 2_000 },
    ];
    for (n, request) in (1..).zip(&kept) {
        assert_eq!(desk.elsewhere(request).unwrap().elsewhere, n);
    }
    assert_eq!(desk.birth(birth).timeline.len(), 4, "not yet");
    let status = desk.lock();
    assert_eq!(status.elsewhere, 5);
    assert_eq!(status.locked.unwrap().waiting_files, 0, "this run of the program knows what it has written");
    desk.clock.advance(30_000);
    desk.call(Request::LockedMark { mark: LockedMark::CordCut { baby: 1 }, ago_ms: 0 }).unwrap();
    let status = desk.unlock();
    // A chart of its own takes its registering and its protocol beside the birth.
    assert_eq!((status.drained, status.elsewhere), (drained(5 + 2 + 1), 0));
    let births = desk.births();
    assert_eq!(births.len(), 2);
    let first = lines(births.iter().find(|view| view.birth == birth).unwrap());
    for wanted in ["03:13:40 Cord clamped", "(03:12:40 slip)", "03:14:15 Cord cut"] {
        assert_eq!(first.iter().filter(|line| *line == wanted).count(), 1, "{wanted} in {first:#?}");
    }
    assert!(first.iter().any(|line| line.starts_with("03:10") && line.contains("Baby born")), "{first:#?}");
    let other = lines(births.iter().find(|view| view.birth != birth).unwrap());
    assert!(other.contains(&"03:13:43 Baby born".to_owned()), "{other:#?}");
    assert_eq!(births.iter().find(|view| view.birth == birth).unwrap().client.as_ref().unwrap().name, "Ada");
    desk.fits();
    desk.lock();
    assert_eq!(desk.unlock().drained, None, "once");
}

#[test]
fn what_could_not_have_been_written_is_not_kept_either() {
    let folder = tempfile::tempdir().unwrap();
    let (mut desk, birth, born) = Desk::founded(folder.path());
    let nowhere = BirthId(EntryId { n: 99, ..born });
    let refused = [
        (record(birth, note(" "), 0), ErrorCode::Impossible, "impossible-empty-note"),
        (record(nowhere, note("x"), 0), ErrorCode::NotFound, "error-no-birth"),
        (record(birth, Fact::Retracted, 0), ErrorCode::Impossible, "error-not-recordable"),
        (record(birth, note(&"x".repeat(65_000)), 0), ErrorCode::Impossible, "error-too-long-elsewhere"),
        (Request::Retract { birth, entry: born, reason: String::new() }, ErrorCode::Impossible, "error-no-reason"),
        (Request::Sign { birth, signer: None }, ErrorCode::Impossible, "error-not-elsewhere"),
        (Request::Elsewhere { what: Box::new(record(birth, note("x"), 0)) }, ErrorCode::Impossible, "error-not-elsewhere"),
    ];
    for (request, code, id) in refused {
        let error = desk.elsewhere(&request).unwrap_err();
        assert_eq!((error.code, error.message.id.as_str()), (code, id));
    }
    // Longer than any mark, and short enough.
    desk.elsewhere(&record(birth, note(&"y".repeat(60_000)), 0)).unwrap();
    desk.lock();
    assert_eq!(desk.elsewhere(&record(birth, note("x"), 0)).unwrap_err().code, ErrorCode::Locked);
    assert_eq!(desk.unlock().drained, drained(1));
    assert!(desk.birth(birth).timeline.iter().any(|line| line.fact == note(&"y".repeat(60_000))));
}

/// The sync of the log fails once, after which the system would say yes again.
#[cfg(target_os = "linux")]
#[test]
fn after_a_failed_sync_it_is_kept_elsewhere_and_comes_in_once() {
    const TEST: &str = "after_a_failed_sync_it_is_kept_elsewhere_and_comes_in_once";
    if let Some(folder) = std::env::var_os(INSIDE) {
        return inside(Path::new(&folder));
    }
    let folder = tempfile::tempdir().unwrap();
    let (mut desk, ..) = Desk::founded(folder.path());
    desk.lock();
    let path = |name: &str| folder.path().join(name).to_str().unwrap().to_owned();
    let (log, calls) = (path("data/secundine.db-wal"), path("calls"));
    let inject = "inject=fsync,fdatasync:error=EIO:when=6";
    let output = Command::new("strace")
        .args(["-f", "-qq", "-o", &calls, "-P", &log, "-e", "trace=fsync,fdatasync", "-e", inject])
        .arg(std::env::current_exe().unwrap())
        .args(["--exact", TEST, "--nocapture"])
        .env(INSIDE, folder.path())
        .output()
        .unwrap_or_else(|error| unreachable!("`strace` cannot be run ({error}): install the Debian package strace"));
    let said = String::from_utf8_lossy(&output.stdout);
    assert!(output.status.success() && said.contains("1 passed"), "{said}\n{}", String::from_utf8_lossy(&output.stderr));
    assert_eq!(std::fs::read_to_string(calls).unwrap().matches("EIO").count(), 1, "it failed once");
}

#[cfg(target_os = "linux")]
fn inside(folder: &Path) {
    let mut desk = Desk::at(folder);
    desk.unlock();
    let birth = desk.births()[0].birth;
    let mut written = 0;
    let (request, error) = loop {
        desk.clock.advance(1_000);
        let request = record(birth, note(&format!("note {written}")), 0);
        match desk.call(request.clone()) {
            Ok(_) => written += 1,
            Err(error) => break (request, error),
        }
        assert!(written < 50, "nothing fails");
    };
    assert_eq!((error.code, error.message.id.as_str()), (ErrorCode::NotSaved, "error-not-saved"));
    let failed_ms = desk.clock.now().wall_ms;
    for _ in 0..3 {
        assert_eq!(desk.call(request.clone()).unwrap_err().code, ErrorCode::NotSaved);
    }
    desk.clock.advance(20_000);
    assert_eq!(desk.elsewhere(&record(birth, note(&format!("note {written}")), 20_000)).unwrap().elsewhere, 1);
    assert_eq!(desk.call(request).unwrap_err().code, ErrorCode::NotSaved, "the store takes nothing before it is opened anew");
    desk.lock();
    assert_eq!(desk.unlock().drained, drained(1));
    let view = desk.birth(birth);
    let notes: Vec<_> = view.timeline.iter().filter(|line| matches!(line.fact, Fact::Noted { .. })).collect();
    let texts: Vec<Fact> = notes.iter().map(|line| line.fact.clone()).collect();
    assert_eq!(texts, (0..=written).map(|n| note(&format!("note {n}"))).collect::<Vec<_>>(), "each once");
    let seconds = (failed_ms - START_MS) / 1000 + 40;
    assert_eq!(notes.last().unwrap().clock, format!("03:{:02}:{:02}", 12 + seconds / 60, seconds % 60));
    desk.fits();
    desk.call(record(birth, note("and on"), 0)).unwrap();
    assert!(desk.folder.join("data").is_dir());
}
