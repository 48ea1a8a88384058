//! Files of the inbox for the fuzzers, and how they are read.

use age::x25519;
use zeroize::Zeroizing;

use super::Tail;
use super::form::{End, Header, MAGIC, framed_tail, read};
use super::ratchet::Ratchet;
use crate::StoreError;

/// What a file's records are sealed from where it comes without a header.
const SEED: [u8; 32] = [7; 32];

/// What a file of the inbox was read as.
pub struct InboxRead {
    /// The records that verify.
    pub records: Vec<Zeroizing<Vec<u8>>>,
    /// How far they go.
    pub tail: Tail,
    /// Whether nothing comes after them.
    pub whole: bool,
    /// How far the file goes by its lengths alone; none where it comes without a header.
    pub framed: Option<Tail>,
}

/// Reads a whole file, or what follows a header; none where the header does not open.
#[must_use]
pub fn read_inbox(bytes: &[u8], identity: &x25519::Identity) -> Option<InboxRead> {
    let (header, digest, rest) = match bytes.starts_with(MAGIC) {
        true => Header::open(bytes, identity).ok()?,
        false => (bare(bytes), [0; 32], bytes),
    };
    let held = read(&header, digest, rest);
    Some(InboxRead { records: held.records, tail: held.tail, whole: held.end == End::Whole, framed: framed_tail(bytes) })
}

/// Records as they follow a header.
///
/// # Errors
/// As for a record that cannot be sealed.
pub fn seal_records(records: &[&[u8]]) -> Result<Vec<u8>, StoreError> {
    let mut ratchet = Ratchet::new(Zeroizing::new(SEED));
    let sealed: Result<Vec<_>, _> = records.iter().map(|record| ratchet.seal(record)).collect();
    Ok(sealed?.concat())
}

/// A header of the bytes themselves where they are one that was opened, so that this is tried too.
fn bare(bytes: &[u8]) -> Header {
    Header {
        seed: Zeroizing::new(SEED),
        ..Header::parse(bytes).unwrap_or(Header { n: 1, before: None, seed: Zeroizing::default() })
    }
}
