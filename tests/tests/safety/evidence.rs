//! Whether a test that is named is there, and runs in `make test`.

use std::fs;
use std::path::Path;

/// Why `path::name` is no test that runs; `None` where it is one.
pub fn missing(root: &Path, test: &str) -> Option<&'static str> {
    let Some((path, name)) = test.split_once("::") else { return Some("is to be written as path::name of a test") };
    let Ok(source) = fs::read_to_string(root.join(path)) else { return Some("no such file") };
    let found = match path.rsplit('.').next() {
        Some("rs") => in_rust(&source, name),
        // A stop of a walk is looked at by tests/e2e/screens.test.mjs.
        Some("mjs") if path.starts_with("tests/e2e/screens/") => in_walk(&source, name).then_some(true),
        Some("mjs" | "ts") => in_script(&source, name).then_some(true),
        Some("py") => source.contains(&format!("def {name}(")).then_some(true),
        _ => None,
    };
    match found {
        Some(true) => None,
        Some(false) => Some("make test passes it over (#[ignore]): name one that runs"),
        None => Some("no test of that name is in the file"),
    }
}

/// Whether a test of Rust runs; `None` where there is none. What stands between `#[test]` and its name are attributes.
fn in_rust(source: &str, name: &str) -> Option<bool> {
    let call = format!("fn {name}(");
    let (before, _) = source.split_once(&call)?;
    let attributes = before.get(before.rfind("#[test]")?..)?;
    let between = attributes.lines().skip(1).map(str::trim);
    let only = between.filter(|line| !line.is_empty() && !line.starts_with("#[") && !line.starts_with("//")).count() == 0;
    only.then(|| !attributes.contains("#[ignore"))
}

fn in_script(source: &str, name: &str) -> bool {
    ['"', '\'', '`'].iter().any(|mark| {
        let quoted = format!("{mark}{name}{mark}");
        source
            .match_indices(&quoted)
            .any(|(at, _)| source.get(..at).is_some_and(|before| ["test(", "it("].iter().any(|call| before.ends_with(call))))
    })
}

fn in_walk(source: &str, stop: &str) -> bool {
    source.lines().any(|line| [format!("  {stop}: "), format!("  \"{stop}\": ")].iter().any(|start| line.starts_with(start)))
}
