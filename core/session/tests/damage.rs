//! A damaged practice through the one door: told, read without being changed, built anew.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Fact, Practice};
use secundine_domain::time::{Boot, Stamp};
use secundine_record::words::Words;
use secundine_session::api::{ApiError, At, Door, ErrorCode, LockedMark, Outgoing, Request, Response, StatusView};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use secundine_store::{DATABASE, PASSPHRASE_KEY, RECOVERY_KEY};
use tempfile::TempDir;

const PASSPHRASE: &str = "seven quiet herons";
const PAGE: usize = 4096;
/// Entries: the practice, and the birth's registration, baby and notes.
const NOTES: usize = 30;
const ALL: u32 = 3 + NOTES as u32;

struct Practised {
    session: Session,
    folder: TempDir,
    birth: BirthId,
}

impl Practised {
    /// One birth with notes; locked.
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let boot = Some(Boot { id: "first".to_owned(), since_ms: 9_000_000 });
        let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot });
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        let mut session = Session::new(paths, Arc::new(clock));
        let (name, practitioner, role) = ("Heron House".to_owned(), "Ida".to_owned(), "midwife".to_owned());
        let practice = Practice { name, practitioner, role, protocol: None };
        session.call(Request::CreatePractice { practice, passphrase: PASSPHRASE.to_owned() }).unwrap();
        let Response::BabyBornNow { birth, .. } = session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else {
            unreachable!()
        };
        let mut practised = Self { session, folder, birth };
        (0..NOTES).for_each(|_| practised.note().unwrap());
        practised.session.call(Request::Lock).unwrap();
        practised
    }

    fn note(&mut self) -> Result<(), ApiError> {
        let fact = Fact::Noted { text: "all calm ".repeat(20) };
        self.session.call(Request::Record { birth: self.birth, fact, at: At::Now { ago_ms: 0 } }).map(|_| ())
    }

    fn file(&self, name: &str) -> PathBuf {
        self.folder.path().join("data").join(name)
    }

    fn harm(&self, page: usize) {
        let mut bytes = fs::read(self.file(DATABASE)).unwrap();
        bytes[(page - 1) * PAGE..page * PAGE].fill(0);
        fs::write(self.file(DATABASE), bytes).unwrap();
    }

    fn status(&mut self) -> StatusView {
        match self.session.call(Request::Status).unwrap() {
            Response::Status(status) => status,
            _ => unreachable!(),
        }
    }

    fn unlock(&mut self) -> Result<StatusView, ApiError> {
        match self.session.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() })? {
            Response::Unlock(status) => Ok(status),
            _ => unreachable!(),
        }
    }

    fn read_damaged(&mut self, passphrase: &str) -> Result<StatusView, ApiError> {
        match self.session.call(Request::ReadDamaged { passphrase: passphrase.to_owned() })? {
            Response::ReadDamaged(status) => Ok(status),
            _ => unreachable!(),
        }
    }

    fn salvage(&mut self, passphrase: &str) -> Result<StatusView, ApiError> {
        match self.session.call(Request::Salvage { passphrase: passphrase.to_owned() })? {
            Response::Salvage(status) => Ok(status),
            _ => unreachable!(),
        }
    }

    fn lines(&mut self) -> usize {
        match self.session.call(Request::Birth { birth: self.birth }).unwrap() {
            Response::Birth(view) => view.timeline.len(),
            _ => unreachable!(),
        }
    }

    fn births(&mut self) -> u32 {
        match self.session.call(Request::Births { skip: 0, take: 10 }).unwrap() {
            Response::Births { count, .. } => count,
            _ => unreachable!(),
        }
    }
}

fn files(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let paths = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).filter(|path| path.is_file());
    paths.map(|path| (path.clone(), fs::read(path).unwrap())).collect()
}

fn code<T>(answer: Result<T, ApiError>) -> ErrorCode {
    let error = answer.map(drop).unwrap_err();
    assert!(!Words::english().say(&error.message).is_empty());
    error.code
}

