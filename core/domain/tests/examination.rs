//! The examination: completeness, every cut-off just below, at and above, and what is worked out.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;
#[path = "examination/listed.rs"]
mod listed;
#[path = "examination/twins.rs"]
mod twins;
#[path = "examination/weight.rs"]
mod weight;

use common::{MINUTE, Phone, born, chose, examined, pieces, placenta};
use secundine_domain::assess::{About, Finding, FindingState, assess};
use secundine_domain::examination::{Completeness, Examination, Examined, Figure, Kind, Reason, To, figures, reasons};
use secundine_domain::fact::{Answer, BabyNo, Client, Fact, NewbornMeasures, Place, Sex};
use secundine_domain::message::Arg;
use secundine_domain::protocol::{Level, Protocol, Status};
use secundine_domain::quantity::{BirthWeight, Gestation, Length};

/// Source: common practice; lobes that meet when cupped, both membranes, no vessel to a torn edge.
const WHOLE: [(&str, &str); 4] = [("amnion", "whole"), ("chorion", "whole"), ("edge-vessels", "none"), ("lobes", "meet")];

fn at_placenta() -> Phone {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(10 * MINUTE).mark(placenta(&[1]));
    phone
}

fn with(answers: &[(&str, Answer)]) -> Phone {
    let mut phone = at_placenta();
    for (item, answer) in answers {
        phone.pass(MINUTE).mark(examined(item, answer.clone()));
    }
    phone
}

fn choice(option: &str) -> Answer {
    Answer::Choice { option: option.to_owned() }
}

fn measure(value: u32) -> Answer {
    Answer::Measure { value }
}

fn whole_but(item: &str, answer: Option<Answer>) -> Phone {
    let mut phone = at_placenta();
    for (asked, option) in WHOLE.into_iter().filter(|(asked, _)| *asked != item) {
        phone.mark(chose(asked, option));
    }
    answer.map(|answer| phone.mark(examined(item, answer)));
    phone
}

fn completeness(phone: &Phone) -> Completeness {
    phone.chart().examinations.get(&1).unwrap_or(&Examined::default()).completeness()
}

fn figure(phone: &Phone, id: &str) -> Figure {
    figures(&phone.chart(), 1).into_iter().find(|figure| figure.figure == id).unwrap()
}

/// The text that a figure's value shows as `name`, with a decimal point.
fn shown(figure: &Figure, name: &str) -> String {
    text(figure.value.args.get(name))
}

fn text(arg: Option<&Arg>) -> String {
    match arg {
        Some(Arg::Text(text)) => text.clone(),
        Some(Arg::Number(number)) => number.to_string(),
        Some(Arg::Message(found)) if found.id == "decimal" => {
            format!("{}.{}", text(found.args.get("whole")), text(found.args.get("places")))
        }
        other => unreachable!("{other:?}"),
    }
}

mod whole {
    use super::*;

    #[test]
    fn four_questions_tell_whether_all_is_here() {
        let whole = Examination::standard().items.iter().filter(|item| !item.whole.is_empty());
        let mut asked: Vec<&str> = whole.map(|item| item.id.as_str()).collect();
        asked.sort_unstable();
        assert_eq!(asked, WHOLE.map(|(item, _)| item));
        assert_eq!(completeness(&whole_but("", None)), Completeness::NoDoubtRecorded);
        assert!(matches!(completeness(&at_placenta()), Completeness::NotRecorded(items) if items.len() == 4));
    }

    #[test]
    fn membranes_are_two_layers_and_each_is_asked_by_itself() {
        // Common practice: amnion within, chorion without.
        let only = |whole: &str, torn: &str| completeness(&with(&[(whole, choice("whole")), (torn, choice("ragged"))]));
        assert_eq!(only("amnion", "chorion"), Completeness::Doubt(vec!["chorion".to_owned()]));
        assert_eq!(only("chorion", "amnion"), Completeness::Doubt(vec!["amnion".to_owned()]));
    }

