//! When it went wrong: what was seen and done from the first mark of the response on.

use super::{Chart, Line, Mark, State};
use crate::fact::{Fact, ResponseStep};

impl Chart {
    /// The first mark of the response or of concern; none where there is none.
    #[must_use]
    pub fn response_began(&self) -> Option<Mark> {
        let line = self.standing().find(|line| begins(&line.current().fact))?;
        Some(Mark { at: line.current().occurred.clone(), entry: line.first.id })
    }

    /// The mark that ends the response: handed over, or the bleeding controlled with nothing marked after it.
    #[must_use]
    pub fn response_ended(&self) -> Option<&Mark> {
        let ends =
            |step: &&super::Noted<ResponseStep>| matches!(step.what, ResponseStep::HandedOver | ResponseStep::BleedingControlled);
        self.responses.last().filter(ends).map(|step| &step.mark)
    }

    /// What was seen and done from then on, in order of time. The examination and what is said of people stand elsewhere.
    #[must_use]
    pub fn account(&self) -> Vec<&Line> {
        let from_then = self.standing().skip_while(|line| !begins(&line.current().fact));
        from_then.filter(|line| tells(&line.current().fact)).collect()
    }

    fn standing(&self) -> impl Iterator<Item = &Line> {
        self.lines.iter().filter(|line| line.state() != State::Retracted)
    }
}

fn begins(fact: &Fact) -> bool {
    matches!(fact, Fact::ResponseMarked { .. } | Fact::ConcernMarked)
}

fn tells(fact: &Fact) -> bool {
    !matches!(
        fact,
        Fact::Examined { .. }
            | Fact::Signed { .. }
            | Fact::ClientRecorded(_)
            | Fact::BirthRegistered { .. }
            | Fact::ProtocolChosen { .. }
            | Fact::TravelTimeSet { .. }
            | Fact::NextContactPlanned(_)
            | Fact::LeavingMarked { .. }
            | Fact::TouchedAgain { .. }
            | Fact::Unknown { .. }
    )
}
