//! Nobody has touched for a while: it locks, or where a third stage runs, the names are hidden.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

#[path = "rest/gate.rs"]
mod gate;
#[path = "common/vault.rs"]
mod vault;
#[path = "rest/words.rs"]
mod words;

use std::sync::Arc;

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{Fact, Loss, Practice};
use secundine_domain::message::Message;
use secundine_domain::quantity::Volume;
use secundine_domain::time::{Boot, Stamp};
use secundine_session::api::{
    ApiError, At, BirthLine, BirthView, Door, ErrorCode, LockedMark, RehearsalMode, Request, Response, StatusView,
};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use secundine_store::PlatformError;
use tempfile::TempDir;
use vault::Vault;

const PASSPHRASE: &str = "seven quiet herons";
/// 2026-11-25 03:12:40 at UTC+1.
const START_MS: i64 = 1_795_572_760_000;
const HOUR: i64 = 3600;

struct Desk {
    session: Session,
    clock: HandClock,
    vault: Arc<Vault>,
    recovery: String,
    _folder: TempDir,
}

impl Desk {
    /// A practice, founded and open.
    fn new() -> Self {
        Self::of("Heron House", "Ida Lindqvist", "midwife")
    }

    fn of(name: &str, practitioner: &str, role: &str) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let boot = Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 });
        let clock = HandClock::at(Stamp { wall_ms: START_MS, offset_min: 60, zone: None, boot });
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        let vault = Arc::new(Vault::default());
        let mut session = Session::with_platform(paths, Arc::new(clock.clone()), Arc::clone(&vault) as _);
        let (name, practitioner, role) = (name.to_owned(), practitioner.to_owned(), role.to_owned());
        let practice = Practice { name, practitioner, role, protocol: Some("who".to_owned()) };
        let passphrase = PASSPHRASE.to_owned();
        let Response::CreatePractice { recovery } = session.call(Request::CreatePractice { practice, passphrase }).unwrap()
        else {
            unreachable!()
        };
        Self { session, clock, vault, recovery: recovery.identity, _folder: folder }
    }

    /// A third stage runs, and the names are hidden.
    fn hidden() -> (Self, BirthId) {
        let mut desk = Self::new();
        let birth = desk.born();
        assert!(desk.rest().names_hidden);
        (desk, birth)
    }

    fn call(&mut self, request: Request) -> Result<Response, ApiError> {
        self.session.call(request)
    }

    fn wait(&self, seconds: i64) {
        self.clock.advance(seconds * 1000);
    }

    fn born(&mut self) -> BirthId {
        let Response::BabyBornNow { birth, .. } = self.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
        birth
    }

    fn write(&mut self, birth: BirthId, fact: Fact) -> EntryId {
        self.record(birth, fact).unwrap()
    }

    fn record(&mut self, birth: BirthId, fact: Fact) -> Result<EntryId, ApiError> {
        match self.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } })? {
            Response::Record { entry } => Ok(entry),
            _ => unreachable!(),
        }
    }

    fn rest(&mut self) -> StatusView {
        let Response::Rest(status) = self.call(Request::Rest).unwrap() else { unreachable!() };
        status
    }

    fn show(&mut self, passphrase: &str) -> Result<StatusView, ApiError> {
        match self.call(Request::ShowNames { passphrase: passphrase.to_owned() })? {
            Response::ShowNames(status) => Ok(status),
            _ => unreachable!(),
        }
    }

    fn status(&mut self) -> StatusView {
        let Response::Status(status) = self.call(Request::Status).unwrap() else { unreachable!() };
        status
    }

    fn births(&mut self) -> Vec<BirthLine> {
        let Response::Births { births, .. } = self.call(Request::Births { skip: 0, take: 99 }).unwrap() else { unreachable!() };
        births
    }

    fn birth(&mut self, birth: BirthId) -> BirthView {
        let Response::Birth(view) = self.call(Request::Birth { birth }).unwrap() else { unreachable!() };
        *view
    }

    fn unlock(&mut self) -> StatusView {
        let passphrase = self.recovery.clone();
        let Response::Unlock(status) = self.call(Request::Unlock { passphrase }).unwrap() else { unreachable!() };
        status
    }
}

fn placenta() -> Fact {
    Fact::PlacentaBorn { babies: vec![1] }
}

fn code<T>(result: Result<T, ApiError>) -> ErrorCode {
    result.err().unwrap().code
}

