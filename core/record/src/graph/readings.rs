//! The same readings as a table.

use std::collections::BTreeMap;

use secundine_domain::chart::Line;
use secundine_domain::entry::EntryId;
use secundine_domain::picture::{PictureLane, PictureReading};

use super::canvas::Canvas;
use super::{number, unit};
use crate::document::Source;
use crate::page::{Align, Block, Cell, Column, Span, Table};
use crate::sections::{Days, is_long};

/// One row for each entry that gave a value, one column for each lane: of a sum the whole, of two pressures both.
pub(super) fn table(source: &Source, canvas: &Canvas, lanes: &[PictureLane]) -> Block {
    let lines: BTreeMap<EntryId, &Line> = source.chart.lines.iter().map(|line| (line.first.id, line)).collect();
    let mut rows: BTreeMap<(i64, EntryId), Vec<String>> = BTreeMap::new();
    for (n, lane) in lanes.iter().enumerate() {
        let series = if lane.is_sum() { lane.series.get(..1).unwrap_or_default() } else { &lane.series };
        for PictureReading { point, value, .. } in series.iter().flat_map(|series| &series.readings) {
            let row = rows.entry((point.at_ms, point.entry)).or_insert_with(|| vec![String::new(); lanes.len()]);
            let Some(cell) = row.get_mut(n) else { continue };
            let value = number(canvas, *value);
            *cell = if cell.is_empty() { value } else { format!("{cell}/{value}") };
        }
    }
    let mut days = Days::new(source);
    let row = |((_, entry), values): ((i64, EntryId), Vec<String>)| -> Option<Vec<Cell>> {
        let mut cells = days.when(lines.get(&entry)?.shown());
        cells.extend(values.into_iter().map(|value| vec![Span::plain(value)]));
        Some(cells)
    };
    let head = |id: &str, align| Column { head: source.words.plain(id), weight: 4, align };
    let mut columns = vec![head("record-time", Align::Left), head("record-since", Align::Right)];
    columns.extend(lanes.iter().map(|lane| {
        let head = format!("{}\n{}", source.words.say(&lane.name), unit(canvas, lane));
        Column { head, weight: 4, align: Align::Right }
    }));
    Block::Table(Table { columns, rows: rows.into_iter().filter_map(row).collect(), dense: is_long(source) })
}
