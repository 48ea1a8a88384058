//! A practice just founded, with a clock that only the test moves.

#![allow(dead_code, reason = "each test file uses its own part")]

use std::path::Path;
use std::sync::Arc;

use secundine_domain::entry::BirthId;
use secundine_domain::fact::Practice;
use secundine_domain::time::{Boot, Stamp};
use secundine_session::api::{BirthView, Request, Response};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use tempfile::TempDir;

pub const PASSPHRASE: &str = "seven quiet herons";

/// Founds it in this folder; `boot` is the clock that runs through suspend, where the device has one.
pub fn founded(folder: &Path, boot: Option<Boot>) -> (Session, HandClock) {
    let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot });
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    let mut session = Session::new(paths, Arc::new(clock.clone()));
    let (name, practitioner, role) = ("Heron House".to_owned(), "Ida".to_owned(), "midwife".to_owned());
    let practice = Practice { name, practitioner, role, protocol: None };
    session.call(Request::CreatePractice { practice, passphrase: PASSPHRASE.to_owned() }).unwrap();
    (session, clock)
}

/// A baby is born now.
pub fn born(session: &mut Session) -> BirthId {
    let Response::BabyBornNow { birth, .. } = session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
    birth
}

/// A practice with one birth.
pub struct Room {
    pub session: Session,
    pub clock: HandClock,
    pub birth: BirthId,
    _folder: TempDir,
}

impl Room {
    pub fn new(boot: Option<Boot>) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let (mut session, clock) = founded(folder.path(), boot);
        let birth = born(&mut session);
        Self { session, clock, birth, _folder: folder }
    }

    pub fn view(&mut self) -> BirthView {
        let Response::Birth(view) = self.session.call(Request::Birth { birth: self.birth }).unwrap() else { unreachable!() };
        *view
    }
}
