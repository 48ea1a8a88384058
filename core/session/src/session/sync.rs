//! Sharing with the other phones of the practice: who belongs to it, and what goes on.

use qrcodegen::QrCodeEcc;
use secundine_domain::entry::{BirthId, DeviceId};
use secundine_domain::file::FileId;
use secundine_domain::time::Stamp;
use secundine_store::Store;
use secundine_sync::{Card, Place, Role, Roster, SyncError};

use super::Session;
use crate::api::{
    ApiError, ErasureView, ErrorCode, MemberView, PlaceTried, Response, SyncCode, SyncCodeRead, SyncRole, SyncState, SyncTime,
    SyncView, TypedPlace,
};
use crate::clock::Clock;
use crate::code::{self, Kind};
use crate::practice::OpenPractice;
use crate::qr;
use crate::recovery;
use crate::sync::{Outcome, Task, error_words, place_view, placed, trouble_view};
use crate::views::counted;

/// What has waited for longer is told where the births are, ms (ours).
const OVERDUE_MS: i64 = 24 * 60 * 60_000;

impl Session {
    /// How the phones of the practice share.
    pub(super) fn sync_view(&mut self, now: &Stamp) -> Result<SyncView, ApiError> {
        let stored = self.sync.stored_bytes(&self.paths.data, now);
        let hidden = self.hidden.is_some();
        let open = self.really_open()?;
        let me = secundine_sync::me(open.store()).map_err(told)?;
        let roster = if me.is_some() { secundine_sync::roster(open.store()).map_err(told)? } else { Default::default() };
        let erasures = roster.asked().map(|asked| open.erasure(asked, &roster, hidden, now)).collect();
        let store = open.store();
        let this = store.device();
        let inside = roster.member(this).is_some() && secundine_sync::current(store).map_err(told)?.is_some();
        // Who has just joined is in nobody's roster here until the first round.
        let fresh = me.is_some() && roster.members.is_empty();
        let (waiting, files) = match me.is_some() {
            true => {
                let waiting = secundine_sync::waiting(store).map_err(told)?;
                (waiting, secundine_sync::waiting_files(store).map_err(told)?.len())
            }
            false => (0, 0),
        };
        let peers = if me.is_some() { secundine_sync::peers(store).map_err(told)? } else { Default::default() };
        let at = |ms: i64| time(&Stamp { wall_ms: ms, ..now.clone() });
        let members = roster.members.iter().map(|(device, member)| MemberView {
            device: device.to_string(),
            label: member.label.clone(),
            role: role_view(member.role),
            this: *device == this,
            added: at(member.added_ms),
            heard: peers.get(device).filter(|peer| peer.seq > 0).map(|peer| at(peer.sealed_ms)),
            removed: member.removed.map(|removed| at(removed.at_ms)),
        });
        let members = members.collect();
        let good = secundine_sync::last_good(store).map_err(told)?;
        let since = good.or_else(|| roster.member(this).map(|member| member.added_ms));
        let overdue = waiting > 0 && since.is_some_and(|since| now.wall_ms.saturating_sub(since) > OVERDUE_MS);
        let place = me.as_ref().and_then(|me| serde_json::from_slice(&me.place).ok()).map(|place| place_view(&place));
        let troubles = self.sync.report.troubles.iter().map(|trouble| trouble_view(trouble, &roster)).collect();
        let tried = self.sync.tried.as_ref().map(|tried| match tried {
            None => PlaceTried::Going,
            Some(Ok(said)) => PlaceTried::Told { said: said.clone(), well: true },
            Some(Err(said)) => PlaceTried::Told { said: said.clone(), well: false },
        });
        Ok(SyncView {
            shared: me.is_some(),
            outside: me.is_some() && !inside && !fresh,
            place,
            state: self.sync_state(now),
            last_good: good.map(at),
            failure: self.sync.failure.clone(),
            waiting: counted(usize::try_from(waiting).unwrap_or(usize::MAX)),
            waiting_files: counted(files),
            overdue,
            leads: roster.is_lead(this),
            members,
            troubles,
            erasures,
            stored,
            tried,
        })
    }

