//! What holds for every set of entries, however tangled. `PROPTEST_CASES` sets how many are tried.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use std::collections::BTreeSet;

use common::arbitrary::{entries, fact, loss, runs, stamp};
use common::{BIRTH, HOUR, START, born, care, id, kind, kinds};
use proptest::prelude::*;
use proptest::sample::select;
use proptest::strategy::ValueTree;
use proptest::test_runner::{FileFailurePersistence, TestRunner};
use secundine_domain::assess::{About, Finding, FindingState, assess};
use secundine_domain::chart::{Chart, fold, fold_with};
use secundine_domain::due::due;
use secundine_domain::entry::{Entry, EntryId};
use secundine_domain::fact::{BabyNo, Care, Fact};
use secundine_domain::protocol::{Level, Protocol, Watch};
use secundine_domain::time::{Boot, Certainty, Occurred, Stamp};

fn lasting() -> ProptestConfig {
    ProptestConfig {
        failure_persistence: Some(Box::new(FileFailurePersistence::WithSource("regressions"))),
        ..ProptestConfig::default()
    }
}

fn shuffled() -> impl Strategy<Value = (Vec<Entry>, Vec<Entry>)> {
    entries().prop_flat_map(|entries| (Just(entries.clone()), Just(entries).prop_shuffle()))
}

fn protocol() -> impl Strategy<Value = &'static Protocol> {
    select(Protocol::published().iter().collect::<Vec<_>>())
}

/// What three phones hold: each of the entries lies on any of them, on several, or on none.
fn three_phones() -> impl Strategy<Value = [Vec<Entry>; 3]> {
    let held = |entries: Vec<Entry>| (prop::collection::vec(0_u8..8, entries.len()), Just(entries).prop_shuffle());
    entries().prop_flat_map(held).prop_map(|(masks, entries)| {
        [1, 2, 4].map(|phone| {
            entries.iter().zip(&masks).filter(|(_, mask)| *mask & phone != 0).map(|(entry, _)| entry.clone()).collect()
        })
    })
}

/// What a phone holds of the birth once it has taken in what another one holds, as its chart has it.
fn merge(one: &[Entry], other: &[Entry]) -> Vec<Entry> {
    kept(&fold(BIRTH, one.iter().chain(other)))
}

/// Every entry of the chart, at whatever place.
fn kept(chart: &Chart) -> Vec<Entry> {
    chart.lines.iter().flat_map(|line| std::iter::once(&line.first).chain(&line.amendments)).cloned().collect()
}

fn of_birth(entries: &[Entry]) -> BTreeSet<Entry> {
    entries.iter().filter(|entry| entry.birth == BIRTH).cloned().collect()
}

fn about(findings: &[Finding], about: &About) -> Finding {
    findings.iter().find(|finding| finding.about == *about).unwrap().clone()
}

/// How grave a finding is: its state where something is known, and its level.
fn gravity(finding: &Finding) -> (u8, Option<Level>) {
    let state = match finding.state {
        FindingState::NotRecorded | FindingState::CannotAssess => 0,
        FindingState::Within => 1,
        FindingState::Near => 2,
        FindingState::Passed => 3,
    };
    (state, finding.level)
}

/// A birth and its care that no other entry takes back, at the front in time.
fn opened(care_is: Care, entries: Vec<Entry>) -> Vec<Entry> {
    let at = |since_ms| Stamp { wall_ms: START, offset_min: 60, zone: None, boot: Some(Boot { id: "a".to_owned(), since_ms }) };
    let own = [born(1), care(care_is)].into_iter().zip(1..).map(|(fact, n)| {
        let stamp = at(5_000_000);
        Entry {
            id: id(7, n),
            birth: BIRTH,
            author: "Ada".to_owned(),
            occurred: Occurred::Marked(stamp.clone()),
            recorded: stamp,
            fact,
            amends: None,
        }
    });
    let others = entries.into_iter().filter(|entry| !matches!(entry.fact, Fact::BabyBorn { .. } | Fact::CareChosen { .. }));
    own.chain(others).collect()
}

/// Whether an entry happened on this run of a clock, or on none.
fn is_of_run(entry: &Entry, run: &str) -> bool {
    match &entry.occurred {
        Occurred::Marked(Stamp { boot: Some(boot), .. }) => boot.id == run,
        _ => true,
    }
}

