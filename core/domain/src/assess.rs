//! Holds a chart against a protocol: what is near, passed, not recorded, or cannot be told. It never says what to do and
//! never calls a reading safe.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use crate::chart::Chart;
use crate::entry::EntryId;
use crate::fact::{BabyNo, Loss};
use crate::message::Message;
use crate::protocol::{Compare, Level, Milli, Protocol, Status, Step, Watch};
use crate::time::{Certainty, Elapsed, Stamp};

mod apgar;
mod curve;
mod examination;
mod share;
mod signs;
mod third_stage;
mod windows;

pub use apgar::{ALWAYS_OFFERED, apgar_minutes};
pub(crate) use apgar::{Awaited, awaited as awaited_apgars};
pub use curve::blood_curve;
pub use share::blood_share;
pub use signs::{Reading, readings_of};
pub(crate) use signs::{Repeat, repeats};
pub(crate) use third_stage::steps as third_stage_steps;
pub(crate) use windows::{passed_urine, running as window_running};

/// One thing that was held against the protocol or the examination.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Finding {
    /// What it is about.
    pub about: About,
    /// How it stands.
    pub state: FindingState,
    /// How much it asks for attention; none where nothing was passed.
    pub level: Option<Level>,
    /// The finding in words.
    pub message: Message,
    /// The entries that it rests on.
    pub rests_on: Vec<EntryId>,
    /// The threshold that was passed, whose it is and how well it was checked.
    pub threshold: Option<Threshold>,
    /// The time reminder that this finding is: the name under which it was still to come.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub reminder: Option<String>,
}

/// What a finding is about.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "about", rename_all = "snake_case")]
pub enum About {
    /// Limits are watched only once a protocol is chosen.
    Protocol,
    /// The time from the birth of the last baby.
    ThirdStage,
    /// A watch other than time.
    Watch {
        /// Which.
        watch: Watch,
    },
    /// A sign of a baby.
    Newborn {
        /// Which baby.
        baby: BabyNo,
        /// Which sign.
        watch: Watch,
    },
    /// The Apgar scores of a baby.
    Apgar {
        /// Which baby.
        baby: BabyNo,
    },
    /// Whether all of a placenta is here.
    Completeness {
        /// The placenta, named by its first baby.
        placenta: BabyNo,
    },
    /// An unusual answer.
    Examination {
        /// The placenta, named by its first baby.
        placenta: BabyNo,
        /// The item.
        item: String,
        /// Whose cord, where one disc fed several babies.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "types", ts(optional))]
        cord: Option<BabyNo>,
    },
    /// Something worked out from the examination.
    Figure {
        /// The placenta, named by its first baby.
        placenta: BabyNo,
        /// Which figure.
        figure: String,
        /// Whose cord, where one disc fed several babies.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "types", ts(optional))]
        cord: Option<BabyNo>,
    },
}

impl About {
    /// Whether it is an answer to this item, or the figure of the same name: the length of a cord is told by its figure.
    #[must_use]
    pub fn is_of_answer(&self, of: BabyNo, asked: &str, whose: Option<BabyNo>) -> bool {
        match self {
            Self::Examination { placenta, item: name, cord } | Self::Figure { placenta, figure: name, cord } => {
                (*placenta, name.as_str(), *cord) == (of, asked, whose)
            }
            _ => false,
        }
    }
}

/// How it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum FindingState {
    /// Recorded, and no threshold passed. Not the same as normal or safe.
    Within,
    /// A caution of the protocol is passed, a limit not yet.
    Near,
    /// A limit of the protocol is passed.
    Passed,
    /// Nothing is recorded; that is not "normal".
    NotRecorded,
    /// Something else is missing that it takes to tell.
    CannotAssess,
}

/// Whose threshold, and how well it was checked.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Threshold {
    /// Title of the protocol, or of the examination's source.
    pub source: String,
    /// How well it was checked.
    pub status: Status,
    /// What the source says, in short.
    pub words: Option<String>,
}

/// Blood, measured and judged by eye apart.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Blood {
    /// Weighed or read off a jug, mL.
    pub measured: u32,
    /// Judged by eye, mL.
    pub seen: u32,
}

impl Blood {
    /// Both together, mL.
    #[must_use]
    pub fn total(self) -> u32 {
        self.measured.saturating_add(self.seen)
    }

