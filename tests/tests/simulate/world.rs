//! A phone, its practice, its clock, and the night that happens to them.

use std::fs;
use std::path::Path;
use std::sync::Arc;

use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Fact, Practice};
use secundine_domain::time::{Boot, Precision, Stamp};
use secundine_session::api::{ApiError, At, BirthView, Door, ErrorCode, LockedMark, Request, Response};
use secundine_session::clock::{Clock, HandClock};
use secundine_session::{Paths, Session};
use tempfile::TempDir;

use super::chance::Chance;
use super::model::{Mark, Model, When, calendar};

/// 2026-10-24 22:00 UTC: in the night that follows, summer time ends in Europe.
const START_MS: i64 = 1_792_879_200_000;

/// A practice that was founded: each night begins with a copy.
pub struct Founded {
    folder: TempDir,
    recovery: String,
}

impl Founded {
    pub fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let practice = Practice {
            name: "Heron House".to_owned(),
            practitioner: super::PRACTITIONER.to_owned(),
            role: "midwife".to_owned(),
            protocol: Some("who".to_owned()),
        };
        let mut session = session(folder.path(), &HandClock::at(stamp(START_MS - 86_400_000, "founded", 1_000)));
        let found = Request::CreatePractice { practice, passphrase: "seven quiet herons".to_owned() };
        let Response::CreatePractice { recovery } = session.call(found).unwrap() else { unreachable!() };
        session.call(Request::Lock).unwrap();
        Self { folder, recovery: recovery.identity }
    }
}

/// A mark that was acknowledged while locked.
pub struct Pending {
    pub mark: LockedMark,
    pub when: When,
    /// When it was written.
    pub written: When,
    pub undone: bool,
    /// The birth that it must come to, where that can be told.
    pub birth: Option<BirthId>,
}

pub struct World {
    pub chance: Chance,
    pub model: Model,
    pub clock: HandClock,
    pub true_ms: i64,
    /// How often the wall clock was set.
    pub settings: u32,
    runs: u32,
    folder: TempDir,
    recovery: String,
    session: Session,
    /// The birth that the program worked with last.
    pub latest: Option<BirthId>,
    pub pending: Vec<Pending>,
    /// While locked: the birth whose third stage ran at the lock. The outer is none while open.
    pub locked: Option<Option<BirthId>>,
    /// How many of the marks were made before the program was last started.
    pub forgotten: usize,
    /// How many entries came in at an unlocking.
    pub brought_in: usize,
    pub restarts: usize,
}

impl World {
    pub fn new(founded: &Founded, seed: u64) -> Self {
        let folder = tempfile::tempdir().unwrap();
        fs::create_dir(folder.path().join("data")).unwrap();
        for file in fs::read_dir(founded.folder.path().join("data")).unwrap().map(|file| file.unwrap()) {
            fs::copy(file.path(), folder.path().join("data").join(file.file_name())).unwrap();
        }
        let clock = HandClock::at(stamp(START_MS, "run 0", 3_600_000));
        let mut world = Self {
            chance: Chance(seed),
            model: Model::default(),
            session: session(folder.path(), &clock),
            clock,
            true_ms: 0,
            settings: 0,
            runs: 0,
            folder,
            recovery: founded.recovery.clone(),
            latest: None,
            pending: Vec::new(),
            locked: None,
            forgotten: 0,
            brought_in: 0,
            restarts: 0,
        };
        world.open();
        world
    }

    pub fn ask(&mut self, request: Request) -> Result<Response, ApiError> {
        self.session.call(request)
    }

    pub fn call(&mut self, request: Request) -> Response {
        let what = format!("{request:?}");
        self.ask(request).unwrap_or_else(|error| unreachable!("{what}: {error:?}"))
    }

    /// Nothing may come of what cannot be.
    pub fn refused(&mut self, request: Request, code: ErrorCode) {
        let what = format!("{request:?}");
        let refusal = self.ask(request).map(|response| format!("{response:?}")).unwrap_err();
        assert_eq!(refusal.code, code, "{what}: {refusal:?}");
    }

