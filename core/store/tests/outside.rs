//! A record can be read without the program, by tools that anybody has: age, openssl, sqlite3. Without the key, nothing can.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::path::Path;
use std::process::{Command, Output};

use common::chained::{Chained, Copy};
use common::{Founded, PASSPHRASE, from_elsewhere, numbers, two_births, write};
use secundine_domain::entry::BirthId;
use secundine_store::{DATABASE, ExposeSecret, HEAD, PASSPHRASE_KEY, RECOVERY_KEY};

/// Runs a tool of the system; one that is not here is named with its package.
fn run(tool: &str, package: &str, args: &[&str]) -> Output {
    let output = Command::new(tool).args(args).output();
    output.unwrap_or_else(|error| unreachable!("`{tool}` cannot be run ({error}): install the Debian package `{package}`"))
}

fn said(output: &Output) -> String {
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout.clone()).unwrap().trim_end().to_owned()
}

fn text(path: &Path) -> &str {
    path.to_str().unwrap()
}

fn script(name: &str) -> String {
    format!("{}/tests/outside/{name}", env!("CARGO_MANIFEST_DIR"))
}

#[test]
fn age_opens_both_key_files() {
    let founded = Founded::new();
    let identity = founded.file("identity");
    fs::write(&identity, founded.recovery.expose_secret()).unwrap();
    let by_identity = run("age", "age", &["-d", "-i", text(&identity), text(&founded.file(RECOVERY_KEY))]);
    assert_eq!(said(&by_identity), founded.data_key());
    run("age", "age", &["--version"]);
    let unlock = script("passphrase.py");
    let key_file = founded.file(PASSPHRASE_KEY);
    let by_passphrase = run("python3", "python3", &[&unlock, text(&key_file), PASSPHRASE]);
    assert_eq!(said(&by_passphrase), founded.data_key());
    let wrong = run("python3", "python3", &[&unlock, text(&key_file), "seven quiet heron"]);
    assert!(!wrong.status.success() && wrong.stdout.is_empty());
}

#[test]
fn with_the_key_openssl_and_sqlite_read_every_entry() {
    let (founded, _) = Founded::with_birth(200);
    let (sealed, plain) = (founded.file(DATABASE), founded.file("plain.db"));
    run("openssl", "openssl", &["version"]);
    let plain_script = script("plain.py");
    said(&run("python3", "python3", &[&plain_script, text(&sealed), &founded.data_key(), text(&plain)]));
    let ask = |question: &str| said(&run("sqlite3", "sqlite3", &[text(&plain), question]));
    assert_eq!(ask("PRAGMA integrity_check"), "ok");
    assert_eq!(ask("PRAGMA user_version"), "1");
    assert_eq!(ask("SELECT count(*), max(n) FROM entry"), "200|200");
    let note = ask("SELECT json_extract(CAST(body AS TEXT), '$.fact.data.text') FROM entry WHERE n = 137");
    assert_eq!(note, "canarynote 137");
    assert!(holds(&fs::read(&plain).unwrap(), b"Canaryname"), "the canaries are searched for as they are stored");

    let mut altered = fs::read(&sealed).unwrap();
    altered[9_000] ^= 1;
    fs::write(&sealed, altered).unwrap();
    let refused = run("python3", "python3", &[&plain_script, text(&sealed), &founded.data_key(), text(&plain)]);
    assert_eq!(String::from_utf8_lossy(&refused.stderr).trim_end(), "page 3 was altered");
}

