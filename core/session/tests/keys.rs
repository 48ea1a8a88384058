//! Keys through the one door: they are changed with the old one, and wrong tries have to wait.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::path::PathBuf;
use std::sync::Arc;

use secundine_domain::fact::Practice;
use secundine_domain::message::Message;
use secundine_domain::time::{Boot, Stamp};
use secundine_session::api::{ApiError, Door, ErrorCode, LockedMark, RehearsalMode, Request, Response, StatusView};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use secundine_store::ATTEMPTS;
use tempfile::TempDir;

const PASSPHRASE: &str = "seven quiet herons";
const NEW: &str = "nine loud geese";
const SECOND: i64 = 1_000;

struct Practised {
    session: Session,
    clock: HandClock,
    folder: TempDir,
    recovery: String,
}

impl Practised {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let boot = Some(Boot { id: "first".to_owned(), since_ms: 9_000_000 });
        let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot });
        let mut session = Session::new(paths(&folder), Arc::new(clock.clone()));
        let (name, practitioner, role) = ("Heron House".to_owned(), "Ida".to_owned(), "midwife".to_owned());
        let practice = Practice { name, practitioner, role, protocol: None };
        let passphrase = PASSPHRASE.to_owned();
        let Response::CreatePractice { recovery } = session.call(Request::CreatePractice { practice, passphrase }).unwrap()
        else {
            unreachable!()
        };
        Self { session, clock, folder, recovery: recovery.identity }
    }

    /// The program ends and begins anew.
    fn restart(&mut self) {
        self.session = Session::new(paths(&self.folder), Arc::new(self.clock.clone()));
    }

    fn lock(&mut self) {
        self.session.call(Request::Lock).unwrap();
    }

    fn unlock(&mut self, passphrase: &str) -> Result<StatusView, ApiError> {
        match self.session.call(Request::Unlock { passphrase: passphrase.to_owned() })? {
            Response::Unlock(view) => Ok(view),
            _ => unreachable!(),
        }
    }

    fn change(&mut self, old: &str, new: &str) -> Result<(), ApiError> {
        let (old, new) = (old.to_owned(), new.to_owned());
        self.session
            .call(Request::ChangePassphrase { old, new })
            .map(|answer| assert!(matches!(answer, Response::ChangePassphrase)))
    }

    fn renew(&mut self, passphrase: &str) -> Result<String, ApiError> {
        match self.session.call(Request::RenewRecovery { passphrase: passphrase.to_owned() })? {
            Response::RenewRecovery { recovery } => Ok(recovery.identity),
            _ => unreachable!(),
        }
    }

    fn wipe(&mut self, passphrase: &str, words: &str) -> Result<StatusView, ApiError> {
        match self.session.call(Request::Wipe { passphrase: passphrase.to_owned(), words: words.to_owned() })? {
            Response::Wipe(view) => Ok(view),
            _ => unreachable!(),
        }
    }

    fn status(&mut self) -> StatusView {
        let Response::Status(view) = self.session.call(Request::Status).unwrap() else { unreachable!() };
        view
    }

    /// Three wrong tries while locked, by an identity, which is quick.
    fn three_wrong(&mut self) {
        self.lock();
        for _ in 0..3 {
            assert_eq!(code(self.unlock("AGE-SECRET-KEY-1")), ErrorCode::WrongPassphrase);
        }
    }

    fn attempts(&self) -> PathBuf {
        paths(&self.folder).data.join(ATTEMPTS)
    }
}

fn paths(folder: &TempDir) -> Paths {
    Paths { data: folder.path().join("data"), records: folder.path().join("records") }
}

fn code<T>(result: Result<T, ApiError>) -> ErrorCode {
    result.err().unwrap().code
}

fn waiting<T>(result: Result<T, ApiError>) -> Message {
    let error = result.err().unwrap();
    assert_eq!(error.code, ErrorCode::Wait);
    error.message
}

fn seconds(seconds: u32) -> Message {
    Message::new("error-wait").with("seconds", seconds)
}

#[test]
fn the_new_passphrase_holds_from_now_on() {
    let mut at = Practised::new();
    at.change(PASSPHRASE, NEW).unwrap();
    assert_eq!(at.status().door, Door::Open, "and it stays open");
    at.lock();
    assert_eq!(code(at.unlock(PASSPHRASE)), ErrorCode::WrongPassphrase);
    at.unlock(NEW).unwrap();
    let recovery = at.recovery.clone();
    at.change(&recovery, PASSPHRASE).unwrap();
    at.lock();
    at.unlock(PASSPHRASE).unwrap();
}

