//! Only what was written to be given leaves.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::fs;

use secundine_phone::Records;

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
