//! Discs that fed several babies.

use super::*;

fn fused(answers: &[(&str, &str)]) -> Phone {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.mark(born(2));
    phone.pass(MINUTE).mark(placenta(&[1, 2]));
    for (item, option) in answers {
        phone.mark(chose(item, option));
    }
    phone
}

#[test]
fn how_many_chorions_there_appear_to_be() {
    // Source: pathologyoutlines.com, twins; WebPath PLAC005; seen.
    let appears = |answers: &[(&str, &str)]| figure(&fused(answers), "chorionicity").value.id;
    assert_eq!(appears(&[("dividing-look", "thick")]), "figure-appears-dichorionic");
    assert_eq!(appears(&[("dividing-layers", "four"), ("crossing-vessels", "stop")]), "figure-appears-dichorionic");
    assert_eq!(appears(&[("dividing-look", "thin"), ("dividing-layers", "two")]), "figure-appears-monochorionic");
    assert_eq!(appears(&[("crossing-vessels", "cross")]), "figure-appears-monochorionic");
    assert_eq!(appears(&[("dividing-look", "none")]), "figure-appears-monoamniotic");
    assert_eq!(appears(&[("dividing-look", "none"), ("crossing-vessels", "cross")]), "figure-appears-monoamniotic");
    assert_eq!(appears(&[("dividing-look", "thick"), ("crossing-vessels", "cross")]), "figure-appears-unclear");
    assert_eq!(appears(&[("dividing-layers", "not-peeled")]), "figure-needs");
}

#[test]
fn a_girl_and_a_boy_and_separate_discs_speak_for_two_chorions() {
    let mut phone = fused(&[]);
    phone.mark(measured(1, None, None, Some(Sex::Female)));
    phone.mark(measured(2, None, None, Some(Sex::Male)));
    assert_eq!(figure(&phone, "chorionicity").value.id, "figure-appears-dichorionic");
    let mut apart = Phone::first();
    for baby in [1, 2] {
        apart.mark(born(baby));
        apart.mark(placenta(&[baby]));
    }
    assert_eq!(figure(&apart, "chorionicity").value.id, "figure-appears-dichorionic");
    assert!(figures(&at_placenta().chart(), 1).is_empty(), "one baby has no chorionicity");
}

#[test]
fn each_cord_of_a_fused_disc_has_its_own_figures() {
    let mut phone = fused(&[]);
    for (cord, mm) in [(1, 300), (2, 500)] {
        let answer = pieces(&[mm], true);
        phone.mark(Fact::Examined { placenta: 1, item: "cord-length".to_owned(), cord: Some(cord), answer });
    }
    let lengths: Vec<_> = figures(&phone.chart(), 1).into_iter().filter(|figure| figure.figure == "cord-length").collect();
    assert_eq!(lengths.iter().map(|figure| (figure.cord, figure.passed.len())).collect::<Vec<_>>(), [(Some(1), 4), (Some(2), 0)]);
    let told: Vec<_> = assess(&phone.chart(), None, &phone.now()).into_iter().map(|finding| finding.about).collect();
    assert!(told.contains(&About::Figure { placenta: 1, figure: "cord-length".to_owned(), cord: Some(1) }));
}
