//! What the others gave: their segments, in order, from the last that is known; at first from their latest snapshot.

use std::collections::BTreeMap;

use secundine_domain::entry::DeviceId;
use secundine_store::{FILE_KEY, Misfit, Note, StoreError};

use super::At;
use super::check::{self, Wanted};
use crate::bucket::{BucketError, Listed};
use crate::cbor::Blob;
use crate::envelope::{Kind, OBJECT_MAX, Opened};
use crate::keyring::Part;
use crate::names::{self, Hash, Names};
use crate::notes::{self, Peer};
use crate::roster::Member;
use crate::segment::{Segment, Stuck, Unpacked};
use crate::trouble::Bad;
use crate::{SyncError, Trouble};

/// Takes in what everybody gave who belongs, or belonged, to the practice.
pub(crate) fn all(at: &mut At<'_, '_>) -> Result<(), SyncError> {
    let me = at.device;
    let members: Vec<(DeviceId, Member)> = at.roster.members.iter().map(|(device, one)| (*device, one.clone())).collect();
    own(at)?;
    for (device, member) in members.iter().filter(|(device, _)| *device != me) {
        of(at, *device, member)?;
    }
    Ok(())
}

/// Whether what this device gave is still there.
fn own(at: &mut At<'_, '_>) -> Result<(), SyncError> {
    let (own, public) = at.with(|store| Ok((notes::own(store)?, store.public())))?;
    let (seq, device) = (own.acknowledged, at.device);
    let Ok(hash) = <[u8; 32]>::try_from(own.acknowledged_hash.as_slice()) else { return Ok(()) };
    let names = Names::new(&at.me.charter.practice());
    let listed = at.bucket.list(&names.segments(device), Some(&names.before_segment(device, seq)))?;
    let name = names.segment(device, seq, &hash);
    if !listed.iter().any(|one| one.name == name) {
        at.report.troubles.insert(Trouble::RolledBack { device, seq });
    }
    // Under this device's name nobody else writes; what is signed by it and was not written here was written by a copy.
    let strange =
        listed.iter().filter(|one| one.name != name && check::seq_of(&one.name).is_some_and(|n| n > own.seq || n == seq));
    let practice = at.me.charter.practice();
    for one in strange {
        let Some(seq) = check::seq_of(&one.name) else { continue };
        stranger(at, &one.name, &Wanted { kind: Kind::Segment, practice: &practice, device, public: &public, seq })?;
    }
    Ok(())
}

/// Tells of an object that lies where another one does or should: signed by the device, there are two of it.
fn stranger(at: &mut At<'_, '_>, name: &str, wanted: &Wanted<'_>) -> Result<(), SyncError> {
    match at.bucket.get(name, OBJECT_MAX).map(|bytes| check::object(bytes, name, wanted)) {
        Ok(Ok(_)) => drop(at.report.troubles.insert(Trouble::Forked { device: wanted.device, seq: wanted.seq })),
        Ok(Err(bad)) => drop(at.report.troubles.insert(bad.named(name))),
        Err(BucketError::Absent | BucketError::TooLarge) => {}
        Err(error) => return Err(error.into()),
    }
    Ok(())
}

/// Takes in the segments of one device.
fn of(at: &mut At<'_, '_>, device: DeviceId, member: &Member) -> Result<(), SyncError> {
    let names = Names::new(&at.me.charter.practice());
    let mut peer = at.with(|store| notes::peer(store, device))?;
    let listed = at.bucket.list(&names.segments(device), Some(&names.before_segment(device, peer.seq)))?;
    let most = largest(&listed);
    let by_seq = check::by_seq(listed);
    if peer.seq == 0 && by_seq.range(2..).next().is_some() {
        snapshot(at, device, member, &mut peer)?;
    }
    if peer.seq > 0 {
        last_is_there(at, device, member, &peer, by_seq.get(&peer.seq))?;
    }
    let held = member.removed.map_or(u64::MAX, |removed| removed.segment);
    let waiting: Vec<u64> = by_seq.range(held.saturating_add(1)..).map(|(seq, _)| *seq).collect();
    if let Some(first) = waiting.first() {
        at.report.troubles.insert(Trouble::Held { device, seq: *first, segments: waiting.len() as u64 });
    }
    let mut wanted: Vec<(u64, Vec<String>)> = Vec::new();
    for (next, (seq, listed)) in (peer.seq + 1..).zip(by_seq.range(peer.seq + 1..=held.max(peer.seq + 1))) {
        if *seq > held {
            break;
        }
        if *seq != next {
            at.report.troubles.insert(Trouble::Withheld { device, seq: next });
            break;
        }
        wanted.push((next, listed.clone()));
    }
    segments(at, device, member, peer, wanted, most)
}

