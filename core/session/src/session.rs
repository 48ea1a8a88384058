//! One session: a practice behind a door, and at times a rehearsal beside it.

use std::path::PathBuf;
use std::sync::Arc;

use secundine_domain::entry::{Amendment, BirthId, EntryId};
use secundine_domain::fact::{Fact, Practice};
use secundine_domain::protocol::Protocol;
use secundine_domain::time::{Elapsed, Occurred, Stamp, parse_local};
use secundine_record::{Origin, pdf};
use secundine_store::{Passphrase, Store, is_recovery_identity, version};

use crate::api::{ApiError, At, Door, ErrorCode, RehearsalMode, Request, Response, StatusView};
use crate::clock::{Clock, earlier};
use crate::practice::{Draft, OpenPractice, describable};
use crate::rehearsal::Rehearsal;
use crate::views;

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
    clock: Arc<dyn Clock>,
    practice: Option<OpenPractice>,
    rehearsal: Option<Rehearsal>,
}

impl Session {
    /// A session over these folders; nothing is opened yet.
    #[must_use]
    pub fn new(paths: Paths, clock: Arc<dyn Clock>) -> Self {
        Self { paths, clock, practice: None, rehearsal: None }
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
        match request {
            Request::Status => Ok(Response::Status(self.status())),
            Request::CreatePractice { practice, passphrase } => self.create(practice, passphrase, &now),
            Request::Unlock { passphrase } => self.unlock(passphrase),
            Request::Lock => self.lock(),
            Request::DescribePractice { practice } => {
                self.open()?.describe(practice, &now)?;
                Ok(Response::DescribePractice(self.status()))
            }
            Request::Protocols => Ok(Response::Protocols { protocols: Protocol::published().to_vec() }),
            Request::Births { skip, take } => views::births(self.open()?, skip, take, &now),
            Request::BabyBornNow { ago_ms } => self.baby_born_now(ago_ms, &now),
            Request::RegisterBirth { label } => self.register(label, &now),
            Request::Birth { birth } => self.birth(birth, &now),
            Request::Record { birth, fact, at } => self.record(birth, fact, &at, &now),
            Request::Amend { birth, entry, fact, at, reason } => {
                let occurred = at.map(|at| self.occurred(&at, &now)).transpose()?;
                fact.as_ref().map_or(Ok(()), recordable)?;
                let entry = self.amend(birth, entry, reason, fact.unwrap_or(KEEP), occurred, &now)?;
                Ok(Response::Amend { entry })
            }
            Request::Retract { birth, entry, reason } => {
                let entry = self.amend(birth, entry, reason, Fact::Retracted, None, &now)?;
                Ok(Response::Retract { entry })
            }
            Request::Sign { birth } => Ok(Response::Sign { entry: sign(self.open()?, birth, &now)? }),
            Request::WriteRecord { birth } => self.write_record(birth, &now),
            Request::Rehearse { speed, mode } => self.rehearse(speed, mode),
            Request::EndRehearsal => {
                let rehearsal = self.rehearsal.take();
                rehearsal.ok_or_else(|| ApiError::new(ErrorCode::Rehearsal, "error-no-rehearsal"))?;
                Ok(Response::EndRehearsal(self.status()))
            }
        }
    }

    /// Drops everything that is open, without tidying: for use after a fault of the program.
    pub fn abandon(&mut self) {
        self.practice = None;
        self.rehearsal = None;
    }

    fn status(&self) -> StatusView {
        let active = self.rehearsal.as_ref().map(Rehearsal::practice).or(self.practice.as_ref());
        let door = match active {
            Some(_) => Door::Open,
            None if Store::exists(&self.paths.data) => Door::Locked,
            None => Door::NoPractice,
        };
        StatusView {
            door,
            practice: active.map(|open| open.described().clone()),
            rehearsal: self.rehearsal.as_ref().map(Rehearsal::view),
            version: env!("CARGO_PKG_VERSION").to_owned(),
        }
    }

