//! Drawing pages and writing the file.

use krilla::configure::{Accessibility, Archival, ConfigurationBuilder};
use krilla::destination::XyzDestination;
use krilla::geom::{PathBuilder, Point, Rect};
use krilla::metadata::{DateTime, Metadata};
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, Stroke};
use krilla::surface::Surface;
use krilla::tagging::{Artifact, ArtifactType, ContentTag};
use krilla::text::Font;
use krilla::{SerializeSettings, color::luma};

use super::drawing;
use super::furniture::Furniture;
use super::glyphs::pieces;
use super::paginate::Page;
use super::strip::{Mark, Strip};
use super::tags::{Node, Tags};
use super::text::{FONTS, Setter, brief};
use super::{Document, Drawn, MARGIN, Made, PAGE_HEIGHT, PAGE_WIDTH, PageError, Pdf, WIDTH};

/// Grey that a fax still shows: 70 % black.
pub(super) const SOFT: u8 = 77;

/// Draws the pages and gives the file.
pub(super) fn paint(
    document: &Document,
    furniture: &Furniture,
    pages: Vec<Page>,
    page_words: &dyn Fn(usize, usize) -> String,
    mut setter: Setter,
    tags: Tags,
) -> Result<Pdf, PageError> {
    let count = pages.len();
    let mut file = krilla::Document::new_with(settings()?);
    let mut contents = OutlineNode::new(brief(&document.title), XyzDestination::new(0, Point::from_xy(0.0, 0.0)));
    let mut brush = Brush { fonts: fonts()?, tags, kind: ArtifactType::Header };
    let feet: Vec<Strip> = (1..=count).map(|page| furniture.foot_of(&page_words(page, count), &mut setter)).collect();
    for (at, (page, foot)) in pages.iter().zip(&feet).enumerate() {
        let size = PageSettings::from_wh(PAGE_WIDTH, PAGE_HEIGHT);
        let mut sheet = file.start_page_with(size.ok_or_else(|| PageError::File("page size".into()))?);
        let mut surface = sheet.surface();
        // The label and the banner are read out once, then they are only seen.
        let head = if at == 0 { furniture.head.clone() } else { furniture.head.repeated() };
        brush.kind = ArtifactType::Header;
        brush.strip(&mut surface, &head, MARGIN, &setter);
        brush.kind = ArtifactType::Layout;
        for (top, strip) in page {
            let top = furniture.body_top() + top;
            brush.strip(&mut surface, strip, top, &setter);
            if let Some(words) = &strip.outline {
                let place = XyzDestination::new(at, Point::from_xy(0.0, top));
                contents.push_child(OutlineNode::new(words.clone(), place));
            }
        }
        brush.kind = ArtifactType::Footer;
        brush.strip(&mut surface, foot, furniture.foot_top(), &setter);
        surface.finish();
        sheet.finish();
    }
    let mut plan = Outline::new();
    plan.push_child(contents);
    file.set_outline(plan);
    file.set_metadata(metadata(document));
    file.set_tag_tree(brush.tags.tree(&document.language));
    let bytes = file.finish().map_err(|error| PageError::File(format!("{error:?}")))?;
    Ok(Pdf { bytes, pages: count, unprintable: setter.unprintable })
}

fn settings() -> Result<SerializeSettings, PageError> {
    let configuration = ConfigurationBuilder::new()
        .with_archival_validator(Archival::A2_A)
        .with_accessibility_validator(Accessibility::UA1)
        .finish()
        .map_err(|error| PageError::File(format!("{error:?}")))?;
    Ok(SerializeSettings { configuration, ..SerializeSettings::default() })
}

fn fonts() -> Result<Vec<Font>, PageError> {
    FONTS.iter().map(|bytes| Font::new((*bytes).into(), 0).ok_or(PageError::Font)).collect()
}

fn metadata(document: &Document) -> Metadata {
    Metadata::new()
        .title(brief(&document.title))
        .language(document.language.clone())
        .creator("Secundine".to_owned())
        .creation_date(date(document.made))
}

fn date(made: Made) -> DateTime {
    let date = DateTime::new(made.year).month(made.month).day(made.day);
    let time = date.hour(made.hour).minute(made.minute).second(made.second);
    let hours = i8::try_from(made.offset / 60).unwrap_or(0);
    let minutes = u8::try_from((made.offset % 60).unsigned_abs()).unwrap_or(0);
    time.utc_offset_hour(hours).utc_offset_minute(minutes)
}

