//! Works in a practice as fast as it can and says what was acknowledged, until it is killed.
//!
//! `scribe FOLDER SECRET SEED BIRTH...` first tells what it finds of these births, then records new ones. Every line of its
//! output is flushed: `seen` and `clock` for what it finds, `born` and `ack` for what was answered.
//!
//! `scribe FOLDER SECRET script` plays one birth from the opening to the signature, always the same, and ends. It says
//! `opening` first, `locked` for a mark that was answered while locked, and `unlocked`.

#![allow(clippy::print_stdout, reason = "its output is what it is for")]

use std::io::Write;
use std::path::PathBuf;
use std::sync::Arc;
use std::time::Duration;

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{Answer, Fact, Loss, MotherObservation};
use secundine_domain::quantity::{HeartRate, Volume};
use secundine_session::api::{ApiError, At, ErrorCode, LockedMark, Request, Response};
use secundine_session::clock::SystemClock;
use secundine_session::{Paths, Session};

type Failure = Box<dyn std::error::Error>;

fn main() -> Result<(), Failure> {
    let mut args = std::env::args().skip(1);
    let mut next = || args.next().ok_or("scribe FOLDER SECRET SEED BIRTH...");
    let folder = PathBuf::from(next()?);
    let passphrase = next()?;
    let work_is = next()?;
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    if work_is == "script" {
        say("opening")?;
        return script(&mut Session::new(paths, Arc::new(SystemClock::new())), &passphrase);
    }
    let seed: u64 = work_is.parse()?;
    let mut session = Session::new(paths, Arc::new(SystemClock::new()));
    unlock(&mut session, &passphrase)?;
    for birth in args {
        report(&mut session, BirthId(birth.parse::<EntryId>()?))?;
    }
    say("reported")?;
    for round in seed.. {
        work(&mut session, round)?;
    }
    Ok(())
}

/// Tells every entry of a birth and its clock.
fn report(session: &mut Session, birth: BirthId) -> Result<(), Failure> {
    let Response::Birth(view) = call(session, Request::Birth { birth })? else { return Err("no birth".into()) };
    for line in &view.timeline {
        say(&format!("seen {} {} {}", birth.0, line.entry, kind(&line.fact)?))?;
    }
    let stage = view.third_stage.ok_or("no clock")?;
    say(&format!("clock {} {} {}", birth.0, stage.elapsed_ms, stage.running))
}

/// One birth; every second one keeps its placenta, so that its clock runs on.
fn work(session: &mut Session, round: u64) -> Result<(), Failure> {
    let birth = born(session, 0)?;
    for fact in facts(round.is_multiple_of(2))? {
        record(session, birth, fact, 0)?;
    }
    acknowledged(session, birth, "signed", Request::Sign { birth, signer: None }).map(|_| ())
}

fn born(session: &mut Session, ago_ms: u32) -> Result<BirthId, Failure> {
    let Response::BabyBornNow { birth, entry } = call(session, Request::BabyBornNow { ago_ms })? else {
        return Err("not born".into());
    };
    say(&format!("born {} {entry} baby_born", birth.0))?;
    Ok(birth)
}

fn record(session: &mut Session, birth: BirthId, fact: Fact, ago_ms: u32) -> Result<EntryId, Failure> {
    let kind = kind(&fact)?;
    acknowledged(session, birth, &kind, Request::Record { birth, fact, at: At::Now { ago_ms } })
}

/// Writes one entry, and says so once it is answered.
fn acknowledged(session: &mut Session, birth: BirthId, kind: &str, request: Request) -> Result<EntryId, Failure> {
    let (Response::Record { entry } | Response::Amend { entry } | Response::Sign { entry }) = call(session, request)? else {
        return Err("no entry".into());
    };
    say(&format!("ack {} {entry} {kind}", birth.0))?;
    Ok(entry)
}

