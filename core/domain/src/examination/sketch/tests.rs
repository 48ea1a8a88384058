//! Laws of the drawing.

use std::fmt::Write as _;

use proptest::prelude::*;

use super::*;
use crate::chart::{Chart, Placenta};
use crate::entry::{DeviceId, EntryId};
use crate::examination::{Asked, Given};
use crate::fact::Answer;
use crate::time::{Occurred, Stamp};

type Told<'a> = (&'a str, Option<BabyNo>, Answer);

/// A chart with nothing but one placenta of these babies, and these answers.
fn chart(babies: &[BabyNo], told: &[Told]) -> Chart {
    let mut chart = Chart::default();
    chart.placentas.insert(1, Placenta { babies: babies.to_vec(), born: None, membranes: None });
    let at = Occurred::Marked(Stamp { wall_ms: 0, offset_min: 0, zone: None, boot: None });
    let examined = chart.examinations.entry(1).or_default();
    for (item, cord, answer) in told {
        let given = Given { answer: answer.clone(), entry: EntryId { device: DeviceId([1; 16]), n: 1 }, at: at.clone() };
        examined.given.insert(Asked::cord(*item, *cord), given);
    }
    chart
}

fn drawn(told: &[Told]) -> Sketch {
    sketch(&chart(&[1], told), 1)
}

