//! What this phone gives: its new entries, sealed into segments; a snapshot now and then; files.

use secundine_domain::entry::{BirthId, DeviceId, EntryId};
use secundine_store::{Carried, Note, StoreError};

use super::At;
use super::sealer::Sealer;
use crate::bucket::BucketError;
use crate::cbor::{Blob, Bytes};
use crate::envelope::{Header, Kind, hash, random};
use crate::epoch::Epoch;
use crate::keyring::{self, Part};
use crate::notes::{self, Out, Own};
use crate::roster::Seen;
use crate::segment::{self, Segment};
use crate::{SyncError, member};

/// Most bytes of bodies in a segment, before they are packed. Our own choice: a night has some 60,000.
const SEGMENT: usize = 256 << 10;
/// The same for a part of a snapshot.
const SNAPSHOT: usize = 4 << 20;
/// A snapshot is made after so many segments at least, and once they have half as many bytes as the last one: so all of
/// them together cost a fixed multiple of what there is.
const SNAPSHOT_AFTER: u64 = 32;
/// A device that has nothing to give says so once in this time, ms, so that silence and withholding can be told apart.
const HEARTBEAT_MS: i64 = 20 * 3_600_000;

/// Seals what is new and puts it into the bucket.
pub(crate) fn all(at: &mut At<'_, '_>) -> Result<(), SyncError> {
    if let Some(epoch) = epoch(at)? {
        while seal(at, &epoch)? {}
        snapshot(at, &epoch)?;
    }
    queue(at)
}

/// The key under which to seal; none where there is none that every removed device is without.
fn epoch(at: &At<'_, '_>) -> Result<Option<Epoch>, SyncError> {
    let mut epochs = notes::epochs(at.store)?;
    Ok(at.roster.current_epoch().and_then(|epoch| epochs.remove(&epoch.epoch)))
}

/// Seals one segment; gives whether there is more.
fn seal(at: &mut At<'_, '_>, epoch: &Epoch) -> Result<bool, SyncError> {
    let mut own = notes::own(at.store)?;
    let mut entries: Vec<Carried> = Vec::new();
    let mut put = Vec::new();
    for (device, after) in notes::sealed(at.store)? {
        let bytes: usize = entries.iter().filter_map(|entry| entry.body.as_ref()).map(Vec::len).sum();
        let Some(room) = SEGMENT.checked_sub(bytes).filter(|room| *room > 0) else { break };
        let new = at.store.carried(device, after, room)?;
        put.extend(new.last().map(|last| notes::put_sealed(device, last.n)));
        entries.extend(new);
    }
    let quiet = own.seq > 0 && at.wishes.now_ms - own.sealed_ms < HEARTBEAT_MS;
    if entries.is_empty() && quiet {
        return Ok(false);
    }
    for entry in &entries {
        put.extend(files_of(entry).map(notes::put_file_up));
    }
    let sealer = Sealer::new(at.store, at.me, epoch.clone());
    let body = body(at, &entries, &mut own, &sealer, &mut put)?;
    let before = <[u8; 32]>::try_from(own.hash.as_slice()).unwrap_or([0; 32]);
    let header = Header { seq: own.seq + 1, ..sealer.header(Kind::Segment, before)? };
    let object = sealer.seal(&header, &body)?;
    let hash = hash(&object);
    let name = sealer.names.segment(sealer.device, header.seq, &hash);
    own.seq = header.seq;
    own.hash = Blob::from(hash.to_vec());
    own.sealed_ms = at.wishes.now_ms;
    own.since += 1;
    own.since_bytes += object.len() as u64;
    let count = entries.len() as u64;
    let out = Out { name, bytes: Some(Blob::from(object)), segment: Some((header.seq, Bytes(hash))), entries: count };
    put.push(notes::enqueue(&mut own, &out)?);
    put.push(notes::put_own(&own)?);
    drop(sealer);
    at.store.note_down(&put)?;
    Ok(!entries.is_empty())
}

fn files_of(entry: &Carried) -> impl Iterator<Item = secundine_domain::file::FileId> {
    let read = entry.body.as_deref().map(secundine_domain::entry::Entry::decode);
    read.and_then(Result::ok).map(|entry| entry.fact.files()).unwrap_or_default().into_iter()
}

