//! Any history of one phone, beside the time that truly passed: what is shown is right, or it says that it may not be.
//! `PROPTEST_CASES` sets how many are tried.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
#![allow(clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use common::{BIRTH, HOUR, MINUTE, Phone, SECOND, born, jug, order};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;
use proptest::test_runner::FileFailurePersistence;
use secundine_domain::chart::{Odd, fold_with};
use secundine_domain::time::{Certainty, Elapsed};

/// What befalls a phone.
#[derive(Clone, Debug)]
enum Event {
    /// Time, awake or asleep.
    Pass(i64),
    Mark,
    Heartbeat,
    /// The wall clock is set, or local time changes.
    SetWall(i64),
    SetOffset(i32),
    /// Off for so long, and the wall clock set meanwhile.
    Restart(i64, i64),
}

fn step() -> BoxedStrategy<i64> {
    prop_oneof![
        select(vec![-24 * HOUR, -HOUR, -3_000, -2_001, -2_000, -1_500, 1_500, 2_000, 2_001, 3_000, HOUR, 24 * HOUR]),
        -3 * HOUR..3 * HOUR,
    ]
    .boxed()
}

fn event() -> BoxedStrategy<Event> {
    prop_oneof![
        4 => (0..2 * HOUR).prop_map(Event::Pass),
        4 => Just(Event::Mark),
        2 => Just(Event::Heartbeat),
        1 => step().prop_map(Event::SetWall),
        1 => select(vec![0, 60, 120, -300]).prop_map(Event::SetOffset),
        2 => (20 * SECOND..4 * HOUR, prop_oneof![Just(0), step()]).prop_map(|(off, set)| Event::Restart(off, set)),
    ]
    .boxed()
}

fn befall(phone: &mut Phone, event: &Event) {
    match event {
        Event::Mark => {
            phone.mark(jug(10));
            phone
        }
        Event::Pass(ms) => phone.pass(*ms),
        Event::Heartbeat => phone.beat(),
        Event::SetWall(by_ms) => phone.set_wall(*by_ms),
        Event::SetOffset(offset_min) => phone.set_offset(*offset_min),
        Event::Restart(off_ms, set_ms) => phone.restart(*off_ms).set_wall(*set_ms),
    };
}

fn lived(running_clock: bool, events: &[Event]) -> Phone {
    let mut phone = Phone::opened(running_clock);
    phone.pass(MINUTE).mark(born(1));
    events.iter().for_each(|event| befall(&mut phone, event));
    phone
}

fn events() -> impl Strategy<Value = Vec<Event>> {
    vec(event(), 0..30)
}

/// Each distance in a chart of this phone between two of its entries, and from each to now, with the true one.
fn distances(phone: &Phone) -> Vec<(Elapsed, i64)> {
    let chart = phone.chart();
    let mut found = Vec::new();
    for (from, from_ms) in phone.entries.iter().zip(&phone.truth) {
        found.push((chart.until(&from.occurred, &phone.now()), phone.true_ms - from_ms));
        let others = phone.entries.iter().zip(&phone.truth);
        found.extend(others.map(|(to, to_ms)| (chart.elapsed(&from.occurred, &to.occurred), to_ms - from_ms)));
    }
    found
}

fn lasting() -> ProptestConfig {
    ProptestConfig {
        failure_persistence: Some(Box::new(FileFailurePersistence::WithSource("regressions"))),
        ..ProptestConfig::default()
    }
}

