//! A code that a camera reads, as the page draws it.

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

use crate::api::QrView;

/// Says that the bytes are UTF-8. Readers that are told nothing guess, and some guess wrong.
const UTF_8: u32 = 26;

/// A text as a code, of which so much may be unreadable. A text that is too long for one has a code without modules.
pub(crate) fn code(text: &str, level: QrCodeEcc) -> QrView {
    let mut segments = QrSegment::make_segments(text);
    if !text.is_ascii() {
        segments.insert(0, QrSegment::make_eci(UTF_8));
    }
    let Ok(code) = QrCode::encode_segments_advanced(&segments, level, Version::MIN, Version::MAX, None, false) else {
        return QrView { side: 0, path: String::new() };
    };
    let rows = (0..code.size()).map(|y| row(&code, y));
    QrView { side: code.size().unsigned_abs(), path: rows.collect() }
}

/// The dark modules of a row, each run of them one rectangle.
fn row(code: &QrCode, y: i32) -> String {
    let dark = |x: i32| code.get_module(x, y);
    let starts = (0..code.size()).filter(|x| dark(*x) && !dark(x - 1));
    let run = |x: i32| {
        let length = (x..).take_while(|x| dark(*x)).count();
        format!("M{x} {y}h{length}v1h-{length}z")
    };
    starts.map(run).collect()
}