fn mm(item: &'static str, value: u32) -> Told<'static> {
    (item, None, Answer::Measure { value })
}

fn is(item: &'static str, option: &str) -> Told<'static> {
    (item, None, Answer::Choice { option: option.to_owned() })
}

fn put(item: &'static str, places: &[(i32, i32, Option<u32>)]) -> Told<'static> {
    let places = places.iter().map(|(x, y, size)| Place { x: *x, y: *y, size: *size }).collect();
    (item, None, Answer::Places { places })
}

fn of(cord: BabyNo, (item, _, answer): Told<'static>) -> Told<'static> {
    (item, Some(cord), answer)
}

fn every(side: &Side, what: What) -> Vec<&Trace> {
    side.traces.iter().filter(|trace| trace.what == what).collect()
}

fn ends(traces: &[&Trace]) -> Vec<(f64, f64)> {
    traces.iter().flat_map(|trace| &trace.steps).filter_map(|step| step.end()).collect()
}

fn extent(points: &[(f64, f64)]) -> (f64, f64) {
    let span = |values: Vec<f64>| {
        values.iter().copied().fold(f64::NEG_INFINITY, f64::max) - values.iter().copied().fold(f64::INFINITY, f64::min)
    };
    (span(points.iter().map(|point| point.0).collect()), span(points.iter().map(|point| point.1).collect()))
}

fn middle(trace: &Trace) -> Point {
    let ends: Vec<(f64, f64)> = trace.steps.iter().skip(1).filter_map(|step| step.end()).collect();
    let count = f64::from(u32::try_from(ends.len()).unwrap());
    Point::new(ends.iter().map(|end| end.0).sum::<f64>() / count, ends.iter().map(|end| end.1).sum::<f64>() / count)
}

fn disc() -> Vec<Told<'static>> {
    vec![mm("disc-length", 190), mm("disc-breadth", 150)]
}

#[test]
fn the_outline_is_as_long_and_as_broad_as_it_was_measured() {
    for shape in ["round", "two-lobes", "thin-spread", "extra-lobe"] {
        for (length, breadth) in [(190, 150), (150, 190), (200, 200), (400, 60)] {
            let sketch = drawn(&[is("shape", shape), mm("disc-length", length), mm("disc-breadth", breadth)]);
            for side in [&sketch.fetal, &sketch.maternal] {
                let (wide, high) = extent(&ends(&every(side, What::Outline)));
                assert!((wide - f64::from(length)).abs() < 1.0, "{shape}: {wide} for {length}");
                assert!((high - f64::from(breadth)).abs() < 1.0, "{shape}: {high} for {breadth}");
            }
            assert!(sketch.measured);
        }
    }
}

#[test]
fn what_is_not_measured_is_dashed_and_said() {
    let named = |sketch: &Sketch| sketch.notes.iter().any(|note| note.id == "sketch-unmeasured");
    for told in [vec![], vec![mm("disc-length", 190)], vec![mm("disc-breadth", 150)]] {
        let sketch = drawn(&told);
        assert!(every(&sketch.fetal, What::Outline).iter().all(|trace| trace.dashed), "{told:?}");
        assert!(!sketch.measured && named(&sketch) && every(&sketch.fetal, What::Scale).is_empty());
    }
    let sketch = drawn(&disc());
    assert!(every(&sketch.fetal, What::Outline).iter().all(|trace| !trace.dashed));
    assert!(!named(&sketch) && every(&sketch.fetal, What::Scale).len() == 1);
    let nothing_known = drawn(&disc());
    for what in [What::Insertion, What::Cord, What::Vessel, What::Gap, What::Clot, What::Tear] {
        assert!(every(&nothing_known.fetal, what).is_empty(), "{what:?} was never recorded");
    }
}

#[test]
fn a_cord_goes_in_at_its_distance_from_the_edge() {
    let edge = Edge::new(95.0, 75.0, false);
    for distance in [0, 5, 19, 20, 40, 60, 75] {
        for named in ["eccentric", "velamentous"] {
            let mut told = disc();
            told.extend([is("insertion", named), mm("insertion-edge", distance)]);
            let sketch = drawn(&told);
            let at = middle(every(&sketch.fetal, What::Insertion)[0]);
            assert!((edge.away(at) - f64::from(distance)).abs() < 0.5, "{named} {distance}: {}", edge.away(at));
            // At the edge itself rounding decides, and nothing is drawn otherwise for it.
            assert!(distance == 0 || edge.contains(at) == (named == "eccentric"), "{named} {distance}");
            let bare = if named == "velamentous" && distance > 0 { 3 } else { 0 };
            assert_eq!(every(&sketch.fetal, What::BareVessel).len(), bare, "{named} {distance}");
            let unplaced = sketch.notes.iter().any(|note| note.id == "sketch-unplaced");
            assert!(unplaced, "on which side is not known");
            assert!(every(&sketch.fetal, What::Insertion)[0].dashed);
        }
    }
    let mut told = disc();
    told.extend([mm("insertion-edge", 10), put("insertion-place", &[(500, -400, None)])]);
    let at = middle(every(&drawn(&told).fetal, What::Insertion)[0]);
    assert!(at.to(Point::new(47.5, -30.0)) < 0.1, "a point that was set is where it lies: {at:?}");
}

#[test]
fn a_velamentous_cord_has_bare_vessels_and_a_central_one_has_none() {
    let with = |named: &str| {
        let mut told = disc();
        told.push(is("insertion", named));
        every(&drawn(&told).fetal, What::BareVessel).len()
    };
    assert_eq!((with("velamentous"), with("furcate"), with("central"), with("marginal")), (3, 3, 0, 0));
}

#[test]
fn a_ring_goes_round_its_share_of_the_rim() {
    let whole = |percent: u32, kind: &str| {
        let mut told = disc();
        told.extend([is("rim", kind), mm("rim-share", percent)]);
        let sketch = drawn(&told);
        let traces = every(&sketch.fetal, What::Rim);
        let ends = ends(&[traces[0]]);
        // As seen from the middle, in steps of the ellipse's own angle.
        let turn = |point: &(f64, f64)| (point.1 / 75.0).atan2(point.0 / 95.0);
        let turned: f64 = ends.windows(2).map(|pair| edge::between(turn(&pair[0]), turn(&pair[1]))).sum();
        (turned / std::f64::consts::TAU * 100.0, traces.len(), traces[0].dashed)
    };
    for percent in [1, 25, 50, 75, 100] {
        let (share, lines, dashed) = whole(percent, "flat");
        assert!((share - f64::from(percent)).abs() < 2.0, "{share} for {percent}");
        assert_eq!((lines, dashed), (1, percent < 100), "where a part of the way begins is not known");
        assert_eq!(whole(percent, "folded").1, 3, "two lines and their ticks");
    }
}

#[test]
fn the_maternal_side_is_mirrored() {
    let mut told = disc();
    told.extend([is("maternal-surface", "firm-areas"), put("firm-places", &[(600, 200, Some(20))])]);
    let sketch = drawn(&told);
    let spot = every(&sketch.maternal, What::FirmArea)[0];
    assert!(middle(spot).to(Point::new(-57.0, 15.0)) < 0.1, "{:?}", middle(spot));
    let (wide, high) = extent(&ends(&[spot]));
    assert!((wide - 20.0).abs() < 0.1 && (high - 20.0).abs() < 0.1 && !spot.dashed);
    let (fetal, maternal) = (sketch.fetal.view, sketch.maternal.view);
    assert_eq!((fetal.width, fetal.height, fetal.y), (maternal.width, maternal.height, maternal.y));
    assert!((fetal.x + fetal.width + maternal.x).abs() < 0.05);
}

#[test]
fn an_extra_lobe_lies_at_its_distance_with_its_width() {
    let mut told = disc();
    told.extend([is("shape", "extra-lobe"), mm("extra-lobe-size", 40), mm("extra-lobe-gap", 25)]);
    told.push(put("extra-lobe-place", &[(1400, 900, None)]));
    let sketch = drawn(&told);
    let lobe = every(&sketch.fetal, What::ExtraLobe)[0];
    let away = Edge::new(95.0, 75.0, false).away(middle(lobe));
    assert!((away - 45.0).abs() < 0.5 && (extent(&ends(&[lobe])).0 - 40.0).abs() < 0.2 && !lobe.dashed, "{away}");
    assert_eq!(every(&sketch.fetal, What::BareVessel).len(), 2, "vessels join it");
    told.push(is("edge-vessels", "torn-end"));
    let torn = drawn(&told);
    assert_eq!((every(&torn.fetal, What::BareVessel).len(), every(&torn.fetal, What::TornVessel).len()), (0, 4));
}

#[test]
fn a_tear_lies_at_its_distance() {
    let mut told = disc();
    told.extend([mm("tear-edge", 70), put("tear-place", &[(-1000, 0, None)])]);
    let tear = drawn(&told);
    let at = middle(every(&tear.fetal, What::Tear)[0]);
    assert!(at.to(Point::new(-165.0, 0.0)) < 2.0, "{at:?}");
    assert!(!every(&tear.fetal, What::Tear)[0].dashed);
    told.pop();
    assert!(every(&drawn(&told).fetal, What::Tear)[0].dashed, "on which side is not known");
}

#[test]
fn a_clot_is_as_large_as_its_share() {
    let mut told = disc();
    told.extend([is("maternal-clot", "adherent"), mm("clot-share", 25), put("clot-place", &[(0, 0, None)])]);
    let sketch = drawn(&told);
    let (wide, _) = extent(&ends(&every(&sketch.maternal, What::Clot)));
    // A quarter of the disc: half the geometric mean of its sides.
    assert!((wide - (190.0_f64 * 150.0).sqrt() / 2.0).abs() < 0.5, "{wide}");
}

#[test]
fn each_cord_of_a_fused_disc_bears_as_many_clamps_as_its_baby_has_for_a_number() {
    let sketch = sketch(&chart(&[1, 2], &twins()), 1);
    assert_eq!(every(&sketch.fetal, What::Cord).len(), 2);
    assert_eq!(every(&sketch.fetal, What::Clamp).len(), 3);
    assert!(every(&drawn(&whole()).fetal, What::Clamp).is_empty(), "a single cord needs none");
}

/// A whole round one, everything measured.
fn whole() -> Vec<Told<'static>> {
    let mut told = vec![mm("disc-length", 190), mm("disc-breadth", 175), is("shape", "round"), is("fetal-vessels", "to-edge")];
    told.extend([is("insertion", "eccentric"), mm("insertion-edge", 50), put("insertion-place", &[(250, -330, None)])]);
    told.extend([is("amnion", "whole"), is("chorion", "whole"), mm("tear-edge", 90), put("tear-place", &[(-700, 900, None)])]);
    told.extend([mm("cord-thickness", 13), is("lobes", "meet"), is("rim", "plain")]);
    told
}

/// Twins on one disc, one cord in the membranes.
fn twins() -> Vec<Told<'static>> {
    let mut told = vec![mm("disc-length", 260), mm("disc-breadth", 180), is("shape", "round"), is("amnion", "whole")];
    told.extend([of(1, is("insertion", "central")), of(1, put("insertion-place", &[(-500, 0, None)]))]);
    told.extend([of(2, is("insertion", "velamentous")), of(2, put("insertion-place", &[(1250, 200, None)]))]);
    told.extend([of(1, mm("cord-thickness", 14)), of(2, mm("cord-thickness", 9))]);
    told
}

/// Nearly everything at once, and not all of it measured.
fn bad_night() -> Vec<Told<'static>> {
    let mut told = vec![mm("disc-length", 180), mm("disc-breadth", 150), is("shape", "extra-lobe"), mm("extra-lobe-size", 45)];
    told.extend([put("extra-lobe-place", &[(1200, -700, None)]), is("insertion", "marginal"), mm("insertion-edge", 8)]);
    told.extend([is("edge-vessels", "torn-end"), is("amnion", "ragged"), is("chorion", "missing"), mm("tear-edge", 30)]);
    told.extend([
        is("rim", "folded"),
        mm("rim-share", 60),
        is("fetal-marks", "plaque"),
        put("lump-places", &[(-300, 300, Some(25))]),
    ]);
    told.extend([is("maternal-clot", "adherent"), mm("clot-share", 12), put("clot-place", &[(-300, -250, None)])]);
    told.extend([is("lobes", "torn"), put("gap-place", &[(750, 600, None)]), is("maternal-surface", "firm-areas")]);
    told.push(put("firm-places", &[(200, 100, Some(30)), (-500, 500, Some(12)), (300, -600, None)]));
    told
}

