//! Phones of one practice that share through a folder: joining by codes, rounds in a thread of their own, roles, removal.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::path::Path;
use std::sync::Arc;
use std::time::{Duration, Instant};

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use secundine_domain::fact::Practice;
use secundine_domain::time::Stamp;
use secundine_session::api::{
    ApiError, BackupState, BackupsView, Request, Response, RestoredView, SyncRole, SyncState, SyncView, TypedPlace,
};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session, SharedSession};
use tempfile::TempDir;

const PASSPHRASE: &str = "seven quiet herons";
const START: i64 = 1_795_570_800_000;

struct Phone {
    session: SharedSession,
    clock: HandClock,
    folder: TempDir,
}

impl Phone {
    /// One that has no practice yet.
    fn empty() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let clock = HandClock::at(Stamp { wall_ms: START, offset_min: 60, zone: None, boot: None });
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        Self { session: SharedSession::new(Session::new(paths, Arc::new(clock.clone()))), clock, folder }
    }

    fn new(practitioner: &str) -> Self {
        let phone = Self::empty();
        let practice = Practice {
            name: format!("Practice of {practitioner}"),
            practitioner: practitioner.to_owned(),
            role: "Midwife".to_owned(),
            protocol: None,
        };
        phone.call(Request::CreatePractice { practice, passphrase: PASSPHRASE.to_owned() }).unwrap();
        phone
    }

    fn call(&self, request: Request) -> Result<Response, ApiError> {
        self.session.call(request)
    }

    fn refused(&self, request: Request) -> String {
        self.call(request).unwrap_err().message.id
    }

    fn view(&self) -> SyncView {
        match self.call(Request::Sync).unwrap() {
            Response::Sync(view) => view,
            other => unreachable!("{other:?}"),
        }
    }

    /// Makes a round and waits for its end; one that was asked for before is at its end first.
    fn round(&self) -> SyncView {
        self.still();
        self.call(Request::SyncNow { by_hand: true, metered: false }).unwrap();
        self.still()
    }

    /// Waits until nothing goes on, and nothing begins.
    fn still(&self) -> SyncView {
        let begun = Instant::now();
        let mut looks = 0;
        loop {
            let view = self.view();
            looks = if matches!(view.state, SyncState::Going { .. }) { 0 } else { looks + 1 };
            if looks == 10 {
                return view;
            }
            assert!(begun.elapsed() < Duration::from_secs(60), "it does not come to its end: {view:?}");
            std::thread::sleep(Duration::from_millis(5));
        }
    }

    fn births(&self) -> usize {
        match self.call(Request::Births { skip: 0, take: 50 }).unwrap() {
            Response::Births { births, .. } => births.len(),
            other => unreachable!("{other:?}"),
        }
    }

    fn practice(&self) -> Practice {
        match self.call(Request::Status).unwrap() {
            Response::Status(status) => status.practice.unwrap(),
            other => unreachable!("{other:?}"),
        }
    }

    fn back_up(&self) -> Vec<u8> {
        self.call(Request::MakeBackup).unwrap();
        loop {
            match self.call(Request::Backups).unwrap() {
                Response::Backups(BackupsView { asked: Some(BackupState::Made(made)), .. }) => {
                    return std::fs::read(made.path).unwrap();
                }
                Response::Backups(BackupsView { asked: Some(BackupState::Going { .. }), .. }) => {
                    std::thread::sleep(Duration::from_millis(5));
                }
                other => unreachable!("{other:?}"),
            }
        }
    }

    fn restore(&self, backup: &[u8]) -> RestoredView {
        let base64 = BASE64_STANDARD.encode(backup);
        self.call(Request::BackupPart { offset: 0, base64 }).unwrap();
        match self.call(Request::Restore { passphrase: PASSPHRASE.to_owned() }).unwrap() {
            Response::Restore(view) => view,
            other => unreachable!("{other:?}"),
        }
    }

    /// The check of the records finds nothing.
    fn is_whole(&self) {
        let Response::Verify(verified) = self.call(Request::Verify).unwrap() else { unreachable!() };
        assert!(verified.ok, "{verified:?}");
    }

    fn born(&self) -> secundine_domain::entry::BirthId {
        match self.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() {
            Response::BabyBornNow { birth, .. } => birth,
            other => unreachable!("{other:?}"),
        }
    }

    /// Lets another phone in, and gives the words that each of them shows.
    fn welcome(&self, other: &Self, role: SyncRole) -> (Vec<String>, Vec<String>) {
        let Response::SyncCard(card) = other.call(Request::SyncCard).unwrap() else { unreachable!() };
        let read = self.call(Request::ReadSyncCode { picture: None, text: Some(card.text) }).unwrap();
        let Response::ReadSyncCode(read) = read else { unreachable!() };
        assert_eq!(read.label, Some(other.practice().practitioner));
        let Response::AdmitToSync(welcome) = self.call(Request::AdmitToSync { code: read.text, role }).unwrap() else {
            unreachable!()
        };
        assert!(welcome.code.side > 0 && welcome.code.side <= 133, "a code of {} modules", welcome.code.side);
        let read = other.call(Request::ReadSyncCode { picture: None, text: Some(welcome.text.clone()) }).unwrap();
        let Response::ReadSyncCode(read) = read else { unreachable!() };
        assert_eq!((read.label, &read.words), (None, &welcome.words), "said before anything is done");
        assert!(!other.view().shared);
        let Response::JoinSync { words } = other.call(Request::JoinSync { code: welcome.text }).unwrap() else { unreachable!() };
        (welcome.words, words)
    }
}

