//! Whether an object is what its name says.

use std::collections::BTreeMap;

use secundine_domain::entry::DeviceId;
use serde::de::DeserializeOwned;

use crate::access::{Access, with};
use crate::bucket::{Bucket, BucketError, Listed};
use crate::cbor;
use crate::envelope::{Kind, OBJECT_MAX, Opened, hash};
use crate::epoch::{Epoch, EpochFile, EpochId};
use crate::names::{Names, short};
use crate::notes::{self, Me};
use crate::trouble::Bad;
use crate::{SyncError, names};

/// Whose object of which kind is looked for.
#[derive(Clone, Copy)]
pub(crate) struct Wanted<'a> {
    pub kind: Kind,
    pub practice: &'a [u8; 16],
    pub device: DeviceId,
    pub public: &'a [u8; 32],
    pub seq: u64,
}

/// Reads an object that lay under this name.
pub(crate) fn object(bytes: Vec<u8>, name: &str, wanted: &Wanted<'_>) -> Result<Opened, Bad> {
    if !name.ends_with(&short(&hash(&bytes))) {
        return Err(Bad::Altered);
    }
    let opened = Opened::read(bytes).ok_or(Bad::Altered)?;
    let header = &opened.header;
    if (header.kind, &header.practice, header.device, header.seq) != (wanted.kind, wanted.practice, wanted.device, wanted.seq) {
        return Err(Bad::Swapped);
    }
    match opened.is_signed(wanted.public) {
        true => Ok(opened),
        false => Err(Bad::Unsigned),
    }
}

/// The body of an object; the keys of epochs that are not known yet are looked for.
pub(crate) fn body<T: DeserializeOwned>(
    access: &dyn Access,
    me: &Me,
    bucket: &dyn Bucket,
    opened: &Opened,
) -> Result<Result<T, Bad>, SyncError> {
    let id = opened.header.epoch;
    let mut epochs = with(access, |store| notes::epochs(store))?;
    if !epochs.contains_key(&id) {
        epochs = fetch_epochs(access, me, bucket, id, epochs)?;
    }
    let Some(epoch) = epochs.get(&id) else { return Ok(Err(Bad::NoKey)) };
    let Some(body) = opened.body(epoch, &me.secret)? else { return Ok(Err(Bad::NoKey)) };
    Ok(cbor::read(&body).map_err(|_| Bad::Unreadable))
}

/// Looks for the file of an epoch that this phone can open, the latest first; gives all that are known then.
fn fetch_epochs(
    access: &dyn Access,
    me: &Me,
    bucket: &dyn Bucket,
    wanted: EpochId,
    mut known: BTreeMap<EpochId, Epoch>,
) -> Result<BTreeMap<EpochId, Epoch>, SyncError> {
    let kem = me.kem()?;
    let names = Names::new(&me.charter.practice());
    for listed in bucket.list(&names.epochs(), None)?.iter().rev() {
        let sealed = match bucket.get(&listed.name, OBJECT_MAX) {
            Ok(sealed) => sealed,
            Err(BucketError::Absent | BucketError::TooLarge) => continue,
            Err(error) => return Err(error.into()),
        };
        let Some(file) = EpochFile::open(&sealed, &kem).filter(|file| file.charter == me.charter) else { continue };
        let new: Vec<_> = file.epochs().into_iter().filter(|(id, _)| !known.contains_key(id)).collect();
        let put = new.iter().map(|(_, epoch)| notes::put_epoch(epoch)).collect::<Result<Vec<_>, _>>()?;
        with(access, |store| Ok(store.note_down(&put)?))?;
        known.extend(new);
        if known.contains_key(&wanted) {
            break;
        }
    }
    Ok(known)
}

/// Names by the number in them, of a listing; what has none is left out.
pub(crate) fn by_seq(listed: Vec<Listed>) -> BTreeMap<u64, Vec<String>> {
    let mut by_seq: BTreeMap<u64, Vec<String>> = BTreeMap::new();
    for one in listed {
        if let Some(seq) = seq_of(&one.name) {
            by_seq.entry(seq).or_default().push(one.name);
        }
    }
    by_seq
}

/// The number in a name, which comes before its first hyphen.
pub(crate) fn seq_of(name: &str) -> Option<u64> {
    names::pieces(name).first()?.parse().ok()
}
