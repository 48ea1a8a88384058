//! A second phone at a birth: it joins by a code, without a network, and both clocks are compared (decision 0031).

use qrcodegen::QrCodeEcc;
use secundine_domain::chart::{Chart, State};
use secundine_domain::entry::{BirthId, DeviceId, EntryId};
use secundine_domain::fact::{BabyNo, Care, Compared, Fact, Joined, Told};
use secundine_domain::message::Message;
use secundine_domain::protocol::Protocol;
use secundine_domain::time::{Elapsed, Occurred, Stamp};
use serde::{Deserialize, Serialize};

use super::Session;
use crate::api::{ApiError, CodeRead, CodeTaken, CodeView, ErrorCode, Response};
use crate::code::{self, Kind};
use crate::practice::Draft;
use crate::qr;

/// Most letters of a label in a code. Our own choice: the band and a few words tell a birth from others.
const LABEL_MAX: usize = 40;
/// How old a code is at most when its picture comes to the core: it is renewed each second, then a picture is taken, looked at and
/// handed over. Our own choice; the answer measures what it truly was.
const READING_MS: i64 = 20_000;

/// What was shown and read since the practice was opened: in memory only.
#[derive(Default)]
pub(super) struct Phones {
    shown: Option<Shown>,
    read: Option<Read>,
}

/// The code that this phone shows; its moments are told from the first showing on, by the running clock.
struct Shown {
    birth: BirthId,
    nonce: String,
    from: Stamp,
}

/// The code that this phone has read.
struct Read {
    birth: BirthId,
    nonce: String,
    shown_ms: i64,
    at: Stamp,
}

/// What the phone that has the birth shows.
#[derive(Debug, Deserialize, Serialize)]
struct BirthCode {
    #[serde(rename = "b")]
    birth: BirthId,
    #[serde(rename = "l")]
    label: String,
    /// The phone that shows it; none where it is the one that registered the birth.
    #[serde(rename = "d", default, skip_serializing_if = "Option::is_none")]
    device: Option<DeviceId>,
    /// Its wall clock, UTC milliseconds since 1970.
    #[serde(rename = "w")]
    shown_ms: i64,
    #[serde(rename = "n")]
    nonce: String,
    #[serde(rename = "p", default, skip_serializing_if = "Option::is_none")]
    protocol: Option<String>,
    #[serde(rename = "c", default, skip_serializing_if = "Option::is_none")]
    care: Option<Care>,
    #[serde(rename = "t", default, skip_serializing_if = "Vec::is_empty")]
    told: Vec<Moment>,
}

/// A mark: the device that wrote it where it is not the one that shows, its number there, its kind, its babies, and how many
/// milliseconds before the showing it was.
type Moment = (Option<DeviceId>, u64, u8, Vec<BabyNo>, i64);

/// What the phone that joins shows back.
#[derive(Debug, Deserialize, Serialize)]
struct AnswerCode {
    #[serde(rename = "b")]
    birth: BirthId,
    #[serde(rename = "d")]
    device: DeviceId,
    #[serde(rename = "n")]
    nonce: String,
    /// The other's clock as it stood in its code.
    #[serde(rename = "w")]
    shown_ms: i64,
    /// This one's when it was read.
    #[serde(rename = "r")]
    read_ms: i64,
    /// This one's when the answer is shown.
    #[serde(rename = "s")]
    answered_ms: i64,
}

/// A code as it would be written again; none for a text that is no code.
#[cfg(feature = "fuzzing")]
pub(crate) fn rewritten(text: &str) -> Option<String> {
    let kind = code::kind(text).ok()?;
    let written = match kind {
        Kind::Birth => {
            let code: BirthCode = code::decode(kind, text).ok()?;
            let _ = code.told();
            code::encode(kind, &code)
        }
        Kind::Answer => code::encode(kind, &code::decode::<AnswerCode>(kind, text).ok()?),
        Kind::Card => {
            let card: secundine_sync::Card = code::decode(kind, text).ok()?;
            let _ = (card.device(), card.check(b""));
            code::encode(kind, &card)
        }
        Kind::Welcome => code::encode_bytes(kind, &code::decode_bytes(kind, text).ok()?),
    };
    written.ok()
}

impl BirthCode {
    fn from(&self) -> DeviceId {
        self.device.unwrap_or(self.birth.0.device)
    }

    fn told(&self) -> Vec<Told> {
        let told = |(device, n, kind, babies, ago_ms): &Moment| {
            let entry = EntryId { device: device.unwrap_or(self.from()), n: *n };
            Some(Told { entry, fact: Box::new(mark_of(*kind, babies)?), ago_ms: *ago_ms })
        };
        self.told.iter().filter_map(told).collect()
    }
}

impl Session {
    /// The code by which another phone joins a birth, or the answer to one.
    pub(super) fn show_code(&mut self, birth: BirthId, answer: bool, now: &Stamp) -> Result<Response, ApiError> {
        let own = self.really_open()?.device();
        let text = if answer { self.answer(birth, own, now)? } else { self.birth_code(birth, own, now)? };
        Ok(Response::ShowCode(CodeView { code: qr::code(&text, QrCodeEcc::Medium), text }))
    }

