//! A line of the chart as resources: what all of them share.

use std::collections::BTreeSet;

use secundine_domain::chart::{Chart, Line, State};
use secundine_domain::entry::Entry;
use secundine_domain::fact::BabyNo;
use secundine_domain::time::{Occurred, Precision};

use super::codes::{self, Loinc, loinc, own};
use super::element::{Annotation, Concept, Narrative, Quantity, Reference, Value};
use super::names::Names;
use super::resource::{Component, Observation, Performer, Procedure, Resource};
use super::text::{clean, narrative};
use crate::words::Words;

/// A section of the document, in its order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Part {
    Mother,
    ThirdStage,
    Signs,
    Medicines,
    Placenta,
    Newborn,
    Course,
    Files,
}

/// A resource that was made, and what it is called.
#[derive(Clone, Debug)]
pub(super) struct Made {
    /// Its key; see [`Names`].
    pub key: String,
    /// Where it stands in the document; none where the document only refers to it.
    pub part: Option<Part>,
    pub resource: Resource,
    /// Whether a server that knows it already is to put this in its place.
    pub replaces: bool,
}

/// Who a resource is about.
#[derive(Clone, Copy, Debug)]
pub(super) enum Who {
    Mother,
    Baby(BabyNo),
    /// The mother, with a look at what is a baby's too.
    MotherFor(BabyNo),
}

/// What resources are made with, and whom they spoke of.
pub(super) struct Maker<'a> {
    pub chart: &'a Chart,
    pub words: &'a Words,
    pub names: Names,
    /// The babies that were spoken of.
    pub babies: BTreeSet<BabyNo>,
    /// The people that were spoken of, as their names are written.
    pub people: BTreeSet<String>,
}

/// A line, on its way to become resources.
pub(super) struct Told<'a> {
    pub line: &'a Line,
    /// The form that is told.
    pub entry: &'a Entry,
    pub part: Part,
}

impl<'a> Maker<'a> {
    pub fn new(chart: &'a Chart, words: &'a Words, names: Names) -> Self {
        Self { chart, words, names, babies: chart.babies.keys().copied().collect(), people: BTreeSet::new() }
    }

    pub fn mother(&self) -> Reference {
        Reference::to(self.names.url("mother"))
    }

    pub fn baby(&mut self, no: BabyNo) -> Reference {
        self.babies.insert(no);
        Reference::to(self.names.url(&baby_key(no)))
    }

    pub fn person(&mut self, name: &str) -> Reference {
        self.people.insert(name.to_owned());
        Reference::to(self.names.url(&self.names.person(name)))
    }

    pub fn encounter(&self) -> Reference {
        Reference::to(self.names.url("encounter"))
    }

    fn about(&mut self, who: Who) -> (Reference, Vec<Reference>) {
        match who {
            Who::Mother => (self.mother(), Vec::new()),
            Who::Baby(no) => (self.baby(no), Vec::new()),
            Who::MotherFor(no) => (self.mother(), vec![self.baby(no)]),
        }
    }

    /// The line in words.
    pub fn said(&self, told: &Told) -> String {
        self.words.say(&self.chart.say(&told.entry.fact))
    }

    pub fn narrative(&self, told: &Told) -> Option<Narrative> {
        narrative([self.said(told).as_str()])
    }

    /// What is to be known of its time beside the time.
    pub fn notes(&self, told: &Told) -> Vec<Annotation> {
        match &told.entry.occurred {
            Occurred::Typed { precision: Precision::Estimated, .. } => note(&self.words.plain("record-estimated")),
            _ => Vec::new(),
        }
    }

    /// An observation of this line, still without a value.
    pub fn observation(&mut self, told: &Told, who: Who, code: Concept) -> Observation {
        let (subject, focus) = self.about(who);
        Observation {
            text: self.narrative(told),
            status: Some(told.observed()),
            code: Some(code),
            subject: Some(subject),
            focus,
            encounter: Some(self.encounter()),
            effective_date_time: Some(told.entry.occurred.rfc3339()),
            performer: vec![self.person(&told.entry.author)],
            note: self.notes(told),
            ..Observation::default()
        }
    }

