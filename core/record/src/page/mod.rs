//! The page engine: a document of blocks becomes the bytes of a PDF.
//!
//! [`write`] goes in four steps. `flow` turns blocks into strips: pieces of the page that are never cut. `paginate`
//! puts strips on pages. `furniture` makes the header and the footer. `paint` draws it all and writes the file.
//!
//! Pages are A4, black on white, and keep to PDF/A-2a and PDF/UA-1. The same document always gives the same bytes.

mod drawing;
mod flow;
mod furniture;
mod glyphs;
mod model;
mod paginate;
mod paint;
mod picture;
mod shape;
mod strip;
mod table;
mod tags;
mod text;

#[cfg(test)]
mod tests;

use std::collections::BTreeSet;

pub use model::{
    Align, Block, Cell, Column, Document, Drawing, Drawn, Label, Made, Manner, Notice, Picture, Shape, Span, Table, Tone,
};

pub(crate) use shape::{circle, outline};

/// Width of a page in points (A4).
const PAGE_WIDTH: f32 = 595.28;
/// Height of a page in points (A4).
const PAGE_HEIGHT: f32 = 841.89;
/// Blank edge on all sides, in points (15 mm).
const MARGIN: f32 = 42.5;
/// Width of the text area in points.
pub(crate) const WIDTH: f32 = PAGE_WIDTH - 2.0 * MARGIN;

/// A finished file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pdf {
    /// The file.
    pub bytes: Vec<u8>,
    /// How many pages it has, at least 1.
    pub pages: usize,
    /// Characters that no font here can draw. Each is printed as a lozenge; copying it still gives the character.
    pub unprintable: BTreeSet<char>,
}

/// Why there is no file.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PageError {
    /// The title is blank.
    #[error("the document has no title")]
    Untitled,
    /// The language is not a BCP 47 tag.
    #[error("not a language tag: {0:?}")]
    Language(String),
    /// A row has more cells than its table has columns.
    #[error("a row of {cells} cells in a table of {columns} columns")]
    RowTooWide {
        /// Cells in the row.
        cells: usize,
        /// Columns in the table.
        columns: usize,
    },
    /// A font that is part of this program could not be read.
    #[error("the font cannot be read")]
    Font,
    /// The file could not be made.
    #[error("the file cannot be made: {0}")]
    File(String),
}

/// Writes a document. `page_words(page, pages)` gives the right side of a footer, counted from 1.
///
/// # Errors
///
/// See [`PageError`]. No length or script of a text is an error.
pub fn write(document: &Document, page_words: &dyn Fn(usize, usize) -> String) -> Result<Pdf, PageError> {
    if document.title.trim().is_empty() {
        return Err(PageError::Untitled);
    }
    let mut setter = text::Setter::new(&document.language)?;
    let mut tags = tags::Tags::new();
    let furniture = furniture::Furniture::new(document, &mut setter, &mut tags);
    let body = furniture.body();
    let strips = flow::strips(document, body, &mut setter, &mut tags)?;
    let pages = paginate::paginate(strips, body);
    let pages = match document.manner {
        Manner::Record => pages,
        Manner::Keepsake => paginate::centred(pages, body),
    };
    paint::paint(document, &furniture, pages, page_words, setter, tags)
}
