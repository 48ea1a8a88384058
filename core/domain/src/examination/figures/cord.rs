//! Length, coiling and insertion of a cord.

use super::{Case, Figure, Input, hundredths, input, milli, passed};
use crate::examination::{Examination, centimetres};
use crate::fact::{Answer, BabyNo};
use crate::growth::latest;
use crate::message::Message;
use crate::protocol::Milli;

pub(super) fn figures(case: Case<'_>, cord: Option<BabyNo>) -> Vec<Figure> {
    let figures = [length(case, cord), to_baby(case, cord), coiling(case, cord), insertion(case, cord), centrality(case, cord)];
    figures.into_iter().flatten().map(|figure| figure.of(cord)).collect()
}

/// The sum of all pieces. Where one is missing it is at least that, and never called short.
fn length(case: Case<'_>, cord: Option<BabyNo>) -> Option<Figure> {
    let answer = &case.examined.at("cord-length", cord)?.answer;
    let total = answer.measure()?;
    let (pieces, all) = match answer {
        Answer::Pieces { lengths, all } => (lengths.clone(), *all),
        _ => (vec![total], false),
    };
    let inputs = pieces
        .iter()
        .zip(1_u32..)
        .map(|(mm, n)| Input { name: Message::new("exam-cord-length").with("n", n), value: centimetres(*mm) });
    let value = if all { centimetres(total) } else { Message::new("figure-cord-at-least").with("length", centimetres(total)) };
    let steps = Examination::standard().item("cord-length").into_iter().flat_map(|item| &item.steps);
    let mut figure = Figure::known("cord-length", value, None, inputs.collect());
    figure.passed = passed(steps.filter(|step| all || step.is_upper()), Milli::from(total));
    Some(figure)
}

/// Its length beside its baby's.
fn to_baby(case: Case<'_>, cord: Option<BabyNo>) -> Option<Figure> {
    let no = case.baby(cord)?;
    let Answer::Pieces { all: true, .. } = &case.examined.at("cord-length", cord)?.answer else { return None };
    let total = case.measure("cord-length", cord)?;
    let baby = latest(case.chart.babies.get(&no)?, no).length?.get();
    let inputs = vec![input("figure-cord-length", centimetres(total)), input("figure-input-baby-length", centimetres(baby))];
    let value = Message::new("value-text").with("value", hundredths(f64::from(total) / f64::from(baby)));
    Some(Figure::known("cord-to-baby", value, None, inputs))
}

/// Complete coils for each cm, along the stretch on which they were counted.
fn coiling(case: Case<'_>, cord: Option<BabyNo>) -> Option<Figure> {
    let Answer::Coils { coils, over } = case.examined.at("cord-coils", cord)?.answer else { return None };
    let index = f64::from(coils) / (f64::from(over) / 10.0);
    let inputs = vec![
        input("figure-input-coils", Message::new("measure-count").with("value", coils)),
        input("figure-input-over", centimetres(over)),
    ];
    let value = Message::new("figure-coils-per-cm").with("value", hundredths(index));
    Some(Figure::known("coiling-index", value, milli(index), inputs))
}

/// Where the cord goes in, by its shortest distance to the edge. Between central and off centre the middle of the way from the
/// edge to the middle of the disc decides, taken across its breadth: our own choice.
fn insertion(case: Case<'_>, cord: Option<BabyNo>) -> Option<Figure> {
    let velamentous = case.examined.says("insertion", cord, "velamentous");
    let Some(edge) = case.measure("insertion-edge", cord) else {
        let told = case.examined.at("insertion", cord).filter(|_| !velamentous)?;
        let seen = input("exam-insertion", told.answer.describe("insertion"));
        return Some(Figure::needs("insertion", Message::new("exam-insertion-edge"), vec![seen]));
    };
    let mut inputs = vec![input("exam-insertion-edge", centimetres(edge))];
    let breadth = case.measure("disc-breadth", None);
    inputs.extend(breadth.map(|breadth| input("exam-disc-breadth", centimetres(breadth))));
    if velamentous {
        let seen = Message::new("exam-insertion-velamentous");
        inputs.push(input("exam-insertion", seen.clone()));
        return Some(Figure::known("insertion", seen, None, inputs));
    }
    let value = match (edge, breadth) {
        (0..20, _) => "figure-insertion-marginal",
        (_, None) => "figure-insertion-inside",
        (_, Some(breadth)) if u64::from(edge) * 4 > u64::from(breadth) => "exam-insertion-central",
        _ => "exam-insertion-eccentric",
    };
    Some(Figure::known("insertion", Message::new(value), Some(Milli::from(edge)), inputs))
}

/// Distance of the cord from the middle of the disc, as a share of half its greatest length.
fn centrality(case: Case<'_>, cord: Option<BabyNo>) -> Option<Figure> {
    let place = case.examined.places("insertion-place", cord).first()?;
    let marked = input("exam-insertion-place", Message::new("figure-input-on-drawing"));
    let (Some(length), Some(breadth)) = (case.measure("disc-length", None), case.measure("disc-breadth", None)) else {
        return Some(Figure::needs("centrality", Message::new("figure-input-length-and-breadth"), vec![marked]));
    };
    let across = f64::from(place.x) / 1000.0 * f64::from(length) / 2.0;
    let down = f64::from(place.y) / 1000.0 * f64::from(breadth) / 2.0;
    let from_middle = across.hypot(down);
    let half = f64::from(length.max(breadth)) / 2.0;
    let inputs = vec![
        marked,
        input("figure-input-from-middle", Message::new("measure-cm").with("value", (from_middle).round() / 10.0)),
        input("exam-disc-length", centimetres(length)),
        input("exam-disc-breadth", centimetres(breadth)),
    ];
    let value = Message::new("value-text").with("value", hundredths(from_middle / half));
    Some(Figure::known("centrality", value, None, inputs))
}
