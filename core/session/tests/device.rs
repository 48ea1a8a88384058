//! The key store of the device's system through the one door: added, used, failing, taken out.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

#[path = "common/vault.rs"]
mod vault;

use std::sync::Arc;

use secundine_domain::fact::Practice;
use secundine_domain::message::Message;
use secundine_domain::time::{Boot, Stamp};
use secundine_session::api::{ApiError, Door, ErrorCode, KeysView, RehearsalMode, Request, Response, Slot, StatusView};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use secundine_store::PlatformError;
use tempfile::TempDir;
use vault::Vault;

const PASSPHRASE: &str = "seven quiet herons";
const ALL: [Slot; 3] = [Slot::Passphrase, Slot::Recovery, Slot::Device];

struct Phone {
    session: Session,
    clock: HandClock,
    vault: Arc<Vault>,
    folder: TempDir,
    recovery: String,
}

impl Phone {
    /// A practice, founded and open.
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let boot = Some(Boot { id: "first".to_owned(), since_ms: 9_000_000 });
        let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot });
        let vault = Arc::new(Vault::default());
        let mut session = Session::with_platform(paths(&folder), Arc::new(clock.clone()), Arc::clone(&vault) as _);
        let (name, practitioner, role) = ("Heron House".to_owned(), "Ida".to_owned(), "midwife".to_owned());
        let practice = Practice { name, practitioner, role, protocol: None };
        let passphrase = PASSPHRASE.to_owned();
        let Response::CreatePractice { recovery } = session.call(Request::CreatePractice { practice, passphrase }).unwrap()
        else {
            unreachable!()
        };
        Self { session, clock, vault, folder, recovery: recovery.identity }
    }

    /// The same with a key for this device.
    fn with_key() -> Self {
        let mut phone = Self::new();
        let recovery = phone.recovery.clone();
        assert_eq!(phone.add(&recovery).unwrap().slots, ALL);
        phone
    }

    fn restart(&mut self) {
        let clock = Arc::new(self.clock.clone());
        self.session = Session::with_platform(paths(&self.folder), clock, Arc::clone(&self.vault) as _);
    }

    fn lock(&mut self) {
        self.session.call(Request::Lock).unwrap();
    }

    fn add(&mut self, passphrase: &str) -> Result<KeysView, ApiError> {
        match self.session.call(Request::AddDeviceKey { passphrase: passphrase.to_owned() })? {
            Response::AddDeviceKey(view) => Ok(view),
            _ => unreachable!(),
        }
    }

    fn revoke(&mut self, slot: Slot, passphrase: &str) -> Result<KeysView, ApiError> {
        match self.session.call(Request::RevokeKey { slot, passphrase: passphrase.to_owned() })? {
            Response::RevokeKey(view) => Ok(view),
            _ => unreachable!(),
        }
    }

    fn keys(&mut self) -> KeysView {
        let Response::Keys(view) = self.session.call(Request::Keys).unwrap() else { unreachable!() };
        view
    }

    fn by_device(&mut self) -> Result<StatusView, ApiError> {
        match self.session.call(Request::UnlockByDevice)? {
            Response::UnlockByDevice(view) => Ok(view),
            _ => unreachable!(),
        }
    }

    fn unlock(&mut self, passphrase: &str) -> Result<Response, ApiError> {
        self.session.call(Request::Unlock { passphrase: passphrase.to_owned() })
    }

    fn status(&mut self) -> StatusView {
        let Response::Status(view) = self.session.call(Request::Status).unwrap() else { unreachable!() };
        view
    }

    /// What unlocking by the device answers instead.
    fn refused(&mut self) -> String {
        let error = self.by_device().unwrap_err();
        assert_eq!(error.code, ErrorCode::Device);
        error.message.id
    }
}

fn paths(folder: &TempDir) -> Paths {
    Paths { data: folder.path().join("data"), records: folder.path().join("records") }
}

fn code<T>(result: Result<T, ApiError>) -> ErrorCode {
    result.err().unwrap().code
}

#[test]
fn the_device_opens_the_practice_and_brings_in_what_was_marked() {
    let mut phone = Phone::with_key();
    assert!(phone.status().device_key);
    phone.lock();
    let mark = secundine_session::api::LockedMark::BabyBorn;
    phone.session.call(Request::LockedMark { mark, ago_ms: 0 }).unwrap();
    let status = phone.by_device().unwrap();
    assert_eq!((status.door, status.drained.unwrap().entries), (Door::Open, 2));
    phone.restart();
    assert_eq!(phone.status().door, Door::Locked);
    assert!(phone.status().device_key, "the door may offer it");
    assert_eq!(phone.by_device().unwrap().door, Door::Open);
    assert_eq!(phone.by_device().unwrap().door, Door::Open, "once more changes nothing");
}

#[test]
fn the_device_does_not_wait_for_wrong_tries_and_a_failing_one_counts_as_none() {
    let mut phone = Phone::with_key();
    phone.lock();
    for how in [PlatformError::Refused, PlatformError::Failed("busy".to_owned()), PlatformError::Refused] {
        phone.vault.fail(Some(how));
        phone.refused();
    }
    phone.vault.fail(None);
    for _ in 0..3 {
        assert_eq!(code(phone.unlock("AGE-SECRET-KEY-1")), ErrorCode::WrongPassphrase);
    }
    assert_eq!(code(phone.unlock(PASSPHRASE)), ErrorCode::Wait);
    assert_eq!(phone.by_device().unwrap().door, Door::Open);
    phone.lock();
    phone.clock.advance(1_000);
    phone.unlock(PASSPHRASE).unwrap();
}

