//! What sync remembers in the store, typed: one place for every kind of note.

use std::collections::BTreeMap;

use age::secrecy::ExposeSecret;
use age::x25519;
use secundine_domain::entry::DeviceId;
use secundine_domain::file::FileId;
use secundine_store::{Note, Store};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

use crate::SyncError;
use crate::cbor::{self, Blob, Bytes};
use crate::charter::{Charter, SharedSecret};
use crate::epoch::{Epoch, EpochId};
use crate::roster::{Record, Seen};

const ME: &str = "me";
const EPOCH: &str = "epoch";
const ROSTER: &str = "roster";
const OWN: &str = "own";
const SEALED: &str = "sealed";
const OUT: &str = "out";
const BIRTH_KEY: &str = "birth-key";
const PEER_KEY: &str = "peer-key";
const PEER: &str = "peer";
const FILE_UP: &str = "file-up";
const GOOD: &str = "good";

/// This phone as a part of its practice.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct Me {
    /// The practice.
    pub charter: Charter,
    pub(crate) secret: SharedSecret,
    /// The device that this phone was when it joined; another one has to join anew.
    pub(crate) device: Bytes<16>,
    /// Its age identity.
    kem: String,
    /// The name that the others see.
    pub label: String,
    /// Where the practice shares; the session's own form.
    pub place: Vec<u8>,
}

/// What is known of another device's segments.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Peer {
    /// The last segment that was taken in.
    pub seq: u64,
    pub(crate) hash: Blob,
    /// When that was sealed, UTC milliseconds by the other device's clock.
    pub sealed_ms: i64,
    /// How far it had seen the segments of the others.
    pub(crate) seen: Vec<Seen>,
    /// How far it had seen their acts upon the roster.
    pub(crate) acts: Vec<Seen>,
}

/// How far this device's own objects go.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Own {
    /// Last segment sealed.
    pub seq: u64,
    pub hash: Blob,
    pub sealed_ms: i64,
    /// Last act of its own that the last segment tells of.
    #[serde(default)]
    pub acts: u64,
    /// Last segment that the bucket has acknowledged.
    pub acknowledged: u64,
    pub acknowledged_hash: Blob,
    /// Bytes of segments since the last snapshot, segments, and bytes of that snapshot.
    pub since_bytes: u64,
    pub since: u64,
    pub snapshot_bytes: u64,
    /// Names of the parts of the last two.
    pub snapshots: Vec<Vec<String>>,
    /// The number that the last object of the queue took.
    pub queued: u64,
    /// Entries that are in the queue.
    pub waiting: u64,
    /// Parts of the keyring by their last version.
    pub keyrings: BTreeMap<u32, Named>,
}

/// The version of a part of a keyring, and its name in the bucket.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Named {
    pub seq: u64,
    pub name: String,
}

/// An object on its way into the bucket; without bytes, one to be removed.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub(crate) struct Out {
    pub name: String,
    pub bytes: Option<Blob>,
    /// The segment that it is, with its hash.
    pub segment: Option<(u64, Bytes<32>)>,
    /// Entries in it.
    pub entries: u64,
}

/// The key of a birth, for the entries of one device.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub(crate) struct BirthKey {
    pub key: Bytes<32>,
    /// In which part of the keyring it lies.
    pub part: u32,
}

impl Peer {
    /// The hash of the last segment that was taken in; zeros before the first.
    pub(crate) fn last_hash(&self) -> [u8; 32] {
        self.hash.as_slice().try_into().unwrap_or([0; 32])
    }
}

impl Own {
    /// The hash of the last segment; zeros before the first.
    pub(crate) fn last_hash(&self) -> [u8; 32] {
        self.hash.as_slice().try_into().unwrap_or([0; 32])
    }
}

impl Me {
    pub(crate) fn new(
        charter: Charter,
        secret: SharedSecret,
        device: DeviceId,
        kem: &x25519::Identity,
        label: String,
        place: Vec<u8>,
    ) -> Self {
        let kem = kem.to_string().expose_secret().to_owned();
        Self { charter, secret, device: Bytes(device.0), kem, label, place }
    }

