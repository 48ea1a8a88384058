//! A chart on paper.
//!
//! [`document`] says what stands in the record, [`page`] how it is set; [`words`] puts messages into words.

mod document;
mod forms;
pub mod handover;
pub mod page;
mod sections;
pub mod words;

pub use document::{Origin, document, pdf};
pub use forms::{Form, form_document, form_pdf};
pub use sections::after_signing;
