//! Secundine without a window, for whoever has to read a practice's folder and has its passphrase.
//!
//! `secundine verify FOLDER` checks every page and every entry of the practice in that folder and says what it found.
//! `secundine backup FOLDER FILE` makes a backup of it, and reads it back. `secundine restore FILE FOLDER` puts the practice
//! of a backup into a folder that has none, or adds to the practice there what it has not.
//!
//! `secundine salvage FOLDER` builds a damaged practice anew from everything that can be read, sets the damaged files aside
//! and says what is missing.
//!
//! The passphrase, or the recovery identity as it was printed, is read from standard input, one line. It is shown as it is
//! typed; a file or another program can give it instead: `secundine verify FOLDER < passphrase`. To restore into an empty
//! folder it is the backup's, else that of the practice in the folder.
//!
//! Exit code: 0 all is well, 1 something does not fit, is missing or was not taken in, 2 it could not be done. Verify a copy
//! of the folder: to read the database is to fold its log into it, which changes the files but no entry; a salvage writes a
//! new one.

use std::io::{self, BufRead, Write};
use std::path::Path;
use std::process::ExitCode;

use secundine_domain::message::Message;
use secundine_record::words::Words;
use secundine_session::api::{ApiError, ErrorCode, VerifyView};
use secundine_session::clock::{Clock, SystemClock};
use secundine_session::{backup, salvage, verify};
use secundine_store::{Inbox, Passphrase, Store, StoreError, is_recovery_identity};

const USAGE: &str = "Usage, with the passphrase on standard input:
  secundine verify FOLDER
  secundine backup FOLDER FILE
  secundine restore FILE FOLDER
  secundine salvage FOLDER";

/// An exit code, and what is said.
type Answer = (u8, Vec<String>);

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let answer = match args.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        ["verify", folder] => check(Path::new(folder)),
        ["backup", folder, file] => back_up(Path::new(folder), Path::new(file)),
        ["restore", file, folder] => restore(Path::new(file), Path::new(folder)),
        ["salvage", folder] => build_anew(Path::new(folder)),
        _ => return end(2, &[USAGE.to_owned()]),
    };
    let (code, lines) = answer.unwrap_or_else(|error| (2, vec![say(&error.message)]));
    end(code, &lines)
}

fn check(folder: &Path) -> Result<Answer, ApiError> {
    let VerifyView { ok, message, head, .. } = verify::view(&open(folder, secret()?)?.verify()?);
    Ok((u8::from(!ok), vec![say(&message), say(&head)]))
}

fn back_up(folder: &Path, file: &Path) -> Result<Answer, ApiError> {
    let store = open(folder, secret()?)?;
    if file.exists() {
        return Err(ApiError { code: ErrorCode::Impossible, message: Message::new("error-backup-file-there") });
    }
    let backed = store.back_up(file, &SystemClock::new().now()).map_err(backup::making)?;
    let mut said = vec![say(&backup::made(&backed))];
    if let files @ 1.. = Inbox::waiting(folder).files {
        said.push(say(&Message::new("backup-waiting").with("files", files)));
    }
    Ok((0, said))
}

fn restore(file: &Path, folder: &Path) -> Result<Answer, ApiError> {
    let secret = secret()?;
    let (store, restored) = if Store::exists(folder) {
        let mut store = open(folder, secret)?;
        let restored = store.add_backup(file).map_err(backup::restoring)?;
        (store, restored)
    } else {
        Store::restore(folder, file, secret).map_err(backup::restoring)?
    };
    store.close()?;
    let told = backup::told(&restored);
    let code = u8::from(!told.is_empty());
    Ok((code, std::iter::once(backup::brought(&restored)).chain(told).map(|message| say(&message)).collect()))
}

fn build_anew(folder: &Path) -> Result<Answer, ApiError> {
    let (store, report, set_aside) = Store::salvage(folder, secret()?)?;
    store.close()?;
    let mut lines: Vec<String> = salvage::view(&report, Some(&set_aside)).report.iter().map(say).collect();
    lines.push(set_aside.display().to_string());
    Ok((u8::from(!report.missing.is_empty()), lines))
}

/// The line on standard input; wiped when dropped.
fn secret() -> Result<Passphrase, StoreError> {
    let mut line = String::new();
    let read = io::stdin().lock().read_line(&mut line);
    read.map_err(|_| StoreError::WrongPassphrase)?;
    line.truncate(line.trim_end_matches(['\r', '\n']).len());
    Ok(Passphrase::from(line))
}

fn open(folder: &Path, secret: Passphrase) -> Result<Store, StoreError> {
    match is_recovery_identity(&secret) {
        true => Store::open_with_identity(folder, &secret),
        false => Store::open(folder, secret),
    }
}

fn say(message: &Message) -> String {
    Words::english().say(message)
}

/// Prints the lines; a closed pipe does not change the exit code.
fn end(code: u8, lines: &[String]) -> ExitCode {
    let _ = writeln!(io::stdout(), "{}", lines.join("\n"));
    ExitCode::from(code)
}
