//! The recovery identity as it is shown: its letters, four words, and a code that a camera reads.

use bip39::Language;
use qrcodegen::{QrCode, QrCodeEcc};
use sha2::{Digest, Sha256};

use crate::api::{QrView, RecoveryView};

/// Words for one identity, and bits that each stands for.
const WORDS: u32 = 4;
const BITS: u32 = 11;

/// An identity, in its canonical spelling, as it is shown.
pub(crate) fn view(identity: &str) -> RecoveryView {
    RecoveryView { identity: identity.to_owned(), words: words(identity), code: code(identity) }
}

/// Its words: the first 44 bits of its SHA-256, 11 bits a word, from the English list of BIP 39.
pub(crate) fn words(identity: &str) -> Vec<String> {
    let hash = Sha256::digest(identity.as_bytes());
    let first = hash.first_chunk().map_or(0, |bytes| u64::from_be_bytes(*bytes));
    let list = Language::English.word_list();
    let index = |n: u32| (first >> (u64::BITS - BITS * (n + 1))) & ((1 << BITS) - 1);
    let word = |n| list.get(usize::try_from(index(n)).ok()?).map(|word| (*word).to_owned());
    (0..WORDS).filter_map(word).collect()
}

/// A quarter of the code may be unreadable: a sheet is folded and lies for years. Only a text that is no identity could be
/// too long for a code, and has none.
fn code(identity: &str) -> QrView {
    let Ok(code) = QrCode::encode_text(identity, QrCodeEcc::Quartile) else {
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
