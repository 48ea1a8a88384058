//! Files about births out of a practice's store, without a session: nothing is brought in, counted or written there.

use secundine_domain::entry::BirthId;
use secundine_domain::time::Stamp;
use secundine_store::{Store, Stored};

use crate::api::{ApiError, Outgoing};
use crate::practice::OpenPractice;
use crate::session::made;

mod from_file;

pub use from_file::FromFile;

/// A practice whose births are read.
pub struct Export(OpenPractice);

impl Export {
    /// Reads a practice.
    ///
    /// # Errors
    /// [`ApiError`] says why it cannot be read.
    pub fn of(store: Store) -> Result<Self, ApiError> {
        OpenPractice::open(store).map(Self)
    }

    /// The births with what tells them from others, latest first.
    ///
    /// # Errors
    /// [`ApiError`] says why they cannot be read.
    pub fn births(&mut self) -> Result<Vec<(BirthId, String)>, ApiError> {
        let births = self.0.births()?;
        births.into_iter().map(|birth| Ok((birth.id, self.0.chart(birth.id)?.label))).collect()
    }

    /// The entries of a birth.
    ///
    /// # Errors
    /// [`ApiError`] where there are none.
    pub fn entries(&mut self, birth: BirthId) -> Result<&[Stored], ApiError> {
        self.0.entries(birth)
    }

    /// The bytes of a file about a birth.
    ///
    /// # Errors
    /// [`ApiError`] says why it cannot be made.
    pub fn file(&mut self, birth: BirthId, file: Outgoing, language: Option<&str>, now: &Stamp) -> Result<Vec<u8>, ApiError> {
        made(&mut self.0, birth, file, language, now).map(|made| made.bytes)
    }

    /// Lets go of the key.
    ///
    /// # Errors
    /// [`ApiError`] where the files could not be tidied; no entry is at stake.
    pub fn close(self) -> Result<(), ApiError> {
        self.0.close()
    }
}
