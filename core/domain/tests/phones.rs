//! Two phones at one birth, each with a clock of its own.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
#![allow(clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use common::{BIRTH, HOUR, MINUTE, Phone, SECOND, born, clamped, compared, cut, id, jug, look, odd, order, placenta, protocol};
use secundine_domain::assess::{About, FindingState, assess};
use secundine_domain::chart::{Chart, Odd, fold, fold_with};
use secundine_domain::due::due;
use secundine_domain::entry::{DeviceId, Entry, EntryId};
use secundine_domain::fact::{Care, Fact, Joined, Told};
use secundine_domain::protocol::Watch;
use secundine_domain::time::Certainty;

const B: DeviceId = DeviceId([2; 16]);

/// The first phone with its birth, and a second one whose clock is so far ahead.
fn two(ahead_ms: i64) -> (Phone, Phone) {
    let (first, mut second) = (Phone::first(), Phone::numbered(2, "Bea"));
    second.set_wall(ahead_ms);
    (first, second)
}

fn both(one: &mut Phone, other: &mut Phone, ms: i64) {
    one.pass(ms);
    other.pass(ms);
}

fn joined(told: Vec<Told>) -> Fact {
    Fact::BirthJoined(Joined {
        from: DeviceId([1; 16]),
        label: "Rosa".to_owned(),
        protocol: Some("nice-rcog".to_owned()),
        care: Some(Care::Physiological),
        told,
    })
}

fn union(one: &Phone, other: &Phone) -> Vec<Entry> {
    one.entries.iter().chain(&other.entries).cloned().collect()
}

/// The lines that are marks, in their order, each with its distance from the birth.
fn marks(chart: &Chart) -> Vec<(EntryId, String)> {
    let lines = chart.lines.iter().filter(|line| line.first.fact.is_mark() || matches!(line.first.fact, Fact::BloodLoss(_)));
    lines.map(|line| (line.first.id, chart.since_birth(&line.first.occurred).unwrap().clock())).collect()
}

/// Events in turn on the two phones; gives them in the order in which they happened.
fn interleaved(a: &mut Phone, b: &mut Phone) -> Vec<EntryId> {
    let mut happened = vec![a.mark(born(1))];
    both(a, b, 2 * MINUTE);
    happened.push(b.mark(clamped(1)));
    both(a, b, 20 * SECOND);
    happened.push(a.mark(cut(1)));
    both(a, b, 7 * MINUTE);
    happened.push(b.mark(placenta(&[1])));
    both(a, b, MINUTE);
    happened.push(a.mark(jug(200)));
    happened
}

#[test]
fn two_clocks_an_hour_apart_tell_one_birth_once_they_were_compared() {
    for ahead in [HOUR, -HOUR, 3 * SECOND] {
        let (mut a, mut b) = two(ahead);
        both(&mut a, &mut b, MINUTE);
        a.mark(compared(2, ahead + 400, 900));
        both(&mut a, &mut b, MINUTE);
        let happened = interleaved(&mut a, &mut b);
        let entries = union(&a, &b);
        let on_a = fold_with(BIRTH, &entries, &a.runs);
        let on_b = fold_with(BIRTH, entries.iter().rev(), &b.runs);
        for chart in [&on_a, &on_b] {
            assert_eq!(marks(chart).iter().map(|(id, _)| *id).collect::<Vec<_>>(), happened, "{ahead}");
            let stage = chart.third_stage(&a.now()).unwrap();
            assert_eq!(stage.elapsed.certainty, Certainty::Compared);
            assert!((stage.elapsed.ms - (9 * MINUTE + 20 * SECOND)).abs() <= stage.elapsed.error_ms, "{:?}", stage.elapsed);
            assert_eq!(stage.elapsed.error_ms, 900);
            let first_of_b = chart.lines.iter().find(|line| line.first.id.device == B).unwrap();
            assert_eq!(odd(chart, first_of_b.first.id), [Odd::ClocksApart]);
            assert_eq!(chart.oddities.len(), 1, "{:?}", chart.oddities);
        }
        assert_eq!(marks(&on_a), marks(&on_b));
        assert!(entries.iter().all(|entry| on_a.lines.iter().any(|line| line.first == *entry)), "as written");
    }
}

