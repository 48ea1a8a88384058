//! Area and roundness of the disc, and the share of firm areas.

use std::f64::consts::FRAC_PI_4;

use super::{Case, Figure, Input, hundredths, input, milli, passed};
use crate::examination::{Examination, centimetres};
use crate::message::Message;

pub(super) fn figures(case: Case<'_>) -> Vec<Figure> {
    let (length, breadth) = (case.measure("disc-length", None), case.measure("disc-breadth", None));
    let sides = || {
        let length = length.map(|mm| input("exam-disc-length", centimetres(mm)));
        let breadth = breadth.map(|mm| input("exam-disc-breadth", centimetres(mm)));
        length.into_iter().chain(breadth).collect::<Vec<_>>()
    };
    let mut figures = match (length, breadth) {
        (None, None) => Vec::new(),
        (Some(_), None) => vec![Figure::needs("disc-area", Message::new("exam-disc-breadth"), sides())],
        (None, Some(_)) => vec![Figure::needs("disc-area", Message::new("exam-disc-length"), sides())],
        (Some(length), Some(breadth)) => vec![area(length, breadth, sides()), roundness(length, breadth, sides())],
    };
    figures.extend(firm_share(case, length.zip(breadth)));
    figures
}

/// That of an ellipse, cm2.
fn square_centimetres(length: u32, breadth: u32) -> f64 {
    FRAC_PI_4 * f64::from(length) * f64::from(breadth) / 100.0
}

fn area(length: u32, breadth: u32, inputs: Vec<Input>) -> Figure {
    let value = Message::new("figure-square-cm").with("value", square_centimetres(length, breadth).round());
    Figure::known("disc-area", value, None, inputs)
}

/// Breadth to length, and the eccentricity of that ellipse.
fn roundness(length: u32, breadth: u32, inputs: Vec<Input>) -> Figure {
    let ratio = f64::from(length.min(breadth)) / f64::from(length.max(breadth));
    let eccentricity = (1.0 - ratio * ratio).sqrt();
    let value =
        Message::new("figure-roundness-value").with("value", hundredths(ratio)).with("eccentricity", hundredths(eccentricity));
    Figure::known("roundness", value, None, inputs)
}

/// The firm areas that were drawn with their sizes, each as a round one, as a share of the disc.
fn firm_share(case: Case<'_>, sides: Option<(u32, u32)>) -> Option<Figure> {
    let sizes: Vec<u32> = case.examined.places("firm-places", None).iter().filter_map(|place| place.size).collect();
    if sizes.is_empty() {
        return None;
    }
    let mut inputs: Vec<Input> = sizes.iter().map(|mm| input("figure-input-firm-area", centimetres(*mm))).collect();
    let Some((length, breadth)) = sides else {
        return Some(Figure::needs("firm-share", Message::new("figure-input-length-and-breadth"), inputs));
    };
    inputs.push(input("exam-disc-length", centimetres(length)));
    inputs.push(input("exam-disc-breadth", centimetres(breadth)));
    let firm: f64 = sizes.iter().map(|mm| square_centimetres(*mm, *mm)).sum();
    let share = firm / square_centimetres(length, breadth) * 100.0;
    let value = Message::new("figure-about-percent").with("value", (share * 10.0).round() / 10.0);
    let mut figure = Figure::known("firm-share", value, None, inputs);
    let steps = Examination::standard().item("firm-share").into_iter().flat_map(|item| &item.steps);
    figure.passed = milli(share).map_or_else(Vec::new, |number| passed(steps, number));
    Some(figure)
}
