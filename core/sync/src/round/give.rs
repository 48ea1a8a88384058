//! What this phone gives: its new entries, sealed into segments; a snapshot now and then; files.

use secundine_domain::entry::{BirthId, DeviceId};
use secundine_store::{Carried, Note, Store, StoreError};

use super::At;
use super::sealer::Sealer;
use crate::bucket::BucketError;
use crate::cbor::{Blob, Bytes};
use crate::envelope::{Header, Kind, hash, random};
use crate::epoch::Epoch;
use crate::keyring;
use crate::notes::{self, Me, Out, Own};
use crate::roster::{Roster, Seen, unchained};
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

/// What sealing needs: this phone in its practice, and the roster.
struct Giver<'a> {
    me: &'a Me,
    roster: &'a Roster,
    now_ms: i64,
}

/// Seals what is new and puts it into the bucket.
pub(crate) fn all(at: &mut At<'_, '_>) -> Result<(), SyncError> {
    // Who is no member yet gives nothing but what makes them one.
    if at.roster.member(at.device).is_some() {
        let (me, roster, now_ms) = (at.me, at.roster.clone(), at.wishes.now_ms);
        let giver = Giver { me, roster: &roster, now_ms };
        while at.with(|store| giver.seal(store))? {}
        giver.snapshot(at)?;
    }
    queue(at)
}