/// Draws marks on a page.
struct Brush {
    fonts: Vec<Font>,
    tags: Tags,
    /// What marks that are no content are part of.
    kind: ArtifactType,
}

impl Brush {
    fn strip(&mut self, surface: &mut Surface<'_>, strip: &Strip, top: f32, setter: &Setter) {
        for mark in &strip.marks {
            match mark {
                Mark::Line { .. } => self.line(surface, mark, top, setter),
                Mark::Blank(node) => {
                    let piece = surface.start_tagged(ContentTag::Other);
                    surface.end_tagged();
                    self.tags.content(*node, piece, false);
                }
                Mark::Rule { x, y, width, weight } => {
                    self.rule(surface, MARGIN + x, top + y, *width, *weight);
                }
                Mark::Frame { y, height, weight } => {
                    let mut path = PathBuilder::new();
                    if let Some(rect) = Rect::from_xywh(MARGIN, top + y, WIDTH, *height) {
                        path.push_rect(rect);
                    }
                    self.stroke(surface, path.finish(), *weight);
                }
                Mark::Tick { x, y, size } => {
                    let mut path = PathBuilder::new();
                    if let Some(rect) = Rect::from_xywh(MARGIN + x, top + y, *size, *size) {
                        path.push_rect(rect);
                    }
                    self.stroke(surface, path.finish(), 0.8);
                }
                Mark::Drawn { shapes, x, node } => self.drawn(surface, shapes, (MARGIN + x, top), *node),
            }
        }
    }

    fn rule(&self, surface: &mut Surface<'_>, x: f32, y: f32, width: f32, weight: f32) {
        let mut path = PathBuilder::new();
        path.move_to(x, y);
        path.line_to(x + width, y);
        self.stroke(surface, path.finish(), weight);
    }

    /// Strokes an outline that is no content.
    fn stroke(&self, surface: &mut Surface<'_>, path: Option<krilla::geom::Path>, weight: f32) {
        let Some(path) = path else { return };
        surface.start_tagged(ContentTag::Artifact(Artifact::with_kind(self.kind)));
        draw(surface, &path, weight);
        surface.end_tagged();
    }

    fn drawn(&mut self, surface: &mut Surface<'_>, shapes: &[Drawn], corner: (f32, f32), node: Option<Node>) {
        let tag = node.map_or(ContentTag::Artifact(Artifact::with_kind(self.kind)), |_| ContentTag::Other);
        let id = surface.start_tagged(tag);
        drawing::draw(surface, shapes, corner);
        surface.end_tagged();
        if let Some(node) = node {
            self.tags.content(node, id, false);
        }
    }

    fn line(&mut self, surface: &mut Surface<'_>, mark: &Mark, strip_top: f32, setter: &Setter) {
        let Mark::Line { text, line, x, top, node } = mark else { return };
        let baseline = strip_top + top + text.face.baseline();
        for piece in pieces(text, *line, setter) {
            let Some(font) = self.fonts.get(piece.font) else { continue };
            let tag = match node {
                Some(_) => ContentTag::Other,
                None => ContentTag::Artifact(Artifact::with_kind(self.kind)),
            };
            let start = Point::from_xy(MARGIN + x + piece.x, baseline);
            let id = surface.start_tagged(tag);
            let grey = luma::Color::new(if piece.ink.soft { SOFT } else { 0 });
            surface.set_stroke(None);
            surface.set_fill(Some(Fill { paint: grey.into(), ..Fill::default() }));
            surface.draw_glyphs(start, &piece.glyphs, font.clone(), &text.source, piece.size, false);
            if piece.ink.struck {
                let mut path = PathBuilder::new();
                let y = baseline - piece.size * 0.27;
                path.move_to(start.x, y);
                path.line_to(start.x + piece.width, y);
                if let Some(path) = path.finish() {
                    draw(surface, &path, 0.9);
                }
            }
            surface.end_tagged();
            if let Some(node) = node {
                self.tags.content(*node, id, piece.ink.struck);
            }
        }
    }
}

fn draw(surface: &mut Surface<'_>, path: &krilla::geom::Path, width: f32) {
    surface.set_fill(None);
    surface.set_stroke(Some(Stroke { paint: luma::Color::black().into(), width, ..Stroke::default() }));
    surface.draw_path(path);
}
