//! A way in for the fuzzers, and for tests that make up charts: what stands in the inbox once it is unsealed. Anyone can seal something to it.

/// A record of the inbox as it would be written again; none for bytes that are no record.
#[must_use]
pub fn rewritten(bytes: &[u8]) -> Option<Vec<u8>> {
    crate::locked::rewritten(bytes)
}

/// The text of a code as it would be written again; none for a text that is no code, or one of nothing that is known.
#[must_use]
pub fn code(text: &str) -> Option<String> {
    crate::session::rewritten(text)
}

/// A code of this name with this payload; none for another name.
#[must_use]
pub fn code_of(name: &str, payload: &[u8]) -> Option<String> {
    crate::code::of(name, payload)
}

pub use secundine_sync::fuzzing as sync;

/// The code of a handover.
#[must_use]
pub fn handover_code(text: &str) -> crate::api::QrView {
    crate::session::code(text)
}
