//! A table becomes strips.

use std::rc::Rc;

use krilla::tagging::{TableHeaderScope, Tag};

use super::flow::Flow;
use super::strip::{Mark, Placed, Strip, row};
use super::tags::{Node, Tags};
use super::text::Face;
use super::{Cell, PageError, Span, Table, WIDTH};

/// Between two columns, in points.
const GUTTER: f32 = 12.0;
const HEAD_PAD: f32 = 3.5;
const DENSE_HEAD_PAD: f32 = 2.0;
const ROW_PAD: f32 = 1.4;
const DENSE_PAD: f32 = 0.5;
/// A row shorter than this share of the tallest that is kept whole stays with its neighbour.
const SHORT: f32 = 0.3;
const HEAD_RULE: f32 = 1.0;
const ROW_RULE: f32 = 0.35;

/// One strip for the header, then one for each row.
pub(super) fn strips(table: &Table, flow: &mut Flow<'_>) -> Result<Vec<Strip>, PageError> {
    let columns = table.columns.len();
    if let Some(wide) = table.rows.iter().find(|row| row.len() > columns) {
        return Err(PageError::RowTooWide { cells: wide.len(), columns });
    }
    if columns == 0 {
        return Ok(Vec::new());
    }
    let places = places(table);
    let node = flow.tags.add(Tags::ROOT, Tag::Table);
    let mut strips = header(table, &places, node, flow);
    let repeated = match strips.as_slice() {
        [whole] => Some(Rc::new(whole.clone())),
        // A header too tall to be one strip is not worth repeating.
        _ => None,
    };
    if let Some(last) = strips.last_mut() {
        last.keep = !table.rows.is_empty();
    }
    let body = flow.tags.add(node, Tag::TBody);
    let rows = table.rows.len();
    for (n, cells) in table.rows.iter().enumerate() {
        let mut row = body_row(cells, table, &places, body, flow);
        // No page begins or ends with a single row of a longer table, unless it is tall.
        if let [whole] = row.as_mut_slice() {
            whole.keep = n + 1 < rows && (n == 0 || n + 2 == rows) && whole.height < flow.limit * SHORT;
        }
        strips.extend(row.into_iter().map(|strip| Strip { header: repeated.clone(), ..strip }));
    }
    Ok(strips)
}

fn body_row(cells: &[Cell], table: &Table, places: &[(f32, f32)], body: Node, flow: &mut Flow<'_>) -> Vec<Strip> {
    let group = flow.tags.add(body, Tag::TR);
    let (face, pad) = if table.dense { (Face::DENSE, DENSE_PAD) } else { (Face::BODY, ROW_PAD) };
    let mut placed = Vec::new();
    for (at, (column, (x, width))) in table.columns.iter().zip(places).enumerate() {
        let node = flow.tags.add(group, Tag::TD);
        let spans = cells.get(at).map(Vec::as_slice).unwrap_or_default();
        let text = flow.setter.set(spans, face, Some(*width), column.align);
        placed.push(Placed { text, x: *x, node });
    }
    let mut strips = row(&placed, (pad, pad), flow.limit);
    rule_below(&mut strips, ROW_RULE);
    strips
}

fn header(table: &Table, places: &[(f32, f32)], node: Node, flow: &mut Flow<'_>) -> Vec<Strip> {
    let head = flow.tags.add(node, Tag::THead);
    let group = flow.tags.add(head, Tag::TR);
    let (face, pad) = if table.dense { (Face::DENSE_COLUMN, DENSE_HEAD_PAD) } else { (Face::COLUMN, HEAD_PAD) };
    let mut placed = Vec::new();
    for (column, (x, width)) in table.columns.iter().zip(places) {
        let node = flow.tags.add(group, Tag::TH(TableHeaderScope::Column));
        let words = [Span::plain(&column.head)];
        let text = flow.setter.set(&words, face, Some(*width), column.align);
        placed.push(Placed { text, x: *x, node });
    }
    let mut strips = row(&placed, (pad, pad), flow.limit);
    rule_below(&mut strips, HEAD_RULE);
    strips
}

/// Left edge and width of each column, in points.
fn places(table: &Table) -> Vec<(f32, f32)> {
    let weights: Vec<f32> = table.columns.iter().map(|column| f32::from(column.weight.max(1))).collect();
    // With very many columns the gutters give way first.
    let gutter = GUTTER.min(WIDTH / (3.0 * weights.len() as f32));
    let room = WIDTH - gutter * (weights.len() as f32 - 1.0);
    let total: f32 = weights.iter().sum();
    let mut x = 0.0;
    let mut places = Vec::new();
    for weight in weights {
        let width = room * weight / total;
        places.push((x, width));
        x += width + gutter;
    }
    places
}

fn rule_below(strips: &mut [Strip], weight: f32) {
    if let Some(last) = strips.last_mut() {
        last.marks.push(Mark::Rule { x: 0.0, y: last.height, width: WIDTH, weight });
    }
}
