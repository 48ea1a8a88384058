//! Marks made while the practice is locked stand in the chart, to the second, once it is unlocked.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

#[cfg(target_os = "linux")]
#[path = "locked/memory.rs"]
mod memory;

use std::fs;
use std::path::PathBuf;
use std::sync::Arc;

use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Client, Fact, Practice};
use secundine_domain::time::{Boot, Stamp};
use secundine_record::words::Words;
use secundine_session::api::{
    ApiError, At, BirthView, Door, DrainedView, ErrorCode, LockedMark, LockedView, RehearsalMode, Request, Response, StatusView,
};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use secundine_store::Inbox;
use tempfile::TempDir;

const PASSPHRASE: &str = "seven quiet herons";
/// 2026-11-25 03:12:40 at UTC+1.
const START_MS: i64 = 1_795_572_760_000;

struct Desk {
    session: Session,
    clock: HandClock,
    folder: TempDir,
}

impl Desk {
    /// A practice, founded and locked.
    fn locked() -> Self {
        let mut desk = Self::founded();
        desk.call(Request::Lock).unwrap();
        desk
    }

    fn founded() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let boot = Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 });
        let clock = HandClock::at(Stamp { wall_ms: START_MS, offset_min: 60, zone: None, boot });
        let session = session(&folder, &clock);
        let mut desk = Self { session, clock, folder };
        let practice = Practice {
            name: "Heron House".to_owned(),
            practitioner: "Ida Lindqvist".to_owned(),
            role: "midwife".to_owned(),
            protocol: Some("who".to_owned()),
        };
        desk.call(Request::CreatePractice { practice, passphrase: PASSPHRASE.to_owned() }).unwrap();
        desk
    }

    /// The program is killed and begun again.
    fn killed(&mut self) {
        self.session = session(&self.folder, &self.clock);
    }

    fn call(&mut self, request: Request) -> Result<Response, ApiError> {
        self.session.call(request)
    }

    fn status(&mut self) -> StatusView {
        let Response::Status(status) = self.call(Request::Status).unwrap() else { unreachable!() };
        status
    }

    fn view(&mut self) -> LockedView {
        self.status().locked.unwrap()
    }

    fn mark(&mut self, mark: LockedMark) -> LockedView {
        let Response::LockedMark(view) = self.call(Request::LockedMark { mark, ago_ms: 0 }).unwrap() else { unreachable!() };
        view
    }

    fn undo(&mut self) -> LockedView {
        let Response::LockedUndo(view) = self.call(Request::LockedUndo).unwrap() else { unreachable!() };
        view
    }

    fn unlock(&mut self) -> Option<DrainedView> {
        let Response::Unlock(status) = self.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap() else {
            unreachable!()
        };
        status.drained
    }

    fn births(&mut self) -> Vec<BirthView> {
        let Response::Births { births, .. } = self.call(Request::Births { skip: 0, take: 99 }).unwrap() else { unreachable!() };
        births.into_iter().rev().map(|line| self.birth(line.birth)).collect()
    }

    fn birth(&mut self, birth: BirthId) -> BirthView {
        let Response::Birth(view) = self.call(Request::Birth { birth }).unwrap() else { unreachable!() };
        *view
    }

    fn wait(&self, seconds: i64) {
        self.clock.advance(seconds * 1000);
    }

    fn inbox(&self) -> Vec<PathBuf> {
        let Ok(listing) = fs::read_dir(self.folder.path().join("data/inbox")) else { return Vec::new() };
        let paths = listing.map(|entry| entry.unwrap().path());
        let mut files: Vec<PathBuf> = paths.filter(|path| path.extension().is_some_and(|kind| kind == "inbox")).collect();
        files.sort();
        files
    }
}

fn session(folder: &TempDir, clock: &HandClock) -> Session {
    let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
    Session::new(paths, Arc::new(clock.clone()))
}

/// The lines of a chart with clock and words; those taken out in brackets.
fn lines(view: &BirthView) -> Vec<String> {
    let words = Words::english();
    let line = |clock: &str, what: &str, out: bool| if out { format!("({clock} {what})") } else { format!("{clock} {what}") };
    view.timeline.iter().map(|one| line(&one.clock, &words.say(&one.message), one.retracted)).collect()
}

