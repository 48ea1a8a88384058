//! The account of an emergency, and how the family was left.

use secundine_domain::fact::Fact;
use secundine_domain::leaving::{Leaving, leaving as before_leaving};
use secundine_domain::message::Message;

use super::timeline::{brief_row, row, told_rows};
use super::{Days, Pair, is_long, told};
use crate::document::Source;
use crate::page::{Block, Span};

/// What was seen and done from the first mark of the response on; nothing where there is none.
pub(crate) fn account(source: &Source) -> Vec<Block> {
    let lines = source.chart.account();
    if lines.is_empty() {
        return Vec::new();
    }
    let heading = Block::Heading(source.words.plain("record-account"));
    let mut days = Days::new(source);
    if !is_long(source) {
        return vec![heading, told_rows(source, lines.into_iter().map(|line| row(&mut days, line)).collect())];
    }
    let done = lines.into_iter().filter(|line| is_done(&line.current().fact)).map(|line| brief_row(&mut days, line)).collect();
    vec![heading, told_rows(source, done), Block::Paragraph(vec![Span::plain(source.words.plain("record-account-done")).small()])]
}

/// What was done. In a long night the rest of the account and the earlier forms, which the timeline has too, would fill pages.
fn is_done(fact: &Fact) -> bool {
    matches!(fact, Fact::ConcernMarked | Fact::ResponseMarked { .. } | Fact::MedicineGiven(_) | Fact::PlacentaBorn { .. })
}

/// What was looked through before leaving, once anything was written of the leaving.
pub(crate) fn leaving(source: &Source) -> Vec<Block> {
    let Source { chart, words, .. } = source;
    if chart.left.is_none() && chart.contacts.is_empty() && chart.leavings.is_empty() {
        return Vec::new();
    }
    let several = chart.babies.len() > 1;
    let pair = |Leaving { item, of, said, mark, recorded, .. }: Leaving| -> Pair {
        let name = words.say(&item.name());
        let name = of.filter(|_| several).map_or(name.clone(), |no| format!("{name} {no}"));
        let Some(said) = said else { return (name, told(source, None)) };
        let mut value = vec![Span::plain(words.say(&said))];
        value.extend(mark.map(|mark| Span::plain(format!("  {}", mark.at.clock())).small()));
        if !recorded {
            value.push(Span::plain(format!("  {}", words.plain("record-not-recorded"))).small());
        }
        (name, value)
    };
    let mut facts: Vec<Pair> = before_leaving(chart, &source.findings).into_iter().map(pair).collect();
    facts
        .extend(chart.left.as_ref().map(|left| (words.say(&Message::new("fact-home-left")), vec![Span::plain(left.at.clock())])));
    vec![Block::Heading(words.plain("record-leaving")), Block::Facts(facts)]
}
