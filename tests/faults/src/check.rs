//! Whether a store that is opened after a fault holds what it must.

use std::path::Path;

use secundine_domain::entry::{BirthId, Entry};
use secundine_store::{Passphrase, Store, StoreError};

/// What was handed to a store, and what it acknowledged.
#[derive(Clone, Copy)]
pub struct Wanted<'a> {
    /// Every entry that was handed to it.
    pub tried: &'a [Entry],
    /// Those that it said are on disk.
    pub acknowledged: &'a [Entry],
}

/// Opens a practice by its recovery identity and looks for everything. Where asked, it then writes one entry more, closes,
/// opens again, and looks for everything once more. Gives how many entries are there that were not acknowledged.
///
/// # Errors
/// What is wrong, in words.
pub fn check(folder: &Path, identity: &Passphrase, wanted: Wanted<'_>, again: bool) -> Result<usize, String> {
    let store = open(folder, identity)?;
    let found = everything(&store).map_err(|error| format!("it cannot be read: {error}"))?;
    if let Some(lost) = wanted.acknowledged.iter().find(|entry| !found.contains(entry)) {
        return Err(format!("entry {} was acknowledged and is lost; {} are there", lost.id.n, found.len()));
    }
    if let Some(new) = found.iter().find(|entry| !wanted.tried.contains(entry)) {
        return Err(format!("entry {} was never written", new.id.n));
    }
    if let Some(gap) = (1..).zip(&found).find(|(n, entry)| entry.id.n != *n) {
        return Err(format!("number {} is missing", gap.0));
    }
    sound(&store, found.len())?;
    if again {
        go_on(store, folder, identity, &found, wanted)?;
    }
    Ok(found.len() - wanted.acknowledged.len())
}

/// Writes one entry more, and finds it and all before it again.
fn go_on(mut store: Store, folder: &Path, identity: &Passphrase, found: &[Entry], wanted: Wanted<'_>) -> Result<(), String> {
    let one = Entry { id: store.next_id(), ..wanted.tried.first().cloned().ok_or("nothing was tried")? };
    let new = Entry { birth: found.first().map_or(BirthId::PRACTICE, |entry| entry.birth), ..one };
    store.append(&new).map_err(|error| format!("it takes nothing more: {error}"))?;
    store.close().map_err(|error| format!("it does not close: {error}"))?;
    let store = open(folder, identity)?;
    let again = everything(&store).map_err(|error| format!("it cannot be read again: {error}"))?;
    if again.split_last() != Some((&new, found)) {
        return Err(format!("{} entries were there, then {}", found.len(), again.len()));
    }
    sound(&store, again.len())
}

fn open(folder: &Path, identity: &Passphrase) -> Result<Store, String> {
    Store::open_with_identity(folder, identity).map_err(|error| format!("it does not open: {error}"))
}

/// Every entry of every birth and of the practice, in the order of their numbers.
fn everything(store: &Store) -> Result<Vec<Entry>, StoreError> {
    let mut all = Vec::new();
    for birth in store.births()?.iter().map(|birth| birth.id).chain([BirthId::PRACTICE]) {
        all.extend(store.entries(birth)?.into_iter().map(|stored| stored.entry));
    }
    all.sort_by_key(|entry| entry.id.n);
    Ok(all)
}

fn sound(store: &Store, entries: usize) -> Result<(), String> {
    let verdict = store.verify().map_err(|error| format!("it cannot be checked: {error}"))?;
    if let Some(misfit) = verdict.misfit {
        return Err(format!("it does not fit: {misfit:?}"));
    }
    if verdict.entries != entries as u64 {
        return Err(format!("{} entries were checked of {entries}", verdict.entries));
    }
    Ok(())
}
