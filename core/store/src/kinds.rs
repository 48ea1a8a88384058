//! Births by what their entries hold, found without reading every birth.

use rusqlite::params;
use secundine_domain::entry::BirthId;

use crate::database::birth_of;
use crate::{Store, StoreError};

impl Store {
    /// The births that have an entry of this kind, as stored: `voice_noted`. Also one whose entry was taken out.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] where the store cannot be read.
    pub fn births_with(&self, kind: &str) -> Result<Vec<BirthId>, StoreError> {
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        // An entry is stored without spaces, and a quotation mark inside of words is stored with a backslash before it.
        let looked_for = format!("{{\"kind\":\"{kind}\",").into_bytes();
        let mut found =
            self.connection.prepare_cached("SELECT DISTINCT birth FROM entry WHERE instr(body, ?1) > 0").map_err(reading)?;
        let keys = found.query_map(params![looked_for], |row| row.get::<_, Vec<u8>>(0)).map_err(reading)?;
        let births = keys.map(|key| key.map(|key| birth_of(&key))).collect::<Result<Vec<_>, _>>().map_err(reading)?;
        Ok(births.into_iter().flatten().filter(|birth| *birth != BirthId::PRACTICE).collect())
    }
}
