//! Codes that one phone shows and another reads: what they are called, what they carry, and how they are found on a picture.
//!
//! `SECUNDINE:1:<KIND>:<body>`, all of it letters that a QR code holds densely. The body is base32 (RFC 4648, without padding) of
//! JSON and the first four bytes of its SHA-256, so that a slip in a text that was typed is found.

use std::panic::{AssertUnwindSafe, catch_unwind};

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use image::DynamicImage;
use serde::Serialize;
use serde::de::DeserializeOwned;
use sha2::{Digest, Sha256};
use zeroize::Zeroizing;

use crate::api::{ApiError, ErrorCode};
use crate::picture::upright;

const NAME: &str = "SECUNDINE";
const VERSION: &str = "1";
const LETTERS: &[u8; 32] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
/// Most letters of a code: 113 modules across, which a phone still reads off another. Our own choice.
pub(crate) const LETTERS_MAX: usize = 2_300;
/// Most bytes of a picture.
pub(crate) const PICTURE_MAX: usize = 1 << 20;
/// Bytes of the sum that finds slips.
const SUM: usize = 4;

/// What a code is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    /// A birth that another phone may go on with, and the time on the phone that shows it.
    Birth,
    /// The answer to such a code.
    Answer,
    /// A phone that wants to share with a practice.
    Card,
    /// What lets it in, sealed to it.
    Welcome,
}

impl Kind {
    const ALL: [Self; 4] = [Self::Birth, Self::Answer, Self::Card, Self::Welcome];

    const fn name(self) -> &'static str {
        match self {
            Self::Birth => "BIRTH",
            Self::Answer => "ANSWER",
            Self::Card => "CARD",
            Self::Welcome => "WELCOME",
        }
    }
}

/// Writes a code.
///
/// # Errors
/// When it would be too large for a camera.
pub(crate) fn encode(kind: Kind, payload: &impl Serialize) -> Result<String, ApiError> {
    encode_bytes(kind, &serde_json::to_vec(payload).map_err(|_| ApiError::internal())?)
}

/// The same of bytes that have a form of their own.
///
/// # Errors
/// When it would be too large for a camera.
pub(crate) fn encode_bytes(kind: Kind, bytes: &[u8]) -> Result<String, ApiError> {
    let bytes = [bytes, &sum(bytes)].concat();
    let text = format!("{NAME}:{VERSION}:{}:{}", kind.name(), base32(&bytes));
    if text.len() > LETTERS_MAX { Err(wrong("error-code-large")) } else { Ok(text) }
}

/// The code of this name.
#[cfg(feature = "fuzzing")]
pub(crate) fn of(name: &str, payload: &[u8]) -> Option<String> {
    Kind::ALL.into_iter().find(|kind| kind.name() == name).and_then(|kind| encode_bytes(kind, payload).ok())
}

/// What a text is the code of.
///
/// # Errors
/// When it is none of ours, of a later form, or of a kind that this version does not know.
pub(crate) fn kind(text: &str) -> Result<Kind, ApiError> {
    parts(text).map(|(kind, _)| kind)
}

/// Reads a code of this kind.
///
/// # Errors
/// As for [`kind`], and when it is of another kind or not whole.
pub(crate) fn decode<T: DeserializeOwned>(wanted: Kind, text: &str) -> Result<T, ApiError> {
    serde_json::from_slice(&decode_bytes(wanted, text)?).map_err(|_| wrong("error-code-damaged"))
}

/// The same of bytes that have a form of their own.
///
/// # Errors
/// As for [`decode`].
pub(crate) fn decode_bytes(wanted: Kind, text: &str) -> Result<Vec<u8>, ApiError> {
    let (kind, body) = parts(text)?;
    if kind != wanted {
        return Err(wrong("error-code-other"));
    }
    let bytes = unbase32(&body).ok_or_else(|| wrong("error-code-damaged"))?;
    let (payload, told) = bytes.split_at_checked(bytes.len().saturating_sub(SUM)).unwrap_or_default();
    if told != sum(payload) {
        return Err(wrong("error-code-damaged"));
    }
    Ok(payload.to_vec())
}

fn parts(text: &str) -> Result<(Kind, String), ApiError> {
    // Whoever copies a text by hand or by a message may break its lines or write it small.
    let text: String = text.chars().filter(|letter| !letter.is_whitespace()).take(LETTERS_MAX + 1).collect();
    let text = text.to_ascii_uppercase();
    let mut parts = text.splitn(4, ':');
    let (Some(NAME), Some(version), Some(kind), Some(body)) = (parts.next(), parts.next(), parts.next(), parts.next()) else {
        return Err(wrong("error-code-not-ours"));
    };
    let known = Kind::ALL.into_iter().find(|known| known.name() == kind).filter(|_| version == VERSION);
    let known = known.ok_or_else(|| wrong("error-code-newer"))?;
    if text.len() > LETTERS_MAX { Err(wrong("error-code-damaged")) } else { Ok((known, body.to_owned())) }
}

/// The text of a code, from a picture as base64 or as it was typed.
///
/// # Errors
/// As for [`seen`].
pub(crate) fn from(picture: Option<&str>, text: Option<String>) -> Result<String, ApiError> {
    match picture {
        Some(picture) => seen(&picture_of(picture)?),
        None => Ok(text.unwrap_or_default()),
    }
}

fn picture_of(base64: &str) -> Result<Zeroizing<Vec<u8>>, ApiError> {
    let bytes = Zeroizing::new(BASE64_STANDARD.decode(base64).map_err(|_| wrong("error-file-part"))?);
    if bytes.len() > PICTURE_MAX { Err(wrong("error-file-part")) } else { Ok(bytes) }
}

