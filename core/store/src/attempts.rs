//! Wrong tries in a row, in a small plain file, so that a restart of the program does not forget them.
//!
//! It slows down a hand at this device's door. It does nothing against a person who can copy the key file: there only the
//! passphrase and its stretching stand.

use std::fs::{self, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use secundine_domain::time::{Boot, Stamp};

/// Name of the count of wrong tries in the practice's folder.
pub const ATTEMPTS: &str = "attempts";

/// Wrong tries in a row after which a try has to wait. Our own choice.
const FREE: u32 = 3;
/// The first wait; each further one is twice as long. Our own choice.
const FIRST_WAIT_MS: i64 = 1_000;
/// The longest wait. Our own choice: a midwife who comes back to her phone is never kept out for longer.
const LONGEST_WAIT_MS: i64 = 60_000;

const TITLE: &str = "secundine attempts 1";

/// The wrong tries at one practice's door, as they stand on disk and as this run of the program knows them: a file that
/// cannot be written, or was removed, does not start the count anew.
pub struct Attempts {
    path: PathBuf,
    known: Option<Tries>,
}

/// Wrong tries in a row, and the moment of the last.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Tries {
    count: u32,
    wall_ms: i64,
    boot: Option<Boot>,
}

impl Attempts {
    /// The tries at the practice in this folder.
    #[must_use]
    pub fn new(folder: &Path) -> Self {
        Self { path: folder.join(ATTEMPTS), known: None }
    }

    /// Milliseconds until the next try may be made, 0 to 60 000.
    pub fn wait_ms(&mut self, now: &Stamp) -> i64 {
        let Some(tries) = self.tries() else { return 0 };
        let needed = tries.needed_ms();
        let elapsed = tries.elapsed_ms(now);
        if needed > 0 && elapsed < 0 {
            // The only clock was set back: the wait begins anew, so that it ends at all.
            self.keep(Tries::at(tries.count, now));
        }
        needed.saturating_sub(elapsed.max(0)).max(0)
    }

    /// Counts a try that is about to be made: killed in the midst of it, it was a wrong one. [`Attempts::forget`] or
    /// [`Attempts::take_back`] puts it right afterwards.
    pub fn count(&mut self, now: &Stamp) {
        let count = self.tries().map_or(1, |tries| tries.count.saturating_add(1));
        self.keep(Tries::at(count, now));
    }

    /// The last try told nothing: it failed for another reason than its passphrase.
    pub fn take_back(&mut self) {
        match self.tries() {
            Some(tries) if tries.count > 1 => self.keep(Tries { count: tries.count - 1, ..tries }),
            _ => self.forget(),
        }
    }

    /// The last try was right: counting begins anew. That the removal is not synced costs at most one count.
    pub fn forget(&mut self) {
        self.known = None;
        if fs::remove_file(&self.path).is_err() && self.path.exists() {
            let _ = self.write("");
        }
    }

    /// The greater count of the file and of this run.
    fn tries(&self) -> Option<Tries> {
        let stored = fs::read_to_string(&self.path).ok().and_then(|text| Tries::parse(&text));
        [stored, self.known.clone()].into_iter().flatten().max_by_key(|tries| tries.count)
    }

    /// On a full disk the count is kept in this run alone: the practice still has to open.
    fn keep(&mut self, tries: Tries) {
        let _ = self.write(&tries.text());
        self.known = Some(tries);
    }

    /// Written over in place, which needs no room.
    fn write(&self, text: &str) -> io::Result<()> {
        let mut file = OpenOptions::new().write(true).create(true).truncate(false).open(&self.path)?;
        file.write_all(text.as_bytes())?;
        file.set_len(text.len().try_into().unwrap_or(u64::MAX))?;
        file.sync_data()
    }
}

impl Tries {
    fn at(count: u32, now: &Stamp) -> Self {
        Self { count, wall_ms: now.wall_ms, boot: now.boot.clone() }
    }

    /// Milliseconds that have to pass after the last try.
    fn needed_ms(&self) -> i64 {
        match self.count.checked_sub(FREE) {
            None => 0,
            // 2^6 s is more than the longest.
            Some(further) => (FIRST_WAIT_MS << further.min(6)).min(LONGEST_WAIT_MS),
        }
    }

    /// Milliseconds since the last try. On one run of the device its running clock tells; after a restart at least the time
    /// since then has passed, and no more is believed. The wall clock is asked only where there is no other.
    fn elapsed_ms(&self, now: &Stamp) -> i64 {
        match (&self.boot, &now.boot) {
            (Some(last), Some(now)) if last.id == now.id => now.since_ms.saturating_sub(last.since_ms),
            (Some(_), Some(now)) => now.since_ms,
            _ => now.wall_ms.saturating_sub(self.wall_ms),
        }
    }

    fn text(&self) -> String {
        let Self { count, wall_ms, boot } = self;
        let (since_ms, id) = boot.as_ref().map_or((0, ""), |boot| (boot.since_ms, boot.id.as_str()));
        format!("{TITLE}\n{count}\n{wall_ms}\n{since_ms}\n{id}\n")
    }