fn drained(entries: u32) -> Option<DrainedView> {
    Some(DrainedView { entries, lost_tail: 0, damaged: 0, waiting: 0 })
}

fn clamped() -> LockedMark {
    LockedMark::CordClamped { baby: 1 }
}

fn placenta() -> LockedMark {
    LockedMark::PlacentaBorn { babies: vec![1] }
}

#[test]
fn a_birth_marked_while_locked_is_in_the_chart_to_the_second() {
    let mut desk = Desk::locked();
    desk.wait(60);
    let view = desk.mark(LockedMark::BabyBorn);
    assert_eq!((view.marks.len(), view.third_stage.unwrap().text.as_str(), view.failed), (1, "0:00", false));
    desk.wait(95);
    // The finger was down 2 s before the request came.
    desk.call(Request::LockedMark { mark: LockedMark::CordPulsationStopped { baby: 1 }, ago_ms: 2_000 }).unwrap();
    desk.wait(30);
    desk.mark(clamped());
    desk.mark(LockedMark::Moment);
    desk.wait(600);
    let view = desk.mark(placenta());
    assert_eq!(view.third_stage.unwrap().text, "12:05");
    assert_eq!(view.cords[0].clock.as_ref().unwrap().text, "1:33");
    desk.wait(4000);
    assert_eq!(desk.unlock(), drained(7));
    let births = desk.births();
    assert_eq!(births.len(), 1);
    let birth = &births[0];
    assert_eq!(
        lines(birth),
        [
            "03:13:40 Chart opened: 2026-11-25 03:13",
            "03:13:40 Protocol chosen: WHO 2012 to 2025",
            "03:13:40 Baby born",
            "03:15:13 Cord pulsation stopped",
            "03:15:45 Cord clamped",
            "03:15:45 Moment marked while locked",
            "03:25:45 Placenta born",
        ]
    );
    let stage = birth.third_stage.as_ref().unwrap();
    assert_eq!((stage.elapsed_ms, stage.running), (725_000, false));
    assert!(birth.timeline.iter().all(|line| line.author == "Ida Lindqvist" && line.oddities.is_empty() && !line.late));
    assert!(desk.inbox().is_empty());
    desk.call(Request::Lock).unwrap();
    assert_eq!(desk.unlock(), None, "brought in once");
    assert_eq!(desk.births().len(), 1);
}

#[test]
fn what_is_made_while_a_third_stage_runs_belongs_to_that_birth() {
    let mut desk = Desk::founded();
    let Response::BabyBornNow { birth, .. } = desk.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
    let client = Fact::ClientRecorded(Client { name: "Maja Canary".to_owned(), ..Client::default() });
    desk.call(Request::Record { birth, fact: client, at: At::Now { ago_ms: 0 } }).unwrap();
    desk.wait(60);
    desk.call(Request::Record { birth, fact: Fact::CordClamped { baby: 1 }, at: At::Now { ago_ms: 0 } }).unwrap();
    desk.wait(60);
    let Response::Lock(status) = desk.call(Request::Lock).unwrap() else { unreachable!() };
    let view = status.locked.unwrap();
    assert_eq!(view.third_stage.as_ref().unwrap().text, "2:00");
    assert!(view.third_stage.unwrap().running && view.marks.is_empty());
    let next: Vec<Fact> = view.next.into_iter().map(|mark| mark.fact).collect();
    assert_eq!(next, [Fact::CordCut { baby: 1 }, Fact::PlacentaBorn { babies: vec![1] }]);
    desk.wait(60);
    // A twin.
    desk.mark(LockedMark::BabyBorn);
    desk.wait(60);
    desk.mark(LockedMark::PlacentaBorn { babies: vec![1, 2] });
    let told = serde_json::to_string(&desk.status()).unwrap();
    for earlier in ["Canary", "2026-11-25 03:12", "Heron", "Ida", &birth.0.to_string()] {
        assert!(!told.contains(earlier), "{earlier}: {told}");
    }
    assert_eq!(desk.unlock(), drained(2));
    let births = desk.births();
    assert_eq!((births.len(), births[0].birth), (1, birth));
    assert_eq!(
        lines(&births[0])[4..],
        ["03:13:40 Cord clamped, baby 1", "03:15:40 Baby 2 born", "03:16:40 Placenta of baby 1 + 2 born"]
    );
    assert_eq!(births[0].third_stage.as_ref().unwrap().elapsed_ms, 60_000);
}

