//! Blocks become strips.

use std::num::NonZeroU16;
use std::rc::Rc;

use krilla::tagging::{ListNumbering, Tag};

use super::shape::outline;
use super::strip::{Mark, Placed, Strip, flowing, row};
use super::tags::{Node, Tags};
use super::text::{Face, Setter, brief, one_line};
use super::{Align, Block, Document, Manner, Notice, PageError, Span, WIDTH, drawing, picture, table};

/// A row taller than this share of the body flows by line. Two rows and a heading still fit on a page.
const TALLEST: f32 = 0.45;
/// The widest column of labels, as a share of the text area.
const WIDEST_LABEL: f32 = 0.45;
/// Between a label and its value.
const LABEL_GUTTER: f32 = 18.0;
/// Width of the place for the icon of a notice.
const ICON_COLUMN: f32 = 30.0;
const ICON: f64 = 18.0;
const NOTICE_PAD: f32 = 6.0;
/// A box to tick, and the place for it.
const TICK: f32 = 10.0;
const TICK_COLUMN: f32 = 20.0;
const NOTICE_RULE: f32 = 0.8;
/// At the end so much of a body stays together.
const ENDING: f32 = 0.18;
/// Height to write in above a signature rule.
const SIGNATURE: f32 = 40.0;

/// What blocks need while they become strips.
pub(super) struct Flow<'a> {
    pub setter: &'a mut Setter,
    pub tags: &'a mut Tags,
    /// Tallest row that is kept whole, in points.
    pub limit: f32,
    pub manner: Manner,
}

/// The title and all blocks, for pages whose body is `body` points tall.
pub(super) fn strips(document: &Document, body: f32, setter: &mut Setter, tags: &mut Tags) -> Result<Vec<Strip>, PageError> {
    let mut flow = Flow { setter, tags, limit: body * TALLEST, manner: document.manner };
    let mut strips = flow.heading(&document.title, 1, Face::TITLE);
    let mut gap = 0.0_f32;
    let mut previous = None;
    for block in &document.blocks {
        let mut next = match block {
            Block::Gap(height) => {
                // `max` also turns "not a number" into no gap.
                gap += height.max(0.0);
                continue;
            }
            Block::Heading(text) => flow.heading(text, 2, Face::HEADING),
            Block::Subheading(text) => flow.heading(text, 3, Face::SUBHEADING),
            Block::Paragraph(spans) => flow.paragraph(spans),
            Block::Facts(facts) => flow.facts(facts, 1),
            Block::ShortFacts(facts) => flow.facts(facts, 2),
            Block::Table(table) => table::strips(table, &mut flow)?,
            Block::Notice(notice) => flow.notice(notice),
            Block::Signature(labels) => flow.signature(labels),
            Block::Pictures(pictures) => picture::strips(pictures, &mut flow),
            Block::Drawing(drawing) => vec![drawing::strip(drawing, &mut flow)],
            Block::Ticks(lines) => flow.ticks(lines),
        };
        if let Some(first) = next.first_mut() {
            first.before = space(previous, block) + gap.min(body);
            gap = 0.0;
            previous = Some(block);
        }
        strips.append(&mut next);
    }
    // The last page holds more than a note.
    let mut tall = 0.0;
    for strip in strips.iter_mut().rev().skip(1) {
        tall += strip.before + strip.height;
        if tall > body * ENDING {
            break;
        }
        strip.keep = true;
    }
    Ok(strips)
}

/// Empty height between two blocks, in points.
fn space(above: Option<&Block>, below: &Block) -> f32 {
    match (above, below) {
        // Notices in a row share the rule between them.
        (Some(Block::Notice(_)), Block::Notice(_)) | (_, Block::Gap(_) | Block::Signature(_)) => 0.0,
        (_, Block::Heading(_)) => 14.0,
        (_, Block::Subheading(_)) => 14.0,
        (_, Block::Notice(_)) | (Some(Block::Notice(_) | Block::Table(_)), _) => 13.0,
        (Some(Block::Heading(_) | Block::Subheading(_)), Block::Paragraph(_)) => 5.0,
        (Some(Block::ShortFacts(_)), Block::Facts(_)) | (Some(Block::Facts(_)), Block::ShortFacts(_)) => 0.0,
        (_, Block::Pictures(_) | Block::Drawing(_)) => 9.0,
        (_, Block::Paragraph(_) | Block::Facts(_) | Block::ShortFacts(_) | Block::Table(_) | Block::Ticks(_)) => 7.0,
    }
}

