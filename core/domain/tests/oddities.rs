//! Life is odd: it is written down as it was told and flagged, never refused and never put right by the program.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
#![allow(clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use common::{BIRTH, MINUTE, Phone, SECOND, START, apgar, born, chose, clamped, cut, id, jug, membranes, odd, order, placenta};
use secundine_domain::chart::{Chart, Odd, fold};
use secundine_domain::entry::EntryId;
use secundine_domain::fact::Fact;
use secundine_domain::time::Elapsed;

/// One odd story: what is written minute by minute, and what is flagged at which of these entries.
struct Row {
    name: &'static str,
    facts: Vec<Fact>,
    flagged: &'static [(usize, &'static [Odd])],
}

fn row(name: &'static str, facts: Vec<Fact>, flagged: &'static [(usize, &'static [Odd])]) -> Row {
    Row { name, facts, flagged }
}

fn rows() -> Vec<Row> {
    let stopped = |baby| Fact::CordPulsationStopped { baby };
    let unknown = Fact::Unknown { kind: "moon_phase".to_owned(), stored: "{}".to_owned() };
    vec![
        row("nothing odd", vec![born(1), stopped(1), clamped(1), cut(1), placenta(&[1]), membranes(&[1]), jug(200)], &[]),
        row("placenta before baby", vec![placenta(&[1]), born(1)], &[(0, &[Odd::BeforeBirth])]),
        row("second placenta for one baby", vec![born(1), placenta(&[1]), placenta(&[1])], &[(2, &[Odd::SecondPlacenta])]),
        row("second birth of one baby", vec![born(1), born(1)], &[(1, &[Odd::SecondBirth])]),
        row("blood before any birth", vec![jug(100), born(1)], &[(0, &[Odd::BeforeBirth])]),
        row("blood and no birth at all", vec![jug(100)], &[(0, &[Odd::BeforeBirth])]),
        row("examined before the birth", vec![chose("lobes", "meet"), born(1)], &[(0, &[Odd::BeforeBirth])]),
        row("cord stopped before the birth", vec![stopped(1), born(1)], &[(0, &[Odd::BeforeBirth])]),
        row("cut before clamp", vec![born(1), cut(1), clamped(1)], &[(1, &[Odd::CutBeforeClamp])]),
        row("cut without clamp", vec![born(1), cut(1)], &[(1, &[Odd::CutBeforeClamp])]),
        row("pulsation twice", vec![born(1), stopped(1), stopped(1)], &[(2, &[Odd::Repeated])]),
        row("clamped twice", vec![born(1), clamped(1), clamped(1)], &[(2, &[Odd::Repeated])]),
        row("cut twice", vec![born(1), clamped(1), cut(1), cut(1)], &[(3, &[Odd::Repeated])]),
        row("membranes twice", vec![born(1), placenta(&[1]), membranes(&[1]), membranes(&[1])], &[(3, &[Odd::Repeated])]),
        row("Apgar of a baby that is not born", vec![born(1), apgar(2)], &[(1, &[Odd::NoBaby])]),
        row("clamp of a baby that is not born", vec![born(1), clamped(2)], &[(1, &[Odd::NoBaby])]),
        row("a kind of a later version", vec![unknown], &[(0, &[Odd::UnknownFact])]),
        row(
            "blood and examination have no number of times",
            vec![born(1), jug(9), jug(9), chose("lobes", "gap"), chose("lobes", "gap")],
            &[],
        ),
        row("twins with a placenta each", vec![born(1), born(2), placenta(&[2]), placenta(&[1])], &[]),
        row("twins with one placenta", vec![born(1), born(2), placenta(&[1, 2]), membranes(&[1, 2])], &[]),
        row("a placenta between twins", vec![born(1), placenta(&[1]), born(2), placenta(&[2])], &[]),
        row(
            "the one placenta of both before the second twin",
            vec![born(1), placenta(&[1, 2]), born(2)],
            &[(1, &[Odd::BeforeBirth])],
        ),
        row(
            "one placenta said twice, first for one twin",
            vec![born(1), born(2), placenta(&[1]), placenta(&[1, 2])],
            &[(3, &[Odd::SecondPlacenta])],
        ),
        row("a placenta for a twin that is not born", vec![born(1), placenta(&[1, 2])], &[(1, &[Odd::NoBaby])]),
    ]
}

#[test]
fn each_is_kept_and_flagged_at_its_entry() {
    for Row { name, facts, flagged } in rows() {
        let mut phone = Phone::first();
        let written: Vec<EntryId> = facts.into_iter().map(|fact| phone.pass(MINUTE).mark(fact)).collect();
        let chart = phone.chart();
        assert_eq!(chart.lines.len(), written.len() + 1, "{name}: every entry stands");
        for (i, entry) in written.iter().enumerate() {
            let expected = flagged.iter().find(|(at, _)| *at == i).map_or(&[][..], |(_, odd)| odd);
            assert_eq!(odd(&chart, *entry), expected, "{name}: entry {i}");
        }
    }
}

/// Minutes and seconds from the birth of baby 1 to a mark of the chart.
fn at(chart: &Chart, mark: &Option<secundine_domain::chart::Mark>) -> String {
    mark.as_ref().and_then(|mark| chart.since_birth(&mark.at)).map(|elapsed| elapsed.clock()).unwrap_or_default()
}

#[test]
fn of_a_repeated_mark_the_first_in_time_counts_whatever_was_written_first() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    let late = phone.pass(10 * MINUTE).mark(clamped(1));
    let typed = phone.pass(MINUTE).typed(START + 4 * MINUTE, clamped(1));
    let chart = phone.chart();
    assert_eq!(at(&chart, &chart.babies[&1].clamped), "4:00");
    assert_eq!((odd(&chart, typed), odd(&chart, late)), (vec![], vec![Odd::Repeated]));
}

#[test]
fn of_two_births_of_one_baby_the_first_starts_the_third_stage() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(2 * MINUTE).mark(born(1));
    phone.pass(2 * MINUTE);
    assert_eq!(phone.chart().third_stage(&phone.now()).unwrap().elapsed.ms, 4 * MINUTE);
}