/// Milliseconds before the touch is answered at which the baby, and the placenta, of the script came.
/// A kill in the midst of a try counts as a wrong one: after several of them the next has to wait.
fn unlock(session: &mut Session, secret: &str) -> Result<(), Failure> {
    loop {
        match session.call(Request::Unlock { passphrase: secret.to_owned() }) {
            Err(ApiError { code: ErrorCode::Wait, .. }) => std::thread::sleep(Duration::from_millis(100)),
            Err(error) => return Err(format!("{error:?}").into()),
            Ok(_) => return Ok(()),
        }
    }
}

const BORN_AGO_MS: u32 = 90_000;
const PLACENTA_AGO_MS: u32 = 30_000;

fn script(session: &mut Session, secret: &str) -> Result<(), Failure> {
    let unlock = || Request::Unlock { passphrase: secret.to_owned() };
    call(session, unlock())?;
    let birth = born(session, BORN_AGO_MS)?;
    for fact in [Fact::CordPulsationStopped { baby: 1 }, Fact::CordClamped { baby: 1 }, Fact::CordCut { baby: 1 }] {
        record(session, birth, fact, 0)?;
    }
    let jug = |ml| Ok::<_, Failure>(Fact::BloodLoss(Loss::Jug { volume: Volume::new(ml)? }));
    let loss = record(session, birth, jug(120)?, 0)?;
    record(session, birth, Fact::PlacentaBorn { babies: vec![1] }, PLACENTA_AGO_MS)?;
    record(session, birth, Fact::MembranesBorn { babies: vec![1] }, 0)?;
    let reason = "read at eye level".to_owned();
    let amend = Request::Amend { birth, entry: loss, fact: Some(jug(210)?), at: None, reason };
    acknowledged(session, birth, "amended", amend)?;
    for fact in examined() {
        record(session, birth, fact, 0)?;
    }
    call(session, Request::Lock)?;
    for (mark, kind) in [(LockedMark::BabyBorn, "baby_born"), (LockedMark::CordClamped { baby: 1 }, "cord_clamped")] {
        call(session, Request::LockedMark { mark, ago_ms: 0 })?;
        say(&format!("locked {kind}"))?;
    }
    call(session, unlock())?;
    say("unlocked")?;
    acknowledged(session, birth, "signed", Request::Sign { birth, signer: None }).map(|_| ())
}

/// Three items of the examination.
fn examined() -> [Fact; 3] {
    [("lobes", "meet"), ("amnion", "whole"), ("chorion", "whole")].map(|(item, option)| Fact::Examined {
        placenta: 1,
        item: item.to_owned(),
        cord: None,
        answer: Answer::Choice { option: option.to_owned() },
    })
}

fn facts(placenta: bool) -> Result<Vec<Fact>, Failure> {
    let pulse = MotherObservation { pulse: Some(HeartRate::new(84)?), ..MotherObservation::default() };
    let mut facts = vec![
        Fact::CordPulsationStopped { baby: 1 },
        Fact::BloodLoss(Loss::Jug { volume: Volume::new(120)? }),
        Fact::MotherObserved(pulse),
        Fact::CordClamped { baby: 1 },
        Fact::CordCut { baby: 1 },
        // Longer than a page of the database now and then.
        Fact::Noted { text: "quiet ".repeat(900) },
    ];
    if placenta {
        facts.extend([Fact::PlacentaBorn { babies: vec![1] }, Fact::MembranesBorn { babies: vec![1] }]);
        facts.extend(examined());
    }
    Ok(facts)
}

fn call(session: &mut Session, request: Request) -> Result<Response, Failure> {
    session.call(request).map_err(|error| format!("{error:?}").into())
}

fn kind(fact: &Fact) -> Result<String, Failure> {
    let value = serde_json::to_value(fact)?;
    Ok(value.get("kind").and_then(serde_json::Value::as_str).unwrap_or("?").to_owned())
}

fn say(line: &str) -> Result<(), Failure> {
    let mut out = std::io::stdout().lock();
    writeln!(out, "{line}")?;
    Ok(out.flush()?)
}