    pub fn wait(&mut self, ms: i64) {
        self.clock.advance(ms);
        self.true_ms += ms;
    }

    /// The moment so many milliseconds ago.
    pub fn mark(&self, ago_ms: u32) -> Mark {
        let ago_ms = i64::from(ago_ms);
        let mut stamp = self.clock.now();
        stamp.wall_ms -= ago_ms;
        stamp.boot.as_mut().unwrap().since_ms -= ago_ms;
        Mark { stamp, true_ms: self.true_ms - ago_ms, settings: self.settings }
    }

    /// Mostly just now, else a while ago, but not before the phone was started.
    pub fn ago_ms(&mut self) -> u32 {
        let since_ms = u64::try_from(self.clock.now().boot.unwrap().since_ms).unwrap();
        if self.chance.once_in(3) { u32::try_from(self.chance.below(since_ms.min(600_000) + 1)).unwrap() } else { 0 }
    }

    /// Now, or a time of the last hours as it is typed.
    pub fn at(&mut self) -> (At, When) {
        if !self.chance.once_in(3) {
            let ago_ms = self.ago_ms();
            return (At::Now { ago_ms }, When::Marked(self.mark(ago_ms)));
        }
        let Stamp { wall_ms, offset_min, .. } = self.clock.now();
        let offset_ms = i64::from(offset_min) * 60_000;
        let minute = (wall_ms + offset_ms).div_euclid(60_000) - self.chance.between(0, 180);
        let (date, clock) = calendar(minute * 60_000);
        let precision = self.chance.one_of(&[Precision::Exact, Precision::Estimated]);
        let when = When::Typed { wall_ms: minute * 60_000 - offset_ms, offset_min, estimated: precision == Precision::Estimated };
        (At::Typed { date, clock: clock[..5].to_owned(), precision }, when)
    }

    /// Unlocks, and holds what is brought in against what was marked while locked.
    pub fn open(&mut self) {
        let Response::Unlock(status) = self.call(Request::Unlock { passphrase: self.recovery.clone() }) else { unreachable!() };
        assert_eq!(status.door, Door::Open);
        self.locked = None;
        self.forgotten = 0;
        let brought = status.drained.map_or(0, |drained| {
            assert_eq!((drained.lost_tail, drained.damaged, drained.waiting), (0, 0, 0), "{drained:?}");
            drained.entries as usize
        });
        assert_eq!(brought, self.adopt());
        self.brought_in += brought;
        let left =
            fs::read_dir(self.folder.path().join("data/inbox")).into_iter().flatten().map(|file| file.unwrap().file_name());
        assert_eq!(left.filter(|name| name != "lock").count(), 0, "all of it is brought in");
        self.look();
    }

    /// Finds each mark that was made while locked, once, and takes it into the list. Gives how many entries are new.
    fn adopt(&mut self) -> usize {
        let mut new = 0;
        let mut pending = std::mem::take(&mut self.pending);
        // A chart that a mark opens is registered at the mark, and gets its protocol when the mark was written.
        let openings: Vec<When> = pending.iter().flat_map(|one| [one.when.clone(), one.written.clone()]).collect();
        for view in self.views().into_iter().rev() {
            let registered = self.model.births.contains(&view.birth);
            for line in &view.timeline {
                if self.model.written.contains_key(&line.entry) {
                    continue;
                }
                new += 1 + line.earlier.len();
                let opens = matches!(line.fact, Fact::BirthRegistered { .. } | Fact::ProtocolChosen { .. });
                let at = (line.date.clone(), line.clock.clone());
                let fits = |one: &Pending| {
                    let birth = one.birth.is_none_or(|birth| birth == view.birth);
                    birth && one.undone == line.retracted && one.when.shown() == at && is_fact(&one.mark, &line.fact)
                };
                let when = match pending.iter().position(fits) {
                    Some(found) => pending.remove(found).when,
                    None => {
                        let opening = openings.iter().find(|when| opens && !registered && when.shown() == at);
                        opening.cloned().unwrap_or_else(|| unreachable!("nobody marked this: {line:?}"))
                    }
                };
                self.model.write(line.entry, view.birth, line.fact.clone(), when);
                if let Some(written) = self.model.written.get_mut(&line.entry) {
                    (written.amended, written.retracted) = (line.earlier.len(), line.retracted);
                }
            }
        }
        let lost: Vec<_> = pending.iter().map(|one| (&one.mark, &one.when, one.undone)).collect();
        assert!(lost.is_empty(), "acknowledged while locked, and lost: {lost:?}");
        new
    }

