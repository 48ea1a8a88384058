//! Clocks that jump, stop and change their zone in the middle of a birth.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
#![allow(clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use common::{BIRTH, HOUR, MINUTE, Phone, SECOND, START, born, clamped, jug, odd, order, placenta};
use secundine_domain::chart::{Chart, Odd, Oddity, State, fold};
use secundine_domain::fact::Fact;
use secundine_domain::time::{Certainty, Elapsed, Occurred, Stamp, parse_local};

/// The third stage as clock text and how well it is known.
fn stage(phone: &Phone) -> (String, Certainty) {
    let stage = phone.chart().third_stage(&phone.now()).unwrap();
    (stage.elapsed.clock(), stage.elapsed.certainty)
}

fn since_birth(chart: &Chart) -> Vec<String> {
    chart.lines.iter().filter_map(|line| chart.since_birth(&line.shown().occurred)).map(|elapsed| elapsed.clock()).collect()
}

/// Summer time put right by hand, a wrong date, and the least that counts.
const STEPS: [i64; 6] = [-HOUR, -24 * HOUR, HOUR, 24 * HOUR, -2_001, 2_001];

#[test]
fn a_wall_clock_that_is_set_moves_no_line_and_no_duration() {
    for step in STEPS {
        let mut phone = Phone::first();
        phone.pass(MINUTE).mark(born(1));
        phone.pass(4 * MINUTE + 34 * SECOND).mark(Fact::CordPulsationStopped { baby: 1 });
        let after = phone.set_wall(step).pass(26 * SECOND).mark(clamped(1));
        phone.pass(10 * MINUTE).mark(jug(150));
        phone.pass(3 * MINUTE + 40 * SECOND).mark(placenta(&[1]));
        phone.pass(HOUR);
        let chart = phone.chart();
        assert_eq!(order(&chart), phone.entries.iter().map(|entry| entry.id).collect::<Vec<_>>(), "{step}");
        assert_eq!(since_birth(&chart), ["−1:00", "0:00", "4:34", "5:00", "15:00", "18:40"], "{step}");
        assert_eq!(stage(&phone), ("18:40".to_owned(), Certainty::Measured), "{step}");
        let flagged: Vec<_> = chart.oddities.iter().map(|oddity| (oddity.entry, oddity.what, oddity.by_ms)).collect();
        assert_eq!(flagged, [(after, Odd::ClockChanged, Some(step))], "{step}: at the first entry after it, and there only");
    }
}

#[test]
fn a_drift_of_two_seconds_is_no_change() {
    for step in [-2_000, 2_000] {
        let mut phone = Phone::first();
        phone.mark(born(1));
        phone.pass(MINUTE).set_wall(step).mark(clamped(1));
        assert_eq!(phone.chart().oddities, []);
    }
}

#[test]
fn a_clock_change_shows_at_the_line_that_the_next_correction_belongs_to() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    let loss = phone.pass(MINUTE).mark(jug(500));
    phone.pass(MINUTE).mark(clamped(1));
    phone.set_wall(-HOUR).pass(MINUTE).correct(loss, jug(50));
    assert_eq!(odd(&phone.chart(), loss), [Odd::ClockChanged]);
}

#[test]
fn the_clocks_of_two_phones_are_not_held_against_each_other() {
    let mut first = Phone::first();
    first.mark(born(1));
    let mut second = Phone::numbered(2, "Bea");
    second.set_wall(-7 * MINUTE).pass(MINUTE).mark(clamped(1));
    first.pass(2 * MINUTE).mark(jug(100));
    second.pass(2 * MINUTE).mark(jug(100));
    let chart = fold(BIRTH, first.entries.iter().chain(&second.entries));
    assert!(chart.oddities.iter().all(|oddity| oddity.what != Odd::ClockChanged), "{:?}", chart.oddities);
    assert_eq!(chart.lines.len(), 5);
}

