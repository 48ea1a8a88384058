//! What the examination of a placenta adds up to: whether all is here, what is unusual, which published figures are passed.

use super::{About, Finding, FindingState, Threshold, gravest, passed_state, plain, threshold};
use crate::chart::Chart;
use crate::entry::EntryId;
use crate::examination::{Asked, Completeness, Examination, Examined, Figure, Unusual, figures};
use crate::fact::{Answer, BabyNo, of_cord};
use crate::message::Message;
use crate::protocol::{Level, Milli, Protocol, Status, Watch};

/// In this order: completeness, then the answers in the order of work, then what was worked out.
pub(super) fn findings(chart: &Chart, protocol: Option<&Protocol>, placenta: BabyNo) -> Vec<Finding> {
    let examined = chart.examined(placenta);
    let mut findings = vec![completeness(examined, protocol, placenta)];
    let place = |asked: &Asked| Examination::standard().items.iter().position(|item| item.id == asked.item);
    let mut given: Vec<_> = examined.given.iter().collect();
    given.sort_by_cached_key(|(asked, _)| (place(asked), asked.cord));
    for (asked, given) in given {
        let unusual = Examination::standard().item(&asked.item).and_then(|item| item.unusual(&given.answer));
        let Some(unusual) = unusual.filter(|_| !is_cord_length(asked)) else { continue };
        findings.push(of_answer(placenta, asked, &given.answer, unusual, given.entry));
    }
    findings.extend(figures(chart, placenta).iter().filter_map(|figure| of_figure(placenta, figure)));
    findings
}

/// Told by its figure, which knows whether a piece is missing.
fn is_cord_length(asked: &Asked) -> bool {
    asked.item == "cord-length"
}

fn of_answer(placenta: BabyNo, asked: &Asked, answer: &Answer, unusual: Unusual, entry: EntryId) -> Finding {
    let what = of_cord(Message::new(format!("exam-{}", asked.item)), asked.cord);
    let message = Message::new("finding-unusual").with("item", what).with("answer", answer.describe(&asked.item));
    Finding {
        level: Some(unusual.level),
        threshold: Some(Threshold { source: unusual.source, status: unusual.status, words: unusual.words }),
        ..plain(
            About::Examination { placenta, item: asked.item.clone(), cord: asked.cord },
            passed_state(unusual.level),
            message,
            vec![entry],
        )
    }
}

/// The farthest threshold that a figure passes; all of them stand beside it in the examination.
fn of_figure(placenta: BabyNo, figure: &Figure) -> Option<Finding> {
    let passed = figure.passed.first()?;
    let level = passed.level?;
    let message =
        Message::new("finding-unusual").with("item", of_cord(figure.name(), figure.cord)).with("answer", figure.value.clone());
    let words = Some(passed.words.clone());
    Some(Finding {
        level: Some(level),
        threshold: Some(Threshold { source: passed.source.clone(), status: passed.status, words }),
        ..plain(
            About::Figure { placenta, figure: figure.figure.clone(), cord: figure.cord },
            passed_state(level),
            message,
            figure.rests_on.clone(),
        )
    })
}

fn completeness(examined: &Examined, protocol: Option<&Protocol>, placenta: BabyNo) -> Finding {
    let about = About::Completeness { placenta };
    match examined.completeness() {
        Completeness::NoDoubtRecorded => {
            let asked = Examination::standard().items.iter().filter(|item| !item.whole.is_empty());
            let asked: Vec<String> = asked.map(|item| item.id.clone()).collect();
            plain(about, FindingState::Within, Message::new("finding-no-doubt"), examined.entries(&asked))
        }
        Completeness::NotRecorded(items) => {
            let count = u32::try_from(items.len()).unwrap_or(u32::MAX);
            let missing = Message::new("finding-completeness-not-recorded").with("count", count);
            plain(about, FindingState::NotRecorded, missing, Vec::new())
        }
        Completeness::Doubt(items) => {
            let first = Message::new(format!("exam-{}", items.first().map_or("", String::as_str)));
            let message = Message::new("finding-doubt").with("item", first);
            let words = in_doubt(items.len(), protocol);
            Finding {
                level: Some(Level::Limit),
                threshold: Some(words),
                ..plain(about, FindingState::Passed, message, examined.entries(&items))
            }
        }
    }
}

/// What the protocol says of so many questions in doubt; where it is silent, what the trade does.
fn in_doubt(count: usize, protocol: Option<&Protocol>) -> Threshold {
    let count = Milli::from(u32::try_from(count).unwrap_or(u32::MAX));
    let said = protocol.and_then(|protocol| {
        let steps = protocol.steps(Watch::Completeness).iter();
        Some(threshold(gravest(steps.filter(|step| step.passed_by(count)))?, protocol))
    });
    said.unwrap_or_else(|| Threshold {
        source: "an incomplete or doubtful placenta may mean tissue left behind".to_owned(),
        status: Status::CommonPractice,
        words: None,
    })
}
