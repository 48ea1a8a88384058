//! A disk that is full, through the one door: it says NOT SAVED, shows only what is saved, and goes on once there is room.
//!
//! The disk is a real one of two megabytes, mounted for this test alone, so the test runs itself once more inside.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod desk;

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use desk::{Desk, Refusal, note, practice};
use secundine_domain::fact::Practice;
use secundine_session::api::{Outgoing, Request, Response};

const INSIDE: &str = "SECUNDINE_TEST_DISK";

#[test]
fn a_full_disk_is_told_and_nothing_is_lost() {
    let Some(disk) = std::env::var_os(INSIDE).map(PathBuf::from) else { return mounted() };
    let ballast = disk.join("ballast");
    fs::write(&ballast, vec![0; 500_000]).unwrap();
    let desk = Desk::new(&disk);
    let refusal = fill(&desk);
    assert!(refusal.read().starts_with("not_saved error-full: "), "{}", refusal.read());
    let before = desk.entries(desk.birth);
    assert!(before.len() > 50, "{}", before.len());

    let another = Practice { practitioner: "Not saved ".repeat(500), ..practice() };
    let described = desk.call(Request::DescribePractice { practice: another });
    assert_eq!(Refusal::from(described.unwrap_err()).code, "not_saved");
    let Response::Status(status) = desk.call(Request::Status).unwrap() else { unreachable!() };
    assert_eq!(status.practice, Some(practice()), "what is not saved is not shown");
    assert!(status.low_space);

    let printed = desk.call(Request::WriteFile { birth: desk.birth, file: Outgoing::Record, language: None });
    let refusal = Refusal::from(printed.unwrap_err());
    assert_eq!((refusal.code.as_str(), refusal.message.id.as_str()), ("not_saved", "error-record-not-written"));

    fs::remove_file(&ballast).unwrap();
    desk.record(desk.birth, note("there is room again")).unwrap();
    desk.call(Request::Lock).unwrap();
    desk.unlock().unwrap();
    let after = desk.entries(desk.birth);
    assert_eq!(after[..before.len()], before);
    assert_eq!(after.len(), before.len() + 1);
}

/// Records until it is refused; one more is then refused as well.
fn fill(desk: &Desk) -> Refusal {
    for n in 0..5_000 {
        let recorded = desk.record(desk.birth, note(&format!("{n:0>1500}")));
        if let Err(error) = recorded {
            assert!(desk.record(desk.birth, note(&"x".repeat(9_000))).is_err());
            return error.into();
        }
    }
    unreachable!("the disk does not fill up")
}

fn mounted() {
    let folder = tempfile::tempdir().unwrap();
    let disk = folder.path().to_str().unwrap();
    let mount = r#"mount -t tmpfs -o size=2m small "$0" && exec "$@""#;
    // A mount and user namespace of its own: no rights are needed, and the disk is gone when the test ends.
    let output = Command::new("unshare")
        .args(["--user", "--map-root-user", "--mount", "sh", "-c", mount, disk])
        .arg(std::env::current_exe().unwrap())
        .args(["--exact", "a_full_disk_is_told_and_nothing_is_lost", "--nocapture"])
        .env(INSIDE, disk)
        .output();
    let output =
        output.unwrap_or_else(|error| unreachable!("`unshare` cannot be run ({error}): install the Debian package util-linux"));
    let said = String::from_utf8_lossy(&output.stdout);
    assert!(output.status.success() && said.contains("1 passed"), "{said}\n{}", String::from_utf8_lossy(&output.stderr));
}
