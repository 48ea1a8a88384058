//! What happened, as numbered signs over the lanes and a key of them.

use std::collections::BTreeMap;

use secundine_domain::chart::{Line, State};
use secundine_domain::entry::EntryId;
use secundine_domain::fact::Fact;
use secundine_domain::picture::{PictureRow, Span};

use super::axis::Axis;
use super::canvas::{Canvas, Pen};
use super::name;
use crate::document::Source;
use crate::page::{self, Align, Block, Tone};

/// Radius of a sign, and the least way from one to the next, in points: what lies nearer has one sign.
const RADIUS: f32 = 5.5;
const APART: f32 = 12.5;

/// Events that share a sign.
pub(super) struct Group {
    x: f32,
    said: Vec<String>,
}

/// What happened within the axis, in order of time.
pub(super) fn groups(source: &Source, axis: &Axis, rows: &[PictureRow]) -> Vec<Group> {
    let times: BTreeMap<EntryId, i64> = rows.iter().flat_map(|row| &row.points).map(|point| (point.entry, point.at_ms)).collect();
    let told = source.chart.lines.iter().filter(|line| line.state() != State::Retracted && is_event(&line.current().fact));
    let placed = told.filter_map(|line| Some((*times.get(&line.first.id)?, line)));
    let mut placed: Vec<(i64, &Line)> = placed.filter(|(ms, _)| axis.holds(*ms)).collect();
    placed.sort_by_key(|(ms, _)| *ms);
    let mut groups: Vec<Group> = Vec::new();
    for (ms, line) in placed {
        let entry = line.current();
        let said = format!("{} {}", entry.occurred.clock(), source.words.say(&source.chart.say(&entry.fact)));
        let x = axis.x(ms);
        match groups.last_mut() {
            Some(group) if x - group.x < APART => group.said.push(said),
            _ => groups.push(Group { x, said: vec![said] }),
        }
    }
    groups
}

/// What has a sign: what happened or was done. What was read is drawn, and what was found stands in its own section.
fn is_event(fact: &Fact) -> bool {
    let done = matches!(
        fact,
        Fact::SeparationSeen { .. } | Fact::MedicineGiven(_) | Fact::ResponseMarked { .. } | Fact::ConcernMarked | Fact::HomeLeft
    );
    done || fact.is_mark()
}

/// The signs, a line down from each, and the third stage as a bar.
pub(super) fn draw(canvas: &mut Canvas, axis: &Axis, groups: &[Group], third_stage: Option<Span>, bottom: f32) {
    let middle = RADIUS + 1.0;
    if !groups.is_empty() {
        name(canvas, middle, canvas.words.plain("graph-events"), true);
    }
    for (n, Group { x, .. }) in groups.iter().enumerate() {
        canvas.line(&[(*x, middle), (*x, bottom)], Pen::GUIDE);
        canvas.dot((*x, middle), RADIUS, Tone::Ground);
        canvas.label((*x, middle), (n + 1).to_string(), Align::Centre, true);
    }
    let Some(Span { from_ms, to_ms }) = third_stage else { return };
    let y = 2.0 * middle + 8.0;
    let (left, right) = axis.edges();
    let (from, to) = (axis.x(from_ms).clamp(left, right), axis.x(to_ms).clamp(left, right));
    name(canvas, y, canvas.words.plain("record-third-stage"), true);
    canvas.line(&[(from, y), (to, y)], Pen::BAR);
}

/// What each number stands for.
pub(super) fn key(groups: Vec<Group>) -> Option<Block> {
    let pair = |(n, group): (usize, Group)| ((n + 1).to_string(), vec![page::Span::plain(group.said.join("; ")).small()]);
    let pairs: Vec<_> = groups.into_iter().enumerate().map(pair).collect();
    (!pairs.is_empty()).then_some(Block::ShortFacts(pairs))
}
