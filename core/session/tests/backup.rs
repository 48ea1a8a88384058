//! Backups through the one door: made, handed over in parts, restored.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use secundine_domain::entry::{BirthId, DeviceId};
use secundine_domain::fact::{Fact, Practice};
use secundine_domain::message::Message;
use secundine_domain::time::{Boot, Stamp};
use secundine_record::words::Words;
use secundine_session::api::{
    ApiError, At, BackupMade, BackupState, BackupsView, Door, ErrorCode, LockedMark, RehearsalMode, Request, Response,
    RestoredView,
};
use secundine_session::backup::{left_out, told};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use secundine_store::{INCOMING, Misfit, MisfitKind, PASSPHRASE_KEY, Restored};
use tempfile::TempDir;

#[path = "common/backed.rs"]
mod backed;

use backed::back_up;

const PASSPHRASE: &str = "seven quiet herons";

/// A device, with or without a practice.
struct Device {
    session: Session,
    clock: HandClock,
    folder: TempDir,
    recovery: String,
}

impl Device {
    fn empty() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let boot = Some(Boot { id: "first".to_owned(), since_ms: 9_000_000 });
        let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot });
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        let session = Session::new(paths, Arc::new(clock.clone()));
        Self { session, clock, folder, recovery: String::new() }
    }

    fn with_practice() -> Self {
        let mut at = Self::empty();
        let (name, practitioner, role) = ("Heron House".to_owned(), "Ida".to_owned(), "midwife".to_owned());
        let practice = Practice { name, practitioner, role, protocol: None };
        let passphrase = PASSPHRASE.to_owned();
        let Response::CreatePractice { recovery } = at.call(Request::CreatePractice { practice, passphrase }).unwrap() else {
            unreachable!()
        };
        at.recovery = recovery.identity;
        at
    }

    fn call(&mut self, request: Request) -> Result<Response, ApiError> {
        self.session.call(request)
    }

    fn data(&self) -> PathBuf {
        self.folder.path().join("data")
    }

    fn birth(&mut self) -> BirthId {
        let Response::BabyBornNow { birth, .. } = self.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
        birth
    }

    fn note(&mut self, birth: BirthId, text: &str) {
        self.clock.advance(60_000);
        let (fact, at) = (Fact::Noted { text: text.to_owned() }, At::Now { ago_ms: 0 });
        self.call(Request::Record { birth, fact, at }).unwrap();
    }

    /// Everything that is shown of a birth.
    fn chart(&mut self, birth: BirthId) -> String {
        serde_json::to_string(&self.call(Request::Birth { birth }).unwrap()).unwrap()
    }

    fn make(&mut self) -> BackupMade {
        back_up(&mut self.session)
    }

    fn list(&mut self) -> BackupsView {
        let Response::Backups(view) = self.call(Request::Backups).unwrap() else { unreachable!() };
        view
    }

    fn part(&mut self, offset: u64, bytes: &[u8]) -> Result<(), ApiError> {
        let base64 = BASE64_STANDARD.encode(bytes);
        self.call(Request::BackupPart { offset, base64 }).map(|answer| assert!(matches!(answer, Response::BackupPart)))
    }

    /// Hands a backup over in small parts.
    fn hand_over(&mut self, backup: &[u8]) {
        for (n, part) in backup.chunks(5_000).enumerate() {
            self.part(n as u64 * 5_000, part).unwrap();
        }
    }

    fn restore(&mut self, secret: &str) -> Result<RestoredView, ApiError> {
        match self.call(Request::Restore { passphrase: secret.to_owned() })? {
            Response::Restore(view) => Ok(view),
            _ => unreachable!(),
        }
    }

    fn lock(&mut self) {
        self.call(Request::Lock).unwrap();
    }

    fn wipe(&mut self) {
        let (passphrase, words) = (PASSPHRASE.to_owned(), "Heron House".to_owned());
        self.call(Request::Wipe { passphrase, words }).unwrap();
    }

    fn fits(&mut self) {
        let Response::Verify(view) = self.call(Request::Verify).unwrap() else { unreachable!() };
        assert!(view.ok, "{view:?}");
    }
}

fn code<T>(result: Result<T, ApiError>) -> ErrorCode {
    result.err().unwrap().code
}

fn message<T>(result: Result<T, ApiError>) -> String {
    let message = result.err().unwrap().message;
    assert!(Words::english().has(&message.id), "{}", message.id);
    message.id
}

