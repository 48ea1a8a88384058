//! A folder of a server that speaks WebDAV keeps to the laws of every bucket.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod buckets_laws;
mod buckets_servers;

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

use buckets_servers::{KEY, SECRET, webdav};
use secundine_sync::{BucketError, Place, Secret, open};

struct Server {
    process: Child,
    address: String,
}

impl Server {
    fn over(folder: &Path) -> Self {
        let tools = PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/webdav"));
        let mut command = Command::new(tools.join("venv/bin/python"));
        command.arg(tools.join("server.py")).arg(folder).args([KEY, SECRET]);
        let started = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::null()).spawn();
        let mut process = started.unwrap_or_else(|error| unreachable!("{command:?}: {error}: `make tools-test` sets it up"));
        let mut address = String::new();
        BufReader::new(process.stdout.take().unwrap()).read_line(&mut address).unwrap();
        Self { process, address: address.trim().to_owned() }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        drop(self.process.stdin.take());
        let _ = self.process.wait();
    }
}

#[test]
fn a_folder_over_webdav_keeps_to_the_laws() {
    let folder = tempfile::tempdir().unwrap();
    let server = Server::over(folder.path());
    let bucket = webdav(&format!("{}/practices/ours", server.address));
    assert_eq!(bucket.list("", None), Ok(vec![]), "the folder is not there yet");
    buckets_laws::all(&*bucket, "laws");
    buckets_laws::probed(&*bucket, "laws", false);
    assert!(bucket.list("laws/halves", None).unwrap().len() == 12, "nothing is left beside them");
    assert!(folder.path().join("practices/ours/laws/practice").is_dir(), "it was made");
}

#[test]
fn a_wrong_password_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let server = Server::over(folder.path());
    let place = Place::WebDav { url: server.address.clone(), user: KEY.to_owned(), password: Secret("another".to_owned()) };
    let bucket = open(&place).unwrap();
    assert_eq!(bucket.put("a", b"x"), Err(BucketError::Refused(401)));
    assert_eq!(bucket.get("a", 9), Err(BucketError::Refused(401)));
    assert_eq!(bucket.list("", None), Err(BucketError::Refused(401)));
}