    fn sync_state(&self, now: &Stamp) -> SyncState {
        if self.sync.busy {
            let far = self.sync.far.lock().map(|far| *far).unwrap_or_default();
            let many = |n: u64| u32::try_from(n).unwrap_or(u32::MAX);
            return SyncState::Going {
                sent: many(far.sent),
                to_send: many(far.to_send),
                got: many(far.got),
                bytes: far.sent_bytes.saturating_add(far.got_bytes),
            };
        }
        match (self.sync.paused, self.sync.failures(), self.sync.due_in(now)) {
            (true, _, _) => SyncState::Paused,
            (false, 1.., Some(ms)) => SyncState::Again { seconds: u32::try_from(ms / 1000).unwrap_or(u32::MAX) },
            _ => SyncState::Still,
        }
    }

    /// This phone becomes the first of a practice that shares.
    pub(super) fn found_sync(&mut self, place: TypedPlace, now: &Stamp) -> Result<Response, ApiError> {
        let place = placed(place, None)?;
        let open = self.really_open()?;
        let label = open.described().practitioner.clone();
        let sheet = secundine_sync::found(open.store_mut()?, &label, kept(&place)?, now.wall_ms).map_err(told)?;
        open.read_practice_anew()?;
        Ok(Response::FoundSync { recovery: recovery::view(&sheet) })
    }

    /// The code that this phone shows to join.
    pub(super) fn sync_card(&mut self) -> Result<Response, ApiError> {
        let open = self.really_open()?;
        let label = open.described().practitioner.clone();
        let card = Card::of(open.store_mut()?, &label).map_err(told)?;
        let text = code::encode(Kind::Card, &card)?;
        Ok(Response::SyncCard(SyncCode { code: qr::code(&text, QrCodeEcc::Medium), text, words: Vec::new() }))
    }

    /// What a code of another phone says. Nothing is done.
    pub(super) fn read_sync_code(&mut self, picture: Option<&str>, text: Option<String>) -> Result<Response, ApiError> {
        let open = self.really_open()?;
        let text = code::from(picture, text)?;
        let (label, words) = match code::kind(&text)? {
            Kind::Card => (Some(code::decode::<Card>(Kind::Card, &text)?.label), Vec::new()),
            Kind::Welcome => (None, open.words_of(&code::decode_bytes(Kind::Welcome, &text)?)?),
            Kind::Birth | Kind::Answer => return Err(ApiError::new(ErrorCode::Impossible, "error-code-other")),
        };
        Ok(Response::ReadSyncCode(SyncCodeRead { text, label, words }))
    }

    /// Lets the phone in that showed this card.
    pub(super) fn admit_to_sync(&mut self, text: &str, role: SyncRole, now: &Stamp) -> Result<Response, ApiError> {
        let card: Card = code::decode(Kind::Card, text)?;
        let open = self.really_open()?;
        let welcome = secundine_sync::admit(open.store_mut()?, &card, role_of(role), now.wall_ms).map_err(told)?;
        let words = recovery::spoken(&card.check(&welcome));
        let text = code::encode_bytes(Kind::Welcome, &welcome)?;
        self.ask_round(now, false);
        // A code of so many letters is read off a screen that is near; what may be unreadable of it is kept small.
        Ok(Response::AdmitToSync(SyncCode { code: qr::code(&text, QrCodeEcc::Low), text, words }))
    }

    /// Joins the practice whose lead showed this welcome.
    pub(super) fn join_sync(&mut self, text: &str, now: &Stamp) -> Result<Response, ApiError> {
        let welcome = code::decode_bytes(Kind::Welcome, text)?;
        let open = self.really_open()?;
        let words = open.words_of(&welcome)?;
        secundine_sync::join(open.store_mut()?, &welcome).map_err(told)?;
        open.read_practice_anew()?;
        self.ask_round(now, false);
        Ok(Response::JoinSync { words })
    }

    /// Gets the practice back by its sheet; a thread does it.
    pub(super) fn recover_sync(&mut self, sheet: String, place: TypedPlace, now: &Stamp) -> Result<Response, ApiError> {
        let place = placed(place, None)?;
        let label = self.really_open()?.described().practitioner.clone();
        self.sync.ask(Task::Recover { sheet, label, place, now_ms: now.wall_ms });
        Ok(Response::RecoverSync(self.sync_view(now)?))
    }

