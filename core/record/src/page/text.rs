//! Setting text: spans become shaped lines of a given width.

use std::borrow::Cow;
use std::collections::BTreeSet;
use std::ops::Range;
use std::rc::Rc;
use std::sync::Arc;

use parley::fontique::{Blob, Collection, CollectionOptions, SourceCache};
use parley::{
    Alignment, AlignmentOptions, FontContext, FontFamilyName, FontFeatures, FontWeight, Language, Layout, LayoutContext,
    OverflowWrap, StyleProperty,
};

use super::{Align, PageError, Span};

/// The two fonts, regular before bold.
pub(super) const FONTS: [&[u8]; 2] = [
    include_bytes!("../../fonts/AtkinsonHyperlegibleNext-Regular.ttf"),
    include_bytes!("../../fonts/AtkinsonHyperlegibleNext-Bold.ttf"),
];
const FAMILY: &str = "Atkinson Hyperlegible Next";
/// Stands for a character the fonts lack. PDF/A forbids the empty box that fonts have for this.
const LOZENGE: &str = "\u{25CA}";
/// Stands for a character that must not be printed at all.
const REPLACEMENT: char = '\u{FFFD}';
/// Size of a side note beside the text it is in: 9 pt in running text, the least that is set on a page.
pub(super) const NOTE: f32 = 0.88;
/// Longest title in the file, in characters.
const BRIEF: usize = 120;
const BOLD: FontWeight = FontWeight::BOLD;

/// A size of type. All in points.
#[derive(Debug, Clone, Copy)]
pub(super) struct Face {
    pub size: f32,
    /// From one baseline to the next.
    pub leading: f32,
    pub bold: bool,
    /// Dark grey, for words that stand back.
    pub soft: bool,
}

impl Face {
    const fn new(size: f32, leading: f32, bold: bool, soft: bool) -> Self {
        Self { size, leading, bold, soft }
    }
    pub const TITLE: Self = Self::new(21.0, 26.0, true, false);
    pub const HEADING: Self = Self::new(13.5, 18.0, true, false);
    pub const SUBHEADING: Self = Self::new(10.75, 15.0, true, false);
    pub const BODY: Self = Self::new(10.25, 14.5, false, false);
    /// As tall as [`Face::BODY`], so that a label and its value share baselines.
    pub const LABEL: Self = Self::new(10.25, 14.5, false, true);
    pub const COLUMN: Self = Self::new(9.0, 12.0, true, false);
    pub const DENSE: Self = Self::new(8.25, 9.9, false, false);
    pub const DENSE_COLUMN: Self = Self::new(8.25, 9.9, true, false);
    pub const HEADER: Self = Self::new(9.5, 12.5, true, false);
    pub const FOOTER: Self = Self::new(9.0, 12.0, false, true);
    /// Words on a drawing.
    pub const CHART: Self = Self::new(7.5, 10.0, false, false);
    /// A page to keep: its title, its smaller headings, its words.
    pub const KEEPSAKE_TITLE: Self = Self::new(30.0, 40.0, false, false);
    pub const KEEPSAKE_HEADING: Self = Self::new(16.0, 22.0, true, false);
    pub const KEEPSAKE: Self = Self::new(13.0, 21.0, false, false);
    pub const BANNER: Self = Self::new(13.0, 17.0, true, false);

    /// From the top of a line to its baseline. Capitals, two thirds of the size tall, stand in the middle.
    pub fn baseline(self) -> f32 {
        (self.leading + 0.67 * self.size) / 2.0
    }
}

/// How glyphs are drawn beyond their shape.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Ink {
    pub struck: bool,
    pub soft: bool,
}

/// Shaped text, broken into lines.
pub(super) struct Text {
    pub layout: Layout<Ink>,
    /// What the ranges of the layout point into.
    pub source: String,
    pub face: Face,
}

impl Text {
    /// Number of lines; 0 for no text.
    pub fn lines(&self) -> usize {
        if self.source.is_empty() { 0 } else { self.layout.len() }
    }

    /// Width of the longest line in points.
    pub fn width(&self) -> f32 {
        self.layout.width()
    }
}

/// Sets text with the embedded fonts only.
pub(super) struct Setter {
    fonts: FontContext,
    layouts: LayoutContext<Ink>,
    language: Language,
    /// The glyph of the lozenge, regular and bold.
    pub lozenge: [u32; 2],
    blobs: [u64; 2],
    /// Characters set so far that the fonts lack.
    pub unprintable: BTreeSet<char>,
}

impl Setter {
    pub fn new(language: &str) -> Result<Self, PageError> {
        // The tag may carry variants; only what precedes them matters for setting text.
        let (language, _) = Language::parse_prefix(language).map_err(|_| PageError::Language(language.to_owned()))?;
        let mut fonts = FontContext {
            collection: Collection::new(CollectionOptions { shared: false, system_fonts: false }),
            source_cache: SourceCache::default(),
        };
        let blobs = FONTS.map(|bytes| {
            let blob = Blob::new(Arc::new(bytes));
            let id = blob.id();
            fonts.collection.register_fonts(blob, None);
            id
        });
        let mut setter =
            Self { fonts, layouts: LayoutContext::new(), language, lozenge: [0; 2], blobs, unprintable: BTreeSet::new() };
        setter.lozenge = [setter.lozenge_of(false)?, setter.lozenge_of(true)?];
        Ok(setter)
    }