    /// With one amount more, of so many mL.
    fn and(mut self, loss: &Loss, volume: u32) -> Self {
        let sum = if matches!(loss, Loss::Seen { .. }) { &mut self.seen } else { &mut self.measured };
        *sum = sum.saturating_add(volume);
        self
    }
}

/// Adds up the blood; weights become volumes by the protocol's factor, or at 1 g/mL (common practice) without one.
#[must_use]
pub fn blood(chart: &Chart, protocol: Option<&Protocol>) -> Blood {
    chart.losses.iter().fold(Blood::default(), |sum, loss| sum.and(&loss.what, loss_volume(&loss.what, protocol)))
}

/// One amount in mL.
#[must_use]
pub fn loss_volume(loss: &Loss, protocol: Option<&Protocol>) -> u32 {
    match loss {
        Loss::Weighed { gross, dry, .. } => {
            let grams = gross.get().saturating_sub(dry.get());
            protocol.map_or(grams, |protocol| protocol.millilitres(grams))
        }
        Loss::Jug { volume } | Loss::Seen { volume } => volume.get(),
    }
}

/// What is held against the steps of a watch, and how it is called.
#[derive(Clone)]
pub(crate) struct Subject {
    pub about: About,
    pub watch: Watch,
    pub name: Message,
}

impl Subject {
    /// A watch of the mother, or of no one baby.
    fn of(watch: Watch) -> Self {
        Self { about: About::Watch { watch }, watch, name: watch.name() }
    }

    /// A sign of one baby.
    fn baby(chart: &Chart, baby: BabyNo, watch: Watch) -> Self {
        Self { about: About::Newborn { baby, watch }, watch, name: chart.numbered(watch.name(), baby) }
    }
}

/// Everything that can be said of this chart now, in a fixed order: time, blood, the mother's signs, windows, Apgar scores,
/// the babies' signs, examination.
#[must_use]
pub fn assess(chart: &Chart, protocol: Option<&Protocol>, now: &Stamp) -> Vec<Finding> {
    let mut findings = Vec::new();
    match protocol {
        Some(protocol) => {
            findings.push(third_stage::finding(chart, protocol, now));
            findings.push(blood_loss(chart, protocol));
            findings.extend(signs::mother().filter_map(|sign| signs::finding(chart, protocol, sign, now)));
            findings.extend(Watch::WINDOWS.iter().filter_map(|watch| windows::finding(chart, protocol, *watch, now)));
            findings.extend(apgar::findings(chart, protocol, now));
            findings.extend(signs::babies(chart).filter_map(|sign| signs::finding(chart, protocol, sign, now)));
        }
        None => {
            findings.push(plain(About::Protocol, FindingState::CannotAssess, Message::new("finding-no-protocol"), Vec::new()))
        }
    }
    // What was examined is told also where no birth of that placenta is marked.
    let born = chart.placentas.iter().filter(|(_, placenta)| placenta.born.is_some()).map(|(no, _)| *no);
    let placentas: BTreeSet<BabyNo> = born.chain(chart.examinations.keys().copied()).collect();
    findings.extend(placentas.into_iter().flat_map(|placenta| examination::findings(chart, protocol, placenta)));
    if chart.is_partial() {
        findings.iter_mut().filter(|finding| rests_on_absence(finding, chart, now)).for_each(elsewhere);
    }
    findings
}

/// Whether it speaks of a time that runs because something is not recorded.
fn rests_on_absence(finding: &Finding, chart: &Chart, now: &Stamp) -> bool {
    match finding.about {
        About::ThirdStage => chart.third_stage(now).is_some_and(|stage| stage.to.is_none()),
        About::Watch { watch } => Watch::WINDOWS.contains(&watch),
        About::Apgar { .. } => finding.state == FindingState::NotRecorded,
        _ => false,
    }
}

/// What is not recorded here may be on the other phone.
fn elsewhere(finding: &mut Finding) {
    let what = match &finding.about {
        About::ThirdStage => Message::new("watch-third-stage"),
        About::Watch { watch } => watch.name(),
        _ => finding.message.clone(),
    };
    let message = Message::new("finding-elsewhere").with("what", what);
    *finding = plain(finding.about.clone(), FindingState::CannotAssess, message, std::mem::take(&mut finding.rests_on));
}

