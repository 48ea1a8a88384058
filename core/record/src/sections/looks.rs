//! Looks at the mother in a long night. Their readings stand in the table of readings, each with its time; so the timeline says
//! what else was seen, and looks in a row that saw the same stand in one row.

use secundine_domain::chart::Line;
use secundine_domain::fact::{Fact, MotherObservation};
use secundine_domain::message::Message;

use super::is_long;
use super::timeline::marks;
use crate::document::Source;

/// How many lines at the beginning of these are looks that saw the same by one author, and what the row says of them; none where
/// the first line has to stand whole.
pub(super) fn run<'a>(source: &Source, lines: &[&'a Line]) -> Option<(&'a Line, usize, Message)> {
    let first = *lines.first()?;
    let rest = beside(source, first)?;
    let alike = |line: &&&Line| line.first.author == first.first.author && beside(source, line).as_ref() == Some(&rest);
    let run: Vec<&&Line> = lines.iter().take_while(alike).collect();
    let until = run.last().map(|line| line.first.occurred.clock()).unwrap_or_default();
    let bare = rest == MotherObservation::default();
    let count = u32::try_from(run.len()).unwrap_or(u32::MAX);
    let id = if bare { "record-looks" } else { "record-looks-saw" };
    let message = Message::new(id).with("count", count).with("until", until);
    let saw = (!bare).then(|| source.chart.say(&Fact::MotherObserved(rest)));
    Some((first, run.len(), saw.into_iter().fold(message, |message, saw| message.with("saw", saw))))
}

/// A look without what the table of readings has of it. None for what the table lacks or the timeline has to tell more of: a
/// pressure by itself, which the table cannot name, a look that was put right, is odd, or came late.
fn beside(source: &Source, line: &Line) -> Option<MotherObservation> {
    let Fact::MotherObserved(look) = &line.first.fact else { return None };
    let MotherObservation { pulse, systolic, diastolic, respirations, temperature, saturation, .. } = look;
    let read = pulse.is_some() || systolic.is_some() || respirations.is_some() || temperature.is_some() || saturation.is_some();
    let whole = systolic.is_some() == diastolic.is_some() && line.amendments.is_empty() && marks(source, line).is_empty();
    (is_long(source) && read && whole).then(|| MotherObservation {
        pulse: None,
        systolic: None,
        diastolic: None,
        respirations: None,
        temperature: None,
        saturation: None,
        ..look.clone()
    })
}
