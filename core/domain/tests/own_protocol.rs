//! The practice's own protocol: empty at first, filled with the strictest, finished, and the same after a file.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use std::collections::BTreeMap;

use common::arbitrary::{field, own_change};
use proptest::prelude::*;
use secundine_domain::protocol::{Milli, OWN, OwnChange, OwnProtocol, Protocol, Slot, State, Status, Step, strictest};

fn slot(text: &str) -> Slot {
    text.parse().unwrap()
}

fn named(own: OwnProtocol) -> OwnProtocol {
    let text = |text: &str| Some(text.to_owned());
    let head = OwnChange { title: text("Ours"), edition: text("first"), checked: text("2026-11-25"), ..OwnChange::default() };
    own.changed(&head)
}

/// Nothing open: all three strictest, and a name.
fn filled() -> OwnProtocol {
    let own = named(OwnProtocol::default());
    let change = own.filled();
    own.changed(&change)
}

fn step(state: Option<State>) -> Step {
    let Some(State::Step(step)) = state else { unreachable!("{state:?}") };
    step
}

#[test]
fn the_strictest_is_the_lowest_of_upper_limits_the_highest_of_lower_ones_and_the_shortest_of_times() {
    // Source: the three files of protocols; the rows of thresholds.rs name each of them.
    let rows = [
        // 30 min in all three under active care.
        ("third-stage-active.limit.over.1", 30_000, Status::Borrowed),
        // 60 min by NICE, 30 by WHO and in US practice.
        ("third-stage-physiological.limit.over.1", 30_000, Status::Borrowed),
        // 45 min by NICE, 20 by the others; all are choices.
        ("third-stage-physiological.caution.over.1", 20_000, Status::Choice),
        // Below 50 by NICE and ACOG, below 60 by WHO, from memory.
        ("pulse.limit.under.1", 60_000, Status::Memory),
        // Below 90 by NICE and ACOG, below 80 by WHO.
        ("systolic.limit.under.1", 90_000, Status::Borrowed),
        // 160 by NICE on one reading, 140 by WHO, from memory.
        ("systolic.limit.over.1", 140_000, Status::Memory),
        // By NICE alone, on two readings.
        ("pulse.limit.over.again.1", 120_000, Status::Memory),
        // By WHO alone, beside a sign.
        ("blood-loss.limit.over.with.1", 300_000, Status::Memory),
    ];
    for (field, value, status) in rows {
        let found = step(strictest(slot(field)));
        assert_eq!((found.value, found.status), (Milli(value), status), "{field}");
    }
    assert_eq!(strictest(slot("saturation.note.over.1")), None, "no protocol has it");
}

#[test]
fn of_two_that_are_alike_the_one_that_includes_its_number_is_the_stricter_and_then_the_one_checked_best() {
    // Over 120 by ACOG, at 120 and over by WHO.
    assert_eq!(step(strictest(slot("pulse.limit.over.1"))).compare.sign(), "≥");
    // 30 min: at second hand by NICE, read in the source by WHO, from memory by ACOG.
    let found = step(strictest(slot("third-stage-active.limit.over.1")));
    assert!(found.source.starts_with("WHO 2012 to 2025: WHO manual 2007"), "{}", found.source);
}

#[test]
fn what_is_taken_over_says_from_where() {
    let own = filled();
    for (slot, state) in &own.fields {
        let (source, status) = state.whence().unwrap();
        let from = Protocol::published().iter().find(|protocol| source.starts_with(&format!("{}: ", protocol.title)));
        assert!(from.is_some(), "{slot}: {source}");
        assert!(matches!(status, Status::Borrowed | Status::Memory | Status::Choice), "{slot}: {status:?}");
    }
}

#[test]
fn the_strictest_schedule_is_nowhere_longer_than_any_of_the_three() {
    let own = filled().finish().unwrap();
    let every = |protocol: &Protocol, minute: u32| protocol.mother.iter().find(|phase| phase.until > minute).map(|it| it.every);
    for minute in 0..300 {
        for protocol in Protocol::published() {
            if let Some(theirs) = every(protocol, minute) {
                assert!(every(&own, minute).is_some_and(|ours| ours <= theirs), "{minute} min, {}", protocol.id);
            }
        }
    }
    assert_eq!(own.mother.iter().map(|phase| (phase.every, phase.until)).collect::<Vec<_>>(), [(15, 120), (60, 240)]);
}

