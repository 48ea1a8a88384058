//! For how long the practice means to keep its records: told, and never acted upon.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

#[path = "common/room.rs"]
mod room;

use room::Room;
use secundine_domain::quantity::Years;
use secundine_session::api::{BirthLine, Request, Response};

const DAY: i64 = 86_400_000;

fn lines(room: &mut Room) -> Vec<BirthLine> {
    let Response::Births { births, .. } = room.session.call(Request::Births { skip: 0, take: 9 }).unwrap() else {
        unreachable!()
    };
    births
}

fn set(room: &mut Room, years: Option<i64>) {
    let years = years.map(|years| Years::new(years).unwrap());
    let Response::SetTerm { years: now } = room.session.call(Request::SetTerm { years }).unwrap() else { unreachable!() };
    assert_eq!(now, years);
    let Response::Term { years: told } = room.session.call(Request::Term).unwrap() else { unreachable!() };
    assert_eq!(told, years);
}

#[test]
fn a_birth_past_the_practices_own_term_is_told_and_stays() {
    let mut room = Room::new(None);
    let past = |room: &mut Room| lines(room).iter().map(|line| line.past_term).collect::<Vec<_>>();
    assert_eq!(past(&mut room), [false], "without a term nothing is past it");
    set(&mut room, Some(25));
    // Twenty-five years have six or seven leap days; the birth was on 25 November 2026.
    room.clock.advance((25 * 365 + 5) * DAY);
    assert_eq!(past(&mut room), [false], "the day before");
    room.clock.advance(DAY);
    assert_eq!(past(&mut room), [true], "on the day");
    assert!(room.view().third_stage.is_some(), "its chart is there as before");
    set(&mut room, Some(26));
    assert_eq!(past(&mut room), [false], "the last term holds");
    set(&mut room, None);
    assert_eq!(past(&mut room), [false]);
}
