//! The code of a handover holds for every chart there could be: short enough, whole, and read back as it was.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

#[path = "../../core/session/tests/common/code.rs"]
mod code;
#[path = "../../core/domain/tests/common/mod.rs"]
mod common;

use code::{decoded, modules};
use common::BIRTH;
use common::arbitrary::{entries, stamp};
use proptest::prelude::*;
use proptest::sample::select;
use secundine_domain::chart::fold;
use secundine_domain::fact::Practice;
use secundine_record::Origin;
use secundine_record::handover::{CODE_MOST, Handover, transfer_pdf};
use secundine_record::words::Words;
use secundine_session::fuzzing::handover_code;

fn practice() -> Practice {
    let (name, role) = ("Heron House".to_owned(), "midwife".to_owned());
    Practice { name, practitioner: "Ida Lindqvist".to_owned(), role, protocol: None }
}

fn languages() -> impl Strategy<Value = &'static Words> {
    select(Words::tags().map(Words::of).collect::<Vec<_>>())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_chart_has_a_code_that_says_what_it_says(entries in entries(), now in stamp(), words in languages()) {
        let chart = fold(BIRTH, &entries);
        let practice = practice();
        let handover = Handover::of(&chart, &Origin { practice: &practice, version: "", written: &now, words });
        let told = handover.code_text(words);
        prop_assert!(told.text.len() <= CODE_MOST, "{} bytes", told.text.len());
        prop_assert!(!told.text.contains(|sign: char| sign.is_control() && sign != '\n'));
        let code = handover_code(&told.text);
        prop_assert!(code.side > 0 && code.side <= 93, "version 19 at most: {}", code.side);
        prop_assert_eq!(decoded(&modules(&code)), told.text.clone());
        // All is in it, or it says that there is more.
        prop_assert_eq!(told.text.ends_with(&words.plain("handover-more")), !told.left_out.is_empty());
        let whole = handover.text(words);
        prop_assert_eq!(told.left_out.is_empty(), whole == told.text);
        for line in told.text.lines().filter(|line| !told.left_out.is_empty() && line.contains(": ")) {
            prop_assert!(line.split("; ").all(|item| whole.contains(item)), "{line} is not of the whole");
        }
    }
}

proptest! {
    // A page is set anew for each half that is tried.
    #![proptest_config(ProptestConfig { cases: ProptestConfig::default().cases / 16, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_chart_goes_on_one_page(entries in entries(), now in stamp(), words in languages()) {
        let chart = fold(BIRTH, &entries);
        let practice = practice();
        let pdf = transfer_pdf(&chart, &Origin { practice: &practice, version: "00", written: &now, words }).unwrap();
        prop_assert_eq!(pdf.pages, 1);
    }
}
