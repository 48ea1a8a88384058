//! A chart on paper, and as a file for other programs.
//!
//! [`document`] says what stands in the record, [`page`] how it is set; [`words`] puts messages into words; [`fhir`] writes what
//! others' programs read.

mod document;
pub mod fhir;
mod forms;
pub mod handover;
pub mod page;
mod sections;
pub mod words;

pub use document::{Origin, document, pdf};
pub use forms::{Form, form_document, form_pdf};
pub use sections::after_signing;