#[test]
fn with_the_key_openssl_checks_every_link_and_signature() {
    let chained = Chained::new(30, 40);
    let (plain_script, chain_script) = (script("plain.py"), script("chain.py"));
    let check = |copy: &Copy| {
        let (sealed, plain) = (copy.file(DATABASE), copy.file("plain.db"));
        said(&run("python3", "python3", &[&plain_script, text(&sealed), &chained.founded.data_key(), text(&plain)]));
        run("python3", "python3", &[&chain_script, text(&plain), text(&copy.file(HEAD))])
    };
    let told = said(&check(&chained.copy()));
    let mut lines: Vec<&str> = told.lines().collect();
    let mut fit = [(30, chained.own), (4, chained.other)].map(|(n, device)| format!("{n} entries of {device} fit"));
    lines.sort_unstable();
    fit.sort_unstable();
    assert_eq!(lines, fit);

    let (own, other) = (hex::encode(chained.own.0), hex::encode(chained.other.0));
    let changes = [
        (format!("UPDATE entry SET body = x'7b7d' WHERE device = x'{own}' AND n = 7"), format!("entry 7 of {own} does not fit")),
        (
            format!("UPDATE entry SET signature = zeroblob(64) WHERE device = x'{other}' AND n = 2"),
            format!("entry 2 of {other} does not fit"),
        ),
        (format!("DELETE FROM entry WHERE device = x'{own}' AND n = 3"), format!("entry 3 of {own} does not fit")),
        (format!("DELETE FROM entry WHERE device = x'{own}' AND n > 28"), "entry 29 is cut off".to_owned()),
        (format!("DELETE FROM device WHERE id = x'{other}'"), "4 entries of devices without a key".to_owned()),
    ];
    for (change, refusal) in changes {
        let copy = chained.copy();
        copy.tamper(|raw| raw.execute_batch(&change).unwrap());
        let output = check(&copy);
        assert_eq!(String::from_utf8_lossy(&output.stderr).trim_end(), refusal, "{change}");
        // The program comes to the same.
        assert!(copy.is_found_out(), "{change}");
    }
}

#[test]
fn tar_and_age_open_a_backup_and_openssl_checks_every_entry_of_it() {
    let chained = Chained::new(20, 10);
    let picture = chained.founded.open().keep_file(b"a picture of a placenta").unwrap();
    let backup = chained.founded.back_up("backup.tar");
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str| folder.path().join(name);
    said(&run("tar", "tar", &["-xf", text(&backup), "-C", text(folder.path())]));
    let readme = fs::read_to_string(file("README.txt")).unwrap();
    assert!(readme.contains("age -d entries.age"), "{readme}");
    fs::write(file("identity"), chained.founded.recovery.expose_secret()).unwrap();
    let digits = said(&run("age", "age", &["-d", "-i", text(&file("identity")), text(&file(RECOVERY_KEY))]));
    let unlock = script("passphrase.py");
    assert_eq!(said(&run("python3", "python3", &[&unlock, text(&file(PASSPHRASE_KEY)), PASSPHRASE])), digits);
    let opened = said(&run("python3", "python3", &[&unlock, text(&file("entries.age")), &digits]));
    let sealed = file(&format!("files/{picture}"));
    assert_eq!(said(&run("python3", "python3", &[&unlock, text(&sealed), &digits])), "a picture of a placenta");
    assert!(readme.contains("age -d files/NAME"), "{readme}");

    let check = |lines: &str| {
        fs::write(file("entries.jsonl"), format!("{lines}\n")).unwrap();
        run("python3", "python3", &[&script("archive.py"), text(&file("entries.jsonl"))])
    };
    let told = said(&check(&opened));
    let mut lines: Vec<&str> = told.lines().collect();
    let mut fit = [(20, chained.own), (4, chained.other)].map(|(n, device)| format!("{n} entries of {device} fit"));
    lines.sort_unstable();
    fit.sort_unstable();
    assert_eq!(lines, fit);
    let altered = check(&opened.replacen("of another device", "of another person", 1));
    assert_eq!(String::from_utf8_lossy(&altered.stderr).trim_end(), "the end does not fit");
}

#[test]
fn of_a_birth_that_was_erased_the_digests_prove_the_rest() {
    let founded = Founded::new();
    let mut store = founded.open();
    let (gone, _) = two_births(&mut store);
    store.erase(gone).unwrap();
    let device = store.device();
    store.close().unwrap();
    let backup = founded.back_up("backup.tar");
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str| folder.path().join(name);
    said(&run("tar", "tar", &["-xf", text(&backup), "-C", text(folder.path())]));
    let opened = said(&run("python3", "python3", &[&script("passphrase.py"), text(&file("entries.age")), &founded.data_key()]));
    assert_eq!((opened.matches("canarynote").count(), opened.matches("\"digest\"").count()), (5, 5));
    fs::write(file("entries.jsonl"), format!("{opened}\n")).unwrap();
    let told = said(&run("python3", "python3", &[&script("archive.py"), text(&file("entries.jsonl"))]));
    assert_eq!(told, format!("10 entries of {device} fit"));
}

