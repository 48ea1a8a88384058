//! Who belongs to a practice that shares, and what is changed of it.
//!
//! All of it is done without a network: what is to be told to the others waits in the queue.

mod act;
mod joining;
mod recovery;

use std::collections::BTreeSet;

use secundine_domain::entry::{BirthId, DeviceId};
use secundine_store::{Note, Store};

use crate::SyncError;
use crate::cbor::Bytes;
use crate::notes::{self, Me};
use crate::roster::{Act, Role, Roster};

use act::change;
pub(crate) use act::heads;
#[cfg(feature = "fuzzing")]
pub(crate) use joining::Welcome;
pub use joining::{Card, admit, found, join, may_join};
pub use recovery::recover;

/// Changes what somebody may do.
///
/// # Errors
/// [`SyncError::NotLead`], [`SyncError::NoDevice`], [`SyncError::LastLead`], or what the store says.
pub fn set_role(store: &mut Store, device: DeviceId, role: Role, now_ms: i64) -> Result<(), SyncError> {
    let (me, roster) = lead(store)?;
    roster.member(device).ok_or(SyncError::NoDevice)?;
    if role != Role::Lead && is_last_lead(&roster, device) {
        return Err(SyncError::LastLead);
    }
    change(store, &me, Some(Act::Role { device: Bytes(device.0), role }), false, now_ms)
}

/// Removes a device: from now on everything is sealed under a key that it does not get.
///
/// # Errors
/// [`SyncError::NotLead`], [`SyncError::NoDevice`], [`SyncError::LastLead`], or what the store says.
pub fn remove(store: &mut Store, device: DeviceId, now_ms: i64) -> Result<(), SyncError> {
    let (me, roster) = lead(store)?;
    roster.member(device).ok_or(SyncError::NoDevice)?;
    if is_last_lead(&roster, device) {
        return Err(SyncError::LastLead);
    }
    let segment = match device == store.device() {
        true => notes::own(store)?.seq,
        false => notes::peers(store)?.get(&device).map_or(0, |peer| peer.seq),
    };
    change(store, &me, Some(Act::Remove { device: Bytes(device.0), segment }), true, now_ms)
}

/// Takes in what a removed device wrote, as far as this segment.
///
/// # Errors
/// [`SyncError::NotLead`], [`SyncError::NoDevice`], or what the store says.
pub fn accept(store: &mut Store, device: DeviceId, segment: u64, now_ms: i64) -> Result<(), SyncError> {
    let (me, roster) = lead(store)?;
    roster.members.get(&device).filter(|member| member.removed.is_some()).ok_or(SyncError::NoDevice)?;
    change(store, &me, Some(Act::Accept { device: Bytes(device.0), segment }), false, now_ms)
}

/// Asks that a birth be erased; it is once another person has asked too.
///
/// # Errors
/// [`SyncError::NotMember`], or what the store says.
pub fn ask_erasure(store: &mut Store, birth: BirthId, now_ms: i64) -> Result<(), SyncError> {
    let birth = secundine_store::chained(birth);
    let me = current(store)?.ok_or(SyncError::NotShared)?;
    let roster = roster(store)?;
    roster.member(store.device()).filter(|member| member.role != Role::Student).ok_or(SyncError::NotMember)?;
    change(store, &me, Some(Act::Erase { birth: Bytes(birth) }), false, now_ms)
}

/// Makes a new epoch where none can be used, as after two leads acted at once.
pub(crate) fn mend_epoch(store: &mut Store, me: &Me, now_ms: i64) -> Result<(), SyncError> {
    change(store, me, None, true, now_ms)
}

/// The roster, as this phone knows it.
///
/// # Errors
/// [`SyncError::NotShared`], or what the store says.
pub fn roster(store: &Store) -> Result<Roster, SyncError> {
    let me = notes::me(store)?.ok_or(SyncError::NotShared)?;
    Ok(Roster::of(&me.charter, &notes::records(store)?))
}

/// Where the practice shares, from now on; the others learn of it from a person.
///
/// # Errors
/// [`SyncError::NotShared`], or what the store says.
pub fn set_place(store: &mut Store, place: Vec<u8>) -> Result<(), SyncError> {
    let mut me = notes::me(store)?.ok_or(SyncError::NotShared)?;
    me.place = place;
    Ok(store.note_down(&[me.put()?])?)
}

/// How many entries of this phone the bucket does not have yet.
///
/// # Errors
/// What the store says.
pub fn waiting(store: &Store) -> Result<u64, SyncError> {
    let mut waiting = notes::own(store)?.waiting;
    for (device, sealed) in notes::sealed(store)? {
        waiting += store.chain_of(device)?.0.saturating_sub(sealed);
    }
    Ok(waiting)
}

/// The devices of the practice that are other people's: those in the roster, without this phone and the devices that it was.
///
/// # Errors
/// What the store says.
pub fn others(store: &Store) -> Result<BTreeSet<DeviceId>, SyncError> {
    if notes::me(store)?.is_none() {
        return Ok(BTreeSet::new());
    }
    let own = notes::sealed(store)?;
    let others = roster(store)?.members.into_keys();
    Ok(others.filter(|device| *device != store.device() && !own.contains_key(device)).collect())
}

/// This phone as a part of its practice, if it still is the device that joined.
///
/// # Errors
/// What the store says.
pub fn current(store: &Store) -> Result<Option<Me>, SyncError> {
    Ok(notes::me(store)?.filter(|me| me.device.0 == store.device().0))
}

fn is_last_lead(roster: &Roster, device: DeviceId) -> bool {
    roster.is_lead(device) && roster.present().filter(|(_, member)| member.role == Role::Lead).count() < 2
}

fn lead(store: &Store) -> Result<(Me, Roster), SyncError> {
    let me = current(store)?.ok_or(SyncError::NotShared)?;
    let roster = roster(store)?;
    match roster.is_lead(store.device()) {
        true => Ok((me, roster)),
        false => Err(SyncError::NotLead),
    }
}

/// What this phone has of entries when it begins to share: its own chain, and those of devices that it was before.
fn lineage(store: &Store) -> Result<Vec<Note>, SyncError> {
    let was = notes::me(store)?.map(|me| DeviceId(me.device.0));
    let others: BTreeSet<DeviceId> = match &was {
        Some(_) => roster(store)?.members.into_keys().filter(|device| Some(*device) != was).collect(),
        None => BTreeSet::new(),
    };
    let devices = store.publics()?.into_keys().filter(|device| !others.contains(device));
    Ok(devices.map(|device| notes::put_sealed(device, 0)).collect())
}
