//! What the fuzzers, the ordinary tests and the benches share.

pub mod fuzz;
pub mod measure;
