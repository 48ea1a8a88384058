//! The device's clocks as they may be written down: an entry goes wherever a record goes, and its text is signed, so that
//! nothing can be taken out of it afterwards.
//!
//! The system's name of a run would be found again by every program on the device, and how long it has been on tells of the
//! device. So each run has a random name in each practice, and its clock counts from an hour before it was first read here,
//! or from its beginning where that is later. Distances within a run are untouched (decision 0033).

use std::fmt::Write as _;
use std::fs;
use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError};

use secundine_domain::time::{Boot, Stamp};
use secundine_store::{DATABASE, RUN};
use sha2::{Digest, Sha256};

use super::Clock;

/// How much of a run is told from before it was first read, ms. Our own choice: it is what is certain of the time since a
/// restart in the midst of a birth, whatever the wall clock did.
const BEFORE_MS: i64 = 60 * 60 * 1000;

const TITLE: &str = "secundine run 1";

/// A clock whose runs have names of their own in the practice of a folder.
pub(crate) struct BlindClock {
    source: Arc<dyn Clock>,
    folder: PathBuf,
    known: Mutex<Option<Known>>,
}

/// What is told in the place of a run of the device.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Known {
    /// SHA-256 of the system's name, so that this does not lie on disk either.
    digest: String,
    name: String,
    /// What is taken off the running clock, ms.
    less_ms: i64,
    /// Whether the file has it: not before there is a practice.
    kept: bool,
}

impl BlindClock {
    pub(crate) fn new(source: Arc<dyn Clock>, folder: PathBuf) -> Self {
        Self { source, folder, known: Mutex::new(None) }
    }

    /// The next practice in this folder has other names.
    pub(crate) fn forget(&self) {
        *self.known.lock().unwrap_or_else(PoisonError::into_inner) = None;
    }

    /// None without randomness: then the distances come from the wall clock and say so.
    fn told(&self, boot: &Boot) -> Option<Boot> {
        let digest = hex(&Sha256::digest(&boot.id));
        let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        let mut run = match known.take().or_else(|| self.read()).filter(|run| run.digest == digest) {
            Some(run) => run,
            None => Known { digest, name: random()?, less_ms: boot.since_ms.saturating_sub(BEFORE_MS).max(0), kept: false },
        };
        run.kept = run.kept || self.keep(&run);
        let Known { name, less_ms, .. } = known.insert(run);
        Some(Boot { id: name.clone(), since_ms: boot.since_ms.saturating_sub(*less_ms) })
    }

    fn read(&self) -> Option<Known> {
        let text = fs::read_to_string(self.folder.join(RUN)).ok()?;
        let lines: Vec<&str> = text.lines().collect();
        let [TITLE, digest, name, less_ms] = lines.as_slice() else { return None };
        Some(Known { digest: (*digest).to_owned(), name: (*name).to_owned(), less_ms: less_ms.parse().ok()?, kept: true })
    }

    /// Not synced: a loss of power ends the run too. Where it cannot be kept, the name ends with this run of the program.
    fn keep(&self, run: &Known) -> bool {
        if !self.folder.join(DATABASE).exists() {
            return false;
        }
        let Known { digest, name, less_ms, .. } = run;
        let unfinished = self.folder.join(format!("{RUN}.unfinished"));
        let written = fs::write(&unfinished, format!("{TITLE}\n{digest}\n{name}\n{less_ms}\n"));
        written.and_then(|()| fs::rename(&unfinished, self.folder.join(RUN))).is_ok()
    }
}

impl BlindClock {
    /// The moment as it may be written down, and the system's own running clock at it, ms: only to set the system's timers by.
    pub(crate) fn now_and_running(&self) -> (Stamp, Option<i64>) {
        let stamp = self.source.now();
        let running = stamp.boot.as_ref().map(|boot| boot.since_ms);
        let boot = stamp.boot.as_ref().and_then(|boot| self.told(boot));
        (Stamp { boot, ..stamp }, running)
    }
}

impl Clock for BlindClock {
    fn now(&self) -> Stamp {
        self.now_and_running().0
    }
}

fn random() -> Option<String> {
    let mut bytes = [0; 16];
    getrandom::fill(&mut bytes).ok()?;
    Some(hex(&bytes))
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |mut text, byte| {
        let _ = write!(text, "{byte:02x}");
        text
    })
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use tempfile::TempDir;

    use super::*;
    use crate::clock::HandClock;

    const RAW: &str = "0b7d0c5e-6a53-4a8e-b9a6-1c1f6f1f6c1f";

    fn practice() -> TempDir {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join(DATABASE), []).unwrap();
        folder
    }

    fn at(id: &str, since_ms: i64) -> HandClock {
        let boot = Some(Boot { id: id.to_owned(), since_ms });
        HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot })
    }

    fn over(clock: &HandClock, folder: &Path) -> BlindClock {
        BlindClock::new(Arc::new(clock.clone()), folder.to_owned())
    }

    fn boot(clock: &BlindClock) -> Boot {
        clock.now().boot.unwrap()
    }

    #[test]
    fn a_run_keeps_its_name_and_its_distances_in_every_run_of_the_program() {
        let (folder, clock) = (practice(), at(RAW, 9 * BEFORE_MS));
        let first = boot(&over(&clock, folder.path()));
        assert_eq!(first.since_ms, BEFORE_MS);
        clock.advance(77_000);
        assert_eq!(boot(&over(&clock, folder.path())), Boot { since_ms: BEFORE_MS + 77_000, id: first.id.clone() });
        let file = fs::read_to_string(folder.path().join(RUN)).unwrap();
        assert!(first.id != RAW && !file.contains(RAW));
        clock.change(|stamp| stamp.boot = Some(Boot { id: "another".to_owned(), since_ms: 500 }));
        let second = boot(&over(&clock, folder.path()));
        assert!(second.id != first.id && second.since_ms == 500);
    }

    #[test]
    fn two_practices_and_a_wiped_one_have_names_of_their_own() {
        let (one, other, clock) = (practice(), practice(), at(RAW, 0));
        let here = over(&clock, one.path());
        let named = boot(&here).id;
        assert_ne!(boot(&over(&clock, other.path())).id, named);
        fs::remove_file(one.path().join(RUN)).unwrap();
        here.forget();
        assert_ne!(boot(&here).id, named);
    }

    #[test]
    fn before_there_is_a_practice_the_name_is_kept_in_mind_alone() {
        let (folder, clock) = (tempfile::tempdir().unwrap(), at(RAW, 0));
        let data = folder.path().join("data");
        let here = over(&clock, &data);
        let named = boot(&here);
        fs::create_dir(&data).unwrap();
        assert_eq!(boot(&here), named);
        assert!(!data.join(RUN).exists());
        fs::write(data.join(DATABASE), []).unwrap();
        assert_eq!((boot(&here), boot(&over(&clock, &data))), (named.clone(), named));
    }

    #[test]
    fn a_device_that_tells_of_no_run_is_left_so() {
        let clock = at(RAW, 0);
        clock.change(|stamp| stamp.boot = None);
        assert_eq!(over(&clock, Path::new("/nowhere")).now().boot, None);
    }
}
