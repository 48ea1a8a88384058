//! Each baby: Apgar scores with their parts, what was seen and measured last, what happened, and its size beside a standard.

use secundine_domain::chart::Noted;
use secundine_domain::fact::{Apgar, BabyNo};
use secundine_domain::growth::{Growth, growth};
use secundine_domain::message::Message;

use super::examination::listed;
use super::{Pair, sourced, told};
use crate::document::Source;
use crate::page::{Block, Span};

/// A section for each; earlier measures stand in the timeline.
pub(crate) fn babies(source: &Source) -> Vec<Block> {
    source.chart.babies.keys().flat_map(|no| baby(source, *no)).collect()
}

fn baby(source: &Source, no: BabyNo) -> Vec<Block> {
    let Source { chart, words, .. } = source;
    let Some(baby) = chart.babies.get(&no) else { return Vec::new() };
    let mut facts: Vec<Pair> = baby.apgars.iter().map(|scored| apgar(source, scored)).collect();
    if facts.is_empty() {
        facts.push((words.plain("form-apgar"), told(source, None)));
    }
    facts.push((words.plain("form-seen"), told(source, chart.seen_of_baby(no).map(|seen| words.say(&seen)))));
    let happened = baby.events.iter().map(|event| {
        let clock = Span::plain(format!(" {}", event.mark.at.clock())).small();
        [Span::plain(words.say(&event.what.name())), clock]
    });
    let happened: Vec<[Span; 2]> = happened.collect();
    if !happened.is_empty() {
        facts.push((words.plain("record-events"), happened.join(&Span::plain("; "))));
    }
    let mut blocks = vec![Block::Heading(words.say(&chart.numbered(Message::new("record-baby"), no))), Block::Facts(facts)];
    blocks.extend(listed(source, "record-size", growth(chart, no).into_iter().map(|growth| size(source, growth)).collect()));
    blocks
}

/// The score, its five parts, and when it was given.
fn apgar(source: &Source, Noted { what, mark, .. }: &Noted<Apgar>) -> Pair {
    let words = source.words;
    let minute = Message::new("value-minutes").with("value", what.minute.get());
    let parts = Message::new("record-apgar-parts")
        .with("colour", what.colour.get())
        .with("heart", what.heart_rate.get())
        .with("reflex", what.reflex.get())
        .with("tone", what.tone.get())
        .with("breathing", what.breathing.get());
    let value = vec![
        Span::plain(what.total().to_string()).bold(),
        Span::plain(format!("  {}", words.say(&parts))),
        Span::plain(format!("  {}", mark.at.clock())).small(),
    ];
    (format!("{} {}", words.plain("form-apgar"), words.say(&minute)), value)
}

/// The centiles beside one standard, or why there are none.
fn size(source: &Source, growth: Growth) -> Pair {
    let words = source.words;
    let lines: Vec<String> = growth.lines.iter().map(|line| words.say(line)).collect();
    let mut value = vec![Span::plain(lines.join("; "))];
    value.extend(growth.standard.map(|standard| sourced(source, "", &standard)));
    (growth.among.map_or(words.plain("record-no-centile"), |among| words.say(&among)), value)
}
