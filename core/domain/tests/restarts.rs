//! A phone that goes off and comes back with its wall clock set back: what rests on distances then.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use common::{BIRTH, HOUR, MINUTE, Phone, SECOND, START, born, care, clamped, cut, id, jug, look, odd, placenta, protocol};
use secundine_domain::assess::{About, Finding, FindingState, assess};
use secundine_domain::chart::{Odd, Oddity, fold_with};
use secundine_domain::due::due;
use secundine_domain::entry::Amendment;
use secundine_domain::fact::Care;
use secundine_domain::message::{Arg, Message};
use secundine_domain::time::{Certainty, Elapsed, Occurred, Run, Stamp};

/// Off for two minutes, seen just before, back with the wall clock an hour behind.
fn set_back(phone: &mut Phone) -> &mut Phone {
    phone.beat().restart(2 * MINUTE).set_wall(-HOUR)
}

fn third_stage(phone: &Phone) -> Finding {
    let findings = assess(&phone.chart(), Some(protocol("nice-rcog")), &phone.now());
    findings.into_iter().find(|finding| finding.about == About::ThirdStage).unwrap()
}

#[test]
fn what_was_marked_before_is_not_in_the_future_nor_after_what_was_marked_later() {
    let mut phone = Phone::first();
    let birth = phone.mark(born(1));
    let clamp = phone.pass(5 * MINUTE).mark(clamped(1));
    set_back(phone.pass(5 * MINUTE));
    let out = phone.pass(MINUTE).mark(placenta(&[1]));
    let cord = phone.pass(MINUTE).mark(cut(1));
    let again = phone.pass(MINUTE).correct(clamp, clamped(1));
    let chart = phone.chart();
    assert_eq!([birth, clamp, cord, again].map(|entry| odd(&chart, entry)), [const { &[] as &[Odd] }; 4]);
    assert_eq!(odd(&chart, out), [Odd::ClockSetBack]);
}

#[test]
fn what_is_put_right_after_it_is_written_later_than_it_happened() {
    let mut phone = Phone::first();
    let blood = phone.mark(jug(500));
    set_back(phone.pass(40 * MINUTE));
    phone.pass(MINUTE).correct(blood, jug(50));
    let chart = phone.chart();
    let line = chart.lines.iter().find(|line| line.first.id == blood).unwrap();
    let written = chart.written_apart(line.current()).map(Stamp::date_and_clock);
    assert_eq!(written.as_deref(), Some("2026-11-25 03:23:00"), "as the clock said then");
    assert!(chart.is_late(line.current(), protocol("nice-rcog")));
    assert_eq!((chart.written_apart(&line.first), chart.is_late(&line.first, protocol("nice-rcog"))), (None, false));
}

#[test]
fn the_least_that_it_can_be_passes_a_limit_and_never_clears_one() {
    let mut phone = Phone::first();
    phone.mark(care(Care::Active));
    phone.mark(born(1));
    set_back(phone.pass(10 * MINUTE));
    let early = third_stage(&phone);
    assert_eq!((early.state, early.message.id.as_str()), (FindingState::CannotAssess, "finding-at-least"));
    phone.pass(20 * MINUTE);
    let late = third_stage(&phone);
    let value = Message::new("value-at-least").with("value", "30:20");
    assert_eq!((late.state, late.message.args.get("value")), (FindingState::Passed, Some(&Arg::Message(value))));
}

#[test]
fn the_next_look_is_counted_from_the_last_one_before_it() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(5 * MINUTE).mark(look(80, 120));
    let coming = |phone: &Phone| {
        let list = due(&phone.chart(), Some(protocol("who")), &phone.now());
        list.into_iter().find(|due| due.id == "mother-observation").unwrap().in_ms
    };
    let before = coming(phone.pass(5 * MINUTE));
    // Two minutes off, of which 20 s are vouched for by the new run.
    assert_eq!(before - coming(set_back(&mut phone)), 20 * SECOND);
}

