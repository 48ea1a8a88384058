//! Pictures and sounds that entries name: each an age file in the folder `files`, named by the SHA-256 of its sealed bytes.
//!
//! They are sealed as a backup's entries are, to a passphrase that is the data key's 64 digits: so a file lies in a backup
//! as it lies here, opens on every device of the practice and, with age alone, by hand. The inbox's recipient would not do,
//! since its identity belongs to one device's database and is not carried by a backup.

use std::fs;
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

use age::{DecryptError, Decryptor, Encryptor};
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
        let sealed = fits(&self.folder, id)?;
        let mut plain = Zeroizing::new(Vec::with_capacity(sealed.len()));
        let identity = self.data.whole_file_identity();
        let opened =
            Decryptor::new(sealed.as_slice()).and_then(|it| it.decrypt(std::iter::once(&identity as &dyn age::Identity)));
        let read = opened.map_err(|error| match error {
            // See the key files: the crate's own text for it may overflow.
            DecryptError::ExcessiveWork { required, .. } => format!("asks for a work factor of {required}"),
            other => other.to_string(),
        });
        let read = read.and_then(|mut opened| opened.read_to_end(&mut plain).map_err(|error| error.to_string()));
        read.map_err(StoreError::DamagedFile)?;
        Ok(plain)
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
    let file = fs::File::open(path(folder, id)).map_err(|error| match error.kind() {
        io::ErrorKind::NotFound => StoreError::NoFile,
        _ => StoreError::reading_file(&error),
    })?;
    let mut sealed = Vec::new();
    file.take(SEALED_MAX + 1).read_to_end(&mut sealed).map_err(|error| StoreError::reading_file(&error))?;
    match name(&sealed) == id {
        true => Ok(sealed),
        false => Err(StoreError::DamagedFile("it does not fit its name".to_owned())),
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