    #[test]
    fn any_no_or_unsure_is_doubt_even_when_the_rest_is_missing() {
        for (item, _) in WHOLE {
            let known = Examination::standard().item(item).unwrap();
            let no = known.options.iter().filter(|option| !known.whole.contains(&option.id)).map(|option| choice(&option.id));
            for answer in no.chain([Answer::CouldNotTell]) {
                let doubt = Completeness::Doubt(vec![item.to_owned()]);
                assert_eq!(completeness(&whole_but(item, Some(answer.clone()))), doubt, "{item} {answer:?}");
                assert_eq!(completeness(&with(&[(item, answer.clone())])), doubt, "{item} {answer:?} alone");
            }
            assert_eq!(completeness(&whole_but(item, None)), Completeness::NotRecorded(vec![item.to_owned()]));
        }
    }

    #[test]
    fn a_doubt_is_a_limit_in_the_words_of_the_protocol_in_force() {
        let phone = with(&[("lobes", Answer::CouldNotTell)]);
        let found = |protocol: Option<&Protocol>| -> Finding {
            let findings = assess(&phone.chart(), protocol, &phone.now());
            findings.into_iter().find(|finding| finding.about == About::Completeness { placenta: 1 }).unwrap()
        };
        for protocol in Protocol::published() {
            let found = found(Some(protocol));
            assert_eq!((found.state, found.level), (FindingState::Passed, Some(Level::Limit)));
            let threshold = found.threshold.unwrap();
            assert!(threshold.source.starts_with(&protocol.title), "{}", threshold.source);
            assert_eq!(threshold.status, Status::Memory, "our sheet has it from memory");
            assert!(threshold.words.is_some());
        }
        let mut own = Protocol::published().first().unwrap().clone();
        let watched = own.watch.last_mut().unwrap();
        watched.step.last_mut().unwrap().words = "The hospital is told".to_owned();
        assert_eq!(found(Some(&own)).threshold.unwrap().words.as_deref(), Some("The hospital is told"));
        assert_eq!(found(None).threshold.unwrap().status, Status::CommonPractice, "without a protocol, the trade's");
    }
}

mod cord {
    use super::*;

    /// What a length passes, farthest first: less than 32 (J Fetal Med 2015), 35 (US guideline), 40 (ijcap.org 9906), at most
    /// 38 (Suzuki 2012); more than 70 (both ranges), 80 and 100 (memory), at least 74 (Suzuki 2012).
    fn passed(mm: u32, all: bool) -> usize {
        figure(&with(&[("cord-length", pieces(&[mm], all))]), "cord-length").passed.len()
    }

    #[test]
    fn every_cut_off_of_length_below_at_and_above() {
        for (at, expected) in [
            (319, 4),
            (320, 3),
            (321, 3),
            (349, 3),
            (350, 2),
            (380, 2),
            (381, 1),
            (399, 1),
            (400, 0),
            (700, 0),
            (701, 1),
            (739, 1),
            (740, 2),
            (800, 2),
            (801, 3),
            (1000, 3),
            (1001, 4),
        ] {
            assert_eq!(passed(at, true), expected, "{at} mm");
        }
    }

    #[test]
    fn pieces_are_added_up_and_a_cord_with_one_missing_is_never_called_short() {
        let phone = with(&[("cord-length", pieces(&[310, 130, 100], true))]);
        let whole = figure(&phone, "cord-length");
        assert_eq!((shown(&whole, "value"), whole.inputs.len()), ("54".to_owned(), 3));
        assert_eq!([200, 390].map(|mm| passed(mm, false)), [0, 0]);
        assert_eq!(passed(900, false), 3, "a part may be long");
        let short = |answer: Answer| {
            let phone = with(&[("cord-length", answer)]);
            let findings = assess(&phone.chart(), None, &phone.now());
            let told =
                findings.iter().any(|finding| matches!(&finding.about, About::Figure { figure, .. } if figure == "cord-length"));
            (told, reasons(&phone.chart(), None, 1).iter().any(|reason| reason.reason == "short-cord"))
        };
        assert_eq!(short(pieces(&[200, 100], true)), (true, true));
        assert_eq!(short(pieces(&[200, 100], false)), (false, false));
        assert_eq!(short(measure(300)), (false, false), "nobody said that it is all of it");
    }

