//! What is looked through before leaving the home, and what of it is on record. It says "not recorded" and never "safe".
//!
//! The list is our own choice: a full check of mother and baby before leaving is usual (k4health postnatal care, second-hand),
//! what belongs to it no source was found to say.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::assess::{About, Finding, FindingState, passed_urine};
use crate::chart::{Baby, Chart, Mark, Noted};
use crate::fact::{BabyNo, Fact, LeavingStep, MotherObservation, NewbornEvent, NewbornMeasures};
use crate::message::Message;
use crate::protocol::{Level, Watch};

/// Looks at the mother after the placenta that the list asks for. Our own choice.
const LOOKS: usize = 2;

/// One item of the list.
#[derive(Clone, Debug, PartialEq)]
pub struct Leaving {
    /// What.
    pub item: LeavingItem,
    /// The baby or placenta that it is about, where it is about one.
    pub of: Option<BabyNo>,
    /// What is recorded, in words; none where nothing is.
    pub said: Option<Message>,
    /// When that was, where it is one moment.
    pub mark: Option<Mark>,
    /// Whether all is recorded that the item asks for.
    pub recorded: bool,
    /// How much a finding of the protocol asks for attention there.
    pub level: Option<Level>,
}

/// What is looked through, in this order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum LeavingItem {
    /// The placenta is born.
    Placenta,
    /// Whether all of it is here.
    Completeness,
    /// The uterus after the placenta.
    Uterus,
    /// Blood.
    Blood,
    /// Looks at the mother after the placenta.
    Looks,
    /// She passed urine.
    Urine,
    /// The perineum was looked at.
    Perineum,
    /// The baby was fed.
    Feed,
    /// The baby's temperature.
    Temperature,
    /// The baby's breathing.
    Breathing,
    /// Vitamin K given or declined.
    VitaminK,
    /// Which signs to call for.
    WarningSigns,
    /// Who stays.
    Adult,
    /// When the family is seen next.
    Contact,
    /// Whom they call until then.
    Call,
    /// What was given out of hand, and to whom.
    Shared,
}

impl LeavingItem {
    /// The catalogue's id of its name.
    #[must_use]
    pub fn name(self) -> Message {
        Message::new(match self {
            Self::Placenta => "leaving-item-placenta",
            Self::Completeness => "leaving-item-completeness",
            Self::Uterus => "leaving-item-uterus",
            Self::Blood => "leaving-item-blood",
            Self::Looks => "leaving-item-looks",
            Self::Urine => "leaving-item-urine",
            Self::Perineum => "leaving-item-perineum",
            Self::Feed => "leaving-item-feed",
            Self::Temperature => "leaving-item-temperature",
            Self::Breathing => "leaving-item-breathing",
            Self::VitaminK => "leaving-item-vitamin-k",
            Self::WarningSigns => "leaving-item-warning-signs",
            Self::Adult => "leaving-item-adult",
            Self::Contact => "leaving-item-contact",
            Self::Call => "leaving-item-call",
            Self::Shared => "leaving-item-shared",
        })
    }
}

/// The list for this chart; empty before a birth. `findings` are those of [`crate::assess::assess`] now.
#[must_use]
pub fn leaving(chart: &Chart, findings: &[Finding]) -> Vec<Leaving> {
    let born: BTreeMap<BabyNo, &Baby> =
        chart.babies.iter().filter(|(_, baby)| baby.born.is_some()).map(|(no, baby)| (*no, baby)).collect();
    if born.is_empty() {
        return Vec::new();
    }
    let mut list: Vec<Leaving> = born.keys().map(|no| placenta(chart, *no)).collect();
    list.extend(chart.placentas.iter().filter(|(_, known)| known.born.is_some()).map(|(no, _)| completeness(findings, *no)));
    list.extend([uterus(chart), blood(chart, findings), looks(chart), urine(chart), perineum(chart)]);
    list.extend(born.iter().flat_map(|(no, known)| baby(chart, *no, known)));
    list.extend([step(chart, LeavingItem::WarningSigns, LeavingStep::WarningSignsTold)]);
    list.extend([step(chart, LeavingItem::Adult, LeavingStep::AdultStays)]);
    list.extend(contact(chart));
    list.push(shared(chart));
    list
}

/// An item of which so much is on record, or nothing.
fn one(item: LeavingItem, found: Option<(Message, Mark)>) -> Leaving {
    let recorded = found.is_some();
    let (said, mark) = found.unzip();
    Leaving { item, of: None, said, mark, recorded, level: None }
}

fn placenta(chart: &Chart, baby: BabyNo) -> Leaving {
    let of = chart.placentas.values().find(|known| known.babies.contains(&baby) && known.born.is_some());
    let found = of.and_then(|known| Some((chart.say(&Fact::PlacentaBorn { babies: known.babies.clone() }), known.born.clone()?)));
    Leaving { of: Some(baby), ..one(LeavingItem::Placenta, found) }
}

fn completeness(findings: &[Finding], placenta: BabyNo) -> Leaving {
    let found = findings.iter().find(|finding| finding.about == About::Completeness { placenta });
    Leaving { of: Some(placenta), ..finding(LeavingItem::Completeness, found) }
}

fn blood(chart: &Chart, findings: &[Finding]) -> Leaving {
    let about = About::Watch { watch: Watch::BloodLoss };
    let found = findings.iter().find(|finding| finding.about == about);
    let total = crate::assess::blood(chart, None).total();
    let plain = chart.losses.last().map(|loss| (Message::new("value-millilitres").with("value", total), loss.mark.clone()));
    match found {
        Some(_) => finding(LeavingItem::Blood, found),
        // Without a protocol the sum alone.
        None => Leaving { mark: None, ..one(LeavingItem::Blood, plain) },
    }
}

