//! A way in for the fuzzers: what stands in the inbox once it is unsealed. Anyone can seal something to it.

/// A record of the inbox as it would be written again; none for bytes that are no record.
#[must_use]
pub fn rewritten(bytes: &[u8]) -> Option<Vec<u8>> {
    crate::locked::rewritten(bytes)
}