#[test]
fn a_third_stage_that_is_over_is_not_carried_into_the_lock() {
    let mut desk = Desk::founded();
    let Response::BabyBornNow { birth, .. } = desk.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
    let fact = Fact::PlacentaBorn { babies: vec![1] };
    desk.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } }).unwrap();
    desk.call(Request::Lock).unwrap();
    let view = desk.view();
    assert!(view.third_stage.is_none() && view.cords.is_empty());
    desk.wait(5);
    desk.mark(LockedMark::BabyBorn);
    assert_eq!(desk.unlock(), drained(3));
    assert_eq!(desk.births().len(), 2);
}

#[test]
fn an_undo_finds_its_mark_also_where_a_birth_was_begun_and_taken_back_in_between() {
    let mut desk = Desk::locked();
    desk.mark(LockedMark::BabyBorn);
    // What was marked before is not known any more, so the next baby is a first one.
    desk.killed();
    desk.wait(60);
    desk.mark(clamped());
    desk.wait(60);
    // A birth by a slip, taken back; then the clamping too.
    desk.mark(LockedMark::BabyBorn);
    desk.wait(1);
    desk.undo();
    desk.wait(1);
    let view = desk.undo();
    assert_eq!(view.marks.iter().map(|mark| mark.undone).collect::<Vec<_>>(), [true, true]);
    desk.unlock();
    let lines: Vec<String> = desk.births().iter().flat_map(lines).collect();
    assert!(lines.contains(&"(03:13:40 Cord clamped)".to_owned()), "{lines:?}");
}

#[test]
fn an_undo_takes_the_last_mark_back_and_both_stay_in_the_chart() {
    let mut desk = Desk::locked();
    desk.mark(LockedMark::BabyBorn);
    desk.wait(5);
    let view = desk.undo();
    assert!(view.third_stage.is_none() && view.marks[0].undone);
    assert_eq!(desk.call(Request::LockedUndo).unwrap_err().code, ErrorCode::NotFound);
    desk.wait(5);
    // The same baby, born once more.
    desk.mark(LockedMark::BabyBorn);
    desk.wait(10);
    desk.mark(clamped());
    desk.wait(1);
    desk.mark(placenta());
    desk.undo();
    let view = desk.undo();
    assert_eq!(view.marks.iter().map(|mark| mark.undone).collect::<Vec<_>>(), [true, false, true, true]);
    assert_eq!(desk.unlock(), drained(9));
    let births = desk.births();
    assert_eq!(births.len(), 1);
    assert_eq!(
        lines(&births[0])[2..],
        ["(03:12:40 Baby born)", "03:12:50 Baby born", "(03:13:00 Cord clamped)", "(03:13:01 Placenta born)"]
    );
    assert!(births[0].timeline.iter().all(|line| line.oddities.is_empty()));
}

#[test]
fn killed_between_two_marks_the_program_goes_on_and_all_of_it_is_one_birth() {
    let mut desk = Desk::locked();
    desk.mark(LockedMark::BabyBorn);
    desk.wait(30);
    desk.killed();
    let view = desk.view();
    assert!(view.marks.is_empty() && view.third_stage.is_none());
    assert_eq!((view.waiting_files, view.waiting_bytes), (1, fs::metadata(&desk.inbox()[0]).unwrap().len()));
    assert!(view.others.iter().any(|mark| mark.fact == Fact::PlacentaBorn { babies: vec![1] }));
    desk.mark(clamped());
    desk.wait(30);
    desk.killed();
    desk.mark(placenta());
    assert_eq!(desk.inbox().len(), 3);
    assert_eq!(desk.unlock(), drained(5));
    let births = desk.births();
    assert_eq!(births.len(), 1);
    assert_eq!(lines(&births[0])[2..], ["03:12:40 Baby born", "03:13:10 Cord clamped", "03:13:40 Placenta born"]);
    assert_eq!(births[0].third_stage.as_ref().unwrap().elapsed_ms, 60_000);
}

