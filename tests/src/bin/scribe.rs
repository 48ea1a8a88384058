//! Works in a practice as fast as it can and says what was acknowledged, until it is killed.
//!
//! `scribe FOLDER PASSPHRASE SEED BIRTH...` first tells what it finds of these births, then records new ones. Every line of
//! its output is flushed: `seen` and `clock` for what it finds, `born` and `ack` for what was answered.

#![allow(clippy::print_stdout, reason = "its output is what it is for")]

use std::io::Write;
use std::path::PathBuf;
use std::sync::Arc;

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{Answer, Fact, Loss, MotherObservation};
use secundine_domain::quantity::{HeartRate, Volume};
use secundine_session::api::{At, Request, Response};
use secundine_session::clock::SystemClock;
use secundine_session::{Paths, Session};

type Failure = Box<dyn std::error::Error>;

fn main() -> Result<(), Failure> {
    let mut args = std::env::args().skip(1);
    let mut next = || args.next().ok_or("scribe FOLDER PASSPHRASE SEED BIRTH...");
    let folder = PathBuf::from(next()?);
    let passphrase = next()?;
    let seed: u64 = next()?.parse()?;
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    let mut session = Session::new(paths, Arc::new(SystemClock::new()));
    call(&mut session, Request::Unlock { passphrase })?;
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
    let Response::BabyBornNow { birth, entry } = call(session, Request::BabyBornNow { ago_ms: 0 })? else {
        return Err("not born".into());
    };
    say(&format!("born {} {entry} baby_born", birth.0))?;
    for fact in facts(round.is_multiple_of(2))? {
        let kind = kind(&fact)?;
        let request = Request::Record { birth, fact, at: At::Now { ago_ms: 0 } };
        let Response::Record { entry } = call(session, request)? else { return Err("not recorded".into()) };
        say(&format!("ack {} {entry} {kind}", birth.0))?;
    }
    let Response::Sign { entry } = call(session, Request::Sign { birth, signer: None })? else { return Err("not signed".into()) };
    say(&format!("ack {} {entry} signed", birth.0))
}

fn facts(placenta: bool) -> Result<Vec<Fact>, Failure> {
    let choice = |item: &str, option: &str| Fact::Examined {
        placenta: 1,
        item: item.to_owned(),
        answer: Answer::Choice { option: option.to_owned() },
    };
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
        facts.extend([choice("lobes", "meet"), choice("amnion", "whole"), choice("chorion", "whole")]);
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