    fn open(&mut self) -> Result<&mut OpenPractice, ApiError> {
        let active = self.rehearsal.as_mut().map(Rehearsal::practice_mut).or(self.practice.as_mut());
        active.ok_or_else(|| ApiError::new(ErrorCode::Locked, "error-locked"))
    }

    fn create(&mut self, practice: Practice, passphrase: String, now: &Stamp) -> Result<Response, ApiError> {
        use secundine_store::ExposeSecret;
        self.not_rehearsing()?;
        describable(&practice)?;
        let (store, recovery) = Store::create(&self.paths.data, Passphrase::from(passphrase))?;
        self.practice = Some(OpenPractice::found(store, practice, now)?);
        Ok(Response::CreatePractice { recovery: recovery.expose_secret().to_owned() })
    }

    fn unlock(&mut self, passphrase: String) -> Result<Response, ApiError> {
        self.not_rehearsing()?;
        if self.practice.is_none() {
            let secret = Passphrase::from(passphrase);
            let store = match is_recovery_identity(&secret) {
                true => Store::open_with_identity(&self.paths.data, &secret)?,
                false => Store::open(&self.paths.data, secret)?,
            };
            self.practice = Some(OpenPractice::open(store)?);
        }
        Ok(Response::Unlock(self.status()))
    }

    fn lock(&mut self) -> Result<Response, ApiError> {
        self.not_rehearsing()?;
        if let Some(open) = self.practice.take() {
            open.close()?;
        }
        Ok(Response::Lock(self.status()))
    }

    fn not_rehearsing(&self) -> Result<(), ApiError> {
        match self.rehearsal {
            Some(_) => Err(ApiError::new(ErrorCode::Rehearsal, "error-rehearsing")),
            None => Ok(()),
        }
    }

    fn rehearse(&mut self, speed: u32, mode: RehearsalMode) -> Result<Response, ApiError> {
        self.not_rehearsing()?;
        if !(1..=600).contains(&speed) {
            return Err(ApiError::new(ErrorCode::Impossible, "error-rehearsal-speed"));
        }
        let mut rehearsal = Rehearsal::begin(Arc::clone(&self.clock), speed, mode)?;
        rehearsal.play()?;
        self.rehearsal = Some(rehearsal);
        Ok(Response::Rehearse(self.status()))
    }

    fn baby_born_now(&mut self, ago_ms: u32, now: &Stamp) -> Result<Response, ApiError> {
        let rehearsal = self.rehearsal.is_some();
        let born = self.touched(ago_ms, now);
        let label = format!("{} {}", born.date(), born.clock().chars().take(5).collect::<String>());
        // The chart opens with the touch, so that it does not stand after the birth.
        let first = Some((Fact::BabyBorn { baby: 1 }, born));
        let (birth, entry) = self.open()?.register(label, rehearsal, first, now)?;
        Ok(Response::BabyBornNow { birth, entry: entry.ok_or_else(ApiError::internal)? })
    }

    fn register(&mut self, label: String, now: &Stamp) -> Result<Response, ApiError> {
        let rehearsal = self.rehearsal.is_some();
        let (birth, _) = self.open()?.register(label, rehearsal, None, now)?;
        Ok(Response::RegisterBirth { birth })
    }

    fn birth(&mut self, birth: BirthId, now: &Stamp) -> Result<Response, ApiError> {
        let speed = self.speed();
        let open = self.open()?;
        let chart = open.chart(birth)?;
        let named = version(open.entries(birth)?);
        Ok(Response::Birth(Box::new(views::birth(birth, &chart, named, now, speed))))
    }

    fn record(&mut self, birth: BirthId, fact: Fact, at: &At, now: &Stamp) -> Result<Response, ApiError> {
        recordable(&fact)?;
        let occurred = self.occurred(at, now)?;
        let open = self.open()?;
        open.entries(birth)?;
        let entry = open.write(Draft { occurred, ..Draft::now(birth, fact, now) })?;
        Ok(Response::Record { entry })
    }

