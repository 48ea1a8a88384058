//! What can happen in a night.

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{Answer, Apgar, Fact, Loss, MotherObservation};
use secundine_domain::quantity::{ApgarPart, HeartRate, Minutes, Volume};
use secundine_domain::time::Precision;
use secundine_session::api::{At, ErrorCode, LockedMark, Request, Response};

use super::model::{When, calendar};
use super::world::{Pending, World};

/// Most births of one night.
const BIRTHS: usize = 4;

pub fn something_happens(world: &mut World) {
    let still = match world.chance.below(12) {
        0 => world.chance.between(600_000, 3_600_000),
        _ => world.chance.between(1_000, 180_000),
    };
    world.wait(still);
    match world.chance.below(40) {
        0 => world.restart(None),
        1 => {
            let off_ms = world.chance.between(20_000, 1_200_000);
            world.restart(Some(off_ms));
        }
        2 => set_the_wall_clock(world),
        3 => another_zone(world),
        _ if world.locked.is_some() => locked(world),
        4..7 => lock(world),
        7 => refusals(world),
        8..11 if world.model.births.len() < BIRTHS => begin(world),
        11..14 => amend(world),
        14..16 => retract(world),
        16 => sign(world),
        17 => {
            world.look();
        }
        _ => record(world),
    }
}

/// Unlocked where it was not, looked at, checked, and opened once more.
pub fn ends(world: &mut World) {
    if world.locked.is_some() {
        world.open();
    }
    world.restart(None);
    let Response::Verify(verified) = world.call(Request::Verify) else { unreachable!() };
    assert!(verified.ok, "{verified:?}");
}

fn set_the_wall_clock(world: &mut World) {
    let by_ms = world.chance.one_of(&[-7_200_000, -600_000, -30_000, 45_000, 900_000, 10_800_000]);
    world.settings += 1;
    world.clock.change(|stamp| stamp.wall_ms += by_ms);
}

fn another_zone(world: &mut World) {
    let (zone, offset_min) = world.chance.one_of(&[
        ("Europe/Amsterdam", 120),
        ("Europe/Amsterdam", 60),
        ("Asia/Kathmandu", 345),
        ("America/New_York", -240),
    ]);
    world.clock.change(|stamp| (stamp.zone, stamp.offset_min) = (Some(zone.to_owned()), offset_min));
}

fn begin(world: &mut World) {
    let ago_ms = world.ago_ms();
    let now = When::Marked(world.mark(0));
    let protocol = Fact::ProtocolChosen { protocol: "who".to_owned(), own: None };
    if world.chance.once_in(4) {
        let label = format!("waiting {}", world.model.births.len());
        let Response::RegisterBirth { birth } = world.call(Request::RegisterBirth { label: label.clone() }) else {
            unreachable!()
        };
        world.model.write(birth.0, birth, Fact::BirthRegistered { label, rehearsal: false }, now.clone());
        world.model.write(after(birth.0, 1), birth, protocol, now);
        return;
    }
    let Response::BabyBornNow { birth, entry } = world.call(Request::BabyBornNow { ago_ms }) else { unreachable!() };
    assert_eq!(entry, after(birth.0, 1));
    let born = When::Marked(world.mark(ago_ms));
    let (date, clock) = born.shown();
    let label = format!("{date} {}", &clock[..5]);
    world.model.write(birth.0, birth, Fact::BirthRegistered { label, rehearsal: false }, born.clone());
    world.model.write(entry, birth, Fact::BabyBorn { baby: 1 }, born);
    world.model.write(after(birth.0, 2), birth, protocol, now);
    world.latest = Some(birth);
}

fn after(entry: EntryId, by: u64) -> EntryId {
    EntryId { n: entry.n + by, ..entry }
}

/// Mostly the birth that was worked with last.
fn some_birth(world: &mut World) -> Option<BirthId> {
    match world.latest {
        Some(latest) if !world.chance.once_in(4) => Some(latest),
        _ => (!world.model.births.is_empty()).then(|| world.chance.one_of(&world.model.births)),
    }
}