proptest! {
    #![proptest_config(lasting())]

    #[test]
    fn a_distance_is_right_or_flagged(events in events(), running_clock in prop::bool::weighted(0.8)) {
        for (elapsed, truth) in distances(&lived(running_clock, &events)) {
            let right = (elapsed.ms - truth).abs() <= SECOND;
            prop_assert!(right || elapsed.certainty != Certainty::Measured, "{:?}, truly {}", elapsed, truth);
            if let Some(least) = elapsed.least_ms {
                let (least, truth) = if truth < 0 { (-least, -truth) } else { (least, truth) };
                prop_assert!(least <= truth, "{:?}, truly {}", elapsed, truth);
            }
            prop_assert!(elapsed.certainty != Certainty::AtLeast || elapsed.least_ms == Some(elapsed.ms));
        }
    }

    #[test]
    fn where_nobody_sets_the_clock_every_distance_is_right(events in events(), running_clock in any::<bool>()) {
        let kept = events.into_iter().filter(|event| !matches!(event, Event::SetWall(_)));
        let kept = kept.map(|event| if let Event::Restart(off, _) = event { Event::Restart(off, 0) } else { event });
        let phone = lived(running_clock, &kept.collect::<Vec<_>>());
        for (elapsed, truth) in distances(&phone) {
            prop_assert_eq!(elapsed.ms, truth);
            prop_assert_ne!(elapsed.certainty, Certainty::AtLeast);
        }
        prop_assert!(phone.chart().oddities.iter().all(|odd| !matches!(odd.what, Odd::ClockChanged | Odd::ClockSetBack)));
    }

    #[test]
    fn as_time_passes_no_distance_to_now_becomes_less(events in events(), later in 0..2 * HOUR, running_clock in prop::bool::weighted(0.8)) {
        let mut phone = lived(running_clock, &events);
        let to_now = |phone: &Phone| -> Vec<i64> {
            let chart = phone.chart();
            phone.entries.iter().map(|entry| chart.until(&entry.occurred, &phone.now()).ms).collect()
        };
        let early = to_now(&phone);
        phone.pass(later);
        let late = to_now(&phone);
        prop_assert!(early.iter().zip(&late).all(|(early, late)| early <= late), "{:?} then {:?}", early, late);
    }

    #[test]
    fn a_change_that_the_running_clock_saw_is_taken_out_across_a_restart(
        before in vec(event(), 0..8),
        after in vec(event(), 0..8),
        off in 20 * SECOND..4 * HOUR,
    ) {
        let quiet = |events: Vec<Event>| events.into_iter().filter(|event| !matches!(event, Event::Restart(..))).collect::<Vec<_>>();
        let seen = [Event::Pass(1), Event::Heartbeat, Event::Restart(off, 0), Event::Mark, Event::Pass(1)];
        let phone = lived(true, &[quiet(before), seen.to_vec(), quiet(after)].concat());
        for (elapsed, truth) in distances(&phone) {
            prop_assert_eq!(elapsed.ms, truth, "{:?}", elapsed);
        }
    }

    #[test]
    fn lines_stand_in_their_true_order(events in events(), running_clock in prop::bool::weighted(0.8)) {
        let phone = lived(running_clock, &events);
        let written: Vec<_> = phone.entries.iter().map(|entry| entry.id).collect();
        prop_assert_eq!(order(&phone.chart()), written.clone());
        prop_assert_eq!(phone.chart().last_written, written.last().copied());
        let without_heartbeats = fold_with(BIRTH, &phone.entries, &[]);
        prop_assert_eq!(order(&without_heartbeats), written);
    }

    #[test]
    fn a_change_on_one_run_is_said_by_its_amount(events in events()) {
        let mut phone = lived(true, &[]);
        let mut wrong = phone.wrong_ms();
        let mut restarted = false;
        for event in events {
            let mark = matches!(event, Event::Mark);
            restarted |= matches!(event, Event::Restart(..));
            befall(&mut phone, &event);
            if mark {
                let by_ms = phone.wrong_ms() - wrong;
                let entry = phone.entries.last().unwrap().id;
                let chart = phone.chart();
                let said: Vec<_> = chart.oddities.iter().filter(|odd| odd.entry == entry && odd.what == Odd::ClockChanged).collect();
                if !restarted {
                    let expected = Some(by_ms).filter(|ms| ms.abs() > 2_000);
                    prop_assert_eq!(said.first().and_then(|odd| odd.by_ms), expected);
                }
                (wrong, restarted) = (phone.wrong_ms(), false);
            }
        }
    }

    #[test]
    fn a_clock_that_is_said_to_be_set_back_was(events in events(), running_clock in any::<bool>()) {
        let mut phone = lived(running_clock, &[]);
        let mut wrong = phone.wrong_ms();
        for event in events {
            befall(&mut phone, &event);
            if !matches!(event, Event::Mark) {
                continue;
            }
            let chart = phone.chart();
            let entry = phone.entries.last().unwrap().id;
            let by = |what| chart.oddities.iter().find(|odd| odd.entry == entry && odd.what == what).and_then(|odd| odd.by_ms);
            if let Some(back) = by(Odd::ClockSetBack) {
                let seen = by(Odd::ClockChanged).unwrap_or(0);
                let truly = phone.wrong_ms() - wrong;
                prop_assert!(back < -2_000 && truly <= back + seen + 2_000, "{} and {}, truly {}", back, seen, truly);
            }
            wrong = phone.wrong_ms();
        }
    }
}
