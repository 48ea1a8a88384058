//! The pages of the safety file: what stands between backticks and has a slash in it is a file, a folder or a test of ours.

use std::fs;
use std::path::Path;

use crate::evidence::missing;

/// Pages whose links are held.
pub const ALL: &[&str] = &[
    "SECURITY.md",
    "tests/safety/README.md",
    "tests/safety/intended-use.md",
    "tests/safety/qualification.md",
    "tests/safety/threats.md",
    "tests/safety/data-map.md",
];

/// The groups of OWASP MASVS, version 2.
const GROUPS: [&str; 8] = ["STORAGE", "CRYPTO", "AUTH", "NETWORK", "PLATFORM", "CODE", "RESILIENCE", "PRIVACY"];

/// What a page names in backticks as a place of the source.
fn named(text: &str) -> impl Iterator<Item = &str> {
    text.split('`').skip(1).step_by(2).filter(|quoted| quoted.contains('/') && !quoted.contains(['*', '\n', '…']))
}

/// What a page names that is not there.
pub fn faults(root: &Path, page: &str) -> Vec<String> {
    let Ok(text) = fs::read_to_string(root.join(page)) else {
        return vec![format!("{page} is missing: the safety file needs it")];
    };
    let gone = |place: &str| match place.contains("::") {
        true => missing(root, place),
        false => (!root.join(place).exists()).then_some("there is no such file"),
    };
    named(&text)
        .filter_map(|place| Some(format!("{page}: {place}: {}. Put right what it says, or what it names", gone(place)?)))
        .collect()
}

/// Groups without a row, or whose row names no test or file.
pub fn masvs(text: &str) -> Vec<String> {
    let row = |group: &&str| text.lines().find(|line| line.starts_with(&format!("| {group} ")));
    let lacking = GROUPS.iter().filter(|group| row(group).is_none_or(|line| named(line).next().is_none()));
    lacking
        .map(|group| format!("tests/safety/threats.md: {group} of OWASP MASVS has no evidence: name a test or a file in its row"))
        .collect()
}