fn folder(path: &Path) -> TypedPlace {
    TypedPlace::Folder { path: path.to_owned() }
}

/// Two phones that share through this folder.
fn two(place: &Path, role: SyncRole) -> (Phone, Phone, String) {
    let (ida, mari) = (Phone::new("Ida Lindqvist"), Phone::new("Mari Solberg"));
    let Response::FoundSync { recovery } = ida.call(Request::FoundSync { place: folder(place) }).unwrap() else { unreachable!() };
    let (one, other) = ida.welcome(&mari, role);
    assert_eq!((one.len(), one), (4, other));
    (ida, mari, recovery.identity)
}

#[test]
fn two_phones_join_in_person_and_have_each_others_births() {
    let place = tempfile::tempdir().unwrap();
    let (ida, mari, _) = two(place.path(), SyncRole::Member);
    ida.born();
    mari.born();
    for phone in [&ida, &mari, &ida] {
        let view = phone.round();
        assert_eq!((view.failure, view.troubles.len()), (None, 0));
    }
    assert_eq!((ida.births(), mari.births()), (2, 2));
    let view = mari.view();
    assert_eq!((view.waiting, view.waiting_files, view.outside), (0, 0, false));
    assert_eq!(view.members.iter().map(|member| member.label.as_str()).filter(|label| label.contains("Ida")).count(), 1);
    // Who works on a phone stays who it is; the name of the practice is everybody's.
    assert_eq!(mari.practice().practitioner, "Mari Solberg");
    assert_eq!(ida.practice().practitioner, "Ida Lindqvist");
    assert_eq!(ida.practice().name, mari.practice().name);
}

#[test]
fn a_round_goes_on_while_marks_are_made_and_ends_with_the_lock() {
    let place = tempfile::tempdir().unwrap();
    let (ida, mari, _) = two(place.path(), SyncRole::Member);
    ida.round();
    for _ in 0..20 {
        ida.call(Request::SyncNow { by_hand: true, metered: true }).unwrap();
        ida.born();
    }
    ida.round();
    mari.round();
    assert_eq!(mari.births(), 20);
    ida.born();
    ida.call(Request::SyncNow { by_hand: true, metered: true }).unwrap();
    ida.call(Request::Lock).unwrap();
    ida.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    assert_eq!(ida.round().failure, None);
    mari.round();
    assert_eq!(mari.births(), 21);
}

#[test]
fn a_place_that_is_gone_is_told_and_nothing_is_lost_and_the_pause_grows() {
    let place = tempfile::tempdir().unwrap();
    let stick = place.path().join("stick");
    std::fs::create_dir(&stick).unwrap();
    let (ida, mari, _) = two(&stick, SyncRole::Member);
    ida.round();
    std::fs::rename(&stick, place.path().join("pulled-out")).unwrap();
    ida.born();
    for pause in [30, 60, 120] {
        let view = ida.round();
        assert_eq!(view.failure.unwrap().id, "sync-no-bucket");
        assert!(view.waiting > 0);
        assert_eq!(view.state, SyncState::Again { seconds: pause });
    }
    std::fs::rename(place.path().join("pulled-out"), &stick).unwrap();
    // Not yet; then by itself.
    ida.call(Request::SyncNow { by_hand: false, metered: false }).unwrap();
    assert!(ida.view().failure.is_some());
    ida.clock.advance(121_000);
    ida.call(Request::SyncNow { by_hand: false, metered: false }).unwrap();
    let view = ida.round();
    assert_eq!((view.failure, view.waiting), (None, 0));
    mari.round();
    assert_eq!(mari.births(), 1);
    assert!(matches!(mari.call(Request::PauseSync).unwrap(), Response::PauseSync(view) if view.state == SyncState::Paused));
}

