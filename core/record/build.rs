//! Finds the catalogues: every `XX.ftl` in `core/messages` is a language, and nothing else names it.

use std::path::Path;
use std::{env, fs, io};

fn main() -> io::Result<()> {
    let folder = Path::new(&env::var("CARGO_MANIFEST_DIR").map_err(io::Error::other)?).join("../messages");
    println!("cargo:rerun-if-changed={}", folder.display());
    let mut rows = Vec::new();
    for entry in fs::read_dir(folder.canonicalize()?)? {
        let path = entry?.path();
        if path.extension().is_some_and(|ext| ext == "ftl") {
            let tag = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
            rows.push(format!("({tag:?}, include_str!({:?})),\n", path.display().to_string()));
        }
    }
    rows.sort();
    let text = format!("[\n{}]\n", rows.concat());
    fs::write(Path::new(&env::var("OUT_DIR").map_err(io::Error::other)?).join("catalogues.rs"), text)
}
