//! What a segment or a part of a snapshot holds.

use std::collections::BTreeMap;
use std::io::{Read, Write};

use chacha20poly1305::aead::{Aead, Payload as Text};
use chacha20poly1305::{KeyInit, XChaCha20Poly1305, XNonce};
use flate2::Compression;
use flate2::read::DeflateDecoder;
use flate2::write::DeflateEncoder;
use secundine_domain::entry::Entry;
use secundine_domain::file::FileId;
use secundine_store::{Carried, Store, device_with, link_after};
use serde::{Deserialize, Serialize};
use zeroize::Zeroizing;

use crate::SyncError;
use crate::cbor::{self, Blob, Bytes};
use crate::envelope::random;
use crate::roster::Seen;

/// Most bytes that a birth's part of a segment has unpacked. Our own choice.
const UNPACKED_MAX: u64 = 64 << 20;

/// The body of a segment.
#[derive(Serialize, Deserialize)]
pub(crate) struct Segment {
    /// When it was sealed, UTC milliseconds by its device's clock.
    pub sealed_ms: i64,
    /// How far this device has seen the segments of the others.
    pub seen: Vec<Seen>,
    /// How far it has seen acts upon the roster, its own among them.
    pub acts: Vec<Seen>,
    /// Runs of entries, each of one chain.
    pub runs: Vec<Run>,
    /// The births that they belong to.
    pub births: Vec<Sealed>,
}

/// Entries of one chain that follow one another.
#[derive(Serialize, Deserialize)]
pub(crate) struct Run {
    /// Public key of the device that wrote them.
    pub public: Bytes<32>,
    /// The number before the first.
    pub after: u64,
    /// The link at it.
    pub link: Bytes<32>,
    pub items: Vec<Item>,
}

/// What proves an entry; its body lies with those of its birth.
#[derive(Serialize, Deserialize)]
pub(crate) struct Item {
    /// Place among the births.
    pub birth: u32,
    pub digest: Bytes<32>,
    pub seal: Bytes<64>,
}

/// The bodies of a birth, packed, and sealed under its key.
#[derive(Serialize, Deserialize)]
pub(crate) struct Sealed {
    pub birth: Bytes<24>,
    pub bodies: Blob,
}

#[derive(Serialize, Deserialize)]
struct Bodies {
    /// In the order of the items.
    bodies: Vec<Blob>,
    /// The keys of the files that the entries name.
    files: Vec<(Bytes<32>, Bytes<16>)>,
}

/// The births of these entries, in the order of their first.
pub(crate) fn births(entries: &[Carried]) -> Vec<[u8; 24]> {
    let mut births = Vec::new();
    let mut seen = std::collections::BTreeSet::new();
    births.extend(entries.iter().map(|entry| entry.birth).filter(|birth| seen.insert(*birth)));
    births
}

/// The runs and births of entries of chains; `keys` are those of `births`, in their order.
pub(crate) fn pack(
    store: &Store,
    entries: &[Carried],
    births: &[[u8; 24]],
    keys: &[Bytes<32>],
) -> Result<(Vec<Run>, Vec<Sealed>), SyncError> {
    let publics = store.publics()?;
    let place: BTreeMap<_, u32> = births.iter().copied().zip(0..).collect();
    let mut bodies: Vec<Bodies> = births.iter().map(|_| Bodies { bodies: Vec::new(), files: Vec::new() }).collect();
    let mut runs = Vec::new();
    for run in entries.chunk_by(|one, next| one.device == next.device && one.n + 1 == next.n) {
        let Some(first) = run.first() else { continue };
        let public = publics.get(&first.device).ok_or_else(|| SyncError::Internal("a chain without key".to_owned()))?;
        let after = first.n.saturating_sub(1);
        let mut items = Vec::new();
        for entry in run {
            let birth = place.get(&entry.birth).copied().unwrap_or_default();
            if let (Some(of), Some(body)) = (bodies.get_mut(birth as usize), &entry.body) {
                of.files.extend(keys_of_files(store, body)?);
                of.bodies.push(Blob::from(body.clone()));
            }
            items.push(Item { birth, digest: Bytes(entry.digest), seal: Bytes(entry.seal) });
        }
        let link = store.link_of(first.device, after)?;
        runs.push(Run { public: Bytes(*public), after, link: Bytes(link), items });
    }
    let sealed = births.iter().zip(keys).zip(bodies).map(|((birth, key), bodies)| {
        let bodies = Blob::from(seal(birth, key, &bodies)?);
        Ok(Sealed { birth: Bytes(*birth), bodies })
    });
    Ok((runs, sealed.collect::<Result<_, SyncError>>()?))
}