    pub(super) fn set_sync_place(&mut self, place: TypedPlace, now: &Stamp) -> Result<Response, ApiError> {
        let open = self.really_open()?;
        let before = secundine_sync::me(open.store()).map_err(told)?.and_then(|me| serde_json::from_slice(&me.place).ok());
        let place = placed(place, before.as_ref())?;
        secundine_sync::set_place(open.store_mut()?, kept(&place)?).map_err(told)?;
        self.ask_round(now, false);
        Ok(Response::SetSyncPlace(self.sync_view(now)?))
    }

    pub(super) fn try_sync_place(&mut self, place: TypedPlace, now: &Stamp) -> Result<Response, ApiError> {
        let before = secundine_sync::me(self.really_open()?.store()).map_err(told)?;
        let before = before.and_then(|me| serde_json::from_slice(&me.place).ok());
        let place = placed(place, before.as_ref())?;
        self.sync.tried = Some(None);
        self.sync.ask(Task::Try(place));
        Ok(Response::TrySyncPlace(self.sync_view(now)?))
    }

    /// Begins a round if one is due, or at once where it was asked for by hand.
    pub(super) fn sync_now(&mut self, by_hand: bool, metered: bool, now: &Stamp) -> Result<Response, ApiError> {
        self.really_open()?;
        if by_hand {
            self.sync.paused = false;
        }
        if by_hand || self.sync.due_in(now) == Some(0) {
            self.ask_round(now, !metered);
        }
        Ok(Response::SyncNow(self.sync_view(now)?))
    }

    pub(super) fn pause_sync(&mut self, now: &Stamp) -> Result<Response, ApiError> {
        self.really_open()?;
        self.sync.paused = true;
        self.sync.stop.store(true, std::sync::atomic::Ordering::Relaxed);
        Ok(Response::PauseSync(self.sync_view(now)?))
    }

    pub(super) fn set_sync_role(&mut self, device: &str, role: SyncRole, now: &Stamp) -> Result<Response, ApiError> {
        let store = self.really_open()?.store_mut()?;
        secundine_sync::set_role(store, device_of(device)?, role_of(role), now.wall_ms).map_err(told)?;
        self.ask_round(now, false);
        Ok(Response::SetSyncRole(self.sync_view(now)?))
    }

    pub(super) fn remove_from_sync(&mut self, device: &str, now: &Stamp) -> Result<Response, ApiError> {
        let store = self.really_open()?.store_mut()?;
        secundine_sync::remove(store, device_of(device)?, now.wall_ms).map_err(told)?;
        self.ask_round(now, false);
        Ok(Response::RemoveFromSync(self.sync_view(now)?))
    }

    pub(super) fn accept_held(&mut self, device: &str, segment: u64, now: &Stamp) -> Result<Response, ApiError> {
        let store = self.really_open()?.store_mut()?;
        secundine_sync::accept(store, device_of(device)?, segment, now.wall_ms).map_err(told)?;
        self.ask_round(now, false);
        Ok(Response::AcceptHeld(self.sync_view(now)?))
    }

    /// Asks that a birth be erased everywhere.
    pub(super) fn ask_erasure(&mut self, birth: BirthId, now: &Stamp) -> Result<Response, ApiError> {
        let open = self.really_open()?;
        open.entries(birth)?;
        secundine_sync::ask_erasure(open.store_mut()?, birth, now.wall_ms).map_err(told)?;
        self.ask_round(now, false);
        Ok(Response::AskErasure(self.sync_view(now)?))
    }

    /// Fetches a picture or sound that another phone gave.
    pub(super) fn fetch_file(&mut self, file: FileId, now: &Stamp) -> Result<Response, ApiError> {
        let store = self.really_open()?.store();
        if !store.has_file(file) {
            let place = place_of(store)?;
            self.sync.ask(Task::Fetch { file, place });
        }
        Ok(Response::FetchFile(self.sync_view(now)?))
    }

    /// A round is to be made, unless this phone shares with nobody.
    fn ask_round(&mut self, now: &Stamp, files: bool) {
        let place = self.practice.as_ref().and_then(|open| place_of(open.store()).ok());
        if let Some(place) = place {
            self.sync.ask(Task::Round { now_ms: now.wall_ms, files, place });
        }
    }

    /// What a thread of its own has to do for sharing now.
    pub(crate) fn sync_to_begin(&mut self) -> Option<Task> {
        self.practice.as_ref()?;
        self.sync.begin()
    }

