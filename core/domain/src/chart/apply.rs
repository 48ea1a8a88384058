//! The facts in force, one after another, make the chart.

use std::collections::BTreeSet;

use super::{Baby, Chart, Chosen, Line, Mark, Noted, Placenta, Signature, State};
use crate::entry::{Entry, EntryId};
use crate::examination::{Asked, Given};
use crate::fact::{BabyNo, Fact};
use crate::time::Occurred;

pub(super) fn apply(chart: &mut Chart) {
    let lines = std::mem::take(&mut chart.lines);
    told(chart, &lines);
    for line in lines.iter().filter(|line| line.state() != State::Retracted) {
        let first = &line.first;
        let current = line.current();
        // A correction keeps the place of the entry that it puts right, so that it can be found by the first id.
        let mark = Mark { at: current.occurred.clone(), entry: first.id };
        one(chart, current, mark);
    }
    chart.lines = lines;
    // What was told when joining stands in for what the other phone's entries will say.
    if let Some(told) = chart.joined.last().map(|joined| joined.what.clone()) {
        if chart.label.is_empty() {
            chart.label = told.label;
        }
        if chart.chosen.is_none() {
            chart.chosen = told.protocol.map(|id| Chosen { id, own: None });
        }
        if let (true, Some(care), Some(joined)) = (chart.cares.is_empty(), told.care, chart.joined.last()) {
            chart.cares.push(Noted { what: care, mark: joined.mark.clone(), author: joined.author.clone() });
        }
    }
}

/// Moments that another phone told of and whose entries have not come. Each stands on the clock of the phone that was told, so that
/// its time runs there; it is before what that phone marks itself.
fn told(chart: &mut Chart, lines: &[Line]) {
    let here: BTreeSet<EntryId> =
        lines.iter().flat_map(|line| std::iter::once(&line.first).chain(&line.amendments)).map(|entry| entry.id).collect();
    let standing = lines.iter().filter(|line| line.state() != State::Retracted);
    for (line, joined) in
        standing.filter_map(|line| if let Fact::BirthJoined(joined) = &line.first.fact { Some((line, joined)) } else { None })
    {
        for told in joined.told.iter().filter(|told| told.fact.is_mark() && !here.contains(&told.entry)) {
            let Occurred::Marked(stamp) = &line.first.occurred else { continue };
            let mark = Mark { at: Occurred::Marked(stamp.earlier(told.ago_ms)), entry: line.first.id };
            if let Fact::PlacentaBorn { babies } = &*told.fact {
                chart.told_placentas.push((babies.clone(), mark.clone()));
            }
            moment(chart, &told.fact, mark);
        }
    }
}

/// A moment of the birth itself.
fn moment(chart: &mut Chart, fact: &Fact, mark: Mark) {
    match fact {
        Fact::BabyBorn { baby } => first(&mut chart.baby(*baby).born, mark),
        Fact::CordPulsationStopped { baby } => first(&mut chart.baby(*baby).pulsation_stopped, mark),
        Fact::CordClamped { baby } => first(&mut chart.baby(*baby).clamped, mark),
        Fact::CordCut { baby } => first(&mut chart.baby(*baby).cut, mark),
        Fact::PlacentaBorn { babies } => placenta_born(chart.placenta(babies), babies, mark),
        Fact::MembranesBorn { babies } => first(&mut chart.placenta(babies).membranes, mark),
        _ => (),
    }
}

