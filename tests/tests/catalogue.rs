//! Every message that the core can say stands in the catalogue.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use secundine_domain::chart::Odd;
use secundine_domain::examination::Examination;
use secundine_domain::fact::{Answer, Care, care_words};
use secundine_domain::protocol::{Milli, Protocol, Status, Watch};
use secundine_record::words::Words;

const CATALOGUE: &str = include_str!("../../core/messages/en.ftl");

fn core() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../core")
}

fn sources(folder: &Path, found: &mut Vec<PathBuf>) {
    for path in fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        if path.is_dir() {
            sources(&path, found);
        } else if path.extension().is_some_and(|ext| ext == "rs") && path.file_stem().is_some_and(|stem| stem != "tests") {
            found.push(path);
        }
    }
}

/// The text of every source file of the core, without its tests.
fn programs() -> Vec<(PathBuf, String)> {
    let mut paths = Vec::new();
    for package in fs::read_dir(core()).unwrap().map(|entry| entry.unwrap().path().join("src")).filter(|src| src.is_dir()) {
        sources(&package, &mut paths);
    }
    let text = |path: &PathBuf| fs::read_to_string(path).unwrap();
    paths
        .into_iter()
        .map(|path| (path.clone(), text(&path).split("#[cfg(test)]\nmod tests").next().unwrap().to_owned()))
        .collect()
}

/// The string literals of a program that stand by themselves: no escapes, no placeholders.
fn literals(program: &str) -> impl Iterator<Item = &str> {
    let lines = program.lines().filter(|line| !line.trim_start().starts_with("//"));
    lines.flat_map(|line| line.split('"').skip(1).step_by(2))
}

fn is_id(text: &str) -> bool {
    text.contains('-') && text.bytes().all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-')
}

/// The first words of the catalogue's ids, such as `error`: a literal that begins with one is meant to be an id.
fn families() -> BTreeSet<&'static str> {
    CATALOGUE
        .lines()
        .filter_map(|line| line.split_once(" ="))
        .filter_map(|(id, _)| id.split_once('-'))
        .map(|(first, _)| first)
        .collect()
}

#[test]
fn every_message_that_the_core_names_is_there() {
    let words = Words::english();
    let families = families();
    // Not messages: beginnings of names.
    let other = ["third-stage-", "quantity-", "exam-", "fhir-"];
    let mut seen = BTreeSet::new();
    for (path, program) in programs() {
        for after in program.split("Message::new(\"").skip(1) {
            let id = after.split('"').next().unwrap();
            assert!(words.has(id), "{}: {id}", path.display());
            seen.insert(id.to_owned());
        }
        for id in literals(&program).filter(|text| is_id(text) && !other.contains(text)) {
            if id.split('-').next().is_some_and(|first| families.contains(first)) && !items().any(|item| item == id) {
                assert!(words.has(id), "{}: {id}", path.display());
                seen.insert(id.to_owned());
            }
        }
    }
    for known in ["error-full", "fact-baby-born", "watch-shock-index", "impossible-pressure", "part-pulse", "record-title"] {
        assert!(seen.contains(known), "the search does not find {known}");
    }
    assert!(seen.len() > 150, "{}", seen.len());
}

fn items() -> impl Iterator<Item = &'static str> {
    Examination::standard().items.iter().map(|item| item.id.as_str())
}

fn has(id: &str) {
    assert!(Words::english().has(id), "{id} is not in the catalogue");
}

#[test]
fn every_item_of_the_examination_has_its_question_its_hint_and_its_answers() {
    for item in &Examination::standard().items {
        has(&format!("exam-{}", item.id));
        has(&format!("exam-{}-how", item.id));
        for option in &item.options {
            has(&Answer::Choice { option: option.id.clone() }.describe(&item.id).id);
        }
        has(&item.measure_words(12).id);
    }
    has(&Answer::CouldNotTell.describe("lobes").id);
}

