//! A file sealed onto the disk and opened from it, by the block: neither the sealed bytes nor a second copy of the plain ones
//! is ever whole in memory, and naming and writing take their turn while the next block is sealed.

use std::fs::{self, File};
use std::io::{self, BufReader, Read, Seek, SeekFrom, Write};
use std::mem;
use std::path::Path;
use std::sync::Arc;
use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use std::thread::{Builder, ScopedJoinHandle, scope};

use age::stream::StreamReader;
use age::{DecryptError, Decryptor, Encryptor};
use secundine_domain::file::FileId;
use sha2::{Digest, Sha256};
use zeroize::Zeroizing;

use super::{SEALED_MAX, UNFIT, found, why, writing};
use crate::StoreError;
use crate::keys::{sync_folder, unfinished};

/// Sealed bytes that travel together. With smaller ones the handing over costs more than it saves.
const BLOCK: usize = 1 << 20;

/// Plain bytes that age seals at once, each such chunk by itself: <https://c2sp.org/age>, "Payload".
const CHUNK: usize = 64 << 10;

/// More than the crate writes at once, so that a block never grows while it is filled.
const OVER: usize = 2 * CHUNK;

/// Bytes after which what was written goes to the disk while more is sealed. Most photographs are below it.
const ALONG: usize = 8 << 20;

/// What a file is called until its bytes have all been sealed and so have a name. A store has one writer; what a kill leaves
/// here the next file is written over.
const NAMELESS: &str = "nameless";

/// Seals these bytes to `recipient` and puts them on disk in `folder`, under the name that they then have.
pub(super) fn seal(folder: &Path, recipient: &dyn age::Recipient, bytes: &[u8]) -> Result<FileId, StoreError> {
    let passing = unfinished(folder, NAMELESS);
    let sealed = seal_to(&passing, recipient, bytes).and_then(|id| {
        fs::rename(&passing, folder.join(id.to_string()))?;
        sync_folder(folder).map(|()| id)
    });
    if sealed.is_err() {
        let _ = fs::remove_file(&passing);
    }
    sealed.map_err(writing)
}

fn seal_to(path: &Path, recipient: &dyn age::Recipient, bytes: &[u8]) -> io::Result<FileId> {
    let encryptor = Encryptor::with_recipients(std::iter::once(recipient)).map_err(io::Error::other)?;
    scope(|threads| {
        let ((to_name, named), (to_disk, written)) = (sync_channel(2), sync_channel(2));
        let named = Builder::new().spawn_scoped(threads, move || name(&named))?;
        let written = Builder::new().spawn_scoped(threads, move || write(path, &written))?;
        let sealed = Blocks::new([to_name, to_disk]).sealed_by(encryptor, bytes);
        // What kept the file from being written comes first: to the sealing it is only somebody who left.
        joined(written)??;
        sealed?;
        joined(named)
    })
}

fn joined<T>(thread: ScopedJoinHandle<'_, T>) -> io::Result<T> {
    thread.join().map_err(|_| io::Error::other("a thread ended before its work was done"))
}

type Block = Arc<Vec<u8>>;

/// Gathers what is sealed and gives each block to all who take it.
struct Blocks {
    gathered: Vec<u8>,
    takers: [SyncSender<Block>; 2],
}

impl Blocks {
    fn new(takers: [SyncSender<Block>; 2]) -> Self {
        Self { gathered: Vec::with_capacity(BLOCK + OVER), takers }
    }

    /// Seals all of it; with the last block the takers see that there is no more.
    fn sealed_by(self, encryptor: Encryptor, bytes: &[u8]) -> io::Result<()> {
        let mut out = encryptor.wrap_output(self)?;
        out.write_all(bytes)?;
        out.finish()?.flush()
    }
}

impl Write for Blocks {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.gathered.extend_from_slice(bytes);
        if self.gathered.len() >= BLOCK {
            self.flush()?;
        }
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        let block = Arc::new(mem::replace(&mut self.gathered, Vec::with_capacity(BLOCK + OVER)));
        self.takers.iter().try_for_each(|taker| taker.send(Arc::clone(&block))).map_err(|_| io::ErrorKind::BrokenPipe.into())
    }
}

