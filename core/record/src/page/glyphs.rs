//! From a shaped line to the glyphs that are drawn.

use krilla::text::{GlyphId, KrillaGlyph};

use super::text::{Ink, Setter, Text};

/// Glyphs of one font, size and ink, side by side.
pub(super) struct Piece {
    /// Index of the font.
    pub font: usize,
    /// In points.
    pub size: f32,
    pub ink: Ink,
    /// Left edge, from the left edge of the text, in points.
    pub x: f32,
    /// In points.
    pub width: f32,
    pub glyphs: Vec<KrillaGlyph>,
}

/// The glyphs of a line from left to right.
pub(super) fn pieces(text: &Text, line: usize, setter: &Setter) -> Vec<Piece> {
    let Some(line) = text.layout.get(line) else { return Vec::new() };
    let mut pieces: Vec<Piece> = Vec::new();
    let mut x = line.metrics().offset;
    for run in line.runs() {
        let (font, size) = (setter.font_of(&run), run.font_size());
        let lozenge = setter.lozenge.get(font).copied().unwrap_or(0);
        let mut fresh = true;
        // Where a ligature ends, if its parts come before its glyph.
        let mut end = None;
        for cluster in run.visual_clusters().filter(|cluster| !cluster.is_hard_line_break()) {
            let mut range = cluster.text_range();
            if cluster.is_ligature_continuation() {
                let last = pieces.last_mut().and_then(|piece| piece.glyphs.last_mut());
                match last {
                    Some(glyph) if !run.is_rtl() => glyph.text_range.end = range.end,
                    _ => end = end.or(Some(range.end)),
                }
                continue;
            }
            range.end = end.take().unwrap_or(range.end);
            let ink = cluster.style().brush;
            if fresh || pieces.last().is_none_or(|piece| piece.ink != ink) {
                pieces.push(Piece { font, size, ink, x, width: 0.0, glyphs: Vec::new() });
                fresh = false;
            }
            let Some(piece) = pieces.last_mut() else { continue };
            for glyph in cluster.glyphs() {
                let id = GlyphId::new(if glyph.id == 0 { lozenge } else { glyph.id });
                // The layout counts down the page, a glyph counts up from its baseline.
                let (advance, dx, dy) = (glyph.advance / size, glyph.x / size, -glyph.y / size);
                piece.glyphs.push(KrillaGlyph::new(id, advance, dx, dy, 0.0, range.clone(), None));
                piece.width += glyph.advance;
                x += glyph.advance;
            }
        }
    }
    pieces
}