#[test]
fn it_begins_empty_and_every_open_field_is_told() {
    let open = OwnProtocol::default().finish().unwrap_err().open;
    assert_eq!(open.len(), 3 + OwnProtocol::default().slots().len());
    for field in ["title", "checked", "late_entry", "grams_per_ml", "mother.2", "pulse.limit.over.again.1"] {
        assert!(open.iter().any(|path| path == field), "{field} in {open:?}");
    }
    let left = named(OwnProtocol::default()).finish().unwrap_err().open;
    assert_eq!(left.len(), open.len() - 3);
}

#[test]
fn one_open_field_is_enough_to_be_no_protocol_and_off_is_not_open() {
    let whole = filled();
    assert_eq!(whole.finish().unwrap().id, OWN);
    for slot in whole.slots() {
        let open = whole.clone().changed(&OwnChange { fields: BTreeMap::from([(slot, None)]), ..OwnChange::default() });
        assert_eq!(open.finish().unwrap_err().open, [slot.to_string()]);
        let off = BTreeMap::from([(slot, Some(State::Off))]);
        let off = OwnChange { fields: off, ..OwnChange::default() };
        assert_eq!(off.problem().is_none(), slot.can_be_off(), "{slot}");
        if slot.can_be_off() {
            assert_eq!(open.changed(&off).finish().unwrap().off, [slot]);
        }
    }
}

#[test]
fn a_fill_leaves_alone_what_is_decided() {
    let decided = BTreeMap::from([(slot("pulse.limit.under.1"), Some(State::Off))]);
    let own = OwnProtocol::default().changed(&OwnChange { fields: decided, ..OwnChange::default() });
    let change = own.filled();
    assert!(!change.fields.contains_key(&slot("pulse.limit.under.1")));
    assert_eq!(change.fields.len(), own.slots().len() - 1);
    assert_eq!(own.clone().changed(&change).fields[&slot("pulse.limit.under.1")], State::Off);
}

#[test]
fn a_number_that_lies_before_the_one_before_it_is_told_and_no_protocol_comes_of_it() {
    let at = slot("blood-loss.limit.over.1");
    let far = Step { value: Milli(1_500_000), ..step(strictest(at)) };
    let fields = BTreeMap::from([(at, Some(State::Step(far)))]);
    let own = filled().changed(&OwnChange { fields, ..OwnChange::default() });
    let unfinished = own.finish().unwrap_err();
    assert!(unfinished.open.is_empty());
    assert_eq!(unfinished.problems.len(), 1);
    assert_eq!(unfinished.problems[0].0, slot("blood-loss.limit.over.2"));
}

#[test]
fn a_field_takes_only_what_belongs_there_and_has_a_source() {
    let limit = step(strictest(slot("pulse.limit.over.1")));
    let problem = |at: &str, step: Step| {
        let fields = BTreeMap::from([(slot(at), Some(State::Step(step)))]);
        OwnChange { fields, ..OwnChange::default() }.problem().map(|problem| problem.id)
    };
    assert_eq!(problem("pulse.limit.over.1", limit.clone()), None);
    assert_eq!(problem("pulse.limit.over.2", limit.clone()), None);
    let other = Some("protocol-file-other-field".to_owned());
    assert_eq!(problem("pulse.limit.under.1", limit.clone()), other);
    assert_eq!(problem("pulse.caution.over.1", limit.clone()), other);
    assert_eq!(problem("pulse.limit.over.again.1", limit.clone()), other);
    assert_eq!(problem("late_entry", limit.clone()), other);
    let sourceless = Step { source: "  ".to_owned(), ..limit };
    assert_eq!(problem("pulse.limit.over.1", sourceless).unwrap(), "protocol-file-no-source");
    let day = OwnChange { checked: Some("25 November".to_owned()), ..OwnChange::default() };
    assert_eq!(day.problem().unwrap().id, "protocol-file-date");
}

proptest! {
    #[test]
    fn a_finished_one_is_the_same_after_its_file(fields in prop::collection::vec(field(), 0..60)) {
        let own = filled().changed(&OwnChange { fields: fields.into_iter().collect(), ..OwnChange::default() });
        match own.finish() {
            Ok(protocol) => {
                let read = Protocol::parse(&protocol.file());
                prop_assert_eq!(read.as_ref(), Ok(&protocol));
                prop_assert_eq!(OwnProtocol::of(&read.unwrap()), own);
            }
            Err(unfinished) => prop_assert!(!unfinished.open.is_empty() || !unfinished.problems.is_empty()),
        }
    }

    #[test]
    fn a_difference_makes_the_other_one_and_nothing_makes_none(one in own_change(80), other in own_change(80)) {
        let [one, other] = [one, other].map(|change| OwnProtocol::default().changed(&change));
        prop_assert_eq!(one.clone().changed(&one.difference(&other)), other);
        prop_assert_eq!(one.difference(&one), OwnChange::default());
    }
}