/// As text that a person can read: a line for each shape, its box and its note.
fn readable(sketch: &Sketch) -> String {
    let mut text = String::new();
    for (name, side) in [("fetal", &sketch.fetal), ("maternal", &sketch.maternal)] {
        let ViewBox { x, y, width, height } = side.view;
        writeln!(text, "{name} side, {width:.0} x {height:.0} from {x:.0}, {y:.0}").unwrap();
        for trace in &side.traces {
            let ends = ends(&[trace]);
            let (wide, high) = extent(&ends);
            let at = (ends[0].0, ends[0].1);
            let dashed = if trace.dashed { ", dashed" } else { "" };
            let (what, fill) = (trace.what, trace.fill);
            writeln!(text, "  {what:?} {wide:.0} x {high:.0} from {:.0}, {:.0}, {fill:?}{dashed}", at.0, at.1).unwrap();
        }
        let words: Vec<String> = side.words.iter().map(said_shortly).collect();
        writeln!(text, "  words: {}", words.join("; ")).unwrap();
    }
    for note in &sketch.notes {
        writeln!(text, "{}", said_shortly(note)).unwrap();
    }
    text
}

fn said_shortly(message: &Message) -> String {
    let args = message.args.values().map(|arg| match arg {
        crate::message::Arg::Number(number) => number.to_string(),
        crate::message::Arg::Text(text) => text.clone(),
        crate::message::Arg::Message(message) => said_shortly(message),
    });
    let args: Vec<String> = args.collect();
    if args.is_empty() { message.id.clone() } else { format!("{}({})", message.id, args.join(", ")) }
}

