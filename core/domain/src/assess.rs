//! Holds a chart against a protocol: what is near, passed, not recorded, or cannot be told. It never says what to do and
//! never calls a reading safe.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::chart::{Chart, Noted};
use crate::entry::EntryId;
use crate::examination::{Completeness, Examination};
use crate::fact::{Answer, BabyNo, Care, Loss, MotherObservation};
use crate::message::Message;
use crate::protocol::{Level, Milli, Protocol, Status, Step, Watch};
use crate::time::{Certainty, Stamp};

/// One thing that was held against the protocol or the examination.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
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
}

/// What a finding is about.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
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
    },
}

/// How it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
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
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Threshold {
    /// Title of the protocol, or of the examination's source.
    pub source: String,
    /// How well it was checked.
    pub status: Status,
    /// What the source says, in short.
    pub words: Option<String>,
}

/// Blood, measured and judged by eye apart.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
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
}

/// Adds up the blood; weights become volumes by the protocol's factor, or at 1 g/mL (common practice) without one.
#[must_use]
pub fn blood(chart: &Chart, protocol: Option<&Protocol>) -> Blood {
    let mut sum = Blood::default();
    for loss in &chart.losses {
        let (measured, seen) = match &loss.what {
            Loss::Weighed { .. } | Loss::Jug { .. } => (loss_volume(&loss.what, protocol), 0),
            Loss::Seen { volume } => (0, volume.get()),
        };
        sum.measured = sum.measured.saturating_add(measured);
        sum.seen = sum.seen.saturating_add(seen);
    }
    sum
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

/// Everything that can be said of this chart now, in a fixed order: time, blood, signs, examination.
#[must_use]
pub fn assess(chart: &Chart, protocol: Option<&Protocol>, now: &Stamp) -> Vec<Finding> {
    let mut findings = Vec::new();
    match protocol {
        Some(protocol) => {
            findings.push(third_stage(chart, protocol, now));
            findings.push(blood_loss(chart, protocol));
            findings.push(shock_index(chart, protocol));
            findings.extend(SIGNS.iter().filter_map(|(watch, read)| sign(chart, protocol, *watch, *read)));
        }
        None => {
            findings.push(plain(About::Protocol, FindingState::CannotAssess, Message::new("finding-no-protocol"), Vec::new()))
        }
    }
    // What was examined is told also where no birth of that placenta is marked.
    let born = chart.placentas.iter().filter(|(_, placenta)| placenta.born.is_some()).map(|(no, _)| *no);
    let placentas: BTreeSet<BabyNo> = born.chain(chart.examinations.keys().copied()).collect();
    findings.extend(placentas.into_iter().flat_map(|placenta| examination(chart, placenta)));
    findings
}

fn third_stage(chart: &Chart, protocol: &Protocol, now: &Stamp) -> Finding {
    let about = About::ThirdStage;
    let Some(stage) = chart.third_stage(now) else {
        return plain(
            about,
            FindingState::NotRecorded,
            Message::new("finding-not-recorded").with("what", Message::new("watch-third-stage")),
            Vec::new(),
        );
    };
    let mut rests_on = vec![stage.from.entry];
    rests_on.extend(stage.to.as_ref().map(|mark| mark.entry));
    let Some(care) = chart.care else {
        return plain(
            about,
            FindingState::CannotAssess,
            Message::new("finding-no-care").with("value", stage.elapsed.words()),
            rests_on,
        );
    };
    if stage.elapsed.ms < 0 {
        return plain(about, FindingState::CannotAssess, Message::new("finding-placenta-first"), rests_on);
    }
    let lower_bound = stage.elapsed.certainty == Certainty::AtLeast;
    let value = stage.elapsed.words();
    let watch = third_stage_watch(care);
    // A minute has 60,000 ms, so milliseconds divided by 60 are thousandths of a minute.
    let time = Milli(stage.elapsed.ms / 60);
    if lower_bound && passed(protocol.steps(watch), time).is_none() {
        // What it is at least tells that a mark is passed, never that none is.
        let message = Message::new("finding-at-least").with("what", watch.name()).with("value", value);
        return plain(about, FindingState::CannotAssess, message, rests_on);
    }
    held(about, watch, time, value, rests_on, protocol)
}

/// The thresholds that this kind of care is held against.
#[must_use]
pub fn third_stage_watch(care: Care) -> Watch {
    match care {
        Care::Active => Watch::ThirdStageActive,
        Care::Physiological => Watch::ThirdStagePhysiological,
    }
}

fn blood_loss(chart: &Chart, protocol: &Protocol) -> Finding {
    let watch = Watch::BloodLoss;
    let about = About::Watch { watch };
    if chart.losses.is_empty() {
        return plain(
            about,
            FindingState::NotRecorded,
            Message::new("finding-not-recorded").with("what", watch.name()),
            Vec::new(),
        );
    }
    let value = Milli::from(blood(chart, Some(protocol)).total());
    let rests_on = chart.losses.iter().map(|loss| loss.mark.entry).collect();
    held(about, watch, value, watch.value_words(value), rests_on, protocol)
}

/// Pulse over systolic pressure from the latest look that has both.
fn shock_index(chart: &Chart, protocol: &Protocol) -> Finding {
    let watch = Watch::ShockIndex;
    let about = About::Watch { watch };
    let latest = chart.observations.iter().rev().find_map(|seen| {
        let (pulse, systolic) = (seen.what.pulse?, seen.what.systolic.filter(|mmhg| mmhg.get() > 0)?);
        Some((Milli(i64::from(pulse.get()) * 1000 / i64::from(systolic.get())), seen.mark.entry))
    });
    match latest {
        Some((value, entry)) => held(about, watch, value, watch.value_words(value), vec![entry], protocol),
        None => {
            plain(about, FindingState::NotRecorded, Message::new("finding-not-recorded").with("what", watch.name()), Vec::new())
        }
    }
}

type Read = fn(&MotherObservation) -> Option<Milli>;

const SIGNS: [(Watch, Read); 6] = [
    (Watch::Pulse, |seen| seen.pulse.map(|value| Milli::from(value.get()))),
    (Watch::Systolic, |seen| seen.systolic.map(|value| Milli::from(value.get()))),
    (Watch::Diastolic, |seen| seen.diastolic.map(|value| Milli::from(value.get()))),
    (Watch::Respirations, |seen| seen.respirations.map(|value| Milli::from(value.get()))),
    (Watch::Temperature, |seen| seen.temperature.map(|tenths| Milli(i64::from(tenths.get()) * 100))),
    (Watch::Saturation, |seen| seen.saturation.map(|value| Milli::from(value.get()))),
];

/// The latest value of one sign; `None` where the protocol does not watch it.
fn sign(chart: &Chart, protocol: &Protocol, watch: Watch, read: Read) -> Option<Finding> {
    if protocol.steps(watch).is_empty() {
        return None;
    }
    let about = About::Watch { watch };
    let latest =
        chart.observations.iter().rev().find_map(|seen: &Noted<MotherObservation>| Some((read(&seen.what)?, seen.mark.entry)));
    Some(match latest {
        Some((value, entry)) => held(about, watch, value, watch.value_words(value), vec![entry], protocol),
        None => {
            plain(about, FindingState::NotRecorded, Message::new("finding-not-recorded").with("what", watch.name()), Vec::new())
        }
    })
}

/// The gravest step that a value passes; of equally grave ones the last in the file, which is the furthest.
fn passed(steps: &[Step], value: Milli) -> Option<&Step> {
    steps.iter().filter(|step| step.passed_by(value)).max_by_key(|step| step.level)
}

fn held(about: About, watch: Watch, value: Milli, words: Message, rests_on: Vec<EntryId>, protocol: &Protocol) -> Finding {
    let Some(step) = passed(protocol.steps(watch), value) else {
        let message = Message::new("finding-within").with("what", watch.name()).with("value", words);
        return plain(about, FindingState::Within, message, rests_on);
    };
    let state = passed_state(step.level);
    let id = if state == FindingState::Passed { "finding-passed" } else { "finding-near" };
    let limit = format!("{} ", step.compare.sign());
    let message = Message::new(id)
        .with("what", watch.name())
        .with("value", words)
        .with("compare", limit)
        .with("limit", watch.value_words(step.value));
    let threshold = Threshold {
        source: format!("{}: {}", protocol.title, step.source),
        status: step.status,
        words: Some(step.words.clone()),
    };
    Finding { about, state, level: Some(step.level), message, rests_on, threshold: Some(threshold) }
}

fn passed_state(level: Level) -> FindingState {
    match level {
        Level::Limit => FindingState::Passed,
        Level::Note | Level::Caution => FindingState::Near,
    }
}

fn plain(about: About, state: FindingState, message: Message, rests_on: Vec<EntryId>) -> Finding {
    Finding { about, state, level: None, message, rests_on, threshold: None }
}

fn examination(chart: &Chart, placenta: BabyNo) -> Vec<Finding> {
    let standard = Examination::standard();
    let examined = chart.examinations.get(&placenta).cloned().unwrap_or_default();
    let about = About::Completeness { placenta };
    let entries = |items: &[String]| items.iter().filter_map(|item| examined.entries.get(item).copied()).collect::<Vec<_>>();
    let completeness = match standard.completeness(&examined.answers) {
        Completeness::NoDoubtRecorded => {
            let asked: Vec<_> = standard.items.iter().filter(|item| !item.whole.is_empty()).map(|item| item.id.clone()).collect();
            plain(about, FindingState::Within, Message::new("finding-no-doubt"), entries(&asked))
        }
        Completeness::NotRecorded(items) => {
            let missing =
                Message::new("finding-completeness-not-recorded").with("count", u32::try_from(items.len()).unwrap_or(u32::MAX));
            plain(about, FindingState::NotRecorded, missing, Vec::new())
        }
        Completeness::Doubt(items) => Finding {
            level: Some(Level::Limit),
            threshold: Some(Threshold {
                source: "an incomplete or doubtful placenta may mean tissue left behind".to_owned(),
                status: Status::CommonPractice,
                words: None,
            }),
            ..plain(
                about,
                FindingState::Passed,
                Message::new("finding-doubt")
                    .with("item", Message::new(format!("exam-{}", items.first().map_or("", String::as_str)))),
                entries(&items),
            )
        },
    };
    let mut findings = vec![completeness];
    for item in &standard.items {
        let Some(answer) = examined.answers.get(&item.id) else { continue };
        let Some(unusual) = item.unusual(answer) else { continue };
        if shortness_unknown(&item.id, answer, &examined.answers) {
            continue;
        }
        let message = Message::new("finding-unusual")
            .with("item", Message::new(format!("exam-{}", item.id)))
            .with("answer", answer.describe(&item.id));
        findings.push(Finding {
            level: Some(unusual.level),
            threshold: Some(Threshold { source: unusual.source, status: unusual.status, words: unusual.words }),
            ..plain(
                About::Examination { placenta, item: item.id.clone() },
                passed_state(unusual.level),
                message,
                entries(std::slice::from_ref(&item.id)),
            )
        });
    }
    findings
}

/// A cord of which a piece is missing is never called short.
fn shortness_unknown(item: &str, answer: &Answer, answers: &crate::examination::Answers) -> bool {
    let whole = answers.get("cord-whole") == Some(&Answer::Choice { option: "all-pieces".to_owned() });
    let steps = Examination::standard().item(item).map_or(&[][..], |item| item.steps.as_slice());
    let short = match answer {
        Answer::Measure { value } => steps.iter().any(|step| !step.is_upper() && step.passed_by(Milli::from(*value))),
        _ => false,
    };
    item == "cord-length" && short && !whole
}
