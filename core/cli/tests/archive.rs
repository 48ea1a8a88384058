//! Extracts and archives: checked by the program, held against a paper, and read by a program that knows only the document.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::string_slice, reason = "a test may stop at the first surprise")]

mod common;

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;
use std::process::Command;

use age::secrecy::SecretString;
use common::{PASSPHRASE, Practised, here, output, program, python, text};
use secundine_session::api::Outgoing;
use secundine_store::{RECOVERY_KEY, Store};

/// What the script of the document says, and whether all fits.
fn script(args: &[&str]) -> (String, bool) {
    let done = Command::new(python()).arg(here("tests/archive/check.py")).args(args).output().unwrap();
    let said = [done.stdout, done.stderr].concat();
    (String::from_utf8(said).unwrap(), done.status.success())
}

/// The digits at the foot of a record.
fn printed(record: &Path) -> String {
    let page = output("pdftotext", &["-layout", text(record), "-"]);
    let digits = |word: &&str| word.len() == 16 && word.bytes().all(|byte| byte.is_ascii_hexdigit());
    page.split_whitespace().find(digits).unwrap().to_owned()
}

#[test]
fn an_extract_is_what_the_paper_shows_or_the_beginning_of_it_or_something_else() {
    let mut practised = Practised::busy();
    let early = printed(&practised.write(Outgoing::Record));
    practised.clock.advance(60_000);
    practised.note("later");
    let late = printed(&practised.write(Outgoing::Record));
    let file = practised.write(Outgoing::Entries);
    let other = {
        let mut other = Practised::new();
        printed(&other.write(Outgoing::Record))
    };
    let file = text(&file);
    let verify = |digits: &str| program(&["verify", file, "--hash", digits], "");
    let id = practised.birth.0;
    let fits = "15 entries of 1 birth checked: each is signed by its device (1).\nIt holds one birth. That no entry of this \
                birth is left out shows only against the digits of a printed record.\n";
    assert_eq!(program(&["verify", file], ""), (fits.to_owned(), 0));
    let said = |paper: String| format!("{fits}{paper}\n");
    assert_eq!(verify(&late), (said(format!("The paper shows these entries: all 15 of birth {id}.")), 0));
    let some = format!("The paper shows the first 14 entries of birth {id}; 1 were written later.");
    assert_eq!(verify(&early.to_uppercase()), (said(some), 0));
    assert_eq!(verify(&other), (said("The paper shows other entries than these.".to_owned()), 1));
    let (short, code) = verify("0123456789abcde");
    assert!(short.starts_with("These are not the digits of a record.") && code == 2, "{short}");

    assert_eq!(script(&[file, &late]), ("15 entries of 1 births by 1 devices, 2 gaps: each is signed\n".to_owned(), true));
    let (refused, ok) = script(&[file, &early]);
    assert!(refused.contains("the paper shows other entries") && !ok, "{refused}");

    practised.lock();
    let (said, code) = practised.run("verify", &["--hash", &early]);
    assert!(said.ends_with(&format!("The paper shows the first 14 entries of birth {id}; 1 were written later.\n")), "{said}");
    assert_eq!(code, 0);
}

/// Another digit after these words.
fn flip(line: &mut String, after: &str) {
    let at = line.find(after).unwrap() + after.len();
    let other = if &line[at..=at] == "0" { "1" } else { "0" };
    line.replace_range(at..=at, other);
}

#[test]
fn what_was_altered_left_out_or_put_in_is_found_by_both_readers() {
    let mut practised = Practised::busy();
    let file = practised.write(Outgoing::Entries);
    let whole = fs::read_to_string(&file).unwrap();
    let lines: Vec<&str> = whole.lines().collect();
    let altered = practised.folder.path().join("altered.jsonl");
    let both = |lines: &[String]| {
        let body: String = lines.iter().map(|line| format!("{line}\n")).collect();
        fs::write(&altered, &body).unwrap();
        let digest = output("sha256sum", &[text(&altered)]);
        fs::write(&altered, format!("{body}{{\"end\":\"{}\"}}\n", &digest[..64])).unwrap();
        let ours = program(&["verify", text(&altered)], "");
        (ours.1, ours.0, script(&[text(&altered)]))
    };
    let body: Vec<String> = lines[..lines.len() - 1].iter().map(|line| (*line).to_owned()).collect();
    let with = |change: &dyn Fn(&mut Vec<String>)| {
        let mut lines = body.clone();
        change(&mut lines);
        both(&lines)
    };
    let (code, said, (script_said, ok)) = with(&|_| {});
    assert!(code == 0 && ok, "the end is made as it should be: {said} {script_said}");
    type Change<'a> = &'a dyn Fn(&mut Vec<String>);
    let changes: [(&str, Change, i32); 7] = [
        ("words", &|lines| lines[4] = lines[4].replace("all calm", "all loud"), 1),
        ("a moment", &|lines| lines[4] = lines[4].replacen("1795570800000", "1795570860000", 1), 1),
        ("a number", &|lines| lines[4] = lines[4].replacen("\"n\":", "\"n\":9", 1), 2),
        ("the link before", &|lines| flip(&mut lines[2], "\"before\":\""), 1),
        ("a signature", &|lines| flip(&mut lines[4], "\"signature\":\""), 1),
        ("another key", &|lines| flip(&mut lines[1], "\"public\":\""), 2),
        ("an entry left out", &|lines| drop(lines.remove(4)), 2),
    ];
    for (what, change, expected) in changes {
        let (code, said, (script_said, ok)) = with(change);
        assert!(code == expected && !ok, "{what}: {code} {said} {script_said}");
    }
    fs::write(&altered, whole.replace("all calm", "all loud")).unwrap();
    let (said, code) = program(&["verify", text(&altered)], "");
    assert!(
        said.starts_with("This is no archive, or it is not whole or was altered.") && code == 2,
        "the end does not fit: {said}"
    );
}