#[test]
fn twins_keep_their_order_when_the_wall_clock_is_set_back_between_them() {
    let mut phone = Phone::first();
    let first = phone.mark(born(1));
    let last = phone.set_wall(-HOUR).pass(10 * MINUTE).mark(born(2));
    phone.pass(5 * MINUTE);
    let chart = phone.chart();
    assert_eq!(chart.third_stage(&phone.now()).unwrap().from.entry, last);
    assert_eq!(stage(&phone), ("5:00".to_owned(), Certainty::Measured));
    assert_eq!(since_birth(&chart), ["0:00", "0:00", "10:00"], "counted from {first}");
}

#[test]
fn the_last_placenta_is_the_last_also_when_the_wall_clock_is_set_back_before_it() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.mark(born(2));
    phone.pass(10 * MINUTE).mark(placenta(&[1]));
    let last = phone.set_wall(-HOUR).pass(9 * MINUTE).mark(placenta(&[2]));
    let chart = phone.chart();
    assert_eq!(chart.third_stage(&phone.now()).unwrap().to.unwrap().entry, last);
    assert_eq!(stage(&phone), ("19:00".to_owned(), Certainty::Measured));
}

#[test]
fn blood_after_the_birth_is_not_before_it_because_the_wall_clock_was_set_back() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    let blood = phone.pass(MINUTE).mark(jug(100));
    phone.set_wall(-HOUR).pass(MINUTE).mark(born(2));
    let own = phone.pass(MINUTE).mark(placenta(&[1]));
    let chart = phone.chart();
    assert_eq!((odd(&chart, blood), odd(&chart, own)), (vec![], vec![]));
}

#[test]
fn a_restart_in_the_third_stage_goes_on_by_the_wall_clock_and_says_so() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(7 * MINUTE + 30 * SECOND);
    assert_eq!(stage(&phone), ("7:30".to_owned(), Certainty::Measured));
    phone.restart(90 * SECOND);
    assert_eq!(stage(&phone), ("9:00".to_owned(), Certainty::AcrossRestart));
    phone.pass(8 * MINUTE).mark(placenta(&[1]));
    phone.pass(HOUR);
    assert_eq!(stage(&phone), ("17:00".to_owned(), Certainty::AcrossRestart));
    let chart = phone.chart();
    assert_eq!((order(&chart).len(), chart.oddities.len()), (3, 0), "a restart is no clock change");
}

#[test]
fn what_lies_after_the_restart_is_measured_again() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(MINUTE).restart(MINUTE).mark(born(2));
    phone.set_wall(-HOUR).pass(5 * MINUTE);
    assert_eq!(stage(&phone), ("5:00".to_owned(), Certainty::Measured));
}

#[test]
fn a_phone_without_a_running_clock_goes_by_the_wall_clock() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(6 * MINUTE);
    let now = Stamp { boot: None, ..phone.now() };
    let elapsed = phone.chart().third_stage(&now).unwrap().elapsed;
    assert_eq!(elapsed, Elapsed { ms: 6 * MINUTE, certainty: Certainty::AcrossRestart, least_ms: None, error_ms: 0 });
}

#[test]
fn typed_times_stand_where_they_happened_and_not_where_they_were_written() {
    let mut phone = Phone::first();
    let birth = phone.pass(5 * MINUTE).mark(born(1));
    phone.pass(20 * MINUTE);
    let after = phone.typed(START + 12 * MINUTE, jug(200));
    let before = phone.typed(START + 3 * MINUTE, Fact::Noted { text: "head in view".to_owned() });
    let chart = phone.chart();
    assert_eq!(order(&chart)[1..], [before, birth, after]);
    assert_eq!(since_birth(&chart), ["−5:00", "−2:00", "0:00", "7:00"]);
    assert_eq!(chart.oddities, []);
}

#[test]
fn a_typed_time_stands_in_its_place_also_when_the_clock_was_set_back_later() {
    // The typed 02:52 was read off the clock before anybody set it.
    let mut phone = Phone::first();
    let birth = phone.mark(born(1));
    let clamp = phone.pass(10 * MINUTE).mark(clamped(1));
    phone.pass(5 * MINUTE);
    let typed = phone.typed(START + 12 * MINUTE, jug(200));
    let out = phone.set_wall(-HOUR).pass(5 * MINUTE).mark(placenta(&[1]));
    assert_eq!(order(&phone.chart())[1..], [birth, clamp, typed, out]);
}

