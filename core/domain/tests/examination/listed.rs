//! Reasons that published lists give.

use super::*;

fn given(phone: &Phone, to: To) -> Vec<String> {
    reasons(&phone.chart(), Protocol::find("who"), 1)
        .into_iter()
        .filter(|reason| reason.to == to)
        .map(|reason| reason.reason)
        .collect()
}

#[test]
fn what_the_chart_tells_gives_the_reasons_of_the_lists() {
    let phone = with(&[("vessels", choice("two")), ("lobes", choice("gap"))]);
    assert_eq!(given(&phone, To::Laboratory), ["any", "artery"]);
    assert_eq!(given(&phone, To::Baby), ["tell-artery"]);
    assert_eq!(given(&phone, To::Advice), ["ask-lobes"]);
    let found: Vec<Reason> = reasons(&phone.chart(), None, 1);
    assert!(found.iter().all(|reason| !reason.because.is_empty() && !reason.source.is_empty()));
    assert_eq!(given(&at_placenta(), To::Laboratory), Vec::<String>::new());
}

#[test]
fn weeks_of_pregnancy_below_at_and_above() {
    // J Fetal Med 2015: before 34 weeks; remote-area manual: before 37; from 42 weeks: memory.
    let at = |days| {
        let mut phone = at_placenta();
        phone.mark(gestation(days));
        given(&phone, To::Laboratory)
    };
    assert_eq!(at(237), ["before-34", "before-37"]);
    assert_eq!(at(238), ["before-37"]);
    assert_eq!(at(258), ["before-37"]);
    assert_eq!(at(259), Vec::<String>::new());
    assert_eq!(at(293), Vec::<String>::new());
    assert_eq!(at(294), ["from-42"]);
}

#[test]
fn twins_whose_weights_lie_more_than_a_fifth_apart() {
    // J Fetal Med 2015, Table 1: over 20 %.
    let of = |light| {
        let mut phone = Phone::first();
        for (baby, grams) in [(1, 3_000), (2, light)] {
            phone.mark(born(baby));
            phone.mark(measured(baby, Some(grams), None, None));
        }
        phone.mark(placenta(&[1]));
        given(&phone, To::Laboratory)
    };
    assert_eq!(of(2_399), ["unlike-twins"]);
    assert_eq!(of(2_400), Vec::<String>::new());
}