impl Flow<'_> {
    fn heading(&mut self, text: &str, level: u8, face: Face) -> Vec<Strip> {
        let short = brief(text);
        if short.trim().is_empty() {
            return Vec::new();
        }
        let number = NonZeroU16::MIN.saturating_add(u16::from(level) - 1);
        let node = self.tags.add(Tags::ROOT, Tag::Hn(number, Some(short.clone())));
        let (face, align) = match (self.manner, level) {
            (Manner::Record, _) => (face, Align::Left),
            (Manner::Keepsake, 1) => (Face::KEEPSAKE_TITLE, Align::Centre),
            (Manner::Keepsake, _) => (Face::KEEPSAKE_HEADING, Align::Centre),
        };
        let text = self.setter.set(&[Span::plain(one_line(text))], face, Some(WIDTH), align);
        let mut strips = flowing(text, node);
        for strip in &mut strips {
            strip.keep = true;
        }
        if let (2, Some(first)) = (level, strips.first_mut()) {
            first.outline = Some(short);
        }
        strips
    }

    fn paragraph(&mut self, spans: &[Span]) -> Vec<Strip> {
        let node = self.tags.add(Tags::ROOT, Tag::P);
        let (face, align) = match self.manner {
            Manner::Record => (Face::BODY, Align::Left),
            Manner::Keepsake => (Face::KEEPSAKE, Align::Centre),
        };
        let text = self.setter.set(spans, face, Some(WIDTH), align);
        flowing(text, node)
    }

    /// Labels with their values, so many pairs side by side, read row by row.
    fn facts(&mut self, facts: &[(String, Vec<Span>)], across: usize) -> Vec<Strip> {
        let list = self.tags.add(Tags::ROOT, Tag::L(ListNumbering::None));
        let width = (WIDTH + LABEL_GUTTER) / across as f32 - LABEL_GUTTER;
        let natural =
            facts.iter().map(|(label, _)| self.setter.set(&[Span::plain(label)], Face::LABEL, None, Align::Left).width());
        // Rounding must not break a label that just fits.
        let column = (natural.fold(0.0, f32::max) + 1.0).min(width * WIDEST_LABEL);
        let mut strips = Vec::new();
        for pairs in facts.chunks(across) {
            let mut cells = Vec::new();
            let mut x = 0.0;
            for (label, value) in pairs {
                let item = self.tags.add(list, Tag::LI);
                let at = x + column + LABEL_GUTTER;
                cells.push(self.place(&[Span::plain(label)], Face::LABEL, x, column, item, Tag::Lbl.into()));
                cells.push(self.place(value, Face::BODY, at, x + width - at, item, Tag::LBody.into()));
                x += width + LABEL_GUTTER;
            }
            strips.extend(row(&cells, (1.25, 1.25), self.limit));
        }
        strips
    }

    fn notice(&mut self, notice: &Notice) -> Vec<Strip> {
        let part = self.tags.add(Tags::ROOT, Tag::Div);
        let width = WIDTH - ICON_COLUMN;
        let word = [Span::plain(&notice.word).bold()];
        let word = self.place(&word, Face::BODY, ICON_COLUMN, width, part, Tag::P.into());
        let text = self.place(&notice.text, Face::BODY, ICON_COLUMN, width, part, Tag::P.into());
        let mut strips = row(&[word], (NOTICE_PAD, 0.0), self.limit);
        if let Some(last) = strips.last_mut() {
            last.keep = true;
        }
        strips.extend(row(&[text], (0.0, NOTICE_PAD), self.limit));
        if let Some(first) = strips.first_mut() {
            first.marks.push(Mark::Rule { x: 0.0, y: 0.0, width: WIDTH, weight: NOTICE_RULE });
            let icon = outline(notice.shape, (1.0, f64::from(NOTICE_PAD) + 2.5), ICON, 1.6);
            first.marks.push(Mark::Drawn { shapes: Rc::from([icon]), x: 0.0, node: None });
        }
        if let Some(last) = strips.last_mut() {
            last.marks.push(Mark::Rule { x: 0.0, y: last.height, width: WIDTH, weight: NOTICE_RULE });
        }
        strips
    }

    fn signature(&mut self, labels: &[String]) -> Vec<Strip> {
        if labels.is_empty() {
            return Vec::new();
        }
        let share = (WIDTH + LABEL_GUTTER) / (labels.len() as f32 + 1.0);
        let mut strip = Strip { height: SIGNATURE, ..Strip::default() };
        let mut x = 0.0;
        let mut below = 0.0_f32;
        for (at, label) in labels.iter().enumerate() {
            let width = if at == 0 && labels.len() > 1 { 2.0 * share } else { share } - LABEL_GUTTER;
            strip.marks.push(Mark::Rule { x, y: SIGNATURE, width, weight: 0.6 });
            let node = self.tags.add(Tags::ROOT, Tag::P);
            let text = self.setter.set_short(label, Face::FOOTER, width, Align::Left, 3);
            let mut top = SIGNATURE + 2.0;
            for line in 0..text.lines() {
                strip.marks.push(Mark::Line { text: Rc::clone(&text), line, x, top, node: Some(node) });
                top += Face::FOOTER.leading;
            }
            below = below.max(top);
            x += width + LABEL_GUTTER;
        }
        strip.height = below;
        vec![strip]
    }

    /// Lines with a box before each.
    fn ticks(&mut self, lines: &[Vec<Span>]) -> Vec<Strip> {
        let list = self.tags.add(Tags::ROOT, Tag::L(ListNumbering::None));
        let mut strips = Vec::new();
        for line in lines {
            let item = self.tags.add(list, Tag::LI);
            let placed = self.place(line, Face::BODY, TICK_COLUMN, WIDTH - TICK_COLUMN, item, Tag::LBody.into());
            let mut row = row(&[placed], (2.0, 2.0), self.limit);
            if let Some(first) = row.first_mut() {
                first.marks.push(Mark::Tick { x: 1.0, y: 4.0, size: TICK });
            }
            strips.extend(row);
        }
        strips
    }

    fn place(&mut self, spans: &[Span], face: Face, x: f32, width: f32, parent: Node, tag: krilla::tagging::TagKind) -> Placed {
        let node = self.tags.add(parent, tag);
        let text = self.setter.set(spans, face, Some(width), Align::Left);
        Placed { text, x, node }
    }
}