#[test]
fn after_a_wipe_either_key_brings_every_chart_back_as_it_was() {
    let mut at = Device::with_practice();
    let birth = at.birth();
    at.note(birth, "Warm and quiet");
    at.call(Request::Sign { birth, signer: None }).unwrap();
    let other = at.birth();
    // A practice that was wiped takes its name of this run of the phone with it, so the phone is restarted before.
    at.clock.change(|stamp| stamp.boot = Some(Boot { id: "second".to_owned(), since_ms: 0 }));
    let before = [birth, other].map(|birth| at.chart(birth));
    let made = at.make();
    assert_eq!((made.births, made.entries, made.waiting), (2, 7, 0));
    let bytes = fs::read(&made.path).unwrap();
    assert_eq!(made.bytes, bytes.len() as u64);
    for secret in [PASSPHRASE.to_owned(), at.recovery.clone()] {
        at.part(0, b"an older one").unwrap();
        at.wipe();
        assert_eq!(fs::read_dir(at.data()).unwrap().count(), 0, "what was handed over is gone");
        assert!(Path::new(&made.path).exists(), "backups stay");
        at.hand_over(&bytes);
        let view = at.restore(&secret).unwrap();
        assert_eq!((view.added, view.known, view.births), (7, 0, 2));
        assert!(view.refused.is_empty() && view.made == at.list().backups.first().unwrap().made);
        assert_eq!((view.status.door, view.status.practice.unwrap().name.as_str()), (Door::Open, "Heron House"));
        assert!(!at.data().join(INCOMING).exists());
        assert_eq!([birth, other].map(|birth| at.chart(birth)), before);
        at.fits();
        let third = at.birth();
        assert_ne!(third.0.device, birth.0.device, "a new device");
        at.fits();
        at.lock();
        at.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    }
}

#[test]
fn restored_into_an_open_practice_a_chart_shows_the_union_at_once() {
    let mut one = Device::with_practice();
    let birth = one.birth();
    let first = fs::read(one.make().path).unwrap();
    let mut two = Device::empty();
    two.hand_over(&first);
    two.restore(PASSPHRASE).unwrap();
    two.note(birth, "Written on the second phone");
    let new = two.birth();
    let from_two = fs::read(two.make().path).unwrap();

    one.note(birth, "Written on the first phone");
    assert!(!one.chart(birth).contains("second phone"));
    one.hand_over(&from_two);
    let view = one.restore(PASSPHRASE).unwrap();
    assert_eq!((view.added, view.known, view.births), (3, 3, 1));
    let chart = one.chart(birth);
    assert!(chart.contains("first phone") && chart.contains("second phone"));
    one.chart(new);
    one.fits();
    // An older one over it, and the same once more, change nothing.
    for backup in [&from_two, &first] {
        one.hand_over(backup);
        let again = one.restore(&one.recovery.clone()).unwrap();
        assert_eq!((again.added, again.births, again.refused.len()), (0, 0, 0));
        assert_eq!(one.chart(birth), chart);
    }
    // Both come to the same chart.
    two.hand_over(&fs::read(one.make().path).unwrap());
    two.restore(PASSPHRASE).unwrap();
    let versions = [&mut one, &mut two].map(|device| {
        let Response::Birth(view) = device.call(Request::Birth { birth }).unwrap() else { unreachable!() };
        view.version
    });
    assert_eq!(versions.first(), versions.last());
}

#[test]
fn a_backup_made_under_an_older_passphrase_comes_in_by_either() {
    let mut at = Device::with_practice();
    let backup = fs::read(at.make().path).unwrap();
    at.call(Request::ChangePassphrase { old: PASSPHRASE.to_owned(), new: "nine loud geese".to_owned() }).unwrap();
    for secret in [PASSPHRASE, "nine loud geese"] {
        at.hand_over(&backup);
        assert_eq!(at.restore(secret).unwrap().known, 1);
    }
    at.lock();
    assert_eq!(code(at.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() })), ErrorCode::WrongPassphrase);
}

#[test]
fn wrong_tries_at_a_backup_of_the_open_practice_have_to_wait() {
    let mut at = Device::with_practice();
    let backup = fs::read(at.make().path).unwrap();
    at.hand_over(&backup);
    for _ in 0..3 {
        assert_eq!(code(at.restore("AGE-SECRET-KEY-1")), ErrorCode::WrongPassphrase);
    }
    assert_eq!(code(at.restore(PASSPHRASE)), ErrorCode::Wait);
    at.clock.advance(1_000);
    assert_eq!(at.restore(PASSPHRASE).unwrap().known, 1);
}

