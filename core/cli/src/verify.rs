//! Whether a practice, a backup or an archive is as it was written, and whether it is what a paper shows.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::{BufReader, Read};
use std::path::Path;

use secundine_domain::entry::BirthId;
use secundine_session::api::{ApiError, VerifyView};
use secundine_session::export::Export;
use secundine_session::verify::{archive, paper, view};
use secundine_store::{Extract, StoreError, Stored};

use crate::{Answer, impossible, open, say, secret};

pub fn verify(at: &Path, hash: Option<&str>) -> Result<Answer, ApiError> {
    if at.is_dir() {
        return folder(at, hash);
    }
    let extract = match begins_with_brace(at)? {
        true => {
            let file = File::open(at).map_err(|error| StoreError::NotRead(error.to_string()))?;
            Extract::read(BufReader::new(file)).map_err(unreadable)?
        }
        false => Extract::of_backup(at, secret()?).map_err(secundine_session::backup::restoring)?,
    };
    let (ok, said) = archive(&extract);
    held_against(ok, said.iter().map(say).collect(), &extract.births, hash)
}

fn folder(at: &Path, hash: Option<&str>) -> Result<Answer, ApiError> {
    let store = open(at, secret()?)?;
    let VerifyView { ok, message, head, .. } = view(&store.verify()?);
    let said = vec![say(&message), say(&head)];
    if hash.is_none() || !ok {
        return held_against(ok, said, &BTreeMap::new(), None);
    }
    let mut export = Export::of(store)?;
    let births = export.births()?.into_iter().map(|(birth, _)| Ok((birth, export.entries(birth)?.to_vec())));
    let births = births.collect::<Result<BTreeMap<_, _>, ApiError>>()?;
    export.close()?;
    held_against(ok, said, &births, hash)
}

/// The same with what is to be said of the paper.
fn held_against(
    ok: bool,
    mut said: Vec<String>,
    births: &BTreeMap<BirthId, Vec<Stored>>,
    hash: Option<&str>,
) -> Result<Answer, ApiError> {
    let on_paper = hash.map(|digits| paper(births, digits)).transpose()?;
    let fits = on_paper.as_ref().is_none_or(|(fits, _)| *fits);
    said.extend(on_paper.map(|(_, message)| say(&message)));
    Ok((u8::from(!ok || !fits), said))
}

/// Why an archive cannot be read.
fn unreadable(error: StoreError) -> ApiError {
    match error {
        StoreError::DamagedBackup(_) => impossible("error-archive-damaged"),
        other => other.into(),
    }
}

/// An archive is text that begins so; a backup never does.
fn begins_with_brace(file: &Path) -> Result<bool, StoreError> {
    let mut first = [0];
    let read = File::open(file).and_then(|mut file| file.read(&mut first));
    read.map(|read| read == 1 && first == *b"{").map_err(|error| StoreError::NotBackup(error.to_string()))
}