fn record(world: &mut World) {
    let Some(birth) = some_birth(world) else { return begin(world) };
    let fact = if world.chance.once_in(2) { a_mark(world, birth) } else { Some(a_finding(world)) };
    let Some(fact) = fact else { return };
    let (at, when) = world.at();
    let Response::Record { entry } = world.call(Request::Record { birth, fact: fact.clone(), at }) else { unreachable!() };
    world.model.write(entry, birth, fact, when);
    world.latest = Some(birth);
}

/// A mark that does not stand yet; now and then a twin.
fn a_mark(world: &mut World, birth: BirthId) -> Option<Fact> {
    let babies = world.model.babies(birth);
    let next = babies.last().map_or(1, |last| last + 1);
    if babies.is_empty() || (next <= 3 && world.chance.once_in(8)) {
        return Some(Fact::BabyBorn { baby: next });
    }
    let delivered: Vec<u8> = world.model.delivered(birth).collect();
    let waiting: Vec<u8> = babies.iter().copied().filter(|baby| !delivered.contains(baby)).collect();
    let baby = world.chance.one_of(&babies.iter().copied().collect::<Vec<_>>());
    let mut marks = vec![
        Fact::CordPulsationStopped { baby },
        Fact::CordClamped { baby },
        Fact::CordCut { baby },
        Fact::MembranesBorn { babies: vec![baby] },
    ];
    if let Some(first) = waiting.first() {
        // One placenta for all that wait, or for one.
        marks.push(Fact::PlacentaBorn { babies: if world.chance.once_in(2) { waiting.clone() } else { vec![*first] } });
    }
    marks.retain(|fact| world.model.standing(birth).all(|written| written.fact != *fact));
    (!marks.is_empty()).then(|| world.chance.one_of(&marks))
}

fn a_finding(world: &mut World) -> Fact {
    let chance = &mut world.chance;
    let volume = Volume::new(chance.between(0, 900)).unwrap();
    match chance.below(6) {
        0 => Fact::BloodLoss(Loss::Jug { volume }),
        1 => Fact::BloodLoss(Loss::Seen { volume }),
        2 => {
            let pulse = Some(HeartRate::new(chance.between(50, 140)).unwrap());
            Fact::MotherObserved(MotherObservation { pulse, ..MotherObservation::default() })
        }
        3 => {
            let (item, option) = chance.one_of(&[("lobes", "meet"), ("amnion", "whole"), ("chorion", "whole")]);
            Fact::Examined {
                placenta: 1,
                item: item.to_owned(),
                cord: None,
                answer: Answer::Choice { option: option.to_owned() },
            }
        }
        4 => {
            let mut part = || ApgarPart::new(chance.between(0, 2)).unwrap();
            let (colour, heart_rate, reflex, tone, breathing) = (part(), part(), part(), part(), part());
            Fact::ApgarScored(Apgar { baby: 1, minute: Minutes::new(5).unwrap(), colour, heart_rate, reflex, tone, breathing })
        }
        _ => Fact::Noted { text: format!("note {}", chance.below(1_000_000)) },
    }
}

/// A line that can be amended. Marks that were taken out stay out, so that none stands twice.
fn some_line(world: &mut World, taken_out_too: bool) -> Option<(BirthId, EntryId)> {
    let lines = world.model.written.iter().filter(|(_, written)| match &written.fact {
        Fact::Signed { .. } | Fact::BirthRegistered { .. } | Fact::ProtocolChosen { .. } => false,
        Fact::BloodLoss(_) | Fact::Noted { .. } => taken_out_too || !written.retracted,
        _ => !written.retracted,
    });
    let lines: Vec<_> = lines.map(|(entry, written)| (written.birth, *entry)).collect();
    (!lines.is_empty()).then(|| world.chance.one_of(&lines))
}