#[test]
fn the_new_sheet_opens_and_the_old_one_no_longer() {
    let mut at = Practised::new();
    let (old, new) = (at.recovery.clone(), at.renew(PASSPHRASE).unwrap());
    at.lock();
    assert_eq!(code(at.unlock(&old)), ErrorCode::WrongPassphrase);
    assert_eq!(at.unlock(&new).unwrap().door, Door::Open);
}

#[test]
fn a_passphrase_that_cannot_be_is_refused_with_words_and_counts_as_no_try() {
    let mut at = Practised::new();
    for _ in 0..5 {
        let short = at.change(PASSPHRASE, "short").unwrap_err();
        assert_eq!(short.message, Message::new("error-short-passphrase").with("letters", 8_u32));
        let recovery = at.recovery.clone();
        assert_eq!(at.change(PASSPHRASE, &recovery).unwrap_err().message, Message::new("error-identity-as-passphrase"));
    }
    assert!(!at.attempts().exists());
    at.lock();
    at.unlock(PASSPHRASE).unwrap();
}

#[test]
fn keys_are_changed_in_the_open_practice_alone() {
    let mut at = Practised::new();
    at.session.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Drill }).unwrap();
    assert_eq!((code(at.change(PASSPHRASE, NEW)), code(at.renew(PASSPHRASE))), (ErrorCode::Rehearsal, ErrorCode::Rehearsal));
    at.session.call(Request::EndRehearsal).unwrap();
    at.lock();
    assert_eq!((code(at.change(PASSPHRASE, NEW)), code(at.renew(PASSPHRASE))), (ErrorCode::Locked, ErrorCode::Locked));
    let folder = tempfile::tempdir().unwrap();
    let mut nothing = Session::new(paths(&folder), Arc::new(at.clock.clone()));
    assert_eq!(code(nothing.call(Request::Unlock { passphrase: NEW.to_owned() })), ErrorCode::NoPractice);
    assert!(!paths(&folder).data.exists());
}

#[test]
fn after_three_wrong_tries_each_waits_twice_as_long() {
    let mut at = Practised::new();
    at.lock();
    for wait in [0, 0, 1, 2, 4, 8, 16, 32, 60, 60] {
        let wrong = at.unlock("AGE-SECRET-KEY-1").unwrap_err();
        let plain = Message::new("error-wrong-passphrase");
        assert_eq!(wrong.message, if wait > 0 { plain.with("wait", wait) } else { plain });
        if wait > 0 {
            // The right one waits as well: it would tell a guesser that it is right.
            assert_eq!(waiting(at.unlock(PASSPHRASE)), seconds(wait));
            at.clock.advance(i64::from(wait) * SECOND - 1);
            assert_eq!(waiting(at.unlock(PASSPHRASE)), seconds(1), "to the last millisecond");
            at.clock.advance(1);
        }
    }
    at.unlock(PASSPHRASE).unwrap();
}

#[test]
fn a_right_try_begins_the_count_anew() {
    let mut at = Practised::new();
    at.three_wrong();
    assert!(at.attempts().exists());
    at.clock.advance(SECOND);
    at.unlock(PASSPHRASE).unwrap();
    assert!(!at.attempts().exists());
    at.three_wrong();
    assert_eq!(waiting(at.unlock(PASSPHRASE)), seconds(1));
}

#[test]
fn neither_a_restart_of_the_program_nor_a_clock_set_forward_shortens_the_wait() {
    let mut at = Practised::new();
    at.three_wrong();
    at.clock.advance(SECOND);
    assert_eq!(code(at.unlock("AGE-SECRET-KEY-1")), ErrorCode::WrongPassphrase);
    at.restart();
    assert_eq!(waiting(at.unlock(PASSPHRASE)), seconds(2));
    at.clock.change(|stamp| stamp.wall_ms += 3_600 * SECOND);
    assert_eq!(waiting(at.unlock(PASSPHRASE)), seconds(2));
    at.clock.change(|stamp| stamp.wall_ms -= 7_200 * SECOND);
    assert_eq!(waiting(at.unlock(PASSPHRASE)), seconds(2));
    // Switched off and on with the wall set forward: the new run is half a second old.
    at.clock.change(|stamp| stamp.boot = Some(Boot { id: "second".to_owned(), since_ms: 500 }));
    assert_eq!(waiting(at.unlock(PASSPHRASE)), seconds(2));
    at.clock.advance(1_500);
    at.unlock(PASSPHRASE).unwrap();
}

