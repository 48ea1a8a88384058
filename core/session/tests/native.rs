//! What native code asks for: a mark is on disk whatever stands open, or says that it is not; reminders and the clock hold.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

#[path = "common/vault.rs"]
mod vault;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Mutex};
use std::thread;
use std::time::Duration;

use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Client, Fact, Practice};
use secundine_domain::time::{Boot, Stamp};
use secundine_session::api::{
    ApiError, At, BirthView, DrainedView, ErrorCode, LockedMark, LockedView, Outgoing, RehearsalMode, Request, Response,
    StatusView,
};
use secundine_session::clock::{Clock, HandClock};
use secundine_session::native::{Marked, Moment};
use secundine_session::{Paths, Session, SharedSession};
use tempfile::TempDir;
use vault::Vault;

const INSIDE: &str = "SECUNDINE_TEST_NATIVE";
const PASSPHRASE: &str = "seven quiet herons";
/// 2026-11-25 03:12:40 at UTC+1.
const START_MS: i64 = 1_795_572_760_000;
/// What the system's running clock says then.
const RUNNING_MS: i64 = 5_000_000;

struct Desk {
    session: SharedSession,
    clock: HandClock,
    folder: TempDir,
}

impl Desk {
    fn founded() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let boot = Some(Boot { id: "a".to_owned(), since_ms: RUNNING_MS });
        let clock = HandClock::at(Stamp { wall_ms: START_MS, offset_min: 60, zone: None, boot });
        let desk = Self { session: process(folder.path(), &clock), clock, folder };
        let (name, practitioner, role) = ("Heron House".to_owned(), "Ida Lindqvist".to_owned(), "midwife".to_owned());
        let practice = Practice { name, practitioner, role, protocol: Some("who".to_owned()) };
        desk.call(Request::CreatePractice { practice, passphrase: PASSPHRASE.to_owned() });
        desk
    }

    /// Another process over the same practice, in which nothing was opened.
    fn other_process(&self) -> SharedSession {
        process(self.folder.path(), &self.clock)
    }

    fn call(&self, request: Request) -> Response {
        self.session.call(request).unwrap()
    }

    fn lock(&self) {
        self.call(Request::Lock);
    }

    fn status(&self) -> StatusView {
        let Response::Status(status) = self.call(Request::Status) else { unreachable!() };
        status
    }

    fn locked_view(&self) -> LockedView {
        self.status().locked.unwrap()
    }

    fn unlock(&self) -> DrainedView {
        let Response::Unlock(status) = self.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }) else { unreachable!() };
        status.drained.unwrap_or(DrainedView { entries: 0, lost_tail: 0, damaged: 0, waiting: 0 })
    }

    fn mark(&self, ago_ms: u32) -> Marked {
        self.session.mark_baby_born(ago_ms, "en").unwrap()
    }

    fn births(&self) -> Vec<BirthView> {
        let Response::Births { births, .. } = self.call(Request::Births { skip: 0, take: 99 }) else { unreachable!() };
        births.into_iter().rev().map(|line| self.birth(line.birth)).collect()
    }

    fn birth(&self, birth: BirthId) -> BirthView {
        let Response::Birth(view) = self.call(Request::Birth { birth }) else { unreachable!() };
        *view
    }

    fn data(&self) -> PathBuf {
        self.folder.path().join("data")
    }

    fn wait(&self, seconds: i64) {
        self.clock.advance(seconds * 1000);
    }
}

fn process(folder: &Path, clock: &HandClock) -> SharedSession {
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    SharedSession::new(Session::new(paths, Arc::new(clock.clone())))
}

fn born(view: &BirthView) -> Vec<String> {
    view.babies.iter().map(|baby| baby.born.as_ref().unwrap().clock.clone()).collect()
}

fn code<T: std::fmt::Debug>(result: Result<T, ApiError>) -> ErrorCode {
    result.unwrap_err().code
}

