//! Backups made, taken apart and put together again past the store.

use std::io::{Read, Write};
use std::path::{Path, PathBuf};

use age::scrypt;
use rusqlite::Connection;
use secundine_store::{DATABASE, Store};

use super::{Founded, raw, stamp};

pub const ENTRIES: &str = "entries.age";
pub const MADE: i64 = 1_795_570_900_000;

/// A row of the table of entries: device, number, birth, body, link and signature.
pub type Row = (Vec<u8>, u64, Vec<u8>, Vec<u8>, Vec<u8>, Vec<u8>);

impl Founded {
    /// Makes a backup beside the practice.
    pub fn back_up(&self, name: &str) -> PathBuf {
        back_up(&self.open(), &self.file(name))
    }

    /// Every entry as it is on disk, past the store, which is closed.
    pub fn rows(&self) -> Vec<Row> {
        rows(self.path(), &self.data_key())
    }
}

pub fn back_up(store: &Store, path: &Path) -> PathBuf {
    store.back_up(path, &stamp(MADE)).unwrap();
    path.to_owned()
}

pub fn rows(folder: &Path, key: &str) -> Vec<Row> {
    let raw: Connection = raw(&folder.join(DATABASE), key);
    let rows = raw
        .prepare("SELECT device, n, birth, body, link, signature FROM entry ORDER BY device, n, birth")
        .and_then(|mut select| {
            let row = |row: &rusqlite::Row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?, row.get(4)?, row.get(5)?));
            select.query_map([], row)?.collect()
        })
        .unwrap();
    raw.close().unwrap();
    rows
}

/// The members of a backup, by name, in their order.
pub fn members(backup: &[u8]) -> Vec<(String, Vec<u8>)> {
    let mut archive = tar::Archive::new(backup);
    let members = archive.entries().unwrap().map(|entry| {
        let mut entry = entry.unwrap();
        let mut bytes = Vec::new();
        entry.read_to_end(&mut bytes).unwrap();
        (entry.path().unwrap().to_str().unwrap().to_owned(), bytes)
    });
    members.collect()
}

/// A tar file of these members.
pub fn join(members: &[(String, Vec<u8>)]) -> Vec<u8> {
    let mut tar = tar::Builder::new(Vec::new());
    for (name, bytes) in members {
        let mut header = tar::Header::new_ustar();
        header.set_size(bytes.len() as u64);
        header.set_mode(0o600);
        tar.append_data(&mut header, name, bytes.as_slice()).unwrap();
    }
    tar.into_inner().unwrap()
}

/// What a member holds that is sealed to the data key.
pub fn unseal(sealed: &[u8], key: &str) -> String {
    let identity = scrypt::Identity::new(key.to_owned().into());
    String::from_utf8(age::decrypt(&identity, sealed).unwrap()).unwrap()
}

pub fn seal(text: &str, key: &str) -> Vec<u8> {
    let mut recipient = scrypt::Recipient::new(key.to_owned().into());
    recipient.set_work_factor(1);
    let encryptor = age::Encryptor::with_recipients(std::iter::once(&recipient as &dyn age::Recipient)).unwrap();
    let mut sealed = Vec::new();
    let mut out = encryptor.wrap_output(&mut sealed).unwrap();
    out.write_all(text.as_bytes()).unwrap();
    out.finish().unwrap();
    sealed
}

/// The backup with its lines changed by somebody who has the data key; the last line is made to fit again.
pub fn altered(backup: &[u8], key: &str, change: impl FnOnce(&mut Vec<serde_json::Value>)) -> Vec<u8> {
    use sha2::{Digest, Sha256};
    let mut members = members(backup);
    let (_, sealed) = members.iter_mut().find(|(name, _)| name == ENTRIES).unwrap();
    let text = unseal(sealed, key);
    let mut lines: Vec<serde_json::Value> = text.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    lines.pop();
    change(&mut lines);
    let mut text: String = lines.iter().map(|line| format!("{line}\n")).collect();
    let end = hex::encode(Sha256::digest(&text));
    text.push_str(&format!("{{\"end\":\"{end}\"}}\n"));
    *sealed = seal(&text, key);
    join(&members)
}

/// The line of an entry of a device.
pub fn line<'a>(lines: &'a mut [serde_json::Value], device: &str, n: u64) -> &'a mut serde_json::Value {
    lines.iter_mut().find(|line| line.get("n") == Some(&n.into()) && line.get("device") == Some(&device.into())).unwrap()
}
