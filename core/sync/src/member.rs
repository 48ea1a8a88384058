//! Founding a practice's sharing, joining it, changing who belongs to it, and getting it back by the sheet.
//!
//! All of it is done without a network: what is to be told to the others waits in the queue.

use std::collections::{BTreeMap, BTreeSet};

use age::secrecy::ExposeSecret;
use age::x25519;
use ed25519_dalek::Signer;
use secundine_domain::entry::{BirthId, DeviceId};
use secundine_store::{Note, Store, device_with};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use zeroize::Zeroizing;

use crate::access::{Access, with};
use crate::bucket::Bucket;
use crate::cbor::{self, Bytes};
use crate::charter::{Charter, SharedSecret, Sheet};
use crate::envelope::{DOMAIN, Kind, hash, random};
use crate::epoch::{Epoch, EpochFile};
use crate::names::Names;
use crate::notes::{self, Me, Out, Own};
use crate::roster::{Act, Entry, Record, Role, Roster, Seen};
use crate::round::sealer::{Sealer, Sign};
use crate::{SyncError, round};

const JOINING: &str = "joining";
/// Most bytes of an epoch's file: some hundred for each member.
const EPOCH_MAX: u64 = 4 << 20;

/// What a phone that wants to join shows. It holds no secret.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Card {
    /// Public key of the device.
    pub public: Bytes<32>,
    /// Its age recipient.
    pub kem: String,
    /// The name under which it wants to join.
    pub label: String,
}

/// What a lead shows in answer, sealed to the phone that joins.
#[derive(Clone, Serialize, Deserialize)]
pub(crate) struct Welcome {
    charter: Charter,
    secret: SharedSecret,
    /// Where the practice shares.
    place: serde_bytes::ByteBuf,
    label: String,
}

/// The age identity of a phone that has shown its card.
#[derive(Serialize, Deserialize)]
struct Joining {
    kem: String,
    label: String,
}

/// Who signs an act.
struct Author<'a> {
    device: DeviceId,
    sign: Sign<'a>,
}

impl<'a> Author<'a> {
    fn phone(store: &'a Store) -> Self {
        Self { device: store.device(), sign: Box::new(|digest| store.sign(DOMAIN, digest)) }
    }

    fn sheet(sheet: &'a Sheet, device: DeviceId) -> Self {
        Self { device, sign: Box::new(|digest| sheet.signer.sign(&[DOMAIN, digest].concat()).to_bytes()) }
    }
}

impl Card {
    /// The card of this phone. Shown again, it is the same. A phone that was removed goes on as a new device from here: nobody
    /// comes back as who was removed.
    ///
    /// # Errors
    /// [`SyncError::SharesAlready`], or what the store says.
    pub fn of(store: &mut Store, label: &str) -> Result<Self, SyncError> {
        if current(store)?.is_some() {
            if roster(store)?.members.get(&store.device()).is_none_or(|member| member.removed.is_none()) {
                return Err(SyncError::SharesAlready);
            }
            store.renew_device()?;
        }
        let kept: Option<Joining> = store.noted(JOINING, &[])?.and_then(|bytes| cbor::read(&bytes).ok());
        let identity = match kept.as_ref().map(|kept| kept.kem.parse::<x25519::Identity>()) {
            Some(Ok(identity)) => identity,
            _ => x25519::Identity::generate(),
        };
        let joining = Joining { kem: identity.to_string().expose_secret().to_owned(), label: label.to_owned() };
        store.note_down(&[Note::Put(JOINING, Vec::new(), cbor::write(&joining)?)])?;
        Ok(Self { public: Bytes(store.public()), kem: identity.to_public().to_string(), label: label.to_owned() })
    }

    /// The device that showed it.
    #[must_use]
    pub fn device(&self) -> Option<DeviceId> {
        device_with(&self.public.0)
    }

    /// 32 bytes that both phones work out from what they have shown each other: said aloud as words, they tell whether
    /// anybody stands between them.
    #[must_use]
    pub fn check(&self, welcome: &[u8]) -> [u8; 32] {
        let hash = Sha256::new().chain_update(b"secundine joins 1").chain_update(self.public.0);
        hash.chain_update(self.kem.as_bytes()).chain_update(Sha256::digest(welcome)).finalize().into()
    }
}

