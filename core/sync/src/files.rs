//! Pictures and sounds of others: fetched when somebody wants to see or hear one, on from where it broke off.

use std::fs::{self, File, OpenOptions};
use std::io::Write;

use secundine_domain::file::FileId;
use secundine_store::{FILES, Store, StoreError};

use crate::access::{Access, with};
use crate::bucket::Bucket;
use crate::names::Names;
use crate::{SyncError, member, notes};

/// Bytes that are fetched at a time.
const CHUNK: u64 = 1 << 20;
/// More than any sealed file has, bytes.
const MOST: u64 = 64 << 20;

/// Files of this phone that are not in the bucket yet.
///
/// # Errors
/// [`SyncError::Store`]
pub fn waiting_files(store: &Store) -> Result<Vec<FileId>, SyncError> {
    notes::files_up(store)
}

/// Fetches a file and puts it beside those that are here. `progress` is told the bytes so far, and answers whether to go on;
/// what came by then is kept, and gone on from.
///
/// # Errors
/// [`SyncError::Bucket`] with `Absent` where nobody has given it yet; [`SyncError::Store`] where the bytes do not fit their
/// name (they are thrown away) or there is no room; [`SyncError::Paused`].
pub fn fetch_file(
    access: &dyn Access,
    bucket: &dyn Bucket,
    file: FileId,
    progress: &mut dyn FnMut(u64) -> bool,
) -> Result<(), SyncError> {
    let (here, me, folder) =
        with(access, |store| Ok((store.has_file(file), member::current(store)?, store.folder().join(FILES))))?;
    if here {
        return Ok(());
    }
    let me = me.ok_or(SyncError::NotShared)?;
    let name = Names::new(&me.charter.practice()).file(file);
    let writing = |error: std::io::Error| match error.kind() {
        std::io::ErrorKind::StorageFull => StoreError::Full,
        _ => StoreError::NotSaved(error.to_string()),
    };
    fs::create_dir_all(&folder).map_err(writing)?;
    let path = folder.join(format!("{file}.coming"));
    let mut have = fs::metadata(&path).map_or(0, |file| file.len());
    let mut part = OpenOptions::new().create(true).append(true).open(&path).map_err(writing)?;
    loop {
        let bytes = bucket.get_range(&name, have..have + CHUNK)?;
        part.write_all(&bytes).map_err(writing)?;
        have += bytes.len() as u64;
        if (bytes.len() as u64) < CHUNK || have > MOST {
            break;
        }
        if !progress(have) {
            return Err(SyncError::Paused);
        }
    }
    drop(part);
    let sealed = read(&path).map_err(writing)?;
    let put = with(access, |store| Ok(store.put_sealed_file(file, &sealed)?));
    let _ = fs::remove_file(&path);
    progress(have);
    put
}

fn read(path: &std::path::Path) -> std::io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    std::io::Read::read_to_end(&mut File::open(path)?, &mut bytes)?;
    Ok(bytes)
}
