//! A folder: of a stick, of a share, or of the disk.

use std::fs::{self, Metadata};
use std::path::{Path as FilePath, PathBuf};

use futures_util::TryStreamExt;
use object_store::local::LocalFileSystem;
use object_store::path::Path;
use object_store::{Error, ObjectStore, ObjectStoreExt, PutMode, PutOptions};

use super::store::{Kind, Shelf, folder_of};
use super::why::why;
use super::{BucketError, Listed};

/// Each write is on the disk, with the name that leads to it, before it is answered.
pub(super) struct Folder {
    store: LocalFileSystem,
    path: PathBuf,
    /// The disk that it lay on when it was opened.
    disk: u64,
}

impl Folder {
    /// # Errors
    /// [`BucketError::NoBucket`] where there is no such folder.
    pub(super) fn open(path: &FilePath) -> Result<Shelf<Self>, BucketError> {
        let known = fs::metadata(path).ok().filter(Metadata::is_dir).ok_or(BucketError::NoBucket)?;
        let store = LocalFileSystem::new_with_prefix(path).map_err(|error| why(&error))?.with_fsync(true);
        Ok(Shelf(Self { store, path: path.to_owned(), disk: disk(&known) }))
    }
}

impl Kind for Folder {
    const AHEAD: usize = 1;

    fn store(&self) -> &dyn ObjectStore {
        &self.store
    }

    async fn list(&self, prefix: &str, _: Option<&str>) -> Result<Vec<Listed>, BucketError> {
        let files = self.store.list(folder_of(prefix).as_ref());
        let listed = files.map_ok(|file| Listed { name: file.location.into(), bytes: file.size });
        listed.try_collect().await.map_err(|error| why(&error))
    }

    /// Where a stick was pulled out, its folder may still be there, empty and of another disk: what is put there would be on no
    /// stick.
    fn ready(&self) -> Result<(), BucketError> {
        match fs::metadata(&self.path) {
            Ok(now) if now.is_dir() && disk(&now) == self.disk => Ok(()),
            _ => Err(BucketError::NoBucket),
        }
    }

    fn size(&self, name: &str) -> Option<u64> {
        fs::metadata(self.path.join(name)).ok().filter(Metadata::is_file).map(|file| file.len())
    }

    /// What most sticks are written in (FAT) has no links, which this is done with.
    async fn put_new(&self, path: &Path, bytes: &[u8]) -> Result<bool, BucketError> {
        match self.store.put_opts(path, bytes.to_vec().into(), PutOptions::from(PutMode::Create)).await {
            Ok(_) => Ok(true),
            Err(Error::AlreadyExists { .. }) => Ok(false),
            Err(_) if self.store.head(path).await.is_ok() => Ok(false),
            Err(_) => self.put(path, bytes).await.map(|()| true),
        }
    }
}

#[cfg(unix)]
fn disk(folder: &Metadata) -> u64 {
    std::os::unix::fs::MetadataExt::dev(folder)
}

#[cfg(not(unix))]
fn disk(_: &Metadata) -> u64 {
    0
}