/// Makes this phone the first of a practice that shares. Gives the identity that is printed as the practice's recovery sheet,
/// and is kept nowhere.
///
/// # Errors
/// [`SyncError::SharesAlready`], or what the store says.
pub fn found(store: &mut Store, label: &str, place: Vec<u8>, now_ms: i64) -> Result<Zeroizing<String>, SyncError> {
    if current(store)?.is_some() {
        return Err(SyncError::SharesAlready);
    }
    let sheet = Sheet::new(x25519::Identity::generate())?;
    let kem = x25519::Identity::generate();
    let charter = Charter {
        founder: Bytes(store.public()),
        recovery: Bytes(sheet.signer.verifying_key().to_bytes()),
        recipient: sheet.identity.to_public().to_string(),
        salt: Bytes(random()?),
    };
    let me = Me::new(charter, sheet.secret.clone(), store.device(), &kem, label.to_owned(), place);
    let mut notes = vec![me.put()?];
    notes.extend(lineage(store)?);
    let mut own = Own::default();
    let mut records = Vec::new();
    let epoch = Epoch::random(1)?;
    let author = Author::phone(store);
    let found = Act::Found { label: label.to_owned(), kem: kem.to_public().to_string() };
    notes.push(notes::put_epoch(&epoch)?);
    notes.extend(act(&me, &author, &epoch, &mut own, &mut records, found, now_ms)?);
    notes.extend(wrap(&me, &author, &epoch, &epoch, &[], &mut own, &mut records, now_ms)?);
    notes.push(notes::put_own(&own)?);
    drop(author);
    store.note_down(&notes)?;
    Ok(Zeroizing::new(sheet.identity.to_string().expose_secret().to_owned()))
}

/// Takes somebody in who has shown this card. Gives the sealed welcome, to be shown to that phone alone.
///
/// # Errors
/// [`SyncError::NotLead`], [`SyncError::WrongCode`] for a card that is none, or what the store says.
pub fn admit(store: &mut Store, card: &Card, role: Role, now_ms: i64) -> Result<Vec<u8>, SyncError> {
    let (me, roster) = lead(store)?;
    let device = card.device().ok_or(SyncError::WrongCode)?;
    let kem: x25519::Recipient = card.kem.parse().map_err(|_| SyncError::WrongCode)?;
    match roster.members.get(&device) {
        Some(member) if member.removed.is_some() || member.kem != card.kem => return Err(SyncError::WrongCode),
        Some(_) => {}
        None => {
            let add = Act::Add { public: card.public, kem: card.kem.clone(), label: card.label.clone(), role };
            change(store, &me, Some(add), true, now_ms)?;
        }
    }
    let place = serde_bytes::ByteBuf::from(me.place.clone());
    let welcome = Welcome { charter: me.charter.clone(), secret: me.secret.clone(), place, label: card.label.clone() };
    let plain = Zeroizing::new(cbor::write(&welcome)?);
    age::encrypt(&kem, &plain).map_err(|error| SyncError::Internal(error.to_string()))
}

/// Looks whether this welcome lets this phone in. Nothing is done.
///
/// # Errors
/// [`SyncError::WrongCode`] where it does not, [`SyncError::SharesAlready`], or what the store says.
pub fn may_join(store: &Store, welcome: &[u8]) -> Result<(), SyncError> {
    match current(store)? {
        Some(_) => Err(SyncError::SharesAlready),
        None => welcomed(store, welcome).map(|_| ()),
    }
}

fn welcomed(store: &Store, welcome: &[u8]) -> Result<(x25519::Identity, Welcome), SyncError> {
    let joining: Joining = store.noted(JOINING, &[])?.map(|bytes| cbor::read(&bytes)).transpose()?.ok_or(SyncError::WrongCode)?;
    let kem: x25519::Identity = joining.kem.parse().map_err(|_| SyncError::WrongCode)?;
    let plain = age::decrypt(&kem, welcome).map(Zeroizing::new).map_err(|_| SyncError::WrongCode)?;
    Ok((kem, cbor::read(&plain).map_err(|_| SyncError::WrongCode)?))
}

/// Joins with the welcome that a lead's phone shows. What the practice has comes with the next round.
///
/// # Errors
/// [`SyncError::WrongCode`] where it is not for this phone, [`SyncError::SharesAlready`], or what the store says.
pub fn join(store: &mut Store, welcome: &[u8]) -> Result<Me, SyncError> {
    if current(store)?.is_some() {
        return Err(SyncError::SharesAlready);
    }
    let (kem, Welcome { charter, secret, place, label }) = welcomed(store, welcome)?;
    let me = Me::new(charter, secret, store.device(), &kem, label, place.into_vec());
    let mut notes = vec![me.put()?, notes::put_own(&Own::default())?, Note::Forget(JOINING, Vec::new())];
    notes.extend(notes::forget(store)?);
    notes.extend(lineage(store)?);
    store.note_down(&notes)?;
    Ok(me)
}

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

/// Acts as this phone; `wraps` where the epoch's file has to be made anew: under a new key if any device was removed.
fn change(store: &mut Store, me: &Me, what: Option<Act>, wraps: bool, now_ms: i64) -> Result<(), SyncError> {
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
fn act(
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
    let header = crate::envelope::Header { seq, ..sealer.header(Kind::Roster, before)? };
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
fn wrap(
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