    fn birth_code(&mut self, birth: BirthId, own: DeviceId, now: &Stamp) -> Result<String, ApiError> {
        let chart = self.open()?.chart(birth)?;
        let shown = match self.phones.shown.take().filter(|shown| shown.birth == birth) {
            Some(shown) => shown,
            None => Shown { birth, nonce: nonce()?, from: now.clone() },
        };
        let code = BirthCode {
            birth,
            label: chart.label.chars().take(LABEL_MAX).collect(),
            device: Some(own).filter(|own| *own != birth.0.device),
            shown_ms: on_running_clock(&shown.from, now),
            nonce: shown.nonce.clone(),
            protocol: chart.chosen.as_ref().map(|chosen| chosen.id.clone()).filter(|id| Protocol::find(id).is_some()),
            care: chart.care(),
            told: moments(&chart, own, now),
        };
        self.phones.shown = Some(shown);
        code::encode(Kind::Birth, &code)
    }

    fn answer(&self, birth: BirthId, own: DeviceId, now: &Stamp) -> Result<String, ApiError> {
        let read = self.phones.read.as_ref().filter(|read| read.birth == birth);
        let read = read.ok_or_else(|| ApiError::new(ErrorCode::NotFound, "error-no-code-read"))?;
        let (nonce, shown_ms, read_ms) = (read.nonce.clone(), read.shown_ms, read.at.wall_ms);
        let answered_ms = on_running_clock(&read.at, now);
        code::encode(Kind::Answer, &AnswerCode { birth, device: own, nonce, shown_ms, read_ms, answered_ms })
    }

    /// What a code says, from a picture or as text. Nothing is written.
    pub(super) fn read_code(&mut self, picture: Option<&str>, text: Option<String>, now: &Stamp) -> Result<Response, ApiError> {
        self.really_open()?;
        let text = code::from(picture, text)?;
        let said = match code::kind(&text)? {
            Kind::Birth => {
                let code: BirthCode = code::decode(Kind::Birth, &text)?;
                self.not_own(code.from())?;
                let here = self.open()?.entries(code.birth).is_ok();
                let clocks = Some(one_way(code.from(), code.shown_ms, now).words());
                CodeRead { birth: code.birth, label: code.label, answer: false, here, clocks, text }
            }
            Kind::Answer => {
                let code: AnswerCode = code::decode(Kind::Answer, &text)?;
                self.not_own(code.device)?;
                let label = self.open()?.chart(code.birth)?.label;
                CodeRead { birth: code.birth, label, answer: true, here: true, clocks: None, text }
            }
            Kind::Card | Kind::Welcome => return Err(ApiError::new(ErrorCode::Impossible, "error-code-other")),
        };
        Ok(Response::ReadCode(said))
    }

    /// Goes on with the birth of a code, or takes an answer. `ago_ms` counts from the picture; none for a text, which may be of any age.
    pub(super) fn take_code(&mut self, text: &str, ago_ms: Option<u32>, now: &Stamp) -> Result<Response, ApiError> {
        self.really_open()?;
        let at = self.touched(ago_ms.unwrap_or(0), now);
        let taken = match code::kind(text)? {
            Kind::Birth => self.join(&code::decode(Kind::Birth, text)?, at, ago_ms.is_some(), now)?,
            Kind::Answer => self.compare(&code::decode(Kind::Answer, text)?, at, now)?,
            Kind::Card | Kind::Welcome => return Err(ApiError::new(ErrorCode::Impossible, "error-code-other")),
        };
        Ok(Response::TakeCode(taken))
    }

    fn join(&mut self, code: &BirthCode, at: Stamp, pictured: bool, now: &Stamp) -> Result<CodeTaken, ApiError> {
        self.not_own(code.from())?;
        let (birth, from) = (code.birth, code.from());
        let draft = |fact| Draft { occurred: Occurred::Marked(at.clone()), ..Draft::now(birth, fact, now) };
        let open = self.open()?;
        let opening = open.entries(birth).is_ok_and(|entries| entries.iter().any(|stored| stored.entry.id == birth.0));
        let mut drafts = Vec::new();
        if !opening {
            let (label, protocol, care) = (code.label.clone(), code.protocol.clone(), code.care);
            drafts.push(draft(Fact::BirthJoined(Joined { from, label, protocol, care, told: code.told() })));
        }
        let compared = pictured.then(|| one_way(from, code.shown_ms, &at));
        drafts.extend(compared.clone().map(|compared| draft(Fact::ClocksCompared(compared))));
        open.write_drafts(drafts)?;
        self.latest = Some(birth);
        self.phones.read = Some(Read { birth, nonce: code.nonce.clone(), shown_ms: code.shown_ms, at });
        Ok(CodeTaken { birth, compared: compared.map(|compared| compared.words()), answers: true })
    }

