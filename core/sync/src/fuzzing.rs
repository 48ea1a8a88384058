//! A way in for the fuzzers: objects of a bucket, into which anyone can put something, and what is sealed in them, which any
//! member can write.

use ed25519_dalek::{Signer, SigningKey};
use secundine_domain::entry::DeviceId;
use serde::Serialize;
use serde::de::DeserializeOwned;

use crate::cbor::{self, Bytes};
use crate::charter::{Charter, SharedSecret};
use crate::envelope::{DOMAIN, Header, Kind, Opened, seal};
use crate::epoch::{Epoch, EpochFile};
use crate::keyring::Part;
use crate::member::{Card, Welcome};
use crate::roster::{Act, Entry, Record, Role, Roster, Seen};
use crate::segment::{Item, Run, Segment, sealed};

const KINDS: [Kind; 4] = [Kind::Segment, Kind::Snapshot, Kind::Keyring, Kind::Roster];

fn signer() -> SigningKey {
    SigningKey::from_bytes(&[1; 32])
}

fn epoch() -> Epoch {
    Epoch { counter: 1, key: Bytes([2; 32]) }
}

fn secret() -> SharedSecret {
    SharedSecret(Bytes([3; 32]))
}

/// An object that holds this body: of the first, second … kind. None for another kind.
#[must_use]
pub fn object(kind: usize, body: &[u8]) -> Option<Vec<u8>> {
    let (device, epoch) = (DeviceId([4; 16]), epoch());
    let header = Header {
        kind: *KINDS.get(kind)?,
        practice: [5; 16],
        device,
        epoch: epoch.id(),
        seq: 7,
        part: 0,
        parts: 1,
        before: [6; 32],
        salt: [7; 16],
    };
    seal(&header, body, &epoch, &secret(), |digest| signer().sign(&[DOMAIN, digest].concat()).to_bytes()).ok()
}

/// The body of an object that was made by [`object`]; none for any other bytes.
///
/// # Panics
/// Where an object that is signed does not open: nobody signs what is not sealed.
#[must_use]
pub fn opened(bytes: &[u8]) -> Option<Vec<u8>> {
    let opened = Opened::read(bytes.to_vec())?;
    if !opened.is_signed(&signer().verifying_key().to_bytes()) {
        return None;
    }
    let body = opened.body(&epoch(), &secret()).ok().flatten();
    assert!(body.is_some(), "signed, and sealed with another key");
    body.map(|body| body.to_vec())
}

/// A body of each kind, as it is before it is sealed.
#[must_use]
pub fn bodies() -> Vec<Vec<u8>> {
    let (device, public) = (Bytes([4; 16]), Bytes(signer().verifying_key().to_bytes()));
    let (seen, birth) = (vec![Seen { device, seq: 3, hash: Bytes([6; 32]) }], Bytes([5; 24]));
    let item = Item { birth: 0, digest: Bytes([1; 32]), seal: Bytes([2; 64]) };
    let segment = Segment {
        sealed_ms: 1_795_570_800_000,
        seen: seen.clone(),
        acts: seen.clone(),
        runs: vec![Run { public, after: 8, link: Bytes([7; 32]), items: vec![item] }],
        births: vec![sealed(birth, &Bytes([8; 32]))],
    };
    let part = Part { keys: vec![(birth, Bytes([8; 32]))] };
    let act = Act::Add { public, kem: "age1".to_owned(), label: "Mari".to_owned(), role: Role::Member };
    let entry = Entry { clock: 2, wall_ms: 1_795_570_800_000, seen, act };
    [cbor::write(&segment), cbor::write(&part), cbor::write(&entry)].into_iter().flatten().collect()
}

/// Reads a body as each thing that one may be; gives how many it is.
#[must_use]
pub fn body(bytes: &[u8]) -> usize {
    let segment = rewritten::<Segment>(bytes);
    if let Some(segment) = &segment {
        let _ = segment.unpack(|_| Ok(Some(Bytes([8; 32]))), |_| false);
        let _ = segment.unpack(|_| Ok(None), |_| true);
    }
    let entry = rewritten::<Entry>(bytes);
    if let Some(entry) = entry.clone() {
        let founder = Bytes(signer().verifying_key().to_bytes());
        let charter = Charter { founder, recovery: Bytes([9; 32]), recipient: String::new(), salt: Bytes([0; 16]) };
        let author = Bytes(charter.founder_id().map_or([0; 16], |device| device.0));
        let record = |seq| Record { author, seq, hash: Bytes([0; 32]), entry: entry.clone() };
        let _ = Roster::of(&charter, &[record(1), record(2)]).current_epoch();
    }
    let others = [
        rewritten::<Part>(bytes).is_some(),
        rewritten::<EpochFile>(bytes).map(EpochFile::epochs).is_some(),
        rewritten::<Card>(bytes).and_then(|card| card.device()).is_some(),
        rewritten::<Welcome>(bytes).is_some(),
    ];
    usize::from(segment.is_some()) + usize::from(entry.is_some()) + others.into_iter().filter(|read| *read).count()
}

/// What is read can be written, and reads the same.
fn rewritten<T: Serialize + DeserializeOwned>(bytes: &[u8]) -> Option<T> {
    let read: T = cbor::read(bytes).ok()?;
    let written = cbor::write(&read).ok();
    let again = written.as_deref().and_then(|bytes| cbor::read::<T>(bytes).ok()).and_then(|again| cbor::write(&again).ok());
    assert!(written.is_some() && again == written, "read back as it was");
    Some(read)
}
