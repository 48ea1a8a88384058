//! A damaged store: read as far as it can be, changing nothing; or built anew, with the damaged files set aside.
//!
//! Every page of the database and every frame of its log is read by itself, and every record on them is looked at, so that
//! neither the start of the file nor the trees above the records have to be there. Entries prove themselves by their chain.

mod cells;
mod found;
mod pages;
mod prove;
mod rebuild;
mod report;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use ed25519_dalek::VerifyingKey;
use rusqlite::{Connection, params};
use secundine_domain::entry::DeviceId;
use zeroize::Zeroizing;

use crate::chain::Position;
use crate::database::{DATABASE, FORM, LOG, in_memory, in_use};
use crate::erasure::remains;
use crate::head::{self, HEAD, Told};
use crate::inbox::INBOX_RECIPIENT;
use crate::keys::{DataKey, Passphrase};
use crate::notes::note_new;
use crate::{Store, StoreError, Verdict};

use found::Found;
use pages::{Page, Pages, USABLE, read_file};
use prove::{Kept, prove};
pub use rebuild::SALVAGE_REPORT;
pub(crate) use rebuild::{UNFINISHED, finish, is_set_aside};
pub use report::{Missing, Report};

/// What was read of a damaged store.
struct Salvaged {
    /// In the order of device and number.
    entries: Vec<Kept>,
    devices: BTreeMap<DeviceId, VerifyingKey>,
    /// How far each device had come by the heads.
    heads: Vec<(DeviceId, Position)>,
    found: Found,
    identity: Option<Zeroizing<String>>,
    report: Report,
}

impl Store {
    /// Opens what can be read of the damaged store in this folder, changing nothing in it: [`Store::is_read_only`]. `secret`
    /// is the passphrase, or the recovery identity as it was printed.
    ///
    /// # Errors
    /// [`StoreError::NothingRead`] where there is nothing to open; else what kept the key or the files from being read.
    pub fn read_damaged(folder: &Path, secret: Passphrase) -> Result<(Self, Report), StoreError> {
        let key = Self::key_of(folder, secret)?;
        let salvaged = Salvaged::read(folder, &key)?;
        let connection = in_memory().map_err(|error| StoreError::writing(&error))?;
        salvaged.fill(&connection).map_err(|error| StoreError::writing(&error))?;
        Ok((Self::reading(folder, key, connection)?, salvaged.report))
    }

    /// Builds the damaged store in this folder anew from everything that can be read, be it nothing, and opens it. It has the
    /// same keys and a new device, since numbers of the old one may be lost. Gives the folder where the damaged files are set
    /// aside, with the report beside them. Killed at any point, the damaged store is still there, or the new one is with the
    /// next opening.
    ///
    /// # Errors
    /// [`StoreError::NotDamaged`] where everything fits; [`StoreError::Newer`] for a database of a later form; else what kept
    /// the files from being read or written. Nothing was changed, but for a salvage before that was not finished.
    pub fn salvage(folder: &Path, secret: Passphrase) -> Result<(Self, Report, PathBuf), StoreError> {
        let key = Self::key_of(folder, secret)?;
        let salvaged = Salvaged::look(folder, &key)?;
        if salvaged.report.is_whole() {
            Self::is_damaged(folder, &key)?;
        }
        let set_aside = rebuild::rebuild(folder, &key, &salvaged)?;
        Ok((Self::with_key(folder, key)?, salvaged.report, set_aside))
    }

    /// Pages and entries may all be whole and the trees above them not.
    fn is_damaged(folder: &Path, key: &DataKey) -> Result<(), StoreError> {
        match Self::with_key(folder, key.clone()).and_then(|store| store.verify()) {
            Ok(Verdict { misfit: None, .. }) => Err(StoreError::NotDamaged),
            Ok(_) | Err(StoreError::Damaged(_)) => Ok(()),
            Err(other) => Err(other),
        }
    }
}

impl Salvaged {
    /// What can be read, or that nothing can.
    fn read(folder: &Path, key: &DataKey) -> Result<Self, StoreError> {
        let salvaged = Self::look(folder, key)?;
        match salvaged.entries.is_empty() && salvaged.devices.is_empty() {
            true => Err(StoreError::NothingRead),
            false => Ok(salvaged),
        }
    }