#[test]
fn a_mark_where_nothing_was_ever_opened_waits_and_stands_to_the_second_once_unlocked() {
    let desk = Desk::founded();
    desk.lock();
    let tile = desk.other_process();
    desk.wait(20);
    let marked = tile.mark_baby_born(15_000, "en").unwrap();
    let at = Moment { utc_ms: START_MS + 5_000, running_ms: Some(RUNNING_MS + 5_000) };
    assert_eq!((marked.at, marked.waits), (at, true));
    assert_eq!((marked.clock.as_str(), marked.words.as_str()), ("03:12:45", "03:12:45 saved"));
    assert_eq!(tile.mark_baby_born(0, "es").unwrap().words, "03:13:00 guardado", "a second baby");
    desk.wait(60);
    assert_eq!(desk.unlock().entries, 4, "the chart, its protocol and two babies");
    let births = desk.births();
    assert_eq!((births.len(), born(&births[0])), (1, vec!["03:12:45".to_owned(), "03:13:00".to_owned()]));
    assert_eq!(births[0].timeline[1].author, "Ida Lindqvist");
}

#[test]
fn a_mark_while_the_page_is_locked_is_the_page_s_own() {
    let desk = Desk::founded();
    desk.lock();
    desk.mark(0);
    desk.wait(90);
    let view = desk.locked_view();
    assert_eq!((view.marks.len(), view.third_stage.unwrap().elapsed_ms), (1, 90_000));
    desk.session.take_back_mark().unwrap();
    assert!(desk.locked_view().marks[0].undone);
    assert_eq!(code(desk.session.take_back_mark()), ErrorCode::NotFound, "once");
    desk.mark(0);
    desk.unlock();
    assert_eq!(code(desk.session.take_back_mark()), ErrorCode::NotFound, "the page can, from now on");
    let births = desk.births();
    assert!(births.iter().any(|birth| born(birth) == ["03:14:10"]), "{births:?}");
}

#[test]
fn only_its_own_mark_is_taken_back() {
    let desk = Desk::founded();
    desk.lock();
    desk.mark(0);
    desk.wait(5);
    let mark = LockedMark::CordClamped { baby: 1 };
    desk.call(Request::LockedMark { mark, ago_ms: 0 });
    desk.session.take_back_mark().unwrap();
    assert_eq!(desk.locked_view().marks.iter().map(|mark| mark.undone).collect::<Vec<_>>(), [true, false]);
}

#[test]
fn a_mark_while_open_is_an_entry_of_the_birth_that_runs_or_of_a_chart_of_its_own() {
    let desk = Desk::founded();
    let first = desk.mark(2_000);
    assert!(!first.waits);
    desk.wait(30);
    desk.mark(0);
    let births = desk.births();
    assert_eq!((births.len(), born(&births[0])), (1, vec!["03:12:38".to_owned(), "03:13:10".to_owned()]), "twins");
    desk.session.take_back_mark().unwrap();
    assert_eq!(born(&desk.births()[0]), ["03:12:38"]);
    let placenta = Fact::PlacentaBorn { babies: vec![1] };
    let birth = desk.births()[0].birth;
    desk.call(Request::Record { birth, fact: placenta, at: At::Now { ago_ms: 0 } });
    desk.wait(30);
    desk.mark(0);
    assert_eq!(desk.births().len(), 2, "that one was over");
}

#[test]
fn a_mark_while_the_names_are_hidden_is_made_and_none_is_told() {
    let desk = Desk::founded();
    desk.mark(0);
    let client = Client { name: "Amahle Dube".to_owned(), ..Client::default() };
    let birth = desk.births()[0].birth;
    desk.call(Request::Record { birth, fact: Fact::ClientRecorded(client), at: At::Now { ago_ms: 0 } });
    desk.call(Request::Rest);
    assert!(desk.status().names_hidden);
    let told = format!("{:?} {:?} {:?}", desk.mark(0), desk.session.reminders("en").unwrap(), desk.session.running().unwrap());
    assert!(!told.contains("Amahle") && !told.contains("Heron") && !told.contains("Ida"), "{told}");
    assert_eq!(desk.births()[0].babies.len(), 2);
}

