//! The band of each birth: a colour and a pattern that stand on every screen of it.

use std::collections::HashMap;

use secundine_domain::entry::BirthId;

use super::OpenPractice;
use crate::api::ApiError;

/// Bands that a person tells apart at a glance (ours).
const BANDS: u8 = 6;

/// The bands known so far.
#[derive(Default)]
pub(crate) struct Bands(HashMap<BirthId, u8>);

impl OpenPractice {
    /// The band of a birth, 0 to 5. Births registered one after the other never have the same.
    pub(crate) fn band(&mut self, birth: BirthId) -> Result<u8, ApiError> {
        if !self.bands.0.contains_key(&birth) {
            let latest_first = self.births()?;
            self.bands.0 = latest_first.iter().rev().map(|known| known.id).zip((0..BANDS).cycle()).collect();
        }
        Ok(self.bands.0.get(&birth).copied().unwrap_or(0))
    }
}