#[test]
fn a_backup_is_made_of_the_open_practice_alone_and_restored_past_no_door() {
    let mut at = Device::with_practice();
    let backup = fs::read(at.make().path).unwrap();
    at.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Drill }).unwrap();
    at.hand_over(&backup);
    assert_eq!(code(at.call(Request::MakeBackup)), ErrorCode::Rehearsal);
    assert_eq!(code(at.restore(PASSPHRASE)), ErrorCode::Rehearsal);
    at.call(Request::EndRehearsal).unwrap();
    at.lock();
    assert_eq!(code(at.call(Request::MakeBackup)), ErrorCode::Locked);
    assert_eq!(code(at.restore(PASSPHRASE)), ErrorCode::Locked);
    let mut nothing = Device::empty();
    assert!(nothing.list().backups.is_empty());
    assert_eq!(message(nothing.restore(PASSPHRASE)), "error-backup-none");
    assert!(!nothing.data().exists());
}

#[test]
fn what_cannot_be_restored_says_why_and_changes_nothing() {
    let mut at = Device::with_practice();
    let birth = at.birth();
    let before = at.chart(birth);
    let own = fs::read(at.make().path).unwrap();
    let mut other = Device::with_practice();
    let other_backup = fs::read(other.make().path).unwrap();
    let cut = own.get(..own.len() - 1_024).unwrap().to_vec();
    let refusals = [
        (b"a letter".to_vec(), "error-backup-none"),
        (cut, "error-backup-damaged"),
        (other_backup, "error-backup-other-practice"),
    ];
    for (bytes, id) in refusals {
        at.part(0, &bytes).unwrap();
        assert_eq!(message(at.restore(PASSPHRASE)), id);
        assert!(at.data().join(INCOMING).exists(), "another passphrase can be tried");
        assert_eq!(at.chart(birth), before);
    }
    let mut empty = Device::empty();
    empty.hand_over(&own);
    assert_eq!(message(empty.restore("seven quiet heron")), "error-backup-passphrase");
    let Response::Status(status) = empty.call(Request::Status).unwrap() else { unreachable!() };
    assert_eq!(status.door, Door::NoPractice);
    empty.restore(PASSPHRASE).unwrap();
}

#[test]
fn parts_fit_each_other_and_the_first_begins_anew() {
    let mut at = Device::empty();
    let incoming = at.data().join(INCOMING);
    at.part(0, b"first").unwrap();
    at.part(5, b" second").unwrap();
    for offset in [3, 11, 13, u64::MAX] {
        assert_eq!(message(at.part(offset, b"x")), "error-backup-part", "{offset}");
    }
    assert_eq!(fs::read(&incoming).unwrap(), b"first second");
    at.part(0, &vec![7; 1 << 20]).unwrap();
    assert_eq!(message(at.part(1 << 20, &vec![7; (1 << 20) + 1])), "error-backup-part");
    assert_eq!(message(at.call(Request::BackupPart { offset: 1 << 20, base64: "no base64".to_owned() })), "error-backup-part");
    assert_eq!(fs::metadata(&incoming).unwrap().len(), 1 << 20);
    at.part(0, b"anew").unwrap();
    assert_eq!(fs::read(&incoming).unwrap(), b"anew");
}

#[test]
fn backups_are_listed_newest_first_and_tell_what_waits() {
    let mut at = Device::with_practice();
    at.birth();
    at.make();
    at.make();
    at.clock.advance(60_000);
    at.lock();
    at.call(Request::LockedMark { mark: LockedMark::BabyBorn, ago_ms: 0 }).unwrap();
    let marked = fs::read_dir(at.data().join("inbox")).unwrap().map(|file| file.unwrap().path());
    let marked = marked.filter(|path| path.extension().is_some_and(|name| name == "inbox")).collect::<Vec<_>>();
    let kept = fs::read(marked.first().unwrap()).unwrap();
    at.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    assert_eq!(at.make().waiting, 0, "it was brought in");
    fs::write(marked.first().unwrap(), kept).unwrap();
    assert_eq!(at.make().waiting, 1);
    let folder = PathBuf::from(at.list().folder);
    fs::write(folder.join("secundine-backup-2026-11-25-0239.tar.unfinished"), "half").unwrap();
    fs::write(folder.join("letter.unfinished"), "somebody else's").unwrap();
    at.clock.advance(60_000);
    at.make();
    let view = at.list();
    let lines: Vec<(&str, &str)> = view.backups.iter().map(|line| (line.file.as_str(), line.made.as_str())).collect();
    let expected = [
        ("secundine-backup-2026-11-25-0242.tar", "2026-11-25 02:42"),
        ("secundine-backup-2026-11-25-0241-2.tar", "2026-11-25 02:41"),
        ("secundine-backup-2026-11-25-0241.tar", "2026-11-25 02:41"),
        ("secundine-backup-2026-11-25-0240-2.tar", "2026-11-25 02:40"),
        ("secundine-backup-2026-11-25-0240.tar", "2026-11-25 02:40"),
    ];
    assert_eq!(lines, expected);
    assert!(view.backups.iter().all(|line| line.bytes > 4_000));
    assert!(!folder.join("secundine-backup-2026-11-25-0239.tar.unfinished").exists(), "what was killed is tidied up");
    assert!(folder.join("letter.unfinished").exists());
}

