//! The one form of everything that a device writes into the bucket, except the age files of epochs and pictures.
//!
//! `header (128 bytes) ‖ sealed body ‖ signature (64 bytes)`. The body is CBOR, padded (Padmé) so that its size tells little,
//! and sealed with ChaCha20-Poly1305 under `HKDF-SHA256(epoch key, salt: the practice's secret, info: title ‖ header)`, the
//! header being authenticated with it. Since a header holds 16 random bytes, no key is used twice and the nonce is zero. The
//! device signs `SHA-256(header ‖ sealed body)` with Ed25519. The object's name carries the SHA-256 of all of it.

use chacha20poly1305::aead::{Aead, Payload};
use chacha20poly1305::{ChaCha20Poly1305, KeyInit, Nonce};
use hkdf::Hkdf;
use secundine_domain::entry::DeviceId;
use secundine_store::is_signed;
use sha2::{Digest, Sha256};
use zeroize::Zeroizing;

use crate::SyncError;
use crate::charter::SharedSecret;
use crate::epoch::{Epoch, EpochId};
use crate::names::Hash;

const MAGIC: &[u8; 16] = b"secundine sync 1";
const HEADER: usize = 128;
const SEAL: usize = 64;
/// What a signature says that it is for.
pub(crate) const DOMAIN: &[u8] = b"secundine object 1";

/// Most bytes of an object that is fetched. Our own choice: a part of a snapshot has some five million at most.
pub(crate) const OBJECT_MAX: u64 = 32 << 20;

/// What an object is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    /// New entries of a device.
    Segment,
    /// All entries of a device up to a segment.
    Snapshot,
    /// Keys of births.
    Keyring,
    /// An act upon the roster.
    Roster,
}

/// What stands in the open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Header {
    pub kind: Kind,
    pub practice: [u8; 16],
    pub device: DeviceId,
    pub epoch: EpochId,
    /// Counted from 1 for each device and kind; for a snapshot, the last segment that it holds.
    pub seq: u64,
    /// Counted from 0.
    pub part: u32,
    /// Of how many.
    pub parts: u32,
    /// Hash of the object before it; for a snapshot, of the last segment that it holds.
    pub before: Hash,
    pub salt: [u8; 16],
}

impl Kind {
    fn byte(self) -> u8 {
        match self {
            Self::Segment => 1,
            Self::Snapshot => 2,
            Self::Keyring => 3,
            Self::Roster => 4,
        }
    }
}

impl Header {
    fn bytes(&self) -> [u8; HEADER] {
        let mut bytes = [0; HEADER];
        let (seq, part, parts) = (self.seq.to_be_bytes(), self.part.to_be_bytes(), self.parts.to_be_bytes());
        let kind = [self.kind.byte()];
        let fields: [&[u8]; 10] =
            [MAGIC, &kind, &self.practice, &self.device.0, &self.epoch.0, &seq, &part, &parts, &self.before, &self.salt];
        bytes.iter_mut().zip(fields.into_iter().flatten()).for_each(|(to, from)| *to = *from);
        bytes
    }

    fn read(bytes: &[u8; HEADER]) -> Option<Self> {
        let mut rest = bytes.as_slice();
        if take::<16>(&mut rest)? != *MAGIC {
            return None;
        }
        let kind = match take::<1>(&mut rest)? {
            [1] => Kind::Segment,
            [2] => Kind::Snapshot,
            [3] => Kind::Keyring,
            [4] => Kind::Roster,
            _ => return None,
        };
        let header = Self {
            kind,
            practice: take(&mut rest)?,
            device: DeviceId(take(&mut rest)?),
            epoch: EpochId(take(&mut rest)?),
            seq: u64::from_be_bytes(take(&mut rest)?),
            part: u32::from_be_bytes(take(&mut rest)?),
            parts: u32::from_be_bytes(take(&mut rest)?),
            before: take(&mut rest)?,
            salt: take(&mut rest)?,
        };
        // One header has one form.
        (header.bytes() == *bytes).then_some(header)
    }
}

fn take<const N: usize>(rest: &mut &[u8]) -> Option<[u8; N]> {
    let (front, back) = rest.split_at_checked(N)?;
    *rest = back;
    front.try_into().ok()
}

/// An object as it lies in the bucket, opened as far as its signature.
pub(crate) struct Opened {
    pub header: Header,
    pub hash: Hash,
    object: Vec<u8>,
}

/// SHA-256 of an object.
pub(crate) fn hash(object: &[u8]) -> Hash {
    Sha256::digest(object).into()
}

/// Seals and signs a body; gives the object.
pub(crate) fn seal(
    header: &Header,
    body: &[u8],
    epoch: &Epoch,
    secret: &SharedSecret,
    sign: impl FnOnce(&[u8]) -> [u8; 64],
) -> Result<Vec<u8>, SyncError> {
    let head = header.bytes();
    let body = Zeroizing::new(padded(body)?);
    let cipher = cipher(&head, epoch, secret)?;
    let payload = Payload { msg: &body, aad: &head };
    let sealed = cipher.encrypt(&Nonce::default(), payload).map_err(|error| SyncError::Internal(error.to_string()))?;
    let digest = Sha256::new().chain_update(head).chain_update(&sealed).finalize();
    let signature = sign(&digest);
    Ok([head.as_slice(), &sealed, &signature].concat())
}

impl Opened {
    /// Reads the header of an object; nothing is believed of it yet.
    pub(crate) fn read(object: Vec<u8>) -> Option<Self> {
        let header = Header::read(object.first_chunk::<HEADER>()?)?;
        let whole = object.len() > HEADER + SEAL;
        let hash = hash(&object);
        whole.then_some(Self { header, hash, object })
    }