    fn amend(
        &mut self,
        birth: BirthId,
        entry: EntryId,
        reason: String,
        fact: Fact,
        occurred: Option<Occurred>,
        now: &Stamp,
    ) -> Result<EntryId, ApiError> {
        let amends = Some(Amendment { entry, reason });
        let new = (fact != KEEP && fact != Fact::Retracted).then(|| fact.clone());
        self.open()?.amend(Draft { amends, ..Draft::now(birth, fact, now) }, occurred, new)
    }

    fn write_record(&mut self, birth: BirthId, now: &Stamp) -> Result<Response, ApiError> {
        let folder = self.paths.records.clone();
        let open = self.open()?;
        let chart = open.chart(birth)?;
        let named = version(open.entries(birth)?);
        let practice = open.described().clone();
        let origin = Origin { practice: &practice, version: &named, written: now };
        let pdf = pdf(&chart, &origin).map_err(|_| ApiError::internal())?;
        let path = views::record_file(&folder, &chart, now);
        let written = std::fs::create_dir_all(&folder).and_then(|()| std::fs::write(&path, &pdf.bytes));
        written.map_err(|_| ApiError::new(ErrorCode::NotSaved, "error-record-not-written"))?;
        Ok(Response::WriteRecord {
            path: path.to_string_lossy().into_owned(),
            pages: u32::try_from(pdf.pages).unwrap_or(u32::MAX),
        })
    }

    fn speed(&self) -> u32 {
        self.rehearsal.as_ref().map_or(1, Rehearsal::speed)
    }

    /// The moment of a touch: in a rehearsal its delay runs at the rehearsal's speed.
    fn touched(&self, ago_ms: u32, now: &Stamp) -> Stamp {
        earlier(now.clone(), i64::from(ago_ms) * i64::from(self.speed()))
    }

    fn occurred(&self, at: &At, now: &Stamp) -> Result<Occurred, ApiError> {
        match at {
            At::Now { ago_ms } => Ok(Occurred::Marked(self.touched(*ago_ms, now))),
            At::Typed { date, clock, precision } => {
                let wall_ms = parse_local(date, clock, now.offset_min);
                let wall_ms = wall_ms.ok_or_else(|| ApiError::new(ErrorCode::Impossible, "error-no-time"))?;
                let typed = Occurred::Typed { wall_ms, offset_min: now.offset_min, precision: *precision };
                // A minute of grace: a typed time has no seconds.
                if Elapsed::between(&Occurred::Marked(now.clone()), &typed).ms > 60_000 {
                    return Err(ApiError::new(ErrorCode::Impossible, "error-in-future"));
                }
                Ok(typed)
            }
        }
    }
}

/// Stands for "the fact stays as it is" on the way to [`OpenPractice::amend`]; never written.
const KEEP: Fact = Fact::Unknown { kind: String::new(), stored: String::new() };

/// Facts that a person records; the others have requests of their own.
fn recordable(fact: &Fact) -> Result<(), ApiError> {
    match fact {
        Fact::PracticeDescribed(_)
        | Fact::BirthRegistered { .. }
        | Fact::Retracted
        | Fact::Signed { .. }
        | Fact::Unknown { .. } => Err(ApiError::new(ErrorCode::Impossible, "error-not-recordable")),
        _ => Ok(()),
    }
}

/// Signs the record as it stands, in the name of the practice's practitioner.
pub(crate) fn sign(open: &mut OpenPractice, birth: BirthId, now: &Stamp) -> Result<EntryId, ApiError> {
    let version = version(open.entries(birth)?);
    let Practice { practitioner: name, role, .. } = open.described().clone();
    open.write(Draft::now(birth, Fact::Signed { name, role, version }, now))
}