    pub(crate) fn kem(&self) -> Result<x25519::Identity, SyncError> {
        self.kem.parse().map_err(|_| SyncError::Internal("the age identity of this device".to_owned()))
    }

    pub(crate) fn put(&self) -> Result<Note, SyncError> {
        Ok(Note::Put(ME, Vec::new(), cbor::write(self)?))
    }
}

/// This phone as a part of its practice; none where it shares with nobody.
///
/// # Errors
/// [`SyncError::Store`] where the store cannot be read.
pub fn me(store: &Store) -> Result<Option<Me>, SyncError> {
    get(store, ME, &[])
}

/// When everything was last exchanged, UTC milliseconds; none where it never was.
///
/// # Errors
/// [`SyncError::Store`] where the store cannot be read.
pub fn last_good(store: &Store) -> Result<Option<i64>, SyncError> {
    get(store, GOOD, &[])
}

/// Notes that everything was exchanged now.
///
/// # Errors
/// [`SyncError::Store`] where the store cannot be written.
pub fn note_good(store: &mut Store, now_ms: i64) -> Result<(), SyncError> {
    Ok(store.note_down(&[put(GOOD, &[], &now_ms)?])?)
}

/// Whether this phone shares with a practice.
///
/// # Errors
/// [`SyncError::Store`] where the store cannot be read.
pub fn is_shared(store: &Store) -> Result<bool, SyncError> {
    Ok(store.noted(ME, &[])?.is_some())
}

/// What is known of the segments of the others.
///
/// # Errors
/// [`SyncError::Store`] where the store cannot be read.
pub fn peers(store: &Store) -> Result<BTreeMap<DeviceId, Peer>, SyncError> {
    let all = store.all_noted(PEER)?.into_iter();
    all.map(|(name, value)| Ok((DeviceId(array(&name)?), cbor::read(&value)?))).collect()
}

pub(crate) fn forget_me() -> Note {
    Note::Forget(ME, Vec::new())
}

/// What is known of one device's segments.
pub(crate) fn peer(store: &Store, device: DeviceId) -> Result<Peer, SyncError> {
    Ok(get(store, PEER, &device.0)?.unwrap_or_default())
}

fn get<T: DeserializeOwned>(store: &Store, kind: &str, name: &[u8]) -> Result<Option<T>, SyncError> {
    store.noted(kind, name)?.map(|value| cbor::read(&value)).transpose()
}

fn put(kind: &'static str, name: &[u8], value: &impl Serialize) -> Result<Note, SyncError> {
    Ok(Note::Put(kind, name.to_vec(), cbor::write(value)?))
}

fn array<const N: usize>(bytes: &[u8]) -> Result<[u8; N], SyncError> {
    bytes.try_into().map_err(|_| SyncError::Internal("a note has another name".to_owned()))
}

fn of_device(device: DeviceId, rest: &[u8]) -> Vec<u8> {
    [device.0.as_slice(), rest].concat()
}

pub(crate) fn put_peer(device: DeviceId, peer: &Peer) -> Result<Note, SyncError> {
    put(PEER, &device.0, peer)
}

pub(crate) fn epochs(store: &Store) -> Result<BTreeMap<EpochId, Epoch>, SyncError> {
    let all = store.all_noted(EPOCH)?.into_iter();
    all.map(|(name, value)| Ok((EpochId(array(&name)?), cbor::read(&value)?))).collect()
}

pub(crate) fn put_epoch(epoch: &Epoch) -> Result<Note, SyncError> {
    put(EPOCH, &epoch.id().0, epoch)
}

pub(crate) fn records(store: &Store) -> Result<Vec<Record>, SyncError> {
    store.all_noted(ROSTER)?.into_iter().map(|(_, value)| cbor::read(&value)).collect()
}

pub(crate) fn put_record(record: &Record) -> Result<Note, SyncError> {
    put(ROSTER, &of_device(DeviceId(record.author.0), &record.seq.to_be_bytes()), record)
}

pub(crate) fn own(store: &Store) -> Result<Own, SyncError> {
    Ok(get(store, OWN, &[])?.unwrap_or_default())
}

pub(crate) fn put_own(own: &Own) -> Result<Note, SyncError> {
    put(OWN, &[], own)
}