/// The size of the largest object of a listing: what a fetch of any of them takes at most, so that as many are fetched ahead as
/// there is room for.
fn largest(listed: &[Listed]) -> u64 {
    listed.iter().map(|one| one.bytes).max().unwrap_or(0).min(OBJECT_MAX)
}

/// Fetches segments in their order and takes them in, until one does not fit.
fn segments(
    at: &mut At<'_, '_>,
    device: DeviceId,
    member: &Member,
    mut peer: Peer,
    wanted: Vec<(u64, Vec<String>)>,
    most: u64,
) -> Result<(), SyncError> {
    // What lies alone under its number is fetched ahead.
    let alone: Vec<String> =
        wanted.iter().map_while(|(_, listed)| listed.first().filter(|_| listed.len() == 1).cloned()).collect();
    let bucket = at.bucket;
    let mut end: Result<bool, SyncError> = Ok(true);
    bucket.get_each(&alone, most, &mut |k, fetched| {
        let Some((seq, listed)) = wanted.get(k) else { return false };
        end = one(at, device, member, &mut peer, *seq, listed, Some(fetched));
        matches!(end, Ok(true))
    });
    if !end? {
        return Ok(());
    }
    for (seq, listed) in wanted.iter().skip(alone.len()) {
        if !one(at, device, member, &mut peer, *seq, listed, None)? {
            return Ok(());
        }
    }
    Ok(())
}

/// Takes one segment in; gives whether to go on.
fn one(
    at: &mut At<'_, '_>,
    device: DeviceId,
    member: &Member,
    peer: &mut Peer,
    seq: u64,
    listed: &[String],
    mut fetched: Option<Result<Vec<u8>, BucketError>>,
) -> Result<bool, SyncError> {
    let practice = at.me.charter.practice();
    let wanted = Wanted { kind: Kind::Segment, practice: &practice, device, public: &member.public, seq };
    let mut found: Option<(&String, Opened)> = None;
    for name in listed {
        let bytes = match fetched.take().unwrap_or_else(|| at.bucket.get(name, OBJECT_MAX)) {
            Ok(bytes) => bytes,
            Err(BucketError::Absent) => continue,
            Err(BucketError::TooLarge) => {
                at.report.troubles.insert(Bad::Altered.named(name));
                continue;
            }
            Err(error) => return Err(error.into()),
        };
        at.report.progress.got_bytes += bytes.len() as u64;
        match check::object(bytes, name, &wanted) {
            Ok(_) if found.is_some() => {
                at.report.troubles.insert(Trouble::Forked { device, seq });
                return Ok(false);
            }
            Ok(opened) => found = Some((name, opened)),
            Err(bad) => drop(at.report.troubles.insert(bad.named(name))),
        }
    }
    let Some((name, opened)) = found else {
        at.report.troubles.insert(Trouble::Withheld { device, seq });
        return Ok(false);
    };
    if seq > 1 && peer.seq + 1 == seq && opened.header.before.as_slice() != peer.hash.as_slice() {
        at.report.troubles.insert(Trouble::Forked { device, seq });
        return Ok(false);
    }
    let segment: Segment = match check::body(at.access, at.me, at.bucket, &opened)? {
        Ok(segment) => segment,
        Err(bad) => {
            at.report.troubles.insert(bad.named(name));
            return Ok(false);
        }
    };
    let next = told_by(&segment, seq, &opened.hash);
    let put = vec![notes::put_peer(device, &next)?];
    let taken = put_in(at, device, seq, name, &segment, put)?;
    if taken {
        *peer = next;
        at.tell()?;
    }
    Ok(taken)
}

/// What is known of a device once this was taken in; `hash` is that of its segment `seq`.
fn told_by(segment: &Segment, seq: u64, hash: &Hash) -> Peer {
    let (hash, sealed_ms) = (Blob::from(hash.to_vec()), segment.sealed_ms);
    Peer { seq, hash, sealed_ms, seen: segment.seen.clone(), acts: segment.acts.clone() }
}

