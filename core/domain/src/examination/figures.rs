//! What is worked out from the answers: each figure with its inputs, its formula, and what has been published beside it.

use std::sync::LazyLock;

use serde::{Deserialize, Serialize};

use super::Examined;
use super::order::cords;
use crate::chart::Chart;
use crate::entry::EntryId;
use crate::fact::BabyNo;
use crate::message::{Message, rounded};
use crate::protocol::{Level, Milli, Status, Step};

mod chorions;
mod cord;
mod disc;
mod weight;

/// Something worked out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Figure {
    /// Its id in `figures.toml`; its name is the catalogue's `figure-…`.
    pub figure: String,
    /// Whose cord, where one disc fed several babies.
    pub cord: Option<BabyNo>,
    /// What it comes to, or why it cannot be told.
    pub value: Message,
    /// Whether it could be worked out.
    pub known: bool,
    /// What it was worked out from.
    pub inputs: Vec<Input>,
    /// How.
    pub formula: Message,
    /// The thresholds that it passes.
    pub passed: Vec<Beside>,
    /// What has been published beside it.
    pub published: Vec<Beside>,
    /// The entries that it rests on.
    pub rests_on: Vec<EntryId>,
}

/// Something that a figure was worked out from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Input {
    /// What it is.
    pub name: Message,
    /// Its value.
    pub value: Message,
}

/// What a source says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Beside {
    /// How much passing it asks for attention; none where it is only shown.
    #[serde(default)]
    pub level: Option<Level>,
    /// In short.
    pub words: String,
    /// Who says so.
    pub source: String,
    /// How well that was checked.
    pub status: Status,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    figure: Vec<Row>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    id: String,
    #[serde(default)]
    published: Vec<Told>,
    #[serde(default)]
    step: Vec<Limit>,
}

#[derive(Debug, Deserialize)]
struct Told {
    words: String,
    source: String,
    status: Status,
    /// Only where it was weighed so.
    of: Option<String>,
}

#[derive(Debug, Deserialize)]
struct Limit {
    /// Only where it was weighed so.
    of: Option<String>,
    #[serde(flatten)]
    step: Step,
}

fn rows() -> &'static [Row] {
    static FILE: LazyLock<File> = LazyLock::new(|| toml::from_str(include_str!("figures.toml")).unwrap_or_default());
    &FILE.figure
}

/// What is looked at: one placenta of a chart, and the answers given for it.
#[derive(Clone, Copy)]
struct Case<'a> {
    chart: &'a Chart,
    /// The placenta, named by its first baby.
    placenta: BabyNo,
    /// The babies that it fed.
    babies: &'a [BabyNo],
    examined: &'a Examined,
}

/// Everything that can be worked out for a placenta, and what would be if one more thing were on record.
#[must_use]
pub fn figures(chart: &Chart, placenta: BabyNo) -> Vec<Figure> {
    let babies = chart.fed(placenta);
    let case = Case { chart, placenta, babies: &babies, examined: chart.examined(placenta) };
    let mut figures = weight::figures(case);
    figures.extend(disc::figures(case));
    for cord in cords(&babies) {
        figures.extend(cord::figures(case, cord));
    }
    figures.extend(chorions::figure(case));
    figures.into_iter().map(|figure| figure.resting_on(case.examined)).collect()
}

impl Case<'_> {
    /// The baby at the end of a cord.
    fn baby(self, cord: Option<BabyNo>) -> Option<BabyNo> {
        match (cord, self.babies) {
            (None, [one]) => Some(*one),
            (cord, _) => cord,
        }
    }

    fn measure(self, item: &str, cord: Option<BabyNo>) -> Option<u32> {
        self.examined.measure(item, cord)
    }

    /// How it was weighed, as the choice of `weighed-as`.
    fn weighed_as(self) -> Option<&'static str> {
        ["untrimmed", "trimmed", "with-clots"].into_iter().find(|state| self.examined.says("weighed-as", None, state))
    }
}