#[test]
fn a_picture_of_another_phone_opens_with_the_key_that_stands_in_the_entries() {
    let founded = Founded::new();
    let mut store = founded.open();
    // Of three pieces, the last one short; and of one piece.
    from_elsewhere(&mut store, &[7; 150_000]);
    from_elsewhere(&mut store, b"a picture of a placenta");
    store.close().unwrap();
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str| folder.path().join(name);
    said(&run("tar", "tar", &["-xf", text(&founded.back_up("backup.tar")), "-C", text(folder.path())]));
    assert!(fs::read_to_string(file("README.txt")).unwrap().contains("HKDF-SHA256 of the key"));
    let unlock = script("passphrase.py");
    let opened = said(&run("python3", "python3", &[&unlock, text(&file("entries.age")), &founded.data_key()]));
    fs::write(file("entries.jsonl"), format!("{opened}\n")).unwrap();
    let files = fs::read_dir(file("files")).unwrap().map(|sealed| sealed.unwrap().path());
    let mut lengths: Vec<usize> = files
        .map(|sealed| {
            let read = run("python3", "python3", &[&script("open_file.py"), text(&file("entries.jsonl")), text(&sealed)]);
            assert!(read.status.success(), "{}", String::from_utf8_lossy(&read.stderr));
            assert!(read.stdout == [7; 150_000] || read.stdout == b"a picture of a placenta");
            read.stdout.len()
        })
        .collect();
    lengths.sort_unstable();
    assert_eq!(lengths, [23, 150_000]);
    said(&run("python3", "python3", &[&script("archive.py"), text(&file("entries.jsonl"))]));
}

#[test]
fn without_the_key_it_is_no_database() {
    let (founded, _) = Founded::with_birth(2);
    let refused = run("sqlite3", "sqlite3", &[text(&founded.file(DATABASE)), "SELECT count(*) FROM entry"]);
    assert!(!refused.status.success());
    assert!(String::from_utf8_lossy(&refused.stderr).contains("file is not a database"));
}

#[test]
fn nothing_on_disk_is_readable_open_or_closed() {
    let founded = Founded::new();
    let mut store = founded.open();
    let birth = BirthId(store.next_id());
    write(&mut store, birth, 60);
    let log = format!("{DATABASE}-wal");
    assert!(fs::metadata(founded.file(&log)).unwrap().len() > 60 * 4096, "every entry is in the log");
    nothing_readable(&founded);
    assert_eq!(numbers(&store, birth).len(), 60);
    store.close().unwrap();
    assert!(!founded.file(&log).exists());
    nothing_readable(&founded);
}

fn nothing_readable(founded: &Founded) {
    let key = founded.data_key();
    let bytes = hex::decode(&key).unwrap();
    let canaries: [&[u8]; 10] = [
        b"Canaryname",
        b"canarynote",
        b"recorded",
        b"wall_ms",
        b"CREATE TABLE",
        b"SQLite format 3",
        PASSPHRASE.as_bytes(),
        founded.recovery.expose_secret().as_bytes(),
        key.as_bytes(),
        &bytes,
    ];
    let files: Vec<_> = fs::read_dir(founded.path()).unwrap().map(|entry| entry.unwrap().path()).collect();
    assert!(files.len() >= 3);
    for file in files {
        let content = fs::read(&file).unwrap();
        for canary in canaries {
            assert!(!holds(&content, canary), "{} holds {:?}", file.display(), String::from_utf8_lossy(canary));
        }
    }
}

fn holds(bytes: &[u8], part: &[u8]) -> bool {
    bytes.windows(part.len()).any(|window| window == part)
}