fn blood_loss(chart: &Chart, protocol: &Protocol) -> Finding {
    let subject = Subject::of(Watch::BloodLoss);
    if chart.losses.is_empty() {
        return not_recorded(subject);
    }
    let value = Milli::from(blood(chart, Some(protocol)).total());
    let rests_on = chart.losses.iter().map(|loss| loss.mark.entry).collect();
    held(subject, Watch::BloodLoss.value_words(value), rests_on, blood_step(chart, protocol, value), protocol)
}

/// Whether the blood recorded is past a limit of the protocol.
pub(crate) fn blood_limit_passed(chart: &Chart, protocol: &Protocol) -> bool {
    let lost = Milli::from(blood(chart, Some(protocol)).total());
    blood_step(chart, protocol, lost).is_some_and(|step| step.level == Level::Limit)
}

/// The gravest step that so much blood has passed.
fn blood_step<'a>(chart: &Chart, protocol: &'a Protocol, lost: Milli) -> Option<&'a Step> {
    let steps = protocol.steps(Watch::BloodLoss).iter();
    gravest(steps.filter(|step| step.passed_by(lost) && signs::beside(chart, step)))
}

/// The gravest of these steps; of equally grave ones the last in the file, which is the furthest.
fn gravest<'a>(steps: impl Iterator<Item = &'a Step>) -> Option<&'a Step> {
    steps.max_by_key(|step| step.level)
}

/// A time held against its steps.
fn for_time(subject: Subject, elapsed: &Elapsed, steps: &[Step], rests_on: Vec<EntryId>, protocol: &Protocol) -> Finding {
    let value = elapsed.words();
    let time = Milli(elapsed.ms.saturating_mul(1_000) / subject.watch.unit_ms());
    let passed = gravest(steps.iter().filter(|step| step.passed_by(time)));
    if elapsed.certainty == Certainty::AtLeast && passed.is_none() {
        // What it is at least tells that a mark is passed, never that none is.
        let message = Message::new("finding-at-least").with("what", subject.name).with("value", value);
        return plain(subject.about, FindingState::CannotAssess, message, rests_on);
    }
    let reminder = passed.map(|step| reminder_id(subject.watch, step));
    Finding { reminder, ..held(subject, value, rests_on, passed, protocol) }
}

/// The stable name of the time reminder for a step of a running time.
pub(crate) fn reminder_id(watch: Watch, step: &Step) -> String {
    let of = match watch {
        Watch::ThirdStagePhysiological | Watch::ThirdStageActive => "third-stage".to_owned(),
        window => window.name().id,
    };
    format!("{of}-{}", step.value.0)
}

/// The gravest step that the value has passed, or that it has passed none.
fn held(subject: Subject, words: Message, rests_on: Vec<EntryId>, passed: Option<&Step>, protocol: &Protocol) -> Finding {
    let Some(step) = passed else {
        let message = Message::new("finding-within").with("what", subject.name).with("value", words);
        return plain(subject.about, FindingState::Within, message, rests_on);
    };
    let state = passed_state(step.level);
    let id = if state == FindingState::Passed { "finding-passed" } else { "finding-near" };
    let message = limit_message(id, &subject, words, step);
    let threshold = Some(threshold(step, protocol));
    Finding { level: Some(step.level), threshold, ..plain(subject.about, state, message, rests_on) }
}

fn limit_message(id: &str, subject: &Subject, words: Message, step: &Step) -> Message {
    limit_words(id, subject.name.clone(), words, step.compare, subject.watch.value_words(step.value))
}

fn limit_words(id: &str, what: Message, value: Message, compare: Compare, limit: Message) -> Message {
    let compare = format!("{} ", compare.sign());
    Message::new(id).with("what", what).with("value", value).with("compare", compare).with("limit", limit)
}

fn threshold(step: &Step, protocol: &Protocol) -> Threshold {
    let words = Some(step.words.clone()).filter(|words| !words.trim().is_empty());
    Threshold { source: format!("{}: {}", protocol.title, step.source), status: step.status, words }
}

fn not_recorded(subject: Subject) -> Finding {
    let message = Message::new("finding-not-recorded").with("what", subject.name);
    plain(subject.about, FindingState::NotRecorded, message, Vec::new())
}

fn passed_state(level: Level) -> FindingState {
    match level {
        Level::Limit => FindingState::Passed,
        Level::Note | Level::Caution => FindingState::Near,
    }
}

fn plain(about: About, state: FindingState, message: Message, rests_on: Vec<EntryId>) -> Finding {
    Finding { about, state, level: None, message, rests_on, threshold: None, reminder: None }
}
