//! The practice's list of medicines.

use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Fact, Medicine};
use secundine_domain::medicines::known;
use secundine_domain::time::Stamp;

use super::{Draft, OpenPractice, practice_entries};
use crate::api::ApiError;

impl OpenPractice {
    /// The medicines that this practice gives; none until it lists them.
    pub(crate) fn medicines(&self) -> Result<Vec<Medicine>, ApiError> {
        let listed = practice_entries(&self.store)?.into_iter().rev().find_map(|entry| match entry.fact {
            Fact::MedicinesListed { medicines } => Some(medicines),
            _ => None,
        });
        Ok(listed.unwrap_or_default())
    }

    /// Puts a new list in the place of the last one.
    pub(crate) fn list_medicines(&mut self, medicines: Vec<Medicine>, now: &Stamp) -> Result<(), ApiError> {
        let medicines = medicines.into_iter().map(recognised).collect();
        self.write(Draft::now(BirthId::PRACTICE, Fact::MedicinesListed { medicines }, now)).map(|_| ())
    }
}

/// A medicine of the list, tied to the one that is known by its name: so its cautions come with it.
fn recognised(medicine: Medicine) -> Medicine {
    let Medicine { name, dose, route, uterotonic, .. } = medicine;
    let found = known().iter().find(|known| known.name.eq_ignore_ascii_case(name.trim()));
    let (listed, uterotonic) = (found.map(|known| known.id.clone()), found.map_or(uterotonic, |known| known.uterotonic));
    Medicine { name, dose, route, uterotonic, listed, ..Medicine::default() }
}
