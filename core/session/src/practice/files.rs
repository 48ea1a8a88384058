//! The sealed files of an open practice.

use secundine_domain::entry::BirthId;
use secundine_domain::file::FileId;
use secundine_store::StoreError;
use zeroize::Zeroizing;

use super::OpenPractice;

impl OpenPractice {
    /// Seals a file and keeps it.
    pub(crate) fn keep_file(&self, bytes: &[u8]) -> Result<FileId, StoreError> {
        self.store.keep_file(bytes)
    }

    /// A file that a fact names.
    pub(crate) fn open_file(&self, file: FileId) -> Result<Zeroizing<Vec<u8>>, StoreError> {
        self.store.open_file(file)
    }

    /// The births that had a voice note, in no order.
    pub(crate) fn births_with_voices(&self) -> Result<Vec<BirthId>, StoreError> {
        self.store.births_with("voice_noted")
    }
}