    fn compare(&mut self, code: &AnswerCode, at: Stamp, now: &Stamp) -> Result<CodeTaken, ApiError> {
        self.not_own(code.device)?;
        let shown = self.phones.shown.as_ref().filter(|shown| (shown.birth, &shown.nonce) == (code.birth, &code.nonce));
        let shown = shown.ok_or_else(|| ApiError::new(ErrorCode::NotFound, "error-code-not-asked"))?;
        let compared = both_ways(code, &shown.from, &at).ok_or_else(|| ApiError::impossible(Message::new("error-code-times")))?;
        let fact = Fact::ClocksCompared(compared.clone());
        self.open()?.write_drafts(vec![Draft { occurred: Occurred::Marked(at), ..Draft::now(code.birth, fact, now) }])?;
        Ok(CodeTaken { birth: code.birth, compared: Some(compared.words()), answers: false })
    }

    fn not_own(&mut self, device: DeviceId) -> Result<(), ApiError> {
        match self.open()?.device() == device {
            true => Err(ApiError::impossible(Message::new("error-code-own"))),
            false => Ok(()),
        }
    }
}

/// The wall clock at a moment as it stood at an earlier one and ran on: nobody who sets it meanwhile makes the way longer or shorter.
fn on_running_clock(from: &Stamp, to: &Stamp) -> i64 {
    let ran = Elapsed::between(&Occurred::Marked(from.clone()), &Occurred::Marked(to.clone()));
    from.wall_ms.saturating_add(ran.ms)
}

/// By one code alone: when it was read, the other's clock had gone on by as long as the reading took, which is bounded, not known.
fn one_way(other: DeviceId, shown_ms: i64, at: &Stamp) -> Compared {
    let error_ms = READING_MS / 2;
    let ahead_ms = shown_ms.saturating_add(error_ms).saturating_sub(at.wall_ms);
    Compared { other, ahead_ms, error_ms }
}

/// By a code and its answer: each way took some time, neither less than none, so that the difference lies within half of what both
/// took together. None where the times cannot be.
fn both_ways(code: &AnswerCode, shown_from: &Stamp, at: &Stamp) -> Option<Compared> {
    let back_ms = on_running_clock(shown_from, at);
    let there = code.read_ms.saturating_sub(code.shown_ms);
    let back = code.answered_ms.saturating_sub(back_ms);
    let took = back_ms.saturating_sub(code.shown_ms).saturating_sub(code.answered_ms.saturating_sub(code.read_ms));
    if code.shown_ms < shown_from.wall_ms || code.shown_ms > back_ms || code.answered_ms < code.read_ms || took < 0 {
        return None;
    }
    // The wall clock may have been set since the code was shown; the entry stands by what it says now.
    let set_ms = back_ms.saturating_sub(at.wall_ms);
    let ahead_ms = (there.saturating_add(back) / 2).saturating_add(set_ms);
    Some(Compared { other: code.device, ahead_ms, error_ms: took.saturating_add(1) / 2 })
}

/// The marks that stand, with how long ago each was by this phone.
fn moments(chart: &Chart, own: DeviceId, now: &Stamp) -> Vec<Moment> {
    let standing = chart.lines.iter().filter(|line| line.state() != State::Retracted);
    let moment = |line: &secundine_domain::chart::Line| {
        let current = line.current();
        let (kind, babies) = kind_of(&current.fact)?;
        let ago_ms = chart.until(&current.occurred, now).ms;
        let device = Some(line.first.id.device).filter(|device| *device != own);
        Some((device, line.first.id.n, kind, babies, ago_ms))
    };
    standing.filter_map(moment).collect()
}

fn kind_of(fact: &Fact) -> Option<(u8, Vec<BabyNo>)> {
    match fact {
        Fact::BabyBorn { baby } => Some((0, vec![*baby])),
        Fact::CordPulsationStopped { baby } => Some((1, vec![*baby])),
        Fact::CordClamped { baby } => Some((2, vec![*baby])),
        Fact::CordCut { baby } => Some((3, vec![*baby])),
        Fact::PlacentaBorn { babies } => Some((4, babies.clone())),
        Fact::MembranesBorn { babies } => Some((5, babies.clone())),
        _ => None,
    }
}

/// One that a later version may write is passed over.
fn mark_of(kind: u8, babies: &[BabyNo]) -> Option<Fact> {
    let (baby, babies) = (*babies.first()?, babies.to_vec());
    match kind {
        0 => Some(Fact::BabyBorn { baby }),
        1 => Some(Fact::CordPulsationStopped { baby }),
        2 => Some(Fact::CordClamped { baby }),
        3 => Some(Fact::CordCut { baby }),
        4 => Some(Fact::PlacentaBorn { babies }),
        5 => Some(Fact::MembranesBorn { babies }),
        _ => None,
    }
}

fn nonce() -> Result<String, ApiError> {
    let mut bytes = [0_u8; 8];
    getrandom::fill(&mut bytes).map_err(|_| ApiError::internal())?;
    Ok(bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}