fn amend(world: &mut World) {
    let Some((birth, entry)) = some_line(world, true) else { return };
    let loss = Fact::BloodLoss(Loss::Jug { volume: Volume::new(world.chance.between(0, 900)).unwrap() });
    let is_loss = matches!(world.model.written[&entry].fact, Fact::BloodLoss(_));
    let fact = (is_loss && !world.chance.once_in(3)).then_some(loss);
    let at = world.chance.once_in(2).then(|| world.at());
    let (at, when) = at.unzip();
    let reason = "read again".to_owned();
    let Response::Amend { .. } = world.call(Request::Amend { birth, entry, fact: fact.clone(), at, reason }) else {
        unreachable!()
    };
    let written = world.model.written.get_mut(&entry).unwrap();
    written.amended += 1;
    written.retracted = false;
    written.fact = fact.unwrap_or_else(|| written.fact.clone());
    written.when = when.unwrap_or_else(|| written.when.clone());
    world.latest = Some(birth);
}

fn retract(world: &mut World) {
    let Some((birth, entry)) = some_line(world, false) else { return };
    let retract = || Request::Retract { birth, entry, reason: "a slip".to_owned() };
    world.call(retract());
    world.refused(retract(), ErrorCode::Impossible);
    let written = world.model.written.get_mut(&entry).unwrap();
    written.amended += 1;
    written.retracted = true;
    world.latest = Some(birth);
}

fn sign(world: &mut World) {
    let Some(birth) = some_birth(world) else { return };
    let version = world.view(birth).version;
    let Response::Sign { entry } = world.call(Request::Sign { birth, signer: None }) else { unreachable!() };
    let (name, role) = (super::PRACTITIONER.to_owned(), "midwife".to_owned());
    let now = When::Marked(world.mark(0));
    world.model.write(entry, birth, Fact::Signed { name, role, version }, now);
}

fn refusals(world: &mut World) {
    let Some(birth) = some_birth(world) else { return };
    let now = world.mark(0).stamp;
    let (date, clock) = calendar(now.wall_ms + i64::from(now.offset_min) * 60_000 + 7_200_000);
    let note = || Fact::Noted { text: "not yet".to_owned() };
    let at = At::Typed { date, clock: clock[..5].to_owned(), precision: Precision::Exact };
    world.refused(Request::Record { birth, fact: note(), at }, ErrorCode::Impossible);
    let entry = EntryId { n: 9_999_999, ..birth.0 };
    world.refused(Request::Retract { birth, entry, reason: "none".to_owned() }, ErrorCode::NotFound);
    world.refused(Request::Record { birth: BirthId(entry), fact: note(), at: At::Now { ago_ms: 0 } }, ErrorCode::NotFound);
    world.look();
}

fn lock(world: &mut World) {
    // What is looked at last is carried into the lock where its third stage runs.
    let latest = some_birth(world);
    if let Some(birth) = latest {
        world.view(birth);
    }
    world.call(Request::Lock);
    world.locked = Some(latest.filter(|birth| world.model.third_stage_runs(*birth)));
    world.latest = None;
}

fn locked(world: &mut World) {
    match world.chance.below(8) {
        0 | 1 => world.open(),
        2 => undo(world),
        _ => mark_while_locked(world),
    }
}

fn mark_while_locked(world: &mut World) {
    let baby = 1;
    let marks = [
        LockedMark::BabyBorn,
        LockedMark::CordPulsationStopped { baby },
        LockedMark::CordClamped { baby },
        LockedMark::CordCut { baby },
        LockedMark::PlacentaBorn { babies: vec![baby] },
        LockedMark::MembranesBorn { babies: vec![baby] },
        LockedMark::Moment,
    ];
    let mark = world.chance.one_of(&marks);
    let (ago_ms, birth) = (world.ago_ms(), world.locked.flatten());
    let Response::LockedMark(view) = world.call(Request::LockedMark { mark: mark.clone(), ago_ms }) else { unreachable!() };
    assert!(!view.failed);
    let (when, written) = (When::Marked(world.mark(ago_ms)), When::Marked(world.mark(0)));
    world.pending.push(Pending { mark, when, written, undone: false, birth });
    assert_eq!(view.marks.len(), world.pending.len() - world.forgotten);
}

/// Takes back the last mark that stands and that this run of the program has made.
fn undo(world: &mut World) {
    let forgotten = world.forgotten;
    let Some(last) = world.pending.iter_mut().skip(forgotten).rev().find(|one| !one.undone) else {
        return world.refused(Request::LockedUndo, ErrorCode::NotFound);
    };
    last.undone = true;
    world.call(Request::LockedUndo);
}
