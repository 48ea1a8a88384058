//! What of the program can bear a hazard, read from its sources.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use toml::{Table, Value};

/// What can bear a hazard.
pub const KINDS: [&str; 3] = ["threshold", "screen", "request"];

/// Names as the log has them.
pub struct Program {
    /// What the protocols have a limit for.
    pub thresholds: BTreeSet<String>,
    /// Files of whole screens and of sheets that write, under `ui/src`, without their ending.
    pub screens: BTreeSet<String>,
    /// Variants of the one request.
    pub requests: BTreeSet<String>,
}

impl Program {
    /// The names of each kind.
    pub fn parts(&self) -> [(&'static str, &BTreeSet<String>); 3] {
        let [threshold, screen, request] = KINDS;
        [(threshold, &self.thresholds), (screen, &self.screens), (request, &self.requests)]
    }

    pub fn read(root: &Path) -> Self {
        let thresholds = protocols(root).iter().flat_map(|(_, file)| watches(file)).map(|(watch, _)| watch).collect();
        let screens: BTreeSet<String> = ["screens", "forms"].iter().flat_map(|folder| screens(root, folder)).collect();
        let requests = requests(&fs::read_to_string(root.join("core/session/src/api/request.rs")).unwrap());
        let program = Self { thresholds, screens, requests };
        let counts = (program.thresholds.len(), program.screens.len(), program.requests.len());
        assert!(counts.0 > 15 && counts.1 > 70 && counts.2 > 80, "what is searched for was not found: {counts:?}");
        program
    }
}

fn screens(root: &Path, folder: &str) -> Vec<String> {
    let files = fs::read_dir(root.join("ui/src").join(folder)).unwrap().map(|entry| entry.unwrap().path());
    files
        .filter(|path| path.extension().is_some_and(|ext| ext == "svelte"))
        .map(|path| format!("{folder}/{}", path.file_stem().unwrap().to_string_lossy()))
        .collect()
}

fn requests(source: &str) -> BTreeSet<String> {
    let (_, body) = source.split_once("pub enum Request {").unwrap();
    let (body, _) = body.split_once("\n}").unwrap();
    let variants = body.lines().filter_map(|line| line.strip_prefix("    "));
    let names = variants.filter(|line| line.starts_with(|first: char| first.is_ascii_uppercase()));
    names.map(|line| line.chars().take_while(char::is_ascii_alphanumeric).collect()).collect()
}

/// The protocols that ship, by the name of their file.
fn protocols(root: &Path) -> Vec<(String, Table)> {
    let paths = fs::read_dir(root.join("core/domain/protocols")).unwrap().map(|entry| entry.unwrap().path());
    paths
        .map(|path| {
            (path.file_name().unwrap().to_string_lossy().into_owned(), fs::read_to_string(&path).unwrap().parse().unwrap())
        })
        .collect()
}

/// Each watch with its steps.
fn watches(file: &Table) -> Vec<(String, Vec<Value>)> {
    let rows = |value: Option<&Value>| value.and_then(Value::as_array).cloned().unwrap_or_default();
    let text = |watch: &Value| watch.get("watch").and_then(Value::as_str).unwrap_or_default().to_owned();
    rows(file.get("watch")).iter().map(|watch| (text(watch), rows(watch.get("step")))).collect()
}

/// Steps that do not tell whence their number is, how well that was checked, or what it stands for.
pub fn unsourced(root: &Path) -> Vec<String> {
    let mut wrong = Vec::new();
    for (file, table) in protocols(root) {
        for (watch, steps) in watches(&table) {
            for (n, step) in steps.iter().enumerate() {
                for field in ["source", "status", "words"] {
                    if step.get(field).and_then(Value::as_str).is_none_or(|text| text.trim().is_empty()) {
                        wrong.push(format!(
                            "core/domain/protocols/{file}, {watch}, step {}: no {field}. A number ships with where it stands, how well that was \
                             checked (seen, second-hand, memory, borrowed, choice) and what it is for; without one it is left out",
                            n + 1
                        ));
                    }
                }
            }
        }
    }
    wrong
}
