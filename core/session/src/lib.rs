//! The one door to the core: [`api::Request`] in, [`api::Response`] out.

pub mod api;
pub mod clock;
mod error;
mod practice;
pub mod rehearsal;
mod session;
mod shared;
mod views;

pub use session::{Paths, Session};
pub use shared::{SharedSession, bad_request};
