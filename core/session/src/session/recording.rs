//! What may be recorded, when it was, and who signs.

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::Fact;
use secundine_domain::message::Message;
use secundine_domain::time::{Elapsed, Occurred, Stamp, parse_local};
use secundine_store::version;

use super::Session;
use crate::api::{ApiError, At, ErrorCode, Signer};
use crate::clock::earlier;
use crate::practice::{Draft, OpenPractice};

impl Session {
    /// The moment of a touch: in a rehearsal its delay runs at the rehearsal's speed.
    pub(super) fn touched(&self, ago_ms: u32, now: &Stamp) -> Stamp {
        earlier(now.clone(), i64::from(ago_ms) * i64::from(self.speed()))
    }

    pub(super) fn occurred(&self, at: &At, now: &Stamp) -> Result<Occurred, ApiError> {
        match at {
            At::Now { ago_ms } => Ok(Occurred::Marked(self.touched(*ago_ms, now))),
            At::Typed { date, clock, precision } => {
                let wall_ms = parse_local(date, clock, now.offset_min);
                let wall_ms = wall_ms.ok_or_else(|| ApiError::new(ErrorCode::Impossible, "error-no-time"))?;
                let typed = Occurred::Typed { wall_ms, offset_min: now.offset_min, precision: *precision };
                // A minute of grace: a typed time has no seconds.
                if Elapsed::between(&Occurred::Marked(now.clone()), &typed).ms > 60_000 {
                    return Err(ApiError::new(ErrorCode::Impossible, "error-in-future"));
                }
                Ok(typed)
            }
        }
    }
}

/// Facts that a person records; the others have requests of their own.
pub(crate) fn recordable(fact: &Fact) -> Result<(), ApiError> {
    match fact {
        Fact::PracticeDescribed(_)
        | Fact::MedicinesListed { .. }
        | Fact::ExaminationOrdered { .. }
        | Fact::ServerSet { .. }
        | Fact::TermSet { .. }
        | Fact::SendingWaits { .. }
        | Fact::PlacentaWeights { .. }
        | Fact::OwnProtocolChanged { .. }
        | Fact::BirthRegistered { .. }
        | Fact::BirthJoined(_)
        | Fact::ClocksCompared(_)
        | Fact::SameBirth { .. }
        | Fact::Retracted
        | Fact::Signed { .. }
        | Fact::PhotoMeasured(_)
        | Fact::Unknown { .. } => Err(ApiError::new(ErrorCode::Impossible, "error-not-recordable")),
        _ => Ok(()),
    }
}

/// Signs the record as it stands, in the name of the signer, or of the practice's practitioner.
pub(crate) fn sign(open: &mut OpenPractice, birth: BirthId, signer: Option<Signer>, now: &Stamp) -> Result<EntryId, ApiError> {
    open.may_sign()?;
    let version = version(open.entries(birth)?);
    let (name, role) = match signer {
        Some(Signer { name, role }) => (name.trim().to_owned(), role.trim().to_owned()),
        None => (open.described().practitioner.clone(), open.described().role.clone()),
    };
    if name.is_empty() {
        return Err(ApiError::impossible(Message::new("error-no-signer")));
    }
    open.write(Draft::now(birth, Fact::Signed { name, role, version }, now))
}
