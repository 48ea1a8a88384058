//! Laws of set text.

use super::super::glyphs::pieces;
use super::super::text::{Face, Setter};
use super::super::{Align, Block, Span, write};
use super::{document, text};

#[test]
fn numbers_end_at_the_same_place() {
    let mut setter = Setter::new("en").unwrap();
    let ends = ["1", "111", "888", "9"].map(|digits| {
        let text = setter.set(&text(digits), Face::BODY, Some(100.0), Align::Right);
        let line = text.layout.get(0).unwrap();
        (line.metrics().offset + line.metrics().advance, line.metrics().advance)
    });
    assert!(ends.iter().all(|(end, _)| (end - 100.0).abs() < 0.01), "{ends:?}");
    assert!((ends[1].1 - ends[2].1).abs() < 0.01, "digits differ in width");
}

#[test]
fn what_the_fonts_lack_is_told() {
    let seen = |words: &str| {
        let pdf = write(&document(vec![Block::Paragraph(text(words))]), &|_, _| String::new()).unwrap();
        pdf.unprintable.into_iter().collect::<String>()
    };
    assert_eq!(seen("Eirlys Gŵynn\nİpek Nguyễn, 12 µg \u{2068}a\u{2069}\u{200e}"), "");
    assert_eq!(seen("ok م 🦩"), "م🦩");
    assert_eq!(seen("\u{7}"), "\u{fffd}");
}

#[test]
fn a_struck_value_stays_readable() {
    let mut setter = Setter::new("en").unwrap();
    let spans = [Span::plain("350").struck(), Span::plain(" 420")];
    let text = setter.set(&spans, Face::BODY, Some(100.0), Align::Left);
    let pieces = pieces(&text, 0, &setter);
    let struck: Vec<_> = pieces.iter().filter(|piece| piece.ink.struck).collect();
    assert_eq!((struck.len(), struck[0].glyphs.len()), (1, 3));
    assert!(struck[0].width > 0.0 && struck[0].width < text.width());
}

#[test]
fn a_mark_stands_on_its_letter() {
    let mut setter = Setter::new("en").unwrap();
    let text = setter.set(&text("ễ"), Face::BODY, None, Align::Left);
    let pieces = pieces(&text, 0, &setter);
    let raised: Vec<bool> = pieces[0].glyphs.iter().map(|glyph| glyph.y_offset > 0.0).collect();
    assert_eq!(raised, [false, true]);
}
