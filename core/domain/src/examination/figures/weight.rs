//! The weight beside a published cohort and beside the baby's. Trimmed and untrimmed are never turned into each other.

use super::{Beside, Case, Figure, Input, hundredths, input};
use crate::examination::{Standing, WeightTable};
use crate::growth::{in_weeks, latest};
use crate::message::{Message, rounded};
use crate::protocol::{Milli, Status};

/// Fresh, untrimmed placentas of vaginal births at term, g: mean and standard deviation of 11,141 singletons of 37 to 42 weeks,
/// PMID 16377060, seen.
const MEAN_G: f64 = 545.0;
const SD_G: f64 = 107.0;
/// 37 weeks, and the last day of 42 weeks.
const TERM_DAYS: std::ops::RangeInclusive<u32> = 259..=300;

pub(super) fn figures(case: Case<'_>) -> Vec<Figure> {
    let Some(grams) = case.measure("weight", None) else { return Vec::new() };
    let weight = input("exam-weight", Message::new("measure-g").with("value", grams));
    let mut figures = vec![against_cohort(case, grams, weight.clone())];
    figures.extend(in_table(case, grams, weight.clone()));
    figures.extend(ratio(case, grams, weight.clone()));
    figures.extend(age(case, weight));
    figures
}

fn state_input(state: &str) -> Input {
    input("exam-weighed-as", Message::new(format!("exam-weighed-as-{state}")))
}

fn weeks(days: u32) -> Input {
    input("figure-input-gestation", in_weeks(Message::new("figure-weeks"), days))
}

/// How far from the mean of the cohort that was weighed in the same way; else why it is held against none.
fn against_cohort(case: Case<'_>, grams: u32, weight: Input) -> Figure {
    let id = "weight";
    let mut inputs = vec![weight];
    let Some(state) = case.weighed_as() else {
        return Figure::needs(id, Message::new("exam-weighed-as"), inputs);
    };
    inputs.push(state_input(state));
    let Some(days) = case.chart.client.as_ref().and_then(|client| client.gestation) else {
        return Figure::needs(id, Message::new("figure-input-gestation"), inputs).weighed(state, None);
    };
    inputs.push(weeks(days.get()));
    let refused =
        |why: &str, inputs| Figure { known: false, ..Figure::known(id, Message::new(why), None, inputs).weighed(state, None) };
    if case.babies.len() > 1 {
        return refused("figure-weight-several", inputs);
    }
    if !TERM_DAYS.contains(&days.get()) {
        return refused("figure-weight-not-term", inputs);
    }
    let held = Some(Milli::from(grams));
    if state != "untrimmed" {
        let why = Message::new(format!("figure-weight-{state}"));
        return Figure { known: false, ..Figure::known(id, why, None, inputs).weighed(state, held) };
    }
    let from_mean = (f64::from(grams) - MEAN_G) / SD_G;
    let side = if from_mean < 0.0 { "figure-weight-below" } else { "figure-weight-above" };
    let value = Message::new(side).with("value", hundredths(from_mean.abs()));
    Figure::known(id, value, None, inputs).weighed(state, held)
}

/// Where it stands in the practice's own table, among placentas of the same week that were weighed in the same way.
fn in_table(case: Case<'_>, grams: u32, weight: Input) -> Option<Figure> {
    let id = "weight-table";
    let table = case.chart.weights.as_deref()?;
    let told =
        |value: Message, known, inputs| Figure { known, published: vec![whose(table)], ..Figure::known(id, value, None, inputs) };
    let mut inputs = vec![weight];
    let (Some(state), Some(days)) = (case.weighed_as(), case.chart.client.as_ref().and_then(|client| client.gestation)) else {
        return Some(told(Message::new("figure-weight-table-needs"), false, inputs));
    };
    inputs.push(state_input(state));
    inputs.push(weeks(days.get()));
    if state != table.weighed.option() || case.babies.len() > 1 {
        return Some(told(Message::new("figure-weight-table-other"), false, inputs));
    }
    let Some(standing) = table.standing(days.get() / 7, grams) else {
        return Some(told(Message::new("figure-weight-table-no-week"), false, inputs));
    };
    let value = match standing {
        Standing::Below(centile) => Message::new("figure-centile-below").with("centile", centile),
        Standing::Above(centile) => Message::new("figure-centile-above").with("centile", centile),
        Standing::Between(at, same) if at == same => Message::new("figure-centile-at").with("centile", at),
        Standing::Between(below, above) => Message::new("figure-centile-between").with("below", below).with("above", above),
    };
    Some(told(value, true, inputs))
}

/// The table that the practice loaded; nobody but the practice has checked it.
fn whose(table: &WeightTable) -> Beside {
    Beside { level: None, words: String::new(), source: table.source.clone(), status: Status::SecondHand }
}

/// Birth weight to the placenta's, of one baby.
fn ratio(case: Case<'_>, grams: u32, weight: Input) -> Option<Figure> {
    let no = case.baby(None)?;
    let baby = latest(case.chart.babies.get(&no)?, no).weight?.get();
    let mut inputs = vec![input("figure-input-birth-weight", Message::new("measure-g").with("value", baby)), weight];
    let Some(state) = case.weighed_as() else {
        return Some(Figure::needs("weight-ratio", Message::new("exam-weighed-as"), inputs));
    };
    inputs.push(state_input(state));
    let value = Message::new("figure-ratio")
        .with("value", rounded(f64::from(baby) / f64::from(grams), 1))
        .with("state", Message::new(format!("exam-weighed-as-{state}")));
    Some(Figure::known("weight-ratio", value, None, inputs).weighed(state, None))
}

/// Minutes from the birth of the placenta to its weighing.
fn age(case: Case<'_>, weight: Input) -> Option<Figure> {
    let weighed = case.examined.get("weight")?;
    let born = case.chart.placentas.get(&case.placenta)?.born.as_ref()?;
    let elapsed = case.chart.elapsed(&born.at, &weighed.at);
    Some(Figure::known("specimen-age", elapsed.words(), None, vec![weight]))
}