#[test]
fn a_student_writes_and_does_not_sign() {
    let place = tempfile::tempdir().unwrap();
    let (ida, mari, _) = two(place.path(), SyncRole::Student);
    ida.round();
    let birth = mari.born();
    mari.round();
    assert_eq!(mari.refused(Request::Sign { birth, signer: None }), "error-student-signs");
    ida.round();
    ida.call(Request::Sign { birth, signer: None }).unwrap();
    let device = mari.view().members.into_iter().find(|member| member.this).unwrap().device;
    assert_eq!(mari.refused(Request::SetSyncRole { device: device.clone(), role: SyncRole::Lead }), "sync-not-lead");
    ida.call(Request::SetSyncRole { device, role: SyncRole::Member }).unwrap();
    ida.round();
    mari.round();
    mari.call(Request::Sign { birth, signer: None }).unwrap();
}

#[test]
fn a_removed_phone_says_so_and_a_sheet_brings_the_practice_back() {
    let place = tempfile::tempdir().unwrap();
    let (ida, mari, sheet) = two(place.path(), SyncRole::Member);
    ida.born();
    ida.round();
    mari.round();
    let device = mari.view().members.into_iter().find(|member| member.this).unwrap().device;
    ida.call(Request::RemoveFromSync { device }).unwrap();
    ida.born();
    ida.round();
    assert!(mari.round().outside);
    assert_eq!((ida.births(), mari.births()), (2, 1));
    let new = Phone::new("Noor Haddad");
    new.call(Request::RecoverSync { sheet, place: folder(place.path()) }).unwrap();
    let begun = Instant::now();
    while new.births() < 2 {
        assert!(begun.elapsed() < Duration::from_secs(60), "{:?}", new.view());
        std::thread::sleep(Duration::from_millis(20));
    }
    assert!(new.view().leads);
}

#[test]
fn codes_and_places_that_do_not_fit_are_told() {
    let place = tempfile::tempdir().unwrap();
    let (ida, mari, _) = two(place.path(), SyncRole::Member);
    let other = Phone::new("Other");
    let Response::SyncCard(card) = other.call(Request::SyncCard).unwrap() else { unreachable!() };
    let member = SyncRole::Member;
    assert_eq!(mari.refused(Request::AdmitToSync { code: card.text.clone(), role: member }), "sync-not-lead");
    let Response::AdmitToSync(welcome) = ida.call(Request::AdmitToSync { code: card.text.clone(), role: member }).unwrap() else {
        unreachable!()
    };
    let thief = Phone::new("Thief");
    thief.call(Request::SyncCard).unwrap();
    assert_eq!(thief.refused(Request::JoinSync { code: welcome.text.clone() }), "sync-wrong-code");
    assert_eq!(thief.refused(Request::ReadSyncCode { picture: None, text: Some(welcome.text.clone()) }), "sync-wrong-code");
    assert_eq!(ida.refused(Request::ReadSyncCode { picture: None, text: Some(welcome.text.clone()) }), "sync-shares-already");
    assert_eq!(other.refused(Request::JoinSync { code: card.text }), "error-code-other");
    assert_eq!(ida.refused(Request::FoundSync { place: folder(place.path()) }), "sync-shares-already");
    assert_eq!(thief.refused(Request::FoundSync { place: folder(Path::new("here")) }), "sync-place-path");
    let bucket = TypedPlace::S3 {
        endpoint: "https://store.example".to_owned(),
        region: String::new(),
        bucket: "practice".to_owned(),
        key: "k".to_owned(),
        secret: String::new(),
    };
    assert_eq!(thief.refused(Request::FoundSync { place: bucket }), "sync-place-missing");
    thief.call(Request::TrySyncPlace { place: folder(&place.path().join("nowhere")) }).unwrap();
    let begun = Instant::now();
    let told = loop {
        match thief.view().tried {
            Some(secundine_session::api::PlaceTried::Told { said, well }) => break (said.id, well),
            _ => assert!(begun.elapsed() < Duration::from_secs(60)),
        }
        std::thread::sleep(Duration::from_millis(5));
    };
    assert_eq!(told, ("sync-no-bucket".to_owned(), false));
}

#[test]
fn a_birth_that_one_wants_erased_is_shown_until_another_asks_too() {
    let place = tempfile::tempdir().unwrap();
    let (ida, mari, _) = two(place.path(), SyncRole::Member);
    let birth = ida.born();
    for phone in [&ida, &mari, &ida] {
        phone.round();
    }
    mari.clock.advance(90_000);
    mari.call(Request::AskErasure { birth }).unwrap();
    for phone in [&mari, &ida] {
        let view = phone.round();
        let [asked] = view.erasures.as_slice() else { unreachable!("{:?}", view.erasures) };
        assert_eq!((asked.birth, asked.who.as_deref(), asked.at.clock.as_str()), (birth, Some("Mari Solberg"), "02:41:30"));
        assert_eq!(asked.this, std::ptr::eq(phone, &mari));
        assert!(asked.label.as_ref().is_some_and(|label| !label.is_empty()));
    }
    ida.call(Request::AskErasure { birth }).unwrap();
    for phone in [&ida, &mari] {
        assert_eq!(phone.round().erasures, []);
        assert_eq!(phone.births(), 0);
    }
}

