//! Medicines known by name, and the cautions that the mother's record has for them. A caution is shown, never a block.

use std::sync::LazyLock;

use serde::Deserialize;

use crate::fact::{Client, Condition, condition_words};
use crate::message::Message;
use crate::protocol::Status;

/// A medicine of `medicines.toml`.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KnownMedicine {
    /// Stable id.
    pub id: String,
    /// Name.
    pub name: String,
    /// Whether it makes the uterus contract.
    pub uterotonic: bool,
    /// Conditions that it is a caution with.
    #[serde(default)]
    pub caution: Vec<Caution>,
}

/// A condition that a medicine is a caution with.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Caution {
    /// Which.
    pub condition: Condition,
    /// Where it comes from.
    pub source: String,
    /// How well that was checked.
    pub status: Status,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    medicine: Vec<KnownMedicine>,
}

/// The medicines that come with the program, in the order in which they are offered.
#[must_use]
pub fn known() -> &'static [KnownMedicine] {
    static KNOWN: LazyLock<Vec<KnownMedicine>> =
        LazyLock::new(|| toml::from_str(TEXT).map_or_else(|_| Vec::new(), |file: File| file.medicine));
    &KNOWN
}

const TEXT: &str = include_str!("../medicines.toml");

impl KnownMedicine {
    /// The cautions for this mother, each with its source: a condition on her record, or one that was not asked for.
    #[must_use]
    pub fn cautions(&self, client: Option<&Client>) -> Vec<(Message, &Caution)> {
        let recorded = client.and_then(|client| client.conditions.as_ref());
        let told = self.caution.iter().filter_map(|caution| {
            let id = match recorded {
                None => "caution-not-asked",
                Some(known) if known.contains(&caution.condition) => "caution-on-record",
                Some(_) => return None,
            };
            Some((Message::new(id).with("condition", condition_words(caution.condition)), caution))
        });
        told.collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(id: &str, conditions: Option<&[Condition]>) -> Vec<String> {
        let client = Client { conditions: conditions.map(|known| known.iter().copied().collect()), ..Client::default() };
        let medicine = known().iter().find(|medicine| medicine.id == id).unwrap();
        medicine.cautions(Some(&client)).into_iter().map(|(message, _)| message.id).collect()
    }

    #[test]
    fn the_file_is_read_and_every_caution_has_its_source() {
        let read: File = toml::from_str(TEXT).unwrap();
        assert_eq!(read.medicine.as_slice(), known());
        let ids: std::collections::BTreeSet<_> = known().iter().map(|medicine| medicine.id.as_str()).collect();
        assert_eq!(ids.len(), known().len(), "each id once");
        let cautions: Vec<_> = known().iter().flat_map(|medicine| &medicine.caution).collect();
        assert!(cautions.len() >= 3 && cautions.iter().all(|caution| caution.source.len() > 3));
    }

    #[test]
    fn a_caution_is_told_by_the_record() {
        // Source: FIGO 2022, second-hand (ergometrine); RCOG and ACOG, from memory, unverified (carboprost).
        let (hypertension, asthma) = (Condition::Hypertension, Condition::Asthma);
        assert_eq!(told("ergometrine", Some(&[hypertension])), ["caution-on-record"]);
        assert_eq!(told("ergometrine", Some(&[asthma])), [""; 0]);
        assert_eq!(told("carboprost", Some(&[hypertension, asthma])), ["caution-on-record"]);
        assert_eq!(told("carboprost", Some(&[])), [""; 0]);
        assert_eq!(told("carboprost", None), ["caution-not-asked"]);
        assert_eq!(told("oxytocin", None), [""; 0]);
    }
}
