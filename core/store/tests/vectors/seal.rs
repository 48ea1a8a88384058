//! Sealed forms as their published description says, made past the store.

use age::x25519::Identity;
use chacha20poly1305::aead::{Aead, Payload};
use chacha20poly1305::{ChaCha20Poly1305, Key, KeyInit, Nonce};
use hkdf::Hkdf;
use sha2::{Digest, Sha256};

pub const MAGIC: &[u8] = b"secundine inbox 1\n";

/// How far a file had come: digest of its header, records, last tag.
pub type Tail = ([u8; 32], u64, [u8; 16]);

/// The plain header of a file of the inbox.
pub fn plain_header(seed: [u8; 32], n: u64, before: Option<Tail>) -> Vec<u8> {
    let (digest, count, tag) = before.unwrap_or_default();
    let has = u8::from(before.is_some());
    [seed.as_slice(), &n.to_be_bytes(), &[has], &digest, &count.to_be_bytes(), &tag].concat()
}

/// A header as it stands at the beginning of a file.
pub fn header(magic: &[u8], plain: &[u8], to: &Identity) -> Vec<u8> {
    let sealed = age::encrypt(&to.to_public(), plain).unwrap();
    [magic, &u16::try_from(sealed.len()).unwrap().to_be_bytes(), &sealed].concat()
}

/// The ratchet of a file.
pub struct Ratchet {
    pub key: [u8; 32],
    pub count: u64,
    pub tag: [u8; 16],
}

impl Ratchet {
    pub fn new(seed: [u8; 32]) -> Self {
        Self { key: seed, count: 0, tag: [0; 16] }
    }

    /// The next record as it stands on disk.
    pub fn seal(&mut self, record: &[u8]) -> Vec<u8> {
        let key = derive(&self.key, b"message");
        let bound = [self.count.to_be_bytes().as_slice(), &self.tag].concat();
        let cipher = ChaCha20Poly1305::new(Key::from_slice(&key));
        let sealed = cipher.encrypt(&Nonce::default(), Payload { msg: record, aad: &bound }).unwrap();
        self.key = derive(&self.key, b"chain");
        self.count += 1;
        self.tag = *sealed.last_chunk().unwrap();
        [u32::try_from(record.len()).unwrap().to_be_bytes().as_slice(), &sealed].concat()
    }
}

fn derive(key: &[u8; 32], purpose: &[u8]) -> [u8; 32] {
    let mut derived = [0; 32];
    Hkdf::<Sha256>::new(None, key).expand(purpose, &mut derived).unwrap();
    derived
}

/// A file of the inbox in its parts, so that it can be put together wrongly.
pub struct File {
    pub header: Vec<u8>,
    pub records: Vec<Vec<u8>>,
    pub tail: Tail,
}

impl File {
    pub fn new(seed: u8, n: u64, before: Option<Tail>, texts: &[&str], to: &Identity) -> Self {
        let header = header(MAGIC, &plain_header([seed; 32], n, before), to);
        let mut ratchet = Ratchet::new([seed; 32]);
        let records = texts.iter().map(|text| ratchet.seal(text.as_bytes())).collect();
        let tail = (Sha256::digest(&header).into(), ratchet.count, ratchet.tag);
        Self { header, records, tail }
    }

    pub fn bytes(&self) -> Vec<u8> {
        self.of(&(0..self.records.len()).collect::<Vec<_>>())
    }

    /// The header and these of the records.
    pub fn of(&self, records: &[usize]) -> Vec<u8> {
        let records: Vec<&[u8]> = records.iter().map(|k| self.records[*k].as_slice()).collect();
        [self.header.as_slice(), &records.concat()].concat()
    }
}

/// The same with one bit turned over.
pub fn flipped(bytes: &[u8], place: usize) -> Vec<u8> {
    let mut bytes = bytes.to_vec();
    bytes[place] ^= 1;
    bytes
}
