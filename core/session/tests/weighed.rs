//! The kinds of items that were weighed before are offered with their dry weights.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{Fact, Loss};
use secundine_domain::quantity::ItemWeight;
use secundine_session::Session;
use secundine_session::api::{At, Request, Response};
use secundine_session::clock::HandClock;

#[path = "common/room.rs"]
mod room;

use room::founded;

fn born(session: &mut Session, clock: &HandClock) -> BirthId {
    clock.advance(60_000);
    room::born(session)
}

fn weigh(session: &mut Session, birth: BirthId, item: &str, dry: i64) -> EntryId {
    let weight = |grams| ItemWeight::new(grams).unwrap();
    let fact = Fact::BloodLoss(Loss::Weighed { item: item.to_owned(), gross: weight(dry + 100), dry: weight(dry) });
    let at = At::Now { ago_ms: 0 };
    let Response::Record { entry } = session.call(Request::Record { birth, fact, at }).unwrap() else { unreachable!() };
    entry
}

fn offered(session: &mut Session) -> Vec<(String, u32)> {
    let Response::WeighedItems { items } = session.call(Request::WeighedItems).unwrap() else { unreachable!() };
    items.into_iter().map(|known| (known.item, known.dry.get())).collect()
}

#[test]
fn each_kind_is_offered_once_with_its_latest_dry_weight() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, clock) = founded(folder.path(), None);
    assert_eq!(offered(&mut session), []);

    let first = born(&mut session, &clock);
    weigh(&mut session, first, "large pad", 40);
    weigh(&mut session, first, "towel", 300);
    weigh(&mut session, first, " ", 15);
    let second = born(&mut session, &clock);
    weigh(&mut session, second, " large pad ", 45);
    let wrong = weigh(&mut session, second, "sheet", 800);
    let pairs = |list: &[(&str, u32)]| list.iter().map(|(item, dry)| ((*item).to_owned(), *dry)).collect::<Vec<_>>();
    assert_eq!(offered(&mut session), pairs(&[("sheet", 800), ("large pad", 45), ("towel", 300)]));

    let reason = "not weighed".to_owned();
    session.call(Request::Retract { birth: second, entry: wrong, reason }).unwrap();
    assert_eq!(offered(&mut session), pairs(&[("large pad", 45), ("towel", 300)]), "what was taken out is not offered");
    for n in 1..=9 {
        weigh(&mut session, second, &format!("cloth {n}"), n);
    }
    let kinds: Vec<String> = offered(&mut session).into_iter().map(|(item, _)| item).collect();
    assert_eq!(kinds, ["cloth 9", "cloth 8", "cloth 7", "cloth 6", "cloth 5", "cloth 4"]);
}