    fn parts(&self) -> Option<(&[u8], &[u8; SEAL])> {
        self.object.split_last_chunk::<SEAL>()
    }

    /// Whether the device with this public key has signed it.
    pub(crate) fn is_signed(&self, public: &[u8; 32]) -> bool {
        self.parts().is_some_and(|(text, seal)| is_signed(public, DOMAIN, &Sha256::digest(text), seal))
    }

    /// The body, by the key of its epoch; none where the key does not open it.
    pub(crate) fn body(&self, epoch: &Epoch, secret: &SharedSecret) -> Result<Option<Zeroizing<Vec<u8>>>, SyncError> {
        let Some((text, _)) = self.parts() else { return Ok(None) };
        let Some((head, sealed)) = text.split_first_chunk::<HEADER>() else { return Ok(None) };
        let opened = cipher(head, epoch, secret)?.decrypt(&Nonce::default(), Payload { msg: sealed, aad: head });
        Ok(opened.ok().map(Zeroizing::new).and_then(unpadded))
    }
}

fn cipher(head: &[u8; HEADER], epoch: &Epoch, secret: &SharedSecret) -> Result<ChaCha20Poly1305, SyncError> {
    let mut key = Zeroizing::new([0; 32]);
    let hkdf = Hkdf::<Sha256>::new(Some(&secret.0.0), &epoch.key.0);
    let expanded = hkdf.expand_multi_info(&[b"secundine body 1", head], key.as_mut_slice());
    expanded.map_err(|error| SyncError::Internal(error.to_string()))?;
    Ok(ChaCha20Poly1305::new(key.as_slice().into()))
}

/// Length as 4 bytes, the body, zeros: so long that the length tells no more than some bits (Padmé, arXiv 1806.03160).
fn padded(body: &[u8]) -> Result<Vec<u8>, SyncError> {
    let length = u32::try_from(body.len()).map_err(|_| SyncError::Internal("a body is too long".to_owned()))?;
    let mut padded = [length.to_be_bytes().as_slice(), body].concat();
    padded.resize(padme(padded.len()), 0);
    Ok(padded)
}

fn unpadded(mut padded: Zeroizing<Vec<u8>>) -> Option<Zeroizing<Vec<u8>>> {
    let length = usize::try_from(u32::from_be_bytes(*padded.first_chunk()?)).ok()?;
    let end = length.checked_add(4).filter(|end| *end <= padded.len())?;
    padded.truncate(end);
    padded.drain(..4);
    Some(padded)
}

fn padme(length: usize) -> usize {
    let length = length.max(256);
    let exponent = length.ilog2();
    let fraction = exponent.ilog2() + 1;
    let mask = (1_usize << exponent.saturating_sub(fraction)) - 1;
    (length + mask) & !mask
}

/// Random bytes.
pub(crate) fn random<const N: usize>() -> Result<[u8; N], SyncError> {
    let mut bytes = [0; N];
    getrandom::fill(&mut bytes).map_err(|error| SyncError::Internal(error.to_string()))?;
    Ok(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cbor::Bytes;
    use ed25519_dalek::{Signer, SigningKey};

    fn header() -> Header {
        let (practice, device, epoch) = ([1; 16], DeviceId([2; 16]), EpochId([3; 8]));
        Header { kind: Kind::Segment, practice, device, epoch, seq: 7, part: 0, parts: 1, before: [4; 32], salt: [5; 16] }
    }

    #[test]
    fn padding_costs_at_most_an_eighth_and_hides_the_length() {
        for length in [0, 1, 255, 256, 257, 1_000, 10_000, 123_456, 5_000_000] {
            let padded = padme(length);
            assert!(padded >= length && (length < 256 || padded <= length + length / 8), "{length}: {padded}");
        }
        assert_eq!(padme(100_353), padme(102_400));
    }

    #[test]
    fn what_is_sealed_opens_and_nothing_of_it_can_be_changed() {
        let (epoch, secret) = (Epoch { counter: 1, key: Bytes([6; 32]) }, SharedSecret(Bytes([7; 32])));
        let signer = SigningKey::from_bytes(&[8; 32]);
        let public = signer.verifying_key().to_bytes();
        let sign = |digest: &[u8]| signer.sign(&[DOMAIN, digest].concat()).to_bytes();
        let object = seal(&header(), b"the body", &epoch, &secret, sign).unwrap();
        assert!(!object.windows(8).any(|part| part == b"the body"));
        let opened = Opened::read(object.clone()).unwrap();
        assert_eq!(opened.header, header());
        assert!(opened.is_signed(&public));
        assert_eq!(opened.body(&epoch, &secret).unwrap().unwrap().as_slice(), b"the body");
        let other = Epoch { counter: 1, key: Bytes([9; 32]) };
        assert!(opened.body(&other, &secret).unwrap().is_none());
        assert!(opened.body(&epoch, &SharedSecret(Bytes([9; 32]))).unwrap().is_none());
        for at in 0..object.len() {
            let mut changed = object.clone();
            changed[at] ^= 1;
            let read = Opened::read(changed);
            assert!(read.is_none_or(|read| !read.is_signed(&public)), "byte {at}");
        }
        for length in 0..object.len() {
            let read = Opened::read(object[..length].to_vec());
            assert!(read.is_none_or(|read| !read.is_signed(&public)), "{length} bytes");
        }
    }
}
