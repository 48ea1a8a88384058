//! What is kept outside of the database while it is open carries the device's signature: anybody can seal a record for the
//! inbox, and only who had the practice open may have written more than a mark.

use ed25519_dalek::{Signature, VerifyingKey};

use crate::{Store, StoreError};

const ELSEWHERE: &[u8] = b"secundine elsewhere 1";

fn text(bytes: &[u8]) -> Vec<u8> {
    [ELSEWHERE, bytes].concat()
}

impl Store {
    /// Signs bytes that are to be kept outside of the database, so that they are known again as this practice's own.
    #[must_use]
    pub fn vouch(&self, bytes: &[u8]) -> [u8; 64] {
        self.key.sign(&text(bytes))
    }

    /// Whether a device of this practice has signed these bytes so.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] where the store cannot be read.
    pub fn is_vouched(&self, bytes: &[u8], seal: &[u8; 64]) -> Result<bool, StoreError> {
        let reading = |error: rusqlite::Error| StoreError::reading(&error);
        let (text, seal) = (text(bytes), Signature::from_bytes(seal));
        let mut devices = self.connection.prepare_cached("SELECT public FROM device").map_err(reading)?;
        for public in devices.query_map([], |row| row.get::<_, [u8; 32]>(0)).map_err(reading)? {
            let public = VerifyingKey::from_bytes(&public.map_err(reading)?);
            if public.is_ok_and(|public| public.verify_strict(&text, &seal).is_ok()) {
                return Ok(true);
            }
        }
        Ok(false)
    }
}
