//! What follows from the entries: durations and the sum of the blood. Never the only record of what they come from.

use secundine_domain::assess::blood;
use secundine_domain::chart::Mark;
use secundine_domain::fact::{BabyNo, Loss};
use secundine_domain::time::{Certainty, Elapsed, Stamp};

use super::codes::{Unit, own};
use super::element::{Quantity, Reference, Value};
use super::resource::{Observation, Resource};
use super::told::{Made, Maker, Part, note};

pub(super) fn all(maker: &mut Maker, now: &Stamp) -> Vec<Made> {
    let chart = maker.chart;
    let mut made = Vec::new();
    if let Some(stage) = chart.third_stage(now)
        && let Some(to) = &stage.to
    {
        made.push(duration(maker, "third-stage", "fhir-third-stage", None, stage.elapsed, to));
    }
    for (no, baby) in &chart.babies {
        if let (Some(stopped), Some(elapsed)) = (&baby.pulsation_stopped, chart.cord_pulsation(*no, now)) {
            made.push(duration(maker, &format!("cord-pulsation-{no}"), "fhir-cord-pulsation", Some(*no), elapsed, stopped));
        }
    }
    made.extend(lost(maker));
    made
}

/// Minutes to a hundredth; "at least" where only that is known, and in words where no one clock ran through.
fn duration(maker: &mut Maker, key: &str, id: &str, baby: Option<BabyNo>, elapsed: Elapsed, to: &Mark) -> Made {
    let minutes = (elapsed.ms as f64 / 600.0).round() / 100.0;
    let comparator = (elapsed.certainty == Certainty::AtLeast).then_some(">=");
    let about = match elapsed.certainty {
        Certainty::Measured | Certainty::AtLeast => None,
        Certainty::AcrossRestart => Some("record-across-restart"),
        Certainty::Typed => Some("record-typed"),
        Certainty::Compared => Some("record-compared"),
        Certainty::NotCompared => Some("record-not-compared"),
    };
    let value = Quantity { comparator, ..Unit::Minute.of(minutes) };
    let focus = baby.into_iter().map(|no| maker.baby(no)).collect();
    let seen = Observation {
        focus,
        effective_date_time: Some(to.at.rfc3339()),
        note: about.into_iter().flat_map(|id| note(&maker.words.plain(id))).collect(),
        ..figure(maker, id, value)
    };
    Made { key: key.to_owned(), part: Some(Part::ThirdStage), resource: Resource::Observation(Box::new(seen)), replaces: true }
}

/// All blood so far, measured and by eye, with the readings that it is made from.
fn lost(maker: &mut Maker) -> Option<Made> {
    let chart = maker.chart;
    let last = chart.losses.last()?;
    let sum = blood(chart, chart.protocol());
    let ml = |value: u32| Unit::Millilitre.of(value);
    let of: Vec<Reference> =
        chart.losses.iter().map(|loss| Reference::to(maker.names.url(&format!("entry-{}", loss.mark.entry)))).collect();
    let eye = chart.losses.iter().any(|loss| matches!(loss.what, Loss::Seen { .. }));
    let seen_part = eye.then(|| maker.component("fhir-method-seen", Some(Value::Quantity(ml(sum.seen)))));
    let measured = maker.component("fhir-loss-measured", Some(Value::Quantity(ml(sum.measured))));
    let seen = Observation {
        effective_date_time: Some(last.mark.at.rfc3339()),
        derived_from: of,
        component: std::iter::once(measured).chain(seen_part).collect(),
        ..figure(maker, "fhir-blood-loss-total", ml(sum.total()))
    };
    let resource = Resource::Observation(Box::new(seen));
    Some(Made { key: "blood-loss".to_owned(), part: Some(Part::ThirdStage), resource, replaces: true })
}

fn figure(maker: &Maker, id: &str, value: Quantity) -> Observation {
    Observation {
        status: Some("final"),
        code: Some(own(maker.words, id)),
        subject: Some(maker.mother()),
        encounter: Some(maker.encounter()),
        value: Some(Value::Quantity(value)),
        ..Observation::default()
    }
}
