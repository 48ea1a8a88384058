//! Whatever has become of the files, the answer is a clear sentence, and once they are whole again every entry is there.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod desk;

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use desk::{Desk, PASSPHRASE, Refusal, note, now, practice};
use secundine_session::SharedSession;
use secundine_session::api::{ApiError, RehearsalMode, Request, Response};
use secundine_store::{DATABASE, PASSPHRASE_KEY, RECOVERY_KEY};

/// What befell the files, and the code that opening them is answered by.
type Case = (&'static str, &'static str, fn(&Desk));

const CASES: &[Case] = &[
    ("the passphrase's key file is emptied", "damaged_key", |desk| fs::write(desk.data(PASSPHRASE_KEY), b"").unwrap()),
    ("the passphrase's key file is cut short", "damaged_key", |desk| {
        let whole = fs::read(desk.data(PASSPHRASE_KEY)).unwrap();
        fs::write(desk.data(PASSPHRASE_KEY), &whole[..60]).unwrap();
    }),
    ("the passphrase's key file is gone", "damaged_key", |desk| fs::remove_file(desk.data(PASSPHRASE_KEY)).unwrap()),
    ("both key files are gone", "damaged_key", |desk| {
        [PASSPHRASE_KEY, RECOVERY_KEY].iter().for_each(|name| fs::remove_file(desk.data(name)).unwrap());
    }),
    ("the database is gone", "damaged_store", |desk| fs::remove_file(desk.data(DATABASE)).unwrap()),
    ("the database is cut short", "damaged_store", |desk| {
        let whole = fs::read(desk.data(DATABASE)).unwrap();
        fs::write(desk.data(DATABASE), &whole[..4_000]).unwrap();
    }),
    ("a byte of the database is changed", "damaged_store", |desk| {
        let mut bytes = fs::read(desk.data(DATABASE)).unwrap();
        bytes[5_000] ^= 1;
        fs::write(desk.data(DATABASE), bytes).unwrap();
    }),
    ("a newer version has written the database", "newer_store", |desk| {
        raw(desk).pragma_update(None, "user_version", 2).unwrap();
    }),
];

#[test]
fn harmed_files_are_told_apart_and_nothing_is_lost_with_them() {
    let folder = tempfile::tempdir().unwrap();
    let desk = Desk::new(folder.path());
    let entries = desk.entries(desk.birth);
    desk.call(Request::Lock).unwrap();
    let whole = files(&desk.data(""));
    let mut sentences = String::new();
    for (name, code, befalls) in CASES {
        befalls(&desk);
        let harmed = files(&desk.data(""));
        let refusal = refusal(unlock(&desk.session, PASSPHRASE));
        assert_eq!(refusal.code, *code, "{name}: {refusal:?}");
        writeln!(sentences, "{name}\n    {}", refusal.read()).unwrap();
        assert!(files(&desk.data("")) == harmed, "{name}: the files were changed");
        for (path, bytes) in &whole {
            fs::write(path, bytes).unwrap();
        }
    }
    insta::assert_snapshot!("files", sentences);
    desk.unlock().unwrap();
    assert_eq!(desk.entries(desk.birth), entries);
}

#[test]
fn a_closed_door_says_why() {
    let folder = tempfile::tempdir().unwrap();
    let desk = Desk::new(folder.path());
    let entries = desk.entries(desk.birth);
    let second = desk.started_anew();
    let birth = desk.birth;
    let mut sentences = String::new();
    let mut told = |name: &str, code: &str, result: Result<Response, ApiError>| {
        let refusal = refusal(result);
        assert_eq!(refusal.code, code, "{name}: {refusal:?}");
        writeln!(sentences, "{name}\n    {}", refusal.read()).unwrap();
    };
    told("open in another window", "in_use", unlock(&second, PASSPHRASE));
    told("locked, and recorded for", "locked", second.call(Request::Record { birth, fact: note("x"), at: now() }));
    told("locked, and a baby is born", "locked", second.call(Request::BabyBornNow { ago_ms: 0 }));
    told("locked, and looked at", "locked", second.call(Request::Birth { birth }));
    desk.call(Request::Lock).unwrap();
    told("a wrong passphrase", "wrong_passphrase", unlock(&second, "seven quiet heron"));
    told("no passphrase", "wrong_passphrase", unlock(&second, ""));
    desk.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Drill }).unwrap();
    told("opened while rehearsing", "rehearsal", desk.unlock());
    told("locked while rehearsing", "rehearsal", desk.call(Request::Lock));
    desk.call(Request::EndRehearsal).unwrap();

    let empty = tempfile::tempdir().unwrap();
    let nowhere = Desk { folder: empty.path().to_owned(), ..desk };
    let fresh = nowhere.started_anew();
    told("nothing is here", "no_practice", unlock(&fresh, PASSPHRASE));
    let create = |passphrase: &str, practice| Request::CreatePractice { practice, passphrase: passphrase.to_owned() };
    told("founded with a short passphrase", "impossible", fresh.call(create("herons", practice())));
    let nameless = secundine_domain::fact::Practice { practitioner: " ".to_owned(), ..practice() };
    told("founded by nobody", "impossible", fresh.call(create(PASSPHRASE, nameless)));
    let astray = secundine_domain::fact::Practice { protocol: Some("ours".to_owned()), ..practice() };
    told("founded under an unknown protocol", "not_found", fresh.call(create(PASSPHRASE, astray)));
    insta::assert_snapshot!("doors", sentences);
    assert!(!empty.path().join("data").exists(), "a refused founding leaves no practice behind");

    unlock(&second, PASSPHRASE).unwrap();
    let again = Desk { session: second, folder: folder.path().to_owned(), ..nowhere };
    assert_eq!(again.entries(birth), entries);
}

fn unlock(session: &SharedSession, passphrase: &str) -> Result<Response, ApiError> {
    session.call(Request::Unlock { passphrase: passphrase.to_owned() })
}

fn refusal(result: Result<Response, ApiError>) -> Refusal {
    result.unwrap_err().into()
}

/// The database past the store, with the key that the recovery identity unwraps.
fn raw(desk: &Desk) -> rusqlite::Connection {
    let identity: age::x25519::Identity = desk.recovery.parse().unwrap();
    let key = age::decrypt(&identity, &fs::read(desk.data(RECOVERY_KEY)).unwrap()).unwrap();
    let connection = rusqlite::Connection::open(desk.data(DATABASE)).unwrap();
    connection.execute_batch(&format!("PRAGMA key = \"x'{}'\"", String::from_utf8(key).unwrap())).unwrap();
    connection
}

fn files(folder: &Path) -> Vec<(std::path::PathBuf, Vec<u8>)> {
    let listed = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let mut files: Vec<_> = listed.map(|path| (path.clone(), fs::read(path).unwrap())).collect();
    files.sort();
    files
}
