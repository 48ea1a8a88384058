//! Pictures and sounds that entries name: each an age file in the folder `files`, named by the SHA-256 of its sealed bytes.
//!
//! They are sealed as a backup's entries are, to a passphrase that is the data key's 64 digits: so a file lies in a backup
//! as it lies here, opens on every device of the practice and, with age alone, by hand. The inbox's recipient would not do,
//! since its identity belongs to one device's database and is not carried by a backup.

mod sealed;

use std::cell::RefCell;
use std::fs;
use std::io::{self, Read};
use std::path::{Path, PathBuf};

use age::secrecy::ExposeSecret;
use age::{DecryptError, Decryptor};
use age_core::format::{FileKey, Stanza};
use secundine_domain::file::FileId;
use sha2::{Digest, Sha256};
use zeroize::Zeroizing;

use crate::keys::{sync_folder, unfinished, write_named};
use crate::{Store, StoreError};

/// Name of their folder in the practice's.
pub const FILES: &str = "files";

/// Most bytes of a file before it is sealed. Our own choice: a photograph of a phone has 3 to 12 MB.
pub const FILE_MAX: usize = 32 << 20;

/// Most bytes of a sealed file: age adds a header of some hundred, and 16 for every 64 KiB.
pub(crate) const SEALED_MAX: u64 = FILE_MAX as u64 + (64 << 10);

const UNFIT: &str = "it does not fit its name";

impl Store {
    /// Seals these bytes and puts them on disk. When this returns, the file survives a kill and a loss of power. Nothing
    /// of it was on disk in plain.
    ///
    /// # Errors
    /// [`StoreError::TooLarge`] above [`FILE_MAX`]; [`StoreError::Full`] or [`StoreError::NotSaved`]: it is NOT on disk.
    pub fn keep_file(&self, bytes: &[u8]) -> Result<FileId, StoreError> {
        self.writable()?;
        if bytes.len() > FILE_MAX {
            return Err(StoreError::TooLarge);
        }
        sealed::seal(&made(&self.folder)?, self.data.whole_file_recipient(), bytes)
    }

    /// The bytes of a file as they were before they were sealed.
    ///
    /// # Errors
    /// [`StoreError::NoFile`] where it is not here, [`StoreError::DamagedFile`] where it is not as it was written,
    /// [`StoreError::NotRead`] where the system could not read it.
    pub fn open_file(&self, id: FileId) -> Result<Zeroizing<Vec<u8>>, StoreError> {
        let path = path(&self.folder, id);
        // Its own key where it was sealed on another device, else the data key.
        let own = self.noted(FILE_KEY, &id.0)?.and_then(|key| <[u8; FILE_KEY_BYTES]>::try_from(key.as_slice()).ok());
        match own {
            Some(key) => sealed::open(&path, id, &ByFileKey(Zeroizing::new(key))),
            None => sealed::open(&path, id, self.data.whole_file_identity()),
        }
    }

    /// The sealed bytes of a file, as they are on disk and as they travel.
    ///
    /// # Errors
    /// As for [`Store::open_file`].
    pub fn sealed_file(&self, id: FileId) -> Result<Vec<u8>, StoreError> {
        fits(&self.folder, id)
    }

    /// Whether a file is here, by its name alone.
    #[must_use]
    pub fn has_file(&self, id: FileId) -> bool {
        path(&self.folder, id).exists()
    }

    /// The key that opens this file and no other, for another device of the practice.
    ///
    /// # Errors
    /// As for [`Store::open_file`].
    pub fn file_key(&self, id: FileId) -> Result<Zeroizing<[u8; FILE_KEY_BYTES]>, StoreError> {
        if let Some(key) = self.noted(FILE_KEY, &id.0)? {
            let key = <[u8; FILE_KEY_BYTES]>::try_from(key.as_slice());
            return key.map(Zeroizing::new).map_err(|_| StoreError::Damaged("the key of a file".to_owned()));
        }
        let sealed = found(&path(&self.folder, id))?;
        let (identity, seen) = (self.data.whole_file_identity(), RefCell::new(None));
        let looking = Looking { identity, seen: &seen };
        let opened = Decryptor::new(sealed).and_then(|it| it.decrypt(std::iter::once(&looking as &dyn age::Identity)));
        opened.map_err(|error| StoreError::DamagedFile(why(&error)))?;
        seen.take().ok_or_else(|| StoreError::DamagedFile("it has no key".to_owned()))
    }