#[test]
fn a_damaged_practice_is_told_read_and_built_anew() {
    let mut practised = Practised::new();
    practised.harm(1);
    let before = files(&practised.file(""));
    assert_eq!(code(practised.unlock()), ErrorCode::DamagedStore);
    let status = practised.read_damaged(PASSPHRASE).unwrap();
    assert_eq!((status.door, status.read_only), (Door::Open, true));
    assert_eq!(status.practice.as_ref().unwrap().name, "Heron House");
    let read = status.salvage.unwrap();
    assert_eq!((read.entries, read.births, read.missing, read.set_aside), (ALL, 1, 0, None));
    assert_eq!((practised.births(), practised.lines()), (1, NOTES + 2));
    let birth = practised.birth;
    let Response::WriteFile { path, .. } =
        practised.session.call(Request::WriteFile { birth, file: Outgoing::Record, language: None }).unwrap()
    else {
        unreachable!()
    };
    assert!(fs::read(path).unwrap().starts_with(b"%PDF"));
    for write in [
        Request::RegisterBirth { label: "another".to_owned() },
        Request::BabyBornNow { ago_ms: 0 },
        Request::Record { birth, fact: Fact::CordCut { baby: 1 }, at: At::Now { ago_ms: 0 } },
        Request::Sign { birth, signer: None },
        Request::Verify,
        Request::DescribePractice { practice: status.practice.unwrap() },
    ] {
        assert_eq!(code(practised.session.call(write.clone())), ErrorCode::ReadOnly, "{write:?}");
    }
    assert!(practised.status().read_only && practised.status().salvage.is_some());
    assert_eq!(practised.lines(), NOTES + 2);
    let Response::Lock(locked) = practised.session.call(Request::Lock).unwrap() else { unreachable!() };
    assert_eq!((locked.door, locked.read_only, locked.salvage), (Door::Locked, false, None));
    assert!(files(&practised.file("")) == before, "reading changed the folder");

    practised.session.call(Request::LockedMark { mark: LockedMark::Moment, ago_ms: 0 }).unwrap();
    let status = practised.salvage(PASSPHRASE).unwrap();
    assert_eq!((status.door, status.read_only), (Door::Open, false));
    let salvage = status.salvage.unwrap();
    assert_eq!((salvage.entries, salvage.births, salvage.missing), (ALL, 1, 0));
    assert!(Path::new(&salvage.set_aside.unwrap()).join("report.txt").exists());
    assert_eq!(status.drained.unwrap().entries, 1, "what was marked while locked comes in");
    let lines = practised.lines();
    practised.note().unwrap();
    assert_eq!(practised.lines(), lines + 1);
    let Response::Verify(verified) = practised.session.call(Request::Verify).unwrap() else { unreachable!() };
    assert!(verified.ok, "{verified:?}");
    practised.session.call(Request::Lock).unwrap();
    assert!(practised.unlock().unwrap().salvage.is_none());
    assert_eq!(practised.lines(), lines + 1);
}

#[test]
fn what_is_lost_is_told_in_words_and_by_every_check_from_then_on() {
    let mut practised = Practised::new();
    let pages = fs::read(practised.file(DATABASE)).unwrap().len() / PAGE;
    let healthy = files(&practised.file(""));
    let mut lossy = 0;
    for page in 2..=pages {
        practised.harm(page);
        let report = practised.read_damaged(PASSPHRASE).unwrap().salvage.unwrap();
        for line in &report.report {
            let said = Words::english().say(line);
            assert!(!said.is_empty() && !said.contains("{$"), "{said}");
        }
        assert_eq!(report.entries + report.missing, ALL, "page {page}");
        if report.missing > 0 && report.missing < 20 && lossy == 0 {
            lossy += 1;
            // From the state that is read only straight on.
            let status = practised.salvage(PASSPHRASE).unwrap();
            assert_eq!(status.salvage.unwrap().missing, report.missing);
            let Response::Verify(verified) = practised.session.call(Request::Verify).unwrap() else { unreachable!() };
            assert!(!verified.ok);
            let said = Words::english().say(&verified.message);
            assert!(said.contains("missing") || said.contains("not here"), "{said}");
        }
        practised.session.call(Request::Lock).unwrap();
        let _ = fs::remove_dir_all(practised.file("damaged-1"));
        files(&practised.file("")).keys().for_each(|path| fs::remove_file(path).unwrap());
        healthy.iter().for_each(|(path, bytes)| fs::write(path, bytes).unwrap());
    }
    assert_eq!(lossy, 1);
}

#[test]
fn wrong_tries_at_a_damaged_store_have_to_wait_like_others() {
    let mut practised = Practised::new();
    practised.harm(1);
    for _ in 0..2 {
        assert_eq!(code(practised.read_damaged("seven loud herons")), ErrorCode::WrongPassphrase);
    }
    assert_eq!(code(practised.salvage("seven loud herons")), ErrorCode::WrongPassphrase);
    assert_eq!(code(practised.salvage(PASSPHRASE)), ErrorCode::Wait);
    assert_eq!(code(practised.read_damaged(PASSPHRASE)), ErrorCode::Wait);
    assert!(!practised.file("damaged-1").exists());
}

#[test]
fn a_healthy_practice_is_not_built_anew() {
    let mut practised = Practised::new();
    assert_eq!(code(practised.salvage(PASSPHRASE)), ErrorCode::Impossible);
    practised.unlock().unwrap();
    // Somebody else's hands at an open practice close nothing.
    assert_eq!(code(practised.salvage("seven loud herons")), ErrorCode::WrongPassphrase);
    assert_eq!(practised.lines(), NOTES + 2);
}

#[test]
fn keys_that_are_missing_are_told_at_the_door() {
    let mut practised = Practised::new();
    for name in [PASSPHRASE_KEY, RECOVERY_KEY] {
        fs::remove_file(practised.file(name)).unwrap();
    }
    assert_eq!(practised.status().door, Door::KeysMissing);
    assert_eq!(code(practised.unlock()), ErrorCode::DamagedKey);
    assert_eq!(code(practised.read_damaged(PASSPHRASE)), ErrorCode::DamagedKey);
}
