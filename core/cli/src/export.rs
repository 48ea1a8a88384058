//! Files about a birth, out of a practice's folder.

use std::path::Path;

use secundine_domain::entry::BirthId;
use secundine_session::api::{ApiError, ErrorCode, Outgoing};
use secundine_session::clock::{Clock, SystemClock};
use secundine_session::export::{Export, FromFile};
use secundine_store::StoreError;

use crate::args::Args;
use crate::{Answer, impossible, nothing_at, open, say, secret};

/// The births: id and label.
pub fn births(folder: &Path) -> Result<Answer, ApiError> {
    let mut export = Export::of(open(folder, secret()?)?)?;
    let births = export.births()?;
    export.close()?;
    Ok((0, births.into_iter().map(|(birth, label)| format!("{}\t{label}", birth.0)).collect()))
}

/// Writes a file.
pub fn export(folder: &Path, birth: &str, kind: &str, file: &Path, args: &Args) -> Result<Answer, ApiError> {
    let outgoing = outgoing(kind, args)?;
    let mut export = Export::of(open(folder, secret()?)?)?;
    let birth = found(&mut export, birth)?;
    nothing_at(file)?;
    let bytes = export.file(birth, outgoing, args.language.as_deref(), &SystemClock::new().now())?;
    export.close()?;
    write(file, &bytes)?;
    Ok((0, vec![file.display().to_string()]))
}

/// Writes a file out of a record that was given out of hand; says what is to be known of the record.
pub fn read_in(from: &Path, kind: &str, file: &Path, args: &Args) -> Result<Answer, ApiError> {
    let outgoing = outgoing(kind, args)?;
    let bytes = std::fs::read(from).map_err(|error| StoreError::NotRead(error.to_string()))?;
    let read = FromFile::read(&bytes)?;
    nothing_at(file)?;
    write(file, &read.file(outgoing, args.language.as_deref(), &SystemClock::new().now())?)?;
    let said = read.said().iter().map(say);
    Ok((0, said.chain([file.display().to_string()]).collect()))
}

/// Puts bytes where nothing is.
fn write(file: &Path, bytes: &[u8]) -> Result<(), ApiError> {
    std::fs::write(file, bytes).map_err(|_| ApiError { code: ErrorCode::NotSaved, ..impossible("error-record-not-written") })
}

/// A kind as the core names it.
fn outgoing(kind: &str, args: &Args) -> Result<Outgoing, ApiError> {
    let named = serde_json::json!({ "kind": kind, "placenta": args.placenta.unwrap_or(1), "photos": args.photos });
    serde_json::from_value(named).map_err(|_| impossible("error-no-such-file-kind"))
}

/// The one birth of this id or label.
fn found(export: &mut Export, named: &str) -> Result<BirthId, ApiError> {
    let births = export.births()?;
    let mut found = births.iter().filter(|(birth, label)| birth.0.to_string() == named || label == named);
    match (found.next(), found.next()) {
        (Some((birth, _)), None) => Ok(*birth),
        _ => Err(ApiError { code: ErrorCode::NotFound, ..impossible("error-no-birth") }),
    }
}
