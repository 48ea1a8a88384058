//! A panic in the core while a practice is open prints nothing of what is in it.

#![allow(clippy::unwrap_used, clippy::string_slice, reason = "a test may stop at the first surprise, and this one panics")]

use std::path::Path;
use std::process::Command;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use secundine_domain::fact::{Client, Fact, Practice};
use secundine_domain::time::Stamp;
use secundine_session::api::{At, Door, ErrorCode, Request, Response};
use secundine_session::clock::{Clock, SystemClock};
use secundine_session::{Paths, Session, SharedSession, panics_tell_only_where};

const INSIDE: &str = "SECUNDINE_TEST_PANIC";
const TEST: &str = "a_panic_prints_its_place_and_nothing_of_the_practice";
/// Cut after its first byte, it is in the middle of a letter.
const CANARY: &str = "Östling-Canary";

/// A clock that at last cuts the client's name where it cannot be cut.
struct Faulty {
    clock: SystemClock,
    broken: AtomicBool,
}

impl Clock for Faulty {
    fn now(&self) -> Stamp {
        if self.broken.load(Ordering::SeqCst) {
            assert!(!CANARY[1..].is_empty());
        }
        self.clock.now()
    }
}

#[test]
fn a_panic_prints_its_place_and_nothing_of_the_practice() {
    if let Ok(told) = std::env::var(INSIDE) {
        let (hook, folder) = told.split_once(' ').unwrap();
        return inside(Path::new(folder), hook == "quiet");
    }
    let loud = printed("loud");
    assert!(loud.contains(CANARY), "without the hook the name would be there: {loud}");
    let quiet = printed("quiet");
    assert!(!quiet.contains("anary"), "{quiet}");
    assert!(quiet.contains(&format!("A fault of the program at {}", file!())), "{quiet}");
}

/// What another process prints in which the core panics.
fn printed(hook: &str) -> String {
    let folder = tempfile::tempdir().unwrap();
    let output = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", TEST, "--nocapture"])
        .env(INSIDE, format!("{hook} {}", folder.path().display()))
        .env("RUST_BACKTRACE", "full")
        .output()
        .unwrap();
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    let printed = text(&output.stderr) + &text(&output.stdout);
    assert!(output.status.success(), "{printed}");
    printed
}

fn inside(folder: &Path, quiet: bool) {
    if quiet {
        panics_tell_only_where();
    }
    let clock = Arc::new(Faulty { clock: SystemClock::new(), broken: AtomicBool::new(false) });
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    let session = SharedSession::new(Session::new(paths, Arc::<Faulty>::clone(&clock)));
    let practice = Practice {
        name: format!("House of {CANARY}"),
        practitioner: format!("Ida {CANARY}"),
        role: "midwife".to_owned(),
        protocol: None,
    };
    session.call(Request::CreatePractice { practice, passphrase: "seven quiet herons".to_owned() }).unwrap();
    let Response::BabyBornNow { birth, .. } = session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
    let record = || {
        let fact = Fact::ClientRecorded(Client { name: CANARY.to_owned(), ..Client::default() });
        session.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } })
    };
    record().unwrap();
    clock.broken.store(true, Ordering::SeqCst);
    assert_eq!(record().unwrap_err().code, ErrorCode::Internal);
    clock.broken.store(false, Ordering::SeqCst);
    let Response::Status(status) = session.call(Request::Status).unwrap() else { unreachable!() };
    assert_eq!(status.door, Door::Locked, "the practice is closed");
}