#[test]
fn every_kind_is_drawn() {
    let mut runner = TestRunner::deterministic();
    let drawn: BTreeSet<_> = (0..2_000).map(|_| kind(&fact().new_tree(&mut runner).unwrap().current())).collect();
    assert_eq!(drawn, kinds().iter().map(String::as_str).collect());
}

proptest! {
    #![proptest_config(lasting())]

    #[test]
    fn the_order_of_arrival_changes_nothing((entries, mixed) in shuffled(), now in stamp(), protocol in protocol()) {
        let (one, other) = (fold(BIRTH, &entries), fold(BIRTH, &mixed));
        prop_assert_eq!(&one, &other);
        prop_assert_eq!(assess(&one, Some(protocol), &now), assess(&other, Some(protocol), &now));
        prop_assert_eq!(due(&one, Some(protocol), &now), due(&other, Some(protocol), &now));
    }

    #[test]
    fn the_order_of_what_is_kept_of_the_runs_changes_nothing(
        (entries, mixed) in shuffled(),
        (kept, mixed_runs) in runs().prop_flat_map(|runs| (Just(runs.clone()), Just(runs).prop_shuffle())),
    ) {
        prop_assert_eq!(fold_with(BIRTH, &entries, &kept), fold_with(BIRTH, &mixed, &mixed_runs));
    }

    #[test]
    fn a_second_arrival_changes_nothing((entries, mixed) in shuffled(), again in 0_usize..24) {
        let twice: Vec<Entry> = entries.iter().chain(mixed.iter().take(again)).cloned().collect();
        prop_assert_eq!(fold(BIRTH, &entries), fold(BIRTH, &twice));
    }

    #[test]
    fn two_entries_under_one_id_give_one_chart_in_either_order(entries in entries(), pick in any::<prop::sample::Index>(), fact in fact()) {
        prop_assume!(!entries.is_empty());
        let mut forged = pick.get(&entries).clone();
        forged.fact = fact;
        let after: Vec<Entry> = entries.iter().chain([&forged]).cloned().collect();
        let before: Vec<Entry> = [&forged].into_iter().chain(&entries).cloned().collect();
        prop_assert_eq!(fold(BIRTH, &after), fold(BIRTH, &before));
    }

    #[test]
    fn merging_is_commutative([one, other, _] in three_phones()) {
        prop_assert_eq!(merge(&one, &other), merge(&other, &one));
    }

    #[test]
    fn merging_is_associative([one, other, third] in three_phones()) {
        prop_assert_eq!(merge(&merge(&one, &other), &third), merge(&one, &merge(&other, &third)));
    }

    #[test]
    fn merging_is_idempotent([one, other, _] in three_phones()) {
        let merged = merge(&one, &other);
        prop_assert_eq!(&merge(&merged, &merged), &merged);
        prop_assert_eq!(&merge(&merged, &one), &merged, "what is here already");
        prop_assert_eq!(fold(BIRTH, merged.iter().chain(&merged)), fold(BIRTH, &merged));
    }

    #[test]
    fn merging_loses_nothing([one, other, third] in three_phones()) {
        let all: Vec<Entry> = [&one, &other, &third].into_iter().flatten().cloned().collect();
        let merged = merge(&merge(&one, &other), &third);
        prop_assert_eq!(merged.iter().cloned().collect::<BTreeSet<_>>(), of_birth(&all));
        prop_assert_eq!(merged.len(), of_birth(&all).len(), "each stands once");
        prop_assert_eq!(fold(BIRTH, &merged), fold(BIRTH, &all), "the chart is that of all of it");
    }

    #[test]
    fn nothing_vanishes_and_nothing_is_altered(entries in entries()) {
        let chart = fold(BIRTH, &entries);
        let kept = kept(&chart);
        prop_assert_eq!(kept.len(), of_birth(&entries).len(), "each stands once");
        prop_assert_eq!(kept.into_iter().collect::<BTreeSet<_>>(), of_birth(&entries));
    }

    #[test]
    fn what_stood_in_the_chart_still_stands_when_more_arrives(entries in entries(), first in 0_usize..24) {
        let early = fold(BIRTH, entries.iter().take(first));
        let late: BTreeSet<Entry> = kept(&fold(BIRTH, &entries)).into_iter().collect();
        prop_assert!(kept(&early).iter().all(|entry| late.contains(entry)));
    }

    #[test]
    fn no_entry_of_another_birth_is_read(entries in entries()) {
        let own: Vec<Entry> = of_birth(&entries).into_iter().collect();
        prop_assert_eq!(fold(BIRTH, &entries), fold(BIRTH, &own));
    }

    #[test]
    fn everything_can_be_read_without_a_panic(entries in entries(), now in stamp(), protocol in protocol(), baby in any::<BabyNo>()) {
        let chart = fold(BIRTH, &entries);
        let _ = assess(&chart, None, &now);
        let _ = chart.cord_pulsation(baby, &now);
        for line in &chart.lines {
            let entry = line.shown();
            let _ = chart.say(&entry.fact);
            let _ = chart.since_birth(&entry.occurred).map(|elapsed| elapsed.clock());
            let _ = (chart.written_apart(entry), chart.is_late(entry, protocol), entry.occurred.clock(), entry.occurred.date(), entry.recorded.date_and_clock());
        }
    }

    #[test]
    fn each_oddity_stands_at_a_line(entries in entries()) {
        let chart = fold(BIRTH, &entries);
        let lines: BTreeSet<EntryId> = chart.lines.iter().map(|line| line.first.id).collect();
        prop_assert!(chart.oddities.iter().all(|oddity| lines.contains(&oddity.entry)));
    }

    #[test]
    fn each_finding_rests_on_entries_of_the_chart(entries in entries(), now in stamp(), protocol in protocol()) {
        let chart = fold(BIRTH, &entries);
        let known: BTreeSet<EntryId> = chart.lines.iter().map(|line| line.first.id).collect();
        for finding in assess(&chart, Some(protocol), &now) {
            prop_assert!(finding.rests_on.iter().all(|entry| known.contains(entry)), "{:?}", finding);
            let speaks_of_something = matches!(finding.state, FindingState::Within | FindingState::Near | FindingState::Passed);
            prop_assert!(!speaks_of_something || !finding.rests_on.is_empty(), "{:?}", finding);
        }
    }

    #[test]
    fn what_is_passed_and_how_grave_it_is_agree(entries in entries(), now in stamp(), protocol in protocol()) {
        for finding in assess(&fold(BIRTH, &entries), Some(protocol), &now) {
            let expected = match finding.level {
                Some(Level::Limit) => finding.state == FindingState::Passed,
                Some(Level::Note | Level::Caution) => finding.state == FindingState::Near,
                None => !matches!(finding.state, FindingState::Near | FindingState::Passed),
            };
            prop_assert!(expected, "{:?}", finding);
            prop_assert_eq!(finding.threshold.is_some(), finding.level.is_some(), "who says so");
        }
    }

    #[test]
    fn nothing_that_is_watched_is_silently_absent(entries in entries(), now in stamp(), protocol in protocol()) {
        let chart = fold(BIRTH, &entries);
        let read = Watch::READ.into_iter().filter(|watch| *watch == Watch::ShockIndex || !protocol.steps(*watch).is_empty());
        let watches = read.chain([Watch::BloodLoss]).map(|watch| About::Watch { watch });
        let born = chart.placentas.iter().filter(|(_, placenta)| placenta.born.is_some()).map(|(no, _)| *no);
        let placentas: BTreeSet<BabyNo> = born.chain(chart.examinations.keys().copied()).collect();
        let placentas = placentas.into_iter().map(|placenta| About::Completeness { placenta });
        let findings = assess(&chart, Some(protocol), &now);
        for expected in watches.chain(placentas).chain([About::ThirdStage]) {
            prop_assert_eq!(findings.iter().filter(|finding| finding.about == expected).count(), 1, "{:?}", expected);
        }
        let recorded = !chart.losses.is_empty();
        let blood = about(&findings, &About::Watch { watch: Watch::BloodLoss });
        prop_assert_eq!(blood.state == FindingState::NotRecorded, !recorded);
        prop_assert!(assess(&chart, None, &now).iter().any(|finding| finding.about == About::Protocol), "no protocol, and it says so");
    }

    #[test]
    fn a_passed_window_stays_passed(entries in entries(), protocol in protocol(), (since_ms, later_ms) in (0..80 * HOUR, 0..80 * HOUR)) {
        // Of several babies that one runs which has waited longest: of births on several clocks that is told by each. What another
        // phone told of a birth stands on a clock of its own.
        let more = |fact: &Fact| matches!(fact, Fact::NewbornEvent { .. } | Fact::PlacentaBorn { .. } | Fact::BirthJoined(_));
        let one_birth = entries.into_iter().filter(|entry| !more(&entry.fact));
        let chart = fold(BIRTH, &opened(Care::Active, one_birth.collect()));
        let at = |since: i64| Stamp { wall_ms: START + since, offset_min: 0, zone: None, boot: Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 + since }) };
        let (early, late) = (assess(&chart, Some(protocol), &at(since_ms)), assess(&chart, Some(protocol), &at(since_ms + later_ms)));
        for window in Watch::WINDOWS.map(|watch| About::Watch { watch }) {
            let of = |findings: &[Finding]| findings.iter().find(|finding| finding.about == window).map(gravity);
            prop_assert!(of(&late) >= of(&early), "{:?}: {:?} then {:?}", window, of(&early), of(&late));
        }
    }

    #[test]
    fn more_blood_never_looks_like_less(entries in entries(), more in loss(), protocol in protocol(), now in stamp()) {
        let blood = About::Watch { watch: Watch::BloodLoss };
        let added = Entry { fact: Fact::BloodLoss(more), amends: None, ..opened(Care::Active, Vec::new()).swap_remove(0) };
        let (one, other) = (fold(BIRTH, &entries), fold(BIRTH, entries.iter().chain([&added])));
        // Which of two phones' corrections is the later one is told by their clocks, and one more entry tells more of those.
        let holds = |chart: &Chart, of| chart.lines.iter().find(|line| line.first.id == of).map(|line| line.current().id);
        prop_assume!(one.lines.iter().all(|line| holds(&other, line.first.id) == Some(line.current().id)));
        let before = about(&assess(&one, Some(protocol), &now), &blood);
        let after = about(&assess(&other, Some(protocol), &now), &blood);
        prop_assert!(gravity(&after) >= gravity(&before), "{:?} then {:?}", before, after);
    }

    #[test]
    fn a_passed_time_stays_passed(
        entries in entries(),
        care in select(vec![Care::Active, Care::Physiological]),
        protocol in protocol(),
        (since_ms, later_ms, set_ms) in (0..2 * HOUR, 0..2 * HOUR, -24 * HOUR..24 * HOUR),
    ) {
        // The wall clock may be set in between; the clock that runs from the birth tells.
        let now = |since: i64, set_ms| {
            let boot = Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 + since });
            Stamp { wall_ms: START + since + set_ms, offset_min: 0, zone: None, boot }
        };
        let chart = fold(BIRTH, &opened(care, entries));
        let stage = |now| about(&assess(&chart, Some(protocol), &now), &About::ThirdStage);
        let (early, late) = (stage(now(since_ms, 0)), stage(now(since_ms + later_ms, set_ms)));
        let measured = chart.third_stage(&now(0, 0)).unwrap().elapsed.certainty == Certainty::Measured;
        prop_assume!(measured);
        prop_assert!(gravity(&late) >= gravity(&early), "{:?} then {:?}", early, late);
    }

    #[test]
    fn a_reminder_comes_nearer_as_time_passes(
        entries in entries(),
        care in select(vec![Care::Active, Care::Physiological]),
        protocol in protocol(),
        (since_ms, later_ms) in (0..2 * HOUR, 0..2 * HOUR),
    ) {
        // The run that runs now is the last one: there is no look at the mother, and no other phone's word of a birth, on another
        // one that comes after it.
        let told = |fact: &Fact| matches!(fact, Fact::MotherObserved(_) | Fact::BirthJoined(_));
        let entries = entries.into_iter().filter(|entry| !told(&entry.fact) || is_of_run(entry, "a"));
        let chart = fold(BIRTH, &opened(care, entries.collect()));
        let at = |since: i64| Stamp { wall_ms: START + since, offset_min: 0, zone: None, boot: Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 + since }) };
        let (early, late) = (due(&chart, Some(protocol), &at(since_ms)), due(&chart, Some(protocol), &at(since_ms + later_ms)));
        prop_assert!(late.is_sorted_by_key(|due| due.in_ms));
        for due in late {
            let before = early.iter().find(|other| other.id == due.id);
            prop_assert!(before.is_some_and(|before| before.in_ms >= due.in_ms), "{} was not coming", due.id);
        }
    }

    #[test]
    fn there_and_back_is_no_distance(entries in entries(), runs in runs()) {
        let chart = fold_with(BIRTH, &entries, &runs);
        for pair in entries.windows(2) {
            let [one, other] = pair else { continue };
            let (there, back) = (chart.elapsed(&one.occurred, &other.occurred), chart.elapsed(&other.occurred, &one.occurred));
            prop_assert_eq!((there.ms.saturating_add(back.ms).abs() <= 1, there.certainty), (true, back.certainty));
        }
    }
}