#[test]
fn where_no_third_stage_runs_it_locks() {
    let mut desk = Desk::new();
    let birth = desk.born();
    desk.write(birth, placenta());
    let status = desk.rest();
    assert!(status.door == Door::Locked && !status.names_hidden && status.locked.is_some() && status.practice.is_none());
    assert_eq!(code(desk.call(Request::Birth { birth })), ErrorCode::Locked);
    assert_eq!(desk.rest().door, Door::Locked, "once more changes nothing");
    assert_eq!(desk.unlock().practice.unwrap().name, "Heron House");
}

#[test]
fn a_rehearsal_goes_on_and_where_nothing_is_open_nothing_changes() {
    let mut desk = Desk::new();
    desk.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Drill }).unwrap();
    let status = desk.rest();
    assert!(status.rehearsal.is_some() && status.door == Door::Open && !status.names_hidden);
    let folder = tempfile::tempdir().unwrap();
    let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
    let mut nothing = Session::new(paths, Arc::new(desk.clock.clone()));
    assert!(matches!(nothing.call(Request::Rest), Ok(Response::Rest(StatusView { door: Door::NoPractice, .. }))));
}

#[test]
fn a_third_stage_goes_on_with_its_clock_and_its_marks_while_the_names_are_hidden() {
    let mut desk = Desk::new();
    let birth = desk.born();
    desk.wait(60);
    let status = desk.rest();
    assert!(status.names_hidden && status.door == Door::Open && status.locked.is_none());
    desk.wait(95);
    desk.write(birth, Fact::CordClamped { baby: 1 });
    let view = desk.birth(birth);
    let stage = view.third_stage.unwrap();
    assert_eq!((stage.elapsed_ms, stage.running, view.clock.as_str()), (155_000, true, "03:15:15"));
    assert_eq!(view.babies[0].clamped.as_ref().unwrap().since_birth, "2:35");
    // A mark that was made too early, put right and taken out.
    let cut = desk.write(birth, Fact::CordCut { baby: 1 });
    let at = Some(At::Typed {
        date: "2026-11-25".to_owned(),
        clock: "03:14".to_owned(),
        precision: secundine_domain::time::Precision::Exact,
    });
    let fact = Some(Fact::CordCut { baby: 1 });
    desk.call(Request::Amend { birth, entry: cut, fact, at, reason: "earlier".to_owned() }).unwrap();
    desk.call(Request::Retract { birth, entry: cut, reason: "not yet".to_owned() }).unwrap();
    let twin = desk.born();
    assert_eq!(desk.births().len(), 2, "another birth");
    desk.write(birth, Fact::BabyBorn { baby: 2 });
    desk.show(PASSPHRASE).unwrap();
    let reasons: Vec<String> =
        desk.birth(birth).timeline.into_iter().flat_map(|line| line.earlier).map(|earlier| earlier.reason).collect();
    assert_eq!(reasons, ["earlier", "not yet"], "written as they were typed");
    assert_eq!(desk.birth(twin).timeline.len(), 3);
}

#[test]
fn the_passphrase_or_the_sheet_shows_the_names_and_wrong_tries_wait() {
    let (mut desk, birth) = Desk::hidden();
    for _ in 0..3 {
        assert_eq!(code(desk.show("AGE-SECRET-KEY-1")), ErrorCode::WrongPassphrase);
    }
    assert_eq!(code(desk.show(PASSPHRASE)), ErrorCode::Wait);
    assert!(desk.status().names_hidden);
    desk.write(birth, Fact::CordClamped { baby: 1 });
    desk.wait(1);
    let status = desk.show(PASSPHRASE).unwrap();
    assert!(!status.names_hidden && status.practice.unwrap().name == "Heron House");
    assert!(desk.rest().names_hidden);
    let recovery = desk.recovery.clone();
    assert!(!desk.show(&recovery).unwrap().names_hidden);
    assert!(!desk.show("anything").unwrap().names_hidden, "where they are shown, nothing is asked");
}

#[test]
fn unlocking_shows_the_names_and_only_with_a_key() {
    let (mut desk, _) = Desk::hidden();
    assert_eq!(code(desk.call(Request::Unlock { passphrase: "AGE-SECRET-KEY-1".to_owned() })), ErrorCode::WrongPassphrase);
    assert!(desk.status().names_hidden);
    assert!(!desk.unlock().names_hidden);
}

#[test]
fn the_device_shows_the_names_too() {
    let mut desk = Desk::new();
    let passphrase = desk.recovery.clone();
    desk.call(Request::AddDeviceKey { passphrase }).unwrap();
    desk.born();
    desk.rest();
    desk.vault.fail(Some(PlatformError::Refused));
    assert_eq!(code(desk.call(Request::UnlockByDevice)), ErrorCode::Device);
    assert!(desk.status().names_hidden);
    desk.vault.fail(None);
    let Response::UnlockByDevice(status) = desk.call(Request::UnlockByDevice).unwrap() else { unreachable!() };
    assert!(!status.names_hidden && status.practice.unwrap().name == "Heron House");
}

