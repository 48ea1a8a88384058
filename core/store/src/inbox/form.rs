//! A file of the inbox, byte for byte.
//!
//! | bytes | what |
//! |---|---|
//! | 18 | `secundine inbox 1` and a line feed |
//! | 2 | length of the sealed header, big endian |
//! | that many | an age file: seed (32), number (8), how far the file before had come (1 + 32 + 8 + 16) |
//! | then, for each record: 4 | its length, big endian |
//! | that many + 16 | sealed by the ratchet, with its tag |
//! | the rest | 0xff: room for more records, if any |

use age::x25519;
use sha2::{Digest, Sha256};
use zeroize::Zeroizing;

use super::RECORD_MAX;
use super::ratchet::{LENGTH, Ratchet, TAG};
use crate::StoreError;

/// Bytes on disk beside each record.
pub(super) const OVERHEAD: usize = LENGTH + TAG;

/// What stands where nothing was written yet. No record has the length that four of these say.
pub(super) const UNUSED: u8 = 0xff;

pub(super) const MAGIC: &[u8] = b"secundine inbox 1\n";
const HEADER: usize = 32 + 8 + 1 + 32 + 8 + TAG;

/// How far a file had come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tail {
    /// SHA-256 of the file's header: names the file.
    pub digest: [u8; 32],
    /// How many records it has.
    pub count: u64,
    /// Tag of the last one.
    pub tag: [u8; 16],
}

/// What a file begins with.
pub(super) struct Header {
    /// Its number in the folder.
    pub n: u64,
    /// The file before it, as its writer found it.
    pub before: Option<Tail>,
    /// What the ratchet begins from.
    pub seed: Zeroizing<[u8; 32]>,
}

/// A header sealed.
pub(super) struct Sealed {
    pub bytes: Vec<u8>,
    pub digest: [u8; 32],
    pub ratchet: Ratchet,
}

/// Why a file cannot be begun to read.
pub(super) enum NoHeader {
    /// It ends within its header: its first write was cut short, and nothing in it was acknowledged.
    Torn,
    /// It is no file of this inbox.
    Damaged,
}

/// What a file holds.
pub(super) struct Records {
    /// Those that verify, from the first on.
    pub records: Vec<Zeroizing<Vec<u8>>>,
    /// How far they go.
    pub tail: Tail,
    /// How the file goes on after them.
    pub end: End,
}

/// How a file goes on after the last record that verifies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum End {
    /// Not at all.
    Whole,
    /// With a piece of one record, as a loss of power leaves it.
    Torn,
    /// With bytes that were not written so.
    Damaged,
}

impl Header {
    pub(super) fn seal(self, recipient: &x25519::Recipient) -> Result<Sealed, StoreError> {
        let mut plain = Zeroizing::new(Vec::with_capacity(HEADER));
        plain.extend(*self.seed);
        plain.extend(self.n.to_be_bytes());
        plain.push(u8::from(self.before.is_some()));
        let before = self.before.unwrap_or(Tail { digest: [0; 32], count: 0, tag: [0; TAG] });
        plain.extend(before.digest);
        plain.extend(before.count.to_be_bytes());
        plain.extend(before.tag);
        let not_saved = |error: &dyn std::fmt::Display| StoreError::NotSaved(error.to_string());
        let sealed = age::encrypt(recipient, &plain).map_err(|error| not_saved(&error))?;
        let length = u16::try_from(sealed.len()).map_err(|error| not_saved(&error))?;
        let bytes = [MAGIC, length.to_be_bytes().as_slice(), &sealed].concat();
        Ok(Sealed { digest: Sha256::digest(&bytes).into(), bytes, ratchet: Ratchet::new(self.seed) })
    }

