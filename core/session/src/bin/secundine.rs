//! Secundine without a window, for whoever has to read a practice's folder and has its passphrase.
//!
//! `secundine verify FOLDER` checks every page and every entry of the practice in that folder and says what it found. The
//! passphrase, or the recovery identity as it was printed, is read from standard input, one line. It is shown as it is
//! typed; a file or another program can give it instead: `secundine verify FOLDER < passphrase`.
//!
//! `secundine salvage FOLDER` builds a damaged practice anew from everything that can be read, sets the damaged files aside
//! and says what is missing.
//!
//! Exit code: 0 all fits, 1 something does not, 2 the check could not be made. Work on a copy of the folder: to read the
//! database is to fold its log into it, which changes the files but no entry; a salvage writes a new one.

use std::io::{self, BufRead, Write};
use std::path::Path;
use std::process::ExitCode;

use secundine_domain::message::Message;
use secundine_record::words::Words;
use secundine_session::api::{ApiError, VerifyView};
use secundine_session::{salvage, verify};
use secundine_store::{Passphrase, Store, StoreError, is_recovery_identity};

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let told = match args.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        ["verify", folder] => check(Path::new(folder)).map(|view| (view.ok, vec![say(&view.message), say(&view.head)])),
        ["salvage", folder] => build_anew(Path::new(folder)),
        _ => {
            return end(
                2,
                &["Usage: secundine verify FOLDER, or secundine salvage FOLDER, with the passphrase on standard input."
                    .to_owned()],
            );
        }
    };
    match told {
        Ok((ok, lines)) => end(u8::from(!ok), &lines),
        Err(error) => end(2, &[say(&ApiError::from(error).message)]),
    }
}

/// Whether everything was read, and the report.
fn build_anew(folder: &Path) -> Result<(bool, Vec<String>), StoreError> {
    let (store, report, set_aside) = Store::salvage(folder, secret()?)?;
    store.close()?;
    let mut lines: Vec<String> = salvage::view(&report, Some(&set_aside)).report.iter().map(say).collect();
    lines.push(set_aside.display().to_string());
    Ok((report.missing.is_empty(), lines))
}

/// The first line of standard input; wiped when dropped.
fn secret() -> Result<Passphrase, StoreError> {
    let mut line = String::new();
    let read = io::stdin().lock().read_line(&mut line);
    read.map_err(|_| StoreError::WrongPassphrase)?;
    line.truncate(line.trim_end_matches(['\r', '\n']).len());
    Ok(Passphrase::from(line))
}

fn check(folder: &Path) -> Result<VerifyView, StoreError> {
    let secret = secret()?;
    let store = match is_recovery_identity(&secret) {
        true => Store::open_with_identity(folder, &secret)?,
        false => Store::open(folder, secret)?,
    };
    Ok(verify::view(&store.verify()?))
}

fn say(message: &Message) -> String {
    Words::english().say(message)
}

/// Prints the lines; a closed pipe does not change the exit code.
fn end(code: u8, lines: &[String]) -> ExitCode {
    let _ = writeln!(io::stdout(), "{}", lines.join("\n"));
    ExitCode::from(code)
}
