//! The head: a small file beside the database that tells how far this device's chain had come.
//!
//! It holds the number, link and signature of the last entry, as text. It is written after each commit without a sync, so
//! after a loss of power it may lag behind the database, but it is never ahead of it: a database that ends before its head
//! was cut or rolled back. Nobody can make one without the device's key, which lies in the encrypted database, and it tells
//! nothing but how many entries there are.
//!
//! It cannot catch a database and a head that are put back together, as from a backup of the whole folder, nor anything
//! done by a person who has the passphrase and so the device's key. A head that is gone proves nothing. A copy of the folder
//! that was taken while it was written to may hold a database that is older than its head: the check says just that.

use std::fs::{self, File, OpenOptions};
use std::io::{self, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

use ed25519_dalek::VerifyingKey;
use secundine_domain::entry::DeviceId;

use crate::chain::{Position, Seal, device_of};
use crate::keys::write_named;

/// Name of the head in the practice's folder.
pub const HEAD: &str = "head";

/// What the name of a head begins with that the database contradicted, or that this device wrote before it became another:
/// it is kept, and every check looks at it again.
pub(crate) const CONTRADICTED: &str = "head-contradicted-";

const TITLE: &str = "secundine head 1";

/// What a head tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Told {
    /// There is none.
    Nothing,
    /// It cannot be read, or no device that is known has signed it.
    Unreadable,
    /// How far the chain of a device had come, signed by it.
    Position(DeviceId, Position),
}

/// The head as it is written.
pub(crate) struct Head {
    folder: PathBuf,
    file: Option<File>,
    /// The file that is there tells of entries that the database has not, or of another device that this one was before: it
    /// is kept under another name.
    contradicted: bool,
}

impl Head {
    pub(crate) fn new(folder: &Path, contradicted: bool) -> Self {
        Self { folder: folder.to_owned(), file: None, contradicted }
    }

    /// Writes how far the chain has come. The entry is on disk already, so a head that cannot be written is let be: it lags.
    pub(crate) fn tell(&mut self, at: &Position, seal: &Seal) {
        if self.write(text(at, seal).as_bytes()).is_err() {
            self.file = None;
        }
    }

    /// Always of the same length, so that the old text is written over in place.
    fn write(&mut self, text: &[u8]) -> io::Result<()> {
        if self.contradicted {
            fs::rename(self.folder.join(HEAD), free_name(&self.folder))?;
            self.contradicted = false;
        }
        let file = match &mut self.file {
            Some(file) => file,
            none => {
                let file = OpenOptions::new().write(true).create(true).truncate(false).open(self.folder.join(HEAD))?;
                file.set_len(text.len().try_into().unwrap_or(u64::MAX))?;
                none.insert(file)
            }
        };
        file.seek(SeekFrom::Start(0))?;
        file.write_all(text)
    }
}

/// Keeps a copy of the head among those that were contradicted, once.
pub(crate) fn keep_contradicted(folder: &Path) -> io::Result<()> {
    let text = fs::read(folder.join(HEAD))?;
    let free = free_name(folder);
    if kept(folder).any(|path| fs::read(path).is_ok_and(|known| known == text)) {
        return Ok(());
    }
    match free.file_name().and_then(|name| name.to_str()) {
        Some(name) => write_named(folder, name, &text),
        None => Ok(()),
    }
}

fn kept(folder: &Path) -> impl Iterator<Item = PathBuf> {
    let files = fs::read_dir(folder).into_iter().flatten().flatten();
    let kept = |name: &str| name.starts_with(CONTRADICTED) && !name.ends_with(".unfinished");
    files.filter(move |file| kept(&file.file_name().to_string_lossy())).map(|file| file.path())
}

fn free_name(folder: &Path) -> PathBuf {
    let named = |n: u32| folder.join(format!("{CONTRADICTED}{n}"));
    named((1..).find(|n| !named(*n).exists()).unwrap_or(u32::MAX))
}

/// What the head tells, which one of these devices has signed.
pub(crate) fn read(folder: &Path, devices: &[VerifyingKey]) -> Told {
    read_file(&folder.join(HEAD), devices)
}

/// How far the chains of these devices had come by the heads that were kept.
pub(crate) fn contradicted(folder: &Path, devices: &[VerifyingKey]) -> Vec<(DeviceId, Position)> {
    kept(folder)
        .filter_map(|path| match read_file(&path, devices) {
            Told::Position(device, at) => Some((device, at)),
            Told::Nothing | Told::Unreadable => None,
        })
        .collect()
}

fn read_file(path: &Path, devices: &[VerifyingKey]) -> Told {
    match fs::read_to_string(path) {
        Ok(text) => parse(&text, devices).map_or(Told::Unreadable, |(device, at)| Told::Position(device, at)),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Told::Nothing,
        Err(_) => Told::Unreadable,
    }
}

/// A head, always of the same length.
pub(crate) fn text(at: &Position, seal: &Seal) -> String {
    format!("{TITLE}\n{:020}\n{}\n{}\n", at.n, hex::encode(at.link), hex::encode(seal))
}

pub(crate) fn parse(text: &str, devices: &[VerifyingKey]) -> Option<(DeviceId, Position)> {
    let lines: Vec<&str> = text.lines().collect();
    let [TITLE, n, link, seal] = lines.as_slice() else { return None };
    let (mut at, mut signature) = (Position { n: n.parse().ok()?, ..Position::START }, [0; 64]);
    hex::decode_to_slice(link, &mut at.link).ok()?;
    hex::decode_to_slice(seal, &mut signature).ok()?;
    devices.iter().find(|device| at.is_signed(device, &signature)).map(|device| (device_of(device), at))
}
