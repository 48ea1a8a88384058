//! Size at birth held against published standards: where a baby stands among babies of its sex and gestation.
//!
//! The parameters lie in the folder `growth` of this crate, apart, so that they can be taken out.

use serde::{Deserialize, Serialize};

use crate::assess::Threshold;
use crate::chart::{Baby, Chart};
use crate::fact::{BabyNo, NewbornMeasures, Sex};
use crate::message::Message;
use crate::protocol::Status;
use standards::{FIRST_DAY, LAST_DAY, intergrowth, who_weight};

pub mod standards;

/// The standards are of size at birth: a measure taken later than this after it is not held against them. Our own choice.
const AT_BIRTH_MS: i64 = 24 * 3_600_000;
/// The first day of term, 37+0 weeks: from here on the standard without gestation is told too. Common practice.
const TERM: u32 = 259;
const DAYS_IN_WEEK: u32 = 7;

/// What is measured of a baby's size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Size {
    /// Weight, g.
    Weight,
    /// Length from crown to heel, mm.
    Length,
    /// Head circumference, mm.
    Head,
}

/// Centiles of a baby by one standard in words, or why there are none.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Growth {
    /// The babies that it is held against; none where there is no centile.
    pub among: Option<Message>,
    /// Each centile, or each thing that is missing.
    pub lines: Vec<Message>,
    /// Whose standard, and how well it was checked; none where there is no centile.
    pub standard: Option<Threshold>,
}

/// The latest of each that was measured or seen of a baby, whenever that was.
#[must_use]
pub fn latest(baby: &Baby, no: BabyNo) -> NewbornMeasures {
    baby.measures.iter().fold(NewbornMeasures::nothing(no), |known, seen| over(known, &seen.what))
}

fn over(known: NewbornMeasures, seen: &NewbornMeasures) -> NewbornMeasures {
    NewbornMeasures {
        baby: known.baby,
        weight: seen.weight.or(known.weight),
        length: seen.length.or(known.length),
        head: seen.head.or(known.head),
        temperature: seen.temperature.or(known.temperature),
        sex: seen.sex.or(known.sex),
        heart_rate: seen.heart_rate.or(known.heart_rate),
        respirations: seen.respirations.or(known.respirations),
        breathing: seen.breathing.or(known.breathing),
    }
}

/// The sizes in a look at a baby, each with its number.
fn sizes(seen: &NewbornMeasures) -> impl Iterator<Item = (Size, u32)> {
    let weight = seen.weight.map(|grams| (Size::Weight, grams.get()));
    let length = seen.length.map(|mm| (Size::Length, mm.get()));
    let head = seen.head.map(|mm| (Size::Head, mm.get()));
    [weight, length, head].into_iter().flatten()
}

/// The centiles of a baby's weight, length and head as last measured within a day of its birth, or why there are none;
/// nothing while none of the three is on record.
#[must_use]
pub fn growth(chart: &Chart, no: BabyNo) -> Vec<Growth> {
    let Some(baby) = chart.babies.get(&no).filter(|baby| sizes(&latest(baby, no)).next().is_some()) else {
        return Vec::new();
    };
    let measured = measured_at_birth(chart, baby, no);
    let gestation = chart.client.as_ref().and_then(|client| client.gestation).map(|days| days.get());
    let (girl, gestation) = match (girl(latest(baby, no).sex), gestation) {
        _ if sizes(&measured).next().is_none() => return vec![refused(vec![Message::new("growth-later")])],
        (Ok(girl), Some(days)) => (girl, days),
        (girl, days) => {
            let no_gestation = days.is_none().then(|| Message::new("growth-no-gestation"));
            return vec![refused(girl.err().into_iter().chain(no_gestation).collect())];
        }
    };
    let mut told = vec![match (FIRST_DAY..=LAST_DAY).contains(&gestation) {
        true => by_gestation(&measured, girl, gestation),
        false => refused(vec![in_weeks(Message::new("growth-outside"), gestation)]),
    }];
    told.extend(measured.weight.filter(|_| gestation >= TERM).and_then(|grams| at_term(grams.get(), girl)));
    told
}

