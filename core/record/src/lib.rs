//! A chart on paper, and as a file for other programs.
//!
//! [`document`] says what stands in the record, [`page`] how it is set; [`words`] puts messages into words. [`csv`] is every
//! fact as a table, [`calendar`] what is planned, [`fhir`] a bundle that other programs read.

mod calendar;
mod document;
pub mod fhir;
mod forms;
mod graph;
pub mod handover;
pub mod page;
mod sections;
mod table;
pub mod words;

pub use calendar::calendar;
pub use document::{Origin, document, pdf};
pub use forms::{Form, form_document, form_pdf, parents_document, parents_pdf};
pub use sections::after_signing;
pub use table::csv;