/// The code on a picture: JPEG or PNG. One of ours goes before any other.
///
/// # Errors
/// When it is no picture, or no code is seen on it.
pub(crate) fn seen(picture: &[u8]) -> Result<String, ApiError> {
    let image = upright(picture).map_err(|_| wrong("error-no-picture"))?.image;
    // Whatever a camera saw goes into another hand's reader: a fault of it is no code, and closes no practice.
    let mut found = catch_unwind(AssertUnwindSafe(|| read(&image))).unwrap_or_default();
    found.sort_by_key(|text| kind(text).is_err());
    found.into_iter().next().ok_or_else(|| ApiError::new(ErrorCode::NotFound, "error-no-code-seen"))
}

/// Every code on a picture, looked for in its own size and in half of it: the noise of a dim room goes with the pixels.
fn read(image: &DynamicImage) -> Vec<String> {
    let grey = image.to_luma8();
    let small = image::imageops::thumbnail(&grey, (grey.width() / 2).max(1), (grey.height() / 2).max(1));
    for grey in [grey, small] {
        let mut prepared = rqrr::PreparedImage::prepare_from_greyscale(
            usize::try_from(grey.width()).unwrap_or(0),
            usize::try_from(grey.height()).unwrap_or(0),
            |x, y| {
                let at = (u32::try_from(x), u32::try_from(y));
                let (Ok(x), Ok(y)) = at else { return u8::MAX };
                grey.get_pixel_checked(x, y).map_or(u8::MAX, |pixel| pixel.0[0])
            },
        );
        let found: Vec<String> =
            prepared.detect_grids().iter().filter_map(|grid| grid.decode().ok()).map(|(_, text)| text).collect();
        if !found.is_empty() {
            return found;
        }
    }
    Vec::new()
}

fn wrong(id: &str) -> ApiError {
    ApiError::new(ErrorCode::Impossible, id)
}

fn sum(bytes: &[u8]) -> [u8; SUM] {
    let digest: [u8; 32] = Sha256::digest(bytes).into();
    std::array::from_fn(|k| digest.get(k).copied().unwrap_or_default())
}

fn base32(bytes: &[u8]) -> String {
    let (mut text, mut held, mut bits) = (String::new(), 0_u32, 0_u32);
    let letter = |five: u32| char::from(LETTERS.get(usize::try_from(five & 31).unwrap_or(0)).copied().unwrap_or(b'A'));
    for byte in bytes {
        (held, bits) = (held << 8 | u32::from(*byte), bits + 8);
        while bits >= 5 {
            bits -= 5;
            text.push(letter(held >> bits));
        }
        held &= (1 << bits) - 1;
    }
    if bits > 0 {
        text.push(letter(held << (5 - bits)));
    }
    text
}

fn unbase32(text: &str) -> Option<Vec<u8>> {
    let (mut bytes, mut held, mut bits) = (Vec::new(), 0_u32, 0_u32);
    for letter in text.bytes() {
        let five = LETTERS.iter().position(|known| *known == letter)?;
        (held, bits) = (held << 5 | u32::try_from(five).ok()?, bits + 5);
        if bits >= 8 {
            bits -= 8;
            bytes.push(u8::try_from(held >> bits & 255).ok()?);
        }
        held &= (1 << bits) - 1;
    }
    // One text for one code: nothing is left over.
    (held == 0 && bits < 5).then_some(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn id(error: ApiError) -> String {
        error.message.id
    }

    #[test]
    fn base32_is_that_of_the_standard() {
        // RFC 4648, section 10, without padding.
        for (plain, text) in
            [("", ""), ("f", "MY"), ("fo", "MZXQ"), ("foo", "MZXW6"), ("foob", "MZXW6YQ"), ("foobar", "MZXW6YTBOI")]
        {
            assert_eq!(base32(plain.as_bytes()), text);
            assert_eq!(unbase32(text).as_deref(), Some(plain.as_bytes()));
        }
        assert_eq!((unbase32("MZ1"), unbase32("M"), unbase32("MZ")), (None, None, None));
    }

    #[test]
    fn a_code_reads_back_however_it_was_copied() {
        let text = encode(Kind::Birth, &vec!["blue door", "ä"]).unwrap();
        assert!(text.starts_with("SECUNDINE:1:BIRTH:"));
        let (head, tail) = text.split_at(30);
        let broken = format!(" {}\n{tail}", head.to_lowercase());
        assert_eq!(decode::<Vec<String>>(Kind::Birth, &broken).unwrap(), ["blue door", "ä"]);
    }

    #[test]
    fn what_is_no_code_of_ours_is_refused_by_its_reason() {
        let text = encode(Kind::Birth, &1).unwrap();
        assert_eq!(id(kind("https://example.org").unwrap_err()), "error-code-not-ours");
        assert_eq!(id(kind(&text.replace(":1:", ":2:")).unwrap_err()), "error-code-newer");
        assert_eq!(id(kind("SECUNDINE:1:MOON:AA").unwrap_err()), "error-code-newer");
        assert_eq!(id(decode::<u8>(Kind::Answer, &text).unwrap_err()), "error-code-other");
        assert_eq!(id(decode::<String>(Kind::Birth, &text).unwrap_err()), "error-code-damaged");
        for at in 18..text.len() {
            let mut slip = text.clone();
            let other = if text.as_bytes().get(at) == Some(&b'A') { "B" } else { "A" };
            slip.replace_range(at..=at, other);
            assert_eq!(id(decode::<u8>(Kind::Birth, &slip).unwrap_err()), "error-code-damaged", "letter {at}");
        }
        assert_eq!(id(encode(Kind::Birth, &"x".repeat(LETTERS_MAX)).unwrap_err()), "error-code-large");
        assert_eq!(id(seen(b"no picture").unwrap_err()), "error-no-picture");
    }
}