/// Puts the entries of a segment beside those that are here; gives whether they are now.
fn put_in(
    at: &mut At<'_, '_>,
    device: DeviceId,
    seq: u64,
    name: &str,
    segment: &Segment,
    mut put: Vec<Note>,
) -> Result<bool, SyncError> {
    let mut unpacked = unpack(at, device, segment)?;
    if matches!(unpacked, Err(Stuck::NoBirthKey)) {
        fetch_keys(at, device)?;
        unpacked = unpack(at, device, segment)?;
    }
    let Unpacked { publics, mut entries, files } = match unpacked {
        Ok(unpacked) => unpacked,
        Err(Stuck::NoBirthKey) => {
            at.report.troubles.insert(Trouble::NoBirthKey { device, seq });
            return Ok(false);
        }
        Err(Stuck::Unreadable) => {
            at.report.troubles.insert(Bad::Unreadable.named(name));
            return Ok(false);
        }
    };
    // A practice restored from a backup gives on what others gave it; what this phone wrote itself it has.
    let me = at.device;
    entries.retain(|entry| entry.device != me);
    put.extend(files.into_iter().map(|(file, key)| Note::Put(FILE_KEY, file.0.to_vec(), key.0.to_vec())));
    match at.with(|store| Ok(store.take_in(&publics, &entries, &put)))? {
        Ok(taken) => {
            at.report.progress.got += taken.added;
            at.births.extend(taken.births);
            Ok(true)
        }
        Err(StoreError::Misfit(Misfit::Entry { device, n, .. })) => {
            at.report.troubles.insert(Trouble::Misfit { device, n });
            Ok(false)
        }
        Err(error) => Err(error.into()),
    }
}

fn unpack(at: &At<'_, '_>, device: DeviceId, segment: &Segment) -> Result<Result<Unpacked, Stuck>, SyncError> {
    let erased: Vec<&[u8; 24]> = at.roster.erased().collect();
    at.with(|store| segment.unpack(|birth| notes::peer_key(store, device, birth), |birth| erased.contains(&birth)))
}

/// Fetches the keyring of a device: each part in its latest version.
fn fetch_keys(at: &mut At<'_, '_>, device: DeviceId) -> Result<(), SyncError> {
    let practice = at.me.charter.practice();
    let names = Names::new(&practice);
    let Some(public) = at.roster.members.get(&device).map(|member| member.public) else { return Ok(()) };
    let mut latest: BTreeMap<String, (u64, String)> = BTreeMap::new();
    for listed in at.bucket.list(&names.keyrings(device), None)? {
        let pieces = names::pieces(&listed.name);
        let (Some(part), Some(Ok(seq))) = (pieces.first(), pieces.get(1).map(|seq| seq.parse::<u64>())) else { continue };
        let version = latest.entry((*part).to_owned()).or_default();
        if version.0 < seq {
            *version = (seq, listed.name.clone());
        }
    }
    for (seq, name) in latest.into_values() {
        let bytes = match at.bucket.get(&name, OBJECT_MAX) {
            Ok(bytes) => bytes,
            Err(BucketError::Absent | BucketError::TooLarge) => continue,
            Err(error) => return Err(error.into()),
        };
        at.report.progress.got_bytes += bytes.len() as u64;
        let wanted = Wanted { kind: Kind::Keyring, practice: &practice, device, public: &public, seq };
        let part: Result<Part, Bad> = match check::object(bytes, &name, &wanted) {
            Ok(opened) => check::body(at.access, at.me, at.bucket, &opened)?,
            Err(bad) => Err(bad),
        };
        match part {
            Ok(part) => {
                let keys = part.keys.iter().map(|(birth, key)| notes::put_peer_key(device, &birth.0, key));
                let keys = keys.collect::<Result<Vec<_>, _>>()?;
                at.with(|store| Ok(store.note_down(&keys)?))?;
            }
            Err(bad) => drop(at.report.troubles.insert(bad.named(&name))),
        }
    }
    Ok(())
}

