//! What is written into the inbox: one mark, or the taking back of one. Every such record has the same length, so that
//! lengths on disk do not tell one mark from another. What could not be saved in the database is written in the same form
//! and signed, since the practice was open: it may be any fact, and amend an entry.

use secundine_domain::entry::{Amendment, BirthId, Entry};
use secundine_domain::fact::Fact;
use secundine_domain::time::{Occurred, Stamp};
use secundine_store::{Store, StoreError};
use serde::{Deserialize, Serialize};
use zeroize::Zeroizing;

/// Version of this form.
pub(super) const FORM: u32 = 1;
/// Records are filled up to a multiple of this.
const STEP: usize = 1024;
/// Bytes of a signature.
const SEAL: usize = 64;

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
    /// The entry that it amends.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub amends: Option<Amendment>,
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
        Self { v: FORM, birth, fact, occurred, recorded, undoes, amends: None }
    }

    /// JSON, filled up with spaces.
    pub(super) fn encode(&self) -> Result<Zeroizing<Vec<u8>>, serde_json::Error> {
        self.filled(0)
    }

    /// The same, and after it the signature of this practice's device.
    pub(super) fn encode_vouched(&self, store: &Store) -> Result<Zeroizing<Vec<u8>>, serde_json::Error> {
        let mut bytes = self.filled(SEAL)?;
        let seal = store.vouch(&bytes);
        bytes.extend(seal);
        Ok(bytes)
    }

    /// Filled up so that with so many bytes more it is a multiple of the step.
    fn filled(&self, more: usize) -> Result<Zeroizing<Vec<u8>>, serde_json::Error> {
        let mut bytes = Zeroizing::new(serde_json::to_vec(self)?);
        let filled = (bytes.len() + more).next_multiple_of(STEP);
        bytes.resize(filled - more, b' ');
        Ok(bytes)
    }

    /// Parts a record from its signature, where a device of this practice has signed it; tells whether it has.
    pub(super) fn vouched<'a>(store: &Store, bytes: &'a [u8]) -> Result<(&'a [u8], bool), StoreError> {
        match bytes.split_last_chunk::<SEAL>() {
            Some((signed, seal)) if store.is_vouched(signed, seal)? => Ok((signed, true)),
            _ => Ok((bytes, false)),
        }
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
        Record { v: FORM, birth, fact, occurred: Occurred::Marked(now.clone()), recorded: now, undoes, amends: None }
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
    fn a_record_from_before_amendments_is_read() {
        let old = record(None, Fact::BabyBorn { baby: 1 }, None);
        let bytes = old.encode().unwrap();
        assert!(!String::from_utf8_lossy(&bytes).contains("amends"));
        assert_eq!(Record::decode(&bytes), Ok(old));
    }

    #[test]
    fn a_record_of_a_later_form_is_told_from_none() {
        assert_eq!(Record::decode(br#"{"v":2,"what":"else"}"#), Err(Unreadable::Newer(2)));
        assert_eq!(Record::decode(b"{}"), Err(Unreadable::Nothing));
        assert_eq!(Record::decode(br#"{"v":1}"#), Err(Unreadable::Nothing));
    }
}
