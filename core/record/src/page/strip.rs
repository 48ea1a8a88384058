//! Strips: full-width pieces of a page that are never cut.

use std::ops::Range;
use std::rc::Rc;

use super::model::Drawn;
use super::tags::Node;
use super::text::Text;

/// A piece of the page with everything on it. All lengths in points, from its top left corner.
#[derive(Clone, Default)]
pub(super) struct Strip {
    /// Empty height above, dropped at the top of a page.
    pub before: f32,
    pub height: f32,
    /// Must not be the last on its page.
    pub keep: bool,
    pub marks: Vec<Mark>,
    /// Is put above this strip if it begins a page.
    pub header: Option<Rc<Strip>>,
    /// The entry for this strip in the outline of the file.
    pub outline: Option<String>,
}

/// Something to draw.
#[derive(Clone)]
pub(super) enum Mark {
    /// One line of a text. Without a node it is no part of the content, such as a page header.
    Line { text: Rc<Text>, line: usize, x: f32, top: f32, node: Option<Node> },
    /// Nothing, for content that is empty but present.
    Blank(Node),
    /// A horizontal rule.
    Rule { x: f32, y: f32, width: f32, weight: f32 },
    /// A rectangle in outline.
    Frame { y: f32, height: f32, weight: f32 },
    /// An empty box to tick, a square.
    Tick { x: f32, y: f32, size: f32 },
    /// Shapes of a drawing. Without a node it is no part of the content.
    Drawn { shapes: Rc<[Drawn]>, x: f32, node: Option<Node> },
}

impl Strip {
    /// The same to the eye, but no part of the content.
    pub fn repeated(&self) -> Self {
        let mut copy = self.clone();
        copy.marks.retain(|mark| !matches!(mark, Mark::Blank(_)));
        for mark in &mut copy.marks {
            if let Mark::Line { node, .. } | Mark::Drawn { node, .. } = mark {
                *node = None;
            }
        }
        copy
    }
}

/// A text and where its column begins.
pub(super) struct Placed {
    pub text: Rc<Text>,
    pub x: f32,
    pub node: Node,
}

impl Placed {
    /// The marks for some lines of the text. An empty text is one blank, on line 0.
    fn marks(&self, lines: Range<usize>, top: f32, leading: f32) -> Vec<Mark> {
        if self.text.lines() == 0 && lines.contains(&0) {
            return vec![Mark::Blank(self.node)];
        }
        let mut top = top;
        let mut marks = Vec::new();
        for line in lines.start..lines.end.min(self.text.lines()) {
            marks.push(Mark::Line { text: Rc::clone(&self.text), line, x: self.x, top, node: Some(self.node) });
            top += leading;
        }
        marks
    }
}

/// Puts texts side by side, with some points above and below. The row is one strip if it is at most `limit` points
/// tall. A taller one flows by line, so that nothing is ever too tall for a page.
pub(super) fn row(cells: &[Placed], (above, below): (f32, f32), limit: f32) -> Vec<Strip> {
    let lines = cells.iter().map(|cell| cell.text.lines()).max().unwrap_or(0).max(1);
    let leading = cells.iter().map(|cell| cell.text.face.leading).fold(0.0, f32::max);
    let height = above + lines as f32 * leading + below;
    if height <= limit {
        let marks = cells.iter().flat_map(|cell| cell.marks(0..lines, above, leading)).collect();
        return vec![Strip { height, marks, ..Strip::default() }];
    }
    let strip = |line: usize| {
        let above = if line == 0 { above } else { 0.0 };
        let below = if line + 1 == lines { below } else { 0.0 };
        Strip {
            height: above + leading + below,
            // No page begins or ends with a single line of a longer text.
            keep: lines > 1 && (line == 0 || line + 2 == lines),
            marks: cells.iter().flat_map(|cell| cell.marks(line..line + 1, above, leading)).collect(),
            ..Strip::default()
        }
    };
    (0..lines).map(strip).collect()
}

/// A text on its own, flowing by line.
pub(super) fn flowing(text: Rc<Text>, node: Node) -> Vec<Strip> {
    row(&[Placed { text, x: 0.0, node }], (0.0, 0.0), 0.0)
}
