//! The practice's own protocol, field by field, with what the published ones have and every change.

use secundine_domain::entry::Entry;
use secundine_domain::fact::{Fact, Practice};
use secundine_domain::message::Message;
use secundine_domain::protocol::{
    Compare, Milli, OWN, OwnChange, OwnProtocol, Protocol, Schedule, Setting, Slot, State, Status, Step, StepSlot, Watch,
    borrowed, state_words,
};

use super::counted;
use crate::api::{OwnField, OwnGroup, OwnLine, OwnOffer, OwnSave, OwnState, OwnView};
use crate::own::Own;

/// Everything about the own protocol.
pub(crate) fn own_protocol(own: &Own, practice: &Practice, entries: &[Entry]) -> OwnView {
    let OwnProtocol { title, edition, checked, .. } = own.protocol.clone();
    let finished = own.protocol.finish();
    let problems = finished.as_ref().err().map(|unfinished| unfinished.problems.as_slice()).unwrap_or_default();
    let told = |(slot, problem): &(Slot, Message)| {
        Message::new("own-problem").with("field", slot.name()).with("problem", problem.clone())
    };
    OwnView {
        title,
        edition,
        checked,
        state: own_state(&own.protocol),
        groups: groups(&own.protocol),
        problems: problems.iter().map(told).collect(),
        holds_since: own.held.as_ref().map(|held| held.since.clone()),
        holds_as_it_stands: finished.is_ok(),
        in_use: practice.protocol.as_deref() == Some(OWN),
        log: log(entries),
    }
}

/// How far it has come.
pub(crate) fn own_state(own: &OwnProtocol) -> OwnState {
    let open = own.finish().err().map_or(0, |unfinished| unfinished.open.len());
    OwnState { open: counted(open), count: counted(own.slots().len() + 3) }
}

fn groups(own: &OwnProtocol) -> Vec<OwnGroup> {
    let mut groups: Vec<OwnGroup> = Vec::new();
    for slot in own.slots() {
        let (id, field) = (group(slot), field(own, slot));
        let at = groups.iter().position(|group| group.id == id).unwrap_or_else(|| {
            groups.push(OwnGroup { id: id.to_owned(), name: Message::new(id), open: 0, fields: Vec::new() });
            groups.len() - 1
        });
        if let Some(group) = groups.get_mut(at) {
            group.open += u32::from(field.state.is_none());
            group.fields.push(field);
        }
    }
    groups
}

/// Under which heading a field stands.
fn group(slot: Slot) -> &'static str {
    match slot {
        Slot::Step(StepSlot { watch, .. }) => match watch {
            Watch::ThirdStageActive | Watch::ThirdStagePhysiological => "own-third-stage",
            Watch::BloodLoss => "own-blood",
            watch if Watch::READ.contains(&watch) => "own-signs",
            watch if Watch::NEWBORN.contains(&watch) => "own-newborn",
            watch if Watch::WINDOWS.contains(&watch) => "own-windows",
            _ => "own-other",
        },
        Slot::Apgar => "own-newborn",
        Slot::Mother(_) => "own-looks",
        Slot::LateEntry | Slot::GramsPerMl => "own-working",
    }
}

fn field(own: &OwnProtocol, slot: Slot) -> OwnField {
    let state = own.fields.get(&slot).cloned();
    let offers: Vec<OwnOffer> = Protocol::published().iter().filter_map(|protocol| offer(protocol, slot)).collect();
    let (decimals, by) = match slot.unit() {
        "Cel" => (1, 1),
        "1" => (2, 5),
        "g/mL" => (2, 1),
        "mL" => (0, 50),
        _ => (0, 1),
    };
    let like = offers.first().map(|offer| &offer.state).or_else(|| state.as_ref().filter(|state| **state != State::Off));
    let blank = like.map_or_else(|| blank(slot), State::bare);
    OwnField {
        slot,
        name: slot.name(),
        words: state_words(state.as_ref(), slot),
        state,
        can_be_off: slot.can_be_off(),
        unit: slot.unit().to_owned(),
        decimals,
        by,
        blank,
        offers,
    }
}

fn offer(protocol: &Protocol, slot: Slot) -> Option<OwnOffer> {
    let (_, state) = protocol.numbers().into_iter().find(|(at, _)| *at == slot)?;
    let (title, words, whence) = (protocol.title.clone(), state.words(slot), whence(&state));
    Some(OwnOffer { title, words, whence, state: borrowed(protocol, state) })
}

/// What a number of the practice's own begins from where no protocol has one.
fn blank(slot: Slot) -> State {
    let (source, status) = (String::new(), Status::Choice);
    match slot {
        Slot::Step(place) => State::Step(Step {
            level: place.level,
            compare: if place.upper { Compare::AtLeast } else { Compare::Under },
            value: Milli(0),
            source,
            status,
            words: String::new(),
            again: place.again.then_some(30),
            with: Vec::new(),
        }),
        Slot::Mother(_) => State::Phase(Schedule { every: 15, until: 120, source, status }),
        Slot::Apgar => State::Off,
        Slot::LateEntry | Slot::GramsPerMl => State::Setting(Setting { value: Milli(0), source, status }),
    }
}

fn whence(state: &State) -> Option<Message> {
    let (source, status) = state.whence()?;
    Some(Message::new("own-whence").with("source", source).with("status", status.name()))
}

/// The changes, each beside what stood there before it, latest first.
fn log(entries: &[Entry]) -> Vec<OwnSave> {
    let mut own = OwnProtocol::default();
    let mut saves = Vec::new();
    for entry in entries {
        let Fact::OwnProtocolChanged { change, .. } = &entry.fact else { continue };
        let changed = own.clone().changed(change);
        // What two devices wrote at once may change nothing where the other one came first.
        let changes = lines(&own, &own.difference(&changed));
        if !changes.is_empty() {
            saves.push(OwnSave { at: entry.recorded.date_and_clock(), author: entry.author.clone(), changes });
        }
        own = changed;
    }
    saves.reverse();
    saves
}

fn lines(before: &OwnProtocol, change: &OwnChange) -> Vec<OwnLine> {
    let text = |words: &str| match words {
        "" => Message::new("state-open"),
        words => Message::new("value-text").with("value", words),
    };
    let head = [
        ("own-title", &before.title, &change.title),
        ("own-edition", &before.edition, &change.edition),
        ("own-checked", &before.checked, &change.checked),
    ];
    let head = head
        .into_iter()
        .filter_map(|(id, old, new)| Some(OwnLine { field: Message::new(id), old: text(old), new: text(new.as_deref()?) }));
    let fields = change.fields.iter().map(|(slot, new)| OwnLine {
        field: slot.name(),
        old: told(before.fields.get(slot), *slot),
        new: told(new.as_ref(), *slot),
    });
    head.chain(fields).collect()
}

/// A number with its source, as the log tells it.
fn told(state: Option<&State>, slot: Slot) -> Message {
    let words = state_words(state, slot);
    match state.and_then(whence) {
        Some(whence) => Message::new("own-told").with("value", words).with("whence", whence),
        None => words,
    }
}
