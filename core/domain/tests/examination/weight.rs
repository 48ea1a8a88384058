//! The weight beside what was weighed in the same way.

use super::*;

fn weighed(grams: u32, state: &str, days: i64) -> Phone {
    let mut phone = with(&[("weight", measure(grams)), ("weighed-as", choice(state))]);
    phone.mark(gestation(days));
    phone
}

#[test]
fn an_untrimmed_weight_at_term_stands_beside_the_cohort() {
    // PMID 16377060: vaginal births, 545 ± 107 g; about 500 g: common practice.
    let found = figure(&weighed(652, "untrimmed", 280), "weight");
    assert_eq!((found.value.id.as_str(), shown(&found, "value")), ("figure-weight-above", "1.00".to_owned()));
    let found = figure(&weighed(500, "untrimmed", 280), "weight");
    assert_eq!((found.value.id.as_str(), shown(&found, "value")), ("figure-weight-below", "0.42".to_owned()));
    assert!(found.passed.is_empty() && found.known);
}

#[test]
fn nothing_is_compared_with_what_was_weighed_otherwise() {
    let value = |phone: &Phone| figure(phone, "weight").value.id;
    assert_eq!(value(&weighed(500, "trimmed", 280)), "figure-weight-trimmed");
    assert_eq!(value(&weighed(500, "with-clots", 280)), "figure-weight-with-clots");
    assert_eq!(
        [258, 259, 300, 301].map(|days| figure(&weighed(500, "untrimmed", days), "weight").known),
        [false, true, true, false]
    );
    assert_eq!(value(&weighed(500, "untrimmed", 258)), "figure-weight-not-term");
    assert_eq!(value(&with(&[("weight", measure(500))])), "figure-needs");
    assert_eq!(value(&with(&[("weight", measure(500)), ("weighed-as", choice("untrimmed"))])), "figure-needs");
}

#[test]
fn a_trimmed_weight_at_term_has_two_cut_offs() {
    // Kaplan, atlas, second-hand: under 350 or over 750 g trimmed at term.
    let passed = |grams, state, days| figure(&weighed(grams, state, days), "weight").passed.len();
    assert_eq!([349, 350, 750, 751].map(|grams| passed(grams, "trimmed", 280)), [1, 0, 0, 1]);
    assert_eq!([passed(349, "untrimmed", 280), passed(349, "trimmed", 250)], [0, 0]);
}

#[test]
fn the_ratio_goes_with_how_it_was_weighed() {
    let mut phone = weighed(560, "untrimmed", 280);
    phone.mark(measured(1, Some(3_510), None, None));
    let found = figure(&phone, "weight-ratio");
    assert_eq!(shown(&found, "value"), "6.3");
    assert!(found.value.args.contains_key("state"));
    // 1/0.176 and 1/0.156: 5.7 to 6.4, untrimmed; 7 to 8 is of trimmed ones.
    let says = |figure: &Figure, words: &str| figure.published.iter().any(|beside| beside.words.starts_with(words));
    assert!(says(&found, "Untrimmed: 5.7") && !says(&found, "Trimmed"));
    let mut unsaid = with(&[("weight", measure(560))]);
    unsaid.mark(measured(1, Some(3_500), None, None));
    assert!(!figure(&unsaid, "weight-ratio").known, "without its state the ratio means nothing");
}

#[test]
fn it_is_told_how_old_the_specimen_was() {
    let mut phone = at_placenta();
    phone.pass(34 * MINUTE).mark(examined("weight", measure(500)));
    let age = figure(&phone, "specimen-age");
    assert!(format!("{:?}", age.value).contains("34:00"), "{:?}", age.value);
}
