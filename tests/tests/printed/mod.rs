//! What was printed, read back by programs of others.

#![allow(dead_code, reason = "each test file uses its own part")]

use std::path::Path;
use std::process::Command;
use std::sync::Arc;

use secundine_domain::entry::BirthId;
use secundine_domain::time::{Boot, Stamp};
use secundine_session::api::{RehearsalMode, Request, Response};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};

/// A session over a folder, on 2026-11-25 at 02:40 local time.
pub fn session(folder: &Path) -> (Session, HandClock) {
    let boot = Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 });
    let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot });
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    (Session::new(paths, Arc::new(clock.clone())), clock)
}

/// The rehearsal of a quiet night, played to its end.
pub fn rehearsed(folder: &Path) -> (Session, BirthId) {
    let (mut session, clock) = session(folder);
    let begun = session.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Watch }).unwrap();
    let Response::Rehearse(status) = begun else { unreachable!() };
    let birth = status.rehearsal.unwrap().birth.unwrap();
    clock.advance(3_000_000);
    (session, birth)
}

pub fn output(program: &str, args: &[&str]) -> String {
    let done = Command::new(program).args(args).output().unwrap_or_else(|error| panic!("{program}: {error}"));
    assert!(done.status.success(), "{program}: {}", String::from_utf8_lossy(&done.stderr));
    String::from_utf8_lossy(&done.stdout).into_owned()
}

/// Its text as it stands on the pages. The versions are hashes over random device ids; how wide a gap is drawn is the reader's own
/// affair.
pub fn laid_out(path: &str) -> String {
    let text = output("pdftotext", &["-layout", path, "-"]);
    let hashed = |word: &str| word.len() >= 16 && word.bytes().all(|byte| byte.is_ascii_hexdigit());
    let word = |word: &str| if hashed(word) { "(hash)".to_owned() } else { word.to_owned() };
    let line = |line: &str| line.split_whitespace().map(word).collect::<Vec<_>>().join(" ");
    text.lines().map(line).collect::<Vec<_>>().join("\n")
}

/// Sound, tagged, and with its fonts embedded.
pub fn assert_sound(path: &str, title: &str) {
    output("qpdf", &["--check", path]);
    let fonts = output("pdffonts", &[path]);
    let rows: Vec<&str> = fonts.lines().skip(2).collect();
    assert!(!rows.is_empty());
    for row in rows {
        let told: Vec<&str> = row.split_whitespace().collect();
        // Columns from the right: object, its generation, Unicode map, subset, embedded.
        assert!(told.ends_with(&["yes", "yes", "yes", told[told.len() - 2], told[told.len() - 1]]), "{row}");
    }
    let about = output("pdfinfo", &[path]);
    assert!(about.contains(&format!("Title:           {title}")), "{about}");
    assert!(about.contains("Tagged:          yes"), "{about}");
}
