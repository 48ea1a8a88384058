//! The ratchet: one key for each record, and no way back from a key to the one before.

use chacha20poly1305::aead::{Aead, AeadInPlace, Payload};
use chacha20poly1305::{ChaCha20Poly1305, Key, KeyInit, Nonce};
use hkdf::Hkdf;
use sha2::Sha256;
use zeroize::Zeroizing;

use crate::StoreError;

/// Bytes of a record's tag.
pub(super) const TAG: usize = 16;
/// Bytes of a record's length.
pub(super) const LENGTH: usize = 4;

/// Turned once for each record, by the writer and again by the reader.
pub(super) struct Ratchet {
    key: Zeroizing<[u8; 32]>,
    count: u64,
    tag: [u8; TAG],
}

impl Ratchet {
    pub(super) fn new(seed: Zeroizing<[u8; 32]>) -> Self {
        Self { key: seed, count: 0, tag: [0; TAG] }
    }

    /// Records so far.
    pub(super) fn count(&self) -> u64 {
        self.count
    }

    /// Tag of the last record; zeros before the first.
    pub(super) fn tag(&self) -> [u8; TAG] {
        self.tag
    }

    /// The next record as it stands on disk: length of what follows less the tag, sealed record, tag.
    pub(super) fn seal(&mut self, record: &[u8]) -> Result<Vec<u8>, StoreError> {
        let Turn { cipher, next } = self.ahead()?;
        let length = u32::try_from(record.len()).map_err(|_| broken())?;
        let mut framed = Vec::with_capacity(LENGTH + record.len() + TAG);
        framed.extend(length.to_be_bytes());
        framed.extend(record);
        let sealed = framed.get_mut(LENGTH..).ok_or_else(broken)?;
        let tag = cipher.encrypt_in_place_detached(&Nonce::default(), &self.bound(), sealed).map_err(|_| broken())?;
        framed.extend(tag);
        self.turn(next, tag.into());
        Ok(framed)
    }

    /// The next record opened; none, and nothing turned, where it is not the one that was sealed here.
    pub(super) fn open(&mut self, sealed: &[u8]) -> Option<Zeroizing<Vec<u8>>> {
        let Turn { cipher, next } = self.ahead().ok()?;
        let payload = Payload { msg: sealed, aad: &self.bound() };
        let record = cipher.decrypt(&Nonce::default(), payload).ok().map(Zeroizing::new)?;
        self.turn(next, *sealed.last_chunk()?);
        Some(record)
    }

    /// What a record is bound to: its number and the record before it.
    fn bound(&self) -> [u8; 8 + TAG] {
        let mut bound = [0; 8 + TAG];
        let (number, before) = bound.split_at_mut(8);
        number.copy_from_slice(&self.count.to_be_bytes());
        before.copy_from_slice(&self.tag);
        bound
    }

    /// What the next record is sealed with, and the key after it. Each message key seals one record, so the nonce may
    /// stand still.
    fn ahead(&self) -> Result<Turn, StoreError> {
        let source = Hkdf::<Sha256>::new(None, self.key.as_slice());
        let key = derive(&source, b"message")?;
        Ok(Turn { cipher: ChaCha20Poly1305::new(Key::from_slice(key.as_slice())), next: derive(&source, b"chain")? })
    }

    /// The old key is wiped as it is replaced.
    fn turn(&mut self, next: Zeroizing<[u8; 32]>, tag: [u8; TAG]) {
        self.key = next;
        self.count += 1;
        self.tag = tag;
    }
}

struct Turn {
    cipher: ChaCha20Poly1305,
    next: Zeroizing<[u8; 32]>,
}

fn derive(source: &Hkdf<Sha256>, purpose: &[u8]) -> Result<Zeroizing<[u8; 32]>, StoreError> {
    let mut derived = Zeroizing::new([0; 32]);
    source.expand(purpose, derived.as_mut_slice()).map_err(|_| broken())?;
    Ok(derived)
}

fn broken() -> StoreError {
    StoreError::NotSaved("the record could not be sealed".to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pair() -> (Ratchet, Ratchet) {
        let seed = || Zeroizing::new([7; 32]);
        (Ratchet::new(seed()), Ratchet::new(seed()))
    }

    #[test]
    fn each_record_has_a_key_of_its_own_and_twenty_bytes_beside_it() {
        let (mut writer, mut reader) = pair();
        let sealed: Vec<Vec<u8>> = (0..3).map(|_| writer.seal(b"cord clamped").unwrap()).collect();
        assert!(sealed.iter().all(|record| record.len() == 12 + 20));
        assert!(sealed[0] != sealed[1] && sealed[1] != sealed[2]);
        for record in &sealed {
            assert_eq!(reader.open(&record[LENGTH..]).unwrap().as_slice(), b"cord clamped");
        }
        assert_eq!((reader.count(), reader.tag()), (3, writer.tag()));
    }

    #[test]
    fn a_record_opens_only_in_its_place() {
        let (mut writer, mut reader) = pair();
        let first = writer.seal(b"first").unwrap();
        let second = writer.seal(b"second").unwrap();
        assert!(reader.open(&second[LENGTH..]).is_none());
        assert!(reader.open(&first[LENGTH..]).is_some());
        assert!(reader.open(&first[LENGTH..]).is_none(), "not twice");
        assert!(reader.open(&second[LENGTH..]).is_some());
    }

    #[test]
    fn a_key_that_was_used_is_gone() {
        let (mut writer, _) = pair();
        let key = |ratchet: &Ratchet| *ratchet.key;
        let before = key(&writer);
        writer.seal(b"first").unwrap();
        assert_ne!(key(&writer), before);
        let derived = |purpose: &[u8]| derive(&Hkdf::<Sha256>::new(None, &before), purpose).unwrap();
        assert_eq!(key(&writer), *derived(b"chain"));
        assert_ne!(derived(b"chain"), derived(b"message"));
    }
}
