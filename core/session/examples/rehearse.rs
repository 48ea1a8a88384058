//! Plays every rehearsal at once and writes what leaves the phone of it, in each language:
//! `cargo run -p secundine-session --example rehearse -- FOLDER`.

#![allow(clippy::print_stdout, reason = "a program for the terminal")]

use std::path::PathBuf;
use std::sync::Arc;

use secundine_record::words::Words;
use secundine_session::api::{ApiError, Outgoing, RehearsalMode, Request, Response, ScenarioName};
use secundine_session::clock::{Clock, HandClock, SystemClock};
use secundine_session::{Paths, Session};

/// Long enough for every script to end, ms.
const NIGHT: i64 = 4 * 3_600_000;

fn main() {
    let folder = PathBuf::from(std::env::args().nth(1).unwrap_or_else(|| "out".to_owned()));
    for scenario in ScenarioName::ALL {
        for tag in Words::tags() {
            let records = folder.join(format!("{scenario:?}")).join(tag);
            println!("{:?}", played(scenario, tag, Paths { data: folder.join("data"), records }));
        }
    }
}

fn played(scenario: ScenarioName, tag: &str, paths: Paths) -> Result<Vec<String>, ApiError> {
    let clock = HandClock::at(SystemClock::new().now());
    let mut session = Session::new(paths, Arc::new(clock.clone()));
    let begun = session.call(Request::Rehearse { scenario, speed: 1, mode: RehearsalMode::Watch })?;
    clock.advance(NIGHT);
    let Response::Rehearse(status) = begun else { return Ok(Vec::new()) };
    let Some(birth) = status.rehearsal.and_then(|rehearsal| rehearsal.birth) else { return Ok(Vec::new()) };
    let written = [Outgoing::Record, Outgoing::Parents].into_iter().map(|file| {
        match session.call(Request::WriteFile { birth, file, language: Some(tag.to_owned()) })? {
            Response::WriteFile { path, .. } => Ok(path),
            _ => Ok(String::new()),
        }
    });
    written.collect()
}
