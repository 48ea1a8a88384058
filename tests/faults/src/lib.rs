//! Disks that fail and power that goes, under the store.
//!
//! A shim stands between SQLite and the operating system's files. It is registered as the default VFS of the test process,
//! so the store under test is the one that ships. It hands every call on to SQLite's own "unix" VFS, except those that the
//! [`plan`] says shall fail, and it writes down what reached the files, from which [`disk`] works out what a loss of power
//! may leave.
//!
//! The shim is written on SQLite's own interface, so that locking and the handling of paths stay those of the system's own
//! VFS, and the store is tried on the files that it meets.
//!
//! The plan is one for the whole process: tests that use it run one at a time.

#![cfg(unix)]
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "this is a tool of tests: it may stop at the first surprise. The shim itself, which SQLite calls, does not"
)]

pub mod birth;
pub mod check;
pub mod disk;
pub mod plan;
mod vfs;

pub use vfs::register;

use std::path::Path;

use tempfile::TempDir;

/// A folder in memory where the system has such a place.
#[must_use]
pub fn folder() -> TempDir {
    let memory = Path::new("/dev/shm");
    if memory.is_dir() { tempfile::tempdir_in(memory).unwrap() } else { tempfile::tempdir().unwrap() }
}

/// Numbers by chance, the same for the same seed: splitmix64, public domain.
#[derive(Clone)]
pub struct Chance(pub u64);

impl Chance {
    /// A number below this limit, which is not 0.
    pub fn below(&mut self, limit: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        usize::try_from((mixed ^ (mixed >> 31)) % limit as u64).unwrap_or_default()
    }
}
