//! A page for the parents: the birth in plain words, and the placenta as a tree. What is not recorded is left out, and nothing
//! stands here that is for judging: no score, no blood, no finding.

use secundine_domain::chart::{Baby, Chart, Mark};
use secundine_domain::fact::{NewbornEvent, Sex};
use secundine_domain::message::{Arg, Message};
use secundine_domain::time::{Occurred, Precision, date_words};

use super::keepsake::{keepsake, ornament};
use crate::document::{Origin, made, written};
use crate::page::{Block, Document, Manner, PageError, Pdf, Span};
use crate::words::Words;

/// Longest name, in characters: what is longer is cut, so that all stays on one page.
const NAME: usize = 80;

/// The page as a PDF file.
///
/// # Errors
/// [`PageError`] when the file cannot be made.
pub fn parents_pdf(chart: &Chart, origin: &Origin) -> Result<Pdf, PageError> {
    written(&parents_document(chart, origin), origin.words)
}

/// The same as a document.
#[must_use]
pub fn parents_document(chart: &Chart, origin: &Origin) -> Document {
    let words = origin.words;
    let first = chart.first_birth();
    let title = first.map(|mark| words.say(&Message::new("parents-born-on").with("date", long_date(&mark.at.date()))));
    let mut blocks = Vec::new();
    let name = chart.client.as_ref().map(|client| client.name.as_str());
    blocks.extend(name.and_then(brief).map(Block::Subheading));
    blocks.extend([Block::Gap(8.0), Block::Drawing(ornament())]);
    let several = chart.babies.len() > 1;
    for (no, baby) in chart.babies.iter() {
        let (lines, sized) = of_baby(chart, words, baby);
        if lines.is_empty() {
            continue;
        }
        blocks.push(Block::Gap(10.0));
        if several {
            blocks.push(Block::Subheading(words.say(&Message::new("parents-baby").with("baby", *no))));
        }
        // Of several, what happened runs on, so that there is room for all.
        let happened = lines.get(lines.len().min(sized)..).unwrap_or_default().join(if several { " · " } else { "\n" });
        let lines: Vec<&str> = lines.iter().take(sized).map(String::as_str).chain(Some(happened.as_str())).collect();
        blocks.push(Block::Paragraph(vec![Span::plain(lines.join("\n"))]));
    }
    if let Some(drawing) = keepsake(chart, words) {
        let caption = Span::plain(words.plain("parents-drawing")).small();
        blocks.extend([Block::Gap(12.0), Block::Drawing(drawing), Block::Paragraph(vec![caption])]);
    }
    let placentas = placentas(chart, words);
    if !placentas.is_empty() {
        blocks.extend([Block::Gap(10.0), Block::Paragraph(vec![Span::plain(placentas.join("\n"))])]);
    }
    Document {
        title: title.unwrap_or_else(|| words.plain("parents-title")),
        language: words.language().to_owned(),
        made: made(origin.written),
        label: String::new(),
        banner: chart.rehearsal.then(|| words.plain("record-rehearsal")),
        footer: footer(origin),
        blocks,
        manner: Manner::Keepsake,
    }
}

/// Who wrote it down, and that the translation is a draft.
fn footer(origin: &Origin) -> String {
    let described = origin.practice;
    let who = [&described.practitioner, &described.role, &described.name].into_iter().filter_map(|text| brief(text));
    let who = who.collect::<Vec<_>>().join(", ");
    let from = (!who.is_empty()).then(|| origin.words.say(&Message::new("parents-from").with("who", who)));
    [from, origin.words.draft()].into_iter().flatten().collect::<Vec<_>>().join(" ")
}

/// Born and its size; then, from so many lines on, laid skin to skin, its cord, fed.
fn of_baby(chart: &Chart, words: &Words, baby: &Baby) -> (Vec<String>, usize) {
    let sex = match baby.measures.iter().rev().find_map(|look| look.what.sex) {
        Some(Sex::Female) => "female",
        Some(Sex::Male) => "male",
        Some(Sex::Unclear) | None => "untold",
    };
    let mut lines: Vec<String> = Vec::new();
    lines.extend(line(chart, words, "parents-born", baby.born.as_ref(), Some(("sex", sex.into()))));
    lines.extend(size(words, baby));
    let sized = lines.len();
    let event = |event: NewbornEvent| baby.events.iter().find(|noted| noted.what == event).map(|noted| &noted.mark);
    for (id, mark) in [
        ("parents-skin", event(NewbornEvent::SkinToSkin)),
        ("parents-pulsed", baby.pulsation_stopped.as_ref()),
        ("parents-cut", baby.cut.as_ref()),
        ("parents-fed", event(NewbornEvent::FirstFeed)),
    ] {
        lines.extend(line(chart, words, id, mark, None));
    }
    (lines, sized)
}

/// Weight, length and head, each as measured last.
fn size(words: &Words, baby: &Baby) -> Option<String> {
    let looks = || baby.measures.iter().rev();
    let weight = looks().find_map(|look| look.what.weight).map(|grams| Message::new("measure-g").with("value", grams.get()));
    let centimetres = |mm: u32| Message::new("measure-cm").with("value", f64::from(mm) / 10.0);
    let length = looks()
        .find_map(|look| look.what.length)
        .map(|length| Message::new("parents-length").with("length", centimetres(length.get())));
    let head =
        looks().find_map(|look| look.what.head).map(|head| Message::new("parents-head").with("length", centimetres(head.get())));
    let said: Vec<String> = [weight, length, head].into_iter().flatten().map(|said| words.say(&said)).collect();
    (!said.is_empty()).then(|| said.join(" · "))
}

/// Each placenta that was born; of several, in their order.
fn placentas(chart: &Chart, words: &Words) -> Vec<String> {
    let born: Vec<&Mark> = chart.placentas.values().filter_map(|placenta| placenta.born.as_ref()).collect();
    let several = born.len() > 1;
    let numbered = born.iter().enumerate();
    let id = if several { "parents-placenta-of" } else { "parents-placenta" };
    let number = |n: usize| Arg::Number(f64::from(u32::try_from(n + 1).unwrap_or(u32::MAX)));
    numbered.filter_map(|(n, mark)| line(chart, words, id, Some(mark), Some(("number", number(n))))).collect()
}

/// A moment in a sentence; nothing where it is not recorded.
fn line(chart: &Chart, words: &Words, id: &str, mark: Option<&Mark>, with: Option<(&str, Arg)>) -> Option<String> {
    let at = &mark?.at;
    let clock = at.clock().chars().take(5).collect::<String>();
    let mut when = Message::new("parents-at").with("clock", clock);
    if matches!(at, Occurred::Typed { precision: Precision::Estimated, .. }) {
        when.id = "parents-about".to_owned();
    }
    if chart.first_birth().is_some_and(|first| first.at.date() != at.date()) {
        when = Message::new("parents-later-day").with("time", when).with("date", long_date(&at.date()));
    }
    let said = Message::new(id).with("when", when);
    Some(words.say(&with.into_iter().fold(said, |said, (name, value)| said.with(name, value))))
}

/// A date with the whole name of its month; as it stands where it is none.
fn long_date(date: &str) -> Message {
    match date_words(date) {
        Message { id, args } if id == "date" => Message { id: "parents-date".to_owned(), args },
        other => other,
    }
}

/// A name on one line, cut where it is very long; none where it is blank.
fn brief(text: &str) -> Option<String> {
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let cut = text.chars().count() > NAME;
    let short: String = text.chars().take(NAME).collect();
    (!short.is_empty()).then(|| if cut { format!("{short}…") } else { short })
}
