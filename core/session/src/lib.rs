//! The one door to the core: [`api::Request`] in, [`api::Response`] out.

pub mod api;
pub mod backup;
pub mod clock;
mod code;
mod error;
mod examining;
pub mod export;
#[cfg(feature = "fuzzing")]
#[doc(hidden)]
pub mod fuzzing;
mod hide;
mod keys;
mod locked;
pub mod native;
mod own;
mod panics;
pub mod picture;
mod practice;
mod qr;
mod recovery;
pub mod rehearsal;
pub mod salvage;
pub mod sending;
mod session;
mod shared;
mod sync;
pub mod verify;
mod views;
mod wipe;

pub use panics::panics_tell_only_where;
pub use session::{Paths, Session};
pub use shared::{SharedSession, bad_request};
