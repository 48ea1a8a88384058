//! What the fuzzers once found worth keeping is tried again by every test run.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::fs;
use std::path::{Path, PathBuf};

use age::x25519;
use secundine_domain::entry::Entry;
use secundine_domain::protocol::Protocol;
use secundine_session::api::Request;
use secundine_store::{Passphrase, check_archive, fuzzing, salvage_pages};
use secundine_tests::fuzz::{IDENTITY, PASSPHRASE, TARGETS};

/// Most bytes of one target's corpus, and most files.
const BYTES: usize = 500 * 1024;
const FILES: usize = 200;

fn corpus(target: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("fuzz/corpus").join(target)
}

/// The files of a folder, in order of their names.
fn files(folder: &Path) -> Vec<Vec<u8>> {
    let mut paths: Vec<PathBuf> = fs::read_dir(folder).unwrap().map(|file| file.unwrap().path()).collect();
    paths.sort();
    paths.iter().map(|path| fs::read(path).unwrap()).collect()
}

fn identity() -> x25519::Identity {
    IDENTITY.parse().unwrap()
}

#[test]
fn whatever_was_found_once_is_survived() {
    for (name, target) in TARGETS {
        let files = files(&corpus(name));
        assert!(files.len() <= FILES && files.iter().map(Vec::len).sum::<usize>() <= BYTES, "{name}: minimise the corpus");
        files.iter().for_each(|bytes| target(bytes));
    }
}

#[test]
fn every_corpus_still_gets_past_the_door() {
    let any = |name, opens: &dyn Fn(&[u8]) -> bool| {
        assert!(files(&corpus(name)).iter().any(|bytes| opens(bytes)), "{name}: nothing opens");
    };
    any("stored_facts", &|bytes| bytes.split(|byte| *byte == b'\n').all(|line| Entry::decode(line).is_ok()));
    any("inbox", &|bytes| {
        let read = fuzzing::read_inbox(bytes, &identity());
        read.is_some_and(|read| read.whole && read.framed.is_some() && read.records.len() > 1)
    });
    any("mark", &|bytes| secundine_session::fuzzing::rewritten(bytes).is_some());
    any("protocol", &|bytes| std::str::from_utf8(bytes).is_ok_and(|text| Protocol::parse(text).is_ok()));
    any("head", &|bytes| std::str::from_utf8(bytes).is_ok_and(|text| fuzzing::read_head(text).is_some()));
    any("key_file", &|bytes| fuzzing::open_key_by_identity(bytes, &identity()).is_ok());
    any("key_file", &|bytes| fuzzing::open_key_by_passphrase(bytes, Passphrase::from(PASSPHRASE.to_owned())).is_ok());
    any("backup", &|bytes| check_archive(bytes).is_ok_and(|(entries, _)| entries > 1));
    any("salvage", &|bytes| salvage_pages(bytes, true).entries > 1);
    any("bundle", &|bytes| secundine_record::fhir::read(bytes).is_ok_and(|entries| entries.len() > 1));
    any("code", &|bytes| std::str::from_utf8(bytes).ok().and_then(secundine_session::fuzzing::code).is_some());
    any("envelope", &|bytes| secundine_session::fuzzing::sync::opened(bytes).is_some());
    any("envelope", &|bytes| secundine_session::fuzzing::sync::body(bytes) == 1);
    any("request", &|bytes| serde_json::from_slice::<Request>(bytes).is_ok());
}
