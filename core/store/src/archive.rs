//! The archive: every entry as JSON Lines, verbatim and with all that proves it, for a program or a person to read.
//!
//! The first line is the [`Header`]. Then comes a line for each device, `{device, public}`, and a line for each entry,
//! `{device, n, birth, body, link, signature}`, in the order of device and number. `body` is the stored text, since its
//! digest is what the chain binds; of an entry whose birth was erased the `digest` stands in its place. Bytes are written as
//! hexadecimal digits. The last line, `{end}`, holds the SHA-256 of everything before it. No line holds a secret of a device. In
//! a backup, where the whole archive is sealed, a line `{file, key}` for each picture or sound that came from another phone of
//! the practice stands before the entries, since nothing else there opens it.
//!
//! An extract has the entries of one birth, which its header names. Where the entry before one is not in it, that one's link
//! stands beside it as `before`, so that its signature proves it all the same. `core/store/ARCHIVE.md` tells all of this to
//! whoever has to read an archive without this program.

use std::collections::BTreeMap;
use std::io::{self, BufRead, Read, Write};

use secundine_domain::entry::{BirthId, DeviceId};
use secundine_domain::file::FileId;
use secundine_domain::time::Stamp;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use crate::StoreError;
use crate::chain::Link;
use crate::database::{birth_key, birth_of};
use crate::exchange::Carried;
use crate::files::FILE_KEY_BYTES;

/// Version of the form that this program writes.
const FORM: u32 = 1;

/// Most bytes of a line. Our own choice: far more than a person writes into one entry.
const LINE_MAX: u64 = 16 << 20;

/// What an archive says of itself.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Header {
    form: u32,
    /// When it was made; without the clock that stays on the device.
    pub made: Stamp,
    /// Version of the program that made it.
    program: String,
    /// The device that made it.
    device: String,
    /// How many entries follow.
    pub entries: u64,
    /// Of how many births.
    pub births: u64,
    /// The birth of an extract.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub birth: Option<BirthId>,
    /// SHA-256 of files that lie beside it, by their names.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub files: BTreeMap<String, String>,
}

impl Header {
    pub(crate) fn new(made: &Stamp, device: DeviceId, entries: u64, births: u64, files: BTreeMap<String, String>) -> Self {
        let made = Stamp { boot: None, ..made.clone() };
        let program = env!("CARGO_PKG_VERSION").to_owned();
        Self { form: FORM, made, program, device: device.to_string(), entries, births, birth: None, files }
    }

    /// Of an extract.
    pub(crate) fn of_birth(birth: BirthId, made: &Stamp, device: DeviceId, entries: u64) -> Self {
        Self { birth: Some(birth), ..Self::new(made, device, entries, 1, BTreeMap::new()) }
    }
}

#[derive(Deserialize)]
struct Version {
    form: u32,
}