    /// Opens the header of a file; gives it with its digest and what follows it.
    pub(super) fn open<'a>(bytes: &'a [u8], identity: &x25519::Identity) -> Result<(Self, [u8; 32], &'a [u8]), NoHeader> {
        let (header, rest) = split_header(bytes)?;
        let sealed = header.get(MAGIC.len() + 2..).ok_or(NoHeader::Damaged)?;
        let plain = age::decrypt(identity, sealed).map(Zeroizing::new).map_err(|_| NoHeader::Damaged)?;
        let opened = Self::parse(&plain).ok_or(NoHeader::Damaged)?;
        Ok((opened, Sha256::digest(header).into(), rest))
    }

    pub(super) fn parse(plain: &[u8]) -> Option<Self> {
        let (seed, rest) = plain.split_first_chunk::<32>()?;
        let (n, rest) = rest.split_first_chunk::<8>()?;
        let (has_before, rest) = rest.split_first()?;
        let (digest, rest) = rest.split_first_chunk::<32>()?;
        let (count, rest) = rest.split_first_chunk::<8>()?;
        let tag: [u8; TAG] = rest.try_into().ok()?;
        let before = Tail { digest: *digest, count: u64::from_be_bytes(*count), tag };
        let before = (*has_before != 0).then_some(before);
        Some(Self { n: u64::from_be_bytes(*n), before, seed: Zeroizing::new(*seed) })
    }
}

fn split_header(bytes: &[u8]) -> Result<(&[u8], &[u8]), NoHeader> {
    let Some(after_magic) = bytes.strip_prefix(MAGIC) else {
        // A file system may have kept the length of a file and lost its bytes.
        let torn = MAGIC.starts_with(bytes) || bytes.iter().all(|byte| *byte == 0);
        return Err(if torn { NoHeader::Torn } else { NoHeader::Damaged });
    };
    let (length, _) = after_magic.split_first_chunk::<2>().ok_or(NoHeader::Torn)?;
    bytes.split_at_checked(MAGIC.len() + 2 + usize::from(u16::from_be_bytes(*length))).ok_or(NoHeader::Torn)
}

/// One record of what follows: its sealed bytes, and what comes after them. None where it ends before that.
fn next(rest: &[u8]) -> Option<(&[u8], &[u8])> {
    let (length, rest) = rest.split_first_chunk::<LENGTH>()?;
    let length = usize::try_from(u32::from_be_bytes(*length)).ok()?;
    rest.split_at_checked(length.checked_add(TAG)?)
}

/// How far a file goes, by its lengths alone: without a key nothing is verified.
pub(super) fn framed_tail(bytes: &[u8]) -> Option<Tail> {
    let (header, mut rest) = split_header(bytes).ok()?;
    let mut tail = Tail { digest: Sha256::digest(header).into(), count: 0, tag: [0; TAG] };
    while let Some((sealed, after)) = next(rest) {
        tail = Tail { count: tail.count + 1, tag: *sealed.last_chunk()?, ..tail };
        rest = after;
    }
    Some(tail)
}

/// Opens the records of a file as far as they verify.
pub(super) fn read(header: &Header, digest: [u8; 32], mut rest: &[u8]) -> Records {
    let mut ratchet = Ratchet::new(header.seed.clone());
    let mut records = Vec::new();
    let end = loop {
        if is_unused(rest) {
            break End::Whole;
        }
        let Some((record, after)) = next(rest).and_then(|(sealed, after)| Some((ratchet.open(sealed)?, after))) else {
            break if could_be_torn(rest) { End::Torn } else { End::Damaged };
        };
        records.push(record);
        rest = after;
    };
    Records { records, tail: Tail { digest, count: ratchet.count(), tag: ratchet.tag() }, end }
}

fn is_unused(rest: &[u8]) -> bool {
    rest.iter().all(|byte| *byte == UNUSED)
}

/// Whether these bytes can be what a loss of power left of one record: cut short, or its beginning or its end never written.
fn could_be_torn(rest: &[u8]) -> bool {
    let written = rest.iter().rposition(|byte| *byte != UNUSED).map_or(0, |last| last + 1);
    // No record is so long that its length needs the first two of its four bytes.
    let likely = rest.iter().take(2).all(|byte| [0, UNUSED].contains(byte));
    let last = next(rest).is_none_or(|(_, after)| is_unused(after));
    (likely && last && written <= RECORD_MAX + OVERHEAD) || rest.iter().take(written).all(|byte| *byte == 0)
}
