//! One session: a practice behind a door, and at times a rehearsal beside it.

mod backup;
mod before;
mod births;
mod damage;
mod door;
mod elsewhere;
mod files;
mod hidden;
mod keys;
mod native;
mod own;
mod papers;
mod phones;
mod photos;
mod recording;
mod rest;
mod sending;
mod sync;

#[cfg(feature = "fuzzing")]
pub(crate) use papers::code;
#[cfg(feature = "fuzzing")]
pub(crate) use phones::rewritten;

use std::path::PathBuf;
use std::sync::Arc;

use secundine_domain::entry::BirthId;
use secundine_domain::time::Stamp;
use secundine_store::{PlatformKeys, Store, low_space};

use crate::api::{ApiError, Door, ErrorCode, ExaminingView, RehearsalMode, Request, Response, ScenarioName, StatusView};
use crate::backup::BackupDesk;
use crate::clock::{BlindClock, Clock};
use crate::examining;
use crate::hide;
use crate::keys::Keys;
use crate::locked::Locked;
use crate::practice::OpenPractice;
use crate::rehearsal::Rehearsal;
use crate::sending::Outbox;
use crate::sync::Desk;
use crate::views;
pub(crate) use births::label_of;
use elsewhere::Kept;
use files::Passing;
use hidden::AtWork;
use native::Marking;
pub(crate) use papers::{Whole, bundle, made, unsealed};
use phones::Phones;
pub(crate) use recording::{recordable, sign};

/// Where a session keeps its files.
#[derive(Clone, Debug)]
pub struct Paths {
    /// The practice: database and key files.
    pub data: PathBuf,
    /// The PDF records, which are not encrypted.
    pub records: PathBuf,
}

/// One session.
pub struct Session {
    paths: Paths,
    clock: Arc<BlindClock>,
    practice: Option<OpenPractice>,
    rehearsal: Option<Rehearsal>,
    /// The birth that was looked at or written to last: marks made after the lock belong to it if its third stage runs.
    latest: Option<BirthId>,
    locked: Option<Locked>,
    kept: Kept,
    keys: Keys,
    /// The practice is open and nobody had touched for a while: no name goes out.
    hidden: Option<AtWork>,
    passing: Passing,
    outbox: Outbox,
    sync: Desk,
    copying: BackupDesk,
    phones: Phones,
    /// The mark that native code made last, as long as it can be taken back.
    marked: Option<Marking>,
}

impl Session {
    /// A session over these folders; nothing is opened yet. A wipe that was begun is finished.
    #[must_use]
    pub fn new(paths: Paths, clock: Arc<dyn Clock>) -> Self {
        Self::on(paths, clock, None)
    }

    /// The same on a device whose system keeps keys.
    #[must_use]
    pub fn with_platform(paths: Paths, clock: Arc<dyn Clock>, platform: Arc<dyn PlatformKeys>) -> Self {
        Self::on(paths, clock, Some(platform))
    }

    fn on(paths: Paths, clock: Arc<dyn Clock>, platform: Option<Arc<dyn PlatformKeys>>) -> Self {
        let clock = Arc::new(BlindClock::new(clock, paths.data.clone()));
        let keys = Keys::new(&paths.data, platform);
        let (kept, passing, outbox) = (Kept::default(), Passing::default(), Outbox::default());
        let (sync, copying) = (Desk::default(), BackupDesk::default());
        let (practice, rehearsal, latest, locked, hidden) = (None, None, None, None, None);
        let (phones, marked) = (Phones::default(), None);
        Self {
            paths,
            clock,
            practice,
            rehearsal,
            latest,
            locked,
            kept,
            keys,
            hidden,
            passing,
            outbox,
            sync,
            copying,
            phones,
            marked,
        }
    }

