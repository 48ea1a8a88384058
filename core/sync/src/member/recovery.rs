//! Getting a practice back by the identity on its sheet.

use std::collections::{BTreeMap, BTreeSet};

use age::x25519;
use secundine_store::Store;

use super::act::{Author, act, wrap};
use super::{current, lineage};
use crate::access::{Access, with};
use crate::bucket::Bucket;
use crate::cbor::Bytes;
use crate::charter::{Charter, Sheet};
use crate::epoch::{Epoch, EpochFile};
use crate::notes::{self, Me, Own};
use crate::roster::{Act, Role, Roster};
use crate::{SyncError, round};

/// Most bytes of an epoch's file: some hundred for each member.
const EPOCH_MAX: u64 = 4 << 20;

/// Gets a practice back by the identity on its sheet: this phone becomes a lead of it.
///
/// # Errors
/// [`SyncError::WrongCode`] for what is no identity, [`SyncError::NothingToRecover`], or what bucket and store say.
pub fn recover(
    access: &dyn Access,
    bucket: &dyn Bucket,
    sheet: &str,
    label: &str,
    place: Vec<u8>,
    now_ms: i64,
) -> Result<Me, SyncError> {
    if with(access, |store| current(store))?.is_some() {
        return Err(SyncError::SharesAlready);
    }
    let sheet = Sheet::read(sheet)?;
    let (charter, epochs) = epochs_of(bucket, &sheet)?;
    let kem = x25519::Identity::generate();
    let me = with(access, |store| {
        let me = Me::new(charter, sheet.secret.clone(), store.device(), &kem, label.to_owned(), place);
        let mut notes = vec![me.put()?, notes::put_own(&Own::default())?];
        notes.extend(notes::forget(store)?);
        for epoch in &epochs {
            notes.push(notes::put_epoch(epoch)?);
        }
        notes.extend(lineage(store)?);
        store.note_down(&notes)?;
        Ok(me)
    })?;
    // Until it has signed itself in, this phone does not belong to the practice; cut short, it begins anew.
    let done = round::acts::pull(access, &me, bucket, &mut BTreeSet::new())
        .and_then(|()| with(access, |store| sign_in(store, &me, &sheet, &kem, &epochs, now_ms)));
    if done.is_err() {
        with(access, |store| Ok(store.note_down(&[notes::forget_me()])?))?;
    }
    done.map(|()| me)
}

/// Makes this phone a lead, by the sheet, under a new key: whoever the sheet is used against may have the old one.
fn sign_in(
    store: &mut Store,
    me: &Me,
    sheet: &Sheet,
    kem: &x25519::Identity,
    epochs: &[Epoch],
    now_ms: i64,
) -> Result<(), SyncError> {
    let by = me.charter.recovery_id().ok_or(SyncError::WrongCode)?;
    let author = Author::sheet(sheet, by);
    let (mut own, mut records) = (notes::own(store)?, notes::records(store)?);
    let public = Bytes(store.public());
    let add = Act::Add { public, kem: kem.to_public().to_string(), label: me.label.clone(), role: Role::Lead };
    let epoch = epochs.iter().max_by_key(|epoch| epoch.counter).ok_or(SyncError::NothingToRecover)?;
    let mut notes = act(me, &author, epoch, &mut own, &mut records, add, now_ms)?;
    let roster = Roster::of(&me.charter, &records);
    let next = Epoch::random(roster.last_counter() + 1)?;
    notes.push(notes::put_epoch(&next)?);
    notes.extend(wrap(me, &author, epoch, &next, epochs, &mut own, &mut records, now_ms)?);
    notes.push(notes::put_own(&own)?);
    store.note_down(&notes)?;
    Ok(())
}

/// The charter of the practice that this sheet opens, and its epochs.
fn epochs_of(bucket: &dyn Bucket, sheet: &Sheet) -> Result<(Charter, Vec<Epoch>), SyncError> {
    let mut found: Option<(Charter, BTreeMap<_, _>)> = None;
    for listed in bucket.list("practice/", None)?.iter().filter(|listed| listed.name.contains("/epoch/")) {
        let Ok(sealed) = bucket.get(&listed.name, EPOCH_MAX) else { continue };
        let Some(file) = EpochFile::open(&sealed, &sheet.identity) else { continue };
        let fits = file.charter.recovery.0 == sheet.signer.verifying_key().to_bytes()
            && listed.name.starts_with(&crate::names::practice(&file.charter.practice()));
        let charter = file.charter.clone();
        match &mut found {
            _ if !fits => {}
            None => found = Some((charter, file.epochs())),
            Some((known, epochs)) if *known == charter => epochs.extend(file.epochs()),
            Some(_) => {}
        }
    }
    let (charter, epochs) = found.ok_or(SyncError::NothingToRecover)?;
    Ok((charter, epochs.into_values().collect()))
}
