//! The phone restarts in the third stage: what the heartbeat knows makes the clock more certain.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

use std::path::Path;
use std::sync::Arc;

use secundine_domain::entry::{BirthId, Entry};
use secundine_domain::fact::Practice;
use secundine_domain::time::{Boot, Certainty, Occurred, Stamp};
use secundine_record::fhir;
use secundine_session::api::{ClockView, LockedMark, Outgoing, Request, Response};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use secundine_store::{Extract, RUN};

const PASSPHRASE: &str = "lantern kettle bicycle";
const MINUTE: i64 = 60_000;

fn session(folder: &Path, clock: &HandClock) -> Session {
    Session::new(Paths { data: folder.join("data"), records: folder.join("records") }, Arc::new(clock.clone()))
}

fn third_stage(session: &mut Session, birth: BirthId) -> ClockView {
    let Response::Birth(view) = session.call(Request::Birth { birth }).unwrap() else { unreachable!() };
    view.third_stage.unwrap()
}

/// A birth, eight minutes with or without the birth on the screen, two minutes off, and the wall set back while off.
/// Gives the clock one minute after the restart.
fn after_restart(looked_at: bool, set_back: i64) -> ClockView {
    let folder = tempfile::tempdir().unwrap();
    let boot = |id: &str, since_ms| Some(Boot { id: id.to_owned(), since_ms });
    let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 0, zone: None, boot: boot("first", 9_000_000) });
    let mut door = session(folder.path(), &clock);
    let practice = Practice { name: "P".to_owned(), practitioner: "A".to_owned(), role: "midwife".to_owned(), protocol: None };
    door.call(Request::CreatePractice { practice, passphrase: PASSPHRASE.to_owned() }).unwrap();
    let Response::BabyBornNow { birth, .. } = door.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
    for _ in 0..8 {
        clock.advance(MINUTE);
        if looked_at {
            assert_eq!(third_stage(&mut door, birth).certainty, Certainty::Measured);
        }
    }
    drop(door);
    clock.change(|stamp| {
        stamp.wall_ms += 2 * MINUTE - set_back;
        stamp.boot = boot("second", 0);
    });
    let mut door = session(folder.path(), &clock);
    clock.advance(MINUTE);
    door.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    third_stage(&mut door, birth)
}

#[test]
fn with_the_wall_right_the_clock_is_right_and_says_whence() {
    let clock = after_restart(true, 0);
    assert_eq!((clock.elapsed_ms, clock.certainty), (11 * MINUTE, Certainty::AcrossRestart));
}

#[test]
fn with_the_wall_set_back_the_heartbeat_holds_what_is_certain() {
    let clock = after_restart(true, 60 * MINUTE);
    // Eight minutes seen before the restart and one after it; the two in between cannot be known.
    assert_eq!((clock.elapsed_ms, clock.certainty), (9 * MINUTE, Certainty::AtLeast));
    assert!(clock.running);
}

#[test]
fn without_a_heartbeat_less_is_certain() {
    let clock = after_restart(false, 60 * MINUTE);
    assert_eq!((clock.elapsed_ms, clock.certainty), (MINUTE, Certainty::AtLeast));
}

/// Names of runs and readings of the running clock in these entries.
fn boots(entries: &[Entry]) -> Vec<Boot> {
    let marked = |entry: &Entry| match &entry.occurred {
        Occurred::Marked(stamp) => stamp.boot.clone(),
        Occurred::Typed { .. } => None,
    };
    entries.iter().flat_map(|entry| [entry.recorded.boot.clone(), marked(entry)]).flatten().collect()
}

#[test]
fn nothing_that_leaves_names_the_run_of_the_phone_or_how_long_it_was_on() {
    const RAW: &str = "0b7d0c5e-6a53-4a8e-b9a6-1c1f6f1f6c1f";
    const ON: i64 = 987_654_321_000;
    let folder = tempfile::tempdir().unwrap();
    let boot = Some(Boot { id: RAW.to_owned(), since_ms: ON });
    let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 0, zone: None, boot });
    let mut door = session(folder.path(), &clock);
    let practice = Practice { name: "P".to_owned(), practitioner: "A".to_owned(), role: "midwife".to_owned(), protocol: None };
    door.call(Request::CreatePractice { practice, passphrase: PASSPHRASE.to_owned() }).unwrap();
    let Response::BabyBornNow { birth, .. } = door.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
    // In the next run of the program, and while locked, it is the same run of the phone.
    drop(door);
    clock.advance(MINUTE);
    let mut door = session(folder.path(), &clock);
    door.call(Request::LockedMark { mark: LockedMark::PlacentaBorn { babies: vec![1] }, ago_ms: 0 }).unwrap();
    clock.advance(MINUTE);
    door.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    let clock_now = third_stage(&mut door, birth);
    assert_eq!((clock_now.elapsed_ms, clock_now.certainty), (MINUTE, Certainty::Measured));

    let mut read = |file: Outgoing| {
        let written = door.call(Request::WriteFile { birth, file, language: None }).unwrap();
        let Response::WriteFile { path, .. } = written else { unreachable!() };
        let bytes = std::fs::read(path).unwrap();
        let text = String::from_utf8_lossy(&bytes);
        // Whole minutes passed, so the raw clock would begin and end so.
        assert!(!text.contains(RAW) && !text.contains("9876543") && !text.contains("98776"), "{file:?}");
        bytes
    };
    for file in [Outgoing::Csv, Outgoing::Record, Outgoing::Transfer, Outgoing::Parents] {
        read(file);
    }
    let from_bundle = fhir::read(&read(Outgoing::Fhir { photos: false })).unwrap();
    let extract = Extract::read(read(Outgoing::Entries).as_slice()).unwrap();
    let from_archive: Vec<Entry> = extract.births[&birth].iter().map(|stored| stored.entry.clone()).collect();
    assert_eq!(from_bundle, from_archive);
    let boots = boots(&from_archive);
    assert!(boots.len() > 4);
    for boot in &boots {
        assert!(boot.id == boots[0].id && boot.id != RAW, "{boot:?}");
        assert!((60 * MINUTE..=62 * MINUTE).contains(&boot.since_ms), "an hour of it before it was first read: {boot:?}");
    }
    let kept = std::fs::read_to_string(folder.path().join("data").join(RUN)).unwrap();
    assert!(!kept.contains(RAW), "not on the phone either");
}
