//! The phone restarts in the third stage: what the heartbeat knows makes the clock more certain.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::path::Path;
use std::sync::Arc;

use secundine_domain::entry::BirthId;
use secundine_domain::fact::Practice;
use secundine_domain::time::{Boot, Certainty, Stamp};
use secundine_session::api::{ClockView, Request, Response};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};

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
