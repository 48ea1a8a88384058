//! Every way in which a phone's clocks go astray in the third stage. True times are known by construction: what is shown is
//! right, or it says that it may not be.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use common::{HOUR, MINUTE, Phone, SECOND, born, clamped, clock, jug, order, placenta};
use secundine_domain::chart::{Chart, Odd, Oddity};
use secundine_domain::time::{Certainty, Elapsed};

struct Case {
    name: &'static str,
    /// From the birth to the placenta.
    story: fn(&mut Phone),
    kind: Kind,
}

#[derive(Clone, Copy, PartialEq)]
enum Kind {
    Marked,
    Typed,
    /// By a phone without a running clock.
    Bare,
}

const fn case(name: &'static str, story: fn(&mut Phone)) -> Case {
    Case { name, story, kind: Kind::Marked }
}

const fn special(kind: Kind, name: &'static str, story: fn(&mut Phone)) -> Case {
    Case { name, story, kind }
}

const DAY: i64 = 24 * HOUR;

/// A mark, five minutes, the wall clock set by so much, local time at this offset, five minutes, a mark.
fn step(phone: &mut Phone, set_ms: i64, offset_min: i32) {
    phone.pass(5 * MINUTE).mark(clamped(1));
    phone.pass(5 * MINUTE).set_wall(set_ms).set_offset(offset_min);
    phone.pass(5 * MINUTE).mark(jug(100));
    phone.pass(5 * MINUTE);
}

/// Off for two minutes, ten minutes after the birth; the clock may be set meanwhile.
fn restart(phone: &mut Phone, set_ms: i64) {
    phone.pass(10 * MINUTE).restart(2 * MINUTE).set_wall(set_ms);
    phone.pass(8 * MINUTE);
}

/// The same with a heartbeat just before and just after.
fn restart_with_heartbeat(phone: &mut Phone, set_ms: i64) {
    phone.pass(10 * MINUTE).beat().restart(2 * MINUTE).set_wall(set_ms).beat();
    phone.pass(8 * MINUTE).beat();
}

const CASES: [Case; 31] = [
    case("nothing happens", |phone| step(phone, 0, 60)),
    case("summer time begins", |phone| step(phone, 0, 120)),
    case("summer time ends", |phone| step(phone, 0, 0)),
    case("another zone in flight", |phone| step(phone, 0, -300)),
    case("a day forward", |phone| step(phone, DAY, 60)),
    case("a day back", |phone| step(phone, -DAY, 60)),
    case("a day forward and back", |phone| {
        phone.pass(MINUTE).set_wall(DAY).pass(MINUTE).mark(clamped(1));
        phone.pass(MINUTE).set_wall(-DAY).pass(MINUTE);
    }),
    case("a day back and forward unseen", |phone| {
        phone.set_wall(-DAY).pass(MINUTE).set_wall(DAY).pass(MINUTE);
    }),
    case("network time +3 s", |phone| step(phone, 3 * SECOND, 60)),
    case("network time -3 s", |phone| step(phone, -3 * SECOND, 60)),
    case("network time +1.5 s", |phone| step(phone, 1_500, 60)),
    case("network time -1.5 s", |phone| step(phone, -1_500, 60)),
    case("8 h asleep", |phone| {
        phone.pass(8 * HOUR);
    }),
    case("restart", |phone| restart(phone, 0)),
    case("restart, 1 h back", |phone| restart(phone, -HOUR)),
    case("restart, 1 h forward", |phone| restart(phone, HOUR)),
    case("restart, 1.5 s back", |phone| restart(phone, -1_500)),
    case("restart, heartbeat", |phone| restart_with_heartbeat(phone, 0)),
    case("restart, heartbeat, 1 h back", |phone| restart_with_heartbeat(phone, -HOUR)),
    case("restart, heartbeat, 1 h forward", |phone| restart_with_heartbeat(phone, HOUR)),
    case("restart, heartbeat, 1.5 s back", |phone| restart_with_heartbeat(phone, -1_500)),
    case("1 h back, seen, then a restart", |phone| {
        phone.set_wall(-HOUR);
        restart_with_heartbeat(phone, 0);
    }),
    case("1 h back at a restart, put right after it", |phone| {
        restart_with_heartbeat(phone, -HOUR);
        phone.set_wall(HOUR).pass(MINUTE);
    }),
    case("two restarts", |phone| {
        restart(phone, 0);
        phone.mark(clamped(1));
        restart(phone, 0);
    }),
    case("two restarts, 1 h back at the second", |phone| {
        restart_with_heartbeat(phone, 0);
        phone.mark(clamped(1));
        restart_with_heartbeat(phone, -HOUR);
    }),
    case("two restarts, 1 h back at the first only", |phone| {
        restart_with_heartbeat(phone, -HOUR);
        phone.mark(clamped(1));
        restart_with_heartbeat(phone, HOUR);
    }),
    case("two restarts, nothing written between", |phone| {
        restart_with_heartbeat(phone, 0);
        restart_with_heartbeat(phone, 0);
    }),
    special(Kind::Bare, "no running clock, 1 h back", |phone| step(phone, -HOUR, 60)),
    special(Kind::Bare, "no running clock, 1 h forward", |phone| step(phone, HOUR, 60)),
    special(Kind::Typed, "restart, then a typed clamp", |phone| {
        restart_with_heartbeat(phone, 0);
        let at = phone.now().wall_ms - 12 * MINUTE;
        phone.typed(at, clamped(1));
    }),
    special(Kind::Typed, "restart, 1 h back, birth put right by hand", |phone| {
        restart_with_heartbeat(phone, -HOUR);
        let (birth, at) = (phone.entries.last().unwrap().id, phone.now().wall_ms - 20 * MINUTE);
        phone.correct_to(birth, at, born(1));
    }),
];

