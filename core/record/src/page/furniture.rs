//! What every page carries: the label and the banner above, the banner and the footer below.

use std::rc::Rc;

use krilla::tagging::Tag;

use super::strip::{Mark, Strip};
use super::tags::{Node, Tags};
use super::text::{Face, Setter, Text};
use super::{Align, Document, MARGIN, Manner, PAGE_HEIGHT, WIDTH};

/// Share of the width that the left side of the footer may take.
const FOOTER_LEFT: f32 = 0.72;
/// Between the header and the body, and between the body and the footer.
const AIR: f32 = 16.0;
const BANNER_PAD: f32 = 4.0;

/// The same on every page but for the page number.
pub(super) struct Furniture {
    /// Begins at the top margin.
    pub head: Strip,
    /// Ends at the bottom margin.
    pub foot: Strip,
    /// Where the page number stands in the foot.
    page_top: f32,
}

impl Furniture {
    pub fn new(document: &Document, setter: &mut Setter, tags: &mut Tags) -> Self {
        let mut head = Strip::default();
        if document.manner == Manner::Record {
            let label = setter.set_short(&document.label, Face::HEADER, WIDTH, Align::Left, 3);
            let node = tags.add(Tags::ROOT, Tag::P);
            head.height = lines(&mut head, &label, 0.0, 0.0, Some(node)) + 4.0;
            head.marks.push(Mark::Rule { x: 0.0, y: head.height, width: WIDTH, weight: 0.6 });
        }
        let mut foot = Strip::default();
        if let Some(words) = &document.banner {
            let node = tags.add(Tags::ROOT, Tag::P);
            head.height += 8.0;
            banner(&mut head, words, setter, Some(node));
            banner(&mut foot, words, setter, None);
            foot.height += 8.0;
        }
        let page_top = foot.height;
        let (share, align) = match document.manner {
            Manner::Record => (FOOTER_LEFT, Align::Left),
            Manner::Keepsake => (1.0, Align::Centre),
        };
        let left = setter.set_short(&document.footer, Face::FOOTER, WIDTH * share, align, 2);
        let bottom = lines(&mut foot, &left, 0.0, page_top, None);
        foot.height = bottom.max(page_top + Face::FOOTER.leading);
        Self { head, foot, page_top }
    }

    /// Top of the body, in points from the top of the page.
    pub fn body_top(&self) -> f32 {
        MARGIN + self.head.height + AIR
    }

    /// Height of the body in points.
    pub fn body(&self) -> f32 {
        self.foot_top() - AIR - self.body_top()
    }

    /// Top of the foot, in points from the top of the page.
    pub fn foot_top(&self) -> f32 {
        PAGE_HEIGHT - MARGIN - self.foot.height
    }

    /// The foot with the words for one page.
    pub fn foot_of(&self, words: &str, setter: &mut Setter) -> Strip {
        let mut foot = self.foot.repeated();
        let width = WIDTH * (1.0 - FOOTER_LEFT);
        let text = setter.set_short(words, Face::FOOTER, width, Align::Right, 1);
        lines(&mut foot, &text, WIDTH * FOOTER_LEFT, self.page_top, None);
        foot
    }
}

/// Adds a framed warning below what the strip holds.
fn banner(strip: &mut Strip, words: &str, setter: &mut Setter, node: Option<Node>) {
    let pad = 10.0;
    let text = setter.set_short(words, Face::BANNER, WIDTH - 2.0 * pad, Align::Left, 2);
    let top = strip.height;
    // The words stand in the middle, whatever their length.
    let x = ((WIDTH - text.width()) / 2.0).max(pad);
    strip.height = lines(strip, &text, x, top + BANNER_PAD, node) + BANNER_PAD;
    strip.marks.push(Mark::Frame { y: top, height: strip.height - top, weight: 2.0 });
}

/// Adds all lines of a text and gives the height below them.
fn lines(strip: &mut Strip, text: &Rc<Text>, x: f32, mut top: f32, node: Option<Node>) -> f32 {
    for line in 0..text.lines() {
        strip.marks.push(Mark::Line { text: Rc::clone(text), line, x, top, node });
        top += text.face.leading;
    }
    top
}