    /// The one door. The clocks are read before anything else is done.
    ///
    /// # Errors
    /// [`ApiError`] says what was wrong and what to do. Nothing recorded before is lost by any of them.
    pub fn call(&mut self, request: Request) -> Result<Response, ApiError> {
        let now = match &mut self.rehearsal {
            Some(rehearsal) => rehearsal.play()?,
            None => self.clock.now(),
        };
        self.pass(&request, &now)?;
        if self.rehearsal.is_none() {
            self.latest = birth_of(&request).or(self.latest);
        }
        match request {
            Request::Status => Ok(Response::Status(self.status(&now))),
            Request::CreatePractice { practice, passphrase } => self.create(practice, passphrase, &now),
            Request::Unlock { passphrase } => self.unlock(passphrase, &now),
            Request::UnlockByDevice => self.unlock_by_device(&now),
            Request::Lock => Ok(Response::Lock(self.lock(&now)?)),
            Request::Rest => self.rest(&now),
            Request::ShowNames { passphrase } => self.show_names(passphrase, &now),
            Request::Keys => self.keys_view(),
            Request::AddDeviceKey { passphrase } => self.add_device_key(passphrase, &now),
            Request::RevokeKey { slot, passphrase } => self.revoke_key(slot, passphrase, &now),
            Request::ChangePassphrase { old, new } => self.change_passphrase(old, new, &now),
            Request::RenewRecovery { passphrase } => self.renew_recovery(passphrase, &now),
            Request::CheckRecovery { recovery } => self.check_recovery(recovery, &now),
            Request::BeforeBirth { device } => self.before_birth(&device, &now),
            Request::Backups => Ok(Response::Backups(self.backups()?)),
            Request::MakeBackup => Ok(Response::MakeBackup(self.make_backup(&now)?)),
            Request::BackupPart { offset, base64 } => self.backup_part(offset, &base64),
            Request::Restore { passphrase } => self.restore(passphrase, &now),
            Request::ReadDamaged { passphrase } => self.read_damaged(passphrase, &now),
            Request::Salvage { passphrase } => self.salvage(passphrase, &now),
            Request::Elsewhere { what } => self.elsewhere(*what, &now),
            Request::Wipe { passphrase, words } => self.wipe(passphrase, &words, &now),
            Request::LockedMark { mark, ago_ms } => Ok(Response::LockedMark(self.locked_mark(mark, ago_ms, &now)?)),
            Request::LockedUndo => {
                self.locked()?.undo(&now)?;
                Ok(Response::LockedUndo(self.locked()?.view(&now)))
            }
            Request::DescribePractice { practice } => {
                self.open()?.describe(practice, &now)?;
                Ok(Response::DescribePractice(self.status(&now)))
            }
            Request::WriteAs { scribe } => {
                self.open()?.write_as(scribe);
                Ok(Response::WriteAs(self.status(&now)))
            }
            Request::Protocols => Ok(self.protocols()),
            Request::OwnProtocol => self.own_protocol(),
            Request::ChangeOwnProtocol { change } => self.change_own(&change, &now),
            Request::FillOwnProtocol => self.fill_own(&now),
            Request::ExportOwnProtocol => self.export_own(&now),
            Request::ImportOwnProtocol { text } => self.import_own(&text, &now),
            Request::Examining => Ok(Response::Examining(self.examining()?)),
            Request::OrderExamination { items } => {
                self.open()?.order_examination(items, &now)?;
                Ok(Response::OrderExamination(self.examining()?))
            }
            Request::LoadPlacentaWeights { text } => {
                self.open()?.load_weights(text.as_deref(), &now)?;
                Ok(Response::LoadPlacentaWeights(self.examining()?))
            }
            Request::Medicines => Ok(Response::Medicines { medicines: self.open()?.medicines()? }),
            Request::ListMedicines { medicines } => {
                self.open()?.list_medicines(medicines, &now)?;
                Ok(Response::ListMedicines { medicines: self.open()?.medicines()? })
            }
            Request::Term => Ok(Response::Term { years: self.open()?.term()? }),
            Request::SetTerm { years } => Ok(Response::SetTerm { years: self.open()?.set_term(years, &now)? }),
            Request::Server => Ok(Response::Server(self.server()?)),
            Request::SetServer { address, token } => Ok(Response::SetServer(self.set_server(&address, token, &now)?)),
            Request::TryServer => Ok(Response::TryServer(self.try_server()?)),
            Request::Sending { birth } => Ok(Response::Sending(self.sending(birth)?)),
            Request::AskSending { birth } => Ok(Response::AskSending(self.ask_sending(birth, &now)?)),
            Request::TakeBackSending { birth } => Ok(Response::TakeBackSending(self.take_back_sending(birth, &now)?)),
            Request::SendWaiting { birth, language } => self.send_waiting(birth, language, &now),
            Request::WeighedItems => Ok(Response::WeighedItems { items: views::weighed_items(self.open()?)? }),
            Request::ToWriteUp => Ok(Response::ToWriteUp { notes: views::to_write_up(self.open()?)? }),
            Request::Births { skip, take } => self.births(skip, take, &now),
            Request::BabyBornNow { ago_ms } => self.baby_born_now(ago_ms, &now),
            Request::RegisterBirth { label } => self.register(label, &now),
            Request::Birth { birth } => self.birth(birth, &now),
            Request::ChartPicture { birth } => self.chart_picture(birth, &now),
            request @ Request::Record { .. } => Ok(Response::Record { entry: self.write(request, &now)? }),
            request @ Request::Amend { .. } => Ok(Response::Amend { entry: self.write(request, &now)? }),
            request @ Request::Retract { .. } => Ok(Response::Retract { entry: self.write(request, &now)? }),
            Request::Sign { birth, signer } => {
                let entry = sign(self.open()?, birth, signer, &now)?;
                self.sync.soon();
                Ok(Response::Sign { entry })
            }
            Request::Handover { birth } => self.handover(birth, &now),
            Request::HandoverCode { birth, language } => self.handover_code(birth, language.as_deref(), &now),
            Request::WriteFile { birth, file, language } => self.write_file(birth, file, language.as_deref(), &now),
            Request::Sketch { birth, placenta } => self.sketch(birth, placenta),
            Request::FilePart { kind, offset, base64, end } => self.file_part(kind, offset, &base64, end),
            Request::ReadFile { file, offset } => self.read_file(file, offset),
            Request::MeasurePhoto { birth, file, tracing, keep } => self.measure_photo(birth, file, tracing, keep, &now),
            Request::Verify => Ok(Response::Verify(self.open()?.verify()?)),
            Request::Rehearse { scenario, speed, mode } => self.rehearse(scenario, speed, mode, &now),
            Request::EndRehearsal => {
                let rehearsal = self.rehearsal.take();
                rehearsal.ok_or_else(|| ApiError::new(ErrorCode::Rehearsal, "error-no-rehearsal"))?;
                Ok(Response::EndRehearsal(self.status(&now)))
            }
            Request::ShowCode { birth, answer } => self.show_code(birth, answer, &now),
            Request::ReadCode { picture, text } => self.read_code(picture.as_deref(), text, &now),
            Request::SameBirth { birth, other, same } => {
                Ok(Response::SameBirth { entry: self.open()?.say_same(birth, other, same, &now)? })
            }
            Request::Sync => Ok(Response::Sync(self.sync_view(&now)?)),
            Request::FoundSync { place } => self.found_sync(place, &now),
            Request::SyncCard => self.sync_card(),
            Request::ReadSyncCode { picture, text } => self.read_sync_code(picture.as_deref(), text),
            Request::AdmitToSync { code, role } => self.admit_to_sync(&code, role, &now),
            Request::JoinSync { code } => self.join_sync(&code, &now),
            Request::RecoverSync { sheet, place } => self.recover_sync(sheet, place, &now),
            Request::SetSyncPlace { place } => self.set_sync_place(place, &now),
            Request::TrySyncPlace { place } => self.try_sync_place(place, &now),
            Request::SyncNow { by_hand, metered } => self.sync_now(by_hand, metered, &now),
            Request::PauseSync => self.pause_sync(&now),
            Request::SetSyncRole { device, role } => self.set_sync_role(&device, role, &now),
            Request::RemoveFromSync { device } => self.remove_from_sync(&device, &now),
            Request::AcceptHeld { device, segment } => self.accept_held(&device, segment, &now),
            Request::AskErasure { birth } => self.ask_erasure(birth, &now),
            Request::FetchFile { file } => self.fetch_file(file, &now),
            Request::TakeCode { text, ago_ms } => self.take_code(&text, ago_ms, &now),
        }
    }

