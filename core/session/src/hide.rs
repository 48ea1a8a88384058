//! Names and words of people left out, before any view is made of them: what is not in a chart cannot stand in a view.

use std::collections::BTreeSet;

use secundine_domain::chart::{Chart, fold_joined};
use secundine_domain::entry::{Amendment, BirthId, Entry};
use secundine_domain::fact::{
    Client, Fact, Joined, Loss, Medicine, NextContact, Photo, Practice, Server, Shared, Told, WrittenUp,
};
use secundine_domain::message::{Arg, Message};
use secundine_domain::protocol::{OwnChange, Protocol};
use secundine_domain::time::Run;

use crate::session::label_of;

/// Stands for words that were written; where nothing was written, nothing stands.
pub(crate) const HIDDEN: &str = "•••";

/// A chart without names and words of people; its times, numbers and choices are as they were. Its client has no
/// name, and for a label it has the time of the birth, or of its registration.
pub(crate) fn chart<'a>(names: &BTreeSet<BirthId>, entries: impl IntoIterator<Item = &'a Entry>, runs: &[Run]) -> Chart {
    let entries: Vec<Entry> = entries.into_iter().map(entry).collect();
    let mut chart = fold_joined(names, &entries, runs);
    let opened = chart.first_birth().map(|mark| &mark.at);
    let opened = opened.or_else(|| chart.lines.first().map(|line| &line.first.occurred));
    chart.label = opened.map(|at| label_of(&at.date(), &at.clock())).unwrap_or_default();
    if let Some(client) = &mut chart.client {
        client.name.clear();
    }
    chart
}

fn entry(entry: &Entry) -> Entry {
    let text = |words: &str| text(words, HIDDEN);
    let amends = entry.amends.as_ref().map(|Amendment { entry, reason }| Amendment { entry: *entry, reason: text(reason) });
    let Entry { id, birth, author, occurred, recorded, fact: written, .. } = entry;
    let (occurred, recorded) = (occurred.clone(), recorded.clone());
    Entry { id: *id, birth: *birth, author: text(author), occurred, recorded, fact: fact(written), amends }
}

/// A fact without words of people.
fn fact(fact: &Fact) -> Fact {
    replaced(fact, HIDDEN)
}

/// Whether a fact carries words of people, or stands in the place of some that are not shown.
pub(crate) fn has_words(fact: &Fact) -> bool {
    matches!(fact, Fact::ClientRecorded(_)) || replaced(fact, "") != *fact
}

/// A fact with something else in place of its words. Every kind is named, so that a new one is thought of.
fn replaced(fact: &Fact, with: &str) -> Fact {
    let text = |words: &str| text(words, with);
    match fact {
        Fact::PracticeDescribed(practice) => Fact::PracticeDescribed(described(practice, with)),
        Fact::MedicinesListed { medicines } => {
            Fact::MedicinesListed { medicines: medicines.iter().map(|medicine| medicine_without(medicine, with)).collect() }
        }
        Fact::BirthRegistered { label, rehearsal } => Fact::BirthRegistered { label: text(label), rehearsal: *rehearsal },
        Fact::ClientRecorded(client) => Fact::ClientRecorded(client_without(client, with)),
        Fact::BloodLoss(Loss::Weighed { item, gross, dry }) => {
            Fact::BloodLoss(Loss::Weighed { item: text(item), gross: *gross, dry: *dry })
        }
        Fact::MedicineGiven(medicine) => Fact::MedicineGiven(medicine_without(medicine, with)),
        Fact::NextContactPlanned(NextContact { when, call, at }) => {
            Fact::NextContactPlanned(NextContact { when: text(when), call: text(call), at: at.clone() })
        }
        Fact::Noted { text: words } => Fact::Noted { text: text(words) },
        Fact::AskedFor { text: words } => Fact::AskedFor { text: text(words) },
        Fact::Shared(shared) => {
            Fact::Shared(Shared { name: shared.name.as_ref().map(|words| text(words)), ..shared.clone() })
        }
        Fact::ServerSet { server } => {
            let hidden = |server: &Server| Server { address: text(&server.address), token: server.token.as_ref().map(|words| text(words)) };
            Fact::ServerSet { server: server.as_ref().map(hidden) }
        }
        Fact::WrittenUp(WrittenUp { file, text: words }) => Fact::WrittenUp(WrittenUp { file: *file, text: text(words) }),
        Fact::Signed { name, role, version } => Fact::Signed { name: text(name), role: text(role), version: version.clone() },
        Fact::PhotoTaken(photo) => {
            Fact::PhotoTaken(Photo { words: photo.words.as_ref().map(|words| text(words)), ..photo.clone() })
        }
        Fact::BirthJoined(joined) => {
            let told = |told: &Told| Told { fact: Box::new(replaced(&told.fact, with)), ..told.clone() };
            let told = joined.told.iter().map(told).collect();
            Fact::BirthJoined(Joined { label: text(&joined.label), told, ..joined.clone() })
        }
        // Of what is not known, nothing is known to be no name.
        Fact::Unknown { kind, stored } => Fact::Unknown { kind: text(kind), stored: text(stored) },
        Fact::ProtocolChosen { protocol, own } => {
            let own = own.as_ref().map(|own| Box::new(protocol_without(own, with)));
            Fact::ProtocolChosen { protocol: protocol.clone(), own }
        }
        // Of the practice, and so in no chart.
        Fact::OwnProtocolChanged { .. } => Fact::OwnProtocolChanged { change: OwnChange::default(), finished: None },
        Fact::CareChosen { .. }
        | Fact::BabyBorn { .. }
        | Fact::CordPulsationStopped { .. }
        | Fact::CordClamped { .. }
        | Fact::CordCut { .. }
        | Fact::PlacentaBorn { .. }
        | Fact::MembranesBorn { .. }
        | Fact::BloodLoss(Loss::Jug { .. } | Loss::Seen { .. })
        | Fact::MotherObserved(_)
        | Fact::ApgarScored(_)
        | Fact::NewbornMeasured(_)
        | Fact::NewbornEvent { .. }
        | Fact::PerineumExamined(_)
        | Fact::SeparationSeen { .. }
        | Fact::ResponseMarked { .. }
        | Fact::ConcernMarked
        | Fact::MomentMarked
        | Fact::TouchedAgain { .. }
        | Fact::TravelTimeSet { .. }
        | Fact::LeavingMarked { .. }
        | Fact::HomeLeft
        | Fact::Examined { .. }
        | Fact::ExaminationOrdered { .. }
        | Fact::SendingWaits { .. }
        | Fact::TermSet { .. }
        | Fact::PlacentaWeights { .. }
        // What was spoken lies in its file.
        | Fact::VoiceNoted(_)
        | Fact::PhotoMeasured(_)
        | Fact::ClocksCompared(_)
        | Fact::SameBirth { .. }
        | Fact::Retracted => fact.clone(),
    }
}

