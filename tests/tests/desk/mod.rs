//! A practice at work: one birth with its baby, its placenta and a signature, on a clock that is moved by hand.

#![allow(dead_code, reason = "each test file uses its own part")]

use std::path::{Path, PathBuf};
use std::sync::Arc;

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{Fact, Practice};
use secundine_domain::message::{Arg, Message};
use secundine_domain::time::{Boot, Precision, Stamp};
use secundine_record::words::Words;
use secundine_session::api::{ApiError, At, BirthView, Request, Response};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session, SharedSession};

pub const PASSPHRASE: &str = "seven quiet herons";

pub struct Desk {
    pub session: SharedSession,
    pub clock: HandClock,
    pub folder: PathBuf,
    pub birth: BirthId,
    pub born: EntryId,
    pub signed: EntryId,
    pub recovery: String,
}

/// A refusal as it crosses to the page.
#[derive(Debug)]
pub struct Refusal {
    pub code: String,
    pub message: Message,
}

impl From<ApiError> for Refusal {
    fn from(error: ApiError) -> Self {
        Self::from_json(&serde_json::to_string(&error).unwrap())
    }
}

impl Refusal {
    pub fn from_json(text: &str) -> Self {
        let value: serde_json::Value = serde_json::from_str(text).unwrap();
        let message = serde_json::from_value(value["message"].clone()).unwrap();
        Self { code: value["code"].as_str().unwrap().to_owned(), message }
    }

    /// Code, id and sentence. Every part of the sentence stands in the catalogue and is filled.
    pub fn read(&self) -> String {
        in_catalogue(&self.message);
        let said = Words::english().say(&self.message);
        assert!(!said.contains("{$") && !said.trim().is_empty(), "{said}");
        format!("{} {}: {said}", self.code, self.message.id)
    }
}

/// A message and all messages inside it stand in the catalogue.
pub fn in_catalogue(message: &Message) {
    assert!(Words::english().has(&message.id), "{} is not in the catalogue", message.id);
    message.args.values().for_each(|arg| {
        if let Arg::Message(inner) = arg {
            in_catalogue(inner);
        }
    });
}

pub fn practice() -> Practice {
    Practice {
        name: "Heron House".to_owned(),
        practitioner: "Ida".to_owned(),
        role: "midwife".to_owned(),
        protocol: Some("who".to_owned()),
    }
}

pub fn now() -> At {
    At::Now { ago_ms: 0 }
}

pub fn typed(date: &str, clock: &str) -> At {
    At::Typed { date: date.to_owned(), clock: clock.to_owned(), precision: Precision::Exact }
}

pub fn note(text: &str) -> Fact {
    Fact::Noted { text: text.to_owned() }
}

impl Desk {
    /// Founds a practice in this folder at 03:00 on 2026-11-25, UTC+1, and works through a birth.
    pub fn new(folder: &Path) -> Self {
        let boot = Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 });
        let clock = HandClock::at(Stamp { wall_ms: 1_795_572_000_000, offset_min: 60, zone: None, boot });
        let session = session(folder, &clock);
        let created = session.call(Request::CreatePractice { practice: practice(), passphrase: PASSPHRASE.to_owned() });
        let Response::CreatePractice { recovery } = created.unwrap() else { unreachable!() };
        let Response::BabyBornNow { birth, entry: born } = session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else {
            unreachable!()
        };
        let mut desk = Self { session, clock, folder: folder.to_owned(), birth, born, signed: born, recovery: recovery.identity };
        for fact in [Fact::CordClamped { baby: 1 }, Fact::PlacentaBorn { babies: vec![1] }, note("all calm")] {
            desk.clock.advance(60_000);
            desk.record(birth, fact).unwrap();
        }
        let Response::Sign { entry } = desk.call(Request::Sign { birth, signer: None }).unwrap() else { unreachable!() };
        desk.signed = entry;
        desk
    }

    /// Another session over the same folder and clock, as after a new start.
    pub fn started_anew(&self) -> SharedSession {
        session(&self.folder, &self.clock)
    }

    pub fn data(&self, name: &str) -> PathBuf {
        self.folder.join("data").join(name)
    }

    pub fn call(&self, request: Request) -> Result<Response, ApiError> {
        self.session.call(request)
    }

    pub fn record(&self, birth: BirthId, fact: Fact) -> Result<EntryId, ApiError> {
        self.record_at(birth, fact, now())
    }

    pub fn record_at(&self, birth: BirthId, fact: Fact, at: At) -> Result<EntryId, ApiError> {
        self.call(Request::Record { birth, fact, at }).map(|response| match response {
            Response::Record { entry } => entry,
            other => unreachable!("{other:?}"),
        })
    }

    pub fn unlock(&self) -> Result<Response, ApiError> {
        self.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() })
    }

    pub fn view(&self, birth: BirthId) -> BirthView {
        match self.call(Request::Birth { birth }).unwrap() {
            Response::Birth(view) => *view,
            other => unreachable!("{other:?}"),
        }
    }

    /// Every entry of a birth, as it can be read.
    pub fn entries(&self, birth: BirthId) -> Vec<(EntryId, Fact)> {
        self.view(birth).timeline.into_iter().map(|line| (line.entry, line.fact)).collect()
    }
}

fn session(folder: &Path, clock: &HandClock) -> SharedSession {
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    SharedSession::new(Session::new(paths, Arc::new(clock.clone())))
}
