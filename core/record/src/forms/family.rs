//! That the family takes a placenta, and what was said with it.

use secundine_domain::assess::About;
use secundine_domain::fact::BabyNo;

use super::{
    BAGGED, BURIAL, COLD, NO_FORMALIN, NOT_FROZEN, TISSUE, bold, heading, keeping, lines, paragraph, ticks, times, which,
};
use crate::document::Source;
use crate::page::Block;
use crate::sections::examination::drawing;
use crate::sections::{Pair, mother, practice, told};

pub(super) fn blocks(source: &Source, placenta: BabyNo) -> Vec<Block> {
    let mut who = mother(source);
    // What a family keeps tells no more of her than who she is.
    who.truncate(2);
    let mut blocks = vec![Block::ShortFacts(who), Block::Facts(vec![practice(source), which(source, placenta)])];
    blocks.push(Block::ShortFacts(times(source, placenta)));
    blocks.push(heading(source, "form-state"));
    blocks.push(Block::ShortFacts(state(source, placenta)));
    blocks.push(Block::Facts(vec![completeness(source, placenta)]));
    blocks.push(ticks(source, &["form-hand-whole", "form-hand-part", "form-hand-cold", "form-hand-formalin"]));
    blocks.extend(drawing(source, placenta));
    blocks.extend([heading(source, "form-keeping"), paragraph(source, "form-keeping-note")]);
    blocks.push(keeping(source, &[TISSUE, BURIAL, COLD, BAGGED, NOT_FROZEN, NO_FORMALIN]));
    blocks.extend([bold(source, "form-no-claim"), heading(source, "form-consent")]);
    blocks.push(ticks(source, &["form-consent-wish", "form-consent-told", "form-consent-no-laboratory"]));
    blocks.extend(["form-family-takes", "form-handed-by"].map(|who| lines(source, &[who, "form-date-time"])));
    blocks
}

/// Weight, how it was weighed, what was agreed, smell.
fn state(source: &Source, placenta: BabyNo) -> Vec<Pair> {
    let words = source.words;
    let examined = source.chart.examinations.get(&placenta);
    let pair = |item: &str| {
        let answer = examined.and_then(|examined| examined.get(item)).map(|given| words.say(&given.answer.describe(item)));
        (words.plain(&format!("exam-{item}")), told(source, answer))
    };
    ["weight", "weighed-as", "smell", "fate"].map(pair).to_vec()
}

fn completeness(source: &Source, placenta: BabyNo) -> Pair {
    let whole = source.findings.iter().find(|finding| finding.about == About::Completeness { placenta });
    (source.words.plain("form-looked-at"), told(source, whole.map(|finding| source.words.say(&finding.message))))
}