    /// What the thread needs beside the task.
    pub(crate) fn sync_controls(&self) -> crate::sync::Controls {
        (std::sync::Arc::clone(&self.sync.stop), std::sync::Arc::clone(&self.sync.far))
    }

    /// Works with the store of the open practice; gives no where it is closed, or a rehearsal runs in its place.
    pub(crate) fn with_store(&mut self, work: &mut dyn FnMut(&mut Store)) -> bool {
        let stopped = self.sync.stop.load(std::sync::atomic::Ordering::Relaxed);
        let store = self.practice.as_mut().filter(|_| !stopped).and_then(|open| open.store_mut().ok());
        store.map(work).is_some()
    }

    /// Keeps what came of a task.
    pub(crate) fn synced(&mut self, outcome: Outcome) {
        self.sync.busy = false;
        let now = self.clock.now();
        let Some(open) = self.practice.as_mut() else { return };
        match outcome {
            Outcome::Round(report, done) => {
                let changed = open.came(&report.births, &report.erased);
                if done.is_ok() {
                    let _ = open.store_mut().map(|store| secundine_sync::note_good(store, now.wall_ms));
                }
                self.sync.ended(report, changed.map_or_else(|_| Err(SyncError::Closed), |()| done), now);
            }
            Outcome::Tried(told) => self.sync.tried = Some(Some(told)),
            Outcome::Recovered(Ok(())) => {
                let _ = open.read_practice_anew();
                self.ask_round(&now, false);
            }
            Outcome::Recovered(Err(error)) => self.sync.failure = Some(error_words(&error)),
            Outcome::Fetched(done) => self.sync.failure = done.err().map(|error| error_words(&error)),
        }
    }

    /// That a thread could not be begun.
    pub(crate) fn sync_not_begun(&mut self) {
        self.sync.busy = false;
    }
}

impl OpenPractice {
    /// A birth that a phone asked to be erased, at this time by its clock.
    fn erasure(
        &mut self,
        (birth, device, ms): (BirthId, DeviceId, i64),
        roster: &Roster,
        hidden: bool,
        now: &Stamp,
    ) -> ErasureView {
        ErasureView {
            birth,
            label: self.chart(birth).ok().filter(|_| !hidden).map(|chart| chart.label),
            who: roster.members.get(&device).map(|member| member.label.clone()),
            this: device == self.store().device(),
            at: time(&Stamp { wall_ms: ms, ..now.clone() }),
        }
    }

    /// The words that this phone and the lead's show for a welcome that lets this phone in.
    fn words_of(&mut self, welcome: &[u8]) -> Result<Vec<String>, ApiError> {
        let label = self.described().practitioner.clone();
        let store = self.store_mut()?;
        secundine_sync::may_join(store, welcome).map_err(told)?;
        Ok(recovery::spoken(&Card::of(store, &label).map_err(told)?.check(welcome)))
    }
}

fn told(error: SyncError) -> ApiError {
    match error {
        SyncError::Store(error) => error.into(),
        other => ApiError::impossible(error_words(&other)),
    }
}

fn place_of(store: &Store) -> Result<Place, ApiError> {
    let me = secundine_sync::current(store).map_err(told)?;
    let place = me.and_then(|me| serde_json::from_slice(&me.place).ok());
    place.ok_or_else(|| ApiError::impossible(error_words(&SyncError::NotShared)))
}

fn kept(place: &Place) -> Result<Vec<u8>, ApiError> {
    serde_json::to_vec(place).map_err(|_| ApiError::internal())
}

fn device_of(text: &str) -> Result<DeviceId, ApiError> {
    text.parse().map_err(|_| ApiError::impossible(error_words(&SyncError::NoDevice)))
}

fn role_of(role: SyncRole) -> Role {
    match role {
        SyncRole::Lead => Role::Lead,
        SyncRole::Member => Role::Member,
        SyncRole::Student => Role::Student,
    }
}

fn role_view(role: Role) -> SyncRole {
    match role {
        Role::Lead => SyncRole::Lead,
        Role::Member => SyncRole::Member,
        Role::Student => SyncRole::Student,
    }
}

fn time(stamp: &Stamp) -> SyncTime {
    SyncTime { date: stamp.date(), clock: stamp.clock() }
}