#[test]
fn a_mark_during_a_rehearsal_is_not_lost_to_it() {
    for locked in [false, true] {
        let desk = Desk::founded();
        if locked {
            desk.lock();
        }
        desk.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Drill });
        assert_eq!(code(desk.session.reminders("en")), ErrorCode::Rehearsal);
        assert_eq!(code(desk.session.running()), ErrorCode::Rehearsal);
        assert_eq!(desk.mark(0).waits, locked);
        desk.call(Request::EndRehearsal);
        if locked {
            desk.unlock();
        }
        assert_eq!(born(&desk.births()[0]), ["03:12:40"]);
    }
}

#[test]
fn what_cannot_be_written_says_so_and_later_marks_are_made_again() {
    let desk = Desk::founded();
    desk.lock();
    let tile = desk.other_process();
    fs::write(desk.data().join("inbox"), "in the way").unwrap();
    assert_eq!(code(tile.mark_baby_born(0, "en")), ErrorCode::NotSaved);
    assert_eq!(code(tile.take_back_mark()), ErrorCode::NotFound);
    fs::remove_file(desk.data().join("inbox")).unwrap();
    tile.mark_baby_born(0, "en").unwrap();
    assert_eq!(desk.unlock().entries, 3);
    let nowhere = tempfile::tempdir().unwrap();
    assert_eq!(code(process(nowhere.path(), &desk.clock).mark_baby_born(0, "en")), ErrorCode::NoPractice);
}

/// Marks made by processes of their own, while another has the practice open, and while it brings them in.
#[test]
fn marks_of_several_processes_at_once_are_all_there_once() {
    const EACH: usize = 8;
    const TEST: &str = "marks_of_several_processes_at_once_are_all_there_once";
    if let Some(folder) = std::env::var_os(INSIDE) {
        let clock = HandClock::at(Stamp { wall_ms: START_MS, offset_min: 60, zone: None, boot: None });
        let tile = process(Path::new(&folder), &clock);
        for _ in 0..EACH {
            clock.advance(1_000);
            assert!(tile.mark_baby_born(0, "en").unwrap().waits);
        }
        return;
    }
    let desk = Desk::founded();
    desk.mark(0);
    let exe = std::env::current_exe().unwrap();
    let begin = || Command::new(&exe).args(["--exact", TEST]).env(INSIDE, desk.folder.path()).spawn().unwrap();
    let mut others: Vec<_> = (0..3).map(|_| begin()).collect();
    let mut brought_in = 0;
    loop {
        let ended = others.iter_mut().all(|other| other.try_wait().unwrap().is_some());
        desk.lock();
        desk.mark(0);
        let drained = desk.unlock();
        assert_eq!((drained.lost_tail, drained.damaged, drained.waiting), (0, 0, 0));
        brought_in += 1;
        if ended {
            break;
        }
        thread::sleep(Duration::from_millis(20));
    }
    assert!(others.iter_mut().all(|other| other.wait().unwrap().success()));
    let births = desk.births();
    let lines = births.iter().flat_map(|birth| &birth.timeline);
    let born = lines.filter(|line| matches!(line.fact, Fact::BabyBorn { .. })).count();
    assert_eq!(born, 1 + 3 * EACH + brought_in);
}