#[test]
fn a_time_after_the_moment_of_writing_is_flagged_beyond_two_seconds() {
    let mut phone = Phone::first();
    let edge = phone.typed(START + 2 * SECOND, born(1));
    let past_it = phone.typed(START + 2 * SECOND + 1, clamped(1));
    let chart = phone.chart();
    assert_eq!((odd(&chart, edge), odd(&chart, past_it)), (vec![], vec![Odd::InFuture]));
}

#[test]
fn a_typed_minute_before_the_birth_is_flagged_from_a_whole_minute_on() {
    let mut phone = Phone::first();
    phone.pass(30 * SECOND).mark(born(1));
    phone.pass(MINUTE);
    // Typed times are whole minutes: the same minute on the clock may hold both.
    let same_minute = phone.typed(START, clamped(1));
    let before = phone.typed(START - 30 * SECOND, Fact::CordPulsationStopped { baby: 1 });
    let chart = phone.chart();
    assert_eq!((odd(&chart, same_minute), odd(&chart, before)), (vec![], vec![Odd::BeforeBirth]));
}

#[test]
fn a_retracted_entry_is_not_odd_any_more_but_stays() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    let second = phone.pass(MINUTE).mark(born(1));
    phone.pass(MINUTE).retract(second);
    let chart = phone.chart();
    assert_eq!((odd(&chart, second), order(&chart).contains(&second)), (vec![], true));
}

#[test]
fn what_puts_right_an_entry_that_is_not_here_stands_and_is_flagged() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    let orphan = phone.pass(MINUTE).correct(id(2, 8), jug(600));
    let chart = phone.chart();
    assert_eq!((odd(&chart, orphan), chart.losses.len()), (vec![Odd::AmendsMissing], 1));
}

#[test]
fn a_correction_of_such_an_entry_still_holds() {
    // The third phone has the corrections of the second, and not yet the entry of the first.
    let mut phone = Phone::first();
    phone.mark(born(1));
    let orphan = phone.pass(MINUTE).correct(id(2, 8), jug(600));
    let corrected = phone.pass(MINUTE).correct(orphan, jug(310));
    let chart = phone.chart();
    assert_eq!(chart.losses.iter().map(|loss| loss.what.clone()).map(Fact::BloodLoss).collect::<Vec<_>>(), [jug(310)]);
    assert_eq!((odd(&chart, orphan), odd(&chart, corrected)), (vec![Odd::AmendsMissing], vec![]));
    phone.pass(MINUTE).retract(corrected);
    assert!(phone.chart().losses.is_empty(), "taken out");
}

