//! Plays the rehearsal at once and writes its record: `cargo run -p secundine-session --example rehearse -- FOLDER`.

#![allow(clippy::print_stdout, reason = "a program for the terminal")]

use std::path::PathBuf;
use std::sync::Arc;

use secundine_session::api::{Outgoing, RehearsalMode, Request, Response};
use secundine_session::clock::{Clock, HandClock, SystemClock};
use secundine_session::{Paths, Session};

fn main() {
    let folder = PathBuf::from(std::env::args().nth(1).unwrap_or_else(|| "out".to_owned()));
    let clock = HandClock::at(SystemClock::new().now());
    let paths = Paths { data: folder.join("data"), records: folder };
    let mut session = Session::new(paths, Arc::new(clock.clone()));
    let begun = session.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Watch });
    clock.advance(3_000_000);
    let written = begun.map(|response| match response {
        Response::Rehearse(status) => status.rehearsal.and_then(|rehearsal| rehearsal.birth),
        _ => None,
    });
    let written = written
        .map(|birth| birth.map(|birth| session.call(Request::WriteFile { birth, file: Outgoing::Record, language: None })));
    println!("{written:?}");
}