/// The sync of the database's log fails once, after which the store takes nothing more.
#[cfg(target_os = "linux")]
#[test]
fn a_mark_that_the_database_does_not_take_waits_in_the_inbox() {
    const TEST: &str = "a_mark_that_the_database_does_not_take_waits_in_the_inbox";
    if let Some(folder) = std::env::var_os(INSIDE) {
        let clock = HandClock::at(Stamp { wall_ms: START_MS, offset_min: 60, zone: None, boot: None });
        let session = process(Path::new(&folder), &clock);
        let passphrase = || PASSPHRASE.to_owned();
        session.call(Request::Unlock { passphrase: passphrase() }).unwrap();
        let waited = (0..20).filter(|_| session.mark_baby_born(0, "en").unwrap().waits).count();
        assert!((1..20).contains(&waited), "{waited}");
        assert_eq!(code(session.take_back_mark()), ErrorCode::NotFound);
        session.call(Request::Lock).unwrap();
        let Response::Unlock(status) = session.call(Request::Unlock { passphrase: passphrase() }).unwrap() else {
            unreachable!()
        };
        assert_eq!(status.drained.unwrap().entries as usize, waited, "each in the chart that it was made in");
        return;
    }
    let desk = Desk::founded();
    desk.lock();
    let log = desk.data().join("secundine.db-wal");
    let inject = "inject=fsync,fdatasync:error=EIO:when=6";
    let output = Command::new("strace")
        .args(["-f", "-qq", "-o", "/dev/null", "-P", log.to_str().unwrap(), "-e", "trace=fsync,fdatasync", "-e", inject])
        .arg(std::env::current_exe().unwrap())
        .args(["--exact", TEST, "--nocapture"])
        .env(INSIDE, desk.folder.path())
        .output()
        .unwrap_or_else(|error| unreachable!("`strace` cannot be run ({error}): install the Debian package strace"));
    let said = String::from_utf8_lossy(&output.stdout);
    assert!(output.status.success() && said.contains("1 passed"), "{said}\n{}", String::from_utf8_lossy(&output.stderr));
}

#[test]
fn what_runs_is_told_by_both_clocks_open_hidden_and_locked() {
    let desk = Desk::founded();
    assert_eq!(desk.session.running().unwrap(), None);
    desk.mark(0);
    desk.wait(100);
    let since = Moment { utc_ms: START_MS, running_ms: Some(RUNNING_MS) };
    for step in ["open", "hidden", "locked"] {
        match step {
            "hidden" => drop(desk.call(Request::Rest)),
            "locked" => desk.lock(),
            _ => {}
        }
        let running = desk.session.running().unwrap().unwrap();
        assert_eq!((running.since, running.elapsed_ms), (since, 100_000), "{step}");
    }
    // The wall clock is set: the stage has lasted what it has lasted.
    desk.clock.change(|now| now.wall_ms += 3_600_000);
    let running = desk.session.running().unwrap().unwrap();
    let since = Moment { utc_ms: START_MS + 3_600_000, ..since };
    assert_eq!((running.since, running.elapsed_ms), (since, 100_000));
    assert_eq!(desk.other_process().running().unwrap(), None, "nothing is known of it there");
    desk.wait(24 * 3_600);
    assert_eq!(desk.session.running().unwrap(), None, "a placenta that nobody wrote down");
}

#[test]
fn reminders_are_few_over_all_births_and_named_for_good() {
    let desk = Desk::founded();
    assert!(desk.session.reminders("en").unwrap().is_empty());
    desk.mark(0);
    desk.wait(60);
    let placenta = Fact::PlacentaBorn { babies: vec![1] };
    let one = desk.session.reminders("en").unwrap();
    assert_eq!(one.len(), 3);
    let birth = desk.births()[0].birth;
    let view = desk.birth(birth);
    let armed: Vec<_> = view.due.iter().filter(|due| due.armed).collect();
    for (told, due) in one.iter().zip(armed) {
        assert_eq!(told.id, format!("{}/{}", birth.0, due.id));
        assert_eq!(told.at.utc_ms, START_MS + 60_000 + due.in_ms);
        assert_eq!(told.at.running_ms, Some(RUNNING_MS + 60_000 + due.in_ms));
        assert!(!told.words.is_empty() && !told.words.contains(['{', '}']) && told.words != due.message.id, "{told:?}");
    }
    assert_ne!(one[0].words, desk.session.reminders("fr").unwrap()[0].words);
    desk.call(Request::BabyBornNow { ago_ms: 0 });
    let both = desk.session.reminders("en").unwrap();
    assert_eq!(both.len(), 3);
    assert!(both.is_sorted_by_key(|reminder| reminder.at.utc_ms));
    desk.call(Request::Record { birth, fact: placenta, at: At::Now { ago_ms: 0 } });
    desk.lock();
    assert_eq!(code(desk.session.reminders("en")), ErrorCode::Locked);
}

