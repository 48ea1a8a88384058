//! The TypeScript types that the page uses are generated from the Rust ones and checked in.
//! `UPDATE_TYPES=1 cargo test -p secundine-session --test types` writes them.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::collections::BTreeMap;
use std::path::Path;

use secundine_session::api::{ApiError, Request, Response};
use ts_rs::{Config, TS};

fn files(dir: &Path) -> BTreeMap<String, String> {
    let mut found = BTreeMap::new();
    let Ok(listing) = std::fs::read_dir(dir) else { return found };
    for path in listing.map(|entry| entry.unwrap().path()) {
        found.insert(path.file_name().unwrap().to_string_lossy().into_owned(), std::fs::read_to_string(&path).unwrap());
    }
    found
}

#[test]
fn the_page_has_the_types_of_the_core() {
    let checked_in = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../ui/src/gen");
    let scratch = tempfile::tempdir().unwrap();
    let update = std::env::var_os("UPDATE_TYPES").is_some();
    let target = if update { checked_in.as_path() } else { scratch.path() };
    if update {
        files(target).keys().for_each(|name| std::fs::remove_file(target.join(name)).unwrap());
    }
    let config = Config::new().with_out_dir(target).with_large_int("number");
    Request::export_all(&config).unwrap();
    Response::export_all(&config).unwrap();
    ApiError::export_all(&config).unwrap();
    assert_eq!(files(target), files(&checked_in), "run this test with UPDATE_TYPES=1 and look at the difference");
}
