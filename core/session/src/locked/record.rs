//! What is written into the inbox: one mark, or the taking back of one. Every record has the same length, so that lengths
//! on disk do not tell one mark from another.

use secundine_domain::entry::{BirthId, Entry};
use secundine_domain::fact::Fact;
use secundine_domain::time::{Occurred, Stamp};
use serde::{Deserialize, Serialize};
use zeroize::Zeroizing;

/// Version of this form.
pub(super) const FORM: u32 = 1;
/// Records are filled up to a multiple of this.
const STEP: usize = 1024;

/// A record of the inbox.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub(super) struct Record {
    v: u32,
    /// The birth that it belongs to, where it was known.
    pub birth: Option<BirthId>,
    pub fact: Fact,
    pub occurred: Occurred,
    pub recorded: Stamp,
    /// The mark that is taken back: what and when.
    pub undoes: Option<Undone>,
}

/// Names a mark that has no id yet: no two are written at the same moment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub(super) struct Undone {
    pub fact: Fact,
    pub recorded: Stamp,
}

/// Why a record cannot be taken in.
#[derive(Debug, PartialEq)]
pub(super) enum Unreadable {
    /// Written by a later version of the program.
    Newer(u32),
    /// No record.
    Nothing,
}

#[derive(Deserialize)]
struct Version {
    v: u32,
}

impl Record {
    pub(super) fn new(birth: Option<BirthId>, fact: Fact, occurred: Occurred, recorded: Stamp, undoes: Option<Entry>) -> Self {
        let undoes = undoes.map(|entry| Undone { fact: entry.fact, recorded: entry.recorded });
        Self { v: FORM, birth, fact, occurred, recorded, undoes }
    }

    /// JSON, filled up with spaces.
    pub(super) fn encode(&self) -> Result<Zeroizing<Vec<u8>>, serde_json::Error> {
        let mut bytes = Zeroizing::new(serde_json::to_vec(self)?);
        let filled = bytes.len().next_multiple_of(STEP);
        bytes.resize(filled, b' ');
        Ok(bytes)
    }

    pub(super) fn decode(bytes: &[u8]) -> Result<Self, Unreadable> {
        let version: Version = serde_json::from_slice(bytes).map_err(|_| Unreadable::Nothing)?;
        if version.v > FORM {
            return Err(Unreadable::Newer(version.v));
        }
        serde_json::from_slice(bytes).map_err(|_| Unreadable::Nothing)
    }
}

#[cfg(test)]
mod tests {
    use secundine_domain::entry::{DeviceId, EntryId};
    use secundine_domain::time::Boot;

    use super::*;

    fn record(birth: Option<BirthId>, fact: Fact, undoes: Option<Fact>) -> Record {
        let boot = Some(Boot { id: "0b7d0c5e-6a53-4a8e-b9a6-1c1f6f1f6c1f".to_owned(), since_ms: 999_999_999_999 });
        let zone = Some("America/Argentina/ComodRivadavia".to_owned());
        let now = Stamp { wall_ms: 1_795_570_800_000, offset_min: -180, zone, boot };
        let undoes = undoes.map(|fact| Undone { fact, recorded: now.clone() });
        Record { v: FORM, birth, fact, occurred: Occurred::Marked(now.clone()), recorded: now, undoes }
    }

    #[test]
    fn every_kind_of_mark_has_one_length() {
        let birth = Some(BirthId(EntryId { device: DeviceId([0xff; 16]), n: u64::MAX }));
        let babies = vec![1, 2, 3];
        let records = [
            record(None, Fact::BabyBorn { baby: 1 }, None),
            record(birth, Fact::MembranesBorn { babies: babies.clone() }, None),
            record(birth, Fact::Retracted, Some(Fact::Noted { text: super::super::MOMENT.to_owned() })),
            record(birth, Fact::Retracted, Some(Fact::PlacentaBorn { babies })),
        ];
        for record in records {
            let bytes = record.encode().unwrap();
            assert_eq!(bytes.len(), STEP, "{record:?}");
            assert_eq!(Record::decode(&bytes), Ok(record));
        }
    }

    #[test]
    fn a_record_of_a_later_form_is_told_from_none() {
        assert_eq!(Record::decode(br#"{"v":2,"what":"else"}"#), Err(Unreadable::Newer(2)));
        assert_eq!(Record::decode(b"{}"), Err(Unreadable::Nothing));
        assert_eq!(Record::decode(br#"{"v":1}"#), Err(Unreadable::Nothing));
    }
}