#[test]
fn one_process_has_one_session_for_a_practice() {
    let folder = tempfile::tempdir().unwrap();
    let data = folder.path().join("not yet/practice");
    let switch = SharedSession::beside(&data);
    let crooked = folder.path().join("./not yet/../not yet/practice");
    fs::create_dir_all(data.parent().unwrap()).unwrap();
    let records = folder.path().join("papers");
    let page = SharedSession::of_process(Paths { data: crooked, records: records.clone() });
    let (name, role) = (String::new(), String::new());
    let practice = Practice { name, practitioner: "Ida".to_owned(), role, protocol: None };
    page.call(Request::CreatePractice { practice, passphrase: PASSPHRASE.to_owned() }).unwrap();
    assert!(!switch.mark_baby_born(0, "en").unwrap().waits, "it is open for both");
    let Response::Births { births, .. } = page.call(Request::Births { skip: 0, take: 9 }).unwrap() else { unreachable!() };
    assert_eq!(births.len(), 1);
    let file = Outgoing::Record;
    let written = switch.call(Request::WriteFile { birth: births[0].birth, file, language: None }).unwrap();
    let Response::WriteFile { path, .. } = written else { unreachable!() };
    assert!(Path::new(&path).starts_with(&records), "{path}");
    let other = SharedSession::beside(&folder.path().join("other"));
    assert_eq!(code(other.mark_baby_born(0, "en")), ErrorCode::NoPractice);
}

#[test]
fn the_shell_that_comes_later_brings_the_key_store_of_the_system() {
    let desk = Desk::founded();
    let passphrase = || PASSPHRASE.to_owned();
    let none = desk.session.call(Request::AddDeviceKey { passphrase: passphrase() });
    assert_eq!(code(none), ErrorCode::Device);
    desk.session.keys_kept_by(Arc::new(Vault::default())).unwrap();
    desk.call(Request::AddDeviceKey { passphrase: passphrase() });
    desk.lock();
    assert!(desk.status().device_key);
    desk.call(Request::UnlockByDevice);
}

/// Whoever reads it waits, with the session in hand, until it is let go of.
struct SlowClock {
    clock: HandClock,
    reads: Sender<()>,
    go_on: Mutex<Receiver<()>>,
}

impl Clock for SlowClock {
    fn now(&self) -> Stamp {
        self.reads.send(()).unwrap();
        self.go_on.lock().unwrap().recv().unwrap();
        self.clock.now()
    }
}

#[test]
fn the_wait_for_the_session_is_no_delay_of_the_mark() {
    let desk = Desk::founded();
    let ((reads, is_read), (go, go_on)) = (channel(), channel());
    let clock = SlowClock { clock: desk.clock.clone(), reads, go_on: Mutex::new(go_on) };
    let paths = Paths { data: desk.data(), records: desk.folder.path().join("records") };
    let session = SharedSession::new(Session::new(paths, Arc::new(clock)));
    let (busy, touched) = (session.clone(), session);
    let status = thread::spawn(move || busy.call(Request::Status).unwrap());
    is_read.recv().unwrap();
    let mark = thread::spawn(move || touched.mark_baby_born(7_000, "en").unwrap());
    thread::sleep(Duration::from_millis(400));
    go.send(()).unwrap();
    go.send(()).unwrap();
    status.join().unwrap();
    let ago_ms = START_MS - mark.join().unwrap().at.utc_ms;
    // It is a thread's begin less than what was slept.
    assert!((7_100..60_000).contains(&ago_ms), "{ago_ms}");
}