    /// Puts a file that was sealed on another device on disk.
    ///
    /// # Errors
    /// [`StoreError::DamagedFile`] where the bytes do not have this name; [`StoreError::Full`], [`StoreError::NotSaved`].
    pub fn put_sealed_file(&self, id: FileId, sealed: &[u8]) -> Result<(), StoreError> {
        self.writable()?;
        match name(sealed) == id {
            true => put(&self.folder, sealed).map(|_| ()),
            false => Err(StoreError::DamagedFile(UNFIT.to_owned())),
        }
    }
}

/// The kind of note that holds the keys of files which were sealed on other devices, by their names.
pub const FILE_KEY: &str = "file-key";

/// Bytes of the key that an age file is sealed with.
pub const FILE_KEY_BYTES: usize = 16;

/// Opens an age file by the key of the file itself; what its header says of recipients does not matter.
struct ByFileKey(Zeroizing<[u8; FILE_KEY_BYTES]>);

impl age::Identity for ByFileKey {
    fn unwrap_stanza(&self, _: &Stanza) -> Option<Result<FileKey, DecryptError>> {
        Some(Ok(FileKey::new(Box::new(*self.0))))
    }
}

/// Opens an age file and keeps the key of the file.
struct Looking<'a> {
    identity: &'a age::scrypt::Identity,
    seen: &'a RefCell<Option<Zeroizing<[u8; FILE_KEY_BYTES]>>>,
}

impl age::Identity for Looking<'_> {
    fn unwrap_stanza(&self, stanza: &Stanza) -> Option<Result<FileKey, DecryptError>> {
        let unwrapped = self.identity.unwrap_stanza(stanza);
        if let Some(Ok(key)) = &unwrapped {
            self.seen.replace(Some(Zeroizing::new(*key.expose_secret())));
        }
        unwrapped
    }
}

/// The crate's own text for a work factor may overflow: see the key files.
fn why(error: &DecryptError) -> String {
    match error {
        DecryptError::ExcessiveWork { required, .. } => format!("asks for a work factor of {required}"),
        other => other.to_string(),
    }
}

/// The folder of the files in this one of the practice, which is made where it is not there yet.
fn made(folder: &Path) -> Result<PathBuf, StoreError> {
    let files = folder.join(FILES);
    if !files.exists() {
        fs::create_dir(&files).and_then(|()| sync_folder(folder)).map_err(writing)?;
    }
    Ok(files)
}

/// Puts sealed bytes on disk under the name that they have.
pub(crate) fn put(folder: &Path, sealed: &[u8]) -> Result<FileId, StoreError> {
    let (id, files) = (name(sealed), made(folder)?);
    let written = write_named(&files, &id.to_string(), sealed);
    if written.is_err() {
        let _ = fs::remove_file(unfinished(&files, &id.to_string()));
    }
    written.map(|()| id).map_err(writing)
}

/// The sealed bytes of a file that is as it was written.
///
/// # Errors
/// As for [`Store::open_file`].
pub(crate) fn fits(folder: &Path, id: FileId) -> Result<Vec<u8>, StoreError> {
    let sealed = read(folder, id)?;
    match name(&sealed) == id {
        true => Ok(sealed),
        false => Err(StoreError::DamagedFile(UNFIT.to_owned())),
    }
}

/// The bytes of a file, whatever they are.
fn read(folder: &Path, id: FileId) -> Result<Vec<u8>, StoreError> {
    let file = found(&path(folder, id))?;
    let mut sealed = Vec::new();
    file.take(SEALED_MAX + 1).read_to_end(&mut sealed).map_err(|error| StoreError::reading_file(&error))?;
    Ok(sealed)
}

/// A file that is open for reading.
fn found(path: &Path) -> Result<fs::File, StoreError> {
    fs::File::open(path).map_err(|error| match error.kind() {
        io::ErrorKind::NotFound => StoreError::NoFile,
        _ => StoreError::reading_file(&error),
    })
}

/// Removes a file; one that is not here is no error.
pub(crate) fn remove(folder: &Path, id: FileId) -> io::Result<()> {
    match fs::remove_file(path(folder, id)) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error),
        _ => Ok(()),
    }
}

/// Every file that is here, in the order of the names.
pub(crate) fn all(folder: &Path) -> io::Result<Vec<FileId>> {
    let mut found = Vec::new();
    match fs::read_dir(folder.join(FILES)) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(found),
        listed => {
            for file in listed? {
                found.extend(file?.file_name().to_str().and_then(|name| name.parse::<FileId>().ok()));
            }
        }
    }
    found.sort_unstable();
    Ok(found)
}

/// The name that these sealed bytes have.
pub(crate) fn name(sealed: &[u8]) -> FileId {
    FileId(Sha256::digest(sealed).into())
}

fn path(folder: &Path, id: FileId) -> PathBuf {
    folder.join(FILES).join(id.to_string())
}

fn writing(error: io::Error) -> StoreError {
    StoreError::writing_file(&error)
}