fn body(
    at: &At<'_, '_>,
    entries: &[Carried],
    own: &mut Own,
    sealer: &Sealer<'_>,
    put: &mut Vec<Note>,
) -> Result<Segment, SyncError> {
    let births = segment::births(entries);
    let erased: Vec<&[u8; 24]> = at.roster.erased().collect();
    let kept: Vec<[u8; 24]> = births.iter().filter(|birth| !erased.contains(birth)).copied().collect();
    let mut keys = keyring::keys_for(at.store, &kept, own, sealer, put)?.into_iter();
    let mut all = Vec::new();
    for birth in &births {
        // What was erased has no key, and no bodies.
        let key = if erased.contains(&birth) { None } else { keys.next() };
        all.push(key.map_or_else(|| random().map(Bytes), Ok)?);
    }
    let (runs, births) = segment::pack(at.store, entries, &births, &all)?;
    let peers = notes::peers(at.store)?.into_iter();
    let seen = peers.map(|(device, peer)| {
        let hash = <[u8; 32]>::try_from(peer.hash.as_slice()).unwrap_or([0; 32]);
        Seen::new(device, peer.seq, hash)
    });
    let acts = member::heads(&notes::records(at.store)?);
    Ok(Segment { sealed_ms: at.wishes.now_ms, seen: seen.collect(), acts, runs, births })
}

/// Seals everything that this device has given so far, for those who come later.
fn snapshot(at: &mut At<'_, '_>, epoch: &Epoch) -> Result<(), SyncError> {
    let mut own = notes::own(at.store)?;
    if own.since < SNAPSHOT_AFTER || own.since_bytes * 2 < own.snapshot_bytes {
        return Ok(());
    }
    let mut put = Vec::new();
    let sealed: Vec<(DeviceId, u64)> = notes::sealed(at.store)?.into_iter().collect();
    let (mut part, mut bytes, mut names) = (0, 0, Vec::new());
    let sealer = Sealer::new(at.store, at.me, epoch.clone());
    let before = <[u8; 32]>::try_from(own.hash.as_slice()).unwrap_or([0; 32]);
    let mut rest = sealed.into_iter().filter(|(_, n)| *n > 0).peekable();
    let mut after = 0;
    while let Some(&(device, upto)) = rest.peek() {
        let mut entries = at.store.carried(device, after, SNAPSHOT)?;
        entries.retain(|entry| entry.n <= upto);
        after = entries.last().map_or(upto, |last| last.n);
        if after >= upto {
            rest.next();
            after = 0;
        }
        let body = body(at, &entries, &mut own, &sealer, &mut put)?;
        // The last part says how many there are.
        let parts = if rest.peek().is_none() { part + 1 } else { 0 };
        let header = Header { seq: own.seq, part, parts, ..sealer.header(Kind::Snapshot, before)? };
        let object = sealer.seal(&header, &body)?;
        bytes += object.len() as u64;
        let name = sealer.names.snapshot(sealer.device, own.seq, part, &hash(&object));
        names.push(name.clone());
        let out = Out { name, bytes: Some(Blob::from(object)), segment: None, entries: 0 };
        put.push(notes::enqueue(&mut own, &out)?);
        part += 1;
    }
    // The one before the last is taken away: somebody may be reading the last.
    own.snapshots.push(names);
    while own.snapshots.len() > 2 {
        for name in own.snapshots.remove(0) {
            put.push(notes::enqueue(&mut own, &Out { name, bytes: None, segment: None, entries: 0 })?);
        }
    }
    (own.since, own.since_bytes, own.snapshot_bytes) = (0, 0, bytes);
    put.push(notes::put_own(&own)?);
    drop(sealer);
    at.store.note_down(&put)?;
    Ok(())
}

