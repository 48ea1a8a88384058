//! A practice at work, closed, and the program that reads it.

#![allow(dead_code, reason = "each test file uses its own part")]

#[path = "../../../session/tests/common/past.rs"]
mod past;

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::Arc;

use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Fact, NextContact, Practice};
use secundine_domain::time::Stamp;
use secundine_session::api::{At, Outgoing, Request, Response};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use tempfile::TempDir;

pub const PASSPHRASE: &str = "seven quiet herons";

/// Words that some reader might stumble over.
pub const ODD: [&str; 9] = [
    "=cmd|' /C calc'!A0",
    "+34 600 000 000",
    "-1",
    "@SUM(1;2)",
    "a,b;\"c\"\nd\te",
    "'quoted'",
    "مريم \u{202e}abc\u{202c} e\u{301} 👩‍🍼",
    "</script><b>&amp;",
    "Zoë Łąk",
];

pub struct Practised {
    pub session: Session,
    pub clock: HandClock,
    pub folder: TempDir,
    pub recovery: String,
    pub birth: BirthId,
}

impl Practised {
    /// A birth of four entries after the practice's own: registered, baby born, two notes.
    pub fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot: None });
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        let mut session = Session::new(paths, Arc::new(clock.clone()));
        let (name, practitioner, role) = ("Heron House".to_owned(), "Ida".to_owned(), "midwife".to_owned());
        let practice = Practice { name, practitioner, role, protocol: None };
        let passphrase = PASSPHRASE.to_owned();
        let Response::CreatePractice { recovery } = session.call(Request::CreatePractice { practice, passphrase }).unwrap()
        else {
            unreachable!()
        };
        let birth = Self::born(&mut session);
        let mut practised = Self { session, clock, folder, recovery: recovery.identity, birth };
        practised.note("all calm");
        practised.note("still calm");
        practised
    }

    fn born(session: &mut Session) -> BirthId {
        let Response::BabyBornNow { birth, .. } = session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else {
            unreachable!()
        };
        birth
    }

    /// With another birth between, and with words that some reader might stumble over.
    pub fn busy() -> Self {
        let mut practised = Self::new();
        practised.clock.advance(3_600_000);
        let (first, other) = (practised.birth, Self::born(&mut practised.session));
        practised.birth = other;
        practised.note("not of the first");
        practised.birth = first;
        for text in ODD {
            practised.note(text);
        }
        practised.plan("2026-11-27T10:00");
        practised
    }

    /// The next visit.
    pub fn plan(&mut self, at: &str) {
        let at = Some(at.to_owned());
        self.record(Fact::NextContactPlanned(NextContact { when: "visit".to_owned(), call: String::new(), at }));
    }

    pub fn record(&mut self, fact: Fact) {
        let birth = self.birth;
        self.session.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } }).unwrap();
    }

    pub fn note(&mut self, text: &str) {
        self.record(Fact::Noted { text: text.to_owned() });
    }

    /// The path of a file about the birth, written by the session.
    pub fn write(&mut self, file: Outgoing) -> PathBuf {
        let birth = self.birth;
        let written = self.session.call(Request::WriteFile { birth, file, language: None }).unwrap();
        let Response::WriteFile { path, .. } = written else { unreachable!() };
        path.into()
    }

    pub fn lock(&mut self) {
        self.session.call(Request::Lock).unwrap();
    }

    pub fn data(&self) -> PathBuf {
        self.folder.path().join("data")
    }

    pub fn file(&self, name: &str) -> PathBuf {
        self.data().join(name)
    }

    /// The program on the practice's folder.
    pub fn run(&self, command: &str, more: &[&str]) -> (String, i32) {
        let data = self.data();
        let args: Vec<&str> = [command, data.to_str().unwrap()].into_iter().chain(more.iter().copied()).collect();
        program(&args, &format!("{PASSPHRASE}\n"))
    }

    /// Changes the locked practice's tables past the program.
    pub fn tamper(&self, statement: &str) {
        past::tamper(&self.data(), &self.recovery, statement);
    }
}

/// What the program says on standard output, and its exit code.
pub fn program(args: &[&str], secret: &str) -> (String, i32) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_secundine"));
    let mut child = command.args(args).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    // A command that asks for nothing may be gone already.
    let _ = child.stdin.take().unwrap().write_all(secret.as_bytes());
    let output = child.wait_with_output().unwrap();
    assert!(output.stderr.is_empty(), "{}", String::from_utf8_lossy(&output.stderr));
    (String::from_utf8(output.stdout).unwrap(), output.status.code().unwrap())
}

/// What another program says on standard output.
pub fn output(program: &str, args: &[&str]) -> String {
    let done = Command::new(program).args(args).output().unwrap_or_else(|error| unreachable!("{program}: {error}"));
    assert!(done.status.success(), "{program}: {}", String::from_utf8_lossy(&done.stderr));
    String::from_utf8_lossy(&done.stdout).into_owned()
}

/// A path from the root of the repository.
pub fn here(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(path)
}

/// The Python that has what the tests read with; `make tools-test` sets it up.
pub fn python() -> PathBuf {
    here("tests/archive/venv/bin/python")
}

pub fn text(path: &Path) -> &str {
    path.to_str().unwrap()
}