#[test]
fn a_change_of_keys_is_no_way_round_the_wait() {
    let mut at = Practised::new();
    for _ in 0..3 {
        assert_eq!(code(at.renew("AGE-SECRET-KEY-1")), ErrorCode::WrongPassphrase);
    }
    assert_eq!(waiting(at.renew(PASSPHRASE)), seconds(1));
    assert_eq!(waiting(at.change(PASSPHRASE, NEW)), seconds(1));
    at.clock.advance(SECOND);
    at.change(PASSPHRASE, NEW).unwrap();
}

#[test]
fn what_is_marked_while_locked_never_waits() {
    let mut at = Practised::new();
    at.three_wrong();
    assert_eq!(waiting(at.unlock(PASSPHRASE)), seconds(1));
    let marks = [LockedMark::BabyBorn, LockedMark::CordClamped { baby: 1 }, LockedMark::Moment];
    for mark in marks {
        let kept = at.session.call(Request::LockedMark { mark, ago_ms: 0 });
        assert!(matches!(kept, Ok(Response::LockedMark(_))), "{kept:?}");
    }
    assert!(matches!(at.session.call(Request::LockedUndo), Ok(Response::LockedUndo(_))));
    assert_eq!(waiting(at.unlock(PASSPHRASE)), seconds(1), "it still waits");
    at.clock.advance(SECOND);
    assert_eq!(at.unlock(PASSPHRASE).unwrap().drained.unwrap().lost_tail, 0);
    let Response::Births { count, .. } = at.session.call(Request::Births { skip: 0, take: 9 }).unwrap() else { unreachable!() };
    assert_eq!(count, 1);
}

#[test]
fn a_rehearsal_begins_while_it_waits() {
    let mut at = Practised::new();
    at.three_wrong();
    at.session.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Drill }).unwrap();
    assert!(matches!(at.session.call(Request::BabyBornNow { ago_ms: 0 }), Ok(Response::BabyBornNow { .. })));
}

#[test]
fn a_wipe_needs_the_name_and_the_passphrase() {
    let mut at = Practised::new();
    for words in ["", "heron house", "Heron"] {
        assert_eq!(at.wipe(PASSPHRASE, words).unwrap_err().message, Message::new("error-other-name"));
    }
    assert!(!at.attempts().exists(), "a wrong name is no try");
    assert_eq!(code(at.wipe("seven quiet heron", "Heron House")), ErrorCode::WrongPassphrase);
    assert_eq!(at.status().door, Door::Open);
    at.session.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Drill }).unwrap();
    assert_eq!(code(at.wipe(PASSPHRASE, "Heron House")), ErrorCode::Rehearsal);
    at.session.call(Request::EndRehearsal).unwrap();
    at.lock();
    assert_eq!(code(at.wipe(PASSPHRASE, "Heron House")), ErrorCode::Locked);
    at.unlock(PASSPHRASE).unwrap();
    assert_eq!(at.status().practice.unwrap().name, "Heron House");
}

#[test]
fn after_a_wipe_there_is_no_practice_and_another_can_be_founded() {
    let mut at = Practised::new();
    at.session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap();
    let after = at.wipe(PASSPHRASE, " Heron House ").unwrap();
    assert!(after.door == Door::NoPractice && after.practice.is_none() && after.locked.is_none());
    assert_eq!(std::fs::read_dir(paths(&at.folder).data).unwrap().count(), 0);
    let recovery = at.recovery.clone();
    for secret in [PASSPHRASE, &recovery] {
        assert_eq!(code(at.unlock(secret)), ErrorCode::NoPractice);
    }
    at.restart();
    assert_eq!(at.status().door, Door::NoPractice);
    let practice = Practice { name: "P".to_owned(), practitioner: "A".to_owned(), role: "midwife".to_owned(), protocol: None };
    at.session.call(Request::CreatePractice { practice, passphrase: NEW.to_owned() }).unwrap();
    let Response::Births { count, .. } = at.session.call(Request::Births { skip: 0, take: 9 }).unwrap() else { unreachable!() };
    assert_eq!(count, 0);
}
