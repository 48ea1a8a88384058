//! Secundine without a window, for whoever has to read a practice's folder, its backup or its archive; and for a rehearsal.
//!
//! The passphrase, or the recovery identity as it was printed, is read from standard input, one line. It is shown as it is
//! typed; a file or another program can give it instead: `secundine verify FOLDER < passphrase`. To restore into an empty
//! folder it is the backup's, else that of the practice in the folder.

use std::io::{self, BufRead, Write};
use std::path::Path;
use std::process::ExitCode;

use args::Args;
use secundine_domain::message::Message;
use secundine_record::words::Words;
use secundine_session::api::{ApiError, ErrorCode};
use secundine_session::clock::{Clock, SystemClock};
use secundine_session::{backup, salvage};
use secundine_store::{Inbox, Passphrase, Store, StoreError, is_recovery_identity};

mod args;
mod export;
mod rehearse;
mod verify;

/// An exit code, and what is said.
type Answer = (u8, Vec<String>);

fn main() -> ExitCode {
    let Some(args) = Args::read(std::env::args().skip(1)) else { return end(2, &[args::USAGE.to_owned()]) };
    let answer = match args.words.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        _ if args.help => return end(0, &[args::USAGE.to_owned()]),
        ["verify", at] => verify::verify(Path::new(at), args.hash.as_deref()),
        ["export", folder] => export::births(Path::new(folder)),
        ["export", from, kind, file] => export::read_in(Path::new(from), kind, Path::new(file), &args),
        ["export", folder, birth, kind, file] => export::export(Path::new(folder), birth, kind, Path::new(file), &args),
        ["rehearse", folder] => rehearse::rehearse(Path::new(folder), None, &args),
        ["rehearse", folder, scenario] => rehearse::rehearse(Path::new(folder), Some(scenario), &args),
        ["backup", folder, file] => back_up(Path::new(folder), Path::new(file)),
        ["restore", file, folder] => restore(Path::new(file), Path::new(folder)),
        ["salvage", folder] => build_anew(Path::new(folder)),
        _ => return end(2, &[args::USAGE.to_owned()]),
    };
    let (code, lines) = answer.unwrap_or_else(|error| (2, vec![say(&error.message)]));
    end(code, &lines)
}

fn back_up(folder: &Path, file: &Path) -> Result<Answer, ApiError> {
    let store = open(folder, secret()?)?;
    nothing_at(file)?;
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

/// Nothing is ever written over.
fn nothing_at(file: &Path) -> Result<(), ApiError> {
    if file.exists() { Err(impossible("error-backup-file-there")) } else { Ok(()) }
}

fn impossible(id: &str) -> ApiError {
    ApiError { code: ErrorCode::Impossible, message: Message::new(id) }
}

fn say(message: &Message) -> String {
    Words::english().say(message)
}

/// Prints the lines; a closed pipe does not change the exit code.
fn end(code: u8, lines: &[String]) -> ExitCode {
    let _ = writeln!(io::stdout(), "{}", lines.join("\n"));
    ExitCode::from(code)
}