#[test]
fn what_is_recorded_while_it_is_made_does_not_wait_and_is_in_the_next() {
    let mut at = Device::with_practice();
    let birth = at.birth();
    let Response::MakeBackup(view) = at.call(Request::MakeBackup).unwrap() else { unreachable!() };
    assert_eq!((view.asked, view.backups.len()), (Some(BackupState::Going { percent: 0 }), 0));
    at.note(birth, "Kettle on");
    // Asked twice, it is the one that is being made.
    at.call(Request::MakeBackup).unwrap();
    at.session.finish_backup();
    let view = at.list();
    let Some(BackupState::Made(made)) = view.asked else { unreachable!("{view:?}") };
    assert_eq!((view.backups.len(), at.make().entries), (1, made.entries + 1));
}

#[test]
fn none_is_made_of_a_practice_that_was_locked_meanwhile() {
    let mut at = Device::with_practice();
    at.call(Request::MakeBackup).unwrap();
    at.lock();
    at.session.finish_backup();
    let view = at.list();
    assert_eq!((view.asked, view.backups.len()), (None, 0));
    at.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    at.make();
    assert_eq!(at.list().backups.len(), 1);
}

#[test]
fn rest_hides_the_names_until_it_is_made_and_locks_then() {
    let mut at = Device::with_practice();
    at.call(Request::MakeBackup).unwrap();
    let rest = |at: &mut Device| match at.call(Request::Rest).unwrap() {
        Response::Rest(status) => (status.door, status.names_hidden),
        other => unreachable!("{other:?}"),
    };
    assert_eq!(rest(&mut at), (Door::Open, true));
    at.session.finish_backup();
    assert_eq!(rest(&mut at), (Door::Locked, false));
    assert_eq!(at.list().backups.len(), 1);
}

#[test]
fn one_that_fails_is_told_for_who_asks_later() {
    let mut at = Device::with_practice();
    at.call(Request::MakeBackup).unwrap();
    fs::remove_dir_all(at.folder.path().join("records")).unwrap();
    at.session.finish_backup();
    let Some(BackupState::Failed { said }) = at.list().asked else { unreachable!() };
    assert_eq!(said.id, "error-backup-not-made");
}

#[test]
fn a_backup_that_cannot_be_written_says_so() {
    let mut at = Device::with_practice();
    fs::write(at.folder.path().join("records"), "a file in the way").unwrap();
    assert_eq!(message(at.call(Request::MakeBackup)), "error-backup-not-made");
    let mut blocked = Device::empty();
    fs::write(blocked.data(), "a file in the way").unwrap();
    assert_eq!(message(blocked.part(0, b"first")), "error-restore-not-made");
}

#[test]
fn everything_that_was_not_taken_in_has_words_and_many_are_counted() {
    let device = DeviceId([0xab; 16]);
    let made = Stamp { wall_ms: 0, offset_min: 0, zone: None, boot: None };
    let kinds = [
        MisfitKind::Missing,
        MisfitKind::Changed,
        MisfitKind::Unlinked,
        MisfitKind::Unsigned,
        MisfitKind::NoKey,
        MisfitKind::Rewritten,
    ];
    let entry = |n, kind| Misfit::Entry { device, n, birth: None, kind };
    let refused = kinds.map(|kind| entry(7, kind)).to_vec();
    let damaged_keys = vec![PASSPHRASE_KEY];
    let (erased, damaged_files) = (9, 1);
    let restored =
        Restored { made, added: 0, known: 0, erased, births: 0, refused, renewed: false, files: 0, damaged_files, damaged_keys };
    let said: Vec<String> = told(&restored).iter().map(|message| Words::english().say(message)).collect();
    assert_eq!((said.len(), left_out(&restored)), (9, 6 + 1 + 9 + 1));
    assert!(said.first().unwrap().contains(PASSPHRASE_KEY));
    assert_eq!(said.get(7).unwrap(), "9 entries belong to births that were erased. They stay erased.");
    assert_eq!(said.get(8).unwrap(), "1 picture or sound in the backup was altered and is not put back.");
    assert!(said.iter().skip(1).take(6).all(|line| line.contains('7') && line.contains("abababab")), "{said:?}");
    let refused = (1..=70).map(|n| entry(n, MisfitKind::Changed)).collect();
    let many = told(&Restored { refused, damaged_keys: Vec::new(), erased: 0, damaged_files: 0, ..restored });
    assert_eq!(many.len(), 51);
    assert_eq!(many.last(), Some(&Message::new("restored-further").with("count", 20_u32)));
}
