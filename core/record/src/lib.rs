//! A chart on paper.

pub mod page;
