//! Pictures and sounds that entries name: each an age file in the folder `files`, named by the SHA-256 of its sealed bytes.
//!
//! They are sealed as a backup's entries are, to a passphrase that is the data key's 64 digits: so a file lies in a backup
//! as it lies here, opens on every device of the practice and, with age alone, by hand. The inbox's recipient would not do,
//! since its identity belongs to one device's database and is not carried by a backup.

use std::cell::RefCell;
use std::fs;
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};
use std::thread;

use age::secrecy::ExposeSecret;
use age::{DecryptError, Decryptor, Encryptor};
use age_core::format::{FileKey, Stanza};
use secundine_domain::file::FileId;
use sha2::{Digest, Sha256};
use zeroize::Zeroizing;

use crate::keys::{DataKey, sync_folder, unfinished, write_named};
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
        let sealed = seal(&self.data, bytes).map_err(|error| StoreError::NotSaved(error.to_string()))?;
        put(&self.folder, &sealed)
    }

    /// The bytes of a file as they were before they were sealed.
    ///
    /// # Errors
    /// [`StoreError::NoFile`] where it is not here, [`StoreError::DamagedFile`] where it is not as it was written,
    /// [`StoreError::NotRead`] where the system could not read it.
    pub fn open_file(&self, id: FileId) -> Result<Zeroizing<Vec<u8>>, StoreError> {
        let sealed = read(&self.folder, id)?;
        let identity = self.file_identity(id)?;
        // Its name is worked out meanwhile: that takes about as long.
        let (named, opened) = thread::scope(|scope| {
            let named = scope.spawn(|| name(&sealed) == id);
            let opened = open(&sealed, &*identity);
            (named.join(), opened)
        });
        match named {
            Ok(true) => opened.map_err(StoreError::DamagedFile),
            _ => Err(StoreError::DamagedFile(UNFIT.to_owned())),
        }
    }

    /// What opens a file: its own key where it was sealed on another device, else the data key.
    fn file_identity(&self, id: FileId) -> Result<Box<dyn age::Identity>, StoreError> {
        let own = self.noted(FILE_KEY, &id.0)?.and_then(|key| <[u8; FILE_KEY_BYTES]>::try_from(key.as_slice()).ok());
        Ok(match own {
            Some(key) => Box::new(ByFileKey(Zeroizing::new(key))),
            None => Box::new(self.data.whole_file_identity()),
        })
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
        let sealed = fs::File::open(path(&self.folder, id)).map_err(|error| match error.kind() {
            io::ErrorKind::NotFound => StoreError::NoFile,
            _ => StoreError::reading_file(&error),
        })?;
        let (identity, seen) = (self.data.whole_file_identity(), RefCell::new(None));
        let looking = Looking { identity: &identity, seen: &seen };
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

fn seal(key: &DataKey, bytes: &[u8]) -> io::Result<Vec<u8>> {
    let recipient = key.whole_file_recipient();
    let encryptor = Encryptor::with_recipients(std::iter::once(&recipient as &dyn age::Recipient)).map_err(io::Error::other)?;
    let mut sealed = Vec::with_capacity(bytes.len() + (64 << 10));
    let mut out = encryptor.wrap_output(&mut sealed)?;
    out.write_all(bytes)?;
    out.finish()?;
    Ok(sealed)
}

/// Puts sealed bytes on disk under the name that they have.
pub(crate) fn put(folder: &Path, sealed: &[u8]) -> Result<FileId, StoreError> {
    let (id, files) = (name(sealed), folder.join(FILES));
    if !files.exists() {
        fs::create_dir(&files).and_then(|()| sync_folder(folder)).map_err(writing)?;
    }
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
    let file = fs::File::open(path(folder, id)).map_err(|error| match error.kind() {
        io::ErrorKind::NotFound => StoreError::NoFile,
        _ => StoreError::reading_file(&error),
    })?;
    let mut sealed = Vec::new();
    file.take(SEALED_MAX + 1).read_to_end(&mut sealed).map_err(|error| StoreError::reading_file(&error))?;
    Ok(sealed)
}

fn open(sealed: &[u8], identity: &dyn age::Identity) -> Result<Zeroizing<Vec<u8>>, String> {
    let mut plain = Zeroizing::new(Vec::with_capacity(sealed.len()));
    let opened = Decryptor::new(sealed).and_then(|it| it.decrypt(std::iter::once(identity)));
    opened.map_err(|error| why(&error))?.read_to_end(&mut plain).map_err(|error| error.to_string())?;
    Ok(plain)
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
