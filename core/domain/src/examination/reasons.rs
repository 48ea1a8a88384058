//! What published lists give as reasons to send a placenta to a laboratory, to tell the baby's clinician, or to seek advice.

use std::sync::LazyLock;

use serde::{Deserialize, Serialize};

use super::{Asked, Examination, Examined, figures};
use crate::assess::{self, blood_limit_passed};
use crate::chart::Chart;
use crate::fact::{Answer, BabyNo, of_cord};
use crate::growth::{in_weeks, latest, weight_centile};
use crate::message::Message;
use crate::protocol::{Protocol, Status};

/// Whom it is a reason to turn to. The practitioner decides.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum To {
    /// A laboratory, with the placenta.
    Laboratory,
    /// Whoever looks after the baby.
    Baby,
    /// Somebody whose advice is asked.
    Advice,
}

/// Something that a published list gives as a reason.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Reason {
    /// Its id in `reasons.toml`.
    pub reason: String,
    /// Whom it is a reason to turn to.
    pub to: To,
    /// The reason.
    pub words: Message,
    /// What it was found by; none where only the practitioner can tell whether it holds.
    pub because: Vec<Message>,
    /// Whose list.
    pub source: String,
    /// How well that was checked.
    pub status: Status,
}

#[derive(Debug, Default, Deserialize)]
struct File {
    reason: Vec<Row>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    id: String,
    to: To,
    item: Option<String>,
    #[serde(default)]
    options: Vec<String>,
    under: Option<u32>,
    over: Option<u32>,
    figure: Option<String>,
    #[serde(default)]
    any: bool,
    fact: Option<Told>,
    source: String,
    status: Status,
}

/// What the chart tells beside the examination.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Told {
    /// Born before 34 weeks.
    #[serde(rename = "before-34")]
    Before34,
    /// Born before 37 weeks.
    #[serde(rename = "before-37")]
    Before37,
    /// Born at 42 weeks or later.
    #[serde(rename = "from-42")]
    From42,
    /// The mother was above 38 °C.
    Fever,
    /// The blood lost is past a limit of the protocol in force.
    Haemorrhage,
    /// A baby of this placenta below the 10th centile of weight for its gestation.
    SmallBaby,
    /// Scored below 6 at 5 minutes.
    Apgar,
    /// Babies of one sex, or not known to differ, on one disc.
    Fused,
    /// Twins whose weights differ by more than a fifth of the heavier one's.
    UnlikeTwins,
}

fn rows() -> &'static [Row] {
    static FILE: LazyLock<File> = LazyLock::new(|| toml::from_str(include_str!("reasons.toml")).unwrap_or_default());
    &FILE.reason
}

/// The reasons that hold for this placenta by what is recorded, in the order of the file.
#[must_use]
pub fn reasons(chart: &Chart, protocol: Option<&Protocol>, placenta: BabyNo) -> Vec<Reason> {
    let examined = chart.examined(placenta);
    let reason = |row: &Row| {
        let because = because(row, chart, protocol, placenta, examined);
        (!because.is_empty()).then(|| row.reason(because))
    };
    rows().iter().filter_map(reason).collect()
}

/// The reasons to send it to a laboratory that no chart of this program can tell: the practitioner marks those that hold.
#[must_use]
pub fn untold() -> Vec<Reason> {
    rows().iter().filter(|row| row.is_untold()).map(|row| row.reason(Vec::new())).collect()
}

impl Row {
    fn is_untold(&self) -> bool {
        self.item.is_none() && self.figure.is_none() && self.fact.is_none() && !self.any
    }

    fn reason(&self, because: Vec<Message>) -> Reason {
        Reason {
            reason: self.id.clone(),
            to: self.to,
            words: Message::new(format!("reason-{}", self.id)),
            because,
            source: self.source.clone(),
            status: self.status,
        }
    }

    /// Whether an answer to its item is one that it names.
    fn holds(&self, answer: &Answer) -> bool {
        let named = answer.options().any(|option| self.options.iter().any(|one| one == option));
        // A cord of which a piece may be missing is never called short.
        let whole = !matches!(answer, Answer::Pieces { all: false, .. } | Answer::Measure { .. });
        let short = self.under.is_some_and(|under| whole && answer.measure().is_some_and(|value| value < under));
        let long = self.over.is_some_and(|over| answer.measure().is_some_and(|value| value > over));
        named || short || long
    }
}

/// What makes a reason hold, in words; empty where it does not.
fn because(row: &Row, chart: &Chart, protocol: Option<&Protocol>, placenta: BabyNo, examined: &Examined) -> Vec<Message> {
    if row.any {
        return unusual(examined);
    }
    if let Some(item) = &row.item {
        let given = examined.given.iter().filter(|(asked, given)| asked.item == *item && row.holds(&given.answer));
        return given.map(|(asked, given)| answered(asked, &given.answer)).collect();
    }
    if let Some(id) = &row.figure {
        let passed = figures(chart, placenta).into_iter().filter(|figure| figure.figure == *id && !figure.passed.is_empty());
        return passed.flat_map(|figure| figure.inputs).take(1).map(|input| pair(input.name, input.value)).collect();
    }
    row.fact.and_then(|fact| fact.told(chart, protocol, &chart.fed(placenta))).into_iter().collect()
}