#[test]
fn a_device_that_does_not_open_tells_to_use_the_passphrase() {
    let mut phone = Phone::with_key();
    phone.lock();
    let words = secundine_record::words::Words::english();
    let ways = [
        (PlatformError::Refused, "error-device-refused"),
        (PlatformError::Failed("busy".to_owned()), "error-device-failed"),
        (PlatformError::NotThere, "error-device-key-lost"),
    ];
    for (how, id) in ways {
        phone.vault.fail(Some(how));
        assert_eq!(phone.refused(), id);
        assert!(words.say(&Message::new(id)).contains("passphrase"));
    }
    phone.vault.fail(None);
    phone.vault.restored();
    assert_eq!(phone.refused(), "error-device-key-lost");
    phone.unlock(PASSPHRASE).unwrap();
    phone.add(PASSPHRASE).unwrap();
    phone.lock();
    assert_eq!(phone.by_device().unwrap().door, Door::Open, "made anew");
}

#[test]
fn without_a_key_store_none_is_offered() {
    let mut phone = Phone::with_key();
    let clock = Arc::new(phone.clock.clone());
    phone.session = Session::new(paths(&phone.folder), clock);
    assert!(!phone.status().device_key);
    assert_eq!(phone.refused(), "error-no-device-store");
    let recovery = phone.recovery.clone();
    phone.unlock(&recovery).unwrap();
    assert_eq!(phone.keys(), KeysView { slots: ALL[..2].to_vec(), device_offered: false });
    assert_eq!(code(phone.add(&recovery)), ErrorCode::Device);
    let mut other = Phone::new();
    assert_eq!(other.keys(), KeysView { slots: ALL[..2].to_vec(), device_offered: true });
    other.lock();
    assert_eq!(other.refused(), "error-no-device-key");
}

#[test]
fn a_key_is_taken_out_by_the_passphrase_and_can_be_made_again() {
    let mut phone = Phone::with_key();
    let recovery = phone.recovery.clone();
    let stays = phone.revoke(Slot::Passphrase, PASSPHRASE).unwrap_err();
    assert_eq!(stays.message, Message::new("error-passphrase-stays"));
    assert_eq!(code(phone.revoke(Slot::Device, &recovery)), ErrorCode::WrongPassphrase);
    assert_eq!(phone.revoke(Slot::Device, PASSPHRASE).unwrap().slots, ALL[..2]);
    assert_eq!(phone.vault.held(), 0);
    assert_eq!(phone.revoke(Slot::Recovery, PASSPHRASE).unwrap().slots, ALL[..1]);
    assert!(!phone.status().device_key);
    phone.lock();
    assert_eq!(phone.refused(), "error-no-device-key");
    assert_eq!(phone.unlock(&recovery).unwrap_err().message, Message::new("error-no-recovery-key"));
    phone.unlock(PASSPHRASE).unwrap();
    assert_eq!(code(phone.revoke(Slot::Recovery, PASSPHRASE)), ErrorCode::NotFound);
    let passphrase = PASSPHRASE.to_owned();
    let Response::RenewRecovery { recovery } = phone.session.call(Request::RenewRecovery { passphrase }).unwrap() else {
        unreachable!()
    };
    assert_eq!(phone.keys().slots, ALL[..2]);
    phone.lock();
    phone.unlock(&recovery.identity).unwrap();
}

#[test]
fn keys_are_seen_and_changed_in_the_open_practice_alone_and_wrong_tries_wait() {
    let mut phone = Phone::with_key();
    phone.session.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Drill }).unwrap();
    assert_eq!(code(phone.session.call(Request::Keys)), ErrorCode::Rehearsal);
    assert_eq!(code(phone.by_device()), ErrorCode::Rehearsal);
    assert_eq!(code(phone.add(PASSPHRASE)), ErrorCode::Rehearsal);
    assert_eq!(code(phone.revoke(Slot::Device, PASSPHRASE)), ErrorCode::Rehearsal);
    phone.session.call(Request::EndRehearsal).unwrap();
    for _ in 0..3 {
        assert_eq!(code(phone.add("AGE-SECRET-KEY-1")), ErrorCode::WrongPassphrase);
    }
    assert_eq!(code(phone.revoke(Slot::Device, PASSPHRASE)), ErrorCode::Wait);
    phone.lock();
    assert_eq!(code(phone.session.call(Request::Keys)), ErrorCode::Locked);
    assert_eq!(code(phone.add(PASSPHRASE)), ErrorCode::Locked);
    assert_eq!(code(phone.revoke(Slot::Device, PASSPHRASE)), ErrorCode::Locked);
}

#[test]
fn a_wipe_leaves_nothing_in_the_device() {
    let mut phone = Phone::with_key();
    let (passphrase, words) = (phone.recovery.clone(), "Heron House".to_owned());
    phone.session.call(Request::Wipe { passphrase, words }).unwrap();
    assert_eq!((phone.vault.held(), code(phone.by_device())), (0, ErrorCode::NoPractice));
    assert_eq!(std::fs::read_dir(paths(&phone.folder).data).unwrap().count(), 0);
}

#[test]
fn a_secret_that_the_device_did_not_let_go_of_is_tried_again_by_the_next_run() {
    let mut phone = Phone::with_key();
    phone.vault.fail(Some(PlatformError::Failed("busy".to_owned())));
    let left = phone.revoke(Slot::Device, PASSPHRASE).unwrap_err();
    assert_eq!(left.message, Message::new("error-device-key-left"));
    assert_eq!((phone.keys().slots, phone.vault.held()), (ALL[..2].to_vec(), 1));
    phone.vault.fail(None);
    phone.restart();
    assert_eq!(phone.vault.held(), 0);
}