#[test]
fn without_a_comparison_they_stand_by_their_wall_clocks_and_it_says_so() {
    let (mut a, mut b) = two(HOUR);
    let happened = interleaved(&mut a, &mut b);
    let chart = fold(BIRTH, &union(&a, &b));
    let [born, clamped, cut, placenta, blood] = happened[..] else { unreachable!() };
    assert_eq!(marks(&chart).iter().map(|(id, _)| *id).collect::<Vec<_>>(), [born, cut, blood, clamped, placenta]);
    assert!(odd(&chart, clamped).contains(&Odd::ClocksNotCompared), "{:?}", chart.oddities);
    assert_eq!(chart.third_stage(&a.now()).unwrap().elapsed.certainty, Certainty::NotCompared);
}

#[test]
fn a_difference_whose_sign_is_not_sure_puts_nothing_right() {
    let (mut a, mut b) = two(0);
    b.mark(compared(1, 10 * SECOND, 10 * SECOND));
    interleaved(&mut a, &mut b);
    let chart = fold(BIRTH, &union(&a, &b));
    let stage = chart.third_stage(&a.now()).unwrap().elapsed;
    assert_eq!((stage.ms, stage.certainty, stage.error_ms), (9 * MINUTE + 20 * SECOND, Certainty::Compared, 20 * SECOND));
    assert_eq!(chart.oddities, []);
}

#[test]
fn the_surer_comparison_holds_and_one_that_says_otherwise_is_flagged() {
    let (mut a, mut b) = two(HOUR);
    let wrong = b.mark(compared(1, -HOUR - 40 * SECOND, 10 * SECOND));
    both(&mut a, &mut b, MINUTE);
    a.mark(compared(2, HOUR, SECOND));
    interleaved(&mut a, &mut b);
    let chart = fold(BIRTH, &union(&a, &b));
    assert_eq!(chart.offset(B).unwrap().ahead_ms, HOUR);
    assert!(odd(&chart, wrong).contains(&Odd::ClocksDisagree), "{:?}", chart.oddities);
    // Taken back, it is not looked at any more.
    b.retract(wrong);
    let chart = fold(BIRTH, &union(&a, &b));
    assert!(!odd(&chart, wrong).contains(&Odd::ClocksDisagree), "{:?}", chart.oddities);
}

#[test]
fn a_wall_clock_set_after_the_comparison_puts_nothing_out() {
    let (mut a, mut b) = two(HOUR);
    b.mark(joined(Vec::new()));
    a.mark(compared(2, HOUR, SECOND));
    both(&mut a, &mut b, MINUTE);
    b.set_wall(-HOUR);
    let happened = interleaved(&mut a, &mut b);
    let again = a.mark(compared(2, 0, SECOND));
    let chart = fold(BIRTH, &union(&a, &b));
    assert_eq!(marks(&chart).iter().map(|(id, _)| *id).collect::<Vec<_>>(), happened);
    assert_eq!(odd(&chart, again), [], "the second comparison says the same of the running clocks");
}

#[test]
fn a_third_phone_is_reached_by_way_of_the_second() {
    let (mut a, mut b) = two(HOUR);
    let mut c = Phone::numbered(3, "Cleo");
    c.set_wall(-2 * HOUR);
    a.mark(compared(2, HOUR, SECOND));
    c.mark(compared(2, 3 * HOUR, 2 * SECOND));
    a.mark(born(1));
    both(&mut a, &mut b, MINUTE);
    c.pass(MINUTE).mark(clamped(1));
    let entries: Vec<Entry> = [&a, &b, &c].into_iter().flat_map(|phone| phone.entries.clone()).collect();
    let chart = fold(BIRTH, &entries);
    let offset = chart.offset(DeviceId([3; 16])).unwrap();
    assert_eq!((offset.ahead_ms, offset.error_ms), (-2 * HOUR, 3 * SECOND));
    assert_eq!(chart.since_birth(&c.entries[1].occurred).unwrap().ms, MINUTE);
}

