//! What a caller hands over: a document made of blocks.

use secundine_domain::examination::{PathStep, Side};

/// One document, top to bottom.
///
/// Every text may hold any Unicode. `\n` breaks a line in spans and is a space elsewhere. Other control characters
/// are printed as a visible mark.
#[derive(Debug, Clone, PartialEq)]
pub struct Document {
    /// Printed large at the top of page 1, and the title of the file. Must not be blank.
    pub title: String,
    /// BCP 47 tag of the words, such as `en-GB`.
    pub language: String,
    /// When the document was made. Nothing else in the file tells a time.
    pub made: Made,
    /// Whose record this is. Heads every page of a record, on at most 3 lines.
    pub label: String,
    /// A warning framed at the top and the bottom of every page, on at most 2 lines, such as "REHEARSAL - not a real
    /// birth".
    pub banner: Option<String>,
    /// Left side of every footer, on at most 2 lines.
    pub footer: String,
    /// The content, in reading order.
    pub blocks: Vec<Block>,
    /// How it is set.
    pub manner: Manner,
}

/// How a document is set.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Manner {
    /// Flush left, with the label above every page.
    #[default]
    Record,
    /// A page to keep: in the middle and larger, without a label.
    Keepsake,
}

/// A local date and time with its distance from UTC.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Made {
    /// Year, 0 to 9999.
    pub year: u16,
    /// Month, 1 to 12.
    pub month: u8,
    /// Day of the month, 1 to 31.
    pub day: u8,
    /// Hour, 0 to 23.
    pub hour: u8,
    /// Minute, 0 to 59.
    pub minute: u8,
    /// Second, 0 to 59.
    pub second: u8,
    /// Local time minus UTC, in minutes.
    pub offset: i16,
}

/// One piece of the page, as wide as the text area.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// Starts a section. Stays with the block after it.
    Heading(String),
    /// Starts a part of a section. Stays with the block after it.
    Subheading(String),
    /// Running text.
    Paragraph(Vec<Span>),
    /// Labels with their values, one pair under the other.
    Facts(Vec<(String, Vec<Span>)>),
    /// The same for short values: two pairs side by side, read row by row.
    ShortFacts(Vec<(String, Vec<Span>)>),
    /// Rows under a header that is repeated on every page.
    Table(Table),
    /// A finding that must not be missed.
    Notice(Notice),
    /// Drawings side by side, two at most for each row.
    Pictures(Vec<Picture>),
    /// A drawing of its own, in the middle. Stays with the block after it.
    Drawing(Drawing),
    /// Lines with an empty box before each, to be ticked by hand.
    Ticks(Vec<Vec<Span>>),
    /// One row of ruled places to write on, each with its label below. The first is the widest.
    Signature(Vec<String>),
    /// Empty height in points (1/72 inch). Dropped at a page break.
    Gap(f32),
}

/// A stretch of text in one style.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Span {
    /// The words.
    pub text: String,
    /// Bold.
    pub bold: bool,
    /// Crossed out but readable, for a value that was corrected.
    pub struck: bool,
    /// Smaller and lighter, for a side note.
    pub small: bool,
}

impl Span {
    /// Text in the plain style.
    #[must_use]
    pub fn plain(text: impl Into<String>) -> Self {
        Self { text: text.into(), ..Self::default() }
    }

    /// The same text in bold.
    #[must_use]
    pub fn bold(self) -> Self {
        Self { bold: true, ..self }
    }

    /// The same text crossed out.
    #[must_use]
    pub fn struck(self) -> Self {
        Self { struck: true, ..self }
    }

    /// The same text as a side note.
    #[must_use]
    pub fn small(self) -> Self {
        Self { small: true, ..self }
    }
}

/// The text of one table cell. Empty is a blank cell.
pub type Cell = Vec<Span>;

/// Columns and rows.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// From left to right.
    pub columns: Vec<Column>,
    /// Each row has at most one cell for each column. Missing cells are blank.
    pub rows: Vec<Vec<Cell>>,
    /// Set smaller and closer, for a long night.
    pub dense: bool,
}

/// One column of a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Column {
    /// The words in the header row.
    pub head: String,
    /// Its share of the width, relative to the other columns. 0 counts as 1.
    pub weight: u16,
    /// Where the text stands.
    pub align: Align,
}

/// Where text stands in its column.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Align {
    /// Flush left, for words.
    #[default]
    Left,
    /// Flush right, for numbers. Digits all have the same width.
    Right,
    /// In the middle.
    Centre,
}

/// A finding, told by a shape and a word, never by colour.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Notice {
    /// The outline beside the word.
    pub shape: Shape,
    /// The level in a word.
    pub word: String,
    /// What was found.
    pub text: Vec<Span>,
}

/// A drawing with a line below it.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// What is drawn.
    pub side: Side,
    /// The line below.
    pub caption: String,
    /// What it shows, for readers that cannot see it.
    pub alt: String,
}

/// Shapes and words at places of their own, in points right and down from the upper left corner.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// Width, no wider than the text area.
    pub width: f32,
    /// Height, no taller than a page.
    pub height: f32,
    /// The shapes; each lies over those before it.
    pub shapes: Vec<Drawn>,
    /// The words on it, over the shapes.
    pub labels: Vec<Label>,
    /// What it shows, for readers that cannot see it; empty for an ornament, which says nothing.
    pub alt: String,
}

/// One shape of a drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawn {
    /// Its outline, in points.
    pub steps: Vec<PathStep>,
    /// Width of its line in points; 0 for no line.
    pub weight: f32,
    /// Tone of its line.
    pub ink: Tone,
    /// Length of a dash and of the space after it, in points.
    pub dash: Option<[f32; 2]>,
    /// Tone inside.
    pub fill: Option<Tone>,
}

/// How dark a shape is. The first four keep apart on a copier and on a fax.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tone {
    /// Black.
    Ink,
    /// Dark grey, for what stands back.
    Soft,
    /// Light grey.
    Tint,
    /// As the paper: hides what lies below.
    Ground,
    /// Dark red of a keepsake.
    Wine,
    /// A pale rose of a keepsake.
    Rose,
    /// Paler yet.
    Blush,
}

/// Words on a drawing, on one line.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// Where they begin, end or have their middle, by `align`.
    pub x: f32,
    /// The middle of their height.
    pub y: f32,
    /// The words.
    pub text: String,
    /// Which side of them `x` is.
    pub align: Align,
    /// Bold.
    pub bold: bool,
}

/// The outline of a notice.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    /// Eight sides, on a side.
    Octagon,
    /// Three sides, point up.
    Triangle,
    /// Round.
    Circle,
}