    /// What can be read, be it nothing.
    fn look(folder: &Path, key: &DataKey) -> Result<Self, StoreError> {
        finish(folder).map_err(|error| StoreError::writing_file(&error))?;
        if in_use(folder) {
            return Err(StoreError::InUse);
        }
        let file = |name: &str| read_file(&folder.join(name)).map_err(|error| StoreError::reading_file(&error));
        let pages = Pages::decrypt(&file(DATABASE)?, &file(LOG)?, &key.bytes());
        if let Some(form) = form(&pages).filter(|form| *form > FORM) {
            return Err(StoreError::Newer(form));
        }
        let recipient = fs::read_to_string(folder.join(INBOX_RECIPIENT)).ok();
        let salvaged = Self::of(&pages, recipient.as_deref(), |public| match head::read(folder, std::slice::from_ref(public)) {
            Told::Position(_, at) => Some(at),
            Told::Nothing | Told::Unreadable => None,
        });
        let head_unread = salvaged.heads.is_empty() && folder.join(HEAD).exists();
        Ok(Self { report: Report { head_unread, ..salvaged.report }, ..salvaged })
    }

    /// What is on these pages. `head` tells how far the device of a public key had come.
    fn of(pages: &Pages, recipient: Option<&str>, head: impl Fn(&VerifyingKey) -> Option<Position>) -> Self {
        let mut found = Found::new(pages);
        let devices = std::mem::take(&mut found.devices);
        let heads: Vec<_> = devices.iter().filter_map(|(device, public)| Some((*device, head(public)?))).collect();
        let identity = found.identity(recipient).map(|text| Zeroizing::new(text.to_owned()));
        let mut report = Report {
            pages: pages.broken(),
            unchecked: !pages.all.iter().any(|page| page.whole),
            inbox_lost: identity.is_none(),
            ..Report::default()
        };
        let entries = prove(std::mem::take(&mut found.rows), &devices, &heads, &mut report);
        Self { entries, devices, heads, found, identity, report }
    }

    /// Puts entries, devices, runs and the keys of files into empty tables. No device has a seed.
    fn fill(&self, connection: &Connection) -> rusqlite::Result<()> {
        let transaction = connection.unchecked_transaction()?;
        let insert = "INSERT INTO entry (birth, device, n, body, link, signature) VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
        let mut insert = transaction.prepare(insert)?;
        for Kept { row, .. } in &self.entries {
            let Some(body) = &row.body else {
                note_new(&transaction, &[remains(&row.carried())])?;
                continue;
            };
            insert.execute(params![row.birth, row.device.0, row.n, body.as_slice(), row.link, row.seal])?;
        }
        drop(insert);
        for (device, public) in &self.devices {
            transaction.execute("INSERT INTO device (id, public) VALUES (?1, ?2)", params![device.0, public.to_bytes()])?;
        }
        for run in self.found.runs.values() {
            let insert = "INSERT INTO run (boot, since_ms, wall_ms) VALUES (?1, ?2, ?3)";
            transaction.execute(insert, params![run.boot, run.since_ms, run.wall_ms])?;
        }
        note_new(&transaction, &self.found.file_keys)?;
        transaction.commit()
    }
}

/// The form of the tables, from the first page where it is whole.
fn form(pages: &Pages) -> Option<i64> {
    let first = pages.version(1, 0).filter(|page| page.whole)?;
    Some(i64::from(i32::from_be_bytes(*first.bytes.get(60..)?.first_chunk()?)))
}

/// What a salvage makes of pages that are decrypted already: 4096 bytes each of which the last 80 are not looked at,
/// numbered from 1 on. Takes any bytes; for tests from outside.
#[must_use]
pub fn salvage_pages(plain: &[u8], whole: bool) -> Report {
    let page = |(number, bytes): (u32, &[u8])| {
        let mut bytes = Zeroizing::new(bytes.to_vec());
        bytes.resize(USABLE, 0);
        Page { number, whole, bytes }
    };
    Salvaged::of(&Pages::new((1..).zip(plain.chunks(4096)).map(page)), None, |_| None).report
}

#[cfg(test)]
mod tests;