/// What a medicine may be a caution with stays; who she is does not.
fn client_without(client: &Client, with: &str) -> Client {
    Client {
        name: text(&client.name, with),
        allergies: client.allergies.as_ref().map(|words| text(words, with)),
        conditions: client.conditions.clone(),
        rhd: client.rhd,
        ..Client::default()
    }
}

/// The practice's own protocol without what somebody typed; its numbers, and how well they were checked, stay.
pub(crate) fn own_protocol(protocol: &Protocol) -> Protocol {
    protocol_without(protocol, HIDDEN)
}

fn protocol_without(protocol: &Protocol, with: &str) -> Protocol {
    let text = |words: &mut String| *words = text(words, with);
    let mut hidden = protocol.clone();
    text(&mut hidden.title);
    text(&mut hidden.edition);
    [&mut hidden.late_entry, &mut hidden.grams_per_ml].into_iter().for_each(|setting| text(&mut setting.source));
    hidden.mother.iter_mut().for_each(|phase| text(&mut phase.source));
    if let Some(times) = &mut hidden.apgar {
        text(&mut times.source);
        if let Some(again) = &mut times.again {
            text(&mut again.source);
            text(&mut again.words);
        }
    }
    for step in hidden.watch.iter_mut().flat_map(|thresholds| &mut thresholds.step) {
        text(&mut step.source);
        text(&mut step.words);
    }
    hidden
}

fn medicine_without(medicine: &Medicine, with: &str) -> Medicine {
    let Medicine { name, dose, route, uterotonic, listed, site, batch, giver, baby } = medicine;
    let text = |words: &String| text(words, with);
    Medicine {
        name: text(name),
        dose: text(dose),
        route: text(route),
        uterotonic: *uterotonic,
        listed: listed.clone(),
        site: site.as_ref().map(text),
        batch: batch.as_ref().map(text),
        giver: giver.as_ref().map(text),
        baby: *baby,
    }
}

/// The practice without names; its protocol stays.
pub(crate) fn practice(practice: &Practice) -> Practice {
    described(practice, HIDDEN)
}

fn described(practice: &Practice, with: &str) -> Practice {
    let Practice { name, practitioner, role, protocol } = practice;
    let text = |words: &str| text(words, with);
    Practice { name: text(name), practitioner: text(practitioner), role: text(role), protocol: protocol.clone() }
}

fn text(words: &str, with: &str) -> String {
    if words.trim().is_empty() { String::new() } else { with.to_owned() }
}

/// A line of a hidden chart, in which a word of the reader's own language tells what was left out.
pub(crate) fn said(mut message: Message) -> Message {
    for arg in message.args.values_mut() {
        match arg {
            Arg::Text(text) if text == HIDDEN => *arg = Message::new("names-hidden").into(),
            Arg::Message(inner) => *inner = said(inner.clone()),
            _ => (),
        }
    }
    message
}
