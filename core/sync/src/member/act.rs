//! An act upon the roster, signed and queued; and the file of an epoch's key, for everybody who belongs.

use std::collections::BTreeMap;

use ed25519_dalek::Signer;
use secundine_domain::entry::DeviceId;
use secundine_store::{Note, Store};

use crate::SyncError;
use crate::cbor::Bytes;
use crate::charter::Sheet;
use crate::envelope::{DOMAIN, Header, Kind, hash};
use crate::epoch::{Epoch, EpochFile};
use crate::names::Names;
use crate::notes::{self, Me, Out, Own};
use crate::roster::{Act, Entry, Record, Roster, Seen};
use crate::round::sealer::{Sealer, Sign};

/// Who signs an act.
pub(super) struct Author<'a> {
    device: DeviceId,
    sign: Sign<'a>,
}

impl<'a> Author<'a> {
    pub(super) fn phone(store: &'a Store) -> Self {
        Self { device: store.device(), sign: Box::new(|digest| store.sign(DOMAIN, digest)) }
    }

    pub(super) fn sheet(sheet: &'a Sheet, device: DeviceId) -> Self {
        Self { device, sign: Box::new(|digest| sheet.signer.sign(&[DOMAIN, digest].concat()).to_bytes()) }
    }
}

/// Acts as this phone; `wraps` where the epoch's file has to be made anew: under a new key if any device was removed.
pub(super) fn change(store: &mut Store, me: &Me, what: Option<Act>, wraps: bool, now_ms: i64) -> Result<(), SyncError> {
    let (mut own, mut records, epochs) = (notes::own(store)?, notes::records(store)?, notes::epochs(store)?);
    let before = Roster::of(&me.charter, &records);
    let latest = before.current_epoch().and_then(|epoch| epochs.get(&epoch.epoch));
    let latest = latest.or_else(|| epochs.values().max_by_key(|epoch| epoch.counter)).ok_or(SyncError::NotMember)?;
    let author = Author::phone(store);
    let mut notes = Vec::new();
    if let Some(what) = what {
        notes.extend(act(me, &author, latest, &mut own, &mut records, what, now_ms)?);
    }
    if wraps {
        let roster = Roster::of(&me.charter, &records);
        let kept = roster.current_epoch().and_then(|epoch| epochs.get(&epoch.epoch)).cloned();
        let next = match kept {
            Some(kept) => kept,
            None => Epoch::random(roster.last_counter() + 1)?,
        };
        notes.push(notes::put_epoch(&next)?);
        let known: Vec<Epoch> = epochs.values().cloned().collect();
        notes.extend(wrap(me, &author, latest, &next, &known, &mut own, &mut records, now_ms)?);
    }
    notes.push(notes::put_own(&own)?);
    drop(author);
    store.note_down(&notes)?;
    Ok(())
}

/// Queues an act, and gives what is to be noted down.
pub(super) fn act(
    me: &Me,
    author: &Author<'_>,
    epoch: &Epoch,
    own: &mut Own,
    records: &mut Vec<Record>,
    act: Act,
    now_ms: i64,
) -> Result<Vec<Note>, SyncError> {
    let clock = records.iter().map(|record| record.entry.clock).max().unwrap_or(0) + 1;
    let seen = heads(records);
    let last = records.iter().filter(|record| record.author.0 == author.device.0).max_by_key(|record| record.seq);
    let (seq, before) = last.map_or((1, [0; 32]), |last| (last.seq + 1, last.hash.0));
    let entry = Entry { clock, wall_ms: now_ms, seen, act };
    let sealer = Sealer::signing(me, epoch.clone(), author.device, Box::new(&author.sign));
    let header = Header { seq, ..sealer.header(Kind::Roster, before)? };
    let object = sealer.seal(&header, &entry)?;
    let hash = hash(&object);
    let name = sealer.names.roster(author.device, seq, &hash);
    let record = Record { author: Bytes(author.device.0), seq, hash: Bytes(hash), entry };
    let out = Out { name, bytes: Some(serde_bytes::ByteBuf::from(object)), segment: None, entries: 0 };
    let notes = vec![notes::put_record(&record)?, notes::enqueue(own, &out)?];
    records.push(record);
    Ok(notes)
}

/// How far each author's acts are known.
pub(crate) fn heads(records: &[Record]) -> Vec<Seen> {
    let mut heads: BTreeMap<Bytes<16>, &Record> = BTreeMap::new();
    for record in records {
        let head = heads.entry(record.author).or_insert(record);
        if head.seq < record.seq {
            *head = record;
        }
    }
    heads.values().map(|record| Seen { device: record.author, seq: record.seq, hash: record.hash }).collect()
}

/// Queues the age file of an epoch for everybody who belongs to the practice and for the sheet, and tells of it under `under`.
#[allow(clippy::too_many_arguments, reason = "an epoch is a key, and who gets it, and what came before")]
pub(super) fn wrap(
    me: &Me,
    author: &Author<'_>,
    under: &Epoch,
    epoch: &Epoch,
    known: &[Epoch],
    own: &mut Own,
    records: &mut Vec<Record>,
    now_ms: i64,
) -> Result<Vec<Note>, SyncError> {
    let roster = Roster::of(&me.charter, records);
    let members: Vec<Bytes<16>> = roster.present().map(|(device, _)| Bytes(device.0)).collect();
    let mut recipients: Vec<String> = roster.present().map(|(_, member)| member.kem.clone()).collect();
    recipients.push(me.charter.recipient.clone());
    let earlier = known.iter().filter(|one| one.counter < epoch.counter).cloned().collect();
    let sealed = EpochFile { charter: me.charter.clone(), epoch: epoch.clone(), earlier }.seal(&recipients)?;
    let hash = hash(&sealed);
    let name = Names::new(&me.charter.practice()).epoch(epoch.counter, &hash);
    let out = Out { name, bytes: Some(serde_bytes::ByteBuf::from(sealed)), segment: None, entries: 0 };
    let mut notes = vec![notes::enqueue(own, &out)?];
    let tells = Act::Epoch { counter: epoch.counter, epoch: epoch.id(), file: Bytes(hash), members };
    notes.extend(act(me, author, under, own, records, tells, now_ms)?);
    Ok(notes)
}
