//! Facts in, understanding out.
//!
//! This crate is pure: it has no clock, no randomness, no file and no database. The time is told to it, and the same
//! entries give the same chart in whatever order they arrive.

pub mod assess;
pub mod chart;
pub mod due;
pub mod entry;
pub mod examination;
pub mod fact;
pub mod file;
pub mod growth;
pub mod leaving;
pub mod medicines;
pub mod message;
pub mod photo;
pub mod picture;
pub mod protocol;
pub mod quantity;
pub mod time;
