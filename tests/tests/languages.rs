//! Every file in `core/messages` is a whole language: it says what English says, with the same values.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement, VariantKey};
use fluent_syntax::parser::parse;
use secundine_domain::message::Message;
use secundine_record::words::Words;

const PLURALS: [&str; 6] = ["zero", "one", "two", "few", "many", "other"];
/// Whole numbers in which the plurals of the world's languages differ.
const COUNTS: [u32; 10] = [0, 1, 2, 3, 5, 11, 21, 100, 101, 1_000_000];

/// What a message needs from whoever says it.
#[derive(Debug, Default, PartialEq)]
struct Needs {
    variables: BTreeSet<String>,
    /// What a variable is told apart by where that is neither a number nor a plural: `way` by `back` and `forward`.
    kinds: BTreeSet<(String, String)>,
}

impl Needs {
    fn of(&mut self, pattern: &Pattern<&str>) {
        for element in &pattern.elements {
            match element {
                PatternElement::TextElement { .. } => {}
                PatternElement::Placeable { expression: Expression::Inline(inline) } => self.inline(inline),
                PatternElement::Placeable { expression: Expression::Select { selector, variants } } => {
                    self.inline(selector);
                    for variant in variants {
                        if let (InlineExpression::VariableReference { id }, VariantKey::Identifier { name }) =
                            (selector, &variant.key)
                            && !PLURALS.contains(name)
                        {
                            self.kinds.insert((id.name.to_owned(), (*name).to_owned()));
                        }
                        self.of(&variant.value);
                    }
                }
            }
        }
    }

    fn inline(&mut self, inline: &InlineExpression<&str>) {
        match inline {
            InlineExpression::VariableReference { id } => drop(self.variables.insert(id.name.to_owned())),
            InlineExpression::Placeable { expression } => {
                if let Expression::Inline(inline) = &**expression {
                    self.inline(inline);
                }
            }
            _ => {}
        }
    }
}

/// The messages of a catalogue, and what is wrong with it by itself.
fn messages(name: &str, text: &str) -> (BTreeMap<String, Needs>, Vec<String>) {
    let mut faults = Vec::new();
    let resource = parse(text).unwrap_or_else(|(resource, errors)| {
        faults.extend(errors.iter().map(|error| format!("{name}: {error}")));
        resource
    });
    let mut found = BTreeMap::new();
    for entry in &resource.body {
        let Entry::Message(message) = entry else { continue };
        let mut needs = Needs::default();
        message.value.iter().for_each(|value| needs.of(value));
        if found.insert(message.id.name.to_owned(), needs).is_some() {
            faults.push(format!("{name} has {} twice", message.id.name));
        }
    }
    (found, faults)
}

/// What is wrong with a catalogue beside English, each with its file and the id of the message.
fn faults(name: &str, text: &str, english: &str) -> Vec<String> {
    let (found, mut faults) = messages(name, text);
    let (wanted, _) = messages("en.ftl", english);
    faults.extend(wanted.keys().filter(|id| !found.contains_key(*id)).map(|id| format!("{name} lacks {id}")));
    faults
        .extend(found.keys().filter(|id| !wanted.contains_key(*id)).map(|id| format!("{name} has {id}, which English has not")));
    let pairs = wanted.iter().filter_map(|(id, wanted)| Some((id, wanted, found.get(id)?)));
    let other = pairs.filter(|(_, wanted, found)| wanted != found);
    faults.extend(other.map(|(id, wanted, found)| format!("{name}, {id}: {found:?} in place of {wanted:?}")));
    let words = Words::read("en", text);
    for (id, among) in [
        ("language-direction", ["ltr", "rtl"]),
        ("language-status", ["reviewed", "machine-drafted"]),
        ("language-decimal", [".", ","]),
    ] {
        if !among.contains(&words.plain(id).as_str()) {
            faults.push(format!("{name}, {id}: must be one of {among:?}"));
        }
    }
    faults
}

/// Tag and text of every file.
fn catalogues() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/messages");
    let paths = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let mut found: Vec<_> = paths
        .map(|path| (path.file_stem().unwrap().to_string_lossy().into_owned(), fs::read_to_string(&path).unwrap()))
        .collect();
    found.sort();
    found
}

fn english() -> String {
    catalogues().into_iter().find(|(tag, _)| tag == "en").unwrap().1
}

#[test]
fn every_catalogue_says_all_that_english_says() {
    let english = english();
    let wrong: Vec<String> = catalogues().iter().flat_map(|(tag, text)| faults(&format!("{tag}.ftl"), text, &english)).collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn the_core_finds_each_file_and_no_other() {
    let tags: Vec<String> = catalogues().into_iter().map(|(tag, _)| tag).collect();
    assert_eq!(Words::tags().collect::<Vec<_>>(), tags);
    for tag in &tags {
        assert_eq!(Words::of(tag).language(), tag);
    }
}

#[test]
fn every_message_can_be_said_with_any_count() {
    for (tag, text) in catalogues() {
        let words = Words::of(&tag);
        for (id, needs) in messages(&tag, &text).0 {
            for count in COUNTS {
                let message = needs.variables.iter().fold(Message::new(&id), |message, name| message.with(name, count));
                let said = words.say(&message);
                assert!(!said.contains(['{', '}']), "{tag}.ftl, {id}: {said}");
            }
        }
    }
}

#[test]
fn what_is_wrong_is_told_with_its_file_and_its_id() {
    let english = english();
    let told = |from: &str, to: &str| {
        assert_eq!(english.matches(from).count(), 1, "{from}");
        faults("xx.ftl", &english.replace(from, to), &english)
    };
    assert_eq!(told("part-none = nothing\n", ""), ["xx.ftl lacks part-none"]);
    assert_eq!(
        told("part-none = nothing\n", "part-nought = x\npart-none = y\n"),
        ["xx.ftl has part-nought, which English has not"]
    );
    assert_eq!(told("part-none = nothing\n", "part-none = x\npart-none = y\n"), ["xx.ftl has part-none twice"]);
    let other = told("part-pulse = pulse { $value }", "part-pulse = pulse { $number }");
    assert!(other.len() == 1 && other.iter().all(|fault| fault.starts_with("xx.ftl, part-pulse: ")), "{other:?}");
    let junk = told("part-pulse = pulse { $value }", "part-pulse = pulse { $value");
    assert!(junk.iter().any(|fault| fault == "xx.ftl lacks part-pulse") && junk.len() > 1, "{junk:?}");
    assert_eq!(told("language-decimal = .", "language-decimal = ;"), [r#"xx.ftl, language-decimal: must be one of [".", ","]"#]);
    let kinds = told("    [forward] The clock", "    [onward] The clock");
    assert!(kinds.len() == 1 && kinds.iter().all(|fault| fault.starts_with("xx.ftl, odd-clock-changed: ")), "{kinds:?}");
}
