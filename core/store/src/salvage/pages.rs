//! The pages of a damaged database and of its log, decrypted one by one by the published form of SQLCipher 4.
//!
//! AES-256-CBC, HMAC-SHA512, 4096 bytes with 80 reserved: the vector and the code. The cipher needs the key alone; only the
//! code needs the salt, which is the start of the file. So a page whose code does not fit, or whose salt is lost, is
//! decrypted all the same and marked as not whole: what is in it has to prove itself.

use std::collections::HashMap;
use std::fs::File;
use std::io::{self, ErrorKind, Read, Seek, SeekFrom};
use std::path::Path;

use aes::Aes256;
use cbc::cipher::block_padding::NoPadding;
use cbc::cipher::{BlockDecryptMut, KeyIvInit};
use hmac::{Hmac, Mac};
use sha2::Sha512;
use zeroize::Zeroizing;

/// Bytes of a page on disk.
const PAGE: usize = 4096;
/// Bytes of a page that SQLite uses.
pub(super) const USABLE: usize = PAGE - 80;
/// Bytes before the first frame of the log, and before the page in each frame.
const LOG_HEADER: usize = 32;
const FRAME_HEADER: usize = 24;
/// Bytes of salt at the start of the first page.
const SALT: usize = 16;
/// Most salts that are tried: the file's own, and the log's copies of it.
const SALTS: usize = 4;

/// A page as SQLite sees it.
pub(super) struct Page {
    pub number: u32,
    /// Its code fits: it is as it was written.
    pub whole: bool,
    /// [`USABLE`] bytes.
    pub bytes: Zeroizing<Vec<u8>>,
}

/// Every version of every page.
#[derive(Default)]
pub(super) struct Pages {
    /// Whole ones first.
    pub all: Vec<Page>,
    /// Where the versions of a page stand, whole ones first.
    versions: HashMap<u32, Vec<usize>>,
}

impl Pages {
    /// Decrypts what is in the database and its log. Bytes that end within a page are taken as a page that is not whole.
    pub(super) fn decrypt(database: &[u8], log: &[u8], key: &[u8; 32]) -> Self {
        let sealed: Vec<(u32, &[u8])> = (1..).zip(database.chunks(PAGE)).chain(frames(log)).collect();
        let codes = codes(&sealed, key);
        Self::new(sealed.into_iter().map(|(number, bytes)| {
            let whole = codes.iter().any(|code| fits(code, number, bytes));
            Page { number, whole, bytes: decrypt(key, number, bytes) }
        }))
    }

    /// These pages, whole ones put first.
    pub(super) fn new(pages: impl Iterator<Item = Page>) -> Self {
        let mut all: Vec<Page> = pages.collect();
        all.sort_by_key(|page| !page.whole);
        let mut versions: HashMap<u32, Vec<usize>> = HashMap::new();
        for (at, page) in all.iter().enumerate() {
            versions.entry(page.number).or_default().push(at);
        }
        Self { all, versions }
    }

    /// A version of a page: 0 is the best, and the last stands for all further ones.
    pub(super) fn version(&self, number: u32, version: usize) -> Option<&Page> {
        let versions = self.versions.get(&number)?;
        self.all.get(*versions.get(version).or(versions.last())?)
    }

    /// The pages of which there is no whole version, in their order.
    pub(super) fn broken(&self) -> Vec<u32> {
        let whole = |number: u32| self.version(number, 0).is_some_and(|page| page.whole);
        let mut broken: Vec<u32> = self.versions.keys().copied().filter(|number| !whole(*number)).collect();
        broken.sort_unstable();
        broken
    }
}

/// The frames of the log that are there to their end, whether or not the log counts them as written.
fn frames(log: &[u8]) -> impl Iterator<Item = (u32, &[u8])> {
    log.get(LOG_HEADER..).unwrap_or_default().chunks_exact(FRAME_HEADER + PAGE).filter_map(|frame| {
        let (header, page) = frame.split_at_checked(FRAME_HEADER)?;
        Some((u32::from_be_bytes(*header.first_chunk()?), page))
    })
}

/// What the codes of the pages are made with, for each salt that may be the right one.
fn codes(sealed: &[(u32, &[u8])], key: &[u8; 32]) -> Vec<Hmac<Sha512>> {
    let mut salts: Vec<&[u8]> = Vec::new();
    for (_, page) in sealed.iter().filter(|(number, _)| *number == 1) {
        if let Some(salt) = page.get(..SALT).filter(|salt| !salts.contains(salt) && salts.len() < SALTS) {
            salts.push(salt);
        }
    }
    let code = |salt: &&[u8]| {
        let salt: Vec<u8> = salt.iter().map(|byte| byte ^ 0x3a).collect();
        let mut made = Zeroizing::new([0; 32]);
        pbkdf2::pbkdf2_hmac::<Sha512>(key, &salt, 2, made.as_mut_slice());
        Hmac::new_from_slice(made.as_slice()).ok()
    };
    salts.iter().filter_map(code).collect()
}

/// Where the sealed part of a page begins.
fn start(number: u32) -> usize {
    if number == 1 { SALT } else { 0 }
}

fn fits(code: &Hmac<Sha512>, number: u32, page: &[u8]) -> bool {
    let (Some(coded), Some(tag)) = (page.get(start(number)..USABLE + 16), page.get(USABLE + 16..PAGE)) else { return false };
    code.clone().chain_update(coded).chain_update(number.to_le_bytes()).verify_slice(tag).is_ok()
}

fn decrypt(key: &[u8; 32], number: u32, page: &[u8]) -> Zeroizing<Vec<u8>> {
    let mut bytes = Zeroizing::new(vec![0; PAGE]);
    bytes.iter_mut().zip(page).for_each(|(to, from)| *to = *from);
    let vector: [u8; 16] = bytes.get(USABLE..).and_then(<[u8]>::first_chunk).copied().unwrap_or_default();
    bytes.truncate(USABLE);
    if let Some(sealed) = bytes.get_mut(start(number)..) {
        // A whole number of blocks and no padding: nothing that can fail.
        let _ = cbc::Decryptor::<Aes256>::new(key.into(), &vector.into()).decrypt_padded_mut::<NoPadding>(sealed);
    }
    bytes
}

/// Reads a file, putting zeros where a piece of it cannot be read; none where it is not there.
///
/// # Errors
/// What keeps the file from being opened.
pub(super) fn read_file(path: &Path) -> io::Result<Vec<u8>> {
    let mut file = match File::open(path) {
        Err(error) if error.kind() == ErrorKind::NotFound => return Ok(Vec::new()),
        opened => opened?,
    };
    let length = file.metadata()?.len();
    let mut bytes = Vec::new();
    while (bytes.len() as u64) < length {
        let at = bytes.len();
        let rest = usize::try_from(length).unwrap_or(usize::MAX).saturating_sub(at);
        bytes.resize(at.saturating_add(rest.min(PAGE)), 0);
        let read = file.seek(SeekFrom::Start(at as u64)).and_then(|_| file.read_exact(bytes.get_mut(at..).unwrap_or_default()));
        if read.is_err() {
            bytes.get_mut(at..).unwrap_or_default().fill(0);
        }
    }
    Ok(bytes)
}