fn one(chart: &mut Chart, entry: &Entry, mark: Mark) {
    let author = entry.author.clone();
    match entry.fact.clone() {
        Fact::BirthRegistered { label, rehearsal } => {
            chart.label = label;
            chart.rehearsal |= rehearsal;
        }
        Fact::ClientRecorded(client) => chart.client = Some(client),
        Fact::ProtocolChosen { protocol: id, own } => chart.chosen = Some(Chosen { id, own }),
        Fact::CareChosen { care: what } => chart.cares.push(Noted { what, mark, author }),
        fact if fact.is_mark() => moment(chart, &fact, mark),
        Fact::BirthJoined(what) => chart.joined.push(Noted { what, mark, author }),
        Fact::ClocksCompared(what) => chart.compared.push(Noted { what, mark, author }),
        Fact::SameBirth { other, same } => chart.same.push(Noted { what: (other, same), mark, author }),
        Fact::BloodLoss(what) => chart.losses.push(Noted { what, mark, author }),
        Fact::MotherObserved(what) => chart.observations.push(Noted { what, mark, author }),
        Fact::ApgarScored(what) => chart.baby(what.baby).apgars.push(Noted { what, mark, author }),
        Fact::NewbornMeasured(what) => chart.baby(what.baby).measures.push(Noted { what, mark, author }),
        Fact::MedicineGiven(what) => chart.medicines.push(Noted { what, mark, author }),
        Fact::NewbornEvent { baby, event } => chart.baby(baby).events.push(Noted { what: event, mark, author }),
        Fact::PerineumExamined(what) => chart.perinea.push(Noted { what, mark, author }),
        Fact::TravelTimeSet { minutes: what } => chart.travels.push(Noted { what, mark, author }),
        Fact::NextContactPlanned(what) => chart.contacts.push(Noted { what, mark, author }),
        Fact::LeavingMarked { step: what } => chart.leavings.push(Noted { what, mark, author }),
        Fact::ResponseMarked { step } => chart.responses.push(Noted { what: step, mark, author }),
        Fact::ConcernMarked => chart.concerns.push(mark),
        Fact::VoiceNoted(what) => chart.voices.push(Noted { what, mark, author }),
        Fact::WrittenUp(what) => chart.written_up.push(Noted { what, mark, author }),
        Fact::HomeLeft => first(&mut chart.left, mark),
        Fact::AskedFor { text: what } => chart.asked_for.push(Noted { what, mark, author }),
        Fact::Shared(what) => chart.shared.push(Noted { what, mark, author }),
        Fact::Examined { placenta, item, cord, answer } => {
            let examined = chart.examinations.entry(placenta).or_default();
            examined.last = Some(mark.at.clone());
            examined.given.insert(Asked { item, cord }, Given { answer, entry: mark.entry, at: mark.at });
        }
        Fact::PlacentaWeights { table } => chart.weights = table,
        Fact::PhotoMeasured(what) => chart.photo_measures.push(Noted { what: *what, mark, author }),
        Fact::PhotoTaken(what) => chart.photos.push(Noted { what, mark, author }),
        Fact::Signed { name, role, version } => {
            chart.signatures.push(Noted { what: Signature { name, role, version }, mark, author });
        }
        // Told in the lines alone.
        Fact::SeparationSeen { .. }
        | Fact::BabyBorn { .. }
        | Fact::CordPulsationStopped { .. }
        | Fact::CordClamped { .. }
        | Fact::CordCut { .. }
        | Fact::PlacentaBorn { .. }
        | Fact::MembranesBorn { .. }
        | Fact::PracticeDescribed(_)
        | Fact::MedicinesListed { .. }
        | Fact::ExaminationOrdered { .. }
        | Fact::OwnProtocolChanged { .. }
        | Fact::ServerSet { .. }
        | Fact::TermSet { .. }
        | Fact::SendingWaits { .. }
        | Fact::Noted { .. }
        | Fact::MomentMarked
        | Fact::TouchedAgain { .. }
        | Fact::Retracted
        | Fact::Unknown { .. } => {}
    }
}

/// The first mark in time counts; a repeat is shown as an oddity and changes nothing.
fn first(slot: &mut Option<Mark>, mark: Mark) {
    slot.get_or_insert(mark);
}

/// Which babies a placenta fed is told by its own entries; membranes name it only until then.
fn placenta_born(placenta: &mut Placenta, babies: &[BabyNo], mark: Mark) {
    if placenta.born.is_none() {
        placenta.babies.clear();
    }
    placenta.babies = in_order(placenta.babies.iter().chain(babies));
    first(&mut placenta.born, mark);
}

fn in_order<'a>(babies: impl IntoIterator<Item = &'a BabyNo>) -> Vec<BabyNo> {
    babies.into_iter().copied().collect::<BTreeSet<_>>().into_iter().collect()
}

impl Chart {
    fn baby(&mut self, no: BabyNo) -> &mut Baby {
        self.babies.entry(no).or_default()
    }

    fn placenta(&mut self, babies: &[BabyNo]) -> &mut Placenta {
        let babies = in_order(babies);
        let name = babies.first().copied().unwrap_or(1);
        self.placentas.entry(name).or_insert(Placenta { babies, born: None, membranes: None })
    }
}
