//! The recovery identity as it is shown: its letters, four words, and a code that a camera reads.

use bip39::Language;
use qrcodegen::QrCodeEcc;
use sha2::{Digest, Sha256};

use crate::api::RecoveryView;
use crate::qr;

/// Words for one identity, and bits that each stands for.
const WORDS: u32 = 4;
const BITS: u32 = 11;

/// An identity, in its canonical spelling, as it is shown. A quarter of its code may be unreadable: a sheet is folded and lies
/// for years.
pub(crate) fn view(identity: &str) -> RecoveryView {
    let code = qr::code(identity, QrCodeEcc::Quartile);
    RecoveryView { identity: identity.to_owned(), words: words(identity), code }
}

/// Its words: the first 44 bits of its SHA-256, 11 bits a word, from the English list of BIP 39.
pub(crate) fn words(identity: &str) -> Vec<String> {
    spoken(&Sha256::digest(identity.as_bytes()).into())
}

/// The first 44 bits of a hash as words, to be said aloud.
pub(crate) fn spoken(hash: &[u8; 32]) -> Vec<String> {
    let first = hash.first_chunk().map_or(0, |bytes| u64::from_be_bytes(*bytes));
    let list = Language::English.word_list();
    let index = |n: u32| (first >> (u64::BITS - BITS * (n + 1))) & ((1 << BITS) - 1);
    let word = |n| list.get(usize::try_from(index(n)).ok()?).map(|word| (*word).to_owned());
    (0..WORDS).filter_map(word).collect()
}
