//! Births by what their entries hold, found without reading every birth.

use secundine_domain::entry::BirthId;

use crate::database::birth_of;
use crate::{Store, StoreError};

impl Store {
    /// The births that have an entry of this kind, `same_birth` or `voice_noted`. Also one whose entry was taken out.
    ///
    /// Each of the two has an index of its entries; for another kind every entry would be read.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] where the store cannot be read.
    pub fn births_with(&self, kind: &'static str) -> Result<Vec<BirthId>, StoreError> {
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        // An entry is stored without spaces, and a quotation mark inside of words is stored with a backslash before it.
        let mut found = self.connection.prepare_cached(&asked(kind)).map_err(reading)?;
        let keys = found.query_map([], |row| row.get::<_, Vec<u8>>(0)).map_err(reading)?;
        let births = keys.map(|key| key.map(|key| birth_of(&key))).collect::<Result<Vec<_>, _>>().map_err(reading)?;
        Ok(births.into_iter().flatten().filter(|birth| *birth != BirthId::PRACTICE).collect())
    }
}

/// Word for word as the index has it.
fn asked(kind: &'static str) -> String {
    format!("SELECT DISTINCT birth FROM entry WHERE instr(body, CAST('{{\"kind\":\"{kind}\",' AS BLOB)) > 0")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::database::{TABLES, in_memory, make_indexes};

    #[test]
    fn no_other_entry_is_read_for_the_kinds_that_are_asked_for() {
        let connection = in_memory().unwrap();
        let plan = |kind: &'static str| -> String {
            connection.query_row(&format!("EXPLAIN QUERY PLAN {}", asked(kind)), [], |row| row.get("detail")).unwrap()
        };
        for kind in ["same_birth", "voice_noted"] {
            assert_eq!(plan(kind), format!("SCAN entry USING INDEX entry_{kind}"));
        }
        assert_eq!(plan("noted"), "SCAN entry");
    }

    #[test]
    fn a_store_of_before_there_were_indexes_gets_the_same_ones() {
        let schema = "SELECT group_concat(sql, ';') FROM (SELECT sql FROM sqlite_schema ORDER BY name)";
        let made = |tables: &str| -> String {
            let connection = rusqlite::Connection::open_in_memory().unwrap();
            connection.execute_batch(tables).unwrap();
            for _ in 0..2 {
                make_indexes(&connection).unwrap();
            }
            connection.query_row(schema, [], |row| row.get(0)).unwrap()
        };
        let before: String = TABLES.lines().filter(|line| !line.starts_with("CREATE INDEX")).collect::<Vec<_>>().join("\n");
        assert!(before.len() < TABLES.len());
        assert_eq!(made(&before), made(TABLES));
    }
}