fn told(elapsed: Elapsed) -> String {
    let least = elapsed.least_ms.filter(|_| elapsed.certainty == Certainty::AcrossRestart);
    let least = least.map_or(String::new(), |ms| format!(" (at least {})", clock(ms)));
    format!("{} {:?}{least}", elapsed.clock(), elapsed.certainty)
}

/// Right within a second, or flagged; and what is said to be the least is no more than the truth.
fn holds(name: &str, chart: &Chart, elapsed: Elapsed, truth: i64) {
    let right = (elapsed.ms - truth).abs() <= SECOND;
    let flagged = elapsed.certainty != Certainty::Measured || chart.oddities.iter().any(|odd| odd.what == Odd::ClockChanged);
    assert!(right || flagged, "{name}: {elapsed:?}, truly {truth}");
    assert!(right || elapsed.certainty != Certainty::Measured, "{name}: {elapsed:?}, truly {truth}");
    assert!(elapsed.least_ms.is_none_or(|least| least <= truth), "{name}: {elapsed:?}, truly {truth}");
}

fn oddities(chart: &Chart) -> Vec<String> {
    let at = |entry| order(chart).iter().position(|line| *line == entry).unwrap() + 1;
    let by = |odd: &Oddity| odd.by_ms.map_or(String::new(), |ms| format!(" by {}", clock(ms)));
    chart.oddities.iter().map(|odd| format!("{:?}{} before line {}", odd.what, by(odd), at(odd.entry))).collect()
}

#[test]
fn what_is_shown_is_right_or_says_that_it_may_not_be() {
    let mut table = String::new();
    for Case { name, story, kind } in CASES {
        let mut phone = Phone::opened(kind != Kind::Bare);
        phone.pass(30 * MINUTE).mark(born(1));
        let birth = phone.true_ms;
        story(&mut phone);
        let truth = phone.true_ms - birth;
        let waiting = phone.chart().third_stage(&phone.now()).unwrap().elapsed;
        holds(name, &phone.chart(), waiting, truth);
        phone.mark(placenta(&[1]));
        phone.pass(HOUR);
        let chart = phone.chart();
        let stage = chart.third_stage(&phone.now()).unwrap().elapsed;
        holds(name, &chart, stage, truth);
        if kind != Kind::Typed {
            assert_eq!(order(&chart), phone.entries.iter().map(|entry| entry.id).collect::<Vec<_>>(), "{name}");
        }
        table += &format!("{name}\n    truly {}; running {}; then {}\n", clock(truth), told(waiting), told(stage));
        oddities(&chart).iter().for_each(|odd| table += &format!("    {odd}\n"));
    }
    insta::assert_snapshot!(table);
}