    /// An observation with this value; or, where there is none, that it is not known.
    pub fn seen(&mut self, told: &Told, who: Who, id: &str, value: Option<Value>) -> Observation {
        let code = own(self.words, id);
        let data_absent_reason = value.is_none().then(unknown);
        Observation { value, data_absent_reason, ..self.observation(told, who, code) }
    }

    /// The same as the only resource of its line.
    pub fn only(&mut self, told: &Told, who: Who, id: &str, value: Option<Value>) -> Vec<Made> {
        let seen = self.seen(told, who, id, value);
        vec![told.made("", Resource::Observation(Box::new(seen)))]
    }

    /// Something that happened at its moment.
    pub fn moment(&mut self, told: &Told, who: Who, id: &str) -> Vec<Made> {
        self.only(told, who, id, Some(Value::Moment(told.entry.occurred.rfc3339())))
    }

    /// Words of the author's own.
    pub fn text(&mut self, told: &Told, id: &str, text: &str) -> Vec<Made> {
        self.only(told, Who::Mother, id, Value::text(text))
    }

    /// What is told by the line's own words.
    pub fn in_words(&mut self, told: &Told, id: &str) -> Vec<Made> {
        let said = self.said(told);
        self.text(told, id, &said)
    }

    /// One of several answers, by the id of its message.
    pub fn choice(&mut self, told: &Told, who: Who, id: &str, answer: &str) -> Vec<Made> {
        self.only(told, who, id, Some(Value::Concept(own(self.words, answer))))
    }

    /// A sign that the standard has a profile for.
    pub fn vital(&mut self, told: &Told, who: Who, id: &str, codes: &[Loinc], value: Quantity) -> Observation {
        let code = loinc(self.words, codes, id);
        let category = vec![codes::concept(codes::CATEGORY, "vital-signs", "Vital Signs")];
        Observation { category, value: Some(Value::Quantity(value)), ..self.observation(told, who, code) }
    }

    /// Something that was done.
    pub fn procedure(&mut self, told: &Told, who: Who, id: &str) -> Vec<Made> {
        let (subject, _) = self.about(who);
        let procedure = Procedure {
            text: self.narrative(told),
            status: Some(told.done()),
            code: Some(own(self.words, id)),
            subject: Some(subject),
            encounter: Some(self.encounter()),
            performed_date_time: Some(told.entry.occurred.rfc3339()),
            performer: vec![Performer { actor: Some(self.person(&told.entry.author)) }],
            note: self.notes(told),
            ..Procedure::default()
        };
        vec![told.made("", Resource::Procedure(Box::new(procedure)))]
    }

    /// A part of an observation under our own code.
    pub fn component(&self, id: &str, value: Option<Value>) -> Component {
        let data_absent_reason = value.is_none().then(unknown);
        Component { code: Some(own(self.words, id)), value, data_absent_reason }
    }

    /// The same of one of several answers, by the id of its message.
    pub fn chosen(&self, id: &str, answer: &str) -> Component {
        self.component(id, Some(Value::Concept(own(self.words, answer))))
    }
}

impl<'a> Told<'a> {
    pub fn new(line: &'a Line, part: Part) -> Self {
        Self { line, entry: line.shown(), part }
    }

    /// A resource of this line; `name` tells several apart.
    pub fn made(&self, name: &str, resource: Resource) -> Made {
        let dash = if name.is_empty() { "" } else { "-" };
        let key = format!("entry-{}{dash}{name}", self.line.first.id);
        Made { key, part: Some(self.part), resource, replaces: self.line.state() != State::Stands }
    }

    /// The status of an observation.
    pub fn observed(&self) -> &'static str {
        match self.line.state() {
            State::Stands => "final",
            State::Corrected => "amended",
            State::Retracted => "entered-in-error",
        }
    }

    /// The status of what was done or given: there is no word for what was put right.
    pub fn done(&self) -> &'static str {
        match self.line.state() {
            State::Stands | State::Corrected => "completed",
            State::Retracted => "entered-in-error",
        }
    }
}

/// That a value was not written down.
pub(super) fn unknown() -> Concept {
    codes::absent("unknown", "Unknown")
}

pub(super) fn note(text: &str) -> Vec<Annotation> {
    clean(text).map(|text| Annotation { text: Some(text) }).into_iter().collect()
}

pub(super) fn baby_key(no: BabyNo) -> String {
    format!("baby-{no}")
}
