//! Medicines that were given, a row for each.

use secundine_domain::chart::Noted;
use secundine_domain::fact::Medicine;
use secundine_domain::message::Message;

use super::{Days, table};
use crate::document::Source;
use crate::page::{Align, Block, Cell, Span};

const COLUMNS: [(&str, u16, Align); 7] = [
    ("record-time", 4, Align::Left),
    ("record-since", 4, Align::Right),
    ("record-medicine", 8, Align::Left),
    ("record-dose", 5, Align::Left),
    ("record-route", 6, Align::Left),
    ("record-batch", 5, Align::Left),
    ("record-giver", 6, Align::Left),
];

/// Name, dose, route and site, batch, by whom, to whom where that is a baby; nothing where none was given.
pub(crate) fn medicines(source: &Source) -> Vec<Block> {
    let given = &source.chart.medicines;
    if given.is_empty() {
        return Vec::new();
    }
    let mut days = Days::new(source);
    let rows = given.iter().map(|given| row(source, &mut days, given)).collect();
    vec![Block::Heading(source.words.plain("record-medicines")), Block::Table(table(source, &COLUMNS, rows))]
}

fn row(source: &Source, days: &mut Days, Noted { what, mark, author }: &Noted<Medicine>) -> Vec<Cell> {
    let Medicine { name, dose, route, site, batch, giver, baby, .. } = what;
    let chart = source.chart;
    let line = chart.lines.iter().find(|line| line.first.id == mark.entry);
    let mut cells = line.map_or_else(|| vec![Vec::new(), Vec::new()], |line| days.when(line.shown()));
    let mut named = vec![Span::plain(name)];
    named.extend(baby.map(|no| {
        let to = source.words.say(&chart.numbered(Message::new("record-baby"), no));
        Span::plain(format!("\n{to}")).small()
    }));
    let routed: Vec<&str> = [Some(route), site.as_ref()].into_iter().flatten().map(|text| text.trim()).collect();
    let routed: Vec<&str> = routed.into_iter().filter(|text| !text.is_empty()).collect();
    let text = |text: &str| vec![Span::plain(text)];
    let giver = giver.as_deref().filter(|giver| !giver.trim().is_empty()).unwrap_or(author);
    cells.extend([named, text(dose), text(&routed.join(", ")), text(batch.as_deref().unwrap_or_default()), text(giver)]);
    cells
}