#[test]
fn a_running_third_stage_is_never_less_than_nothing_also_where_no_run_was_kept() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(10 * MINUTE).restart(MINUTE).set_wall(-HOUR);
    let elapsed = phone.chart().third_stage(&phone.now()).unwrap().elapsed;
    assert_eq!(elapsed, Elapsed { ms: 0, certainty: Certainty::AtLeast, least_ms: Some(0), error_ms: 0 });
}

#[test]
fn another_phones_runs_vouch_for_nothing() {
    let mut first = Phone::first();
    first.mark(born(1));
    let mut second = Phone::numbered(2, "Bea");
    second.pass(10 * MINUTE).beat();
    let chart = fold_with(BIRTH, &first.entries, &second.runs);
    let elapsed = chart.third_stage(&second.now()).unwrap().elapsed;
    assert_eq!(elapsed, Elapsed { ms: 10 * MINUTE, certainty: Certainty::AcrossRestart, least_ms: None, error_ms: 0 });
}

#[test]
fn the_runs_of_two_phones_are_not_put_in_one_order() {
    let mut first = Phone::first();
    first.mark(born(1));
    let mut second = Phone::numbered(2, "Bea");
    let clamp = second.set_wall(-HOUR).pass(MINUTE).mark(clamped(1));
    // What a phone puts right of another keeps the other's time.
    let mut theirs = first.entries.last().unwrap().clone();
    (theirs.recorded, theirs.id) = (second.now(), id(2, 2));
    theirs.amends = Some(Amendment { entry: id(1, 2), reason: "read again".to_owned() });
    let kept = second.beat().runs.clone();
    let both = [first.entries.clone(), second.entries.clone()].concat();
    // Where only the correction is here, nothing tells that the run was another phone's.
    let one = vec![second.entries.remove(0), theirs.clone()];
    for (entries, certainty) in [(both, Certainty::NotCompared), (one, Certainty::AcrossRestart)] {
        let chart = fold_with(BIRTH, &entries, &kept);
        let at = &entries.iter().find(|entry| entry.id == clamp).unwrap().occurred;
        let elapsed = chart.elapsed(&theirs.occurred, at);
        assert_eq!(elapsed, Elapsed { ms: MINUTE - HOUR, certainty, least_ms: None, error_ms: 0 });
    }
}

#[test]
fn a_lag_beyond_two_seconds_is_said_and_any_lag_makes_it_the_least() {
    // Off and on within the 20 s that the new run has lasted, so that the wall clock has nothing to spare.
    for (set_ms, said) in [(-2_000, vec![]), (-2_001, vec![Odd::ClockSetBack])] {
        let mut phone = Phone::first();
        phone.mark(born(1));
        let out = phone.pass(MINUTE).beat().restart(20 * SECOND).set_wall(set_ms).mark(placenta(&[1]));
        let chart = phone.chart();
        let elapsed = chart.third_stage(&phone.now()).unwrap().elapsed;
        assert_eq!((elapsed.ms, elapsed.certainty), (80 * SECOND, Certainty::AtLeast));
        assert_eq!(odd(&chart, out), said);
    }
}

#[test]
fn without_a_running_clock_the_order_of_writing_holds_and_a_correction_elsewhere_does_not_break_it() {
    let mut phone = Phone::numbered(2, "Bea");
    phone.running_clock = false;
    let birth = phone.mark(born(1));
    let blood = phone.set_wall(-HOUR).pass(MINUTE).mark(jug(100));
    let more = phone.pass(5 * MINUTE).mark(jug(50));
    // Touched 20 s before it was written, and so before the second blood.
    let clamp = phone.pass(10 * SECOND).mark(clamped(1));
    let Occurred::Marked(touched) = &mut phone.entries.last_mut().unwrap().occurred else { unreachable!() };
    touched.wall_ms -= 20 * SECOND;
    phone.running_clock = true;
    let out = phone.set_wall(-HOUR).pass(MINUTE).mark(placenta(&[1]));
    let mut other = Phone::opened(false);
    let mut put_right = phone.entries.first().unwrap().clone();
    (put_right.recorded, put_right.id) = (other.pass(HOUR).now(), id(1, 2));
    put_right.amends = Some(Amendment { entry: birth, reason: "read again".to_owned() });
    let entries = [phone.entries.clone(), vec![put_right.clone()]].concat();
    let chart = fold_with(BIRTH, &entries, &[]);
    assert_eq!(chart.lines.iter().map(|line| line.first.id).collect::<Vec<_>>(), [birth, blood, clamp, more, out]);
    let elapsed = chart.elapsed(&put_right.occurred, &entries.get(1).unwrap().occurred);
    assert_eq!(elapsed, Elapsed { ms: 0, certainty: Certainty::AtLeast, least_ms: Some(0), error_ms: 0 });
    let elapsed = chart.elapsed(&put_right.occurred, &entries.get(3).unwrap().occurred);
    assert_eq!(elapsed.ms, -20 * SECOND, "the touch may have been so much before the writing");
}

