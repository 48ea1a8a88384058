//! The one door to the core: [`api::Request`] in, [`api::Response`] out.

pub mod api;