/// The entries of a backup, opened as its README says.
fn unpack(practised: &Practised, backup: &Path, archive: &Path) {
    let unpacked = tempfile::tempdir().unwrap();
    output("tar", &["-xf", text(backup), "-C", text(unpacked.path())]);
    let file = |name: &str| fs::read(unpacked.path().join(name)).unwrap();
    let identity: age::x25519::Identity = practised.recovery.parse().unwrap();
    let digits = age::decrypt(&identity, &file(RECOVERY_KEY)).unwrap();
    let digits = SecretString::from(String::from_utf8(digits).unwrap());
    let opened = age::decrypt(&age::scrypt::Identity::new(digits), &file("entries.age"));
    fs::write(archive, opened.unwrap()).unwrap();
}

#[test]
fn of_a_birth_that_was_erased_nothing_is_missing_and_nothing_is_told() {
    let mut practised = Practised::busy();
    practised.lock();
    let mut store = Store::open_with_identity(&practised.data(), &practised.recovery.clone().into()).unwrap();
    store.erase(practised.birth).unwrap();
    store.close().unwrap();
    let (backup, archive) = (practised.folder.path().join("b.tar"), practised.folder.path().join("archive.jsonl"));
    assert_eq!(practised.run("backup", &[text(&backup)]).1, 0);
    let (said, code) = program(&["verify", text(&backup)], PASSPHRASE);
    assert!(said.starts_with("4 entries of 1 birth checked: each is signed by its device (1).\n") && code == 0, "{said}");
    unpack(&practised, &backup, &archive);
    let (said, ok) = script(&[text(&archive)]);
    assert!(ok && said == "18 entries of 1 births by 1 devices, 0 gaps: each is signed\n", "{said}");
    assert!(!fs::read_to_string(&archive).unwrap().contains("all calm"));
}

#[test]
fn a_backup_and_the_archive_in_it_are_checked_where_no_practice_is() {
    let mut practised = Practised::busy();
    let early = printed(&practised.write(Outgoing::Record));
    practised.lock();
    let backup = practised.folder.path().join("b.tar");
    assert_eq!(practised.run("backup", &[text(&backup)]).1, 0);
    let whole = "18 entries of 2 births checked: each is signed by its device (1).\nIt holds a whole practice, as it was when \
                 this was made. An entry that was cut off at the end would not show.\n";
    for secret in [PASSPHRASE, &practised.recovery] {
        assert_eq!(program(&["verify", text(&backup)], secret), (whole.to_owned(), 0));
    }
    let (said, code) = program(&["verify", text(&backup), "--hash", &early], PASSPHRASE);
    assert!(said.contains("The paper shows these entries: all 14 of birth") && code == 0, "{said}");
    let (said, code) = program(&["verify", text(&backup)], "seven loud herons");
    assert!(said.starts_with("This passphrase does not open the backup.") && code == 2, "{said}");

    let archive = practised.folder.path().join("archive.jsonl");
    unpack(&practised, &backup, &archive);
    assert_eq!(program(&["verify", text(&archive)], ""), (whole.to_owned(), 0));
    let (said, ok) = script(&[text(&archive), &early]);
    assert!(ok && said == "18 entries of 2 births by 1 devices, 0 gaps: each is signed\n", "{said}");
    let nothing = practised.folder.path().join("nothing.jsonl");
    let (said, code) = program(&["verify", text(&nothing)], "");
    assert!(said.starts_with("This file is no backup of Secundine.") && code == 2, "{said}");
}

#[test]
fn the_document_names_every_kind_of_fact_that_was_ever_stored() {
    let document = fs::read_to_string(here("core/store/ARCHIVE.md")).unwrap();
    let mut kinds = BTreeSet::new();
    for file in fs::read_dir(here("core/domain/fixtures/v1")).unwrap().map(|file| file.unwrap()) {
        let entry: serde_json::Value = serde_json::from_slice(&fs::read(file.path()).unwrap()).unwrap();
        let later = file.file_name().to_string_lossy().starts_with("later");
        kinds.extend(entry["fact"]["kind"].as_str().filter(|_| !later).map(str::to_owned));
    }
    assert!(kinds.len() > 30);
    let unnamed: Vec<_> = kinds.iter().filter(|kind| !document.contains(&format!("`{kind}`"))).collect();
    assert!(unnamed.is_empty(), "not in ARCHIVE.md: {unnamed:?}");
}
