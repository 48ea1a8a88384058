//! The program on a practice's folder: checked, backed up, restored, built anew.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;

use common::{PASSPHRASE, Practised, program, text};
use secundine_store::{DATABASE, HEAD};

#[test]
fn it_says_what_it_found_and_ends_with_it() {
    let mut practised = Practised::new();
    let data = practised.data();
    let verify = |secret: &str| program(&["verify", text(&data)], secret);
    let in_use = verify(PASSPHRASE);
    assert_eq!(in_use, ("The practice is open in another window. Close that one first.\n".to_owned(), 2));
    practised.lock();
    let fits = "5 entries of 1 device checked: each fits.\nThe end was held against the head, which tells of entry 5.\n";
    for secret in [format!("{PASSPHRASE}\n"), PASSPHRASE.to_owned(), format!("{}\r\n", practised.recovery)] {
        assert_eq!(verify(&secret), (fits.to_owned(), 0));
    }
    let (said, code) = verify("seven quiet heron\n");
    assert!(said.starts_with("This passphrase does not open the practice."), "{said}");
    assert_eq!(code, 2);
    let (said, code) = program(&["verify", text(practised.folder.path())], PASSPHRASE);
    assert_eq!((said.as_str(), code), ("There is no practice on this device yet.\n", 2));

    fs::remove_file(practised.file(HEAD)).unwrap();
    practised.tamper("UPDATE entry SET signature = zeroblob(64) WHERE n = 3");
    let (said, code) = verify(PASSPHRASE);
    let lines: Vec<&str> = said.lines().collect();
    assert!(lines.first().unwrap().starts_with("Entry 3 of device ") && lines.len() == 2, "{said}");
    assert!(said.contains("is not signed by this device.\nThere is no head to compare the end with"), "{said}");
    assert_eq!(code, 1);
}

#[test]
fn it_says_how_it_is_used() {
    let wrong =
        [[].as_slice(), &["verify"], &["check", "x"], &["verify", "x", "y"], &["verify", "x", "--hash"], &["verify", "--loud"]];
    for args in wrong {
        let (said, code) = program(args, "");
        assert!(said.starts_with("Usage, with the passphrase on standard input:") && code == 2, "{args:?} {said}");
    }
    let (said, code) = program(&["--help"], "");
    assert!(said.starts_with("Usage, with the passphrase on standard input:") && code == 0, "{said}");
}

#[test]
fn it_backs_up_and_restores_without_a_window() {
    let mut at = Practised::new();
    at.lock();
    let (file, data, empty) = (at.folder.path().join("b.tar"), at.data(), at.folder.path().join("empty"));
    let run = |args: &[&str], secret: &str| program(args, &format!("{secret}\n"));
    let (file, data, empty) = (text(&file), text(&data), text(&empty));
    let said = run(&["backup", data, file], PASSPHRASE);
    assert_eq!(said, ("Backup made and read back: 5 entries of 1 birth.\n".to_owned(), 0));
    let (said, code) = run(&["backup", data, file], PASSPHRASE);
    assert_eq!((said.as_str(), code), ("A file of this name is there already. Choose another name.\n", 2));

    let (said, code) = run(&["restore", file, empty], "seven quiet heron");
    assert!(said.starts_with("This passphrase does not open the backup.") && code == 2, "{said}");
    assert!(!fs::exists(empty).unwrap());
    let (said, code) = run(&["restore", file, empty], &at.recovery);
    assert_eq!((said.as_str(), code), ("Restored: 5 entries new here, 0 known already.\n", 0));
    let (said, code) = run(&["restore", file, empty], PASSPHRASE);
    assert_eq!((said.as_str(), code), ("Restored: 0 entries new here, 5 known already.\n", 0));
    let (said, code) = run(&["verify", empty], PASSPHRASE);
    assert!(said.starts_with("5 entries of 1 device checked: each fits.\nThere is no head") && code == 0, "{said}");

    fs::write(file, "no backup").unwrap();
    let (said, code) = run(&["restore", file, "further"], PASSPHRASE);
    assert!(said.starts_with("This file is no backup of Secundine.") && code == 2, "{said}");
}

#[test]
fn it_builds_a_damaged_practice_anew() {
    let mut practised = Practised::new();
    (0..30).for_each(|_| practised.note(&"all calm ".repeat(20)));
    practised.lock();
    let mut bytes = fs::read(practised.file(DATABASE)).unwrap();
    bytes.iter_mut().take(4096).for_each(|byte| *byte = 0);
    fs::write(practised.file(DATABASE), bytes).unwrap();
    let data = practised.data();
    let run = |secret: &str| program(&["salvage", text(&data)], secret);
    assert_eq!(run("seven loud herons").1, 2);
    let (said, code) = run(&practised.recovery);
    assert_eq!(code, 0, "{said}");
    assert!(said.contains("No entry is known to be missing.") && said.contains("damaged-1"), "{said}");
    assert_eq!(run(&practised.recovery).1, 2, "it is not damaged any more");
}