#[derive(Serialize, Deserialize)]
#[serde(untagged)]
enum Line {
    Entry(EntryLine),
    Device(DeviceLine),
    File(FileLine),
    End(EndLine),
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct EntryLine {
    device: String,
    n: u64,
    birth: BirthId,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    body: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    digest: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    before: Option<String>,
    link: String,
    signature: String,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct DeviceLine {
    device: String,
    public: String,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct FileLine {
    file: String,
    key: String,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct EndLine {
    end: String,
}

/// What stands on a line between the first and the last.
pub(crate) enum Item {
    /// A device and its public key.
    Device(DeviceId, [u8; 32]),
    /// A file and the key that opens it and no other.
    File(FileId, [u8; FILE_KEY_BYTES]),
    /// An entry; and the link of the one before it on its device, where that one is not in the extract.
    Entry(Carried, Option<Link>),
}

/// Writes an archive.
pub(crate) struct Writer<W> {
    out: W,
    hash: Sha256,
}

impl<W: Write> Writer<W> {
    pub(crate) fn new(out: W, header: &Header) -> io::Result<Self> {
        let mut writer = Self { out, hash: Sha256::new() };
        writer.line(header)?;
        Ok(writer)
    }

    pub(crate) fn device(&mut self, device: DeviceId, public: &[u8; 32]) -> io::Result<()> {
        self.line(&DeviceLine { device: device.to_string(), public: hex::encode(public) })
    }

    pub(crate) fn file(&mut self, file: FileId, key: &[u8]) -> io::Result<()> {
        self.line(&FileLine { file: file.to_string(), key: hex::encode(key) })
    }

    /// Writes an entry, and the link of the one before it where that is asked for.
    pub(crate) fn entry(&mut self, entry: Carried, before: Option<Link>) -> io::Result<()> {
        let Carried { device, n, birth, digest, body, link, seal } = entry;
        let birth = birth_of(&birth).ok_or_else(|| io::Error::other("an entry has no birth"))?;
        let digest = body.is_none().then(|| hex::encode(digest));
        let body = body.map(String::from_utf8).transpose().map_err(|_| io::Error::other("an entry is no text"))?;
        let (link, signature) = (hex::encode(link), hex::encode(seal));
        let before = before.map(hex::encode);
        self.line(&EntryLine { device: device.to_string(), n, birth, body, digest, before, link, signature })
    }

    /// Writes the last line and gives back what was written to.
    pub(crate) fn end(mut self) -> io::Result<W> {
        let end = hex::encode(self.hash.clone().finalize());
        self.line(&EndLine { end })?;
        Ok(self.out)
    }

    fn line(&mut self, line: &impl Serialize) -> io::Result<()> {
        let mut bytes = serde_json::to_vec(line)?;
        bytes.push(b'\n');
        self.hash.update(&bytes);
        self.out.write_all(&bytes)
    }
}

/// Reads an archive, a line at a time.
pub(crate) struct Reader<'a> {
    input: &'a mut dyn BufRead,
    hash: Sha256,
    line: Vec<u8>,
    pub header: Header,
    /// The entry that was read last, and how many were.
    last: Option<(DeviceId, u64)>,
    entries: u64,
}

impl<'a> Reader<'a> {
    /// Reads the header.
    ///
    /// # Errors
    /// [`StoreError::Newer`] for a later form, [`StoreError::DamagedBackup`] for what is no archive.
    pub(crate) fn new(input: &'a mut dyn BufRead) -> Result<Self, StoreError> {
        let mut line = Vec::new();
        read_line(input, &mut line)?;
        let Version { form } = parse(&line)?;
        if form > FORM {
            return Err(StoreError::Newer(form.into()));
        }
        let header = parse(&line)?;
        Ok(Self { input, hash: Sha256::new_with_prefix(&line), line, header, last: None, entries: 0 })
    }

    /// The next device, file or entry; none once the end is reached and everything fits it.
    ///
    /// # Errors
    /// [`StoreError::DamagedBackup`] where it is cut off or altered.
    pub(crate) fn next(&mut self) -> Result<Option<Item>, StoreError> {
        read_line(self.input, &mut self.line)?;
        let line: Line = parse(&self.line)?;
        if let Line::End(EndLine { end }) = line {
            return self.end(&end).map(|()| None);
        }
        self.hash.update(&self.line);
        Ok(Some(match line {
            Line::Device(DeviceLine { device, public }) if self.last.is_none() => {
                Item::Device(DeviceId(bytes(&device)?), bytes(&public)?)
            }
            // An extract is read by whoever has it.
            Line::File(FileLine { file, key }) if self.last.is_none() && self.header.birth.is_none() => {
                Item::File(FileId(bytes(&file)?), bytes(&key)?)
            }
            Line::Entry(line) => self.entry(line)?,
            _ => return Err(damaged("a line is out of its place")),
        }))
    }

    fn entry(&mut self, line: EntryLine) -> Result<Item, StoreError> {
        let EntryLine { device, n, birth, body, digest, before, link, signature } = line;
        let device = DeviceId(bytes(&device)?);
        if n == 0 || self.last.is_some_and(|last| last >= (device, n)) {
            return Err(damaged("an entry is out of its place"));
        }
        let extract = self.header.birth;
        if extract.is_some_and(|of| of != birth) || (extract.is_none() && before.is_some()) {
            return Err(damaged("an entry does not belong into it"));
        }
        self.last = Some((device, n));
        self.entries += 1;
        let (birth, link, seal) = (birth_key(birth), bytes(&link)?, bytes(&signature)?);
        let entry = match (body, digest) {
            (Some(body), None) => Carried::whole(device, n, birth, body.into_bytes(), link, seal),
            (None, Some(digest)) if extract.is_none() => {
                Carried { device, n, birth, digest: bytes(&digest)?, body: None, link, seal }
            }
            _ => return Err(damaged("an entry has no text, or it and its digest")),
        };
        Ok(Item::Entry(entry, before.as_deref().map(bytes).transpose()?))
    }

    fn end(&mut self, end: &str) -> Result<(), StoreError> {
        let made: [u8; 32] = self.hash.clone().finalize().into();
        if bytes(end)? != made || self.entries != self.header.entries {
            return Err(damaged("the end does not fit"));
        }
        // Only at its very end is it certain that nothing was cut off.
        match self.input.read(&mut [0]) {
            Ok(0) => Ok(()),
            Ok(_) => Err(damaged("something stands after the end")),
            Err(error) => Err(damaged(error)),
        }
    }
}

pub(crate) fn damaged(why: impl ToString) -> StoreError {
    StoreError::DamagedBackup(why.to_string())
}

fn read_line(input: &mut dyn BufRead, line: &mut Vec<u8>) -> Result<(), StoreError> {
    line.clear();
    input.take(LINE_MAX).read_until(b'\n', line).map_err(damaged)?;
    match line.last() {
        Some(b'\n') => Ok(()),
        _ => Err(damaged("a line is cut off")),
    }
}

/// What the parser says could quote an entry, so it is not passed on.
fn parse<T: DeserializeOwned>(line: &[u8]) -> Result<T, StoreError> {
    serde_json::from_slice(line).map_err(|_| damaged("a line cannot be read"))
}

fn bytes<const N: usize>(text: &str) -> Result<[u8; N], StoreError> {
    let mut bytes = [0; N];
    hex::decode_to_slice(text, &mut bytes).map_err(damaged)?;
    Ok(bytes)
}
