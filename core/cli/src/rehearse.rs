//! An invented birth, played at once.

use std::path::Path;
use std::sync::Arc;

use secundine_domain::entry::BirthId;
use secundine_session::api::{ApiError, ErrorCode, Outgoing, RehearsalMode, Request, Response, ScenarioName};
use secundine_session::clock::{Clock, HandClock, SystemClock};
use secundine_session::{Paths, Session};

use crate::args::Args;
use crate::{Answer, impossible};

/// Longer than every scenario, ms. Our own choice.
const WHOLE: i64 = 90 * 60 * 1000;

/// What is written of it, as far as there is something to write.
const FILES: [Outgoing; 4] = [Outgoing::Record, Outgoing::Csv, Outgoing::Calendar, Outgoing::Entries];

pub fn rehearse(folder: &Path, scenario: Option<&str>, args: &Args) -> Result<Answer, ApiError> {
    let scenario = match scenario {
        None => ScenarioName::default(),
        Some(name) => serde_json::from_value(name.into()).map_err(|_| impossible("error-no-such-scenario"))?,
    };
    let not_written = |_| ApiError { code: ErrorCode::NotSaved, ..impossible("error-record-not-written") };
    let data = tempfile::tempdir().map_err(not_written)?;
    let clock = HandClock::at(SystemClock::new().now());
    let paths = Paths { data: data.path().to_owned(), records: folder.to_owned() };
    let mut session = Session::new(paths, Arc::new(clock.clone()));
    let birth = begin(&mut session, scenario)?;
    clock.advance(WHOLE);
    let mut said = Vec::new();
    for file in FILES {
        match session.call(Request::WriteFile { birth, file, language: args.language.clone() }) {
            Ok(Response::WriteFile { path, .. }) => said.push(path),
            // Nothing is planned.
            Err(ApiError { code: ErrorCode::NotFound, .. }) => {}
            Err(error) => return Err(error),
            Ok(_) => {}
        }
    }
    Ok((0, said))
}

fn begin(session: &mut Session, scenario: ScenarioName) -> Result<BirthId, ApiError> {
    let begun = session.call(Request::Rehearse { scenario, speed: 1, mode: RehearsalMode::Watch })?;
    let birth = match begun {
        Response::Rehearse(status) => status.rehearsal.and_then(|rehearsal| rehearsal.birth),
        _ => None,
    };
    birth.ok_or_else(|| ApiError { code: ErrorCode::Internal, ..impossible("error-internal") })
}
