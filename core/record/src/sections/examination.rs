//! The examination of each placenta: its drawing, what was found, what was worked out, what published lists say.

use std::collections::BTreeSet;

use secundine_domain::assess::Threshold;
use secundine_domain::examination::{Beside, Figure, Kind, Reason, Side, To, asked, figures, reasons, sketch};
use secundine_domain::fact::{BabyNo, of_cord};
use secundine_domain::message::{Arg, Message};
use secundine_domain::protocol::Status;

use super::{Pair, sourced};
use crate::document::Source;
use crate::page::{Block, Picture, Span};

/// Each placenta that was born or looked at.
pub(crate) fn examinations(source: &Source) -> Vec<Block> {
    let placentas = source.chart.placentas.keys().chain(source.chart.examinations.keys());
    let placentas: BTreeSet<BabyNo> = placentas.copied().collect();
    placentas.into_iter().flat_map(|placenta| examination(source, placenta)).collect()
}

fn examination(source: &Source, placenta: BabyNo) -> Vec<Block> {
    let words = source.words;
    let of = u32::try_from(source.chart.placentas.len()).unwrap_or(1);
    let heading = Message::new("record-examination").with("of", of).with("placenta", Arg::from(placenta));
    let mut blocks = vec![Block::Heading(words.say(&heading))];
    if !source.chart.examinations.contains_key(&placenta) {
        blocks.push(Block::Paragraph(vec![Span::plain(words.plain("record-no-examination"))]));
        return blocks;
    }
    blocks.extend(drawing(source, placenta));
    blocks.extend(answers(source, placenta));
    blocks.extend(worked_out(source, placenta));
    blocks.extend(reasons_given(source, placenta));
    blocks
}

/// Both sides beside each other, and below them what of the drawing is guessed or hinted.
pub(crate) fn drawing(source: &Source, placenta: BabyNo) -> Vec<Block> {
    let words = source.words;
    let sketch = sketch(source.chart, placenta);
    let picture = |side: Side, id: &str| {
        let name = words.plain(id);
        let said: Vec<String> = side.words.iter().map(|said| words.say(said)).collect();
        let alt = words.say(&Message::new("sketch-alt").with("side", name.as_str()).with("said", said.join("; ")));
        let caption = if sketch.measured { words.say(&Message::new("sketch-bar").with("side", name)) } else { name };
        Picture { side, caption, alt }
    };
    let notes: Vec<String> = sketch.notes.iter().map(|note| words.say(note)).collect();
    let pictures = vec![picture(sketch.fetal.clone(), "sketch-fetal"), picture(sketch.maternal.clone(), "sketch-maternal")];
    vec![Block::Pictures(pictures), Block::Paragraph(vec![Span::plain(notes.join(" ")).small()])]
}

/// What was found, cord by cord, in bold where a finding speaks of it; then the names of what was asked and not answered.
pub(crate) fn answers(source: &Source, placenta: BabyNo) -> Vec<Block> {
    let Source { chart, words, .. } = source;
    let examined = chart.examined(placenta);
    let mut found: Vec<Pair> = Vec::new();
    let mut open: Vec<String> = Vec::new();
    for (item, cord) in asked(examined, &chart.fed(placenta), &[]) {
        let name = words.say(&of_cord(item.name(), cord));
        match examined.at(&item.id, cord) {
            Some(given) => {
                let answer = Span::plain(words.say(&given.answer.describe(&item.id)));
                found.push((name, vec![Span { bold: is_told(source, placenta, &item.id, cord), ..answer }]));
            }
            // What is set on the drawing is asked of nobody.
            None if item.kind == Kind::Places => {}
            None => open.push(name),
        }
    }
    let mut blocks = vec![Block::ShortFacts(found)];
    if !open.is_empty() {
        blocks.push(Block::Facts(vec![(words.plain("record-exam-open"), vec![Span::plain(open.join("; "))])]));
    }
    blocks
}

/// Whether a finding speaks of this answer.
fn is_told(source: &Source, placenta: BabyNo, item: &str, cord: Option<BabyNo>) -> bool {
    source.findings.iter().any(|finding| finding.about.is_of_answer(placenta, item, cord))
}

/// Each figure that could be worked out, with the published values that it passes.
pub(crate) fn worked_out(source: &Source, placenta: BabyNo) -> Vec<Block> {
    let words = source.words;
    let pair = |figure: &Figure| {
        let mut value = vec![Span::plain(words.say(&figure.value))];
        value.extend(figure.passed.iter().map(|passed| beside(source, passed)));
        (words.say(&of_cord(figure.name(), figure.cord)), value)
    };
    let pairs: Vec<Pair> = figures(source.chart, placenta).iter().filter(|figure| figure.known).map(pair).collect();
    listed(source, "record-worked-out", pairs)
}

fn beside(source: &Source, beside: &Beside) -> Span {
    by(source, &format!("{}.", beside.words), &beside.source, beside.status)
}

/// Small, on a line of its own: what a source says, and how well that was checked.
pub(crate) fn by(source: &Source, said: &str, from: &str, status: Status) -> Span {
    sourced(source, said, &Threshold { source: from.to_owned(), status, words: None })
}

/// What published lists give as reasons, by whom they turn to.
fn reasons_given(source: &Source, placenta: BabyNo) -> Vec<Block> {
    let given = reasons(source.chart, source.protocol, placenta);
    let mut blocks = Vec::new();
    for to in [To::Laboratory, To::Baby, To::Advice] {
        let pairs = given.iter().filter(|reason| reason.to == to).map(|reason| reason_pair(source, reason));
        blocks.extend(listed(source, heading_of(to), pairs.collect()));
    }
    if !blocks.is_empty() {
        blocks.push(Block::Paragraph(vec![Span::plain(source.words.plain("record-local-rule")).bold()]));
    }
    blocks
}

fn heading_of(to: To) -> &'static str {
    match to {
        To::Laboratory => "record-reasons-laboratory",
        To::Baby => "record-reasons-baby",
        To::Advice => "record-reasons-advice",
    }
}

/// A reason, what it was found by, and whose list it stands in.
pub(crate) fn reason_pair(source: &Source, reason: &Reason) -> Pair {
    let because: Vec<String> = reason.because.iter().map(|because| source.words.say(because)).collect();
    let value = vec![Span::plain(because.join("; ")), by(source, "", &reason.source, reason.status)];
    (source.words.say(&reason.words), value)
}

/// Under a heading of its own; nothing where there is nothing.
pub(crate) fn listed(source: &Source, heading: &str, pairs: Vec<Pair>) -> Vec<Block> {
    if pairs.is_empty() {
        return Vec::new();
    }
    vec![Block::Subheading(source.words.plain(heading)), Block::Facts(pairs)]
}