#[test]
fn killed_while_locked_a_mark_finds_the_only_third_stage_that_runs() {
    for others in [0, 1] {
        let mut desk = Desk::founded();
        for _ in 0..=others {
            desk.call(Request::BabyBornNow { ago_ms: 0 }).unwrap();
            desk.wait(60);
        }
        desk.call(Request::Lock).unwrap();
        desk.killed();
        desk.mark(placenta());
        desk.unlock();
        let births = desk.births();
        // Of two that run it cannot be told which: a chart of its own, to be seen.
        assert_eq!(births.len(), if others == 0 { 1 } else { 3 });
        assert_eq!(
            lines(births.last().unwrap()).last().unwrap(),
            births.last().unwrap().timeline.last().map(|line| format!("{} Placenta born", line.clock)).as_ref().unwrap()
        );
    }
}

#[test]
fn a_second_first_baby_after_a_kill_opens_a_chart_of_its_own() {
    let mut desk = Desk::locked();
    desk.mark(LockedMark::BabyBorn);
    desk.wait(120);
    desk.killed();
    desk.mark(LockedMark::BabyBorn);
    desk.wait(60);
    desk.mark(clamped());
    desk.unlock();
    let births = desk.births();
    assert_eq!(births.iter().map(|birth| birth.label.as_str()).collect::<Vec<_>>(), ["2026-11-25 03:12", "2026-11-25 03:14"]);
    assert_eq!(lines(&births[1])[2..], ["03:14:40 Baby born", "03:15:40 Cord clamped"]);
}

#[test]
fn a_wrong_passphrase_leaves_the_inbox_and_what_is_shown_as_they_were() {
    let mut desk = Desk::locked();
    desk.mark(LockedMark::BabyBorn);
    let before = fs::read(&desk.inbox()[0]).unwrap();
    let wrong = desk.call(Request::Unlock { passphrase: "eight quiet herons".to_owned() }).unwrap_err();
    assert_eq!(wrong.code, ErrorCode::WrongPassphrase);
    assert_eq!(fs::read(&desk.inbox()[0]).unwrap(), before);
    desk.wait(10);
    assert_eq!(desk.view().third_stage.unwrap().text, "0:10");
    desk.mark(clamped());
    assert_eq!(desk.inbox().len(), 1, "the same file goes on");
    assert_eq!(desk.unlock(), drained(4));
}

#[test]
fn a_mark_that_is_not_on_disk_is_told_and_the_next_begins_a_new_file() {
    let mut desk = Desk::locked();
    desk.mark(LockedMark::BabyBorn);
    let folder = desk.folder.path().join("data");
    fs::rename(folder.join("inbox"), folder.join("away")).unwrap();
    fs::write(folder.join("inbox"), "not a folder").unwrap();
    let refused = desk.call(Request::LockedMark { mark: clamped(), ago_ms: 0 }).unwrap_err();
    assert_eq!(refused.code, ErrorCode::NotSaved);
    let view = desk.view();
    assert!(view.failed);
    assert_eq!(view.marks.len(), 1, "what is not on disk is not shown as marked");
    fs::remove_file(folder.join("inbox")).unwrap();
    fs::rename(folder.join("away"), folder.join("inbox")).unwrap();
    desk.wait(7);
    assert!(!desk.mark(clamped()).failed);
    assert_eq!(desk.unlock(), drained(4));
    assert_eq!(lines(&desk.births()[0])[2..], ["03:12:40 Baby born", "03:12:47 Cord clamped"]);
}

#[test]
fn what_is_missing_from_the_inbox_is_told() {
    let mut desk = Desk::locked();
    desk.mark(LockedMark::BabyBorn);
    fs::remove_file(&desk.inbox()[0]).unwrap();
    assert_eq!(desk.unlock(), Some(DrainedView { entries: 0, lost_tail: 1, damaged: 0, waiting: 0 }));
    desk.call(Request::Lock).unwrap();
    desk.mark(LockedMark::BabyBorn);
    let path = desk.inbox().remove(0);
    let mut bytes = fs::read(&path).unwrap();
    // Behind what was written there is room for more.
    *bytes.iter_mut().rfind(|byte| **byte != 0xff).unwrap() ^= 1;
    bytes.extend([9; 100_000]);
    fs::write(&path, bytes).unwrap();
    assert_eq!(desk.unlock(), Some(DrainedView { entries: 0, lost_tail: 0, damaged: 1, waiting: 0 }));
    assert!(desk.folder.path().join("data/inbox/damaged/1.inbox").exists());
}

