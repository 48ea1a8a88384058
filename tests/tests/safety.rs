//! The safety file in `tests/safety` is kept true: each control names tests that exist and run; each threshold, screen and request has
//! its hazard, or a reason why it bears none; what its pages name is there.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

#[path = "safety/evidence.rs"]
mod evidence;
#[path = "safety/log.rs"]
mod log;
#[path = "safety/pages.rs"]
mod pages;
#[path = "safety/program.rs"]
mod program;

use std::fs;
use std::path::PathBuf;

use log::Log;
use program::Program;

/// The top of the source.
fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn hazards() -> String {
    fs::read_to_string(root().join("tests/safety/hazards.toml")).unwrap()
}

#[test]
fn each_hazard_is_held_by_tests_that_run() {
    let wrong = Log::read(&hazards()).unwrap().unproved(&root());
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn each_threshold_screen_and_request_has_its_hazard_or_a_reason_for_none() {
    let wrong = Log::read(&hazards()).unwrap().unplaced(&Program::read(&root()));
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn each_threshold_that_ships_has_its_source_and_status() {
    let wrong = program::unsourced(&root());
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn what_the_pages_name_is_there() {
    let wrong: Vec<String> = pages::ALL.iter().flat_map(|page| pages::faults(&root(), page)).collect();
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn each_group_of_masvs_has_its_evidence() {
    let wrong = pages::masvs(&fs::read_to_string(root().join("tests/safety/threats.md")).unwrap());
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn a_link_that_breaks_is_told_with_what_to_do() {
    let text = hazards();
    let told = |from: &str, to: &str| {
        assert!(text.contains(from), "{from}");
        let log = Log::read(&text.replacen(from, to, 1)).unwrap();
        [log.unproved(&root()), log.unplaced(&Program::read(&root()))].concat().join("\n")
    };
    let birth = r#"  "tests/tests/kill.rs::no_acknowledged_entry_is_lost_and_the_clock_runs_on","#;
    let gone = told(birth, r#"  "tests/tests/kill.rs::nothing_is_lost","#);
    assert!(gone.contains("birth-time-lost") && gone.contains("no test of that name"), "{gone}");
    let moved = told(birth, r#"  "tests/tests/killed.rs::no_acknowledged_entry_is_lost_and_the_clock_runs_on","#);
    assert!(moved.contains("no such file"), "{moved}");
    let aside = told(birth, r#"  "tests/faults/tests/power.rs::the_power_goes_anywhere_in_many_births","#);
    assert!(aside.contains("make test passes it over"), "{aside}");
    let empty = told("tests = [\"core/session/tests/bands.rs::births_one_after_the_other_never_share_a_band\"]", "tests = []");
    assert!(empty.contains("wrong-birth-or-baby") && empty.contains("names no test"), "{empty}");
    for (from, kind) in [("\"SetServer\", ", "request"), ("\"completeness\",\n", "threshold"), ("\"screens/Check\", ", "screen")]
    {
        let left =
            Log::read(&text.replace(from, "").replace(", \"completeness\"", "").replace("[\"completeness\"]", "[]")).unwrap();
        let left = left.unplaced(&Program::read(&root())).join("\n");
        assert!(left.contains(kind) && left.contains("tests/safety/hazards.toml"), "{left}");
    }
    let strange = told("\"SetServer\", ", "\"SetServers\", ");
    assert!(strange.contains("there is no request SetServers"), "{strange}");
    let unread = Log::read(&text.replacen("severity = ", "gravity = ", 1)).err().unwrap();
    assert!(unread.contains("severity"), "{unread}");
}
