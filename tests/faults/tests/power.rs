//! The power goes at every moment at which a file was touched, and leaves what it may: nothing that was acknowledged is
//! lost, and what is there can be opened.
//!
//! `SECUNDINE_POWER_STATES` sets how many states the long test looks at, and `SECUNDINE_SEED` the first script.
//! `SECUNDINE_POWER=seed:moment:number` looks at one state alone, as a failing test prints it.

#![cfg(unix)]
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::print_stderr,
    reason = "a test may stop at the first surprise, and tells what it did"
)]

use std::fs;
use std::ops::Range;
use std::path::Path;
use std::sync::{Mutex, PoisonError};

use secundine_domain::entry::Entry;
use secundine_faults::birth::{Begin, play, script};
use secundine_faults::check::{Wanted, check};
use secundine_faults::disk::{Power, State};
use secundine_faults::plan::{self, Event};
use secundine_faults::{folder, register};
use secundine_store::{INBOX_RECIPIENT, PASSPHRASE_KEY, Passphrase, RECOVERY_KEY, Store};
use tempfile::TempDir;

/// The plan is one for the whole process.
static ALONE: Mutex<()> = Mutex::new(());

/// A birth that was played from the founding on, and all that reached the files.
struct Recorded {
    seed: u64,
    folder: TempDir,
    identity: Passphrase,
    entries: Vec<Entry>,
    trace: Vec<Event>,
}

fn passphrase() -> Passphrase {
    Passphrase::from("seven quiet herons".to_owned())
}

fn recorded(seed: u64) -> Recorded {
    let folder = folder();
    plan::record();
    let (store, identity) = Store::create(folder.path(), passphrase()).unwrap();
    // The key files were put on disk with their folder, and with it every name in it.
    plan::note(|| Event::Folder);
    plan::note(|| Event::Acknowledged(0, Vec::new()));
    let played = play(folder.path(), &identity, Begin::Founded(Box::new(store)), &script(seed), &mut |_| ());
    let (_, trace) = plan::rest();
    assert!(played.refused.is_empty() && played.shut.is_empty() && played.wrong.is_empty(), "{:?}", played.wrong);
    Recorded { seed, folder, identity, entries: played.acknowledged, trace }
}

/// The one state that is to be looked at alone, if any.
fn only() -> Option<(u64, usize, usize)> {
    let only = std::env::var("SECUNDINE_POWER").ok()?;
    let numbers: Vec<u64> = only.split(':').map(|number| number.parse().unwrap()).collect();
    let [seed, moment, number] = numbers.as_slice() else { unreachable!("SECUNDINE_POWER is seed:moment:number") };
    Some((*seed, usize::try_from(*moment).unwrap(), usize::try_from(*number).unwrap()))
}

impl Recorded {
    /// Looks at every state that a loss of power may leave; gives how many, and in how many of them the last entries were
    /// there although they had not been acknowledged yet.
    fn look_at_all(&self) -> (usize, usize) {
        let (mut looked, mut ahead) = (0, 0);
        let folder = folder();
        let mut power = Power::new(self.seed);
        for (n, event) in self.trace.iter().enumerate() {
            for (number, state) in power.after(n, event) {
                if only().is_some_and(|only| only != (self.seed, n, number)) {
                    continue;
                }
                looked += 1;
                match self.look(folder.path(), &state, number % 4 == 0) {
                    Ok(more) => ahead += usize::from(more > 0),
                    Err(wrong) => unreachable!("SECUNDINE_POWER={}:{n}:{number}: {wrong}", self.seed),
                }
            }
        }
        (looked, ahead)
    }

    fn look(&self, folder: &Path, state: &State, again: bool) -> Result<usize, String> {
        for name in [PASSPHRASE_KEY, RECOVERY_KEY, INBOX_RECIPIENT] {
            fs::copy(self.folder.path().join(name), folder.join(name)).map_err(|error| format!("{name}: {error}"))?;
        }
        state.lay_out(folder).map_err(|error| error.to_string())?;
        let (tried, acknowledged) = (state.tried.max(1), state.acknowledged);
        let (tried, acknowledged) = (&self.entries[..tried], &self.entries[..acknowledged]);
        let more = check(folder, &self.identity, Wanted { tried, acknowledged }, again)?;
        // Entries that belong together are there together or not at all.
        if more == 0 || more == state.tried - state.acknowledged { Ok(more) } else { Err(format!("{more} of a group")) }
    }
}

#[test]
fn the_power_goes_anywhere_in_a_birth() {
    let _alone = ALONE.lock().unwrap_or_else(PoisonError::into_inner);
    register();
    if let Some((seed, ..)) = only() {
        assert_eq!(recorded(seed).look_at_all().0, 1, "there is no such state");
        return;
    }
    let (looked, ahead) = look_at_births(0..2);
    eprintln!("{looked} states, {ahead} of them with entries that were just not acknowledged yet");
    assert!(looked > 1_500 && ahead > 10 && ahead < looked, "{looked} {ahead}");
}

#[test]
#[ignore = "long: `make soak`"]
fn the_power_goes_anywhere_in_many_births() {
    let _alone = ALONE.lock().unwrap_or_else(PoisonError::into_inner);
    register();
    let number = |name: &str, or: u64| std::env::var(name).map_or(or, |text| text.parse().unwrap());
    let (wanted, mut seed) = (number("SECUNDINE_POWER_STATES", 100_000), number("SECUNDINE_SEED", 2));
    let (mut looked, mut ahead) = (0, 0);
    while (looked as u64) < wanted {
        let (states, more) = look_at_births(seed..seed + 1);
        (looked, ahead, seed) = (looked + states, ahead + more, seed + 1);
        eprintln!("{looked} states, {ahead} ahead; next SECUNDINE_SEED={seed}");
    }
    assert!(ahead > 0);
}

/// Plays births and looks at all that each may leave. One thread: SQLite locks every piece of memory under one mutex here,
/// so that two are slower than one.
fn look_at_births(seeds: Range<u64>) -> (usize, usize) {
    let looked = seeds.map(|seed| recorded(seed).look_at_all());
    looked.fold((0, 0), |(states, ahead), (more, of_them)| (states + more, ahead + of_them))
}