    /// Drops everything that is open, without tidying: for use after a fault of the program.
    pub fn abandon(&mut self) {
        self.practice = None;
        self.rehearsal = None;
        self.latest = None;
        self.hidden = None;
        self.passing = Passing::default();
        self.outbox = Outbox::default();
        self.sync.forget();
        self.copying.forget();
        self.phones = Phones::default();
        self.marked = None;
    }

    fn status(&mut self, now: &Stamp) -> StatusView {
        let locked = self.locked().ok().map(|locked| locked.view(now));
        let active = self.rehearsal.as_ref().map(Rehearsal::practice).or(self.practice.as_ref());
        let door = match active {
            Some(_) => Door::Open,
            None if Store::exists(&self.paths.data) => Door::Locked,
            None if Store::keys_missing(&self.paths.data) => Door::KeysMissing,
            None => Door::NoPractice,
        };
        StatusView {
            door,
            practice: active.map(|open| match self.hidden {
                Some(_) => hide::practice(open.described()),
                None => open.described().clone(),
            }),
            scribe: active.and_then(|open| open.scribe()).map(|name| match self.hidden {
                Some(_) => hide::HIDDEN.to_owned(),
                None => name.to_owned(),
            }),
            rehearsal: self.rehearsal.as_ref().map(Rehearsal::view),
            locked,
            drained: None,
            names_hidden: self.hidden.is_some(),
            salvage: active.and_then(|open| open.salvage().cloned()),
            read_only: active.is_some_and(|open| open.salvage().is_some()),
            low_space: door != Door::NoPractice && low_space(&self.paths.data),
            elsewhere: self.kept.entries,
            device_key: self.keys.by_device(),
            version: env!("CARGO_PKG_VERSION").to_owned(),
        }
    }