    fn views(&mut self) -> Vec<BirthView> {
        let Response::Births { births, count, .. } = self.call(Request::Births { skip: 0, take: u32::MAX }) else {
            unreachable!()
        };
        assert_eq!(births.len(), count as usize);
        births.into_iter().map(|line| self.view(line.birth)).collect()
    }

    pub fn view(&mut self, birth: BirthId) -> BirthView {
        self.latest = Some(birth);
        let Response::Birth(view) = self.call(Request::Birth { birth }) else { unreachable!() };
        *view
    }

    /// Ends the program without a farewell and starts it again; `off_ms` where the phone itself was off in between.
    pub fn restart(&mut self, off_ms: Option<i64>) {
        let before = self.locked.is_none().then(|| self.look());
        if let Some(off_ms) = off_ms {
            self.runs += 1;
            self.true_ms += off_ms;
            let booted_ms = self.chance.between(1, 60_000).min(off_ms);
            let id = format!("run {}", self.runs);
            self.clock.change(|stamp| {
                stamp.wall_ms += off_ms;
                stamp.boot = Some(Boot { id, since_ms: booted_ms });
            });
        }
        self.session = session(self.folder.path(), &self.clock);
        self.restarts += 1;
        self.latest = None;
        self.forgotten = self.pending.len();
        if self.locked.is_some() {
            self.locked = Some(None);
        }
        if let Some(before) = before {
            self.open();
            let kept = |views: &[BirthView]| -> Vec<_> {
                views.iter().map(|view| (serde_json::to_value(&view.timeline).unwrap(), view.version.clone())).collect()
            };
            let after = self.look();
            if off_ms.is_none() {
                assert_eq!(kept(&before), kept(&after), "the charts are as they were");
            }
        }
    }

    /// Holds every chart against the list.
    pub fn look(&mut self) -> Vec<BirthView> {
        let views = self.views();
        let now = self.mark(0);
        let mut births: Vec<BirthId> = views.iter().map(|view| view.birth).collect();
        births.sort_by_key(|birth| birth.0);
        let mut known = self.model.births.clone();
        known.sort_by_key(|birth| birth.0);
        assert_eq!(births, known);
        views.iter().for_each(|view| self.model.check(view, &now));
        views
    }
}

/// Whether a fact is what this mark writes. Which baby comes next the program knows.
fn is_fact(mark: &LockedMark, fact: &Fact) -> bool {
    match mark {
        LockedMark::BabyBorn => matches!(fact, Fact::BabyBorn { .. }),
        LockedMark::CordPulsationStopped { baby } => *fact == Fact::CordPulsationStopped { baby: *baby },
        LockedMark::CordClamped { baby } => *fact == Fact::CordClamped { baby: *baby },
        LockedMark::CordCut { baby } => *fact == Fact::CordCut { baby: *baby },
        LockedMark::PlacentaBorn { babies } => *fact == Fact::PlacentaBorn { babies: babies.clone() },
        LockedMark::MembranesBorn { babies } => *fact == Fact::MembranesBorn { babies: babies.clone() },
        LockedMark::Moment => matches!(fact, Fact::Noted { text } if text == "Moment marked while locked"),
    }
}

fn stamp(wall_ms: i64, run: &str, since_ms: i64) -> Stamp {
    let boot = Some(Boot { id: run.to_owned(), since_ms });
    Stamp { wall_ms, offset_min: 120, zone: Some("Europe/Amsterdam".to_owned()), boot }
}

fn session(folder: &Path, clock: &HandClock) -> Session {
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    Session::new(paths, Arc::new(clock.clone()))
}