#[test]
fn without_a_running_clock_a_clock_that_is_put_right_again_stands_by_its_wall() {
    let mut phone = Phone::opened(false);
    phone.pass(10 * MINUTE).mark(born(1));
    phone.set_wall(-HOUR).pass(MINUTE).mark(clamped(1));
    let out = phone.set_wall(HOUR).pass(MINUTE).mark(placenta(&[1]));
    let typed = phone.pass(5 * MINUTE).typed(START + 15 * MINUTE, jug(100));
    let order: Vec<_> = phone.chart().lines.iter().skip(3).map(|line| line.first.id).collect();
    assert_eq!(order, [out, typed]);
}

#[test]
fn an_earlier_heartbeat_of_a_run_takes_nothing_away() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(4 * MINUTE).beat();
    set_back(phone.pass(6 * MINUTE));
    phone.pass(MINUTE);
    let early = phone.runs.first().cloned();
    let twice: Vec<Run> = phone.runs.iter().cloned().chain(early).collect();
    let stage = |runs: &[Run]| fold_with(BIRTH, &phone.entries, runs).third_stage(&phone.now()).unwrap().elapsed;
    assert_eq!((stage(&phone.runs), stage(&phone.runs).ms), (stage(&twice), 11 * MINUTE + 20 * SECOND));
}

#[test]
fn a_restart_before_the_birth_takes_nothing_from_the_third_stage() {
    let mut phone = Phone::first();
    set_back(&mut phone).mark(born(1));
    phone.pass(7 * MINUTE);
    let elapsed = phone.chart().third_stage(&phone.now()).unwrap().elapsed;
    assert_eq!((elapsed.ms, elapsed.certainty), (7 * MINUTE, Certainty::Measured));
}

#[test]
fn a_typed_time_stands_by_its_wall_clock() {
    let mut phone = Phone::first();
    let birth = phone.pass(10 * MINUTE).mark(born(1));
    set_back(phone.pass(10 * MINUTE));
    let typed = phone.pass(MINUTE).typed(START + 15 * MINUTE, clamped(1));
    let out = phone.pass(MINUTE).mark(placenta(&[1]));
    let order: Vec<_> = phone.chart().lines.iter().skip(1).map(|line| line.first.id).collect();
    assert_eq!(order, [birth, typed, out]);
}

#[test]
fn a_change_is_said_with_its_amount() {
    let say = |what, ms| Oddity { entry: BIRTH.0, what, by_ms: Some(ms) }.message();
    let span =
        |id: &str, great: (&str, &str), small: (&str, &str)| Message::new(id).with(great.0, great.1).with(small.0, small.1);
    let back = Message::new("odd-clock-changed").with("way", "back");
    assert_eq!(say(Odd::ClockChanged, -HOUR), back.clone().with("by", span("span-hours", ("hours", "1"), ("minutes", "0"))));
    assert_eq!(say(Odd::ClockChanged, -3_599_999), back.with("by", span("span-minutes", ("minutes", "59"), ("seconds", "59"))));
    let seconds = Message::new("span-seconds").with("seconds", "3");
    assert_eq!(say(Odd::ClockChanged, 3_000), Message::new("odd-clock-changed").with("way", "forward").with("by", seconds));
    assert_eq!(Oddity { entry: BIRTH.0, what: Odd::Repeated, by_ms: None }.message(), Message::new("odd-repeated"));
}