/// Each answer that a source calls unusual.
fn unusual(examined: &Examined) -> Vec<Message> {
    let unusual = examined.given.iter().filter(|(asked, given)| {
        Examination::standard().item(&asked.item).and_then(|item| item.unusual(&given.answer)).is_some()
    });
    unusual.map(|(asked, given)| answered(asked, &given.answer)).collect()
}

fn answered(asked: &Asked, answer: &Answer) -> Message {
    let item = of_cord(Message::new(format!("exam-{}", asked.item)), asked.cord);
    pair(item, answer.describe(&asked.item))
}

fn pair(name: Message, value: Message) -> Message {
    Message::new("reason-because").with("name", name).with("value", value)
}

impl Told {
    fn told(self, chart: &Chart, protocol: Option<&Protocol>, babies: &[BabyNo]) -> Option<Message> {
        let days = chart.client.as_ref().and_then(|client| client.gestation).map(|days| days.get());
        match self {
            Self::Before34 => weeks(days.filter(|days| *days < 34 * 7)),
            Self::Before37 => weeks(days.filter(|days| *days < 37 * 7)),
            Self::From42 => weeks(days.filter(|days| *days >= 42 * 7)),
            Self::Fever => {
                let hottest = chart.observations.iter().filter_map(|seen| seen.what.temperature).max()?;
                let celsius = Message::new("value-celsius").with("value", f64::from(hottest.get()) / 10.0);
                (hottest.get() > 380).then(|| pair(Message::new("watch-temperature"), celsius))
            }
            Self::Haemorrhage => {
                let protocol = protocol.filter(|protocol| blood_limit_passed(chart, protocol))?;
                let lost = Message::new("value-millilitres").with("value", assess::blood(chart, Some(protocol)).total());
                Some(pair(Message::new("watch-blood-loss"), lost))
            }
            Self::SmallBaby => {
                let small = |no: &&BabyNo| weight_centile(chart, **no).is_some_and(|centile| centile < 10.0);
                babies.iter().find(small).and_then(|no| weight(chart, *no)).map(weight_words)
            }
            Self::Apgar => babies.iter().find_map(|no| {
                let scored = &chart.babies.get(no)?.apgars;
                let low =
                    scored.iter().rev().find(|scored| scored.what.minute.get() == 5).filter(|scored| scored.what.total() < 6)?;
                Some(Message::new("reason-apgar-scored").with("baby", *no).with("score", low.what.total()))
            }),
            Self::Fused => {
                let sexes: std::collections::BTreeSet<_> =
                    babies.iter().filter_map(|no| latest(chart.babies.get(no)?, *no).sex).collect();
                (babies.len() > 1 && sexes.len() < 2).then(|| Message::new("reason-fused-disc"))
            }
            Self::UnlikeTwins => {
                let weights: Vec<u32> = chart.babies.keys().filter_map(|no| weight(chart, *no)).collect();
                let (lightest, heaviest) = (weights.iter().min()?, weights.iter().max()?);
                let words = Message::new("reason-weights").with("light", *lightest).with("heavy", *heaviest);
                // More than 20 % of the heavier.
                (weights.len() > 1 && (heaviest - lightest) * 5 > *heaviest).then_some(words)
            }
        }
    }
}

fn weight(chart: &Chart, no: BabyNo) -> Option<u32> {
    latest(chart.babies.get(&no)?, no).weight.map(|grams| grams.get())
}

fn weight_words(grams: u32) -> Message {
    pair(Message::new("figure-input-birth-weight"), Message::new("measure-g").with("value", grams))
}

fn weeks(days: Option<u32>) -> Option<Message> {
    let days = days?;
    Some(pair(Message::new("figure-input-gestation"), in_weeks(Message::new("figure-weeks"), days)))
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    #[test]
    fn the_file_is_sound() {
        let file: File = toml::from_str(include_str!("reasons.toml")).unwrap();
        let ids: BTreeSet<_> = file.reason.iter().map(|row| &row.id).collect();
        assert_eq!(ids.len(), file.reason.len(), "each reason has an id of its own");
        for row in &file.reason {
            assert!(!row.source.trim().is_empty(), "{}", row.id);
            let ways = [row.item.is_some(), row.figure.is_some(), row.fact.is_some(), row.any];
            assert!(ways.iter().filter(|way| **way).count() < 2, "{}", row.id);
            if let Some(item) = &row.item {
                let item = Examination::standard().item(item).unwrap();
                assert!(row.options.iter().all(|option| item.choice(option).is_some()), "{}", row.id);
                assert!(!row.options.is_empty() || row.under.is_some() || row.over.is_some(), "{}", row.id);
            }
        }
    }
}