/// What was measured within a day of its birth.
fn measured_at_birth(chart: &Chart, baby: &Baby, no: BabyNo) -> NewbornMeasures {
    let at_birth = baby.measures.iter().filter(|seen| {
        let after = baby.born.as_ref().map(|born| chart.elapsed(&born.at, &seen.mark.at).ms);
        after.is_none_or(|ms| ms <= AT_BIRTH_MS)
    });
    at_birth.fold(NewbornMeasures::nothing(no), |known, seen| over(known, &seen.what))
}

/// Centile of a baby's weight at birth among babies of its sex and gestation, where that can be told.
#[must_use]
pub fn weight_centile(chart: &Chart, no: BabyNo) -> Option<f64> {
    let baby = chart.babies.get(&no)?;
    let grams = measured_at_birth(chart, baby, no).weight?.get();
    let days = chart.client.as_ref()?.gestation?.get();
    intergrowth(Size::Weight, girl(latest(baby, no).sex).ok()?, days, grams)
}

/// Each size among babies of its gestation.
fn by_gestation(measured: &NewbornMeasures, girl: bool, gestation: u32) -> Growth {
    let centiles =
        sizes(measured).filter_map(|(size, value)| Some(line(size, value, intergrowth(size, girl, gestation, value)?)));
    Growth {
        among: Some(among(in_weeks(Message::new("growth-among"), gestation), girl)),
        lines: centiles.collect(),
        standard: Some(standard("INTERGROWTH-21st newborn size, Villar 2014, Lancet 384:857")),
    }
}

/// The weight among babies born at term.
fn at_term(grams: u32, girl: bool) -> Option<Growth> {
    Some(Growth {
        among: Some(among(Message::new("growth-among-term"), girl)),
        lines: vec![line(Size::Weight, grams, who_weight(girl, grams)?)],
        standard: Some(standard("WHO Child Growth Standards 2006, weight at birth")),
    })
}

fn among(message: Message, girl: bool) -> Message {
    message.with("sex", Message::new(if girl { "growth-girls" } else { "growth-boys" }))
}

fn standard(source: &str) -> Threshold {
    Threshold { source: source.to_owned(), status: Status::SecondHand, words: None }
}

/// Whether it is a girl.
///
/// # Errors
/// Why no standard applies.
fn girl(sex: Option<Sex>) -> Result<bool, Message> {
    match sex {
        Some(Sex::Female) => Ok(true),
        Some(Sex::Male) => Ok(false),
        Some(Sex::Unclear) => Err(Message::new("growth-sex-unclear")),
        None => Err(Message::new("growth-no-sex")),
    }
}

fn refused(lines: Vec<Message>) -> Growth {
    Growth { among: None, lines, standard: None }
}

/// Fills `weeks` and `days` with completed weeks of pregnancy and the days beyond them.
pub(crate) fn in_weeks(message: Message, days: u32) -> Message {
    message.with("weeks", days / DAYS_IN_WEEK).with("days", days % DAYS_IN_WEEK)
}

fn line(size: Size, value: u32, centile: f64) -> Message {
    let tenths = f64::from(value) / 10.0;
    let measure = match size {
        Size::Weight => Message::new("part-weight").with("value", value),
        Size::Length => Message::new("part-length").with("value", tenths),
        Size::Head => Message::new("part-head").with("value", tenths),
    };
    Message::new("growth-centile").with("measure", measure).with("centile", words(centile))
}

/// A whole centile, rounded away from the middle: what lies past a centile never reads as short of it.
fn words(centile: f64) -> String {
    match centile {
        ..1.0 => "<1".to_owned(),
        1.0..50.0 => format!("{:.0}", centile.floor()),
        50.0..=99.0 => format!("{:.0}", centile.ceil()),
        _ => ">99".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_centile_is_rounded_to_the_other_side_of_a_whole_one() {
        let cases = [
            (0.0, "<1"),
            (0.999, "<1"),
            (1.0, "1"),
            (2.999, "2"),
            (3.0, "3"),
            (9.96, "9"),
            (10.0, "10"),
            (49.99, "49"),
            (50.0, "50"),
            (50.01, "51"),
            (90.0, "90"),
            (90.02, "91"),
            (97.0, "97"),
            (98.5, "99"),
            (99.0, "99"),
            (99.001, ">99"),
            (100.0, ">99"),
        ];
        for (centile, expected) in cases {
            assert_eq!(words(centile), expected, "{centile}");
        }
    }
}
