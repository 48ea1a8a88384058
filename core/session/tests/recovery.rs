//! The recovery sheet: a code that reads back, words that stay the same, and slips that are found.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

#[path = "common/code.rs"]
mod code;

use std::sync::Arc;

use code::{decoded, modules};

use secundine_domain::fact::Practice;
use secundine_domain::message::Message;
use secundine_domain::time::{Boot, Stamp};
use secundine_session::api::{ApiError, ErrorCode, RecoveryView, RehearsalMode, Request, Response};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use tempfile::TempDir;

const PASSPHRASE: &str = "seven quiet herons";
/// An identity of no practice, and its words as `hashlib` of Python and the list of BIP 39 (SHA-256 `2f5eed53…4dbda`) give them.
const KNOWN: &str = "AGE-SECRET-KEY-1GFPYYSJZGFPYYSJZGFPYYSJZGFPYYSJZGFPYYSJZGFPYYSJZGFPQ4EGAEX";
const KNOWN_WORDS: [&str; 4] = ["joy", "void", "bargain", "sister"];

struct Desk {
    session: Session,
    clock: HandClock,
    recovery: RecoveryView,
    folder: TempDir,
}

impl Desk {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let boot = Some(Boot { id: "first".to_owned(), since_ms: 9_000_000 });
        let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot });
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        let mut session = Session::new(paths, Arc::new(clock.clone()));
        let (name, practitioner, role) = ("Heron House".to_owned(), "Ida".to_owned(), "midwife".to_owned());
        let practice = Practice { name, practitioner, role, protocol: None };
        let passphrase = PASSPHRASE.to_owned();
        let Response::CreatePractice { recovery } = session.call(Request::CreatePractice { practice, passphrase }).unwrap()
        else {
            unreachable!()
        };
        Self { session, clock, recovery, folder }
    }

    fn check(&mut self, recovery: &str) -> Result<(Vec<String>, bool), ApiError> {
        match self.session.call(Request::CheckRecovery { recovery: recovery.to_owned() })? {
            Response::CheckRecovery { words, opens } => Ok((words, opens)),
            _ => unreachable!(),
        }
    }

    fn attempts(&self) -> bool {
        self.folder.path().join("data").join(secundine_store::ATTEMPTS).exists()
    }
}

#[test]
fn the_code_of_a_sheet_reads_back_as_its_identity() {
    for _ in 0..5 {
        let recovery = Desk::new().recovery;
        assert_eq!(decoded(&modules(&recovery.code)), recovery.identity);
        assert_eq!(recovery.code.side, 37, "version 5: capitals in eleven bits a pair, a quarter to spare");
    }
}

#[test]
fn a_sheet_with_a_fold_through_its_code_still_reads() {
    let recovery = Desk::new().recovery;
    let mut dark = modules(&recovery.code);
    // A worn stripe two modules wide, away from the corner patterns.
    for row in &mut dark[11..27] {
        row[14..16].fill(false);
    }
    assert_eq!(decoded(&dark), recovery.identity);
}

#[test]
fn the_words_of_an_identity_never_change() {
    let mut desk = Desk::new();
    let known: Vec<String> = KNOWN_WORDS.iter().map(|word| (*word).to_owned()).collect();
    assert_eq!(desk.check(KNOWN).unwrap(), (known, false));
    let RecoveryView { identity, words, .. } = desk.recovery.clone();
    assert_eq!(words.len(), 4);
    assert_eq!(desk.check(&identity).unwrap(), (words.clone(), true));
    let passphrase = PASSPHRASE.to_owned();
    let Response::RenewRecovery { recovery } = desk.session.call(Request::RenewRecovery { passphrase }).unwrap() else {
        unreachable!()
    };
    assert_ne!(recovery.words, words, "one in 2^44 by chance");
    assert_eq!(desk.check(&recovery.identity).unwrap(), (recovery.words, true));
    assert_eq!(desk.check(&identity).unwrap(), (words, false));
}

#[test]
fn an_identity_may_be_typed_in_groups_in_lines_and_in_small_letters() {
    let mut desk = Desk::new();
    let RecoveryView { identity, words, .. } = desk.recovery.clone();
    let letters: Vec<char> = identity.to_lowercase().chars().collect();
    let grouped = |with: &str| letters.chunks(5).map(String::from_iter).collect::<Vec<_>>().join(with);
    for typed in [grouped(" "), grouped("\n"), format!("  {}\t", grouped("\u{a0}"))] {
        assert_eq!(desk.check(&typed).unwrap(), (words.clone(), true));
        desk.session.call(Request::Lock).unwrap();
        assert_eq!(desk.check(&typed).unwrap(), (words.clone(), true), "also while locked");
        desk.session.call(Request::Unlock { passphrase: typed }).unwrap();
    }
}

#[test]
fn a_slip_is_told_and_counts_as_no_try() {
    let mut desk = Desk::new();
    let identity = desk.recovery.identity.clone();
    let mut slips: Vec<String> = vec![String::new(), "seven quiet herons".to_owned(), identity.chars().take(73).collect()];
    for place in 16..identity.len() {
        let mut letters: Vec<char> = identity.chars().collect();
        letters[place] = if letters[place] == 'Q' { 'P' } else { 'Q' };
        slips.push(letters.into_iter().collect());
    }
    for slip in slips {
        let error = desk.check(&slip).unwrap_err();
        assert_eq!((error.code, error.message), (ErrorCode::Impossible, Message::new("error-recovery-slip")), "{slip}");
    }
    assert!(!desk.attempts());
    desk.session.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Drill }).unwrap();
    assert_eq!(desk.check(&identity).unwrap_err().code, ErrorCode::Rehearsal);
}

#[test]
fn the_sheet_of_another_practice_is_a_wrong_try_and_waits_like_one() {
    let mut desk = Desk::new();
    for _ in 0..3 {
        assert!(!desk.check(KNOWN).unwrap().1);
    }
    assert!(desk.attempts());
    assert_eq!(desk.check(KNOWN).unwrap_err().code, ErrorCode::Wait);
    assert_eq!(desk.check("AGE-SECRET-KEY-1").unwrap_err().code, ErrorCode::Impossible, "a slip never waits");
    desk.clock.advance(1_000);
    let identity = desk.recovery.identity.clone();
    assert!(desk.check(&identity).unwrap().1);
    assert!(!desk.attempts());
}

#[test]
fn without_a_practice_the_words_are_told_all_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
    let mut session = Session::new(paths, Arc::new(Desk::new().clock));
    let answer = session.call(Request::CheckRecovery { recovery: KNOWN.to_owned() }).unwrap();
    assert!(matches!(answer, Response::CheckRecovery { words, opens: false } if words == KNOWN_WORDS));
}
