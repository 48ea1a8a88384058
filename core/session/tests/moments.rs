//! Moments that are named later, touches that came again, and what is told before a birth.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use secundine_domain::entry::EntryId;
use secundine_domain::fact::Fact;
use secundine_domain::time::Boot;
use secundine_session::api::{At, DeviceTold, LineView, Request, Response, Standing, Thing};

#[path = "common/backed.rs"]
mod backed;
#[path = "common/room.rs"]
mod room;

use backed::back_up;
use room::Room;

/// On a device whose clock runs through suspend.
fn timed() -> Room {
    Room::new(Some(Boot { id: "a".to_owned(), since_ms: 1_000_000 }))
}

impl Room {
    fn mark(&mut self, fact: Fact) -> EntryId {
        self.clock.advance(60_000);
        let request = Request::Record { birth: self.birth, fact, at: At::Now { ago_ms: 0 } };
        let Response::Record { entry } = self.session.call(request).unwrap() else { unreachable!() };
        entry
    }

    fn line(&mut self, entry: EntryId) -> LineView {
        self.view().timeline.into_iter().find(|line| line.entry == entry).unwrap()
    }

    fn standing(&mut self, thing: Thing) -> Standing {
        let request = Request::BeforeBirth { device: DeviceTold::default() };
        let Response::BeforeBirth { things } = self.session.call(request).unwrap() else { unreachable!() };
        things.into_iter().find(|view| view.thing == thing).unwrap().standing
    }
}

#[test]
fn a_moment_gets_its_name_and_keeps_its_time() {
    let mut room = timed();
    let moment = room.mark(Fact::MomentMarked);
    let before = room.line(moment);
    assert!(before.unnamed);
    room.clock.advance(300_000);
    let fact = Some(Fact::CordClamped { baby: 1 });
    room.session
        .call(Request::Amend { birth: room.birth, entry: moment, fact, at: None, reason: "Named later".to_owned() })
        .unwrap();
    let named = room.line(moment);
    assert_eq!((named.unnamed, &named.clock, named.earlier.len()), (false, &before.clock, 1));
    assert_eq!(room.view().babies[0].clamped.as_ref().unwrap().clock, before.clock);
}

#[test]
fn a_touch_that_came_again_stands_beside_its_mark_and_changes_nothing() {
    let mut room = timed();
    let clamped = room.mark(Fact::CordClamped { baby: 1 });
    let (lines, babies) = (room.view().timeline.len(), format!("{:?}", room.view().babies));
    room.mark(Fact::TouchedAgain { entry: clamped, after_ms: 430 });
    let view = room.view();
    assert_eq!((view.timeline.len(), format!("{:?}", view.babies)), (lines, babies));
    let again = room.line(clamped).again;
    assert_eq!(again.len(), 1);
    assert_eq!(serde_json::to_value(&again[0].args["seconds"]).unwrap(), serde_json::json!(0.43));
    // Of a mark that is not here it still is told.
    let elsewhere = EntryId { n: clamped.n + 900, ..clamped };
    room.mark(Fact::TouchedAgain { entry: elsewhere, after_ms: 430 });
    assert_eq!(room.view().timeline.len(), lines + 1);
}

#[test]
fn a_clock_that_was_set_shows_before_a_birth() {
    let mut room = timed();
    room.view();
    assert_eq!(room.standing(Thing::Clock), Standing::InPlace);
    room.clock.advance(3_600_000);
    assert_eq!(room.standing(Thing::Clock), Standing::InPlace);
    room.clock.change(|stamp| stamp.wall_ms -= 5_000);
    assert_eq!(room.standing(Thing::Clock), Standing::NotInPlace);
    assert_eq!(room.standing(Thing::Backup), Standing::NotInPlace);
    back_up(&mut room.session);
    assert_eq!(room.standing(Thing::Backup), Standing::InPlace);
    assert_eq!((room.standing(Thing::Protocol), room.standing(Thing::Battery)), (Standing::NotInPlace, Standing::CannotTell));
}