#[test]
fn after_the_placenta_the_birth_stays_open_until_the_next_rest_which_locks() {
    let (mut desk, birth) = Desk::hidden();
    desk.wait(600);
    assert!(desk.rest().names_hidden, "it still runs");
    desk.write(birth, placenta());
    desk.write(birth, Fact::BloodLoss(Loss::Jug { volume: Volume::new(300).unwrap() }));
    assert_eq!(desk.birth(birth).blood.measured, 300);
    assert_eq!(desk.births().len(), 1);
    assert_eq!(desk.rest().door, Door::Locked);
    let status = desk.unlock();
    assert!(!status.names_hidden && status.practice.unwrap().name == "Heron House");
    assert_eq!(desk.birth(birth).third_stage.unwrap().elapsed_ms, 600_000);
}

#[test]
fn the_lock_works_while_hidden_and_the_third_stage_goes_on_behind_it() {
    let (mut desk, birth) = Desk::hidden();
    desk.birth(birth);
    desk.wait(60);
    let Response::Lock(status) = desk.call(Request::Lock).unwrap() else { unreachable!() };
    assert!(!status.names_hidden && status.locked.unwrap().third_stage.unwrap().text == "1:00");
    desk.call(Request::LockedMark { mark: LockedMark::CordClamped { baby: 1 }, ago_ms: 0 }).unwrap();
    let status = desk.unlock();
    assert!(!status.names_hidden && status.drained.unwrap().entries == 1);
    assert_eq!(desk.birth(birth).timeline.len(), 4);
}

#[test]
fn what_was_refused_does_not_become_the_birth_that_the_lock_goes_on_with() {
    let mut desk = Desk::new();
    let over = desk.born();
    desk.write(over, placenta());
    let running = desk.born();
    desk.rest();
    assert_eq!(code(desk.call(Request::Birth { birth: over })), ErrorCode::NamesHidden);
    let Response::Lock(status) = desk.call(Request::Lock).unwrap() else { unreachable!() };
    assert!(status.locked.unwrap().third_stage.is_some());
    desk.unlock();
    assert_eq!(desk.birth(running).timeline.len(), 3);
}

#[test]
fn a_chart_opened_days_before_is_found_and_a_placenta_never_written_down_is_given_up_after_a_day() {
    let mut desk = Desk::new();
    let label = "Maja, second".to_owned();
    let Response::RegisterBirth { birth } = desk.call(Request::RegisterBirth { label }).unwrap() else { unreachable!() };
    desk.wait(72 * HOUR);
    desk.write(birth, Fact::BabyBorn { baby: 1 });
    assert!(desk.rest().names_hidden);
    assert_eq!(desk.births()[0].label, "2026-11-28 03:12", "of the birth, not of its registration");
    assert_eq!(desk.birth(birth).label, "2026-11-28 03:12");
    desk.wait(24 * HOUR - 1);
    assert!(desk.rest().names_hidden);
    desk.wait(1);
    assert_eq!(desk.rest().door, Door::Locked);
}

#[test]
fn what_is_not_seen_is_not_written_over() {
    let mut desk = Desk::new();
    let birth = desk.born();
    let note = desk.write(birth, Fact::Noted { text: "Maja was calm".to_owned() });
    desk.rest();
    // The page begins a correction from what it was given.
    let line = desk.birth(birth).timeline.into_iter().find(|line| line.entry == note).unwrap();
    assert_eq!(line.message, Message::new("fact-noted").with("text", Message::new("names-hidden")).with("of", 1_u32));
    let amend = |fact| Request::Amend { birth, entry: note, fact, at: None, reason: "later".to_owned() };
    assert_eq!(code(desk.call(amend(Some(line.fact)))), ErrorCode::NamesHidden);
    assert_eq!(code(desk.record(birth, Fact::ClientRecorded(Default::default()))), ErrorCode::NamesHidden);
    // Its time alone can be put right; its words stay.
    desk.call(amend(None)).unwrap();
    desk.write(birth, Fact::Noted { text: "written while hidden".to_owned() });
    desk.show(PASSPHRASE).unwrap();
    let texts: Vec<Fact> = desk.birth(birth).timeline.into_iter().map(|line| line.fact).collect();
    for text in ["Maja was calm", "written while hidden"] {
        assert!(texts.contains(&Fact::Noted { text: text.to_owned() }), "{texts:?}");
    }
}
