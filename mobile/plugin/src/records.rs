//! What may be given to another program: the files that were written to be given, and nothing else of this program's.

use std::path::{Path, PathBuf};

use crate::Failure;

/// The folder of the files that leave the phone. The shell manages one as a state.
pub struct Records(pub PathBuf);

impl Records {
    /// The file itself, whatever the way to it is called.
    ///
    /// # Errors
    /// Where it is no file of that folder.
    pub fn file(&self, path: &Path) -> Result<PathBuf, Failure> {
        let (folder, file) = (self.0.canonicalize().map_err(Failure::failed)?, path.canonicalize().map_err(Failure::failed)?);
        match file.starts_with(&folder) && file.is_file() {
            true => Ok(file),
            false => Err(Failure::failed("not a file that was written to be given")),
        }
    }
}