impl Giver<'_> {
    /// The key under which to seal; none where there is none that every removed device is without.
    fn epoch(&self, store: &Store) -> Result<Option<Epoch>, SyncError> {
        let mut epochs = notes::epochs(store)?;
        Ok(self.roster.current_epoch().and_then(|epoch| epochs.remove(&epoch.epoch)))
    }

    /// Seals one segment; gives whether there is more.
    fn seal(&self, store: &mut Store) -> Result<bool, SyncError> {
        let Some(epoch) = self.epoch(store)? else { return Ok(false) };
        let mut own = notes::own(store)?;
        let (entries, mut put) = new_entries(store)?;
        let heads = member::heads(&notes::records(store)?);
        let acts = self.own_acts(store.device(), &heads);
        let quiet = own.seq > 0 && self.now_ms - own.sealed_ms < HEARTBEAT_MS && own.acts >= acts;
        if entries.is_empty() && quiet {
            return Ok(false);
        }
        for entry in &entries {
            put.extend(files_of(entry).map(notes::put_file_up));
        }
        let sealer = Sealer::new(store, self.me, epoch);
        let body = self.body(store, &entries, heads, &mut own, &sealer, &mut put)?;
        let header = Header { seq: own.seq + 1, ..sealer.header(Kind::Segment, own.last_hash())? };
        let object = sealer.seal(&header, &body)?;
        let hash = hash(&object);
        let name = sealer.names.segment(sealer.device, header.seq, &hash);
        own.seq = header.seq;
        own.hash = Blob::from(hash.to_vec());
        own.sealed_ms = self.now_ms;
        own.acts = acts;
        own.since += 1;
        own.since_bytes += object.len() as u64;
        let count = entries.len() as u64;
        let out = Out { name, bytes: Some(Blob::from(object)), segment: Some((header.seq, Bytes(hash))), entries: count };
        put.push(notes::enqueue(&mut own, &out)?);
        put.push(notes::put_own(&own)?);
        drop(sealer);
        store.note_down(&put)?;
        Ok(!entries.is_empty())
    }

    /// The last act of this device that its next segment has to tell of: the others look for the acts of leads by themselves, and
    /// for anybody else's only once a segment tells that there are some.
    fn own_acts(&self, this: DeviceId, heads: &[Seen]) -> u64 {
        let own = heads.iter().find(|head| head.device() == this && !self.roster.leads_ever().contains(&this));
        own.map_or(0, |head| head.seq)
    }

    fn body(
        &self,
        store: &Store,
        entries: &[Carried],
        acts: Vec<Seen>,
        own: &mut Own,
        sealer: &Sealer<'_>,
        put: &mut Vec<Note>,
    ) -> Result<Segment, SyncError> {
        let births = segment::births(entries);
        let erased: Vec<&[u8; 24]> = self.roster.erased().collect();
        let kept: Vec<[u8; 24]> = births.iter().filter(|birth| !erased.contains(birth)).copied().collect();
        let mut keys = keyring::keys_for(store, &kept, own, sealer, put)?.into_iter();
        let mut all = Vec::new();
        for birth in &births {
            // What was erased has no key, and no bodies.
            let key = if erased.contains(&birth) { None } else { keys.next() };
            all.push(key.map_or_else(|| random().map(Bytes), Ok)?);
        }
        let (runs, births) = segment::pack(store, entries, &births, &all)?;
        let peers = notes::peers(store)?.into_iter();
        let seen = peers.map(|(device, peer)| Seen::new(device, peer.seq, peer.last_hash())).collect();
        Ok(Segment { sealed_ms: self.now_ms, seen, acts, runs, births })
    }

    /// Seals everything that this device has given so far, for those who come later: a part at a time.
    fn snapshot(&self, at: &At<'_, '_>) -> Result<(), SyncError> {
        let own = at.with(|store| notes::own(store))?;
        if own.since < SNAPSHOT_AFTER || own.since_bytes * 2 < own.snapshot_bytes {
            return Ok(());
        }
        let mut rest: Vec<(DeviceId, u64)> = at.with(|store| Ok(notes::sealed(store)?.into_iter().collect()))?;
        rest.retain(|(_, n)| *n > 0);
        rest.reverse();
        let mut part = Part { number: 0, seq: own.seq, before: own.last_hash(), after: 0 };
        while let Some(&(device, upto)) = rest.last() {
            part = at.with(|store| self.snapshot_part(store, part, device, upto, rest.len() == 1))?;
            if part.after == 0 {
                rest.pop();
            }
        }
        Ok(())
    }

    /// Queues a part; gives where the next begins.
    fn snapshot_part(
        &self,
        store: &mut Store,
        part: Part,
        device: DeviceId,
        upto: u64,
        last_chain: bool,
    ) -> Result<Part, SyncError> {
        let Some(epoch) = self.epoch(store)? else { return Err(SyncError::NotMember) };
        let mut own = notes::own(store)?;
        let mut put = Vec::new();
        let mut entries = store.carried(device, part.after, SNAPSHOT)?;
        entries.retain(|entry| entry.n <= upto);
        let reached = entries.last().map_or(upto, |last| last.n);
        let sealer = Sealer::new(store, self.me, epoch);
        let acts = member::heads(&notes::records(store)?);
        let body = self.body(store, &entries, acts, &mut own, &sealer, &mut put)?;
        let last = last_chain && reached >= upto;
        // The last part says how many there are.
        let parts = if last { part.number + 1 } else { 0 };
        let header = Header { seq: part.seq, part: part.number, parts, ..sealer.header(Kind::Snapshot, part.before)? };
        let object = sealer.seal(&header, &body)?;
        let name = sealer.names.snapshot(sealer.device, part.seq, part.number, &hash(&object));
        if part.number == 0 {
            own.snapshots.push(Vec::new());
            (own.since, own.since_bytes, own.snapshot_bytes) = (0, 0, 0);
        }
        own.snapshot_bytes += object.len() as u64;
        own.snapshots.last_mut().into_iter().for_each(|names| names.push(name.clone()));
        let out = Out { name, bytes: Some(Blob::from(object)), segment: None, entries: 0 };
        put.push(notes::enqueue(&mut own, &out)?);
        // The one before the last is taken away once there is a new one: somebody may be reading the last.
        while last && own.snapshots.len() > 2 {
            for name in own.snapshots.remove(0) {
                put.push(notes::enqueue(&mut own, &Out { name, bytes: None, segment: None, entries: 0 })?);
            }
        }
        put.push(notes::put_own(&own)?);
        drop(sealer);
        store.note_down(&put)?;
        Ok(Part { number: part.number + 1, after: if reached >= upto { 0 } else { reached }, ..part })
    }
}

/// A part of a snapshot that is to be sealed.
#[derive(Clone, Copy)]
struct Part {
    number: u32,
    /// The last segment that the snapshot holds, and its hash.
    seq: u64,
    before: [u8; 32],
    /// The entry of its chain that the part begins after.
    after: u64,
}

/// Entries that are not sealed yet, of all chains of this phone, and what tells that they are.
fn new_entries(store: &Store) -> Result<(Vec<Carried>, Vec<Note>), SyncError> {
    let (mut entries, mut put, mut room) = (Vec::new(), Vec::new(), SEGMENT);
    for (device, after) in notes::sealed(store)? {
        if room == 0 {
            break;
        }
        let new = store.carried(device, after, room)?;
        put.extend(new.last().map(|last| notes::put_sealed(device, last.n)));
        room = room.saturating_sub(new.iter().filter_map(|entry| entry.body.as_ref()).map(Vec::len).sum());
        entries.extend(new);
    }
    Ok((entries, put))
}