#[test]
fn entries_that_amend_each_other_in_a_circle_all_stand() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    let one = phone.pass(MINUTE).correct(id(1, 4), jug(100));
    let other = phone.pass(MINUTE).correct(one, jug(200));
    let itself = phone.pass(MINUTE).correct(id(1, 5), jug(300));
    let chart = phone.chart();
    assert_eq!(order(&chart), [id(1, 1), id(1, 2), one, other, itself]);
    assert_eq!([one, other, itself].map(|entry| odd(&chart, entry)), [const { &[Odd::AmendsMissing] }; 3]);
}

#[test]
fn an_amendment_of_another_births_entry_finds_nothing_here() {
    let mut phone = Phone::first();
    let theirs = phone.pass(MINUTE).mark(jug(700));
    phone.entries.last_mut().unwrap().birth.0.n = 99;
    let ours = phone.pass(MINUTE).correct(theirs, jug(70));
    let chart = fold(BIRTH, &phone.entries);
    assert_eq!((order(&chart).contains(&theirs), odd(&chart, ours).contains(&Odd::AmendsMissing)), (false, true));
}

/// Twins: the first at 0, the second at 12 min.
fn twins() -> Phone {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(12 * MINUTE).mark(born(2));
    phone
}

#[test]
fn each_twin_has_its_own_cord() {
    let mut phone = twins();
    phone.pass(MINUTE).mark(Fact::CordPulsationStopped { baby: 2 });
    phone.pass(MINUTE).mark(Fact::CordPulsationStopped { baby: 1 });
    phone.pass(MINUTE).mark(clamped(1));
    let chart = phone.chart();
    let pulsed = |baby| chart.cord_pulsation(baby, &phone.now()).as_ref().map(Elapsed::clock);
    assert_eq!((pulsed(1).unwrap(), pulsed(2).unwrap(), pulsed(3)), ("14:00".to_owned(), "1:00".to_owned(), None));
    assert_eq!((chart.babies[&1].clamped.is_some(), chart.babies[&2].clamped.is_some()), (true, false));
}

#[test]
fn the_third_stage_of_twins_runs_from_the_last_baby_to_the_last_placenta() {
    // Source: for twins the start is the birth of the last baby; our own choice, no source.
    let mut phone = twins();
    phone.pass(8 * MINUTE).mark(placenta(&[2]));
    let waiting = phone.chart().third_stage(&phone.now()).unwrap();
    assert_eq!((waiting.to, waiting.elapsed.ms), (None, 8 * MINUTE));
    phone.pass(5 * MINUTE).mark(placenta(&[1]));
    phone.pass(30 * MINUTE);
    let chart = phone.chart();
    let stage = chart.third_stage(&phone.now()).unwrap();
    assert_eq!((at(&chart, &stage.to), stage.elapsed.ms), ("25:00".to_owned(), 13 * MINUTE));
}

#[test]
fn a_fused_placenta_ends_it_for_both() {
    let mut phone = twins();
    phone.pass(9 * MINUTE).mark(placenta(&[2, 1]));
    phone.pass(30 * MINUTE);
    let chart = phone.chart();
    assert_eq!(chart.third_stage(&phone.now()).unwrap().elapsed.ms, 9 * MINUTE);
    assert_eq!((chart.placentas.len(), &chart.placentas[&1].babies), (1, &vec![1, 2]));
}

#[test]
fn a_placenta_that_turns_out_to_be_fused_ends_it_then() {
    let mut phone = twins();
    phone.pass(5 * MINUTE).mark(placenta(&[1]));
    phone.pass(4 * MINUTE).mark(placenta(&[1, 2]));
    phone.pass(30 * MINUTE);
    let chart = phone.chart();
    assert_eq!(chart.third_stage(&phone.now()).unwrap().elapsed.ms, 9 * MINUTE);
    assert_eq!(chart.placentas[&1].babies, [1, 2]);
}

#[test]
fn membranes_never_stand_for_a_placenta() {
    let mut phone = twins();
    phone.pass(5 * MINUTE).mark(membranes(&[1, 2]));
    phone.pass(MINUTE).mark(placenta(&[1]));
    phone.pass(MINUTE);
    let stage = phone.chart().third_stage(&phone.now()).unwrap();
    assert_eq!(stage.to, None, "the placenta of baby 2 is still awaited");
}