    fn lozenge_of(&mut self, bold: bool) -> Result<u32, PageError> {
        let text = self.set(&[Span::plain(LOZENGE)], Face { bold, ..Face::BODY }, None, Align::Left);
        let mut clusters = text.layout.lines().flat_map(|line| line.runs()).flat_map(|run| run.clusters());
        let glyph = clusters.next().and_then(|cluster| cluster.glyphs().next());
        glyph.map(|glyph| glyph.id).filter(|id| *id != 0).ok_or(PageError::Font)
    }

    /// Which of [`FONTS`] a run was shaped with.
    pub fn font_of(&self, run: &parley::layout::Run<'_, Ink>) -> usize {
        let id = run.font().data.id();
        self.blobs.iter().position(|blob| *blob == id).unwrap_or(0)
    }

    /// Sets spans in lines of at most `width` points, or in one line for each `\n` if there is no width.
    pub fn set(&mut self, spans: &[Span], face: Face, width: Option<f32>, align: Align) -> Rc<Text> {
        let (source, ranges) = join(spans);
        let mut builder = self.layouts.ranged_builder(&mut self.fonts, &source, 1.0, false);
        builder.push_default(FontFamilyName::Named(Cow::Borrowed(FAMILY)));
        builder.push_default(FontFeatures::from("\"tnum\""));
        builder.push_default(StyleProperty::FontSize(face.size));
        builder.push_default(StyleProperty::Locale(Some(self.language)));
        // A word longer than the line is broken rather than cut off.
        builder.push_default(StyleProperty::OverflowWrap(OverflowWrap::Anywhere));
        builder.push_default(StyleProperty::Brush(Ink { struck: false, soft: face.soft }));
        for (span, range) in spans.iter().zip(ranges) {
            if face.bold || span.bold {
                builder.push(StyleProperty::FontWeight(BOLD), range.clone());
            }
            if span.small {
                builder.push(StyleProperty::FontSize(face.size * NOTE), range.clone());
            }
            let ink = Ink { struck: span.struck, soft: face.soft || span.small };
            builder.push(StyleProperty::Brush(ink), range);
        }
        let mut layout = builder.build(&source);
        layout.break_all_lines(width);
        let alignment = match align {
            Align::Left => Alignment::Left,
            Align::Right => Alignment::Right,
            Align::Centre => Alignment::Center,
        };
        layout.align(alignment, AlignmentOptions::default());
        note_missing(&layout, &source, &mut self.unprintable);
        Rc::new(Text { layout, source, face })
    }

    /// Sets one style of text in at most `limit` lines. What is cut off ends in an ellipsis.
    pub fn set_short(&mut self, text: &str, face: Face, width: f32, align: Align, limit: usize) -> Rc<Text> {
        let whole = self.set(&[Span::plain(one_line(text))], face, Some(width), align);
        let Some(last) = limit.checked_sub(1).and_then(|at| whole.layout.get(at)) else { return whole };
        if whole.lines() <= limit {
            return whole;
        }
        // The ellipsis needs room, so the last line gives up two characters for it.
        let kept = whole.source.get(..last.text_range().end).unwrap_or_default().trim_end();
        let mut short = kept.to_owned();
        short.pop();
        short.pop();
        short.push('\u{2026}');
        self.set(&[Span::plain(short)], face, Some(width), align)
    }
}

/// Puts the spans in one string and tells where each lies.
fn join(spans: &[Span]) -> (String, Vec<Range<usize>>) {
    let mut source = String::new();
    let ends: Vec<usize> = spans
        .iter()
        .map(|span| {
            source.push_str(&clean(&span.text));
            source.len()
        })
        .collect();
    // Text typed by hand often ends in line breaks that mean nothing.
    source.truncate(source.trim_end_matches('\n').len());
    let starts = std::iter::once(0).chain(ends.iter().copied());
    let ranges = starts.zip(&ends).map(|(start, end)| start.min(source.len())..(*end).min(source.len()));
    let ranges = ranges.collect();
    (source, ranges)
}

/// Text without line breaks.
pub(super) fn one_line(text: &str) -> String {
    clean(text).replace('\n', " ")
}

/// The beginning of a text, for the titles in the file. They have a limit, and readers show them on one line.
pub(super) fn brief(text: &str) -> String {
    one_line(text).chars().take(BRIEF).collect()
}

/// Text without characters that would hide, reorder or vanish.
fn clean(text: &str) -> String {
    let text = text.replace("\r\n", "\n");
    text.chars().map(printable).collect()
}

fn printable(c: char) -> char {
    match c {
        '\n' | '\r' | '\u{2028}' | '\u{2029}' => '\n',
        '\t' => ' ',
        // The font has the Greek letter, which looks the same as the micro sign.
        '\u{B5}' => '\u{3BC}',
        // Overrides can make a number read backwards.
        '\u{202A}'..='\u{202E}' => REPLACEMENT,
        // Private and non-characters mean nothing to a reader, and PDF/A forbids them.
        '\u{E000}'..='\u{F8FF}' | '\u{F0000}'.. | '\u{FDD0}'..='\u{FDEF}' | '\u{FEFF}' => REPLACEMENT,
        c if c.is_control() || u32::from(c) & 0xFFFE == 0xFFFE => REPLACEMENT,
        c => c,
    }
}

/// Collects the characters that were given the glyph for "no such character".
fn note_missing(layout: &Layout<Ink>, source: &str, missing: &mut BTreeSet<char>) {
    for run in layout.lines().flat_map(|line| line.runs()) {
        for cluster in run.clusters().filter(|cluster| !cluster.is_hard_line_break()) {
            if cluster.glyphs().any(|glyph| glyph.id == 0) {
                missing.extend(source.get(cluster.text_range()).unwrap_or_default().chars());
            }
        }
    }
}