fn files_of(entry: &Carried) -> impl Iterator<Item = secundine_domain::file::FileId> {
    let read = entry.body.as_deref().map(secundine_domain::entry::Entry::decode);
    read.and_then(Result::ok).map(|entry| entry.fact.files()).unwrap_or_default().into_iter()
}

/// Puts what waits into the bucket, in order. What was put is the same each time.
pub(crate) fn queue(at: &mut At<'_, '_>) -> Result<(), SyncError> {
    at.report.progress.to_send = at.with(|store| notes::own(store))?.waiting;
    while let Some((place, out)) = at.with(|store| notes::next_out(store))? {
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
        at.report.progress.to_send = at.with(|store| {
            let mut own = notes::own(store)?;
            let taken = notes::dequeue(&mut own, place, &out);
            if let Some((seq, hash)) = out.segment {
                (own.acknowledged, own.acknowledged_hash) = (seq, Blob::from(hash.0.to_vec()));
            }
            store.note_down(&[taken, notes::put_own(&own)?])?;
            Ok(own.waiting)
        })?;
        at.report.progress.sent += out.entries;
        at.tell()?;
    }
    Ok(())
}

/// Puts files into the bucket that entries name and that are not there yet.
pub(crate) fn files(at: &mut At<'_, '_>) -> Result<(), SyncError> {
    let names = crate::names::Names::new(&at.me.charter.practice());
    for file in at.with(|store| notes::files_up(store))? {
        let name = names.file(file);
        let there = at.bucket.list(&name, None)?.iter().any(|listed| listed.name == name);
        match at.with(|store| Ok(store.sealed_file(file)))? {
            Ok(sealed) if !there => {
                at.bucket.put(&name, &sealed)?;
                at.report.progress.sent_bytes += sealed.len() as u64;
                at.report.files += 1;
            }
            // It is there; or it is damaged or gone here, which the check of the store tells.
            Ok(_) | Err(StoreError::NoFile | StoreError::DamagedFile(_)) => {}
            Err(error) => return Err(error.into()),
        }
        at.with(|store| Ok(store.note_down(&[notes::file_is_up(file)])?))?;
        at.tell()?;
    }
    Ok(())
}

/// Erases births that two people want erased: here, and this device's keys of them in the bucket.
pub(crate) fn erase(at: &At<'_, '_>) -> Result<Vec<BirthId>, SyncError> {
    let giver = Giver { me: at.me, roster: &at.roster, now_ms: at.wishes.now_ms };
    let mut erased = Vec::new();
    for birth in at.roster.erased() {
        erased.extend(at.with(|store| giver.erase(store, birth))?);
    }
    Ok(erased)
}

impl Giver<'_> {
    fn erase(&self, store: &mut Store, birth: &[u8; 24]) -> Result<Option<BirthId>, SyncError> {
        let Some(id) = unchained(birth) else { return Ok(None) };
        // What is here of it may be unreadable to this version, and goes all the same.
        let here = store.entries(id).map_or(true, |entries| !entries.is_empty());
        let mut own = notes::own(store)?;
        let mut put = Vec::new();
        if here {
            let names = crate::names::Names::new(&self.me.charter.practice());
            for file in store.erase(id)? {
                put.push(notes::file_is_up(file));
                put.push(notes::enqueue(&mut own, &Out { name: names.file(file), bytes: None, segment: None, entries: 0 })?);
            }
            put.extend(notes::forget_peer_keys(store, birth)?);
        }
        if let (Some(key), Some(epoch)) = (notes::birth_key(store, birth)?, self.epoch(store)?) {
            let left = notes::birth_keys(store)?.into_iter().filter(|(one, of)| one != birth && of.part == key.part);
            let keys = left.map(|(birth, of)| (Bytes(birth), of.key)).collect();
            put.push(notes::forget_birth_key(birth));
            let sealer = Sealer::new(store, self.me, epoch);
            keyring::put_part(key.part, &keyring::Part { keys }, &mut own, &sealer, &mut put)?;
        }
        if !put.is_empty() {
            put.push(notes::put_own(&own)?);
            store.note_down(&put)?;
        }
        Ok(here.then_some(id))
    }
}