#[test]
fn what_was_told_holds_until_its_own_entry_has_come() {
    let (mut a, mut b) = two(HOUR);
    both(&mut a, &mut b, MINUTE);
    let birth = a.mark(born(1));
    both(&mut a, &mut b, 4 * MINUTE);
    let told = Told { entry: birth, fact: Box::new(born(1)), ago_ms: 4 * MINUTE };
    let join = b.mark(joined(vec![told]));
    both(&mut a, &mut b, MINUTE);
    b.mark(clamped(1));
    let chart = b.chart();
    assert!(chart.is_partial());
    assert_eq!((chart.label.as_str(), chart.care()), ("Rosa", Some(Care::Physiological)));
    let stage = chart.third_stage(&b.now()).unwrap();
    assert_eq!(
        (stage.elapsed.clock(), stage.elapsed.certainty, stage.from.entry),
        ("5:00".to_owned(), Certainty::Measured, join)
    );
    assert_eq!(chart.oddities.len(), 0, "{:?}", chart.oddities);

    let merged = fold(BIRTH, &union(&a, &b));
    assert!(!merged.is_partial());
    assert_eq!(merged.babies[&1].born.as_ref().unwrap().entry, birth, "one birth, by whoever marked it");
    assert!(!merged.oddities.iter().any(|odd| odd.what == Odd::SecondBirth));
}

#[test]
fn nothing_is_said_to_be_passed_for_want_of_the_other_phones_entries() {
    let (mut a, mut b) = two(0);
    let birth = a.mark(born(1));
    let told = Told { entry: birth, fact: Box::new(born(1)), ago_ms: 0 };
    b.mark(joined(vec![told]));
    b.pass(5 * HOUR).mark(look(150, 80));
    let chart = b.chart();
    let protocol = Some(protocol("nice-rcog"));
    let findings = assess(&chart, protocol, &b.now());
    let state = |about: About| findings.iter().find(|finding| finding.about == about).map(|finding| finding.state);
    assert_eq!(state(About::ThirdStage), Some(FindingState::CannotAssess));
    for watch in Watch::WINDOWS {
        assert!(state(About::Watch { watch }).is_none_or(|state| state == FindingState::CannotAssess), "{watch:?}");
    }
    let seen = findings.iter().filter(|finding| matches!(finding.state, FindingState::Near | FindingState::Passed));
    assert!(seen.clone().count() > 0, "what was seen here holds");
    assert!(seen.clone().all(|finding| !finding.rests_on.is_empty()));
    assert_eq!(due(&chart, protocol, &b.now()), []);
    // With the other phone's entries it is as ever.
    let whole = fold(BIRTH, &union(&a, &b));
    let finding = assess(&whole, protocol, &b.now()).into_iter().find(|finding| finding.about == About::ThirdStage).unwrap();
    assert_ne!(finding.state, FindingState::CannotAssess);
}

#[test]
fn each_phone_tells_whose_entries_it_awaits() {
    let (mut a, mut b) = two(0);
    a.mark(compared(2, 0, SECOND));
    b.mark(joined(Vec::new()));
    assert_eq!(a.chart().awaited().into_iter().collect::<Vec<_>>(), [B]);
    assert_eq!(b.chart().awaited().into_iter().collect::<Vec<_>>(), [DeviceId([1; 16])]);
    assert!(fold(BIRTH, &union(&a, &b)).awaited().is_empty());
    assert!(!a.chart().is_partial(), "she goes on watching");
}

#[test]
fn both_phones_marked_the_birth_the_first_counts_and_the_other_is_shown() {
    let (mut a, mut b) = two(HOUR);
    a.mark(compared(2, HOUR, SECOND));
    both(&mut a, &mut b, MINUTE);
    let earlier = b.mark(born(1));
    both(&mut a, &mut b, 3 * SECOND);
    let later = a.mark(born(1));
    let chart = fold(BIRTH, &union(&a, &b));
    assert_eq!(chart.babies[&1].born.as_ref().unwrap().entry, earlier);
    assert_eq!(odd(&chart, later), [Odd::SecondBirth]);
    // She takes one of the two out.
    a.retract(earlier);
    assert_eq!(fold(BIRTH, &union(&a, &b)).babies[&1].born.as_ref().unwrap().entry, later);
}

#[test]
fn a_store_restored_on_the_same_phone_is_one_phone() {
    let mut a = Phone::first();
    a.mark(born(1));
    let mut entries = a.entries.clone();
    let mut entry = Entry { id: id(2, 1), fact: clamped(1), ..a.entries[1].clone() };
    a.pass(MINUTE);
    entry.recorded = a.now();
    entry.occurred = secundine_domain::time::Occurred::Marked(a.now());
    entries.push(entry);
    let chart = fold(BIRTH, &entries);
    assert_eq!(chart.oddities, []);
    assert_eq!(order(&chart).len(), 3);
}