/// Whether the last segment that was taken in is still there, and alone.
fn last_is_there(
    at: &mut At<'_, '_>,
    device: DeviceId,
    member: &Member,
    peer: &Peer,
    listed: Option<&Vec<String>>,
) -> Result<(), SyncError> {
    let practice = at.me.charter.practice();
    let name = Names::new(&practice).segment(device, peer.seq, &peer.last_hash());
    if !listed.is_some_and(|listed| listed.contains(&name)) {
        at.report.troubles.insert(Trouble::RolledBack { device, seq: peer.seq });
    }
    let wanted = Wanted { kind: Kind::Segment, practice: &practice, device, public: &member.public, seq: peer.seq };
    for other in listed.into_iter().flatten().filter(|other| **other != name) {
        stranger(at, other, &wanted)?;
    }
    Ok(())
}

/// Takes in the latest whole snapshot of a device, of which nothing is known yet.
fn snapshot(at: &mut At<'_, '_>, device: DeviceId, member: &Member, peer: &mut Peer) -> Result<(), SyncError> {
    let practice = at.me.charter.practice();
    let names = Names::new(&practice);
    let held = member.removed.map_or(u64::MAX, |removed| removed.segment);
    let listed = at.bucket.list(&names.snapshots(device), None)?;
    let most = largest(&listed);
    for (seq, parts) in check::by_seq(listed).into_iter().rev().filter(|(seq, _)| *seq <= held) {
        if parts_in(at, device, member, (seq, &parts, most), peer)? {
            return Ok(());
        }
    }
    Ok(())
}

/// Takes in the parts of a snapshot; gives whether it was whole.
fn parts_in(
    at: &mut At<'_, '_>,
    device: DeviceId,
    member: &Member,
    (seq, names, most): (u64, &[String], u64),
    peer: &mut Peer,
) -> Result<bool, SyncError> {
    let practice = at.me.charter.practice();
    let wanted = Wanted { kind: Kind::Snapshot, practice: &practice, device, public: &member.public, seq };
    let bucket = at.bucket;
    let mut end: Result<bool, SyncError> = Ok(false);
    bucket.get_each(names, most, &mut |k, fetched| {
        end = part_in(at, &wanted, k, names, fetched, peer);
        // It was whole once the last part says so; until then there is more.
        matches!(end, Ok(false)) && at.report.troubles.iter().all(|one| !is_of(one, names))
    });
    end
}

fn is_of(trouble: &Trouble, names: &[String]) -> bool {
    match trouble {
        Trouble::Altered { name }
        | Trouble::Swapped { name }
        | Trouble::Unsigned { name }
        | Trouble::NoKey { name }
        | Trouble::Unreadable { name } => names.contains(name),
        _ => false,
    }
}

/// Takes in a part; gives whether it was the last of a whole snapshot.
fn part_in(
    at: &mut At<'_, '_>,
    wanted: &Wanted<'_>,
    k: usize,
    names: &[String],
    fetched: Result<Vec<u8>, BucketError>,
    peer: &mut Peer,
) -> Result<bool, SyncError> {
    let Some(name) = names.get(k) else { return Ok(false) };
    let bytes = match fetched {
        Ok(bytes) => bytes,
        Err(BucketError::Absent | BucketError::TooLarge) => {
            at.report.troubles.insert(Bad::Altered.named(name));
            return Ok(false);
        }
        Err(error) => return Err(error.into()),
    };
    at.report.progress.got_bytes += bytes.len() as u64;
    let opened = match check::object(bytes, name, wanted) {
        Ok(opened) if opened.header.part as usize == k => opened,
        Ok(_) => {
            at.report.troubles.insert(Bad::Swapped.named(name));
            return Ok(false);
        }
        Err(bad) => {
            at.report.troubles.insert(bad.named(name));
            return Ok(false);
        }
    };
    let segment: Segment = match check::body(at.access, at.me, at.bucket, &opened)? {
        Ok(segment) => segment,
        Err(bad) => {
            at.report.troubles.insert(bad.named(name));
            return Ok(false);
        }
    };
    let last = opened.header.parts != 0 && opened.header.parts as usize == names.len();
    let next = told_by(&segment, wanted.seq, &opened.header.before);
    let put = if last { vec![notes::put_peer(wanted.device, &next)?] } else { Vec::new() };
    let taken = put_in(at, wanted.device, wanted.seq, name, &segment, put)?;
    if !taken {
        at.report.troubles.insert(Bad::Unreadable.named(name));
        return Ok(false);
    }
    at.tell()?;
    if last {
        *peer = next;
    }
    Ok(last)
}
