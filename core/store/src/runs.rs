//! Heartbeats: the last moment at which each run of this device's clock was seen. They stay on the device.

use rusqlite::params;
use secundine_domain::time::Run;

use crate::{Store, StoreError};

/// Name of the file in which the session keeps what it calls this run of the device.
pub const RUN: &str = "run";

impl Store {
    /// Notes that a run of the clock has come this far; a later beat of the same run takes the place of the one before.
    ///
    /// # Errors
    /// [`StoreError`] when it cannot be written. No entry is at stake.
    pub fn beat(&mut self, run: &Run) -> Result<(), StoreError> {
        self.writable()?;
        let written = self
            .connection
            .prepare_cached(
                "INSERT INTO run (boot, since_ms, wall_ms) VALUES (?1, ?2, ?3)
                 ON CONFLICT (boot) DO UPDATE SET since_ms = excluded.since_ms, wall_ms = excluded.wall_ms",
            )
            .and_then(|mut beat| beat.execute(params![run.boot, run.since_ms, run.wall_ms]));
        written.map(|_| ()).map_err(|error| StoreError::writing(&error))
    }

    /// The runs that were seen, each with its last beat.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] when the store cannot be read.
    pub fn runs(&self) -> Result<Vec<Run>, StoreError> {
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let mut select =
            self.connection.prepare_cached("SELECT boot, since_ms, wall_ms FROM run ORDER BY boot").map_err(reading)?;
        let runs = select
            .query_map([], |row| Ok(Run { boot: row.get(0)?, since_ms: row.get(1)?, wall_ms: row.get(2)? }))
            .map_err(reading)?;
        runs.collect::<Result<_, _>>().map_err(reading)
    }
}
