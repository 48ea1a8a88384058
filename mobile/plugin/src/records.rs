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

#[cfg(test)]
mod tests {
    use std::fs;

    use super::*;

    #[test]
    fn only_a_file_of_the_folder_is_given() {
        let folder = tempfile::tempdir().unwrap();
        let (records, keys) = (folder.path().join("records"), folder.path().join("key.age"));
        fs::create_dir(&records).unwrap();
        fs::write(&keys, "key").unwrap();
        let pdf = records.join("record.pdf");
        fs::write(&pdf, "%PDF").unwrap();
        let here = Records(records.clone());
        assert_eq!(here.file(&pdf), Ok(pdf.canonicalize().unwrap()));
        for other in [keys.clone(), records.join("../key.age"), records.clone(), records.join("none.pdf")] {
            assert!(here.file(&other).is_err(), "{other:?}");
        }
    }

    #[cfg(unix)]
    #[test]
    fn a_link_out_of_the_folder_is_not_followed() {
        let folder = tempfile::tempdir().unwrap();
        let records = folder.path().join("records");
        fs::create_dir(&records).unwrap();
        fs::write(folder.path().join("key.age"), "key").unwrap();
        std::os::unix::fs::symlink("../key.age", records.join("record.pdf")).unwrap();
        assert!(Records(records.clone()).file(&records.join("record.pdf")).is_err());
    }
}