fn name(blocks: &Receiver<Block>) -> FileId {
    let mut hash = Sha256::new();
    blocks.iter().for_each(|block| hash.update(&*block));
    FileId(hash.finalize().into())
}

fn write(path: &Path, blocks: &Receiver<Block>) -> io::Result<()> {
    let (mut file, mut along) = (File::create(path)?, 0);
    for block in blocks {
        file.write_all(&block)?;
        along += block.len();
        if along >= ALONG {
            file.sync_data()?;
            along = 0;
        }
    }
    file.sync_all()
}

/// The plain bytes of the file at `path`, which has to have this name.
///
/// # Errors
/// As for [`crate::Store::open_file`].
pub(super) fn open(path: &Path, id: FileId, identity: &(dyn age::Identity + Sync)) -> Result<Zeroizing<Vec<u8>>, StoreError> {
    if found(path)?.metadata().map_err(misread)?.len() > SEALED_MAX {
        return Err(StoreError::DamagedFile(UNFIT.to_owned()));
    }
    let (named, opened) = scope(|threads| {
        let named = Builder::new().spawn_scoped(threads, || name_of(path)).map_err(misread)?;
        let opened = opened(path, identity);
        Ok::<_, StoreError>((joined(named).map_err(misread)??, opened))
    })?;
    match named == id {
        true => opened,
        false => Err(StoreError::DamagedFile(UNFIT.to_owned())),
    }
}

/// Each reads for itself: what one has read, the others have from the system's memory.
fn reader(path: &Path) -> Result<BufReader<File>, StoreError> {
    Ok(BufReader::with_capacity(OVER, found(path)?))
}

fn name_of(path: &Path) -> Result<FileId, StoreError> {
    let mut hash = Sha256::new();
    io::copy(&mut reader(path)?, &mut hash).map_err(misread)?;
    Ok(FileId(hash.finalize().into()))
}

/// One thread opens the first half, another one the second.
fn opened(path: &Path, identity: &(dyn age::Identity + Sync)) -> Result<Zeroizing<Vec<u8>>, StoreError> {
    // The crate holds the last chunk against its key before it tells the length.
    let mut opened = decrypted(path, identity)?;
    let length = opened.seek(SeekFrom::End(0)).map_err(misread)?;
    let mut plain = Zeroizing::new(vec![0; usize::try_from(length).unwrap_or_default()]);
    let half = plain.len() / 2 / CHUNK * CHUNK;
    let (first, second) = plain.split_at_mut(half);
    scope(|threads| {
        let open_second = move || open_part(decrypted(path, identity)?, half as u64, second);
        let second = Builder::new().spawn_scoped(threads, open_second).map_err(misread)?;
        let first = open_part(opened, 0, first);
        joined(second).map_err(misread)?.and(first)
    })?;
    Ok(plain)
}

fn open_part(mut opened: Opened, from: u64, plain: &mut [u8]) -> Result<(), StoreError> {
    opened.seek(SeekFrom::Start(from)).and_then(|_| opened.read_exact(plain)).map_err(misread)
}

type Opened = StreamReader<BufReader<File>>;

fn decrypted(path: &Path, identity: &dyn age::Identity) -> Result<Opened, StoreError> {
    let opened = Decryptor::new_buffered(reader(path)?).and_then(|it| it.decrypt(std::iter::once(identity)));
    opened.map_err(|error| match error {
        DecryptError::Io(error) => misread(error),
        other => StoreError::DamagedFile(why(&other)),
    })
}

/// Whether the system could not read it, or what it read is not a sealed file.
fn misread(error: io::Error) -> StoreError {
    match error.raw_os_error() {
        Some(_) => StoreError::reading_file(&error),
        None => StoreError::DamagedFile(error.to_string()),
    }
}