    fn parse(text: &str) -> Option<Self> {
        let lines: Vec<&str> = text.lines().collect();
        let [TITLE, count, wall_ms, since_ms, id] = lines.as_slice() else { return None };
        let boot = Boot { id: (*id).to_owned(), since_ms: since_ms.parse().ok()? };
        Some(Self {
            count: count.parse().ok()?,
            wall_ms: wall_ms.parse().ok()?,
            boot: Some(boot).filter(|boot| !boot.id.is_empty()),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stamp(wall_ms: i64, boot: Option<(&str, i64)>) -> Stamp {
        let boot = boot.map(|(id, since_ms)| Boot { id: id.to_owned(), since_ms });
        Stamp { wall_ms, offset_min: 0, zone: None, boot }
    }

    fn counted(folder: &Path, count: u32, at: &Stamp) -> Attempts {
        let mut attempts = Attempts::new(folder);
        (0..count).for_each(|_| attempts.count(at));
        attempts
    }

    #[test]
    fn three_are_free_then_the_wait_doubles_up_to_a_minute() {
        let folder = tempfile::tempdir().unwrap();
        let now = stamp(0, Some(("a", 0)));
        let mut attempts = Attempts::new(folder.path());
        let waits = (0..14).map(|_| {
            let wait = attempts.wait_ms(&now) / 1000;
            attempts.count(&now);
            wait
        });
        assert_eq!(waits.collect::<Vec<_>>(), [0, 0, 0, 1, 2, 4, 8, 16, 32, 60, 60, 60, 60, 60]);
        let far = Tries { count: u32::MAX, wall_ms: 0, boot: None };
        assert_eq!(far.needed_ms(), 60_000);
    }

    #[test]
    fn another_run_of_the_program_reads_what_was_written() {
        let folder = tempfile::tempdir().unwrap();
        for boot in [None, Some(("a", 7_000))] {
            drop(counted(folder.path(), 5, &stamp(9_000, boot)));
            let mut later = Attempts::new(folder.path());
            assert_eq!(later.wait_ms(&stamp(9_000, boot)), 4_000);
            later.take_back();
            assert_eq!(later.wait_ms(&stamp(9_000, boot)), 2_000);
            later.forget();
            assert_eq!(Attempts::new(folder.path()).wait_ms(&stamp(9_000, boot)), 0);
            assert!(!folder.path().join(ATTEMPTS).exists());
        }
    }

    #[test]
    fn on_one_run_of_the_device_the_wall_clock_is_not_asked() {
        let folder = tempfile::tempdir().unwrap();
        let mut attempts = counted(folder.path(), 5, &stamp(0, Some(("a", 0))));
        for wall in [-1_000_000, 0, 1_000_000] {
            assert_eq!(attempts.wait_ms(&stamp(wall, Some(("a", 1_000)))), 3_000, "{wall}");
        }
    }

    #[test]
    fn after_a_restart_only_the_time_since_it_is_believed() {
        let folder = tempfile::tempdir().unwrap();
        let mut attempts = counted(folder.path(), 5, &stamp(0, Some(("a", 500_000))));
        assert_eq!(attempts.wait_ms(&stamp(1_000_000, Some(("b", 1_500)))), 2_500);
        assert_eq!(attempts.wait_ms(&stamp(-1_000_000, Some(("b", 4_000)))), 0);
    }

    #[test]
    fn without_a_running_clock_a_wall_clock_set_back_delays_no_longer_than_the_wait() {
        let folder = tempfile::tempdir().unwrap();
        let mut attempts = counted(folder.path(), 5, &stamp(1_000_000, None));
        assert_eq!(attempts.wait_ms(&stamp(1_001_000, None)), 3_000);
        assert_eq!(attempts.wait_ms(&stamp(0, None)), 4_000);
        assert_eq!(attempts.wait_ms(&stamp(4_000, None)), 0);
    }

    #[test]
    fn a_file_that_cannot_be_written_or_was_removed_does_not_reset_this_run() {
        let folder = tempfile::tempdir().unwrap();
        let gone = folder.path().join("not here");
        let now = stamp(0, None);
        let mut attempts = counted(&gone, 4, &now);
        assert!(!gone.exists() && attempts.wait_ms(&now) == 2_000);
        let mut attempts = counted(folder.path(), 4, &now);
        fs::remove_file(folder.path().join(ATTEMPTS)).unwrap();
        assert_eq!(attempts.wait_ms(&now), 2_000);
    }

    #[test]
    fn a_file_that_cannot_be_read_keeps_nobody_out() {
        let folder = tempfile::tempdir().unwrap();
        for text in ["", "secundine attempts 1\n9\n", "another\n9\n0\n0\n\n", "secundine attempts 1\n-9\n0\n0\n\n"] {
            fs::write(folder.path().join(ATTEMPTS), text).unwrap();
            assert_eq!(Attempts::new(folder.path()).wait_ms(&stamp(0, None)), 0, "{text}");
        }
    }
}