    #[test]
    fn coils_for_each_cm_with_the_centiles_of_two_sources() {
        // Sources: Strong 1994 (0.1, 0.3; seen), Ernst 2013 (3 in 10 cm; seen), de Laat 2006 (0.07; memory), a manual (0.4; seen).
        let over_ten = |coils, over| figure(&with(&[("cord-coils", Answer::Coils { coils, over })]), "coiling-index");
        assert_eq!(shown(&over_ten(11, 500), "value"), "0.22");
        let count = |coils, over| over_ten(coils, over).passed.len();
        assert_eq!([count(69, 10_000), count(7, 1_000), count(9, 1_000), count(10, 1_000)], [2, 1, 1, 0]);
        assert_eq!([count(6, 1_000), count(30, 1_000), count(31, 1_000), count(40, 1_000), count(41, 1_000)], [2, 0, 1, 1, 2]);
    }

    #[test]
    fn insertion_by_its_shortest_distance() {
        // Source: marginal within 2 cm of the margin, ijcap.org 9906, seen; central past a quarter of the breadth: our choice.
        let called = |edge, breadth: Option<u32>, seen: &str| {
            let mut answers = vec![("insertion-edge", measure(edge)), ("insertion", choice(seen))];
            answers.extend(breadth.map(|mm| ("disc-breadth", measure(mm))));
            figure(&with(&answers), "insertion").value.id
        };
        assert_eq!(called(19, Some(180), "eccentric"), "figure-insertion-marginal");
        assert_eq!(called(20, Some(180), "eccentric"), "exam-insertion-eccentric");
        assert_eq!(called(45, Some(180), "eccentric"), "exam-insertion-eccentric");
        assert_eq!(called(46, Some(180), "eccentric"), "exam-insertion-central");
        assert_eq!(called(46, None, "eccentric"), "figure-insertion-inside");
        assert_eq!(
            called(46, Some(180), "velamentous"),
            "exam-insertion-velamentous",
            "a way in the membranes is no way to the edge"
        );
        let edge = |mm| figure(&with(&[("insertion-edge", measure(mm))]), "insertion").passed.len();
        assert_eq!([edge(19), edge(20), edge(21)], [1, 0, 0]);
    }

    #[test]
    fn centrality_is_the_way_from_the_middle_in_halves_of_the_length() {
        // Pathak 2010, definition from memory: 0 in the middle, 1 at the edge.
        let at = |x, y| {
            let place = Answer::Places { places: vec![Place { x, y, size: None }] };
            let phone = with(&[("insertion-place", place), ("disc-length", measure(200)), ("disc-breadth", measure(160))]);
            shown(&figure(&phone, "centrality"), "value")
        };
        assert_eq!([at(0, 0), at(1_000, 0), at(0, 1_000), at(300, 500)], ["0.00", "1.00", "0.80", "0.50"]);
    }

    #[test]
    fn about_as_long_as_its_baby() {
        // Common practice.
        let mut phone = with(&[("cord-length", pieces(&[520], true))]);
        phone.mark(measured(1, None, Some(500), None));
        let found = figure(&phone, "cord-to-baby");
        assert_eq!(shown(&found, "value"), "1.04");
        assert_eq!(found.published.iter().map(|beside| beside.status).collect::<Vec<_>>(), [Status::CommonPractice]);
    }
}

fn measured(baby: BabyNo, grams: Option<i64>, mm: Option<i64>, sex: Option<Sex>) -> Fact {
    Fact::NewbornMeasured(NewbornMeasures {
        weight: grams.map(|grams| BirthWeight::new(grams).unwrap()),
        length: mm.map(|mm| Length::new(mm).unwrap()),
        sex,
        ..NewbornMeasures::nothing(baby)
    })
}

fn gestation(days: i64) -> Fact {
    Fact::ClientRecorded(Client { gestation: Gestation::new(days).ok(), ..Client::default() })
}

mod disc {
    use super::*;

    #[test]
    fn area_and_roundness_of_the_disc() {
        // pi/4 x 20 x 18 = 282.7 cm2; about 20 cm across: common practice.
        let phone = with(&[("disc-length", measure(200)), ("disc-breadth", measure(180))]);
        assert_eq!(shown(&figure(&phone, "disc-area"), "value"), "283");
        let round = figure(&phone, "roundness");
        assert_eq!((shown(&round, "value"), shown(&round, "eccentricity")), ("0.90".to_owned(), "0.44".to_owned()));
        let turned = with(&[("disc-length", measure(180)), ("disc-breadth", measure(200))]);
        assert_eq!(shown(&figure(&turned, "roundness"), "value"), "0.90", "the longer of the two is the length");
        let half = figure(&with(&[("disc-length", measure(200))]), "disc-area");
        assert!(!half.known && half.value.id == "figure-needs");
    }

