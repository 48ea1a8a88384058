//! A request to a laboratory to examine a placenta.

use secundine_domain::assess::{About, Finding};
use secundine_domain::examination::{Reason, To, reasons, untold};
use secundine_domain::fact::{Apgar, BabyNo, Fact};
use secundine_domain::message::Message;

use super::{BAGGED, COLD, NO_FORMALIN, NOT_FROZEN, bold, dated, heading, keeping, lines, paragraph, ticks, times, which};
use crate::document::Source;
use crate::page::{Block, Span};
use crate::sections::examination::{answers, by, drawing, reason_pair, worked_out};
use crate::sections::{Pair, mother, practice, sourced, told};

pub(super) fn blocks(source: &Source, placenta: BabyNo) -> Vec<Block> {
    let mut blocks = vec![bold(source, "form-laboratory-first"), lines(source, &["form-to-laboratory", "form-date"])];
    blocks.push(Block::Gap(8.0));
    blocks.push(Block::ShortFacts(mother(source)));
    blocks.push(Block::Facts(vec![practice(source)]));
    blocks.push(heading(source, "form-babies"));
    blocks.extend(source.chart.fed(placenta).into_iter().map(|no| Block::Facts(baby(source, no))));
    blocks.push(heading(source, "form-placenta"));
    blocks.push(Block::Facts(vec![which(source, placenta)]));
    blocks.push(Block::ShortFacts(times(source, placenta)));
    blocks.extend(drawing(source, placenta));
    blocks.extend(answers(source, placenta));
    blocks.extend(worked_out(source, placenta));
    blocks.extend(findings(source, placenta));
    blocks.extend(asked_for(source, placenta));
    blocks.extend(storage(source));
    blocks.push(heading(source, "form-signatures"));
    blocks.extend(["form-sent-by", "form-carried-by", "form-received-by"].map(|who| lines(source, &[who, "form-date-time"])));
    blocks
}

/// Birth, what was seen and measured, Apgar scores.
fn baby(source: &Source, no: BabyNo) -> Vec<Pair> {
    let Source { chart, words, .. } = source;
    let known = chart.babies.get(&no);
    let said =
        |score: &Apgar| words.say(&Message::new("form-apgar-at").with("minute", score.minute.get()).with("score", score.total()));
    let scores = known.into_iter().flat_map(|baby| &baby.apgars).map(|scored| said(&scored.what));
    let scores = Some(scores.collect::<Vec<_>>().join("; ")).filter(|scores| !scores.is_empty());
    vec![
        dated(source, known.and_then(|baby| baby.born.as_ref()), &Fact::BabyBorn { baby: no }),
        (words.plain("form-seen"), told(source, chart.seen_of_baby(no).map(|seen| words.say(&seen)))),
        (words.plain("form-apgar"), told(source, scores)),
    ]
}

/// What a source calls unusual, and whether all is here.
fn findings(source: &Source, placenta: BabyNo) -> Vec<Block> {
    let here = |finding: &&Finding| match &finding.about {
        About::Examination { placenta: of, .. } | About::Figure { placenta: of, .. } | About::Completeness { placenta: of } => {
            *of == placenta
        }
        _ => false,
    };
    let line = |finding: &Finding| {
        let mut spans = vec![Span::plain(source.words.say(&finding.message))];
        spans.extend(finding.threshold.as_ref().map(|threshold| {
            sourced(source, &threshold.words.as_deref().map_or(String::new(), |said| format!("{said}.")), threshold)
        }));
        Block::Paragraph(spans)
    };
    let said: Vec<Block> = source.findings.iter().filter(here).map(line).collect();
    if said.is_empty() { said } else { std::iter::once(heading(source, "form-findings")).chain(said).collect() }
}

/// The reasons that hold by what is recorded, then boxes for those that only the practitioner can tell.
fn asked_for(source: &Source, placenta: BabyNo) -> Vec<Block> {
    let held = reasons(source.chart, source.protocol, placenta);
    let held: Vec<Pair> =
        held.iter().filter(|reason| reason.to == To::Laboratory).map(|reason| reason_pair(source, reason)).collect();
    let to_mark = |reason: Reason| {
        let name = Span::plain(source.words.say(&reason.words));
        // On the same line, or the list alone would fill a page.
        let whose = by(source, "", &reason.source, reason.status);
        vec![name, Span { text: format!("  {}", whose.text.trim_start()), ..whose }]
    };
    let boxes = untold().into_iter().filter(|reason| reason.to == To::Laboratory).map(to_mark);
    vec![
        heading(source, "form-reasons"),
        if held.is_empty() { paragraph(source, "form-no-reasons") } else { Block::Facts(held) },
        Block::Subheading(source.words.plain("form-untold")),
        Block::Ticks(boxes.collect()),
        lines(source, &["form-other-reason"]),
        Block::Gap(8.0),
        bold(source, "record-local-rule"),
    ]
}

/// How it was kept: for the practitioner to mark, since no chart tells it.
fn storage(source: &Source) -> Vec<Block> {
    vec![
        heading(source, "form-storage"),
        ticks(source, &["form-was-cold", "form-was-unfrozen", "form-was-without-formalin"]),
        lines(source, &["form-cold-since", "form-labelled"]),
        Block::Gap(8.0),
        keeping(source, &[COLD, NOT_FROZEN, NO_FORMALIN, BAGGED]),
    ]
}
