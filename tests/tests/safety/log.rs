//! The log of hazards, and what is missing in it.

use std::collections::BTreeSet;
use std::path::Path;

use serde::Deserialize;

use crate::evidence::missing;
use crate::program::{KINDS, Program};

const LOG: &str = "tests/safety/hazards.toml";

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Log {
    hazard: Vec<Hazard>,
    /// What bears no hazard, and why.
    none: Vec<Aside>,
}

/// One danger. What a person alone reads has to be there, too.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Hazard {
    id: String,
    #[serde(default)]
    starter: Option<String>,
    name: String,
    cause: String,
    harm: String,
    severity: String,
    remains: String,
    #[serde(default)]
    thresholds: Vec<String>,
    screens: Vec<String>,
    requests: Vec<String>,
    #[serde(default)]
    control: Vec<Control>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Control {
    what: String,
    tests: Vec<String>,
}

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
struct Aside {
    thresholds: Vec<String>,
    screens: Vec<String>,
    requests: Vec<String>,
    why: String,
}

/// The rows with which every log of such a program begins.
const STARTERS: usize = 13;

impl Log {
    pub fn read(text: &str) -> Result<Self, String> {
        toml::from_str(text).map_err(|error| format!("{LOG}: {error}"))
    }

    /// Controls without a test that runs, and rows with something left out.
    pub fn unproved(&self, root: &Path) -> Vec<String> {
        let mut wrong = Vec::new();
        let mut ids = BTreeSet::new();
        for hazard in &self.hazard {
            let id = &hazard.id;
            let mut tell = |what: String| wrong.push(format!("{LOG}, {id}: {what}"));
            if !ids.insert(id) {
                tell("stands there twice: give one of them another id".to_owned());
            }
            let words = [&hazard.name, &hazard.cause, &hazard.harm, &hazard.severity, &hazard.remains];
            if words.iter().any(|text| text.trim().is_empty()) {
                tell("name, cause, harm, severity and what remains are each to be told".to_owned());
            }
            if hazard.control.is_empty() {
                tell("has no control: say what holds it, or that nothing does and take the function out".to_owned());
            }
            for Control { what, tests } in &hazard.control {
                if tests.is_empty() {
                    tell(format!("the control \"{what}\" names no test: write one that fails without it, and name it"));
                }
                for test in tests {
                    if let Some(why) = missing(root, test) {
                        tell(format!(
                            "{test}: {why}. If it was renamed, name it anew here; if it is gone, the control \"{what}\" is unproved: write another test"
                        ));
                    }
                }
            }
        }
        let starters: BTreeSet<_> = self.hazard.iter().filter_map(|hazard| hazard.starter.as_deref()).collect();
        if starters.len() != STARTERS {
            wrong.push(format!("{LOG}: {STARTERS} rows have to stay as `starter`, there are {}", starters.len()));
        }
        wrong
    }

    /// What of the program has no place in the log, and what the log names that the program has not.
    pub fn unplaced(&self, program: &Program) -> Vec<String> {
        let mut wrong: Vec<String> = self
            .none
            .iter()
            .filter(|aside| aside.why.trim().is_empty())
            .map(|_| format!("{LOG}: a [[none]] needs its reason (`why`)"))
            .collect();
        for (kind, there) in program.parts() {
            let borne: BTreeSet<&String> =
                self.hazard.iter().flat_map(|hazard| of(kind, [&hazard.thresholds, &hazard.screens, &hazard.requests])).collect();
            let aside: BTreeSet<&String> =
                self.none.iter().flat_map(|none| of(kind, [&none.thresholds, &none.screens, &none.requests])).collect();
            for name in there.iter().filter(|name| !borne.contains(name) && !aside.contains(name)) {
                wrong.push(format!(
                    "the {kind} {name} has no hazard: think what a slip there does, and name it in a [[hazard]] of {LOG}, or in [[none]] with the reason"
                ));
            }
            for name in borne.union(&aside).filter(|name| !there.contains(name.as_str())) {
                wrong.push(format!("there is no {kind} {name}: take it out of {LOG}, or put its new name there"));
            }
            for name in borne.intersection(&aside) {
                wrong.push(format!("the {kind} {name} bears a hazard and none in {LOG}: decide"));
            }
        }
        wrong
    }
}

/// The list of one kind among those of [`KINDS`].
fn of<'a>(kind: &str, lists: [&'a Vec<String>; 3]) -> impl Iterator<Item = &'a String> {
    KINDS.iter().zip(lists).filter(move |(name, _)| **name == kind).flat_map(|(_, list)| list)
}