#[test]
fn nothing_is_marked_where_there_is_no_lock() {
    let mark = || Request::LockedMark { mark: LockedMark::BabyBorn, ago_ms: 0 };
    let mut desk = Desk::founded();
    assert_eq!(desk.call(mark()).unwrap_err().code, ErrorCode::Impossible);
    assert!(desk.status().locked.is_none());
    desk.call(Request::Lock).unwrap();
    desk.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Drill }).unwrap();
    assert_eq!(desk.call(mark()).unwrap_err().code, ErrorCode::Rehearsal);
    desk.call(Request::EndRehearsal).unwrap();
    assert!(desk.inbox().is_empty());
    fs::remove_dir_all(desk.folder.path().join("data")).unwrap();
    desk.killed();
    assert_eq!(desk.call(mark()).unwrap_err().code, ErrorCode::NoPractice);
    assert_eq!(desk.status().door, Door::NoPractice);
}

#[test]
fn every_locked_mark_is_written_as_its_fact_is() {
    for (json, wanted) in [
        (r#"{"kind":"baby_born"}"#, LockedMark::BabyBorn),
        (r#"{"kind":"cord_clamped","data":{"baby":1}}"#, clamped()),
        (r#"{"kind":"placenta_born","data":{"babies":[1]}}"#, placenta()),
        (r#"{"kind":"moment"}"#, LockedMark::Moment),
    ] {
        assert_eq!(serde_json::from_str::<LockedMark>(json).unwrap(), wanted);
    }
}

#[test]
fn what_others_sealed_writes_no_fact_that_cannot_be_marked() {
    let stamp = format!(r#"{{"wall_ms":{START_MS},"offset_min":60,"zone":null,"boot":null}}"#);
    let record = |version: u32, fact: &str, birth: &str| {
        format!(
            r#"{{"v":{version},"birth":{birth},"fact":{fact},"occurred":{{"how":"marked","wall_ms":{START_MS},"offset_min":60,
            "zone":null,"boot":null}},"recorded":{stamp},"undoes":null}}"#
        )
    };
    let born = r#"{"kind":"baby_born","data":{"baby":1}}"#;
    let practice = format!(r#""{}-0""#, "0".repeat(32));
    let amends = format!(r#""undoes":null,"amends":{{"entry":"{}-1","reason":"x"}}"#, "0".repeat(32));
    for (what, record, wanted) in [
        ("a mark", record(1, born, "null"), drained(3)),
        (
            "another practitioner",
            record(
                1,
                r#"{"kind":"practice_described","data":{"name":"","practitioner":"Eve","role":"","protocol":null}}"#,
                "null",
            ),
            None,
        ),
        ("a signature", record(1, r#"{"kind":"signed","data":{"name":"Eve","role":"","version":""}}"#, "null"), None),
        ("baby 0 of the practice", record(1, born, &practice), None),
        ("a client", record(1, r#"{"kind":"client_recorded","data":{"name":"Eve"}}"#, "null"), None),
        ("an amendment", record(1, r#"{"kind":"noted","data":{"text":"x"}}"#, "null").replace("\"undoes\":null", &amends), None),
        ("another's signature", record(1, born, "null") + &"s".repeat(64), None),
        ("no record", "{".to_owned(), None),
    ] {
        let mut desk = Desk::locked();
        Inbox::new(&desk.folder.path().join("data")).append(record.as_bytes()).unwrap();
        let refused = Some(DrainedView { entries: 0, lost_tail: 0, damaged: 1, waiting: 0 });
        assert_eq!(desk.unlock(), wanted.clone().or(refused), "{what}");
        assert_eq!(desk.births().len(), usize::from(wanted.is_some()), "{what}");
        assert_eq!(desk.status().practice.unwrap().practitioner, "Ida Lindqvist", "{what}");
    }
    // One of a later version waits for it.
    let mut desk = Desk::locked();
    Inbox::new(&desk.folder.path().join("data")).append(record(2, born, "null").as_bytes()).unwrap();
    assert_eq!(desk.unlock(), Some(DrainedView { entries: 0, lost_tail: 0, damaged: 0, waiting: 1 }));
    assert_eq!(desk.inbox().len(), 1);
}