/// Puts what waits into the bucket, in order. What was put is the same each time.
pub(crate) fn queue(at: &mut At<'_, '_>) -> Result<(), SyncError> {
    let queue = notes::queue(at.store)?;
    at.report.progress.to_send = queue.iter().map(|(_, out)| out.entries).sum();
    for (place, out) in queue {
        match &out.bytes {
            Some(bytes) => {
                at.bucket.put(&out.name, bytes)?;
                at.report.progress.sent_bytes += bytes.len() as u64;
            }
            // A key that may not remove leaves an old keyring or snapshot where it is.
            None => match at.bucket.remove(&out.name) {
                Ok(()) | Err(BucketError::Refused(_) | BucketError::Absent) => {}
                Err(error) => return Err(error.into()),
            },
        }
        let mut put = vec![notes::dequeue(place)];
        if let Some((seq, hash)) = out.segment {
            let mut own = notes::own(at.store)?;
            (own.acknowledged, own.acknowledged_hash) = (seq, Blob::from(hash.0.to_vec()));
            put.push(notes::put_own(&own)?);
        }
        at.store.note_down(&put)?;
        at.report.progress.sent += out.entries;
        at.report.progress.to_send = at.report.progress.to_send.saturating_sub(out.entries);
        at.tell()?;
    }
    Ok(())
}

/// Puts files into the bucket that entries name and that are not there yet.
pub(crate) fn files(at: &mut At<'_, '_>) -> Result<(), SyncError> {
    let names = crate::names::Names::new(&at.me.charter.practice());
    for file in notes::files_up(at.store)? {
        let name = names.file(file);
        let there = at.bucket.list(&name, None)?.iter().any(|listed| listed.name == name);
        match at.store.sealed_file(file) {
            Ok(sealed) if !there => {
                at.bucket.put(&name, &sealed)?;
                at.report.progress.sent_bytes += sealed.len() as u64;
                at.report.files += 1;
            }
            // It is there; or it is damaged or gone here, which the check of the store tells.
            Ok(_) | Err(StoreError::NoFile | StoreError::DamagedFile(_)) => {}
            Err(error) => return Err(error.into()),
        }
        at.store.note_down(&[notes::file_is_up(file)])?;
        at.tell()?;
    }
    Ok(())
}

/// Erases births that two people want erased: here, and this device's keys of them in the bucket.
pub(crate) fn erase(at: &mut At<'_, '_>) -> Result<Vec<BirthId>, SyncError> {
    let wanted: Vec<[u8; 24]> = at.roster.erased().copied().collect();
    let mut erased = Vec::new();
    for birth in wanted {
        let key = notes::birth_key(at.store, &birth)?;
        let Some((device, n)) = birth.split_first_chunk::<16>() else { continue };
        let n = n.try_into().map(u64::from_be_bytes).unwrap_or_default();
        let id = BirthId(EntryId { device: DeviceId(*device), n });
        let here = !at.store.entries(id).map(|entries| entries.is_empty()).unwrap_or(true);
        if here {
            let files = at.store.erase(id)?;
            erased.push(id);
            forget_files(at, &files)?;
            let forget = notes::forget_peer_keys(at.store, &birth)?;
            at.store.note_down(&forget)?;
        }
        let (Some(key), Some(epoch)) = (key, epoch(at)?) else { continue };
        let mut own = notes::own(at.store)?;
        let left = notes::birth_keys(at.store)?.into_iter().filter(|(one, of)| *one != birth && of.part == key.part);
        let keys = left.map(|(birth, of)| (Bytes(birth), of.key)).collect();
        let mut put = vec![notes::forget_birth_key(&birth)];
        let sealer = Sealer::new(at.store, at.me, epoch);
        keyring::put_part(key.part, &Part { keys }, &mut own, &sealer, &mut put)?;
        put.push(notes::put_own(&own)?);
        drop(sealer);
        at.store.note_down(&put)?;
    }
    Ok(erased)
}

/// Queues the removal of the files of a birth that was erased.
fn forget_files(at: &mut At<'_, '_>, files: &[secundine_domain::file::FileId]) -> Result<(), SyncError> {
    let names = crate::names::Names::new(&at.me.charter.practice());
    let mut own = notes::own(at.store)?;
    let mut put = Vec::new();
    for file in files {
        put.push(notes::file_is_up(*file));
        put.push(notes::enqueue(&mut own, &Out { name: names.file(*file), bytes: None, segment: None, entries: 0 })?);
    }
    put.push(notes::put_own(&own)?);
    at.store.note_down(&put)?;
    Ok(())
}