    #[test]
    fn thickness_infarcts_and_clots_at_their_cut_offs() {
        // Sources: Yetter 1998 (2 and 4 cm); pathologyoutlines.com (infarct over 3 cm, over 30 %; clot over half); memory (5 %).
        let level =
            |id: &str, value| Examination::standard().item(id).unwrap().unusual(&measure(value)).map(|unusual| unusual.level);
        let (note, caution) = (Some(Level::Note), Some(Level::Caution));
        assert_eq!([19, 20, 40, 41].map(|mm| level("disc-thickness", mm)), [note, None, None, note]);
        assert_eq!([29, 30, 31].map(|mm| level("firm-size", mm)), [None, None, caution]);
        assert_eq!([5, 6, 30, 31].map(|share| level("firm-share", share)), [None, note, note, caution]);
        assert_eq!([49, 50, 51].map(|share| level("clot-share", share)), [None, None, caution]);
        assert_eq!([7, 8, 20, 21].map(|mm| level("cord-thickness", mm)), [note, None, None, note]);
    }

    #[test]
    fn firm_areas_as_drawn_are_a_share_of_the_disc() {
        let places = [40, 60].map(|mm| Place { x: 0, y: 0, size: Some(mm) }).to_vec();
        let firm = ("firm-places", Answer::Places { places });
        let phone = with(&[firm.clone(), ("disc-length", measure(200)), ("disc-breadth", measure(200))]);
        // (4² + 6²) / 20² = 13 %
        let share = figure(&phone, "firm-share");
        assert_eq!((shown(&share, "value"), share.passed.len()), ("13".to_owned(), 1));
        assert!(!figure(&with(&[firm]), "firm-share").known);
    }

    #[test]
    fn specks_of_calcium_and_false_knots_are_told_to_nobody() {
        // Common practice: specks that feel gritty on the maternal side are of no consequence.
        let gritty = Answer::Choices { options: ["gritty".to_owned()].into() };
        let phone = with(&[("maternal-surface", gritty), ("calcium", choice("many")), ("knots", choice("false"))]);
        assert_eq!(reasons(&phone.chart(), None, 1), []);
        let level = assess(&phone.chart(), None, &phone.now()).iter().filter_map(|finding| finding.level).count();
        assert_eq!(level, 0);
    }

    #[test]
    fn three_vessels_are_usual_and_any_other_number_is_not() {
        // Common practice: two arteries and the larger vein.
        let vessels = Examination::standard().item("vessels").unwrap();
        assert_eq!(["three", "two", "other"].map(|option| vessels.unusual(&choice(option)).is_some()), [false, true, true]);
    }

    #[test]
    fn the_lobes_are_never_counted() {
        // Common practice: cupped, the lobes meet; their number tells nothing.
        let items = &Examination::standard().items;
        assert!(items.iter().all(|item| item.id != "lobes" || item.kind == Kind::Choice));
        assert_eq!(items.iter().filter(|item| item.id.contains("lobes") || item.id.contains("cotyledon")).count(), 1);
    }
}

#[test]
fn every_shipped_number_says_where_it_comes_from() {
    let mut numbers = 0;
    for item in &Examination::standard().items {
        for step in &item.steps {
            assert!(!step.source.trim().is_empty() && !step.words.trim().is_empty(), "{}", item.id);
            numbers += 1;
        }
        for option in item.options.iter().filter(|option| option.level.is_some()) {
            assert!(
                option.source.as_ref().is_some_and(|source| !source.trim().is_empty()) && option.status.is_some(),
                "{}",
                item.id
            );
        }
    }
    assert!(numbers > 15, "{numbers}");
    // What stands in the program beside a constant is told beside the figure.
    let phone = with(&[("weight", measure(500)), ("weighed-as", choice("untrimmed"))]);
    let beside = figure(&phone, "weight").published;
    assert!(beside.iter().any(|beside| beside.words.contains("545 ± 107 g") && beside.source.contains("16377060")));
}
