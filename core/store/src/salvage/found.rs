//! What the records of a damaged store are taken for: entries, devices, runs and what the inbox keeps.

use std::collections::{BTreeMap, VecDeque};

use age::x25519;
use ed25519_dalek::VerifyingKey;
use secundine_domain::entry::DeviceId;
use secundine_domain::time::Run;
use sha2::{Digest, Sha256};
use zeroize::Zeroizing;

use super::cells::{Record, Shape, integer, records};
use super::pages::Pages;
use crate::Note;
use crate::chain::{Link, Seal, device_of};
use crate::database::BirthKey;
use crate::erasure::{ERASED, read_erased};
use crate::exchange::Carried;
use crate::files::FILE_KEY;
use crate::inbox::DrainedRow;

/// What the text of an identity begins with, and its length.
const IDENTITY: &[u8] = b"AGE-SECRET-KEY-1";
const IDENTITY_LENGTH: usize = 74;

/// A row that may be an entry, or what remains of one.
#[derive(Clone, PartialEq, Eq)]
pub(super) struct Row {
    pub birth: BirthKey,
    pub device: DeviceId,
    pub n: u64,
    pub digest: [u8; 32],
    /// None where its birth was erased.
    pub body: Option<Zeroizing<Vec<u8>>>,
    pub link: Link,
    pub seal: Seal,
    /// It stands on whole pages.
    pub whole: bool,
    /// The pages that it lies on.
    pub pages: Vec<u32>,
}

impl Row {
    /// What proves it.
    pub(super) fn carried(&self) -> Carried {
        let Self { birth, device, n, digest, link, seal, .. } = *self;
        Carried { device, n, birth, digest, body: None, link, seal }
    }
}

/// Everything that was found, not proved yet.
#[derive(Default)]
pub(super) struct Found {
    pub rows: Vec<Row>,
    /// The public key of each device: its id vouches for it.
    pub devices: BTreeMap<DeviceId, VerifyingKey>,
    /// The latest beat of each run.
    pub runs: BTreeMap<String, Run>,
    /// What opens files that were sealed on other devices; of two for one file the first stands.
    pub file_keys: VecDeque<Note>,
    /// The files of the inbox that were drained.
    pub drained: Vec<DrainedRow>,
    /// What may be the inbox's identity.
    pub identities: Vec<(x25519::Identity, Zeroizing<String>)>,
}

impl Found {
    pub(super) fn new(pages: &Pages) -> Self {
        let mut found = Self::default();
        for record in records(pages) {
            // What is not of the shape after all is no record.
            let _ = found.take(record);
        }
        pages.all.iter().for_each(|page| found.identities(&page.bytes));
        found
    }

    fn take(&mut self, record: Record) -> Option<()> {
        let Record { shape, columns, whole, pages } = record;
        match (shape, columns.as_slice()) {
            (Shape::Entry, [(_, birth), (_, device), (kind, n), (_, body), (_, link), (_, seal)]) => {
                let n = u64::try_from(integer(*kind, n)).ok().filter(|n| *n > 0)?;
                let device = DeviceId(exact(device)?);
                let (birth, link, seal) = (exact(birth)?, exact(link)?, exact(seal)?);
                let (digest, body) = (Sha256::digest(body).into(), Some(body.clone()));
                self.rows.push(Row { birth, device, n, digest, body, link, seal, whole, pages });
            }
            (Shape::Erased, [(_, kind), (_, name), (_, value)]) if **kind == ERASED.as_bytes() => {
                let Carried { device, n, birth, digest, link, seal, .. } = read_erased(name, value).filter(|row| row.n > 0)?;
                self.rows.push(Row { birth, device, n, digest, body: None, link, seal, whole, pages });
            }
            (Shape::Device, [(_, id), (_, public), _]) => {
                let (id, public) = (DeviceId(exact(id)?), VerifyingKey::from_bytes(&exact(public)?).ok()?);
                if device_of(&public) == id {
                    self.devices.insert(id, public);
                }
            }
            // Nothing proves these but the codes of their pages.
            (Shape::Run, [(_, boot), since, wall]) if whole => {
                let boot = String::from_utf8(boot.to_vec()).ok()?;
                let run = Run { boot: boot.clone(), since_ms: integer(since.0, &since.1), wall_ms: integer(wall.0, &wall.1) };
                let known = self.runs.entry(boot).or_insert_with(|| run.clone());
                if known.since_ms < run.since_ms {
                    *known = run;
                }
            }
            // The file itself proves it, when it opens.
            (Shape::FileKey, [(_, kind), (_, file), (_, key)]) if **kind == FILE_KEY.as_bytes() => {
                let note = Note::Put(FILE_KEY, file.to_vec(), key.to_vec());
                match whole {
                    true => self.file_keys.push_front(note),
                    false => self.file_keys.push_back(note),
                }
            }
            (Shape::Drained, [(_, digest), count, (_, tag), taken, (_, carry)]) if whole => {
                self.drained.push(DrainedRow {
                    digest: exact(digest)?,
                    count: integer(count.0, &count.1),
                    tag: exact(tag)?,
                    whole: integer(taken.0, &taken.1),
                    carry: carry.to_vec(),
                });
            }
            _ => {}
        }
        Some(())
    }

    /// An identity carries a checksum of its own.
    fn identities(&mut self, page: &[u8]) {
        for at in page.windows(IDENTITY.len()).enumerate().filter_map(|(at, text)| (text == IDENTITY).then_some(at)) {
            let text = page.get(at..at + IDENTITY_LENGTH).and_then(|text| std::str::from_utf8(text).ok());
            if let Some((identity, text)) = text.and_then(|text| Some((text.parse().ok()?, Zeroizing::new(text.to_owned())))) {
                self.identities.push((identity, text));
            }
        }
    }

    /// The inbox's identity: the one of its recipient, where that is known.
    pub(super) fn identity(&self, recipient: Option<&str>) -> Option<&str> {
        let of = |identity: &x25519::Identity| recipient.is_none_or(|text| identity.to_public().to_string() == text.trim());
        self.identities.iter().find(|(identity, _)| of(identity)).map(|(_, text)| text.as_str())
    }
}

fn exact<const N: usize>(bytes: &[u8]) -> Option<[u8; N]> {
    bytes.try_into().ok()
}