/// The files that an entry names and that are here, with their keys.
fn keys_of_files(store: &Store, body: &[u8]) -> Result<Vec<(Bytes<32>, Bytes<16>)>, SyncError> {
    let named = Entry::decode(body).map(|entry| entry.fact.files()).unwrap_or_default();
    let mut keys = Vec::new();
    for file in named {
        if let Ok(key) = store.file_key(file) {
            keys.push((Bytes(file.0), Bytes(*key)));
        }
    }
    Ok(keys)
}

fn seal(birth: &[u8; 24], key: &Bytes<32>, bodies: &Bodies) -> Result<Vec<u8>, SyncError> {
    let internal = |error: &dyn std::fmt::Display| SyncError::Internal(error.to_string());
    let plain = Zeroizing::new(cbor::write(bodies)?);
    let mut packed = DeflateEncoder::new(Vec::new(), Compression::fast());
    packed.write_all(&plain).map_err(|error| internal(&error))?;
    let packed = Zeroizing::new(packed.finish().map_err(|error| internal(&error))?);
    let nonce = random::<24>()?;
    let cipher = XChaCha20Poly1305::new((&key.0).into());
    let sealed = cipher.encrypt(XNonce::from_slice(&nonce), Text { msg: &packed, aad: birth });
    Ok([nonce.as_slice(), &sealed.map_err(|error| internal(&error))?].concat())
}

/// A birth with one body.
#[cfg(feature = "fuzzing")]
pub(crate) fn sealed(birth: Bytes<24>, key: &Bytes<32>) -> Sealed {
    let bodies = Bodies { bodies: vec![Blob::from(b"{}".to_vec())], files: Vec::new() };
    Sealed { birth, bodies: Blob::from(seal(&birth.0, key, &bodies).unwrap_or_default()) }
}

fn open(birth: &[u8; 24], key: &Bytes<32>, sealed: &[u8]) -> Option<Bodies> {
    let (nonce, sealed) = sealed.split_first_chunk::<24>()?;
    let cipher = XChaCha20Poly1305::new((&key.0).into());
    let packed = Zeroizing::new(cipher.decrypt(XNonce::from_slice(nonce), Text { msg: sealed, aad: birth }).ok()?);
    let mut plain = Zeroizing::new(Vec::new());
    DeflateDecoder::new(packed.as_slice()).take(UNPACKED_MAX).read_to_end(&mut plain).ok()?;
    cbor::read(&plain).ok()
}

/// What a segment brings.
pub(crate) struct Unpacked {
    pub publics: Vec<[u8; 32]>,
    pub entries: Vec<Carried>,
    pub files: Vec<(FileId, Bytes<16>)>,
}

/// Why a segment brings nothing yet.
pub(crate) enum Stuck {
    /// The key of a birth is not known, or does not open its bodies.
    NoBirthKey,
    /// It does not hold together.
    Unreadable,
}

impl Segment {
    /// Its entries. `key` gives the key of a birth; a birth that was `erased` needs none.
    pub(crate) fn unpack(
        &self,
        mut key: impl FnMut(&[u8; 24]) -> Result<Option<Bytes<32>>, SyncError>,
        erased: impl Fn(&[u8; 24]) -> bool,
    ) -> Result<Result<Unpacked, Stuck>, SyncError> {
        let mut opened = Vec::new();
        let mut files = Vec::new();
        for Sealed { birth, bodies } in &self.births {
            if erased(&birth.0) {
                opened.push((birth.0, None));
                continue;
            }
            let Some(key) = key(&birth.0)? else { return Ok(Err(Stuck::NoBirthKey)) };
            let Some(bodies) = open(&birth.0, &key, bodies) else { return Ok(Err(Stuck::NoBirthKey)) };
            files.extend(bodies.files.into_iter().map(|(file, key)| (FileId(file.0), key)));
            opened.push((birth.0, Some(bodies.bodies.into_iter())));
        }
        let (mut entries, mut publics) = (Vec::new(), Vec::new());
        for Run { public, after, link, items } in &self.runs {
            let Some(device) = device_with(&public.0) else { return Ok(Err(Stuck::Unreadable)) };
            publics.push(public.0);
            let (mut n, mut link) = (*after, link.0);
            for Item { birth, digest, seal } in items {
                let Some((birth, bodies)) = opened.get_mut(*birth as usize) else { return Ok(Err(Stuck::Unreadable)) };
                let body = match bodies {
                    None => None,
                    Some(bodies) => match bodies.next() {
                        Some(body) => Some(body.into_vec()),
                        None => return Ok(Err(Stuck::Unreadable)),
                    },
                };
                let Some(next) = n.checked_add(1) else { return Ok(Err(Stuck::Unreadable)) };
                n = next;
                link = link_after(&link, birth, n, &digest.0);
                entries.push(Carried { device, n, birth: *birth, digest: digest.0, body, link, seal: seal.0 });
            }
        }
        Ok(Ok(Unpacked { publics, entries, files }))
    }
}
