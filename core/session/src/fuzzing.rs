//! A way in for the fuzzers, and for tests that make up charts: what stands in the inbox once it is unsealed. Anyone can seal something to it.

/// A record of the inbox as it would be written again; none for bytes that are no record.
#[must_use]
pub fn rewritten(bytes: &[u8]) -> Option<Vec<u8>> {
    crate::locked::rewritten(bytes)
}

/// The code of a handover.
#[must_use]
pub fn handover_code(text: &str) -> crate::api::QrView {
    crate::session::code(text)
}