#[test]
fn every_figure_and_every_reason_has_its_words() {
    let figures: Vec<_> = ids(include_str!("../../core/domain/src/examination/figures.toml")).collect();
    for id in &figures {
        has(&format!("figure-{id}"));
        has(&format!("figure-{id}-formula"));
    }
    let reasons: Vec<_> = ids(include_str!("../../core/domain/src/examination/reasons.toml")).collect();
    reasons.iter().for_each(|id| has(&format!("reason-{id}")));
    assert!(figures.len() > 10 && reasons.len() > 40, "{} {}", figures.len(), reasons.len());
}

/// The ids of a file's rows.
fn ids(file: &str) -> impl Iterator<Item = &str> {
    file.lines().filter_map(|line| line.strip_prefix("id = \"")?.split('"').next())
}

#[test]
fn every_watch_and_status_of_every_protocol_has_its_words() {
    let mut watches = BTreeSet::new();
    for protocol in Protocol::published() {
        for thresholds in &protocol.watch {
            watches.insert(thresholds.watch);
            thresholds.step.iter().for_each(|step| has(&step.status.name().id));
        }
        protocol.mother.iter().for_each(|phase| has(&phase.status.name().id));
    }
    for watch in watches {
        has(&watch.name().id);
        has(&watch.value_words(Milli(1_000)).id);
    }
    for watch in variants::<Watch>("Watch") {
        has(&watch.name().id);
    }
    for status in variants::<Status>("Status") {
        has(&status.name().id);
    }
}

#[test]
fn every_oddity_and_sign_has_its_words() {
    variants::<Odd>("Odd").into_iter().for_each(|odd| has(&odd.message().id));
    [Care::Physiological, Care::Active].into_iter().for_each(|care| has(&care_words(care).id));
    for (family, name) in [
        ("fundus", "Fundus"),
        ("bleeding", "Bleeding"),
        ("response-level", "Consciousness"),
        ("fundal-position", "FundalPosition"),
        ("bladder", "Bladder"),
        ("tear", "Tear"),
        ("also-torn", "AlsoTorn"),
        ("rectal-examination", "RectalExamination"),
        ("repair", "Repair"),
        ("sex", "Sex"),
        ("breathing", "Breathing"),
        ("newborn", "NewbornEvent"),
        ("separation", "SeparationSign"),
        ("response", "ResponseStep"),
        ("rhd", "RhD"),
        ("condition", "Condition"),
    ] {
        names(name).iter().for_each(|name| has(&format!("{family}-{}", name.replace('_', "-"))));
    }
}

/// Every variant of an enum of the domain without data, read from its source so that a new one is not forgotten.
fn variants<T: serde::de::DeserializeOwned>(name: &str) -> Vec<T> {
    let found = names(name);
    let read = |name: &String| {
        let kebab = serde_json::Value::from(name.replace('_', "-"));
        serde_json::from_value(name.clone().into()).or_else(|_| serde_json::from_value(kebab)).unwrap()
    };
    found.iter().map(read).collect()
}

/// The names of the variants of an enum, in snake case.
fn names(of: &str) -> Vec<String> {
    let programs = programs();
    let body = programs.iter().find_map(|(_, program)| program.split_once(&format!("pub enum {of} {{"))).unwrap().1;
    let body = body.split_once("\n}").unwrap().0;
    let lines =
        body.lines().map(str::trim).filter(|line| line.ends_with(',') && !line.starts_with("//") && !line.starts_with('#'));
    let snake = |line: &str| {
        let name = line.trim_end_matches(',');
        name.chars().enumerate().fold(String::new(), |text, (i, letter)| {
            let gap = if i > 0 && letter.is_ascii_uppercase() { "_" } else { "" };
            format!("{text}{gap}{}", letter.to_ascii_lowercase())
        })
    };
    let found: Vec<String> = lines.map(snake).collect();
    assert!(found.len() > 1, "{of}");
    found
}