#[test]
fn what_waits_for_a_day_is_overdue_and_what_was_signed_does_not_wait_for_its_time() {
    let place = tempfile::tempdir().unwrap();
    let (ida, _, _) = two(place.path(), SyncRole::Member);
    assert_eq!(ida.round().last_good.unwrap().clock, "02:40:00", "a round that came to its end is noted");
    ida.clock.advance(25 * 60 * 60_000);
    assert!(!ida.view().overdue, "nothing waits");
    let birth = ida.born();
    assert!(ida.view().overdue);
    ida.call(Request::Lock).unwrap();
    ida.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    assert_eq!(ida.view().last_good.unwrap().clock, "02:40:00", "it outlives the session");
    let view = ida.round();
    assert_eq!((view.overdue, view.last_good.unwrap().clock.as_str()), (false, "03:40:00"));
    // A round by itself waits its quarter of an hour; a signature does not.
    ida.clock.advance(60_000);
    ida.call(Request::SyncNow { by_hand: false, metered: false }).unwrap();
    assert_eq!(ida.still().last_good.unwrap().clock, "03:40:00");
    ida.call(Request::Sign { birth, signer: None }).unwrap();
    ida.call(Request::SyncNow { by_hand: false, metered: false }).unwrap();
    let view = ida.still();
    assert_eq!((view.waiting, view.last_good.unwrap().clock.as_str()), (0, "03:41:00"));
}

#[test]
fn a_phone_that_was_salvaged_is_a_new_device_and_joins_again() {
    let place = tempfile::tempdir().unwrap();
    let (ida, mari, _) = two(place.path(), SyncRole::Member);
    ida.born();
    mari.born();
    for phone in [&ida, &mari, &ida] {
        phone.round();
    }
    mari.call(Request::Lock).unwrap();
    let database = mari.folder.path().join("data").join(secundine_store::DATABASE);
    let mut bytes = std::fs::read(&database).unwrap();
    bytes.iter_mut().take(4096).for_each(|byte| *byte = 0);
    std::fs::write(&database, bytes).unwrap();
    mari.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap_err();
    mari.call(Request::Salvage { passphrase: PASSPHRASE.to_owned() }).unwrap();
    assert_eq!((mari.view().shared, mari.births()), (false, 2));
    let (one, other) = ida.welcome(&mari, SyncRole::Member);
    assert_eq!(one, other);
    mari.born();
    for phone in [&mari, &ida, &mari] {
        let view = phone.round();
        assert_eq!((view.failure, view.troubles), (None, Vec::new()));
    }
    assert_eq!((ida.births(), mari.births()), (3, 3));
    assert_eq!(ida.view().members.len(), 3, "who it was stays in the roster until a lead removes it");
    ida.is_whole();
    mari.is_whole();
}

#[test]
fn no_backup_brings_back_what_was_erased_for_longer_than_until_its_phone_joins() {
    let place = tempfile::tempdir().unwrap();
    let (ida, mari, _) = two(place.path(), SyncRole::Member);
    let birth = ida.born();
    mari.born();
    for phone in [&ida, &mari, &ida] {
        phone.round();
    }
    let before = mari.back_up();
    for phone in [&ida, &mari] {
        phone.call(Request::AskErasure { birth }).unwrap();
    }
    for phone in [&ida, &mari, &ida] {
        phone.round();
    }
    mari.clock.advance(60_000);
    let after = mari.back_up();
    assert_eq!(mari.births(), 1);
    mari.is_whole();

    let told = mari.restore(&before);
    assert_eq!((told.added, told.births), (0, 0));
    assert_eq!(told.refused.iter().map(|why| why.id.as_str()).collect::<Vec<_>>(), ["restored-erased"]);
    assert_eq!(mari.births(), 1);
    mari.is_whole();

    // Each is a new phone of the practice; the older one knows of nothing until it has joined.
    for (backup, births) in [(&after, 1), (&before, 2)] {
        let phone = Phone::empty();
        assert_eq!(phone.restore(backup).refused, []);
        assert_eq!(phone.births(), births);
        phone.is_whole();
        let (one, other) = ida.welcome(&phone, SyncRole::Member);
        assert_eq!(one, other);
        let view = phone.round();
        assert_eq!((view.failure, view.troubles), (None, Vec::new()));
        assert_eq!(phone.births(), 1);
        phone.is_whole();
        ida.round();
        ida.is_whole();
    }
}
