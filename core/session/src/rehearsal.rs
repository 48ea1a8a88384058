//! A rehearsal: a scripted birth in a practice of its own, apart from every real record and thrown away at the end.
//!
//! The script acts through the same core as a person does. Played by a running clock it is a demonstration or a drill;
//! played at once it is a test.

use std::sync::Arc;

use secundine_domain::entry::{Amendment, BirthId, EntryId};
use secundine_domain::fact::{Fact, Practice};
use secundine_domain::message::Message;
use secundine_domain::time::{Occurred, Precision, Stamp};
use secundine_store::{Passphrase, Store};
use serde::Deserialize;
use tempfile::TempDir;

use crate::api::{ApiError, ErrorCode, RehearsalMode, RehearsalView, ScenarioName};
use crate::clock::{Clock, FastClock};
use crate::practice::{Change, Draft, OpenPractice};
use crate::session::sign;

/// How many cues stay in view.
const CUES: usize = 3;

/// A birth as it will happen.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Scenario {
    /// Catalogue id of its name; `<name>-<cue>` are its cues.
    pub name: String,
    /// Protocol of the practice.
    pub protocol: String,
    /// Name of the practice.
    pub practice: String,
    /// The practitioner.
    pub practitioner: String,
    /// Her role.
    pub role: String,
    /// What tells this birth from others.
    pub label: String,
    /// What happens, in order of time.
    #[serde(rename = "step")]
    pub steps: Vec<Step>,
}

/// One thing that happens.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Step {
    /// Seconds from the start.
    pub at: i64,
    /// What is seen or heard, for the person who rehearses.
    pub cue: Option<String>,
    /// A name for later steps to refer to.
    pub name: Option<String>,
    /// What is recorded.
    pub fact: Option<Fact>,
    /// The step whose entry is put right by this fact or time.
    pub amends: Option<String>,
    /// Seconds from the start at which it happened, for what is written later; typed, so in whole minutes.
    pub happened: Option<i64>,
    /// Why it is put right.
    pub reason: Option<String>,
    /// The record is signed.
    #[serde(default)]
    pub sign: bool,
}

impl Scenario {
    /// Reads a scenario.
    ///
    /// # Errors
    /// What is wrong, with line and column.
    pub fn parse(text: &str) -> Result<Self, String> {
        toml::from_str(text).map_err(|error| error.to_string())
    }

    /// A scenario that comes with the program.
    ///
    /// # Errors
    /// None, as a test shows.
    pub fn named(name: ScenarioName) -> Result<Self, String> {
        Self::parse(match name {
            ScenarioName::QuietNight => include_str!("../scenarios/quiet-night.toml"),
            ScenarioName::SlowPlacenta => include_str!("../scenarios/slow-placenta.toml"),
            ScenarioName::BriskBleeding => include_str!("../scenarios/brisk-bleeding.toml"),
            ScenarioName::Twins => include_str!("../scenarios/twins.toml"),
        })
    }
}

/// A rehearsal that runs.
pub(crate) struct Rehearsal {
    scenario: Scenario,
    mode: RehearsalMode,
    speed: u32,
    clock: FastClock,
    practice: OpenPractice,
    birth: BirthId,
    /// Steps done so far.
    done: usize,
    named: Vec<(String, EntryId)>,
    // Removed with everything in it when the rehearsal is dropped.
    _folder: TempDir,
}

impl Rehearsal {
    pub(crate) fn begin(source: Arc<dyn Clock>, name: ScenarioName, speed: u32, mode: RehearsalMode) -> Result<Self, ApiError> {
        let scenario = Scenario::named(name).map_err(|_| ApiError::internal())?;
        let clock = FastClock::new(source, speed);
        let folder = tempfile::tempdir().map_err(|_| ApiError::new(ErrorCode::NotSaved, "error-full"))?;
        let mut passphrase = [0_u8; 16];
        getrandom::fill(&mut passphrase).map_err(|_| ApiError::internal())?;
        let (store, _) = Store::create(folder.path(), Passphrase::from(format!("{:032x}", u128::from_be_bytes(passphrase))))?;
        let described = Practice {
            name: scenario.practice.clone(),
            practitioner: scenario.practitioner.clone(),
            role: scenario.role.clone(),
            protocol: Some(scenario.protocol.clone()),
        };
        let start = clock.at(0);
        let mut practice = OpenPractice::found(store, described, &start)?;
        let (birth, _) = practice.register(scenario.label.clone(), true, None, &start)?;
        Ok(Self { scenario, mode, speed, clock, practice, birth, done: 0, named: Vec::new(), _folder: folder })
    }

    /// Does what is due by now, and tells the time.
    pub(crate) fn play(&mut self) -> Result<Stamp, ApiError> {
        let elapsed_ms = self.clock.elapsed_ms();
        while let Some(step) = self.scenario.steps.get(self.done).filter(|step| step.at * 1000 <= elapsed_ms).cloned() {
            if self.mode == RehearsalMode::Watch {
                self.act(&step)?;
            }
            self.done += 1;
        }
        Ok(self.clock.at(elapsed_ms))
    }

    fn act(&mut self, step: &Step) -> Result<(), ApiError> {
        let now = self.clock.at(step.at * 1000);
        let occurred = step.happened.map(|at| typed(&self.clock.at(at * 1000)));
        if step.sign {
            sign(&mut self.practice, self.birth, None, &now)?;
        }
        let amended =
            step.amends.as_ref().and_then(|name| self.named.iter().find(|(known, _)| known == name)).map(|(_, entry)| *entry);
        let entry = match (amended, step.fact.clone()) {
            (Some(entry), fact) => {
                let amends = Amendment { entry, reason: step.reason.clone().unwrap_or_default() };
                let change = fact.map_or(Change::Retract, |fact| Change::Put { fact: Some(Box::new(fact)), occurred });
                let draft = self.practice.amendment(self.birth, amends, change, &now)?;
                self.practice.write(draft)?
            }
            (None, Some(fact)) => {
                let occurred = occurred.unwrap_or_else(|| Occurred::Marked(now.clone()));
                self.practice.write(Draft { occurred, ..Draft::now(self.birth, fact, &now) })?
            }
            (None, None) => return Ok(()),
        };
        if let Some(name) = &step.name {
            self.named.push((name.clone(), entry));
        }
        Ok(())
    }

    pub(crate) fn practice(&self) -> &OpenPractice {
        &self.practice
    }

    pub(crate) fn practice_mut(&mut self) -> &mut OpenPractice {
        &mut self.practice
    }

    pub(crate) fn speed(&self) -> u32 {
        self.speed
    }

    pub(crate) fn view(&self) -> RehearsalView {
        let cues = self.scenario.steps.iter().take(self.done).filter_map(|step| step.cue.as_ref());
        let mut cues: Vec<Message> = cues.map(|cue| Message::new(format!("{}-{cue}", self.scenario.name))).collect();
        cues.drain(..cues.len().saturating_sub(CUES));
        RehearsalView {
            scenario: Message::new(&self.scenario.name),
            speed: self.speed,
            mode: self.mode,
            cues,
            ended: self.done == self.scenario.steps.len(),
            birth: Some(self.birth),
        }
    }
}

/// A moment as a person types it: whole minutes, read off a clock.
fn typed(stamp: &Stamp) -> Occurred {
    let wall_ms = stamp.wall_ms - stamp.wall_ms.rem_euclid(60_000);
    Occurred::Typed { wall_ms, offset_min: stamp.offset_min, precision: Precision::Exact }
}