impl Figure {
    /// A figure that could be worked out, held against its thresholds where it has a number for them.
    fn known(id: &str, value: Message, number: Option<Milli>, inputs: Vec<Input>) -> Self {
        let mut figure = Self::bare(id, value, true, inputs);
        let steps = rows().iter().filter(|row| row.id == id).flat_map(|row| &row.step).filter(|limit| limit.of.is_none());
        figure.passed = number.map_or_else(Vec::new, |number| passed(steps.map(|limit| &limit.step), number));
        figure
    }

    /// A figure that takes something that is not on record.
    fn needs(id: &str, what: Message, inputs: Vec<Input>) -> Self {
        Self::bare(id, Message::new("figure-needs").with("what", what), false, inputs)
    }

    fn bare(id: &str, value: Message, known: bool, inputs: Vec<Input>) -> Self {
        let formula = Message::new(format!("figure-{id}-formula"));
        let published = told(id, None);
        Self {
            figure: id.to_owned(),
            cord: None,
            value,
            known,
            inputs,
            formula,
            passed: Vec::new(),
            published,
            rests_on: Vec::new(),
        }
    }

    fn of(mut self, cord: Option<BabyNo>) -> Self {
        self.cord = cord;
        self
    }

    /// With the entries of its inputs.
    fn resting_on(mut self, examined: &Examined) -> Self {
        let items = self.inputs.iter().filter_map(|input| input.name.id.strip_prefix("exam-"));
        self.rests_on = items
            .filter_map(|item| examined.at(item, self.cord).or_else(|| examined.get(item)))
            .map(|given| given.entry)
            .collect();
        self
    }

    /// With what was published about placentas weighed so.
    fn weighed(mut self, state: &str, number: Option<Milli>) -> Self {
        self.published = told(&self.figure, Some(state));
        let row = rows().iter().filter(|row| row.id == self.figure).flat_map(|row| &row.step);
        let steps = row.filter(|limit| limit.of.as_deref() == Some(state)).map(|limit| &limit.step);
        self.passed = number.map_or_else(Vec::new, |number| passed(steps, number));
        self
    }

    /// Its name.
    #[must_use]
    pub fn name(&self) -> Message {
        Message::new(format!("figure-{}", self.figure))
    }
}

fn told(id: &str, state: Option<&str>) -> Vec<Beside> {
    let told = rows().iter().filter(|row| row.id == id).flat_map(|row| &row.published);
    let fits = |of: &Option<String>| of.as_deref().is_none_or(|of| state == Some(of));
    told.filter(|told| fits(&told.of)).map(Beside::from).collect()
}

/// The thresholds that a number passes.
fn passed<'a>(steps: impl Iterator<Item = &'a Step>, number: Milli) -> Vec<Beside> {
    steps.filter(|step| step.passed_by(number)).map(Beside::from).collect()
}

fn input(name: &str, value: Message) -> Input {
    Input { name: Message::new(name), value }
}

/// A number with two digits behind the point.
fn hundredths(value: f64) -> Message {
    rounded(value, 2)
}

/// A number for a threshold, rounded to a thousandth.
fn milli(value: f64) -> Option<Milli> {
    Milli::try_from(value).ok()
}

impl From<&Told> for Beside {
    fn from(told: &Told) -> Self {
        Self { level: None, words: told.words.clone(), source: told.source.clone(), status: told.status }
    }
}

impl From<&Step> for Beside {
    fn from(step: &Step) -> Self {
        Self { level: Some(step.level), words: step.words.clone(), source: step.source.clone(), status: step.status }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_file_is_sound() {
        let file: File = toml::from_str(include_str!("figures.toml")).unwrap();
        assert_eq!(file.figure.len(), rows().len());
        for row in &file.figure {
            let told = row.published.iter().map(|told| &told.source);
            for source in told.chain(row.step.iter().map(|limit| &limit.step.source)) {
                assert!(!source.trim().is_empty(), "{}", row.id);
            }
        }
    }
}