#[test]
fn a_birth_put_right_to_a_typed_time_moves_all_that_is_counted_from_it() {
    let mut phone = Phone::first();
    let birth = phone.pass(10 * MINUTE).mark(born(1));
    let cord = phone.pass(5 * MINUTE).mark(clamped(1));
    let put_right = phone.pass(MINUTE).correct_to(birth, START + 7 * MINUTE, born(1));
    phone.pass(2 * MINUTE);
    let chart = phone.chart();
    assert_eq!(stage(&phone), ("11:00".to_owned(), Certainty::Typed));
    assert_eq!(chart.third_stage(&phone.now()).unwrap().from.entry, birth, "found by its first id");
    assert_eq!(order(&chart)[1..], [birth, cord]);
    assert_eq!(since_birth(&chart), ["−7:00", "0:00", "8:00"]);
    let line = &chart.lines[1];
    assert_eq!(
        (line.state(), line.current().id, line.first.occurred.clock()),
        (State::Corrected, put_right, "03:50:00".to_owned())
    );
}

#[test]
fn a_birth_put_right_to_after_the_clamp_changes_the_order_and_is_flagged() {
    let mut phone = Phone::first();
    let birth = phone.pass(MINUTE).mark(born(1));
    let clamp = phone.pass(MINUTE).mark(clamped(1));
    phone.pass(10 * MINUTE).correct_to(birth, START + 4 * MINUTE, born(1));
    let chart = phone.chart();
    assert_eq!(order(&chart)[1..], [clamp, birth]);
    assert_eq!(odd(&chart, clamp), [Odd::BeforeBirth]);
}

#[test]
fn a_retracted_correction_of_the_time_is_out_with_its_line() {
    let mut phone = Phone::first();
    let birth = phone.mark(born(1));
    let put_right = phone.pass(MINUTE).correct_to(birth, START - MINUTE, born(1));
    phone.pass(MINUTE).retract(put_right);
    let chart = phone.chart();
    assert_eq!(chart.third_stage(&phone.now()), None);
    assert_eq!(
        (chart.lines.iter().find(|line| line.first.id == birth).unwrap().state(), chart.lines.len()),
        (State::Retracted, 2)
    );
}

#[test]
fn summer_time_begins_and_ends_and_is_said_without_moving_anything() {
    for (before, after, clocks) in
        [(120, 60, ["04:40:00", "04:45:00", "03:50:00"]), (60, 120, ["03:40:00", "03:45:00", "04:50:00"])]
    {
        let mut phone = Phone::first();
        phone.set_offset(before).mark(born(1));
        phone.pass(5 * MINUTE).mark(clamped(1));
        let last = phone.set_offset(after).pass(5 * MINUTE).mark(placenta(&[1]));
        let chart = phone.chart();
        assert_eq!(order(&chart), phone.entries.iter().map(|entry| entry.id).collect::<Vec<_>>());
        assert_eq!(chart.lines[1..].iter().map(|line| line.first.occurred.clock()).collect::<Vec<_>>(), clocks);
        assert_eq!(stage(&phone), ("10:00".to_owned(), Certainty::Measured));
        // The chart was opened at +60, so that the birth may stand at a change too.
        let flagged: Vec<_> = chart.oddities.iter().filter(|oddity| oddity.entry == last).cloned().collect();
        let by_ms = Some(i64::from(after - before) * MINUTE);
        assert_eq!(flagged, [Oddity { entry: last, what: Odd::ZoneChanged, by_ms }]);
    }
}

#[test]
fn one_local_time_twice_in_the_night_is_two_moments() {
    // The end of summer time at UTC+1: 02:30 comes twice, an hour apart.
    let times = [120, 60].map(|offset| parse_local("2026-10-25", "02:30", offset).unwrap());
    assert_eq!(times[1] - times[0], HOUR);
    let read_back = |(wall_ms, offset_min)| {
        let precision = secundine_domain::time::Precision::Exact;
        let typed = Occurred::Typed { wall_ms, offset_min, precision };
        (typed.date(), typed.clock())
    };
    assert_eq!(read_back((times[0], 120)), read_back((times[1], 60)));
}
