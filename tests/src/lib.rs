//! What the fuzzers and the ordinary tests share.

pub mod fuzz;