#[test]
fn three_placentas() {
    insta::assert_snapshot!("whole", readable(&drawn(&whole())));
    insta::assert_snapshot!("twins", readable(&sketch(&chart(&[1, 2], &twins()), 1)));
    insta::assert_snapshot!("bad_night", readable(&drawn(&bad_night())));
}

/// An answer that its item takes, or any other.
fn answer() -> impl Strategy<Value = (String, Option<BabyNo>, Answer)> {
    let items = &Examination::standard().items;
    let place =
        (any::<i32>(), -3_500..3_500_i32, proptest::option::of(any::<u32>())).prop_map(|(x, y, size)| Place { x, y, size });
    let places = proptest::collection::vec(place, 0..5);
    let measures = prop_oneof![any::<u32>(), 0..600_u32];
    let parts = (0..items.len(), 0..8_usize, measures, places, proptest::option::of(0..4_u8), 0..10_u8);
    parts.prop_map(move |(at, option, value, places, cord, odd)| {
        let item = &items[at];
        let own = match item.options.get(option % item.options.len().max(1)) {
            Some(choice) => Answer::Choice { option: choice.id.clone() },
            None if item.kind == crate::examination::Kind::Places => Answer::Places { places: places.clone() },
            None => Answer::Measure { value },
        };
        let other = if odd == 0 { Answer::Places { places } } else { own };
        (item.id.clone(), cord, other)
    })
}

proptest! {
    #[test]
    fn any_answers_are_drawn_with_finite_numbers_inside_the_view(
        told in proptest::collection::vec(answer(), 0..40),
        babies in proptest::sample::select(vec![vec![1], vec![1, 2], vec![], vec![1, 2, 3, 4, 200]]),
    ) {
        let told: Vec<Told> = told.iter().map(|(item, cord, answer)| (item.as_str(), *cord, answer.clone())).collect();
        let sketch = sketch(&chart(&babies, &told), 1);
        for side in [&sketch.fetal, &sketch.maternal] {
            let ViewBox { x, y, width, height } = side.view;
            prop_assert!([x, y, width, height].iter().all(|number| number.is_finite()) && width > 0.0 && height > 0.0);
            prop_assert!(width < 5_000.0 && height < 5_000.0);
            for trace in &side.traces {
                prop_assert!(!trace.steps.is_empty());
                for step in &trace.steps {
                    let mut finite = true;
                    let _ = step.each(|x, y| { finite &= x.is_finite() && y.is_finite(); (x, y) });
                    prop_assert!(finite, "{:?}", trace.what);
                    if let Some((px, py)) = step.end() {
                        prop_assert!(px >= x - 0.1 && px <= x + width + 0.1 && py >= y - 0.1 && py <= y + height + 0.1);
                    }
                }
            }
        }
        prop_assert!(serde_json::to_string(&sketch).is_ok());
    }
}
