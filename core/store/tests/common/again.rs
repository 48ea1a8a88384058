//! Runs a test once more inside a harsher world, and fills a store there.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use secundine_domain::entry::{BirthId, Entry, EntryId};
use secundine_domain::fact::Fact;
use secundine_store::{Store, StoreError};

use super::entry;

const INSIDE: &str = "SECUNDINE_TEST_INSIDE";

/// Runs one test of this file again, inside what the command around it sets up, with a folder in its environment.
pub fn once_more(test: &str, folder: &Path, around: &[&str]) -> Output {
    let (tool, args) = around.split_first().unwrap();
    let mut command = Command::new(tool);
    command.args(args).arg(std::env::current_exe().unwrap()).args(["--exact", test, "--nocapture"]).env(INSIDE, folder);
    let missing = "install the Debian package that has it (util-linux, strace)";
    command.output().unwrap_or_else(|error| unreachable!("`{tool}` cannot be run ({error}): {missing}"))
}

/// The same for a test that has to pass there.
pub fn again(test: &str, folder: &Path, around: &[&str]) {
    let output = once_more(test, folder, around);
    let said = String::from_utf8_lossy(&output.stdout);
    assert!(output.status.success() && said.contains("1 passed"), "{said}\n{}", String::from_utf8_lossy(&output.stderr));
}

/// The folder, inside.
pub fn inside() -> Option<PathBuf> {
    std::env::var_os(INSIDE).map(PathBuf::from)
}

/// Appends notes until one is refused; gives the numbers that were acknowledged, and the refusal.
pub fn fill(store: &mut Store, birth: BirthId) -> (Vec<u64>, StoreError) {
    let mut acknowledged = Vec::new();
    loop {
        match store.append(&note(store.next_id(), birth)) {
            Ok(stored) => acknowledged.push(stored.entry.id.n),
            Err(error) => return (acknowledged, error),
        }
        assert!(acknowledged.len() < 10_000, "the disk does not fill up");
    }
}

pub fn note(id: EntryId, birth: BirthId) -> Entry {
    entry(id, birth, 1_795_570_800_000, Fact::Noted { text: format!("{:0>1500}", id.n) })
}

/// Opens by an identity that lies in the folder itself.
pub fn open(folder: &Path) -> Store {
    let recovery = fs::read_to_string(folder.join("identity")).unwrap();
    Store::open_with_identity(folder, &recovery.into()).unwrap()
}