    fn open(&mut self) -> Result<&mut OpenPractice, ApiError> {
        let active = self.rehearsal.as_mut().map(Rehearsal::practice_mut).or(self.practice.as_mut());
        active.ok_or_else(|| ApiError::new(ErrorCode::Locked, "error-locked"))
    }

    /// The practice itself is open, and no rehearsal runs beside it.
    fn really_open(&mut self) -> Result<&mut OpenPractice, ApiError> {
        self.not_rehearsing()?;
        self.open()
    }

    fn not_rehearsing(&self) -> Result<(), ApiError> {
        match self.rehearsal {
            Some(_) => Err(ApiError::new(ErrorCode::Rehearsal, "error-rehearsing")),
            None => Ok(()),
        }
    }

    fn rehearse(&mut self, scenario: ScenarioName, speed: u32, mode: RehearsalMode, now: &Stamp) -> Result<Response, ApiError> {
        self.not_rehearsing()?;
        if !(1..=600).contains(&speed) {
            return Err(ApiError::new(ErrorCode::Impossible, "error-rehearsal-speed"));
        }
        let mut rehearsal = Rehearsal::begin(self.clock.clone(), scenario, speed, mode)?;
        rehearsal.play()?;
        self.rehearsal = Some(rehearsal);
        Ok(Response::Rehearse(self.status(now)))
    }

    fn examining(&mut self) -> Result<ExaminingView, ApiError> {
        Ok(examining::view(&self.open()?.examining))
    }

    fn speed(&self) -> u32 {
        self.rehearsal.as_ref().map_or(1, Rehearsal::speed)
    }
}

/// The birth that a request is about.
fn birth_of(request: &Request) -> Option<BirthId> {
    match request {
        Request::Birth { birth }
        | Request::ChartPicture { birth }
        | Request::Record { birth, .. }
        | Request::Amend { birth, .. }
        | Request::Retract { birth, .. }
        | Request::Sign { birth, .. }
        | Request::MeasurePhoto { birth, .. }
        | Request::Handover { birth }
        | Request::HandoverCode { birth, .. }
        | Request::WriteFile { birth, .. }
        | Request::Sending { birth }
        | Request::AskSending { birth }
        | Request::TakeBackSending { birth }
        | Request::ShowCode { birth, .. }
        | Request::Sketch { birth, .. } => Some(*birth),
        _ => None,
    }
}