/// How far the chains that this device gives to the others are sealed: its own, and those of the devices that it was.
pub(crate) fn sealed(store: &Store) -> Result<BTreeMap<DeviceId, u64>, SyncError> {
    let all = store.all_noted(SEALED)?.into_iter();
    all.map(|(name, value)| Ok((DeviceId(array(&name)?), u64::from_be_bytes(array(&value)?)))).collect()
}

pub(crate) fn put_sealed(device: DeviceId, n: u64) -> Note {
    Note::Put(SEALED, device.0.to_vec(), n.to_be_bytes().to_vec())
}

/// What is to be put into the bucket next, and its place in the queue.
pub(crate) fn next_out(store: &Store) -> Result<Option<(Vec<u8>, Out)>, SyncError> {
    let first = store.first_noted(OUT)?;
    first.map(|(name, value)| Ok((name, cbor::read(&value)?))).transpose()
}

/// Queues an object after all that wait.
pub(crate) fn enqueue(own: &mut Own, out: &Out) -> Result<Note, SyncError> {
    own.queued += 1;
    own.waiting += out.entries;
    put(OUT, &own.queued.to_be_bytes(), out)
}

/// Takes an object from the queue.
pub(crate) fn dequeue(own: &mut Own, name: Vec<u8>, out: &Out) -> Note {
    own.waiting = own.waiting.saturating_sub(out.entries);
    Note::Forget(OUT, name)
}

pub(crate) fn birth_keys(store: &Store) -> Result<BTreeMap<[u8; 24], BirthKey>, SyncError> {
    let all = store.all_noted(BIRTH_KEY)?.into_iter();
    all.map(|(name, value)| Ok((array(&name)?, cbor::read(&value)?))).collect()
}

pub(crate) fn birth_key(store: &Store, birth: &[u8; 24]) -> Result<Option<BirthKey>, SyncError> {
    get(store, BIRTH_KEY, birth)
}

pub(crate) fn put_birth_key(birth: &[u8; 24], key: &BirthKey) -> Result<Note, SyncError> {
    put(BIRTH_KEY, birth, key)
}

pub(crate) fn forget_birth_key(birth: &[u8; 24]) -> Note {
    Note::Forget(BIRTH_KEY, birth.to_vec())
}

/// Forgets the keys that others gave for a birth.
pub(crate) fn forget_peer_keys(store: &Store, birth: &[u8; 24]) -> Result<Vec<Note>, SyncError> {
    let all = store.all_noted(PEER_KEY)?.into_iter();
    Ok(all.filter(|(name, _)| name.ends_with(birth)).map(|(name, _)| Note::Forget(PEER_KEY, name)).collect())
}

pub(crate) fn peer_key(store: &Store, device: DeviceId, birth: &[u8; 24]) -> Result<Option<Bytes<32>>, SyncError> {
    get(store, PEER_KEY, &of_device(device, birth))
}

pub(crate) fn put_peer_key(device: DeviceId, birth: &[u8; 24], key: &Bytes<32>) -> Result<Note, SyncError> {
    put(PEER_KEY, &of_device(device, birth), key)
}

/// Files that are to be put into the bucket.
pub(crate) fn files_up(store: &Store) -> Result<Vec<FileId>, SyncError> {
    store.all_noted(FILE_UP)?.into_iter().map(|(name, _)| Ok(FileId(array(&name)?))).collect()
}

pub(crate) fn put_file_up(file: FileId) -> Note {
    Note::Put(FILE_UP, file.0.to_vec(), Vec::new())
}

pub(crate) fn file_is_up(file: FileId) -> Note {
    Note::Forget(FILE_UP, file.0.to_vec())
}

/// What a device forgets that joins anew: how far it was, under its old id, in the bucket.
pub(crate) fn forget(store: &Store) -> Result<Vec<Note>, SyncError> {
    let mut notes = Vec::new();
    for kind in [ROSTER, PEER, OUT, SEALED, BIRTH_KEY] {
        notes.extend(store.all_noted(kind)?.into_iter().map(|(name, _)| Note::Forget(kind, name)));
    }
    Ok(notes)
}
