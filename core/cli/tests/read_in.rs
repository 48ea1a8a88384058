//! A record that was given out of hand, read in again by the program.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::string_slice, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::path::{Path, PathBuf};

use common::{ODD, Practised, output, program, text};
use secundine_session::api::Outgoing;

fn again(practised: &Practised, record: &Path, kind: &str, name: &str) -> (PathBuf, String, i32) {
    let file = practised.folder.path().join(name);
    let (said, code) = program(&["export", text(record), kind, text(&file)], "");
    (file, said, code)
}

fn printed(file: &Path) -> String {
    output("pdftotext", &["-layout", text(file), "-"])
}

/// The digits at the foot of a record.
fn version(page: &str) -> &str {
    let digits = |word: &&str| word.len() == 16 && word.bytes().all(|byte| byte.is_ascii_hexdigit());
    page.split_whitespace().find(digits).unwrap()
}

#[test]
fn a_bundle_and_an_archive_give_the_same_record_and_table_again() {
    let mut practised = Practised::busy();
    let [paper, table] = [Outgoing::Record, Outgoing::Csv].map(|file| practised.write(file));
    let [bundle, archive] = [Outgoing::Fhir { photos: false }, Outgoing::Entries].map(|file| practised.write(file));
    let written = printed(&paper);
    for (record, said, marked) in [
        (&bundle, "14 entries read. The bundle has no signatures", "Heron House, read from a file without signatures, Ida"),
        (&archive, "14 entries of 1 birth checked: each is signed", "read from an archive, Ida"),
    ] {
        let ending = record.extension().unwrap().to_string_lossy().into_owned();
        let (file, told, code) = again(&practised, record, "csv", &format!("{ending}.csv"));
        assert!(told.starts_with(said) && told.ends_with(&format!("{}\n", file.display())) && code == 0, "{told}");
        assert_eq!(fs::read(&file).unwrap(), fs::read(&table).unwrap());
        let (file, told, code) = again(&practised, record, "record", &format!("{ending}.pdf"));
        assert_eq!(code, 0, "{told}");
        let page = printed(&file);
        assert!(page.contains(marked), "{page}");
        assert_eq!(version(&page), version(&written), "the same entries");
        assert!(page.contains(ODD[0]));
    }
    // A bundle out of an archive has the same entries; an archive out of a bundle would have no signatures.
    let (file, _, code) = again(&practised, &archive, "fhir", "again.json");
    assert_eq!(code, 0);
    let (table_again, _, code) = again(&practised, &file, "csv", "again.csv");
    assert_eq!((code, fs::read(&table_again).unwrap()), (0, fs::read(&table).unwrap()));
    let (file, told, code) = again(&practised, &bundle, "entries", "again.jsonl");
    assert!(told.starts_with("An archive is written where the entries were signed.") && code == 2 && !file.exists(), "{told}");
}

#[test]
fn what_is_no_record_is_told_by_what_it_is_and_leaves_nothing() {
    let mut practised = Practised::busy();
    let bundle = fs::read_to_string(practised.write(Outgoing::Fhir { photos: false })).unwrap();
    let archive = fs::read_to_string(practised.write(Outgoing::Entries)).unwrap();
    let foreign = r#"{"resourceType":"Bundle","type":"document","entry":[]}"#;
    let cases: [(&str, &str); 6] = [
        (&bundle[..bundle.len() / 2], "This file is no record of Secundine: it is cut off or no JSON (line 1, column "),
        ("{}", "This file is neither a bundle of FHIR nor an archive of Secundine."),
        (foreign, "No entries of Secundine are in this bundle"),
        (&bundle.replacen("\"role\":\"source\"", "\"role\":\"quotation\"", 1), "The entries of this bundle are not those"),
        (&archive.replacen("all calm", "all loud", 1), "This is no archive, or it is not whole or was altered."),
        (&archive.replacen("\"form\":1", "\"form\":9", 1), "A later version of Secundine wrote this file."),
    ];
    let other = practised.folder.path().join("other");
    for (record, wanted) in cases {
        fs::write(&other, record).unwrap();
        let (file, said, code) = again(&practised, &other, "record", "never.pdf");
        assert!(said.starts_with(wanted) && code == 2 && !file.exists(), "{wanted}: {said}");
    }
    let (_, said, code) = again(&practised, Path::new("/nowhere"), "record", "never.pdf");
    assert!(!said.is_empty() && code == 2, "{said}");
}