fn finding(item: LeavingItem, found: Option<&Finding>) -> Leaving {
    let recorded = found.is_some_and(|finding| finding.state != FindingState::NotRecorded);
    let said = found.map(|finding| finding.message.clone());
    Leaving { item, of: None, said, mark: None, recorded, level: found.and_then(|finding| finding.level) }
}

/// The looks after the last placenta; all of them while one is awaited.
fn looks_after(chart: &Chart) -> impl DoubleEndedIterator<Item = &Noted<MotherObservation>> {
    let after = chart.last_placenta();
    let counts = move |look: &&Noted<MotherObservation>| {
        after.as_ref().is_none_or(|placenta| chart.elapsed(&placenta.at, &look.mark.at).ms >= 0)
    };
    chart.observations.iter().filter(counts)
}

fn uterus(chart: &Chart) -> Leaving {
    let seen = looks_after(chart).rfind(|look| look.what.fundus.is_some());
    let found = seen.map(|look| {
        let MotherObservation { fundus, fundal_height, fundal_position, .. } = look.what.clone();
        let only = MotherObservation { fundus, fundal_height, fundal_position, ..MotherObservation::default() };
        (Fact::MotherObserved(only).describe(), look.mark.clone())
    });
    one(LeavingItem::Uterus, found)
}

fn looks(chart: &Chart) -> Leaving {
    let count = looks_after(chart).count();
    let found = looks_after(chart).next_back().map(|last| {
        let number = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
        (Message::new("leaving-looks").with("count", number(count)).with("asked", number(LOOKS)), last.mark.clone())
    });
    Leaving { recorded: count >= LOOKS, ..one(LeavingItem::Looks, found) }
}

fn urine(chart: &Chart) -> Leaving {
    let found = chart.observations.iter().rfind(|look| passed_urine(&look.what)).map(|look| {
        let MotherObservation { bladder, urine, .. } = look.what.clone();
        let only = MotherObservation { bladder, urine, ..MotherObservation::default() };
        (Fact::MotherObserved(only).describe(), look.mark.clone())
    });
    let response = chart.responses.iter().rfind(|step| step.what == crate::fact::ResponseStep::BladderEmptied);
    let response = response.map(|step| (Fact::ResponseMarked { step: step.what }.describe(), step.mark.clone()));
    one(LeavingItem::Urine, found.or(response))
}

fn perineum(chart: &Chart) -> Leaving {
    let seen = chart.perinea.last();
    one(LeavingItem::Perineum, seen.map(|seen| (Fact::PerineumExamined(seen.what.clone()).describe(), seen.mark.clone())))
}

fn baby(chart: &Chart, no: BabyNo, baby: &Baby) -> [Leaving; 4] {
    let event = |event: NewbornEvent| {
        let seen = baby.events.iter().find(|seen| seen.what == event)?;
        Some((chart.say(&Fact::NewbornEvent { baby: no, event }), seen.mark.clone()))
    };
    let measure = |only: fn(&NewbornMeasures) -> Option<NewbornMeasures>| {
        let (only, mark) = baby.measures.iter().rev().find_map(|seen| Some((only(&seen.what)?, seen.mark.clone())))?;
        Some((chart.say(&Fact::NewbornMeasured(only)), mark))
    };
    let temperature = measure(|seen| {
        let nothing = NewbornMeasures::nothing(seen.baby);
        seen.temperature.map(|read| NewbornMeasures { temperature: Some(read), ..nothing })
    });
    let breathing = measure(|seen| {
        let (respirations, breathing) = (seen.respirations, seen.breathing);
        let any = respirations.is_some() || breathing.is_some();
        any.then(|| NewbornMeasures { respirations, breathing, ..NewbornMeasures::nothing(seen.baby) })
    });
    let given =
        chart.medicines.iter().find(|given| given.what.listed.as_deref() == Some("vitamin-k") && given.what.baby == Some(no));
    let given = given.map(|given| (chart.say(&Fact::MedicineGiven(given.what.clone())), given.mark.clone()));
    [
        (LeavingItem::Feed, event(NewbornEvent::FirstFeed)),
        (LeavingItem::Temperature, temperature),
        (LeavingItem::Breathing, breathing),
        (LeavingItem::VitaminK, given.or_else(|| event(NewbornEvent::VitaminKDeclined))),
    ]
    .map(|(item, found)| Leaving { of: Some(no), ..one(item, found) })
}

fn step(chart: &Chart, item: LeavingItem, step: LeavingStep) -> Leaving {
    let seen = chart.leavings.iter().find(|seen| seen.what == step);
    one(item, seen.map(|seen| (Fact::LeavingMarked { step }.describe(), seen.mark.clone())))
}

fn contact(chart: &Chart) -> [Leaving; 2] {
    let planned = chart.contacts.last();
    let part = |item, said: Option<Message>| one(item, said.zip(planned.map(|planned| planned.mark.clone())));
    let call = planned.map(|planned| planned.what.call.as_str()).filter(|call| !call.trim().is_empty());
    [
        part(LeavingItem::Contact, planned.and_then(|planned| planned.what.words())),
        part(LeavingItem::Call, call.map(|call| Message::new("part-next-contact").with("text", call))),
    ]
}

/// The last thing that was given out of hand.
fn shared(chart: &Chart) -> Leaving {
    let last = chart.shared.last();
    one(LeavingItem::Shared, last.map(|given| (Fact::Shared(given.what.clone()).describe(), given.mark.clone())))
}
